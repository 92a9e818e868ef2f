/**
 * Water through the heap and what it takes along. A bed wetter than a heap can hold drains at once, under any cover;
 * rain that enters, with the water of rotting, less what the heat drives off, runs through what is full. A part of the
 * rain that enters finds cracks and runs through without being held.
 */
import { kg, made } from './heapIn.ts';
import { heapEvaporation, waterHeldKg, windrowFootprintM2 } from './windrow.ts';

export const heapWater = {
  heapFootprintM2: made('ground under the heap', 'm²', 'volume ÷ (two thirds of the height)', ['nraes54']).of(
    ['heapVolumeM3', 'windrowHeightM'],
    (i, volume, height) => windrowFootprintM2(volume[i], height[i]),
  ),
  heapRainInKg: kg(
    'rain that enters the heap',
    'rain on the heap × ground under it × share that enters',
  ).product(['heapRainMm', 'heapFootprintM2', 'heapRainInFraction']),
  heapRainHeldKg: kg(
    'rain the heap takes up',
    'rain that enters × (1 − share that runs straight through)',
  ).of(['heapRainInKg', 'heapBypassFraction'], (i, rain, bypass) => rain[i] * (1 - bypass[i])),
  heapSurplusKg: kg('water that drains when the heap is made', 'water beyond what its dry matter holds').of(
    ['heapMade', 'heapWaterInKg', 'heapDryMatterInKg', 'heapWettestMoistureFraction'],
    (i, heap, wet, dry, wettest) => heap[i] * Math.max(0, wet[i] - waterHeldKg(dry[i], wettest[i])),
  ),
  heapEvaporatedKg: kg(
    'water driven off by the heat of the heap',
    'dry matter lost × water driven off by it × factor of the cover, until the heap is too dry to work',
  ).of(
    [
      'heapWaterInKg', 'heapSurplusKg', 'heapDryMatterLostKg', 'rottingWaterKgPerKg', 'heapRainHeldKg', 'compostDryMatterKg',
      'heapEvaporationKgPerKg', 'heapEvaporationCoverFactor', 'heapDriestMoistureFraction',
    ], // biome-ignore format: one list
    (i, wet, surplus, rotted, formed, rain, dry, perKg, cover, driest) =>
      heapEvaporation(
        wet[i] - surplus[i] + rotted[i] * formed[i] + rain[i],
        dry[i],
        rotted[i],
        perKg[i] * cover[i],
        driest[i],
      ),
  ),
  heapThroughKg: kg(
    'water that runs through the heap',
    'rain that is not held + what is over of water of the heap, of rotting and of rain taken up − driven off − what the compost holds',
  ).of(
    [
      'heapMade', 'heapRainInKg', 'heapWaterInKg', 'heapSurplusKg', 'heapDryMatterLostKg', 'rottingWaterKgPerKg', 'heapRainHeldKg',
      'heapEvaporatedKg', 'compostDryMatterKg', 'heapWettestMoistureFraction',
    ], // biome-ignore format: one list
    (i, heap, rain, wet, surplus, rotted, formed, held, driven, dry, wettest) => {
      const inside = wet[i] - surplus[i] + rotted[i] * formed[i] + held[i] - driven[i];
      return rain[i] - held[i] + heap[i] * Math.max(0, inside - waterHeldKg(dry[i], wettest[i]));
    },
  ),
  heapDrainedKg: kg('water drained from the heap', 'when it is made + run through').sum([
    'heapSurplusKg',
    'heapThroughKg',
  ]),
  compostWaterKg: kg(
    'water in the compost',
    'water of the heap + of rotting + rain that enters − driven off − drained',
  ).of(
    [
      'heapWaterInKg', 'heapDryMatterLostKg', 'rottingWaterKgPerKg', 'heapRainInKg', 'heapEvaporatedKg', 'heapDrainedKg',
    ], // biome-ignore format: one list
    (i, wet, rotted, formed, rain, driven, drained) =>
      wet[i] + rotted[i] * formed[i] + rain[i] - driven[i] - drained[i],
  ),
  heapWashedFraction: made(
    'share of what is dissolved that water takes out of the heap',
    'fraction',
    '1 − (1 − surplus ÷ water) × e^(−water that runs through ÷ water in the heap)',
    ['eghball1997', 'sommer2001'],
  ).of(['heapWaterInKg', 'heapSurplusKg', 'heapThroughKg'], (i, wet, surplus, through) => {
    const held = wet[i] - surplus[i];
    return held > 0 ? 1 - (held / wet[i]) * Math.exp(-through[i] / held) : 0;
  }),
  heapPhosphorusLostKg: kg(
    'phosphorus washed from the heap',
    'phosphorus of the heap × share washed out × how much less of it is dissolved, at most a share',
    ['eghball1997'],
  ).of(
    ['heapPhosphorusInKg', 'heapWashedFraction', 'heapPhosphorusWashFactor', 'heapPhosphorusLostMost'],
    (i, phosphorus, washed, factor, most) => phosphorus[i] * Math.min(most[i], washed[i] * factor[i]),
  ),
  heapPotassiumLostKg: kg('potassium washed from the heap', 'potassium of the heap × share washed out', [
    'eghball1997',
    'sommer2001',
  ]).product(['heapPotassiumInKg', 'heapWashedFraction']),
};

/** Phosphorus and potassium that leave the paddock: over frozen ground, past the roots, with the drainage. */
import { quantity } from '../engine/quantity.ts';
import { washedFraction } from './washOff.ts';

const kg = (label: string, formula: string, source?: readonly string[]) =>
  quantity(label, 'kg', formula, { when: 'paddockShare', ...(source && { source }) });

export const minerals = {
  paddockPhosphorusLostKg: kg(
    'phosphorus washed off the paddock',
    'phosphorus dropped × (1 − e^(−share × run-off ÷ reference run-off))',
    ['salomon2015'],
  ).of(
    ['paddockPhosphorusInKg', 'paddockWashMm', 'runoffPhosphorusFraction', 'runoffReferenceMm'],
    (i, inKg, wash, fraction, reference) => inKg[i] * washedFraction(wash[i], fraction[i], reference[i]),
  ),
  paddockPotassiumRunoffKg: kg(
    'potassium washed off frozen ground',
    'potassium dropped × share of frozen days × share of the water that runs off and finds it (run-off that meets what was dropped ÷ rain and snow, at most all) × share it carries',
    ['uhlen1978'],
  ).of(
    [
      'paddockPotassiumInKg',
      'frozenWinterFraction',
      'paddockWashMm',
      'rainMm',
      'frozenPotassiumWashFraction',
    ],
    (i, inKg, frozen, wash, rain, carried) =>
      inKg[i] * frozen[i] * Math.min(1, (rain[i] > 0 ? Math.min(1, wash[i] / rain[i]) : 0) * carried[i]),
  ),
  paddockPotassiumBypassKg: kg(
    'urine potassium that ran below the roots at once',
    'potassium dropped on ground not frozen × share in urine × share of those days above field capacity × share that runs through then',
    ['williams1989'],
  ).of(
    [
      'paddockPotassiumInKg', 'urinePotassiumFraction', 'frozenWinterFraction', 'wetDays', 'winterDays', 'urineBypassFraction',
      'potassiumBypassPerNitrogen',
    ], // biome-ignore format: one list
    (i, inKg, ofUrine, frozen, wet, days, through, perNitrogen) => {
      const thawedDays = days[i] * (1 - frozen[i]);
      if (!(thawedDays > 0)) return 0;
      const share = Math.min(1, (wet[i] / thawedDays) * through[i] * perNitrogen[i]);
      return inKg[i] * Math.min(1, ofUrine[i]) * (1 - frozen[i]) * share;
    },
  ),
  paddockPotassiumLeachedKg: kg(
    'potassium leached below the paddock',
    '(potassium of urine on ground not frozen − run through) × (1 − e^(−share × drainage until grass grows ÷ reference drainage))',
    ['kayser2007'],
  ).of(
    [
      'paddockPotassiumInKg', 'urinePotassiumFraction', 'frozenWinterFraction', 'paddockPotassiumBypassKg', 'drainageMm',
      'potassiumLeachedFraction', 'potassiumLeachReferenceMm',
    ], // biome-ignore format: one list
    (i, inKg, ofUrine, frozen, through, drainage, fraction, reference) =>
      Math.max(0, inKg[i] * Math.min(1, ofUrine[i]) * (1 - frozen[i]) - through[i]) *
      washedFraction(drainage[i], fraction[i], reference[i]),
  ),
  paddockPotassiumLostKg: kg(
    'potassium lost from the paddock',
    'washed off frozen ground + run below the roots at once + leached',
  ).sum(['paddockPotassiumRunoffKg', 'paddockPotassiumBypassKg', 'paddockPotassiumLeachedKg']),
  paddockPhosphorusKeptKg: kg('phosphorus left on the paddock', 'phosphorus dropped − washed off').minus(
    'paddockPhosphorusInKg',
    ['paddockPhosphorusLostKg'],
  ),
  paddockPotassiumKeptKg: kg('potassium left on the paddock', 'potassium dropped − lost').minus(
    'paddockPotassiumInKg',
    ['paddockPotassiumLostKg'],
  ),
};

/** The weeks of the deep bed: the walk that follows what is in it, how warm it is and what it loses. */
import { exponential } from '../../units/exponential.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { rateByMoisture } from './haug.ts';
import { BED, BED_PLACES, convection, dryingPerKPa, warm } from './temperature.ts';

/** A winter longer than the weekly series is spread over the weeks there are, so that nothing is lost. */
export const longestDays = (winterDays: number) => Math.min(winterDays, WEEKS * 7);

/** Weeks that lie in the winter, wholly or in part. */
export const weeksOf = (winterDays: number) => Math.max(0, Math.min(WEEKS, Math.ceil(winterDays / 7)));

export const atEndOfWeek = <const Reads extends string>(
  label: string,
  unit: string,
  formula: string,
  from: readonly Reads[],
) => week(label, unit, `${formula}; at the end of each week of the winter`, { from, when: 'packShare' });
const inBed = { unit: 'kg', when: 'packShare' } as const;

/** Decay, drying and warmth hang on each other: all of this decides each of them. */
const LIVING = [
  'winterDays', 'startLayerFraction', 'weekTemperatureC', 'packDecayAt20CPerDay', 'bedExcretaDryMatterKg', 'packDryMatterWastedKg',
  'dryMatterMaterialKg', 'excretaDegradableFraction', 'wastedFeedDegradableFraction', 'degradableMaterialFraction',
  'packWaterInKg', 'waterMaterialKg', 'rottingWaterKgPerKg', 'bedM2', 'bedDriestMoistureFraction', 'packDryDensityKgPerM3',
  'bedOxygenKgPerKg', 'bedHeatMjPerKgOxygen', 'bedAirlessRateFraction', 'bedAirlessHeatFraction', 'bedConductivityWPerMC',
  'bedHeatCapacityMjPerM3C',   'bedAirWarmerC', 'bedHumidityFraction', 'bedWindMPerS', 'bedWetFraction', 'bedStockHeatMjPerM2Day', 'bedDiffusionM2PerDay',
  'bedLooseDiffusionM2PerDay', 'bedLooseShare', 'bedStirredDepthM', 'bedHottestC', 'packDecayEvenPerDay', 'packDecayEvenForm',
] as const; // biome-ignore format: one list
const CARBON = [
  ...LIVING, 'bedExcretaCarbonKg', 'bedWastedCarbonKg', 'carbonMaterialKg', 'degradableCarbonMaterialKg',
] as const; // biome-ignore format: one list
const AMMONIA = [
  ...LIVING, 'packTanInKg', 'bedAmmoniaFraction', 'bedAreaAmmoniaKgPerDay', 'bedAmmoniaForm', 'bedAmmoniaSlopePerC',
  'bedAmmoniaReferenceC', 'bedBeyondUsualFraction',
] as const; // biome-ignore format: one list
const TAN = [...AMMONIA, 'bedOtherGasMostKg', 'immobilisationKgPerKg', 'bedBindingForm'] as const;

/** The bed that is walked; rows follow each other, so that one is enough. */
const state = new Float64Array(BED_PLACES);
/** Rounds of the first week, which starts from the air, and of the others, which start from the week before. */
const FIRST_ROUNDS = 8;
const ROUNDS = 3;

export const rotting = walk({
  name: 'bed',
  about: 'Dry matter, water, carbon, nitrogen and temperature of the deep bed by week, and what it loses.',
  reads: [
    ...TAN, 'bedExcretaCarbonKg', 'bedWastedCarbonKg', 'carbonMaterialKg', 'degradableCarbonMaterialKg', 'packNitrogenInKg',
    'nitrogenMaterialKg',
  ], // biome-ignore format: one list
  makes: {
    bedAmmoniaKg: {
      ...inBed,
      label: 'ammonia from the bed (N)',
      formula:
        'each week the TAN dropped × share lost at the reference × e^(slope × (surface of the bed − reference)), or the area × rate a m² with the same slope, weighed; never more than was dropped; the warmth of bedding beyond the usual rate is left out, since the cut measured for it holds it already',
      from: AMMONIA,
      source: ['emep2016', 'emep2019', 'lithuania2013', 'gilhespy2009'],
    },
    bedOtherGasKg: {
      ...inBed,
      label: 'nitrous oxide, dinitrogen and NO from the bed (N)',
      formula: 'what the inventory gives, evenly over the winter, as far as there is TAN',
      from: TAN,
      source: ['ipcc2019'],
    },
    immobilisedKg: {
      ...inBed,
      label: 'nitrogen bound by bedding',
      formula:
        'each week the lower of the TAN left and what the bedding can still bind that has rotted so far, or that has been laid so far, weighed',
      from: TAN,
      source: ['emep2019', 'kirchmannWitter1989'],
    },
    packDryMatterKg: {
      ...inBed,
      label: 'dry matter of the bed',
      formula:
        'dry matter in − what rots, by week, at a rate by moisture, temperature and air, or at an even rate by moisture, weighed',
      from: LIVING,
      source: ['haug1993'],
    },
    packWaterKg: {
      ...inBed,
      label: 'water in the bed',
      formula:
        'water in + water formed by rotting − water given to the air, by week; the bed dries no further than air-dry bedding',
      from: LIVING,
    },
    bedEvaporatedKg: {
      ...inBed,
      label: 'water given to the air by the bed',
      formula:
        '2.6 × (1 + 0.54 × wind) × wetted share × (vapour at the surface − vapour in the air) × area × days, as far as there is water',
      from: LIVING,
      source: ['penman1948', 'fao56'],
    },
    packCarbonKg: {
      ...inBed,
      label: 'carbon in the bed',
      formula: 'carbon in − carbon of the dry matter that rotted',
      from: CARBON,
    },
    packTanKg: {
      ...inBed,
      label: 'ammonium nitrogen in the bed',
      formula: 'TAN in − ammonia − nitrous oxide − dinitrogen − bound by bedding',
      from: TAN,
    },
    packFedRemainingFraction: {
      label: 'what is still there of what can rot and fell evenly over the winter',
      unit: 'fraction',
      formula: 'by week: what was there × e^(−rate × days) + what fell, less what of it has rotted',
      when: 'packShare',
      from: LIVING,
      source: ['haug1993'],
    },
    packTemperatureC: {
      label: 'temperature inside the bed at clean-out',
      unit: '°C',
      formula: 'inside the bed in the last week of the winter',
      when: 'packShare',
      from: LIVING,
    },
    packMeanTemperatureC: {
      label: 'temperature inside the bed, mean of the winter',
      unit: '°C',
      formula: 'mean over the weeks of the winter, by their days',
      when: 'packShare',
      from: LIVING,
    },
    packWarmestC: {
      label: 'temperature inside the bed in its warmest week',
      unit: '°C',
      formula: 'highest of the weeks of the winter',
      when: 'packShare',
      from: LIVING,
    },
    weekPackTemperatureC: week(
      'temperature inside the bed',
      '°C',
      'surface by heat given = heat lost to the air above and to drying; below it warmer by heat × depth ÷ conductivity; mean of each week of the winter',
      { from: LIVING, when: 'packShare', source: ['haug1993', 'millingtonQuirk1961'] },
    ),
    weekPackDryMatterKg: atEndOfWeek(
      'dry matter of the bed',
      'kg',
      'resistant + degradable still there',
      LIVING,
    ),
    weekPackWaterKg: atEndOfWeek(
      'water in the bed',
      'kg',
      'water in + formed by rotting − evaporated',
      LIVING,
    ),
    weekPackCarbonKg: atEndOfWeek('carbon in the bed', 'kg', 'carbon in − carbon rotted', CARBON),
    weekPackNitrogenKg: atEndOfWeek('nitrogen in the bed', 'kg', 'nitrogen in − losses', [
      ...TAN,
      'packNitrogenInKg',
      'nitrogenMaterialKg',
    ]),
    weekPackTanKg: atEndOfWeek(
      'ammonium nitrogen in the bed',
      'kg',
      'TAN in − losses − bound by bedding',
      TAN,
    ),
  },
  // Long: one walk through the weeks; its states hang on each other, and cut apart they would be walked several times.
  run({ count, read, write, wants }) {
    const series = IN_WEEKS.filter(wants);
    const told = series.length > 0;
    for (let i = 0; i < count; i++) {
      const materialDry = read.dryMatterMaterialKg[i];
      const wastedDry = read.packDryMatterWastedKg[i];
      const excretaDry = read.bedExcretaDryMatterKg[i];
      const excretaCarbon = read.bedExcretaCarbonKg[i];
      const days = longestDays(read.winterDays[i]);
      const winterWeeks = weeksOf(days);
      const row = i * WEEKS;
      for (const name of series) write[name].fill(Number.NaN, row + winterWeeks, row + WEEKS);
      const bare = materialDry === 0 && wastedDry === 0 && excretaDry === 0 && read.packWaterInKg[i] === 0;
      if (bare && excretaCarbon === 0 && read.packNitrogenInKg[i] === 0 && read.packTanInKg[i] === 0) {
        // Nothing falls on a bed, or there is none: all of it is 0, and the weeks need not be walked.
        write.bedAmmoniaKg[i] = 0;
        write.bedOtherGasKg[i] = 0;
        write.immobilisedKg[i] = 0;
        write.packDryMatterKg[i] = 0;
        write.packWaterKg[i] = 0;
        write.bedEvaporatedKg[i] = 0;
        write.packCarbonKg[i] = 0;
        write.packTanKg[i] = 0;
        write.packFedRemainingFraction[i] = 0;
        write.packTemperatureC[i] = 0;
        write.packMeanTemperatureC[i] = 0;
        write.packWarmestC[i] = 0;
        for (const name of series) write[name].fill(0, row, row + winterWeeks);
        continue;
      }
      const perDay = days > 0 ? 1 / days : 0;
      const startShare = read.startLayerFraction[i];
      const dailyShare = 1 - startShare;
      const wastedCarbon = read.bedWastedCarbonKg[i];
      const materialCarbon = read.carbonMaterialKg[i];

      // All that comes in over the winter, and what lies there from the first day.
      const dE = read.excretaDegradableFraction[i];
      const dW = read.wastedFeedDegradableFraction[i];
      const dM = read.degradableMaterialFraction[i];
      const degradableIn = excretaDry * dE + wastedDry * dW + materialDry * dailyShare * dM;
      const resistantIn = excretaDry * (1 - dE) + wastedDry * (1 - dW) + materialDry * dailyShare * (1 - dM);
      const degradableStart = materialDry * startShare * dM;
      const resistantStart = materialDry * startShare * (1 - dM);
      const materialRotting = read.degradableCarbonMaterialKg[i];
      const rottingCarbonIn = excretaCarbon * dE + wastedCarbon * dW + materialRotting * dailyShare;
      const restingCarbonIn =
        excretaCarbon * (1 - dE) + wastedCarbon * (1 - dW) + (materialCarbon - materialRotting) * dailyShare;
      const rottingCarbonStart = materialRotting * startShare;
      const restingCarbonStart = (materialCarbon - materialRotting) * startShare;
      const waterIn = read.packWaterInKg[i] - read.waterMaterialKg[i] * startShare;
      const nitrogenStart = read.nitrogenMaterialKg[i] * startShare;
      const nitrogenIn = read.packNitrogenInKg[i] - nitrogenStart;
      const tanIn = read.packTanInKg[i];
      const binds = materialDry * read.immobilisationKgPerKg[i];
      const atOnce = read.bedBindingForm[i];
      const waterPerDryLeft = read.bedDriestMoistureFraction[i] / (1 - read.bedDriestMoistureFraction[i]);
      const rottingWater = read.rottingWaterKgPerKg[i];
      const gasPerDay = read.bedOtherGasMostKg[i] * perDay;
      const area = read.bedM2[i];
      const density = read.packDryDensityKgPerM3[i];
      const depthPerKg = area > 0 && density > 0 ? 1 / density / area : 0;
      const warmer = read.bedAirWarmerC[i];
      const slope = read.bedAmmoniaSlopePerC[i];
      const reference = read.bedAmmoniaReferenceC[i];
      const byArea = read.bedAmmoniaForm[i];
      const beyond = read.bedBeyondUsualFraction[i];
      const lostShare = read.bedAmmoniaFraction[i];
      const lostPerDay = read.bedAreaAmmoniaKgPerDay[i];
      const k20 = read.packDecayAt20CPerDay[i];
      const even = read.packDecayEvenForm[i];
      const evenPerDay = read.packDecayEvenPerDay[i];
      const firstC = read.weekTemperatureC[row] + warmer;

      state[BED.humidity] = read.bedHumidityFraction[i];
      state[BED.oxygenKgPerKg] = read.bedOxygenKgPerKg[i];
      state[BED.heatMjPerKgOxygen] = read.bedHeatMjPerKgOxygen[i];
      state[BED.airlessRate] = read.bedAirlessRateFraction[i];
      state[BED.airlessHeat] = read.bedAirlessHeatFraction[i];
      state[BED.conductivity] = read.bedConductivityWPerMC[i];
      state[BED.convection] = convection(read.bedWindMPerS[i]);
      state[BED.dries] = dryingPerKPa(read.bedWindMPerS[i], read.bedWetFraction[i]);
      state[BED.stockMj] = read.bedStockHeatMjPerM2Day[i];
      state[BED.diffusion] = read.bedDiffusionM2PerDay[i];
      state[BED.looseDiffusion] = read.bedLooseDiffusionM2PerDay[i];
      state[BED.looseShare] = read.bedLooseShare[i];
      state[BED.looseDepthM] = read.bedStirredDepthM[i];
      state[BED.hottestC] = read.bedHottestC[i];
      state[BED.holds] = read.bedHeatCapacityMjPerM3C[i];
      state[BED.surfaceC] = firstC;
      state[BED.topC] = firstC;
      state[BED.coreC] = firstC;

      // Shares still there: of what falls evenly, and of what lay there at the start.
      let fed = 0;
      let first = 1;
      let laid = 0;
      let dry = degradableStart + resistantStart;
      let carbon = rottingCarbonStart + restingCarbonStart;
      let water = read.waterMaterialKg[i] * startShare;
      let nitrogen = nitrogenStart;
      let tan = 0;
      // What microbes still lack: as they eat, or as soon as there is straw to eat.
      let hungry = atOnce * binds * startShare;
      let ammonia = 0;
      let otherGas = 0;
      let bound = 0;
      let evaporated = 0;
      let warmthDays = 0;
      let warmest = winterWeeks > 0 ? Number.NEGATIVE_INFINITY : 0;

      for (let w = 0; w < winterWeeks; w++) {
        const at = row + w;
        const inWeek = winterDaysInWeek(w, days);
        const part = inWeek * perDay;

        // As it lies in the middle of the week.
        const half = part / 2;
        const rots = degradableIn * (fed + half) + degradableStart * first;
        const lies = rots + resistantIn * (laid + half) + resistantStart;
        const wet = water + waterIn * half;
        const moisture = wet + lies > 0 ? wet / (wet + lies) : 0;
        const wetness = rateByMoisture(moisture);
        state[BED.perDay] = k20 * wetness;
        state[BED.degradableKgPerM3] = lies > 0 ? (density * rots) / lies : 0;
        state[BED.depthM] = lies * depthPerKg;
        state[BED.days] = inWeek;
        state[BED.airC] = read.weekTemperatureC[at] + warmer;
        warm(state, w === 0 ? FIRST_ROUNDS : ROUNDS);
        const core = bare ? 0 : state[BED.coreC];
        warmthDays += core * inWeek;
        if (core > warmest) warmest = core;

        // Even additions over the week leave (1 − e^(−k·t))/k days' worth behind.
        // An even rate says nothing of where air reaches: warmth stays what diffusing air allows.
        const k = (1 - even) * state[BED.decayPerDay] + even * evenPerDay * wetness;
        // By the library's exponential: where little rots, the last digits of this are what is lost.
        const keeps = Math.exp(-k * inWeek);
        const fedNext = fed * keeps + perDay * (k > 0 ? (1 - keeps) / k : inWeek);
        const rottedFed = fed + part - fedNext;
        const rottedFirst = first * (1 - keeps);
        fed = fedNext;
        first *= keeps;
        laid += part;
        dry = degradableIn * fed + degradableStart * first + resistantIn * laid + resistantStart;
        carbon =
          rottingCarbonIn * fed + rottingCarbonStart * first + restingCarbonIn * laid + restingCarbonStart;

        water += waterIn * part + (degradableIn * rottedFed + degradableStart * rottedFirst) * rottingWater;
        const dries = Math.min(
          state[BED.evaporatesKg] * area * inWeek,
          Math.max(0, water - dry * waterPerDryLeft),
        );
        water -= dries;
        evaporated += dries;

        const dropped = tanIn * part;
        const surface = state[BED.surfaceC];
        const ownWarmth = Math.max(0, surface - state[BED.airC]) * beyond;
        const warmth = exponential(slope * (surface - ownWarmth - reference));
        const flies =
          (1 - byArea) * Math.min(1, lostShare * warmth) * dropped +
          byArea * Math.min(dropped, lostPerDay * warmth * inWeek);
        tan += dropped - flies;
        const asGas = Math.min(tan, gasPerDay * inWeek);
        tan -= asGas;
        hungry +=
          (1 - atOnce) * binds * (dailyShare * rottedFed + startShare * rottedFirst) +
          atOnce * binds * dailyShare * part;
        const taken = Math.min(hungry, tan);
        hungry -= taken;
        tan -= taken;
        bound += taken;
        ammonia += flies;
        otherGas += asGas;
        nitrogen += nitrogenIn * part - flies - asGas;

        if (!told) continue;
        write.weekPackTemperatureC[at] = core;
        write.weekPackDryMatterKg[at] = dry;
        write.weekPackWaterKg[at] = water;
        write.weekPackCarbonKg[at] = carbon;
        write.weekPackNitrogenKg[at] = nitrogen;
        write.weekPackTanKg[at] = tan;
      }

      write.bedAmmoniaKg[i] = ammonia;
      write.bedOtherGasKg[i] = otherGas;
      write.immobilisedKg[i] = bound;
      write.packDryMatterKg[i] = dry;
      write.packWaterKg[i] = water;
      write.bedEvaporatedKg[i] = evaporated;
      write.packCarbonKg[i] = carbon;
      write.packTanKg[i] = tan;
      write.packFedRemainingFraction[i] = bare ? 0 : fed;
      write.packTemperatureC[i] = winterWeeks > 0 && !bare ? state[BED.coreC] : 0;
      write.packMeanTemperatureC[i] = warmthDays * perDay;
      write.packWarmestC[i] = warmest;
    }
  },
});

const IN_WEEKS = [
  'weekPackTemperatureC', 'weekPackDryMatterKg', 'weekPackWaterKg', 'weekPackCarbonKg', 'weekPackNitrogenKg', 'weekPackTanKg',
] as const; // biome-ignore format: one list

/** Dung, urine and trampled feed on the paddock → gases, wash-off, leaching, what stays; sward lost to treading. */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { temperatureFactor } from '../slurry/ammonia.ts';
import { dinitrogenAskedKg, gasLimit } from './denitrification.ts';
import { FIELD_READS, leachedFromWeekKg } from './fieldNitrogen.ts';
import { coveredHa, M2_PER_HA } from './patches.ts';
import { trodden } from './trodden.ts';
import { washedFraction } from './washOff.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'paddockShare', ...(source && { source }) });
const kg = (label: string, formula: string, source?: readonly string[]) => made(label, 'kg', formula, source);

const dropped = {
  paddockTanDroppedKg: kg(
    'TAN dropped on the paddock',
    'TAN onto the paddock, at most all nitrogen dropped',
  ).of(['paddockTanInKg', 'paddockNitrogenInKg'], (i, tan, nitrogen) => Math.min(tan[i], nitrogen[i])),
};

const ammonia = walk({
  name: 'paddock ammonia',
  about: 'What of the TAN dropped leaves the paddock as ammonia, by week, and what enters the soil.',
  reads: [
    '@weather', 'weatherIndex', 'winterDays', 'paddockTanDroppedKg', 'paddockAmmoniaTanFraction', 'ammoniaSlopePerC',
    'ammoniaReferenceC', 'frozenAmmoniaFactor', 'thawAmmoniaFraction', 'weekTemperatureC', 'weekFrozenDays',
  ], // biome-ignore format: one list
  makes: {
    paddockAmmoniaKg: {
      label: 'ammonia from the paddock (N)',
      unit: 'kg',
      formula:
        'TAN dropped evenly over the winter × share lost at the reference temperature × e^(slope × (week temperature − reference)); on frozen ground less, and part of the rest when it thaws',
      source: ['emep2019', 'lithuania2013'],
      when: 'paddockShare',
    },
    weekPaddockAmmoniumKg: week(
      'ammonium that enters the soil of the paddock (N)',
      'kg',
      'TAN dropped in the week − ammonia − held back by frost + freed by thaw',
      { when: 'paddockShare' },
    ),
  },
  run({ count, read, write }) {
    const { weekTemperatureC, weekFrozenDays } = read;
    const entering = write.weekPaddockAmmoniumKg;
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const tan = read.paddockTanDroppedKg[i];
      if (tan === 0) {
        write.paddockAmmoniaKg[i] = 0;
        entering.fill(0, at, at + WEEKS);
        continue;
      }
      const days = read.winterDays[i];
      const weatherDays = read['@weather'][read.weatherIndex[i]].days;
      const perDay = days > 0 ? 1 / days : 0;
      const fraction = read.paddockAmmoniaTanFraction[i];
      const slope = read.ammoniaSlopePerC[i];
      const reference = read.ammoniaReferenceC[i];
      const frozenFactor = read.frozenAmmoniaFactor[i];
      const thawFraction = read.thawAmmoniaFraction[i];
      let gone = 0;
      // What frost holds back leaves, in part, in proportion to the thawed days that follow.
      let held = 0;
      for (let w = 0; w < WEEKS; w++) {
        const daysInWeek = Math.min(7, weatherDays - 7 * w);
        if (daysInWeek <= 0) {
          entering.fill(0, at + w, at + WEEKS);
          break;
        }
        const deposit = tan * (winterDaysInWeek(w, days) * perDay);
        const frozen = weekFrozenDays[at + w] / daysInWeek;
        let lost = 0;
        let holding = 0;
        if (deposit > 0) {
          const factor = fraction * temperatureFactor(weekTemperatureC[at + w], slope, reference);
          const free = deposit * Math.min(factor, 1);
          lost = free * (1 - frozen + frozen * frozenFactor);
          holding = free - lost;
        }
        const thawed = held * (1 - frozen);
        const released = thawed * thawFraction;
        gone += lost + released;
        held += holding - thawed;
        entering[at + w] = deposit - lost - holding + thawed - released;
      }
      write.paddockAmmoniaKg[i] = gone;
    }
  },
});

const washing = walk({
  name: 'paddock run-off',
  about: 'The run-off of the season, each week of it counted by the share of the droppings it finds.',
  reads: [
    '@weather', 'weatherIndex', 'winterDays', 'growthDay', 'spotExcretaFraction', 'weekRunoffMm', 'weekTroddenRunoffMm',
  ], // biome-ignore format: one list
  makes: {
    paddockWashMm: {
      label: 'run-off that meets what was dropped',
      unit: 'mm',
      formula:
        'run-off of each week until grass grows, round the feeding places that of trodden ground, × share dropped before it',
      when: 'paddockShare',
    },
  },
  run({ count, read, write }) {
    const { weekRunoffMm, weekTroddenRunoffMm } = read;
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const days = read.winterDays[i];
      const perDay = days > 0 ? 1 / days : 0;
      const spotShare = read.spotExcretaFraction[i];
      const lastWeek = Math.max(days, read.growthDay[i]) / 7;
      const weatherWeeks = read['@weather'][read.weatherIndex[i]].days / 7;
      let before = 0;
      let wash = 0;
      for (let w = 0; w < WEEKS && w < weatherWeeks && w <= lastWeek; w++) {
        const runoff = weekRunoffMm[at + w];
        const part = winterDaysInWeek(w, days) * perDay;
        wash += (runoff + spotShare * (weekTroddenRunoffMm[at + w] - runoff)) * (before + part / 2);
        before += part;
      }
      write.paddockWashMm[i] = wash;
    }
  },
});

const gases = {
  paddockAmmoniumKg: kg('TAN of the paddock after ammonia', 'TAN dropped − ammonia').minus(
    'paddockTanDroppedKg',
    ['paddockAmmoniaKg'],
  ),
  paddockGasLimit: made(
    'what the shares lost from the paddock as gas are held down by',
    'fraction',
    '1; less where nitrous oxide, nitrogen gas and nitric oxide come to more than the ammonia left of the TAN',
  ).of(
    [
      'paddockNitrogenInKg', 'paddockAmmoniumKg', 'paddockNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction',
    ], // biome-ignore format: one list
    (i, nitrogen, left, nitrous, perNitrous, nitric) =>
      gasLimit(nitrogen[i], left[i], nitrous[i], perNitrous[i], nitric[i]),
  ),
  paddockNitrousKg: kg(
    'nitrous oxide from the paddock (N)',
    'nitrogen dropped × share, at most what the ammonia left of the TAN',
    ['ipcc2019'],
  ).product(['paddockNitrogenInKg', 'paddockNitrousFraction', 'paddockGasLimit']),
  paddockDinitrogenKg: kg(
    'nitrogen gas and nitric oxide from the paddock (N)',
    'nitrous oxide × nitrogen gas for each kg of it + nitrogen dropped × share of nitric oxide, at most what the ammonia left of the TAN',
    ['ipcc2019', 'emep2019d'],
  ).of(
    [
      'paddockNitrogenInKg', 'paddockNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction', 'paddockGasLimit',
    ], // biome-ignore format: one list
    (i, nitrogen, nitrous, perNitrous, nitric, limit) =>
      dinitrogenAskedKg(nitrogen[i], nitrous[i], perNitrous[i], nitric[i]) * limit[i],
  ),
  paddockNitrifiableKg: kg(
    'ammonium of the paddock that may turn into nitrate (N)',
    'TAN dropped − ammonia − nitrous oxide − nitrogen gas',
  ).minus('paddockAmmoniumKg', ['paddockNitrousKg', 'paddockDinitrogenKg']),
};

// Ammonium lies in urine patches. Only the sward that reaches a patch can take it up, so crowding wastes it.
const sward = {
  urinePatchHa: made(
    'urine patches of the winter laid side by side',
    'ha',
    'livestock units × share of the time on the paddock × winter days × ground wetted by a unit in a day',
    ['haynesWilliams1993'],
  ).of(
    ['livestockUnits', 'paddockShare', 'winterDays', 'urinePatchM2PerUnitDay'],
    (i, units, share, days, each) => (units[i] * share[i] * days[i] * each[i]) / M2_PER_HA,
  ),
  spotReachedHa: made(
    'ground round the feeding places that urine reaches',
    'ha',
    'their ground × (1 − e^(−urine patches there ÷ their ground)): patches fall at random',
    ['haynesWilliams1993'],
  ).of(
    ['urinePatchHa', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
    (i, patch, hectares, share, area) => coveredHa(patch[i] * share[i], hectares[i] * area[i]),
  ),
  restReachedHa: made(
    'ground of the rest of the paddock that urine reaches',
    'ha',
    'its ground × (1 − e^(−urine patches there ÷ its ground)): patches fall at random',
    ['haynesWilliams1993'],
  ).of(
    ['urinePatchHa', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
    (i, patch, hectares, share, area) => coveredHa(patch[i] * (1 - share[i]), hectares[i] * (1 - area[i])),
  ),
  winterUptakeKgPerHa: made(
    'nitrogen the sward can take up in winter',
    'kg/ha',
    'uptake of a mild winter and of frozen ground, weighed by the share of frozen days',
  ).of(
    ['winterUptakeMildKgPerHa', 'winterUptakeFrozenKgPerHa', 'frozenDays', 'winterDays'],
    (i, mild, cold, frozenDays, days) => {
      const frost = days[i] > 0 ? Math.min(1, frozenDays[i] / days[i]) : 0;
      return mild[i] * (1 - frost) + cold[i] * frost;
    },
  ),
  paddockUptakeKg: kg(
    'nitrogen the sward takes up in winter',
    'uptake a hectare × ground that urine reaches, round the feeding places and elsewhere, each at most the ammonium there',
  ).of(
    ['paddockNitrifiableKg', 'spotExcretaFraction', 'winterUptakeKgPerHa', 'spotReachedHa', 'restReachedHa'],
    (i, ammonium, share, perHa, spot, rest) =>
      Math.min(ammonium[i] * share[i], perHa[i] * spot[i]) +
      Math.min(ammonium[i] * (1 - share[i]), perHa[i] * rest[i]),
  ),
  paddockOpenKg: kg(
    'ammonium the winter sward leaves open to leaching (N)',
    'ammonium that may turn into nitrate − taken up by the sward in winter',
  ).of(['paddockNitrifiableKg', 'paddockUptakeKg'], (i, ammonium, uptake) =>
    Math.max(0, ammonium[i] - uptake[i]),
  ),
};

const deposits = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);

const leaching = walk({
  name: 'paddock leaching',
  about: 'Follows the ammonium of the paddock through the weeks until it is nitrate, and the nitrate down.',
  reads: [
    'paddockOpenKg', 'paddockAmmoniumKg', 'spotReachedHa', 'restReachedHa', 'weekPaddockAmmoniumKg', ...FIELD_READS,
  ], // biome-ignore format: one list
  makes: {
    paddockLeachedKg: {
      label: 'nitrate leached below the paddock (N)',
      unit: 'kg',
      formula:
        'each week part of the ammonium nitrifies; of that nitrate the Burns share of the drainage still to come leaves the root zone, less what the sward under urine patches takes up in winter and, by warmth, once it grows',
      source: ['burns1975'],
      when: 'paddockShare',
    },
    weekPaddockNitrateLeachedKg: week(
      'nitrate formed this week that will leach (N)',
      'kg',
      'ammonium nitrified in the week × Burns share of the drainage still to come',
      { when: 'paddockShare' },
    ),
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const openKg = read.paddockOpenKg[i];
      if (openKg === 0) {
        write.paddockLeachedKg[i] = 0;
        write.weekPaddockNitrateLeachedKg.fill(0, at, at + WEEKS);
        continue;
      }
      const ammonium = read.paddockAmmoniumKg[i];
      const open = ammonium > 0 ? openKg / ammonium : 0;
      const reachedHa = read.spotReachedHa[i] + read.restReachedHa[i];
      const poolKgPerHa = reachedHa > 0 ? openKg / reachedHa : 0;
      for (let w = 0; w < WEEKS; w++) deposits[w] = read.weekPaddockAmmoniumKg[at + w];
      write.paddockLeachedKg[i] =
        open * leachedFromWeekKg(i, 0, WEEKS, deposits, poolKgPerHa, read, leachedByWeek);
      for (let w = 0; w < WEEKS; w++) write.weekPaddockNitrateLeachedKg[at + w] = open * leachedByWeek[w];
    }
  },
});

const washedOff = (label: string, element: string, column: string, share: string, source?: string[]) =>
  kg(label, `${element} dropped × (1 − e^(−share × run-off ÷ reference run-off))`, source).of(
    [column, 'paddockWashMm', share, 'runoffReferenceMm'],
    (i, inKg, wash, fraction, reference) => inKg[i] * washedFraction(wash[i], fraction[i], reference[i]),
  );

const kept = {
  paddockRunoffKg: kg(
    'nitrogen washed off the paddock',
    'nitrogen dropped × (1 − e^(−share × run-off ÷ reference run-off)), at most the organic nitrogen; run-off counts by the share dropped before it, and round the feeding places it is that of trodden ground',
    ['salomon2015'],
  ).of(
    [
      'paddockNitrogenInKg', 'paddockTanDroppedKg', 'paddockWashMm', 'runoffNitrogenFraction', 'runoffReferenceMm',
    ], // biome-ignore format: one list
    (i, nitrogen, tan, wash, fraction, reference) =>
      Math.min(nitrogen[i] - tan[i], nitrogen[i] * washedFraction(wash[i], fraction[i], reference[i])),
  ),
  paddockNitrogenKeptKg: kg(
    'nitrogen left in paddock and sward',
    'nitrogen dropped − ammonia − nitrous oxide − nitrogen gas − washed off − leached',
  ).minus('paddockNitrogenInKg', [
    'paddockAmmoniaKg', 'paddockNitrousKg', 'paddockDinitrogenKg', 'paddockRunoffKg', 'paddockLeachedKg',
  ]), // biome-ignore format: one list
  paddockMineralKg: kg(
    'of it mineral nitrogen when grass grows',
    'TAN dropped − ammonia − nitrous oxide − nitrogen gas − leached',
  ).minus('paddockNitrifiableKg', ['paddockLeachedKg']),
  paddockPhosphorusLostKg: washedOff(
    'phosphorus washed off the paddock',
    'phosphorus',
    'paddockPhosphorusInKg',
    'runoffPhosphorusFraction',
    ['salomon2015'],
  ),
  paddockPotassiumLostKg: washedOff(
    'potassium washed off the paddock',
    'potassium',
    'paddockPotassiumInKg',
    'runoffPotassiumFraction',
  ),
  paddockPhosphorusKeptKg: kg('phosphorus left on the paddock', 'phosphorus dropped − washed off').minus(
    'paddockPhosphorusInKg',
    ['paddockPhosphorusLostKg'],
  ),
  paddockPotassiumKeptKg: kg('potassium left on the paddock', 'potassium dropped − washed off').minus(
    'paddockPotassiumInKg',
    ['paddockPotassiumLostKg'],
  ),
  paddockCarbonKeptKg: kg(
    'carbon dropped on the paddock',
    'carbon of dung, urine and wasted feed; nothing taken off for rotting',
  ).same('paddockCarbonInKg'),
  nitrogenLoadKgPerHa: made('nitrogen dropped a hectare', 'kg/ha', 'nitrogen dropped ÷ paddock').ratio(
    'paddockNitrogenInKg',
    'paddockHa',
  ),
  spotLoadKgPerHa: made(
    'nitrogen dropped a hectare of feeding places',
    'kg/ha',
    'nitrogen dropped × share round the feeding places ÷ (paddock × their share of it)',
    ['salomon2015'],
  ).of(
    ['paddockNitrogenInKg', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
    (i, nitrogen, hectares, share, area) =>
      hectares[i] > 0 && area[i] > 0 ? (nitrogen[i] * share[i]) / (hectares[i] * area[i]) : 0,
  ),
};

export const paddock = [dropped, ammonia, washing, gases, sward, leaching, kept, trodden] as const;

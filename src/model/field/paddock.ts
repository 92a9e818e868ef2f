/** Dung, urine and trampled feed on the paddock → gases, wash-off, leaching, what stays; sward lost to treading. */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { temperatureFactor } from '../slurry/ammonia.ts';
import { minerals } from './minerals.ts';
import { sward } from './sward.ts';
import { trodden } from './trodden.ts';
import { twoWinters } from './twoWinters.ts';
import { urine } from './urine.ts';
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
    '@weather', 'weatherIndex', 'winterDays', 'paddockTanDroppedKg', 'urineAmmoniaFraction', 'ammoniaSlopePerC',
    'ammoniaReferenceC', 'frozenAmmoniaFactor', 'thawAmmoniaFraction', 'weekTemperatureC', 'weekFrozenDays',
  ], // biome-ignore format: one list
  makes: {
    paddockUrineAmmoniaKg: {
      label: 'ammonia from urine on the paddock (N)',
      unit: 'kg',
      formula:
        'TAN dropped evenly over the winter × share lost at the reference temperature × e^(slope × (week temperature − reference)); on frozen ground less, and part of the rest when it thaws',
      source: ['whitehead1990', 'lithuania2013'],
      when: 'paddockShare',
    },
    weekPaddockAmmoniumKg: week(
      'ammonium that enters the soil of the paddock (N)',
      'kg',
      'TAN dropped in the week − ammonia − held back by frost + freed by thaw; what never thaws enters at the end',
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
        write.paddockUrineAmmoniaKg[i] = 0;
        entering.fill(0, at, at + WEEKS);
        continue;
      }
      const days = read.winterDays[i];
      const weatherDays = read['@weather'][read.weatherIndex[i]].days;
      const perDay = days > 0 ? 1 / days : 0;
      const fraction = read.urineAmmoniaFraction[i];
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
      // Ground that never thaws keeps what frost held.
      if (held > 0) entering[at + Math.min(WEEKS, Math.ceil(weatherDays / 7)) - 1] += held;
      write.paddockUrineAmmoniaKg[i] = gone;
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

const entering = {
  paddockWashedFraction: made(
    'share of what is dropped that run-off carries away',
    'fraction',
    '1 − e^(−share × run-off ÷ reference run-off); run-off counts by the share dropped before it, and round the feeding places it is that of trodden ground',
    ['salomon2015'],
  ).of(['paddockWashMm', 'runoffNitrogenFraction', 'runoffReferenceMm'], (_i, wash, fraction, reference) =>
    washedFraction(wash[_i], fraction[_i], reference[_i]),
  ),
  paddockDungAmmoniaKg: kg(
    'ammonia from dung and wasted feed on the paddock (N)',
    '(nitrogen dropped − TAN dropped) × share lost',
    ['whitehead1990'],
  ).of(
    ['paddockNitrogenInKg', 'paddockTanDroppedKg', 'dungAmmoniaFraction'],
    (i, nitrogen, tan, fraction) => (nitrogen[i] - tan[i]) * Math.min(1, fraction[i]),
  ),
  paddockAmmoniaKg: kg('ammonia from the paddock (N)', 'ammonia from urine + from dung').sum([
    'paddockUrineAmmoniaKg',
    'paddockDungAmmoniaKg',
  ]),
  paddockRunoffKg: kg(
    'nitrogen washed off the paddock',
    '(nitrogen dropped − ammonia) × share that run-off carries away, of ammonium and dung alike',
    ['salomon2015'],
  ).of(
    ['paddockNitrogenInKg', 'paddockAmmoniaKg', 'paddockWashedFraction'],
    (i, nitrogen, ammonia, share) => (nitrogen[i] - ammonia[i]) * share[i],
  ),
  paddockDungNitrogenKg: kg(
    'nitrogen of dung and wasted feed that stays on the paddock',
    '(nitrogen dropped − TAN dropped − ammonia of dung) × (1 − share that run-off carries away)',
  ).of(
    ['paddockNitrogenInKg', 'paddockTanDroppedKg', 'paddockDungAmmoniaKg', 'paddockWashedFraction'],
    (i, nitrogen, tan, ammonia, share) => (nitrogen[i] - tan[i] - ammonia[i]) * (1 - share[i]),
  ),
};

const kept = {
  paddockNitrogenKeptKg: kg(
    'nitrogen left in paddock and sward',
    'nitrogen dropped − ammonia − nitrous oxide − nitrogen gas − washed off − leached',
  ).minus('paddockNitrogenInKg', [
    'paddockAmmoniaKg', 'paddockNitrousKg', 'paddockDinitrogenKg', 'paddockRunoffKg', 'paddockLeachedKg',
    'paddockOrganicLeachedKg',
  ]), // biome-ignore format: one list
  paddockNitrogenInCropKg: kg(
    'nitrogen of the paddock that herbage has taken',
    'from urine round the feeding places + on the rest + from dung, until grass grows in the second spring',
  ).sum(['spotUptakeKg', 'restUptakeKg', 'dungUptakeKg']),
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

export const paddock = [
  dropped, ammonia, washing, entering, sward, urine, twoWinters, kept, minerals, ...trodden,
] as const; // biome-ignore format: one list

/** What becomes of urine nitrogen in the week it enters the soil: past the roots, bound, nitrogen gas; the rest is open. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week } from '../series.ts';

const ENTERS = [
  '@weather', 'weatherIndex', 'paddockTanDroppedKg', 'paddockUrineAmmoniaKg', 'paddockWashedFraction', 'weekPaddockAmmoniumKg',
] as const; // biome-ignore format: one list
const PAST = [...ENTERS, 'weekWetDays', 'urineBypassFraction'] as const;
const BOUND = [...PAST, 'urineBoundFraction'] as const;
const GAS = [
  ...BOUND, 'urineDinitrogenDrainedFraction', 'urineDinitrogenWetFraction', 'urineCoDenitrificationFraction',
  'urineCoDenitrificationForm', 'paddockNitrogenInKg', 'soilNitricFraction',
] as const; // biome-ignore format: one list

/**
 * The published shares are of the urine nitrogen dropped. What entered the soil is therefore scaled up by what
 * ammonia and run-off took before; each share then takes at most what is left.
 */
export const urine = walk({
  name: 'urine in the soil',
  about: 'Splits the urine nitrogen that enters the soil of the paddock each week, by how wet the week is.',
  reads: [...GAS, 'paddockNitrousFraction'],
  makes: {
    paddockBypassKg: {
      label: 'urine nitrogen that ran below the roots at once',
      unit: 'kg',
      formula:
        'urine nitrogen of each week × share of its days above field capacity × share that runs through then',
      from: PAST,
      source: ['williams1989'],
      when: 'paddockShare',
    },
    paddockUrineBoundKg: {
      label: 'urine nitrogen bound in soil and roots',
      unit: 'kg',
      formula: 'urine nitrogen × share bound, at most what did not run through',
      from: BOUND,
      source: ['decau2003', 'saarijarvi2009'],
      when: 'paddockShare',
    },
    paddockDinitrogenKg: {
      label: 'nitrogen gas and nitric oxide from the paddock (N)',
      unit: 'kg',
      formula:
        'urine nitrogen × share lost as nitrogen gas, by the share of wet days in its week, + nitrogen dropped × share of nitric oxide, at most what is left',
      from: GAS,
      source: ['di2002', 'fraser1994', 'selbie2015', 'emep2019d'],
      when: 'paddockShare',
    },
    paddockNitrousKg: {
      label: 'nitrous oxide from the paddock (N)',
      unit: 'kg',
      formula: 'nitrogen dropped × share, at most what is left of the urine nitrogen',
      source: ['ipcc2019'],
      when: 'paddockShare',
    },
    weekPaddockBypassKg: week(
      'urine nitrogen that ran below the roots at once',
      'kg',
      'urine nitrogen of the week × share of its days above field capacity × share that runs through then',
      { from: PAST, when: 'paddockShare' },
    ),
    weekPaddockOpenKg: week(
      'ammonium left open in the soil of the paddock (N)',
      'kg',
      'urine nitrogen that enters the soil − run through − bound − nitrogen gas − nitrous and nitric oxide',
      { when: 'paddockShare' },
    ),
  },
  run({ count, read, write }) {
    const { weekPaddockAmmoniumKg, weekWetDays } = read;
    const through = write.weekPaddockBypassKg;
    const open = write.weekPaddockOpenKg;
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const tan = read.paddockTanDroppedKg[i];
      const ammonia = read.paddockUrineAmmoniaKg[i];
      const days = read['@weather'][read.weatherIndex[i]].days;
      const enters = tan - ammonia;
      if (!(enters > 0)) {
        through.fill(0, at, at + WEEKS);
        open.fill(0, at, at + WEEKS);
        write.paddockBypassKg[i] = 0;
        write.paddockUrineBoundKg[i] = 0;
        write.paddockDinitrogenKg[i] = 0;
        write.paddockNitrousKg[i] = 0;
        continue;
      }
      const unwashed = 1 - read.paddockWashedFraction[i];
      const bypassFraction = read.urineBypassFraction[i];
      const boundFraction = read.urineBoundFraction[i];
      const dry = read.urineDinitrogenDrainedFraction[i];
      const form = read.urineCoDenitrificationForm[i];
      const wetGas =
        (1 - form) * read.urineDinitrogenWetFraction[i] + form * read.urineCoDenitrificationFraction[i];
      const nitric = read.soilNitricFraction[i] * read.paddockNitrogenInKg[i];
      const nitrous = read.paddockNitrousFraction[i] * read.paddockNitrogenInKg[i];
      let allThrough = 0;
      let allBound = 0;
      let allGas = 0;
      let allNitrous = 0;
      for (let w = 0; w < WEEKS; w++) {
        const k = at + w;
        const entering = weekPaddockAmmoniumKg[k];
        if (!(entering > 0)) {
          through[k] = 0;
          open[k] = 0;
          continue;
        }
        const part = entering / enters;
        const dropped = part * tan;
        const wet = weekWetDays[k] / Math.min(7, days - 7 * w);
        let left = entering * unwashed;
        const past = Math.min(left, dropped * wet * bypassFraction);
        left -= past;
        const held = Math.min(left, dropped * boundFraction);
        left -= held;
        const gas = Math.min(left, dropped * Math.max(0, dry + wet * (wetGas - dry)) + part * nitric);
        left -= gas;
        const laughing = Math.min(left, part * nitrous);
        left -= laughing;
        allThrough += past;
        allBound += held;
        allGas += gas;
        allNitrous += laughing;
        through[k] = past;
        open[k] = left;
      }
      write.paddockBypassKg[i] = allThrough;
      write.paddockUrineBoundKg[i] = allBound;
      write.paddockDinitrogenKg[i] = allGas;
      write.paddockNitrousKg[i] = allNitrous;
    }
  },
});

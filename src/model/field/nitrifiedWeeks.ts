/** Which share of the ammonium in the soil turns into nitrate in each week: what paddock and spread manure share. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week } from '../series.ts';
import { nitrificationRate, nitrifiedFraction } from './nitrification.ts';

export const nitrifiedWeeks = walk({
  name: 'nitrification',
  about: 'The share of the ammonium in the soil that turns into nitrate, week by week.',
  reads: [
    '@weather', 'weatherIndex', 'weekTemperatureC', 'weekFrozenDays', 'nitrifiedFractionPerWeek', 'nitrificationPerC',
    'nitrificationReferenceC', 'nitrificationFrozenFractionPerWeek',
  ], // biome-ignore format: one list
  makes: {
    weekNitrifiedFraction: week(
      'ammonium in the soil that turns into nitrate',
      'fraction',
      'of what is there at the start of the week: first order, the rate exponential in temperature over the unfrozen days; the share of frozen ground over the frozen ones',
    ),
  },
  run({ count, read, write, repeats }) {
    const { weekTemperatureC, weekFrozenDays } = read;
    for (let i = 0; i < count; i++) {
      // Scenarios of one draw stand in the same weather and mostly on the same soil.
      if (repeats(i)) continue;
      const at = i * WEEKS;
      const weatherDays = read['@weather'][read.weatherIndex[i]].days;
      const rate = nitrificationRate(read.nitrifiedFractionPerWeek[i]);
      const perC = read.nitrificationPerC[i];
      const referenceC = read.nitrificationReferenceC[i];
      const frozenFraction = read.nitrificationFrozenFractionPerWeek[i];
      for (let w = 0; w < WEEKS; w++) {
        const days = Math.min(7, weatherDays - 7 * w);
        const frozen = weekFrozenDays[at + w] / days;
        write.weekNitrifiedFraction[at + w] =
          days > 0
            ? (days / 7) *
              nitrifiedFraction(weekTemperatureC[at + w], frozen, rate, perC, referenceC, frozenFraction)
            : Number.NaN;
      }
    }
  },
});

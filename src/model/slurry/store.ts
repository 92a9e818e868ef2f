/** Slurry in an outside store by week: its temperature, ammonia by surface or share, and methane of pit or store. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { staysFraction, temperatureFactor, weighed } from './ammonia.ts';
import { MONTH_DAYS, monthlyMethaneFraction } from './methane.ts';

const TEMPERATURE = ['slurryShare', 'weekTemperatureC', 'storeFollowDays', 'storeLowestC'] as const;
const LIES = ['winterDays', 'spreadDay'] as const;
const AMMONIA = [
  ...TEMPERATURE, ...LIES, 'storeTanKg', 'storeGasFraction', 'storeSurfaceM2', 'storeCoverFactor',
  'storeAmmoniaKgPerM2Day', 'storeAmmoniaTanFraction', 'storeShareForm', 'storeAmmoniaSlopePerC',
  'storeAmmoniaReferenceC', 'storeMostWeekFraction',
] as const; // biome-ignore format: one list
const METHANE = [
  ...TEMPERATURE, ...LIES, 'weekPitC', 'pitStoreShare', 'methaneActivationCalPerMol',
  'methaneReferenceC', 'methaneLowestC', 'emptiedCleanShare', 'cleanStoreMethaneFactor', 'slurryMethaneFraction',
  'nordicMethaneFraction', 'methaneFixedForm', 'methaneNordicForm',
] as const; // biome-ignore format: one list

/** Half of a year, for which the share of the store is given. */
const SHARE_DAYS = 180;

export const outsideStore = walk({
  name: 'slurry store',
  about:
    'Temperature and ammonia of an outside slurry store by week, and methane of the slurry month by month.',
  reads: [
    ...AMMONIA, 'weekPitC', 'pitStoreShare', 'methaneActivationCalPerMol', 'methaneReferenceC',
    'methaneLowestC', 'emptiedCleanShare', 'cleanStoreMethaneFactor', 'slurryMethaneFraction', 'nordicMethaneFraction',
    'methaneFixedForm', 'methaneNordicForm',
  ], // biome-ignore format: one list
  makes: {
    weekStoreC: week(
      'slurry in an outside store',
      '°C',
      'follows the air with its lag, from that of the first week, not below the lowest',
      { from: TEMPERATURE, when: 'slurryShare' },
    ),
    storeAmmoniaKg: {
      label: 'ammonia from the slurry store (N)',
      unit: 'kg',
      formula:
        'each week until the slurry is spread, or the winter ends: surface × ammonia of a m² and day × response to the temperature of the store × factor of the cover; in the second form TAN put in × share lost in 180 days instead of surface; none for slurry that stays under the slats, which is counted with the house',
      from: AMMONIA,
      when: 'slurryShare',
      source: ['sommer1993', 'loyon2016', 'quZhang2021', 'lithuania2013'],
    },
    storeMethaneFraction: {
      label: 'share of the methane it can give that the stored slurry gives',
      unit: 'fraction',
      formula:
        'month by month: what the solids in pit or store can still give × share that rises with temperature, until the slurry is spread; less where it was emptied clean; in the other forms a fixed share by cover, or the Nordic one',
      from: METHANE,
      when: 'slurryShare',
      source: ['ipcc2019', 'ipcc2006', 'rodhe2009'],
    },
  },
  // Long: one pass through the weeks; the store, its ammonia and its methane share their temperature.
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const row = i * WEEKS;
      // Farms without slurry are spared the weeks.
      if (!(read.slurryShare[i] > 0)) {
        write.weekStoreC.fill(0, row, row + WEEKS);
        write.storeAmmoniaKg[i] = 0;
        write.storeMethaneFraction[i] = 0;
        continue;
      }
      const days = read.winterDays[i];
      const end = Math.max(days, read.spreadDay[i]);
      const lowest = read.storeLowestC[i];
      const stays = staysFraction(7, read.storeFollowDays[i]);
      const tanIn = read.storeTanKg[i] * Math.max(0, 1 - read.storeGasFraction[i]);
      const cover = read.storeCoverFactor[i];
      const emits = tanIn > 0 && cover > 0;
      const byShare = read.storeShareForm[i];
      const perDay = weighed(
        byShare,
        read.storeAmmoniaKgPerM2Day[i] * read.storeSurfaceM2[i],
        (read.storeTanKg[i] * read.storeAmmoniaTanFraction[i]) / SHARE_DAYS,
      );
      const slope = read.storeAmmoniaSlopePerC[i];
      const reference = read.storeAmmoniaReferenceC[i];
      const most = Math.min(1, read.storeMostWeekFraction[i]);

      const inPit = read.pitStoreShare[i];
      const fixed = read.methaneFixedForm[i];
      const rots = days > 0;
      const activation = read.methaneActivationCalPerMol[i];
      const full = read.methaneReferenceC[i];
      const coldest = read.methaneLowestC[i];

      let air = 0;
      let store = Number.NaN;
      let tan = 0;
      let ammonia = 0;
      let waiting = 0;
      let fresh = 0;
      let warmth = 0;
      let monthDays = 0;
      let month = 0;
      let methane = 0;
      for (let w = 0; w < WEEKS; w++) {
        const known = read.weekTemperatureC[row + w];
        // Past the end of the weather its last week goes on.
        if (!Number.isNaN(known)) air = Math.max(lowest, known);
        store = w === 0 ? air : air + stays * (store - air);
        write.weekStoreC[row + w] = store;
        const lies = Math.min(7, end - 7 * w);
        if (!(lies > 0)) continue;
        const enters = days > 0 ? winterDaysInWeek(w, days) / days : 0;
        if (emits) {
          tan += tanIn * enters;
          const asked = perDay * lies * cover * temperatureFactor(store, slope, reference);
          const lost = Math.min(asked, most * tan);
          tan -= lost;
          ammonia += lost;
        }
        if (!rots || !(fixed < 1)) continue;
        fresh += enters;
        warmth += lies * weighed(inPit, store, read.weekPitC[row + w]);
        monthDays += lies;
        const whole = 7 * (w + 1) >= (month + 1) * MONTH_DAYS;
        if (whole || 7 * (w + 1) >= end || w === WEEKS - 1) {
          const there = waiting + fresh;
          const part = whole ? 1 : Math.min(1, monthDays / MONTH_DAYS);
          const given = there * part * monthlyMethaneFraction(warmth / monthDays, activation, full, coldest);
          methane += given;
          waiting = there - given;
          fresh = 0;
          warmth = 0;
          monthDays = 0;
          month++;
        }
      }
      write.storeAmmoniaKg[i] = ammonia;
      const clean = weighed(read.emptiedCleanShare[i], 1, read.cleanStoreMethaneFactor[i]);
      const table = weighed(
        read.methaneNordicForm[i],
        read.slurryMethaneFraction[i],
        read.nordicMethaneFraction[i],
      );
      write.storeMethaneFraction[i] = rots ? weighed(fixed, methane * clean, table) : 0;
    }
  },
});

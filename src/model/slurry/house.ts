/** Slatted house and the pit under it: temperature and ammonia by week, one budget for both. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { houseResponse, staysFraction, weighed } from './ammonia.ts';

const HOUSE = ['slurryShare', 'weekTemperatureC', 'winterDays', 'houseWarmerC', 'houseLowestC'] as const;
const PIT = [...HOUSE, 'pitFollowDays'] as const;

/** Part of a year in a week of seven days. */
const WEEK_OF_YEAR = 7 / 365;

export const slattedHouse = walk({
  name: 'slatted house',
  about: 'Air of the slatted house, slurry of the pit, and the ammonia of both, week by week.',
  reads: [
    ...PIT, 'spreadDay', 'slatsTanKg', 'slurryTanInKg', 'slatsUsedM2', 'pitStoreShare', 'houseFloorFraction',
    'houseAmmoniaTanFraction', 'houseAmmoniaKgPerM2Year', 'houseAreaForm', 'houseAmmoniaSlopePerC',
    'houseAmmoniaReferenceC', 'houseAmmoniaLinearPerC', 'houseAmmoniaLinearLeastFactor', 'houseAmmoniaPower',
    'houseOtherForm', 'housePowerForm', 'storeMostWeekFraction',
  ], // biome-ignore format: one list
  makes: {
    weekHouseC: week(
      'air in the slatted house',
      '°C',
      'mean of the week outdoors + warmth of the house while stock is in, not below the lowest',
      { from: HOUSE, when: 'slurryShare' },
    ),
    weekPitC: week(
      'slurry in the pit',
      '°C',
      'follows the air of the house with its lag, from that of the first week',
      { from: PIT, when: 'slurryShare' },
    ),
    weekHouseAmmoniaKg: week(
      'ammonia from slatted house and pit (N)',
      'kg',
      'TAN dropped in the week × share lost × response to the mean temperature of slats and pit; in the second form slatted area × ammonia of a m² instead',
      { when: 'slurryShare', source: ['kai2017', 'schrade2012'] },
    ),
    houseAmmoniaKg: {
      label: 'ammonia from the slatted house and its pit (N)',
      unit: 'kg',
      formula:
        'sum over the weeks while stock is in, at most the TAN dropped; slurry that stays under the slats until it is spread goes on at the pit’s part of it; scrapings of a yard in that pit give the pit’s part too',
      when: 'slurryShare',
      source: ['kai2017', 'schrade2012', 'sanchis2019', 'elzingMonteny1997'],
    },
  },
  // Long: one pass through the weeks; what is in the pit hangs on the weeks before.
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const row = i * WEEKS;
      // Farms without slurry are spared the weeks.
      if (!(read.slurryShare[i] > 0)) {
        write.weekHouseC.fill(0, row, row + WEEKS);
        write.weekPitC.fill(0, row, row + WEEKS);
        write.weekHouseAmmoniaKg.fill(0, row, row + WEEKS);
        write.houseAmmoniaKg[i] = 0;
        continue;
      }
      const days = read.winterDays[i];
      const lowest = read.houseLowestC[i];
      const warmer = read.houseWarmerC[i];
      const stays = staysFraction(7, read.pitFollowDays[i]);
      const slatsTan = read.slatsTanKg[i];
      const scrapedTan = Math.max(0, read.slurryTanInKg[i] - slatsTan) * read.pitStoreShare[i];
      const area = read.slatsUsedM2[i];
      const emits = days > 0 && slatsTan + scrapedTan > 0;
      const floor = read.houseFloorFraction[i];
      const ofPit = 1 - floor;
      const byArea = read.houseAreaForm[i];
      const shareOfTan = read.houseAmmoniaTanFraction[i];
      const perM2Week = read.houseAmmoniaKgPerM2Year[i] * WEEK_OF_YEAR;
      const reference = read.houseAmmoniaReferenceC[i];
      const perC = read.houseAmmoniaSlopePerC[i];
      const linear = read.houseAmmoniaLinearPerC[i];
      const least = read.houseAmmoniaLinearLeastFactor[i];
      const exponent = read.houseAmmoniaPower[i];
      const other = read.houseOtherForm[i];
      const power = read.housePowerForm[i];
      const most = Math.min(1, read.storeMostWeekFraction[i]);
      const end = read.pitStoreShare[i] > 0 ? Math.max(days, read.spreadDay[i]) : days;
      const tanPerWeek = days > 0 ? (7 * (slatsTan + scrapedTan)) / days : 0;
      let outdoors = 0;
      let pit = Number.NaN;
      let inPit = 0;
      let sum = 0;
      for (let w = 0; w < WEEKS; w++) {
        const known = read.weekTemperatureC[row + w];
        // Past the end of the weather its last week goes on.
        if (!Number.isNaN(known)) outdoors = known;
        const inWeek = winterDaysInWeek(w, days);
        const air = Math.max(lowest, outdoors + (inWeek > 0 ? warmer : 0));
        pit = w === 0 ? air : air + stays * (pit - air);
        write.weekHouseC[row + w] = air;
        write.weekPitC[row + w] = pit;
        const lies = Math.min(7, end - 7 * w);
        if (!emits || !(lies > 0)) {
          write.weekHouseAmmoniaKg[row + w] = 0;
          continue;
        }
        let lost = 0;
        if (inWeek > 0) {
          const part = inWeek / days;
          const dropped = slatsTan * part;
          const warmth = houseResponse(floor * air + ofPit * pit, reference, perC, linear, least, exponent, other, power); // biome-ignore format: one call
          const ofShare = shareOfTan * warmth * dropped;
          const ofArea = perM2Week * (inWeek / 7) * area * warmth;
          lost = Math.min(dropped, weighed(byArea, ofShare, ofArea));
          inPit += (slatsTan + scrapedTan) * part - lost;
        }
        if (scrapedTan > 0 || inWeek < lies) {
          const warmth = houseResponse(pit, reference, perC, linear, least, exponent, other, power);
          const empty = lies - inWeek;
          const ofShare = shareOfTan * (scrapedTan * (inWeek / days) + tanPerWeek * (empty / 7));
          // A scraped yard has no slatted area of its own: it gives its share in both forms.
          const scraped = shareOfTan * scrapedTan * (inWeek / days);
          const ofArea = scraped + perM2Week * (empty / 7) * area;
          const left = Math.min(most * inPit, ofPit * warmth * weighed(byArea, ofShare, ofArea));
          inPit -= left;
          lost += left;
        }
        write.weekHouseAmmoniaKg[row + w] = lost;
        sum += lost;
      }
      write.houseAmmoniaKg[i] = sum;
    }
  },
});

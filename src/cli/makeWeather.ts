/**
 * Makes the daily weather of the three demo farms, from invented normals and a fixed seed. The shipped files under
 * data/weather are exactly this output; a test compares them. Nothing in them was ever measured.
 */

import { makeMonths, monthsFrom, type Normals } from '../model/weather/weatherGenerator.ts';
import { writeWeather } from '../tables/weather.ts';
import { dateOf, dayNumber } from '../units/days.ts';
import { normals, stream } from '../units/random.ts';

interface DemoClimate {
  readonly file: string;
  readonly seed: number;
  readonly normals: Normals;
  /** How far a month strays from its normal, °C: in the coldest half of the year and in the warmest. */
  readonly winterSpreadC: number;
  readonly summerSpreadC: number;
  /** Spread of a month's rain, as the standard deviation of its logarithm. */
  readonly rainSpread: number;
}

const FIRST = dayNumber('2005-09-01');
const MONTHS = 21 * 12;

/** Invented; shaped after what such a place is known for, not after any station. */
export const DEMO_CLIMATES: readonly DemoClimate[] = [
  {
    file: 'data/weather/balticHills.csv',
    seed: 57,
    normals: {
      rainMm: [48, 38, 37, 35, 54, 82, 72, 86, 61, 68, 58, 53],
      temperatureC: [-5, -5.3, -1.3, 5.2, 11.2, 15.2, 17.8, 16.3, 11.3, 5.7, 0.6, -2.9],
      rangeC: [5.5, 6.5, 8, 10, 12, 11.5, 11.5, 11, 9.5, 6.5, 4.5, 5],
      wetDays: [18, 15, 13, 10, 11, 13, 12, 13, 13, 16, 17, 18],
    },
    winterSpreadC: 3,
    summerSpreadC: 1.4,
    rainSpread: 0.38,
  },
  {
    file: 'data/weather/maritimeCoast.csv',
    seed: 45,
    normals: {
      rainMm: [108, 88, 100, 92, 88, 86, 82, 88, 98, 118, 126, 124],
      temperatureC: [-6.2, -6, -2.2, 3.8, 9.9, 14.9, 19, 18.9, 14.6, 9, 3.8, -2.2],
      rangeC: [8.5, 8.5, 8.5, 8.5, 10, 10.5, 10, 9.5, 9.5, 9, 7.5, 7.5],
      wetDays: [16, 13, 14, 14, 14, 13, 12, 11, 11, 13, 15, 16],
    },
    winterSpreadC: 2.2,
    summerSpreadC: 1.1,
    rainSpread: 0.36,
  },
  {
    file: 'data/weather/atlanticGrassland.csv',
    seed: 53,
    normals: {
      rainMm: [124, 92, 94, 72, 76, 76, 80, 104, 100, 128, 124, 130],
      temperatureC: [5.6, 5.7, 6.9, 8.7, 11.3, 13.7, 15.4, 15.2, 13.3, 10.5, 7.7, 6],
      rangeC: [5.8, 6.3, 7, 8, 8.5, 8.2, 7.6, 7.4, 7.4, 6.6, 5.9, 5.6],
      wetDays: [20, 17, 18, 15, 16, 15, 16, 18, 17, 20, 20, 20],
    },
    winterSpreadC: 1.3,
    summerSpreadC: 0.9,
    rainSpread: 0.36,
  },
];

/** Path and text of every demo file. */
export function demoWeather(): { file: string; text: string }[] {
  return DEMO_CLIMATES.map((climate) => ({
    file: climate.file,
    text: writeWeather({ days: demoDays(climate) }),
  }));
}

function demoDays({ normals: usual, seed, winterSpreadC, summerSpreadC, rainSpread }: DemoClimate) {
  const normal = normals(stream(seed, 'months'));
  const coldest = Math.min(...usual.temperatureC);
  const span = Math.max(...usual.temperatureC) - coldest;
  const all = monthsFrom(FIRST, 366 * (MONTHS / 12)).slice(0, MONTHS);
  // Every month gets its own normals: months 0…n in place of January to December.
  const strayed = all.map(({ month }) => {
    const warmth = (usual.temperatureC[month] - coldest) / span;
    const spread = winterSpreadC + (summerSpreadC - winterSpreadC) * warmth;
    const wetness = normal() * rainSpread;
    return {
      rainMm: usual.rainMm[month] * Math.exp(wetness - (rainSpread * rainSpread) / 2),
      temperatureC: usual.temperatureC[month] + spread * Math.max(-2, Math.min(2, normal())),
      rangeC: usual.rangeC[month],
      wetDays: usual.wetDays[month] * Math.exp(wetness / 2),
    };
  });
  const own: Normals = {
    rainMm: strayed.map((m) => m.rainMm),
    temperatureC: strayed.map((m) => m.temperatureC),
    rangeC: strayed.map((m) => m.rangeC),
    wetDays: strayed.map((m) => m.wetDays),
  };
  const made = makeMonths(
    own,
    all.map((m, k) => ({ ...m, month: k })),
    seed,
  );
  return Array.from(made.rainMm, (rainMm, d) => ({
    date: dateOf(FIRST + d),
    rainMm,
    minC: made.minC[d],
    maxC: made.maxC[d],
    meanC: made.meanC[d],
  }));
}

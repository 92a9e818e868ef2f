import type { FrostClimate } from './frostDepth.ts';

/** A year of daily weather from the first day of a winter, ready for the pipeline's loop. */
export interface PreparedWeather {
  /** What it is called on screen: a station and year, or "normals". */
  readonly label: string;
  /** First day, ISO. */
  readonly start: string;
  /** Days there are, at most `DAYS`; the loops stop there. */
  readonly days: number;
  readonly rainMm: Float64Array;
  readonly temperatureC: Float64Array;
  /** (Tmean + 17.8)·√(Tmax − Tmin)·Ra in mm a day: Hargreaves without its coefficient. */
  readonly hargreavesTermMm: Float64Array;
  /** Of all whole years of the place; of this year alone when absent. Plain data: a worker is sent it. */
  readonly frost?: FrostClimate;
}

declare module '../engine/columns.ts' {
  interface Resources {
    /** The winters of the run, found by each row's `weatherIndex`. */
    weather: readonly PreparedWeather[];
  }
}

/**
 * What a stage of the model is: a declaration (columns read and made, each with unit, label, formula in words
 * and source) and one loop over typed columns. The declarations are also the dictionary of quantities, the
 * CSV headings, the labels on screen and the tree behind "how was this computed".
 */
import type { PreparedWeather } from './weather/prepared.ts';

/** Weeks in a year from the first day of the winter; the last one has a day or two. */
export const WEEKS = 53;
/** Days in the longest year. */
export const DAYS = 366;

/** The way matter takes through the farm; a quantity tied to one is absent where no matter takes it. */
export type Route = 'paddock' | 'slurry' | 'pack';

export interface Quantity {
  readonly label: string;
  /** Unit as printed: kg, t, m³, m, mm, h, d, %, fraction, `money` for the notebook's currency. */
  readonly unit: string;
  /** How it is computed, in words a keeper can follow. */
  readonly formula: string;
  /** Columns (read or made here) it depends on; families by their column pattern, e.g. `group*HeadCount`. */
  readonly from: readonly string[];
  /** Ids of rows in data/sources.csv that give the method. */
  readonly source?: readonly string[];
  /** Absent (null) in scenarios where nothing takes this route. */
  readonly route?: Route;
}

/** A weekly result: `WEEKS` numbers a row, NaN after the last week it exists in. */
export interface Track {
  readonly label: string;
  readonly unit: string;
  readonly formula: string;
  readonly from: readonly string[];
  readonly route?: Route;
}

type Columns<N extends string> = { readonly [K in N]: Float64Array };

export interface StageRun<
  R extends string,
  F extends Record<string, readonly string[]>,
  M extends string,
  T extends string,
  U extends string,
  D extends string,
> {
  /** Number of rows in every column of this call. */
  readonly count: number;
  readonly read: Columns<R>;
  /** Repeated inputs: `family.group[2].HeadCount[row]` is column `group3HeadCount`. */
  readonly family: { readonly [K in keyof F]: readonly Columns<F[K][number]>[] };
  readonly write: Columns<M>;
  /** Row-major `count × WEEKS`. */
  readonly track: Columns<T>;
  /** Whether the caller or a later stage reads any of them; a stage may leave them unwritten when nobody does. */
  readonly tracked: boolean;
  readonly readTrack: Columns<U>;
  /** Row-major `count × DAYS`; only when the caller asked for daily series, and few rows. */
  readonly daily: Columns<D> | undefined;
  readonly weather: readonly PreparedWeather[];
}

export interface Stage<
  R extends string = string,
  F extends Record<string, readonly string[]> = Record<string, readonly string[]>,
  M extends string = string,
  T extends string = string,
  U extends string = string,
  D extends string = string,
> {
  readonly name: string;
  readonly about: string;
  readonly reads: readonly R[];
  readonly families?: F;
  readonly makes: Readonly<Record<M, Quantity>>;
  readonly tracks?: Readonly<Record<T, Track>>;
  readonly readsTracks?: readonly U[];
  readonly dailies?: Readonly<Record<D, Track>>;
  readonly run: (io: StageRun<R, F, M, T, U, D>) => void;
}

/** Keeps the literal column names, so that a stage can only touch what it declares. */
export function defineStage<
  const R extends string,
  M extends string,
  T extends string = never,
  const U extends string = never,
  D extends string = never,
  const F extends Record<string, readonly string[]> = Record<never, never>,
>(stage: Stage<R, F, M, T, U, D>): Stage {
  return stage as unknown as Stage;
}

/** Days of week `week` that lie inside a winter of `winterDays`: 7, fewer in the last week, 0 after it. */
export function winterDaysInWeek(week: number, winterDays: number): number {
  return Math.max(0, Math.min(7, winterDays - week * 7));
}

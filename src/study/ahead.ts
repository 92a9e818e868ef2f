/**
 * A notebook read ahead of the page that shows it: what its text and its weather say, as plain data. A page computes its
 * first figures from it before what reads texts is fetched, and reads the text itself afterwards. It holds inputs and no
 * result. `packAhead.ts` makes it.
 */

import { prepare } from '../model/weather/prepareDays.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import type { Notebook } from '../notebook/read.ts';
import { dateOf, dayNumber } from '../units/days.ts';
import type { WinterOf } from './evaluate.ts';

/** Days of one winter in tenths, mm and °C. */
export interface AheadWinter {
  readonly label: string;
  readonly start: string;
  readonly latitudeDeg: number;
  readonly rain: readonly number[];
  readonly min: readonly number[];
  readonly max: readonly number[];
  readonly frost: NonNullable<PreparedWeather['frost']>;
}

/** What of a notebook its first cards need. */
export const FRONT = [
  'version', 'title', 'id', 'by', 'invented', 'units', 'view', 'farm', 'scenarios', 'overrides', 'diary', 'draws', 'decide',
] as const satisfies readonly (keyof Notebook)[]; // biome-ignore format: one list
export type AheadFront = Pick<Notebook, (typeof FRONT)[number]>;

export interface Ahead {
  readonly front: AheadFront;
  readonly winters: readonly AheadWinter[];
  /** The winter each scenario stands in, by its place in `winters`. */
  readonly winterIndex: readonly number[];
}

/** The same notebook without what stands below the cards: words, cells, notes, lines and days of weather. */
export function notebookAhead({ front }: Ahead, text: string, file: string): Notebook {
  return {
    ...front,
    file,
    text,
    readerNotes: [],
    blocks: [],
    weather: new Map(),
    notes: [],
    lineOf: () => 1,
  };
}

/** The winters of its scenarios, to the bit those that the pipeline walks when the whole file is read. */
export function wintersAhead({ winters, winterIndex }: Ahead, { scenarios }: Notebook): WinterOf {
  const prepared = winters.map(({ label, start, latitudeDeg, rain, min, max, frost }): PreparedWeather => {
    const from = dayNumber(start);
    const days = rain.map((tenths, d) => {
      const [minC, maxC] = [min[d] / 10, max[d] / 10];
      return { date: dateOf(from + d), rainMm: tenths / 10, minC, maxC, meanC: (minC + maxC) / 2 };
    });
    return { ...prepare(label, start, days, latitudeDeg), frost };
  });
  return (scenario) => prepared[winterIndex[scenarios.indexOf(scenario)]];
}

/** What an open notebook needs from outside: who reads, what figures rest on, who draws, and who writes. */
import type { PreparedWeather } from '../model/weather/prepared.ts';
import type { Notebook, ReadResult } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import type { Ahead } from '../study/ahead.ts';
import type { WinterOf } from '../study/evaluate.ts';
import type { Tables } from '../tables/coefficient.ts';
import type { Climate } from '../tables/weatherJoin.ts';
import type { RainDay } from '../tables/weatherSeries.ts';
import type { Problem } from '../units/problem.ts';
import type { Explorer } from '../worker/explorer.ts';
import type { StripOf } from './strip.ts';

/** What the store needs from outside, so that a test can give its own. */
export interface Engine {
  readonly tables: Tables;
  readonly read: (text: string, file: string) => ReadResult;
  /** Finds the winters of a notebook; may have to fetch them. */
  readonly winters: (notebook: Notebook) => Promise<FoundWinters>;
  /** The name a weather file of the keeper's goes by: never that of a shipped one. */
  readonly ownName?: (name: string) => string;
  /** Shipped climates, for a gauge that has rain alone, and the text of one. */
  readonly climates?: readonly Climate[];
  readonly climateText?: (file: string) => Promise<string | undefined>;
  /** Draws in the background; without one, results have no ranges. */
  readonly explorer?: Explorer;
}

/** What an edit does to a text: `texts.ts`. Each throws where the text cannot be written so. */
export interface Texts {
  /** Ids that neither model nor tables know. */
  readonly unknown: (notebook: Notebook, tables: Tables) => readonly Problem[];
  readonly turned: (text: string, of: StripOf, id: string, value: number) => { text: string; what: string };
  readonly overridden: (text: string, id: string, value: number | null, because: string) => string;
  readonly withWeather: (text: string, name: string, days: string) => string;
  /** A gauge's rain with the temperature of a climate, as a file and its name; undefined where that cannot be read. */
  readonly rainIn: (
    name: string,
    rain: readonly RainDay[],
    climate: Climate,
    climateText: string | undefined,
  ) => { readonly name: string; readonly text: string } | undefined;
  readonly plainName: (name: string) => string;
}

/** An engine that can write, too, and read a notebook ahead for the next time; undefined where that cannot be. */
export type WholeEngine = Engine & {
  readonly texts: Texts;
  readonly ahead?: (notebook: Notebook) => Promise<Ahead | undefined>;
};

/**
 * An engine that begins with what was read ahead of the page: numbers without their words, one text and its winters.
 * `whole` brings the engine that reads any text, which takes its place.
 */
export type FirstEngine = Engine & { readonly texts?: Texts; readonly whole?: () => Promise<WholeEngine> };

/** The one winter of a scenario, and all those its weather file holds. */
export interface FoundWinters {
  readonly winterOf: WinterOf;
  readonly wintersOf?: (scenario: Scenario) => readonly PreparedWeather[];
  readonly problems: readonly Problem[];
  /** Worth knowing, though nothing is wrong: gaps, winters left out. */
  readonly notes?: readonly Problem[];
}

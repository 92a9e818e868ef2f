/** What a check is: a number against its limit, with the source of the limit and a sentence for the keeper. */

import type { Scenario } from '../../notebook/schema.ts';
import type { Basis, Coefficient } from '../../tables/coefficient.ts';
import type { Bands, Tracks, Values } from '../quantities.ts';

/** `pass`: within the limit. `look`: needs a person to judge. `stop`: does not work as written. */
type CheckStatus = 'pass' | 'look' | 'stop';

type CheckTheme = 'fit' | 'room' | 'air' | 'sun' | 'loads' | 'bed' | 'store' | 'land' | 'feed' | 'caution';

export interface Check {
  readonly id: string;
  readonly theme: CheckTheme;
  readonly status: CheckStatus;
  /** Null where there is no such number; never NaN. */
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  /** Id in data/sources.csv of what gives the limit. */
  readonly source: string;
  readonly basis: Basis;
  readonly words: string;
  /** First week of the winter, counted from 1, in which it fails. */
  readonly week?: number;
  /** Upper end where the limit is a span. */
  readonly limitHigh?: number;
  /** What would pass, with the number: "a shed 26.4 m long". */
  readonly passesWith?: string;
  /** The tables hold no rule of this country: the limit is another's, for comparison, or there is none. */
  readonly foreign?: true;
}

/** What the checks are given of a scenario; what is not there is not checked. */
export interface CheckInput {
  readonly scenario: Scenario;
  readonly values: Partial<Values>;
  readonly tracks: Partial<Tracks>;
  readonly coefficients: ReadonlyMap<string, Coefficient>;
  /** Results of the draws, where they were run. */
  readonly bands?: Bands;
}

/** What a rule finds; who asked it and where it belongs is added by the caller. */
export type Verdict = Omit<Check, 'id' | 'theme' | 'source' | 'basis'> & {
  /** The row that set the limit, or where else it comes from. */
  readonly row: Pick<Coefficient, 'source' | 'basis'>;
};

/** A scenario's results as drawings and plans of its shed need them. */
export type ShedResult = Omit<CheckInput, 'coefficients'> & { readonly name: string };

export interface CheckRule<C> {
  readonly id: string;
  readonly theme: CheckTheme;
  /** Null where the scenario has nothing to check. */
  readonly run: (context: C) => Verdict | null;
}

/** A rule's row is not in the tables: the check is shown as open, not passed over. */
export class MissingRow extends Error {
  readonly row: string;
  constructor(row: string) {
    super(`no coefficient row: ${row}`);
    this.row = row;
  }
}

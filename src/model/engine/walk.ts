/**
 * A walk is one loop with several results: what goes through weeks or days, or shares much of its working. It reads
 * what it lists and nothing else; a result that needs less than all of that may say so in `from`, and a property test
 * turns every column to hold it to its word.
 */
import type { ReadsOf } from './columns.ts';
import type { About } from './quantity.ts';

export interface Made<Reads extends string = string> extends About {
  /** What of the walk's reads, or of its other results, this one depends on; all of the reads when absent. */
  readonly from?: readonly Reads[];
}

/** Several numbers a row: one for each week, or each day. */
export interface Series<Reads extends string = string> extends Made<Reads> {
  readonly width: number;
  /** Not worked out unless somebody asks for it. */
  readonly onDemand?: boolean;
}

export interface WalkRun<Reads extends string, Name extends string> {
  /** Number of rows in every column of this call. */
  readonly count: number;
  readonly read: ReadsOf<Reads>;
  /** Results, one number a row, and series, row-major `count × width`. */
  readonly write: { readonly [K in Name]: Float64Array };
  /** Whether the caller or a later step reads this; what nobody wants may be left unwritten. */
  readonly wants: (name: Name) => boolean;
  /**
   * Whether row `i` reads the same numbers as the row above; all it makes is then copied from there and need not be
   * walked again. Asked for every row from the first on. Scenarios of one draw stand in the same weather, so this is worth asking where few columns differ.
   */
  readonly repeats: (i: number) => boolean;
}

export interface Walk<Reads extends string = string, Name extends string = string> {
  readonly name: string;
  readonly about: string;
  readonly reads: readonly Reads[];
  readonly makes: {
    readonly [K in Name]: Made<NoInfer<Reads> | NoInfer<Name>> | Series<NoInfer<Reads> | NoInfer<Name>>;
  };
  readonly run: (io: WalkRun<Reads, Name>) => void;
}

/** Keeps the literal names and which of them are series, so that a walk can only touch what it lists. */
export function walk<
  const Reads extends string,
  const Name extends string,
  const Makes extends Readonly<Record<Name, Made | Series>>,
>(declared: Walk<Reads, Name> & { readonly makes: Makes }): Walk<Reads, Name> & { readonly makes: Makes } {
  return declared;
}

export const isSeries = (made: Made | Series): made is Series => 'width' in made;

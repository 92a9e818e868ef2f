/** One sourced number with its range: what every stage computes with and every trace ends in. */
export const BASES = ['published', 'derived', 'common practice', 'from memory', 'invented'] as const;
export type Basis = (typeof BASES)[number];

export interface Coefficient {
  /** `name`, or `name.option` where the name has a row for each option of a choice. */
  readonly id: string;
  /** Column name in the model, and option of the choice if any. */
  readonly name: string;
  readonly option: string | undefined;
  /** Dimension of the choice the option belongs to: texture, feeder, class, feed, material … */
  readonly choice: string | undefined;
  readonly low: number;
  readonly central: number;
  readonly high: number;
  readonly unit: string;
  readonly appliesTo: string;
  /** Id in data/sources.csv. */
  readonly source: string;
  /** Table, equation or page in the source. */
  readonly where: string;
  readonly basis: Basis;
  readonly note: string;
  /** File and line it was read from. */
  readonly at: { readonly file: string; readonly line: number };
  /** Prices only. */
  readonly currency?: string;
  readonly year?: number;
}

export interface Source {
  readonly id: string;
  readonly author: string;
  readonly title: string;
  readonly year: string;
}

export interface Tables {
  /** Coefficients, feeds and materials by id. */
  readonly coefficients: ReadonlyMap<string, Coefficient>;
  /** Prices by currency, then id. */
  readonly prices: ReadonlyMap<string, ReadonlyMap<string, Coefficient>>;
  readonly sources: ReadonlyMap<string, Source>;
}

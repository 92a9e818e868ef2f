/**
 * A quantity is one declaration: what it is, in which unit, how it is computed in words, and the function that
 * computes it. The list of columns the function is given **is** what the quantity depends on, so the working shown
 * for a figure cannot differ from the working done.
 */
import type { ColumnsOf } from './columns.ts';

/** What a quantity says of itself; the dictionary, headings, labels and workings are read off it. */
export interface About {
  readonly label: string;
  /** Unit as printed: kg, t, m³, m, mm, h, d, %, fraction, `money` for the notebook's currency. */
  readonly unit: string;
  /** How it is computed, in words a keeper can follow. */
  readonly formula: string;
  /** Ids of rows in the table of sources that give the method. */
  readonly source?: readonly string[];
  /** Column that must be above 0 for the quantity to exist; without it the quantity is absent, not 0. */
  readonly when?: string;
}

export interface Quantity extends About {
  readonly reads: readonly string[];
  /** Fills the first `count` numbers of `out`. */
  readonly fill: (count: number, out: Float64Array, columns: readonly never[]) => void;
}

type Fill = (count: number, out: Float64Array, columns: readonly Float64Array[]) => void;

/** Starts a declaration; what follows says what it reads and how. */
export function quantity(
  label: string,
  unit: string,
  formula: string,
  more: Pick<About, 'source' | 'when'> = {},
) {
  const made = (reads: readonly string[], fill: Fill): Quantity => ({
    label,
    unit,
    formula,
    ...more,
    reads,
    fill: fill as Quantity['fill'],
  });
  return {
    /** Any function of a row's number and the columns read, in the order they are listed. */
    of: <const Reads extends readonly string[]>(
      reads: Reads,
      one: (row: number, ...columns: ColumnsOf<Reads>) => number,
    ): Quantity => made(reads, rowByRow(one as Row)),
    /** A loop over all rows at once, for a declaration that many quantities share: a call at every row is spared. */
    whole: <const Reads extends readonly string[]>(
      reads: Reads,
      fill: (count: number, out: Float64Array, ...columns: ColumnsOf<Reads>) => void,
    ): Quantity => made(reads, (count, out, columns) => fill(count, out, ...(columns as ColumnsOf<Reads>))),
    /** The sum of the columns, added in the order they are listed. */
    sum: (reads: readonly string[]): Quantity => made(reads, fillSum),
    /** The first column less each of the others. */
    minus: (from: string, less: readonly string[]): Quantity => made([from, ...less], fillMinus),
    product: (reads: readonly string[]): Quantity => made(reads, fillProduct),
    /** The first over the second; 0 where the second is not above 0. */
    ratio: (of: string, over: string): Quantity => made([of, over], fillRatio),
    /** Another column under a name of its own. */
    same: (as: string): Quantity => made([as], fillSame),
  };
}

/** Whole loops with nothing to call in them, for the many quantities that only add, take away, multiply or divide. */
const fillSum: Fill = (count, out, columns) => {
  const [first, second] = columns;
  if (columns.length === 1) for (let i = 0; i < count; i++) out[i] = first[i];
  else for (let i = 0; i < count; i++) out[i] = first[i] + second[i];
  for (let c = 2; c < columns.length; c++) {
    const next = columns[c];
    for (let i = 0; i < count; i++) out[i] += next[i];
  }
};
const fillMinus: Fill = (count, out, columns) => {
  const [first, second] = columns;
  if (columns.length === 1) for (let i = 0; i < count; i++) out[i] = first[i];
  else for (let i = 0; i < count; i++) out[i] = first[i] - second[i];
  for (let c = 2; c < columns.length; c++) {
    const next = columns[c];
    for (let i = 0; i < count; i++) out[i] -= next[i];
  }
};
const fillProduct: Fill = (count, out, columns) => {
  const [first, second] = columns;
  if (columns.length === 1) for (let i = 0; i < count; i++) out[i] = first[i];
  else for (let i = 0; i < count; i++) out[i] = first[i] * second[i];
  for (let c = 2; c < columns.length; c++) {
    const next = columns[c];
    for (let i = 0; i < count; i++) out[i] *= next[i];
  }
};
const fillRatio: Fill = (count, out, [of, over]) => {
  for (let i = 0; i < count; i++) out[i] = over[i] > 0 ? of[i] / over[i] : 0;
};
const fillSame: Fill = (count, out, [as]) => {
  for (let i = 0; i < count; i++) out[i] = as[i];
};

// biome-ignore lint/suspicious/noExplicitAny: each declaration types its own; here they are only handed on
type Row = (row: number, ...columns: any[]) => number;

/** A loop for each number of columns: spreading them at every row would cost more than most quantities do. */
function rowByRow(one: Row): Fill {
  return (count, out, columns) => {
    const [a, b, c, d, e, f, g, h, j, k] = columns;
    switch (columns.length) {
      case 1:
        for (let i = 0; i < count; i++) out[i] = one(i, a);
        return;
      case 2:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b);
        return;
      case 3:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c);
        return;
      case 4:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c, d);
        return;
      case 5:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c, d, e);
        return;
      case 6:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c, d, e, f);
        return;
      case 7:
      case 8:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c, d, e, f, g, h);
        return;
      case 9:
      case 10:
        for (let i = 0; i < count; i++) out[i] = one(i, a, b, c, d, e, f, g, h, j, k);
        return;
      default:
        for (let i = 0; i < count; i++) out[i] = one(i, ...columns);
    }
  };
}

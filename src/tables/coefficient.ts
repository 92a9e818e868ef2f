/** One sourced number with its range: what every stage computes with and every trace ends in. */
import type { MeanShape } from './publishedMean.ts';

export const BASES = ['published', 'derived', 'common practice', 'from memory', 'invented'] as const;
export type Basis = (typeof BASES)[number];

/** Whether a price holds value added tax. A source that does not say is taken as without. */
export const VAT_STATES = ['without', 'unsaid'] as const;
export type VatState = (typeof VAT_STATES)[number];
/** What a price buys. */
export const PRICE_TERMS = ['ex works', 'delivered', 'in place', 'work', 'worth'] as const;
export type PriceTerms = (typeof PRICE_TERMS)[number];

/**
 * Unit of a number that weighs two published forms which disagree: 0 is the first, 1 the second. The best guess is
 * the weight of the second, and the chance that a draw takes it.
 */
export const FORM = 'form';

/** Numbers that move together in the draws. */
export interface Movement {
  readonly name: string;
  /** Share of the draws in which each number of the group takes the group's common probability. */
  readonly together: number;
}

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
  /** Where the source gives a mean and a 95 % range: that mean, and the shape drawn; `central` is then its middle. */
  readonly mean?: { readonly value: number; readonly shape: MeanShape };
  readonly unit: string;
  readonly appliesTo: string;
  /** Id in data/sources.csv. */
  readonly source: string;
  /** Table, equation or page in the source. */
  readonly where: string;
  readonly basis: Basis;
  readonly note: string;
  /** The group it moves with in the draws; alone when absent. */
  readonly movesWith?: Movement;
  /** How to find it out on a farm, as an instruction; absent where it takes a trial of years or is a choice. */
  readonly measureBy?: string;
  /** File and line it was read from. */
  readonly at: { readonly file: string; readonly line: number };
  /** Prices only. */
  readonly currency?: string;
  readonly year?: number;
  /** Two letters; absent where the row stands for all countries of its currency. */
  readonly country?: string;
  readonly vat?: VatState;
  readonly terms?: PriceTerms;
  /** How the row was brought to the year of a notebook; null where no index holds both years, absent at its own year. */
  readonly indexed?: { readonly by: string; readonly factor: number; readonly year: number } | null;
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
  /** Prices by currency, then id; those of one country by currency and country, as EUR-IE. */
  readonly prices: ReadonlyMap<string, ReadonlyMap<string, Coefficient>>;
  /** Published indices of prices at large, by currency. */
  readonly indices: ReadonlyMap<
    string,
    { readonly name: string; readonly byYear: ReadonlyMap<number, number> }
  >;
  readonly sources: ReadonlyMap<string, Source>;
}

/** Value added tax as a notebook gives it: kinds of purchase, the one rate that stands for several, and what comes back. */
import type { Scenario } from './schema.ts';

export type Vat = NonNullable<Scenario['farm']['money']['vat']>;
/** Kinds of purchase that the tax tells apart. */
export const VAT_KINDS = [
  'materials',
  'services',
  'feed',
  'machinery',
  'fuel',
] as const satisfies readonly (keyof Vat['rates'])[];
export type VatKind = (typeof VAT_KINDS)[number];

/** Name of a kind's column, or of its row in the tables. */
export const vatName = (kind: VatKind, what: 'Given' | 'Fraction'): string =>
  `vat${kind[0].toUpperCase()}${kind.slice(1)}${what}`;

/**
 * The one rate for all works or all of the winter; undefined where there is none. Where only the works had a rate, the
 * winter had none: so it was before there were kinds.
 */
export const oneRateOf = (
  { worksFraction, winterFraction }: Vat,
  of: 'works' | 'winter',
): number | undefined =>
  of === 'works' ? worksFraction : (winterFraction ?? (worksFraction === undefined ? undefined : 0));

/** Whether the farm gets back what it pays on the works. */
export const worksComeBack = ({ worksReclaimed, reclaimed }: Vat): boolean => worksReclaimed ?? reclaimed;

/** Works that stand already: the names of what each entry of the notebook is worth, and the entries as the flows need them. */
import type { OwnedWorks } from './capitalFlows.ts';

/** Entries a scenario may have, by the names their columns begin with. As many as the notebook takes. */
export const HADS = ['had1', 'had2', 'had3', 'had4', 'had5', 'had6', 'had7', 'had8'] as const;
type Had = (typeof HADS)[number];

export type HadResult = `${Had}${'Capital' | 'ShortLived'}`;
export type HadInput = `${Had}${'AgeYears' | 'LeftYears'}`;

/** What each entry is worth as new, and the short-lived part of it: results. */
export const HAD_RESULTS = HADS.flatMap((had) => [`${had}Capital`, `${had}ShortLived`] as const);
/** How old it is, and how many years it has left: inputs, not there where no scenario has so many entries. */
export const HAD_INPUTS = HADS.flatMap((had) => [`${had}AgeYears`, `${had}LeftYears`] as const);

export interface OwnedTerms extends Readonly<Partial<Record<HadResult | HadInput, number>>> {
  /** All that stands already, as new, and the short-lived part of it. */
  readonly capitalOwned: number;
  readonly capitalOwnedShortLived: number;
  /** Age of what no entry names. */
  readonly alreadyHaveYears: number;
}

const NOTHING: readonly OwnedWorks[] = [];
/** Sums of cents that differ by less are the same. */
const NO_MONEY = 1e-6;

/** What stands already, by age: each entry, and the rest of it. */
export function ownedOf(terms: OwnedTerms): readonly OwnedWorks[] {
  let [capital, shortLived] = [terms.capitalOwned, terms.capitalOwnedShortLived];
  if (capital === 0) return NOTHING;
  const owned: OwnedWorks[] = [];
  for (const had of HADS) {
    const worth = terms[`${had}Capital`] ?? 0;
    if (worth === 0) continue;
    const short = terms[`${had}ShortLived`] ?? 0;
    owned.push({
      capital: worth,
      shortLived: short,
      ageYears: terms[`${had}AgeYears`] ?? Number.NaN,
      leftYears: terms[`${had}LeftYears`] ?? Number.NaN,
    });
    capital -= worth;
    shortLived -= short;
  }
  if (owned.length === 0 || Math.abs(capital) > NO_MONEY || Math.abs(shortLived) > NO_MONEY)
    owned.push({ capital, shortLived, ageYears: terms.alreadyHaveYears, leftYears: Number.NaN });
  return owned;
}

/** The terms of every entry of row `i`, from the columns of ages and years left and those of `HAD_RESULTS`. */
export function hadAt(
  i: number,
  ages: readonly Float64Array[],
  left: readonly Float64Array[],
  worth: readonly Float64Array[],
): Partial<Record<HadResult | HadInput, number>> {
  const terms: Partial<Record<HadResult | HadInput, number>> = {};
  for (let k = 0; k < ages.length && k < HADS.length; k++) {
    const had = HADS[k];
    terms[`${had}Capital`] = worth[2 * k][i];
    terms[`${had}ShortLived`] = worth[2 * k + 1][i];
    terms[`${had}AgeYears`] = ages[k][i];
    terms[`${had}LeftYears`] = left[k][i];
  }
  return terms;
}

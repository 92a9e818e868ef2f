/** Sums of products of results, as a case writes them: `a + b * c - d`. */

export interface Term {
  readonly sign: 1 | -1;
  readonly names: readonly string[];
}

const NAME = /^[A-Za-z][A-Za-z0-9]*$/;

/** The terms of a sum, or undefined where it is not written as one. */
export function termsOf(text: string): readonly Term[] | undefined {
  const parts = text.trim().split(/\s*([+-])\s*/);
  const terms: Term[] = [];
  for (let k = 0; k < parts.length; k += 2) {
    const names = parts[k].split('*').map((name) => name.trim());
    if (!names.every((name) => NAME.test(name))) return undefined;
    terms.push({ sign: k > 0 && parts[k - 1] === '-' ? -1 : 1, names });
  }
  return terms;
}

/** Every name of a sum. */
export const namesIn = (terms: readonly Term[]): string[] => terms.flatMap(({ names }) => names);

/**
 * The sum. A term the scenario does not have (NaN) is no part of it, as a shed without bedding has no hours of strewing;
 * NaN where none of its terms is there.
 */
export function sumOf(terms: readonly Term[], read: (name: string) => number): number {
  let sum = 0;
  let there = false;
  for (const { sign, names } of terms) {
    let product: number = sign;
    for (const name of names) product *= read(name);
    if (Number.isNaN(product)) continue;
    there = true;
    sum += product;
  }
  return there ? sum : Number.NaN;
}

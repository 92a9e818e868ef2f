/**
 * Things a farm has already, as an account of purchases kept forward year by year. Written for the tests alone, with none
 * of the project's functions.
 */

export interface StandingThing {
  /** Price as new, in today's money. */
  readonly price: number;
  /** Years a new one lasts. */
  readonly lasts: number;
  /** How old today's is, or how many years it has left where that is known. */
  readonly age: number;
  readonly left?: number;
}

/** What is paid (below 0) in each year 0 … `years`; what a bought one has left at the end comes back in proportion. */
export function bookStanding(things: readonly StandingThing[], years: number): number[] {
  const account = new Array<number>(years + 1).fill(0);
  for (const { price, lasts, age, left } of things) {
    let still = Math.max(1, left ?? lasts - age);
    let bought = false;
    for (let year = 1; year <= years; year++) {
      still--;
      if (still > 0) continue;
      if (year === years) break;
      account[year] -= price;
      still = lasts;
      bought = true;
    }
    if (bought) account[years] += (price * Math.max(0, still)) / lasts;
  }
  return account;
}

import type { BillLine, BillRowSpec } from '../model/works/bill.ts';
import type { Basis, Coefficient } from '../tables/coefficient.ts';

/** A line of the bill with the range and basis of its price. */
export interface BillRow extends BillLine {
  /** Absent for a capital given as one sum. */
  readonly spec?: BillRowSpec;
  readonly low: number | null;
  readonly high: number | null;
  readonly basis: Basis | 'own quote' | null;
  /** How the price was brought to the notebook's year, and what it buys; absent for the keeper's own. */
  readonly indexed?: Coefficient['indexed'];
  readonly terms?: Coefficient['terms'];
}

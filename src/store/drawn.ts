/** What is kept of the draws of an open notebook. */
import { RESULTS } from '../model/dictionary.ts';
import { COMPARISONS } from '../model/measures.ts';
import { CASH_RESULTS } from '../model/money/cashTerms.ts';
import type { ResultName } from '../model/quantities.ts';
import { BILL_LINES } from '../model/works/bill.ts';
import { CHANCE_RESULTS } from '../uncertainty/chances.ts';

/** Numbers kept of the draws, 8 bytes each: some 100 MB, what a phone can bear. The command keeps as many as it is asked. */
const MOST_KEPT = 12_000_000;
/** Results whose ranges are kept: a few, since each takes memory times draws. */
export const DRAWN: readonly ResultName[] = [
  ...new Set<ResultName>([
    ...COMPARISONS.map(({ name }) => name),
    'packDepthM',
    ...CASH_RESULTS,
    ...CHANCE_RESULTS,
    'capitalCash',
    'capitalNonCash',
    ...BILL_LINES.map(({ cost }) => cost),
    ...RESULTS.filter(({ part }) => part === 'costs').map(({ name }) => name),
  ]),
];

/** Draws that can be kept of so many scenarios. */
export const mostDraws = (scenarios: number) => Math.floor(MOST_KEPT / (DRAWN.length * scenarios));

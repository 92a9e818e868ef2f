/** What the works are budgeted at: the sum of the bill, and what the draws ask to be set aside above it. */

import type { MoneyCase } from '../study/moneyCase.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import { percentileOf } from '../uncertainty/percentiles.ts';

/** Of a hundred draws so many cost no more than the budget. */
const BUDGET_AT = 0.8;

/** Money. Null where a price is missing. */
export interface Budget {
  /** Sum of the lines in cash. */
  readonly lines: number | null;
  /** P80 of the cash the works take less `lines`, at least 0; null without draws or where the capital is a given sum. */
  readonly unforeseen: number | null;
  /** `lines` and `unforeseen` together. */
  readonly cash: number | null;
  /** Own money that goes in: what loans and grant leave open, as far as the notebook names enough. */
  readonly own: number | null;
  /** What is then still missing. */
  readonly gap: number | null;
}

export interface Budgeted {
  readonly proposal: Pick<MoneyCase, 'result' | 'index'>;
  readonly draws?: Draws | undefined;
}

export function budgetOf({ proposal: { result, index }, draws }: Budgeted): Budget {
  const { capitalCash, grantUsed, loanTotal } = result.values;
  if (capitalCash == null) return { lines: null, unforeseen: null, cash: null, own: null, gap: null };
  const at = draws?.results.capitalCash ? percentileOf(draws, 'capitalCash', index, BUDGET_AT) : null;
  const unforeseen = at === null ? null : Math.max(0, Math.round((at - capitalCash) * 100) / 100);
  const cash = capitalCash + (unforeseen ?? 0);
  const open = Math.max(0, cash - (grantUsed ?? 0) - (loanTotal ?? 0));
  const own = Math.min(open, result.scenario.finance.ownMoney ?? open);
  return { lines: capitalCash, unforeseen, cash, own, gap: open - own };
}

/** What in the money of a scenario cannot be reckoned or looks wrong, said where it stands. */
import { CHOICES } from '../../notebook/inputs.ts';
import type { Scenario } from '../../notebook/schema.ts';
import { VAT_KINDS } from '../../notebook/vat.ts';
import type { Values } from '../quantities.ts';
import { BILL_LINES, type BillLine, type PriceBinding, quoteFaults } from '../works/bill.ts';
import { loanFault } from './loan.ts';
import { HADS } from './owned.ts';

export interface MoneyFault {
  readonly id:
    | 'noPrice'
    | 'negativePrice'
    | 'currency'
    | 'loan'
    | 'grant'
    | 'funding'
    | 'quote'
    | 'had'
    | 'vat';
  /** Place in the scenario, or id of the price. */
  readonly at: string;
  readonly words: string;
}

type Add = (id: MoneyFault['id'], at: string, words: string) => void;

/**
 * Gaps are marked, never filled with a zero: a figure that rests on one of these is absent. `bill` is what
 * `readBill` gave; `values` are the scenario's results.
 */
export function moneyFaults(
  scenario: Scenario,
  values: Partial<Values>,
  bindings: ReadonlyMap<string, PriceBinding>,
  bill: readonly BillLine[],
): MoneyFault[] {
  const { currency } = scenario.farm.money;
  const { loans } = scenario.finance;
  const faults: MoneyFault[] = [];
  const add: Add = (id, at, words) => void faults.push({ id, at, words });

  for (const line of bill) {
    if (line.noPrice)
      add(
        'noPrice',
        line.id,
        `no price given for ${line.label} in ${currency}: give a quote for line "${line.id}"`,
      );
    if (line.currency !== currency)
      add(
        'currency',
        line.id,
        `${line.label} is priced in ${line.currency}, the notebook is in ${currency}: amounts are never converted`,
      );
  }
  const inBill = new Set(BILL_LINES.map((line) => line.price));
  // A price that nothing is bought at is no gap: the sum is there.
  const gap = values.annualCost == null || values.nutrientValue == null;
  for (const [column, { value, origin, coefficient }] of bindings) {
    if (!/Price(Per[A-Z]\w*|Each)?$/.test(column)) continue;
    if (value < 0) add('negativePrice', column, `the price is ${value}; it must be 0 or more`);
    if (origin === 'missing' && gap && !inBill.has(column))
      add('noPrice', column, `no price given for ${column} in ${currency}`);
    if (coefficient?.currency !== undefined && coefficient.currency !== currency && !inBill.has(column))
      add(
        'currency',
        column,
        `the price is in ${coefficient.currency}, the notebook is in ${currency}: amounts are never converted`,
      );
  }
  loans.forEach((loan, k) => {
    const words = loanFault({ ...loan, straightLine: loan.kind === 'straightLine' });
    if (words) add('loan', `finance.loans.${k}`, words);
  });
  const over = values.grantOverCost ?? 0;
  if (over > 0)
    add(
      'grant',
      'finance.grant',
      `the grant is ${over.toFixed(2)} ${currency} more than the works cost; only what they cost is counted`,
    );
  const lent = loans.reduce((sum, loan) => sum + loan.amount, 0);
  const cash = values.capitalCash ?? null;
  if (cash !== null && lent + (values.grantUsed ?? 0) > cash + 0.005)
    add(
      'funding',
      'finance.loans',
      `loans and grant come to more than the ${cash.toFixed(2)} ${currency} of cash the works cost`,
    );
  const unpaid = values.fundingGap ?? 0;
  if (unpaid > 0)
    add(
      'funding',
      'finance.ownMoney',
      `${unpaid.toFixed(2)} ${currency} of the works are paid by nobody: own money, loans and grant are too small`,
    );
  standingFaults(scenario, values, add);
  for (const fault of quoteFaults(scenario)) add('quote', fault.at, fault.words);
  return faults;
}

/** Works that are said to stand already and are not among them, and a tax without a rate. */
function standingFaults(scenario: Scenario, values: Partial<Values>, add: Add): void {
  (scenario.finance.alreadyHave?.lines ?? []).forEach(({ what, share }, k) => {
    if (share > 0 && (values[`${HADS[k]}Capital`] ?? 0) === 0 && values.capitalAll !== null)
      add(
        'had',
        `finance.alreadyHave.lines.${k}`,
        `nothing of the works is "${what}", so none of it can stand already: it counts for nothing`,
      );
  });
  const { vat } = scenario.farm.money;
  const noRates =
    vat && vat.worksFraction === undefined && VAT_KINDS.some((kind) => vat.rates[kind] === undefined);
  if (noRates && CHOICES.country(scenario) === 'other')
    add(
      'vat',
      'farm.money.vat',
      `no rates of value added tax are known for ${scenario.farm.place.country ?? 'a place without a country'}: what has no own rate counts none; write farm.money.vat.rates`,
    );
}

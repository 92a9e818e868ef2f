/** The money case of one scenario, gathered: what page, paper and spreadsheet show of it. */

import type { FinanceCase } from '../model/money/case.ts';
import { type MoneyFault, moneyFaults } from '../model/money/moneyFaults.ts';
import { BILL_LINES, readBill } from '../model/works/bill.ts';
import { type TimberNote, timberNotes } from '../model/works/timberNotes.ts';
import type { BillRow } from './billRow.ts';
import type { Run, ScenarioResult } from './evaluate.ts';
import { type HouseCost, houseCost } from './houseCost.ts';
import { type TimberList, timberList } from './timberList.ts';

export interface MoneyCase {
  readonly index: number;
  readonly result: ScenarioResult;
  readonly finance: FinanceCase;
  /** Index of the scenario this one is measured against, if any. */
  readonly baseline: number | undefined;
  readonly bill: readonly BillRow[];
  readonly timber: readonly TimberNote[];
  /** Members for the saw; null where no frame is billed. */
  readonly members: TimberList | null;
  /** Beside published costs; null where there is nothing to hold against them. */
  readonly house: HouseCost | null;
  readonly faults: readonly MoneyFault[];
}

/** The bill of one scenario, each price with its range and basis. */
export function billRows(run: Run, index: number): BillRow[] {
  const { bindings } = run.bound[index];
  return readBill(run.results[index].values, bindings, run).map((line): BillRow => {
    const spec = BILL_LINES.find(({ id }) => id === line.id);
    const price = spec && bindings.get(spec.price);
    const ours = line.source === 'own quote';
    return {
      ...line,
      ...(spec ? { spec } : {}),
      low: line.noPrice ? null : (price?.low ?? line.unitPrice),
      high: line.noPrice ? null : (price?.high ?? line.unitPrice),
      ...(ours || line.noPrice
        ? {}
        : { indexed: price?.coefficient?.indexed, terms: price?.coefficient?.terms }),
      basis: line.noPrice ? null : ours ? 'own quote' : (price?.coefficient?.basis ?? 'invented'),
    };
  });
}

/** Gathers the case of the scenario at `index`. */
export function moneyCase(run: Run, index: number): MoneyCase {
  const result = run.results[index];
  const { scenario, bindings } = run.bound[index];
  const bill = billRows(run, index);
  const name = result.finance.difference?.baseline;
  const baseline = run.results.findIndex((other) => other.name === name);
  return {
    index,
    result,
    finance: result.finance,
    baseline: baseline < 0 ? undefined : baseline,
    bill,
    timber:
      result.values.packShare === null || !(scenario.placement.bedShare > 0) || !scenario.shed.roofed
        ? []
        : timberNotes(scenario),
    members: timberList(run, index),
    house: houseCost(run, index, bill),
    faults: moneyFaults(scenario, result.values, bindings, bill),
  };
}

/** The proposal: the scenario named, else the first that borrows, else the one that costs most to build. */
export function proposalOf(run: Run, name?: string): number {
  if (name !== undefined) return run.results.findIndex((result) => result.name === name);
  const borrows = run.results.findIndex(({ values }) => (values.loanTotal ?? 0) > 0);
  if (borrows >= 0) return borrows;
  const capital = run.results.map(({ values }) => values.capitalCost ?? 0);
  return capital.indexOf(Math.max(...capital));
}

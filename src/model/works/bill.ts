/** The bill of quantities as it is read and printed, and the keeper's quotes. */
import { CHOICES } from '../../notebook/inputs.ts';
import type { Scenario } from '../../notebook/schema.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import type { Values } from '../quantities.ts';
import { BILL_LINES, type BillRowSpec } from './billLines.ts';

export { BILL_LEFT_OUT, BILL_LINES, type BillRowSpec } from './billLines.ts';

/** The part of a binding the bill needs. */
export interface PriceBinding {
  readonly value: number;
  readonly origin: string;
  readonly because?: string;
  readonly coefficient?: Coefficient;
}

export interface BillLine {
  readonly id: string;
  readonly label: string;
  readonly quantity: number;
  readonly unit: string;
  /** Null when no price is given. */
  readonly unitPrice: number | null;
  /** Money, to the cent; null when no price is given. */
  readonly amount: number | null;
  readonly currency: string;
  /** Year of the price; null for the keeper's own. */
  readonly year: number | null;
  /** Id in data/sources.csv, or `own quote`. */
  readonly source: string;
  readonly because?: string;
  /** Paid in own timber or hours. */
  readonly own: boolean;
  readonly noPrice: boolean;
}

const NO_LINES: BillLine[] = [];

/**
 * The lines with a quantity, adding up to `capitalCost` to the cent. Where the notebook gives the capital
 * itself there is that one line. A line without a price has null in place of an amount, and then there is no sum.
 */
export function readBill(
  values: Partial<Values>,
  bindings: ReadonlyMap<string, PriceBinding>,
  money: { readonly currency: string; readonly year: number },
): BillLine[] {
  const given = bindings.get('capitalGiven')?.value ?? Number.NaN;
  if (Number.isFinite(given)) {
    return [
      {
        id: 'given',
        label: 'all works, as given in the notebook',
        quantity: 1,
        unit: 'sum',
        unitPrice: given,
        amount: values.capitalCost ?? null,
        currency: money.currency,
        year: money.year,
        source: 'own quote',
        own: false,
        noPrice: false,
      },
    ];
  }
  return BILL_LINES.flatMap((spec) => {
    const quantity = values[spec.quantity] ?? 0;
    if (quantity === 0) return NO_LINES;
    const price = bindings.get(spec.price) ?? workedOut(values, spec.price);
    const row = price?.coefficient;
    const known = price !== undefined && price.value >= 0;
    const ours = price?.origin === 'override' || price?.origin === 'input';
    return [
      {
        id: spec.id,
        label: spec.label,
        quantity,
        unit: spec.unit,
        unitPrice: known ? price.value : null,
        amount: known ? (values[spec.cost] ?? null) : null,
        currency: ours ? money.currency : (row?.currency ?? money.currency),
        year: ours ? null : (row?.year ?? money.year),
        source: known ? (ours ? 'own quote' : (row?.source ?? 'own')) : '',
        ...(price?.because ? { because: price.because } : {}),
        own: spec.own === true,
        noPrice: !known,
      },
    ];
  });
}

/** A share that follows from the notebook, as the part of the works that stands already. */
function workedOut(values: Partial<Values>, name: string): PriceBinding | undefined {
  const value = (values as Readonly<Record<string, number | null | undefined>>)[name];
  return typeof value === 'number' ? { value, origin: 'input' } : undefined;
}

/** The price row a line reads in this scenario. */
export function priceId(spec: BillRowSpec, scenario: Scenario): string {
  return spec.choice ? `${spec.price}.${CHOICES[spec.choice](scenario)}` : spec.price;
}

/** Prices that are the notebook's own terms: an hour, the tax, what stands already. */
export const NOTEBOOK_PRICES: readonly string[] = [
  'labourPricePerHour',
  'worksVatFraction',
  'alreadyHavePart',
];

/** Lines a quote can name: those with a price row of their own. */
export const QUOTABLE: readonly BillRowSpec[] = BILL_LINES.filter(
  ({ price }) => !NOTEBOOK_PRICES.includes(price),
);

/**
 * The scenario with its quotes for bill lines as own prices, which stand before the rows of the price table.
 * A quote for a line nobody knows changes nothing: `quoteFaults` names it.
 */
export function applyQuotes(scenario: Scenario): Scenario {
  const { quotes } = scenario.finance;
  if (quotes.length === 0) return scenario;
  const prices = { ...scenario.farm.money.prices };
  for (const { line, unitPrice, because } of quotes) {
    const spec = QUOTABLE.find((known) => known.id === line);
    if (spec) prices[priceId(spec, scenario)] = { value: unitPrice, because };
  }
  return { ...scenario, farm: { ...scenario.farm, money: { ...scenario.farm.money, prices } } };
}

/** What is wrong with the quotes, one sentence each, with the place in the scenario. */
export function quoteFaults(scenario: Scenario): { readonly at: string; readonly words: string }[] {
  return scenario.finance.quotes.flatMap(({ line }, k) =>
    QUOTABLE.some((spec) => spec.id === line)
      ? []
      : [
          {
            at: `finance.quotes.${k}.line`,
            words: `no bill line is called "${line}"; known: ${QUOTABLE.map((spec) => spec.id).join(', ')}`,
          },
        ],
  );
}

/** The bill of quantities, line by line to the cent, cash and own kept apart. */

import { NOTEBOOK_PRICES } from '../model/works/bill.ts';
import { show } from '../plots/reading.ts';
import type { BillRow } from '../study/billRow.ts';
import { houseWords } from '../study/houseCost.ts';
import { cents, span, sum, whole } from './amounts.ts';
import { type Budget, budgetOf } from './budget.ts';
import { type Html, html, tableOf } from './html.ts';
import { indexWords } from './priceYears.ts';
import type { Report } from './report.ts';
import { guessed } from './summary.ts';
import { timberSection } from './timber.ts';
import { vatWords } from './yearTables.ts';

/** Says where a price comes from, short enough for a table. */
export function priceSource(row: BillRow): string {
  if (row.noPrice) return 'no price given';
  if (row.spec?.price === 'labourPricePerHour') return 'the notebook’s hour';
  if (row.spec && NOTEBOOK_PRICES.includes(row.spec.price)) return 'the notebook';
  if (row.basis === 'own quote') return row.because ? `own quote: ${row.because}` : 'own quote';
  return row.terms === undefined ? String(row.basis) : `${row.basis}, ${row.terms}`;
}

/** "2016 → 2024": the year of the price, and that it was brought to. */
export function yearText({ year, indexed }: BillRow): string {
  if (year === null) return '';
  return indexed ? `${year} → ${indexed.year}` : String(year);
}

const isShare = ({ spec }: BillRow) => spec?.onTop !== undefined;

export function quantityText(row: BillRow, reading: Report['reading']): string {
  return isShare(row) ? '' : show(row.quantity, row.unit, reading).text;
}

export function priceText(row: BillRow): string {
  if (row.unitPrice === null) return '–';
  return isShare(row) ? `${Number((row.unitPrice * 100).toFixed(1))} %` : cents(row.unitPrice);
}

/** How the unforeseen follows, said under the bill. */
export function unforeseenWords(
  { unforeseen, lines, cash }: Budget,
  { draws, reading }: Pick<Report, 'draws' | 'reading'>,
): string {
  if (unforeseen === null || cash === null || lines === null)
    return 'Nothing is set aside for the unforeseen: without draws nothing says how much.';
  return `The budget is P80: in 80 of 100 of the ${whole(draws?.count)} draws the cash for the works comes to no more than ${sum(cash, reading)}. The unforeseen is that less the lines in cash, ${sum(lines, reading)}; it covers prices and quantities within their ranges, not what the bill leaves out. All other figures rest on the lines alone.`;
}

export function billSection(report: Report): Html {
  const { proposal: { bill, result, members, house }, reading } = report; // biome-ignore format: one line
  const budget = budgetOf(report);
  const { capitalCost, capitalCash, capitalNonCash } = result.values;
  const likely = (name: keyof typeof result.values) =>
    span(result.bands?.p10[name], result.bands?.p90[name], 'money', reading);
  const rows = bill.map((row) => ({
    cells: [
      row.label,
      quantityText(row, reading),
      priceText(row),
      row.amount === null ? 'no price' : cents(row.amount),
      row.spec ? likely(row.spec.cost) : '',
      yearText(row),
      priceSource(row),
    ],
    ...(row.noPrice ? { look: 'gap' as const } : {}),
  }));
  const gaps = bill.filter(({ noPrice }) => noPrice);
  const total = (label: string, value: number | null, range = '') => ({
    cells: [label, '', '', value === null ? 'no sum' : cents(value), range, '', ''],
    look: 'total' as const,
  });
  return html`<section><h2>What must be built</h2>
    <p>Quantities follow from the measures of the works; each line has one price in ${reading.currency}. Amounts are quantity times price before the quantity is rounded; the year is that of the price, an arrow the year it was brought to. ${indexWords(report.run, bill)} Get quotes before money is drawn. ${guessed(bill)} “Own” lines are paid in own timber and hours, not in cash. ${vatWords(result)}</p>
    ${gaps.map(({ label, id }) => html`<p class="gap">No price given for ${label} in ${reading.currency}: give a quote for line “${id}”. No sum can be drawn without it.</p>`)}
    ${tableOf(
      [
        { head: 'Line' },
        { head: 'Quantity', number: true },
        { head: `Unit price, ${reading.currency}`, number: true },
        { head: `Amount, ${reading.currency}`, number: true },
        { head: 'P10 to P90', number: true },
        { head: 'Year', number: true },
        { head: 'Price from' },
      ],
      [
        ...rows,
        total('In cash', capitalCash, likely('capitalCash')),
        total('In own timber and hours', capitalNonCash, likely('capitalNonCash')),
        total('Together', capitalCost, likely('capitalCost')),
        ...(budget.unforeseen === null
          ? []
          : [
              total('Unforeseen, in cash: P80 less the lines', budget.unforeseen),
              total('Budget in cash, P80', budget.cash),
            ]),
      ],
      'bill',
    )}
    <p class="small">${unforeseenWords(budget, report)}</p>
    ${house ? html`<h3>Beside published costs</h3><p>${houseWords(house)}</p>` : ''}
    ${timberSection(members)}
  </section>`;
}

/** Cash by month, cash by year and economics by year as they are printed: three tables, never mixed. */
import { worksComeBack } from '../notebook/vat.ts';
import { inWords, moneyOf, type Reading } from '../plots/reading.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { cashMonths, lowestMonth, type PrintedMonth } from '../study/moneyBook.ts';
import { type CashYear, cashYears, type EconomicYear, economicYears } from '../study/moneyYears.ts';
import { percent, sum as sumText, whole } from './amounts.ts';

export interface YearTable {
  readonly title: string;
  /** What stands in it and what does not. */
  readonly words: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Rows that sum the ones before. */
  readonly totals: ReadonlySet<number>;
}

interface Column<Row> {
  readonly head: string;
  readonly of: (row: Row, k: number) => string;
  /** Shown though it be empty. */
  readonly always?: true;
}

const nought = (value: number) => (Math.abs(value) < 0.5 ? '' : whole(value));
const yearName = (year: number) => (year === 0 ? 'now' : String(year));

/** Columns that are empty in every row are left out. */
function table<Row>(
  title: string,
  words: string,
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  isTotal: (row: Row) => boolean = () => false,
): YearTable {
  const shown = columns.filter(({ of, always }) => always || rows.some((row, k) => of(row, k) !== ''));
  return {
    title,
    words,
    head: shown.map(({ head }) => head),
    rows: rows.map((row, k) => shown.map(({ of }) => of(row, k))),
    totals: new Set(rows.flatMap((row, k) => (isTotal(row) ? [k] : []))),
  };
}

function pricesText({ scenario }: ScenarioResult, reading: Reading): string {
  const { inflation } = scenario.farm.money;
  return inflation === 0
    ? `in prices of ${reading.year}`
    : `prices rising ${percent(inflation)} a year from ${moneyOf(reading)}`;
}

/** Rates by kind, as far as the case buys it: "23 % on materials, 13.5 % on services". */
function ratesSaid(rates: readonly (readonly [string, number | null | undefined])[]): string {
  const said = rates.flatMap(([what, rate]) => (typeof rate === 'number' ? [{ what, rate }] : []));
  const same = said.every(({ rate }) => rate === said[0].rate);
  return same
    ? percent(said[0]?.rate ?? 0)
    : inWords(said.map(({ what, rate }) => `${percent(rate)} on ${what}`));
}

/** How value added tax is counted; said wherever cash is shown. */
export function vatWords({ scenario, values }: ScenarioResult): string {
  const { vat } = scenario.farm.money;
  if (!vat)
    return 'The tables hold prices without value added tax, and none is counted: the notebook does not say what the farm pays or gets back.';
  const works = ratesSaid([
    ['materials', values.worksMaterialsVatRate],
    ['services', values.worksServicesVatRate],
    ['equipment', values.worksMachineryVatRate],
    ['fuel', values.worksFuelVatRate],
  ]);
  const winter = ratesSaid([
    ['feed and straw', values.winterFeedVatRate],
    ['fuel and machines', values.winterFuelVatRate],
    ['services', values.winterServicesVatRate],
    ['repairs', values.winterMaterialsVatRate],
  ]);
  const later =
    vat.refundMonths === 0
      ? 'in the same month'
      : vat.refundMonths === 1
        ? 'a month later'
        : `${vat.refundMonths} months later`;
  const back = `goes out with each purchase and comes back ${later}; it is no cost. What is still to come back at the end is not counted.`;
  const kept = 'is not reclaimed: it stands in the costs and in the bill.';
  const worksBack = worksComeBack(vat);
  const country =
    Object.values(vat.rates).some((rate) => rate !== undefined) ||
    vat.worksFraction !== undefined ||
    vat.winterFraction !== undefined
      ? ''
      : ' The rates are those of the table for the country: check them with the tax office.';
  const onWorks = `${works} on the works`;
  const onWinter = `${winter} on what is bought for the winter`;
  return worksBack === vat.reclaimed
    ? `Value added tax, ${onWorks} and ${onWinter}, ${vat.reclaimed ? back : kept}${country}`
    : `Value added tax, ${onWorks}, ${worksBack ? back : kept} That of ${onWinter} ${vat.reclaimed ? back : 'is not reclaimed: it stands in the costs.'}${country}`;
}

/** Cash of a case by year. */
export function cashTable(result: ScenarioResult, reading: Reading): YearTable {
  const named = result.values.incomePerYear != null;
  return table<CashYear>(
    `Cash by year, “${result.name}”`,
    `What moves on the bank account and nothing else, in whole ${reading.currency}, ${pricesText(result, reading)}. Own hours, own timber and nutrients are not in it; feed stands at its price, bought or home-grown, since the notebook does not say which. ${named ? 'Income is what the notebook names, and rises with prices.' : 'No income is named, so the winter stands as a cost alone.'} Tax on income and the own money put in are not in it. ${vatWords(result)}`,
    cashYears(result),
    [
      { head: 'Year', of: ({ year }) => yearName(year), always: true },
      { head: 'Works', of: ({ works }) => nought(works) },
      { head: 'Grant', of: ({ grant }) => nought(grant) },
      { head: 'Income', of: ({ income }) => nought(income) },
      { head: 'Winter', of: ({ running }) => nought(running) },
      { head: 'Gains', of: ({ gains }) => nought(gains) },
      { head: 'VAT out', of: ({ vatOut }) => nought(vatOut) },
      { head: 'VAT back', of: ({ vatBack }) => nought(vatBack) },
      { head: 'Loan in', of: ({ borrowed }) => nought(borrowed) },
      { head: 'Interest', of: ({ interest }) => nought(interest) },
      { head: 'Principal', of: ({ principal }) => nought(principal) },
      { head: 'Other loans', of: ({ already }) => nought(already) },
      { head: 'Left', of: ({ sum }) => whole(sum), always: true },
      { head: 'To date', of: ({ toDate }) => whole(toDate), always: true },
      { head: 'Debt', of: ({ debt }) => nought(debt) },
      { head: 'Cover', of: ({ cover }) => (cover === null ? '' : cover.toFixed(2)) },
    ],
  );
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
// With a space that does not break.
const monthName = (name: string) => `${MONTHS[Number(name.slice(5)) - 1]}\u00A0${name.slice(0, 4)}`;

type MonthRow = Omit<PrintedMonth, 'month' | 'name'> & { readonly label: string; readonly total: boolean };

function monthRows(result: ScenarioResult): MonthRow[] {
  const months = cashMonths(result);
  const years = cashYears(result);
  return [0, 1, 2].flatMap((year): MonthRow[] => {
    const own = months.filter((month) => month.year === year);
    const all = years.find((one) => one.year === year);
    if (own.length === 0 || !all) return [];
    const label = year === 0 ? 'Works' : `Year\u00A0${year}`;
    return [
      ...own.map((month) => ({ ...month, label: monthName(month.name), total: false })),
      { ...all, label, total: true },
    ];
  });
}

/** The lowest the account stands within the works and two years, in a sentence. */
export function lowestWords(result: ScenarioResult, reading: Reading): string {
  const low = lowestMonth(cashMonths(result));
  if (!low) return '';
  return low.toDate < 0
    ? `The account stands lowest in ${monthName(low.name)}: ${sumText(-low.toDate, reading)} must then be at hand as own money or short credit, beside what the farm needs for all else.`
    : 'The account does not fall below nothing in any of these months.';
}

/** Cash of the works and the first two years by month. */
export function monthTable(result: ScenarioResult, reading: Reading): YearTable {
  const { paidIn } = result.scenario.farm.money;
  const when = [
    paidIn.income === undefined ? 'income evenly over the year' : `income in ${MONTHS[paidIn.income - 1]}`,
    paidIn.feed === undefined ? 'feed as it is fed' : `feed in ${MONTHS[paidIn.feed - 1]}`,
    paidIn.bedding === undefined ? 'bedding as it is strewn' : `bedding in ${MONTHS[paidIn.bedding - 1]}`,
  ].join(', ');
  return table<MonthRow>(
    `Cash by month, the works and the first two years, “${result.name}”`,
    `In whole ${reading.currency}; each year’s row is that of the table by year. When money moves: the works in even parts over ${result.scenario.finance.worksMonths === 1 ? 'the month' : `the ${result.scenario.finance.worksMonths} months`} before the winter and the loan drawn with them, ${when}, own machines with the winter and the contractor in the month of spreading (both as Work), upkeep and what other loans take evenly, payments on the new loans and gains at the end of each year. ${lowestWords(result, reading)}`,
    monthRows(result),
    [
      { head: 'Month', of: ({ label }) => label, always: true },
      { head: 'Works', of: ({ works }) => nought(works) },
      { head: 'Loan in', of: ({ borrowed }) => nought(borrowed) },
      { head: 'Grant', of: ({ grant }) => nought(grant) },
      { head: 'VAT out', of: ({ vatOut }) => nought(vatOut) },
      { head: 'VAT back', of: ({ vatBack }) => nought(vatBack) },
      { head: 'Income', of: ({ income }) => nought(income) },
      { head: 'Gains', of: ({ gains }) => nought(gains) },
      { head: 'Feed', of: ({ feed }) => nought(feed) },
      { head: 'Bedding', of: ({ bedding }) => nought(bedding) },
      { head: 'Work', of: ({ machines }) => nought(machines) },
      { head: 'Upkeep', of: ({ upkeep }) => nought(upkeep) },
      { head: 'Loans', of: ({ interest, principal, already }) => nought(interest + principal + already) },
      { head: 'Left', of: ({ sum }) => whole(sum), always: true },
      { head: 'To date', of: ({ toDate }) => whole(toDate), always: true },
    ],
    ({ total }) => total,
  );
}

/** What a case is worth to the farm by year, before loans and tax. */
export function economicTable(result: ScenarioResult, reading: Reading): YearTable {
  const { difference } = result.finance;
  const { interestRate } = result.scenario.farm.money;
  return table<EconomicYear>(
    `Economics by year, “${result.name}”`,
    `What it is worth to the farm, before loans and tax, ${pricesText(result, reading)}: own hours and timber, grass lost, nutrients and the gains the keeper names count as money, and what is left of works that were bought again comes back in the last year. Worth to date is discounted at ${percent(interestRate)}.`,
    economicYears(result),
    [
      { head: 'Year', of: ({ year }) => yearName(year), always: true },
      { head: 'Works', of: ({ works }) => nought(works) },
      { head: 'Grant', of: ({ grant }) => nought(grant) },
      { head: 'Winter in cash', of: ({ running }) => nought(running) },
      { head: 'Own hours', of: ({ ownHours }) => nought(ownHours) },
      { head: 'Grass lost', of: ({ grassLost }) => nought(grassLost) },
      { head: 'Nutrients', of: ({ nutrientValue }) => nought(nutrientValue) },
      { head: 'Gains', of: ({ gains }) => nought(gains) },
      { head: 'Sum', of: ({ sum }) => whole(sum), always: true },
      { head: 'Worth to date', of: ({ worthToDate }) => whole(worthToDate), always: true },
      ...(difference
        ? [
            {
              head: `Sum against “${difference.baseline}”`,
              of: (_: EconomicYear, k: number) => whole(difference.flows[k]),
              always: true as const,
            },
          ]
        : []),
    ],
  );
}

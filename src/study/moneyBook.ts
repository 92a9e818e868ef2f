/**
 * The bank account of a case, month by month over all its years: what moves and when. Year 0 is the months in which the
 * works are paid for; year 1 begins with the month of the first winter. Amounts are in the prices of their year, money
 * that goes out below 0. What a year's payment is spread over does not change what the year comes to.
 */
import { pricesIn } from '../model/money/cashTerms.ts';
import { worksComeBack } from '../notebook/vat.ts';
import { daysBetween } from '../units/days.ts';
import type { ScenarioResult } from './evaluate.ts';

/** What moves on the account, in the order it is printed. */
export const CASH_LINES = [
  'works',
  'grant',
  'income',
  'feed',
  'bedding',
  'machines',
  'upkeep',
  'gains',
  'vatOut',
  'vatBack',
  'borrowed',
  'interest',
  'principal',
  'already',
] as const;
export type CashLine = (typeof CASH_LINES)[number];

export interface BookMonth extends Readonly<Record<CashLine, number>> {
  /** Year of the case, 0 … horizon. */
  readonly year: number;
  /** Month of the case: 1 is the first of year 1, 0 and below lie before it. */
  readonly month: number;
  /** "2025-11". */
  readonly name: string;
}

type Row = Record<CashLine, number>;
/** Twelve shares of a year that sum to 1; the first month is that in which the winter begins. */
type Shares = readonly number[];

const EVENLY: Shares = new Array<number>(12).fill(1 / 12);
/** At the end of the year: what is careful to say of money that comes. */
const LAST: Shares = EVENLY.map((_, k) => (k === 11 ? 1 : 0));

const inMonth = (month: number, first: number): Shares =>
  EVENLY.map((_, k) => ((first - 1 + k) % 12 === month - 1 ? 1 : 0));

/** As the days of the winter lie in the months. */
function byWinterDays(start: string, end: string): Shares {
  const days = Math.max(1, daysBetween(start, end));
  const shares = new Array<number>(12).fill(0);
  let [year, month] = [Number(start.slice(0, 4)), Number(start.slice(5, 7))];
  for (let k = 0, from = 0; from < days; k++) {
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
    const next = `${year}-${String(month).padStart(2, '0')}-01`;
    const to = Math.min(days, daysBetween(start, next));
    shares[k % 12] += (to - from) / days;
    from = to;
  }
  return shares;
}

function nameOf(start: string, month: number): string {
  const at = Number(start.slice(0, 4)) * 12 + Number(start.slice(5, 7)) - 1 + month - 1;
  return `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;
}

interface Book {
  readonly rows: ReadonlyMap<number, Row>;
  readonly pay: (line: CashLine, month: number, amount: number) => void;
  /** An amount of a year over its months. */
  readonly spread: (line: CashLine, begins: number, amount: number, shares: Shares) => void;
  /** Value added tax on what is bought in a month, out and back: for a farm that gets it back. */
  readonly tax: (month: number, fraction: number, bought: number) => void;
}

/** An empty account from the first month of the works to the last of the case; what falls after it is not booked. */
function openBook({ scenario }: ScenarioResult, last: number): Book {
  const { vat } = scenario.farm.money;
  const rows = new Map<number, Row>();
  for (let month = 1 - scenario.finance.worksMonths; month <= 12 * last; month++)
    rows.set(month, Object.fromEntries(CASH_LINES.map((line) => [line, 0])) as Row);
  const pay: Book['pay'] = (line, month, amount) => {
    const row = rows.get(month);
    if (row) row[line] += amount;
  };
  return {
    rows,
    pay,
    spread(line, begins, amount, shares) {
      for (const [k, share] of shares.entries()) pay(line, begins + k, amount * share);
    },
    tax(month, fraction, bought) {
      if (!vat || fraction === 0) return;
      pay('vatOut', month, -fraction * bought);
      pay('vatBack', month + vat.refundMonths, fraction * bought);
    },
  };
}

/** What a winter costs in cash, in prices of the notebook, by what is paid for. */
function winterCash({ values }: ScenarioResult, cash: number) {
  const feed = (values.feedCost ?? 0) + (values.feedWasteCost ?? 0);
  const bedding = values.beddingCost ?? 0;
  const [machinery, contractor] = [values.machineryCost ?? 0, values.contractorCost ?? 0];
  return {
    feed,
    bedding,
    machinery,
    contractor,
    upkeep: cash - feed - bedding - machinery - contractor,
    repairs: values.repairsCost ?? 0,
    services: (values.reseedCost ?? 0) + (values.vetCost ?? 0) + (values.hoofCost ?? 0),
    // Nobody adds the tax to insurance.
    taxed: cash - (values.insuranceCost ?? 0),
  };
}

/** Rates of value added tax that come back; 0 where the tax is a cost, which stands in the costs then. */
function taxBack({ values, scenario }: ScenarioResult) {
  const { vat } = scenario.farm.money;
  const winter = (rate: number | null | undefined) => (vat?.reclaimed ? (rate ?? 0) : 0);
  const { rates } = vat ?? {};
  const kinds = [rates?.feed, rates?.services, rates?.materials, rates?.fuel];
  return {
    works: vat && worksComeBack(vat) ? (values.worksVatRate ?? 0) : 0,
    /** One rate for the whole winter: spread evenly, since nobody says on what it falls. */
    even:
      kinds.every((rate) => rate === undefined) &&
      (vat?.winterFraction !== undefined || vat?.worksFraction !== undefined),
    feed: winter(values.winterFeedVatRate),
    fuel: winter(values.winterFuelVatRate),
    services: winter(values.winterServicesVatRate),
    materials: winter(values.winterMaterialsVatRate),
  };
}

/** All months, the first payment for the works on; empty where a price is missing. */
export function moneyBook(result: ScenarioResult): BookMonth[] {
  const { values, finance, scenario } = result;
  const { paidIn, inflation, debtServicePerYear } = scenario.farm.money;
  const { start, end } = scenario.farm.winter;
  const { worksMonths, grantMonths } = scenario.finance;
  const { capitalCash, operatingCashCost, incomePerYear } = values;
  const last = finance.years.length - 1;
  if (capitalCash == null || operatingCashCost == null || last < 1) return [];
  const first = Number(start.slice(5, 7));
  const winter = byWinterDays(start, end);
  const of = (month: number | undefined, usual: Shares) =>
    month === undefined ? usual : inMonth(month, first);
  const cost = winterCash(result, operatingCashCost);
  const back = taxBack(result);
  const spreading = inMonth(scenario.spreading.month, first);
  const { rows, pay, spread, tax } = openBook(result, last);
  const taxed = (begins: number, fraction: number, bought: number, shares: Shares) => {
    for (const [k, share] of shares.entries()) tax(begins + k, fraction, bought * share);
  };
  for (const flow of finance.years) {
    const { year } = flow;
    if (year === 0) {
      for (let month = 1 - worksMonths; month <= 0; month++) {
        pay('works', month, -capitalCash / worksMonths);
        pay('borrowed', month, flow.borrowed / worksMonths);
        tax(month, back.works, capitalCash / worksMonths);
      }
      pay('grant', grantMonths, values.grantUsed ?? 0);
      continue;
    }
    const prices = pricesIn(year, inflation);
    const begins = 12 * (year - 1) + 1;
    // What is bought again is short-lived, and bought; the last year's is only what is left of it.
    const works = year === last ? 0 : flow.works;
    pay('works', begins, works);
    tax(begins, back.works, -works);
    spread('income', begins, (incomePerYear ?? 0) * prices, of(paidIn.income, EVENLY));
    const [feeding, strewing] = [of(paidIn.feed, winter), of(paidIn.bedding, winter)];
    spread('feed', begins, -cost.feed * prices, feeding);
    spread('bedding', begins, -cost.bedding * prices, strewing);
    spread('machines', begins, -cost.machinery * prices, winter);
    spread('machines', begins, -cost.contractor * prices, spreading);
    spread('upkeep', begins, -cost.upkeep * prices, EVENLY);
    spread('gains', begins, (values.gainsInCash ?? 0) * prices, LAST);
    if (back.even) taxed(begins, back.feed, cost.taxed * prices, EVENLY);
    else {
      taxed(begins, back.feed, cost.feed * prices, feeding);
      taxed(begins, back.feed, cost.bedding * prices, strewing);
      taxed(begins, back.fuel, cost.machinery * prices, winter);
      taxed(begins, back.services, cost.contractor * prices, spreading);
      taxed(begins, back.services, cost.services * prices, EVENLY);
      taxed(begins, back.materials, cost.repairs * prices, EVENLY);
    }
    spread('interest', begins, flow.interest, LAST);
    spread('principal', begins, flow.principal, LAST);
    if (incomePerYear != null) spread('already', begins, -debtServicePerYear, EVENLY);
  }
  return [...rows].map(([month, row]) => ({
    ...row,
    month,
    year: month <= 0 ? 0 : Math.ceil(month / 12),
    name: nameOf(start, month),
  }));
}

export interface PrintedMonth extends BookMonth {
  readonly sum: number;
  /** Sum of all months so far. */
  readonly toDate: number;
}

const cents = (amount: number) => Math.round(amount * 100) / 100 + 0;

/**
 * The works and the first two years, to the cent: what is rounded off one month goes to the next, so that the months of
 * a year add up to the year.
 */
export function cashMonths(result: ScenarioResult): PrintedMonth[] {
  let before = -1;
  let run = {} as Row;
  let said = {} as Row;
  let toDate = 0;
  return moneyBook(result)
    .filter(({ year }) => year <= 2)
    .map((month) => {
      if (month.year !== before) {
        before = month.year;
        run = Object.fromEntries(CASH_LINES.map((line) => [line, 0])) as Row;
        said = { ...run };
      }
      const printed = Object.fromEntries(
        CASH_LINES.map((line) => {
          run[line] += month[line];
          const amount = cents(cents(run[line]) - said[line]);
          said[line] = cents(said[line] + amount);
          return [line, amount];
        }),
      ) as Row;
      const sum = cents(CASH_LINES.reduce((all, line) => all + printed[line], 0));
      toDate = cents(toDate + sum);
      return { ...month, ...printed, sum, toDate };
    });
}

/** The month in which the account stands lowest within the works and the first two years. */
export function lowestMonth(months: readonly PrintedMonth[]): PrintedMonth | undefined {
  return months.reduce<PrintedMonth | undefined>(
    (low, month) => (low === undefined || month.toDate < low.toDate ? month : low),
    undefined,
  );
}

/** How it is paid and what it earns, for the first page; cash and economics of every year further on. */
import { cashFlowFigure } from '../plots/cashFlow.ts';
import { moneyOf } from '../plots/reading.ts';
import { cashYears, type EconomicYear, economicYears } from '../study/moneyYears.ts';
import type { Chances, Spread } from '../uncertainty/chances.ts';
import { hundredths } from '../uncertainty/sentences.ts';
import { percent, sum, whole } from './amounts.ts';
import { budgetOf } from './budget.ts';
import { figureOf } from './figureOf.ts';
import { type Html, html, tableOf } from './html.ts';
import type { Report } from './report.ts';

export function moneySection(report: Report): Html {
  return html`<section><div class="pair">${funding(report)}${measures(report)}</div></section>`;
}

export function financeSection(report: Report): Html {
  const { reading, results, bands } = report;
  return html`<section><h2>Finance over the years</h2>
    ${figureOf(cashFlowFigure(results, reading, bands()), 'paper-cash')}
    ${years(report)}
  </section>`;
}

function funding(report: Report): Html {
  const { proposal: { result }, reading } = report; // biome-ignore format: one line
  const { finance } = result.scenario;
  const { grantUsed } = result.values;
  const { lines, unforeseen, cash, own, gap } = budgetOf(report);
  const rows = [
    ...finance.loans.map(({ name, amount, rate, years, graceYears, kind }) => ({
      cells: [
        html`${name}<br><small>${percent(rate)}, ${years} years, ${kind === 'annuity' ? 'level payments' : 'equal parts'}${graceYears > 0 ? `, ${graceYears} of grace` : ''}</small>`,
        whole(amount),
      ],
    })),
    { cells: ['Grant', whole(grantUsed)] },
    { cells: ['Own money', whole(own)] },
    ...((gap ?? 0) > 0.5 ? [{ cells: ['Still to be found', whole(gap)], look: 'gap' as const }] : []),
    {
      cells: [
        unforeseen === null
          ? 'Cash the works take'
          : html`Budget of the works in cash<br><small>the bill ${whole(lines)}, unforeseen ${whole(unforeseen)}</small>`,
        whole(cash),
      ],
      look: 'total' as const,
    },
  ];
  return html`<div><h2>How it is paid</h2>${tableOf([{ head: '' }, { head: reading.currency, number: true }], rows)}<p class="small">${coverFrom(report)}</p></div>`;
}

function measures({ proposal: { finance, index }, reading, chances }: Report): Html {
  const { difference } = finance;
  const drawn = chances(index);
  const cell = (value: string, why: string, sure = '') =>
    html`${why === '' ? value : 'none'}${why === '' || sure !== '' ? '' : html`<br><small>${why}</small>`}${sure === '' ? '' : html`<br><small>${sure}</small>`}`;
  const rows = [
    {
      cells: ['Present value alone', cell(whole(finance.netPresentValue.value), finance.netPresentValue.why)],
    },
    {
      cells: [
        'Even yearly cost over the life',
        cell(whole(finance.levelisedCost.value), finance.levelisedCost.why),
      ],
    },
    ...(difference
      ? [
          {
            cells: [
              `Present value against “${difference.baseline}”`,
              cell(
                whole(difference.netPresentValue.value),
                difference.netPresentValue.why,
                spread(drawn?.worth, (value) => whole(Number(value.toPrecision(3)))),
              ),
            ],
          },
          {
            cells: [
              'the same as an even yearly sum',
              cell(whole(difference.levelisedGain.value), difference.levelisedGain.why),
            ],
          },
          {
            cells: [
              'Rate of return on the difference',
              cell(
                difference.internalRateOfReturn.rate === null
                  ? ''
                  : percent(Number(difference.internalRateOfReturn.rate.toFixed(4))),
                difference.internalRateOfReturn.why,
                rateSure(drawn),
              ),
            ],
          },
          {
            cells: [
              'Discounted payback',
              cell(
                difference.paybackYears.value === null
                  ? ''
                  : `${difference.paybackYears.value.toFixed(1)} years`,
                difference.paybackYears.why,
                paybackSure(drawn),
              ),
            ],
          },
        ]
      : [{ cells: ['Against a baseline', html`none<br><small>${finance.differenceWhy}</small>`] }]),
    {
      cells: [
        'Highest payment on the loans',
        cell(whole(finance.loanPayment.value), finance.loanPayment.why),
      ],
    },
    {
      cells: [
        'Debt service cover',
        cell(
          finance.debtServiceCover.value === null ? '' : `${finance.debtServiceCover.value.toFixed(2)} ×`,
          finance.debtServiceCover.why,
          spread(drawn?.cover, (value) => value.toFixed(2)),
        ),
      ],
    },
  ];
  return html`<div><h2>What it earns</h2>${tableOf([{ head: '' }, { head: reading.currency, number: true }], rows)}</div>`;
}

/** "1.06 to 2.06 in 8 of 10 draws"; nothing without draws, and the one value where all are alike. */
function spread(of: Spread | null | undefined, said: (value: number) => string): string {
  if (!of) return '';
  const [low, high] = [said(of.p10), said(of.p90)];
  return low === high ? `${low} in 8 of 10 draws` : `${low} to ${high} in 8 of 10 draws`;
}

/** A rate of return is not there in every draw, and its span is of those that have one. */
function rateSure(drawn: Chances | null): string {
  if (!drawn?.worth) return '';
  if (!drawn.rate) return 'none in any draw';
  const of = spread(drawn.rate, (rate) => percent(Number(rate.toFixed(3))).replace('-', '−'));
  return drawn.rate.share === 1 ? of : `in ${hundredths(drawn.rate.share)} of 100 draws there is one, ${of}`;
}

/** In how many draws the works pay back, and how soon in the quickest tenth. */
function paybackSure(drawn: Chances | null): string {
  if (!drawn?.payback || drawn.pays === null) return '';
  const { p10 } = drawn.payback;
  const soonest = Number.isFinite(p10) ? `, in 1 of 10 within ${p10.toFixed(0)} years` : '';
  return `paid back in ${hundredths(drawn.pays)} of 100 draws${soonest}`;
}

/** What the cover is reckoned from, said in full. */
function coverFrom({ proposal: { result, finance }, reading }: Report): string {
  const { incomePerHead, debtServicePerYear } = result.scenario.farm.money;
  const { incomePerYear } = result.values;
  const already =
    debtServicePerYear > 0
      ? ` The ${sum(debtServicePerYear, reading)} a year of loans the farm already has is served too.`
      : '';
  return finance.coverFrom === 'income' && incomePerHead !== undefined && incomePerYear != null
    ? `Cover is from ${sum(incomePerYear, reading)} a year, ${sum(incomePerHead, reading)} a head: what the farm says is left after all else and after living costs, before interest and tax; the cash this winter costs is taken off.${already}`
    : finance.coverFrom === 'saving'
      ? 'Cover is from the cash saved against the baseline, since no income is named.'
      : '';
}

const nought = (value: number) => (Math.abs(value) < 0.5 ? '' : whole(value));
const yearName = (year: number) => (year === 0 ? 'now' : String(year));

/** Cash and economics apart; a column that is empty in every year is left out. */
function years({ proposal: { finance, result }, reading }: Report): Html {
  if (finance.years.length === 0)
    return html`<p class="gap">No cash flow: ${finance.netPresentValue.why}.</p>`;
  const { difference } = finance;
  const { inflation, interestRate } = result.scenario.farm.money;
  const cash = cashYears(result);
  const economics = economicYears(result);
  const prices =
    inflation === 0
      ? `in prices of ${reading.year}`
      : `prices rising ${percent(inflation)} a year from ${moneyOf(reading)}`;
  const named = result.values.incomePerYear != null;
  const table = <Row>(rows: readonly Row[], columns: readonly Column<Row>[]) => {
    const shown = columns.filter(({ of, always }) => always || rows.some((row, k) => of(row, k) !== ''));
    return tableOf(
      shown.map(({ head }, k) => ({ head, number: k > 0 })),
      rows.map((row, k) => ({ cells: shown.map(({ of }) => of(row, k)) })),
      'years',
    );
  };
  return html`<h3>Cash by year, “${result.name}”</h3>
    <p>What moves on the bank account and nothing else, in whole ${reading.currency}, ${prices}. Own hours, own timber and nutrients are not in it; feed stands at its price, bought or home-grown, since the notebook does not say which. ${named ? 'Income is what the notebook names, and rises with prices.' : 'No income is named, so the winter stands as a cost alone.'} Tax, value added tax and the own money put in are not in it.</p>
    ${table(cash, [
      { head: 'Year', of: ({ year }) => yearName(year), always: true },
      { head: 'Works', of: ({ works }) => nought(works) },
      { head: 'Grant', of: ({ grant }) => nought(grant) },
      { head: 'Income', of: ({ income }) => nought(income) },
      { head: 'Winter', of: ({ running }) => nought(running) },
      { head: 'Loan in', of: ({ borrowed }) => nought(borrowed) },
      { head: 'Interest', of: ({ interest }) => nought(interest) },
      { head: 'Principal', of: ({ principal }) => nought(principal) },
      { head: 'Other loans', of: ({ already }) => nought(already) },
      { head: 'Left', of: ({ sum: left }) => whole(left), always: true },
      { head: 'To date', of: ({ toDate }) => whole(toDate), always: true },
      { head: 'Debt', of: ({ debt }) => nought(debt) },
      { head: 'Cover', of: ({ cover }) => (cover === null ? '' : cover.toFixed(2)) },
    ])}
    <h3>Economics by year, “${result.name}”</h3>
    <p>What it is worth to the farm, before loans and tax, ${prices}: own hours and timber, grass lost and nutrients count as money, and what is left of the works comes back in the last year. Worth to date is discounted at ${percent(interestRate)}.</p>
    ${table(economics, [
      { head: 'Year', of: ({ year }) => yearName(year), always: true },
      { head: 'Works', of: ({ works }) => nought(works) },
      { head: 'Grant', of: ({ grant }) => nought(grant) },
      { head: 'Winter in cash', of: ({ running }) => nought(running) },
      { head: 'Own hours', of: ({ ownHours }) => nought(ownHours) },
      { head: 'Grass lost', of: ({ grassLost }) => nought(grassLost) },
      { head: 'Nutrients', of: ({ nutrientValue }) => nought(nutrientValue) },
      { head: 'Sum', of: ({ sum: all }) => whole(all), always: true },
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
    ])}`;
}

interface Column<Row> {
  readonly head: string;
  readonly of: (row: Row, k: number) => string;
  /** Shown though it be empty. */
  readonly always?: true;
}

/** How it is paid and what it earns, for the first page; cash and economics of every year further on. */
import { cashFlowFigure } from '../plots/cashFlow.ts';
import type { Chances, Spread } from '../uncertainty/chances.ts';
import { hundredths } from '../uncertainty/sentences.ts';
import { percent, sum, whole } from './amounts.ts';
import { budgetOf } from './budget.ts';
import { figureOf } from './figureOf.ts';
import { type Html, html, tableOf } from './html.ts';
import type { Report } from './report.ts';
import { standingWords } from './standing.ts';
import { cashTable, economicTable, monthTable } from './yearTables.ts';

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

/** What a page holds in the usual letters of these tables. */
const MOST_COLUMNS = 13;

/** Cash by month and by year, and economics apart. */
function years({ proposal: { finance, result }, reading }: Report): Html {
  if (finance.years.length === 0)
    return html`<p class="gap">No cash flow: ${finance.netPresentValue.why}.</p>`;
  return html`${[monthTable(result, reading), cashTable(result, reading), economicTable(result, reading)].map(
    ({ title, words, head, rows, totals }) => html`<h3>${title}</h3><p>${words}</p>
    ${tableOf(
      head.map((name, k) => ({ head: name, number: k > 0 })),
      rows.map((cells, k) => ({ cells, ...(totals.has(k) ? { look: 'total' as const } : {}) })),
      head.length > MOST_COLUMNS ? 'years months' : 'years',
    )}`,
  )}${worksAgain({ proposal: { finance, result }, reading })}`;
}

/** What is bought again, and what is left of it at the end. */
function worksAgain({
  proposal: { finance, result },
  reading,
}: Pick<Report, 'reading'> & { proposal: Pick<Report['proposal'], 'finance' | 'result'> }): Html {
  const last = finance.years.length - 1;
  const again = finance.years.filter(({ year, works }) => year > 0 && year < last && works < 0);
  const left = finance.years[last].works;
  const { capitalOwned, capitalShortLived } = result.values;
  const owned = (capitalOwned ?? 0) > 0 ? ` ${standingWords(result, reading)}` : '';
  const bought =
    again.length === 0
      ? 'Nothing is bought again within these years.'
      : `Feeders, fences, covers and the like, ${sum(capitalShortLived, reading)} of the works, wear out first and are bought again in ${again.length === 1 ? 'year' : 'years'} ${again.map(({ year, works }) => `${year} (${sum(-works, reading)})`).join(', ')}.`;
  const end =
    left > 0.5
      ? `What is left of them in year ${last} counts as ${sum(left, reading)}, in proportion to the years they still have.`
      : `Nothing of them is left in year ${last}.`;
  return html`<p>${bought} ${end} The buildings count for nothing then, though most stand longer: neither a sale nor taking them down is in these figures.${owned}</p>`;
}

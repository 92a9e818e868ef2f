/** The systems side by side: what stays, what it takes, what it earns. */
import type { ResultName } from '../model/quantities.ts';
import { SYSTEMS } from '../notebook/systems.ts';
import { costStackFigure } from '../plots/costStack.ts';
import { offMiddleWords } from '../plots/offMiddle.ts';
import { moneyOf, show } from '../plots/reading.ts';
import { hundredths } from '../uncertainty/sentences.ts';
import { percent, span, whole } from './amounts.ts';
import { figureOf } from './figureOf.ts';
import { type Html, html, tableOf } from './html.ts';
import type { Report } from './report.ts';

/** Rows of the comparison: result, words, unit; agreed sums are whole. */
const ROWS: readonly {
  readonly name: ResultName;
  readonly label: string;
  readonly unit: string;
  readonly exact?: true;
}[] = [
  { name: 'capitalCost', label: 'To build', unit: 'money' },
  { name: 'annualCost', label: 'Cost a year', unit: 'money' },
  { name: 'nutrientValue', label: 'Worth of nutrients kept', unit: 'money' },
  { name: 'netCost', label: 'Net cost a year', unit: 'money' },
  { name: 'netCostPerHead', label: 'Net cost a head', unit: 'money' },
  { name: 'labourHours', label: 'Own hours a winter', unit: 'h' },
  { name: 'nitrogenKeptKg', label: 'Nitrogen kept', unit: 'kg' },
  { name: 'compostTonnes', label: 'Compost made', unit: 't' },
  { name: 'loanPayment', label: 'Highest loan payment', unit: 'money', exact: true },
];

/** The results compared here. */
export const COMPARED: readonly ResultName[] = ROWS.map(({ name }) => name);

export function systemsSection({ results, run, reading, chances }: Report): Html {
  const drawn = results.map((_, k) => chances(k));
  const columns = [{ head: '' }, ...results.map(({ name }) => ({ head: name, number: true }))];
  const cell = (k: number, name: ResultName, unit: string, exact?: true) => {
    const { values, bands } = results[k];
    const value = values[name];
    if (typeof value !== 'number' || (name === 'loanPayment' && value === 0)) return '–';
    const shown = exact
      ? whole(value)
      : unit === 'money'
        ? show(value, 'money', reading).number.replace(/^[A-Z]{3} /, '')
        : show(value, unit, reading).text;
    const likely = exact
      ? ''
      : span(bands?.p10[name], bands?.p90[name], unit === 'money' ? 'money' : unit, reading).replace(
          / [^\d\s]+$/,
          '',
        );
    return html`${shown}${likely === '' ? '' : html`<br><small>${likely}</small>`}`;
  };
  const finance = results.map(({ finance: of }) => of);
  const rows = [
    { cells: ['System', ...results.map(({ system }) => SYSTEMS[system].label)] },
    ...ROWS.map(({ name, label, unit, exact }) => ({
      cells: [label, ...results.map((_, k) => cell(k, name, unit, exact))],
    })),
    {
      cells: [
        'Present value against the baseline',
        ...finance.map(({ difference }) =>
          difference?.netPresentValue.value == null ? '–' : whole(round3(difference.netPresentValue.value)),
        ),
      ],
    },
    {
      cells: [
        'Rate of return',
        ...finance.map(({ difference }) =>
          difference?.internalRateOfReturn.rate == null
            ? difference
              ? 'none'
              : '–'
            : percent(Number(difference.internalRateOfReturn.rate.toFixed(3))),
        ),
      ],
    },
    {
      cells: [
        'Payback, years',
        ...finance.map(({ difference }) =>
          difference
            ? difference.paybackYears.value === null
              ? `not in ${difference.flows.length - 1}`
              : difference.paybackYears.value.toFixed(1)
            : '–',
        ),
      ],
    },
    {
      cells: [
        'Debt service cover',
        ...finance.map(({ debtServiceCover: { value } }) => (value === null ? '–' : value.toFixed(2))),
      ],
    },
    ...(drawn.some((of) => of?.pays != null)
      ? [{ cells: ['Pays, of 100 draws', ...drawn.map((of) => ofHundred(of?.pays))] }]
      : []),
    ...(drawn.some((of) => of?.covered != null)
      ? [{ cells: ['Covered, of 100', ...drawn.map((of) => ofHundred(of?.covered))] }]
      : []),
  ];
  const bases = [...new Set(finance.flatMap(({ difference }) => (difference ? [difference.baseline] : [])))];
  return html`<section><h2>The systems compared</h2>
        ${figureOf(costStackFigure(results, reading), 'paper-costs')}
    ${tableOf(columns, rows, 'systems')}
    <p class="small">Money in ${moneyOf(reading)}; agreed sums whole, estimates to three figures.${results.some((r) => r.bands) ? ' The small span holds 8 of 10 draws.' : ''} Baseline: ${bases.length === 0 ? 'none' : bases.map((name) => `“${name}”`).join(', ')}. A dash: there is none. Net cost is the cost less the worth of the nutrients kept.</p>
    ${offMiddleWords(results, COMPARED, reading).map((words) => html`<p class="small">${words}</p>`)}
    <p class="small">Why each stands here: ${results.map(({ name, scenario }, k) => html`${k > 0 ? ' ' : ''}<b>${name}</b>: ${scenario.because}.`)}${run.scenarios.length === 1 ? ' There is nothing to compare it with.' : ''}</p>
  </section>`;
}

const ofHundred = (share: number | null | undefined) => (share == null ? '–' : hundredths(share));
const round3 = (value: number) => Number(value.toPrecision(3));

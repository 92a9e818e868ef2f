import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import { COST_LINES, costStackFigure } from '../../plots/costStack.ts';
import { offMiddleWords } from '../../plots/offMiddle.ts';
import { capital, labelOf, moneyOf, type Reading, show, unitOf } from '../../plots/reading.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { labelIn } from '../../units/inWords.ts';
import { toSystem } from '../../units/quantities.ts';
import { absentMark, numberButton } from '../parts/number.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

const AFTER: readonly (readonly [ResultName, string])[] = [
  ['annualCost', 'Together'],
  ['nutrientValue', 'Nutrients kept, taken off'],
  ['netCost', 'Net'],
  ['netCostPerHead', 'Net, a head'],
  ['netCostPerHeadDay', 'Net, a head and day'],
  ['costPerNitrogenKeptKg', 'Cost a kg of nitrogen kept'],
];

const AFTER_NAMES = AFTER.map(([name]) => name);

/**
 * The yearly cost of each scenario by line, side by side, with the span of the draws.
 *
 * @fires wk-explain - a number was opened
 */
export class WkCosts extends LitElement {
  static override properties = {
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    caption: {},
  };

  static override styles = [
    shared,
    css`
      .scroll {
        overflow-x: auto;
        margin-top: 0.8rem;
      }
      table {
        min-width: 100%;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      thead th {
        font-weight: 600;
        vertical-align: bottom;
      }
      th[scope='row'] {
        min-width: 8.5rem;
        position: sticky;
        left: 0;
        background: var(--paper);
      }
      td {
        white-space: nowrap;
      }
      td small {
        display: block;
        color: var(--quiet);
        font-size: 0.8rem;
      }
      tr.total th,
      tr.total td {
        font-weight: 600;
      }
      @media print {
        .scroll {
          overflow: visible;
        }
        tr {
          break-inside: avoid;
        }
        table {
          font-size: 0.85rem;
        }
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  declare caption: string | undefined;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
  }

  #cell(result: ScenarioResult, name: ResultName, label: string): TemplateResult {
    const value = result.values[name];
    const priced = typeof result.values.annualCost === 'number';
    if (typeof value !== 'number')
      return html`<td class="n">${absentMark(priced ? 'does not arise in this scenario' : `no price given for something in ${label.toLowerCase()}`)}</td>`;
    const [low, high] = [result.bands?.p10[name], result.bands?.p90[name]];
    // The heading of the table names the money; what it is counted by is in the row's.
    const bare = (v: number) =>
      show(toSystem(v, unitOf(name), this.reading.system).value, '', this.reading, 3);
    const scenario = this.run?.results.findIndex((other) => other.name === result.name) ?? -1;
    const spanned = typeof low === 'number' && typeof high === 'number' && high > low;
    return html`<td class="n">${numberButton(bare(value), { scenario, scenarioName: result.name, quantity: name, label, own: this.reading.own?.[scenario]?.has(name) })}${
      spanned
        ? html`<small><span class="hidden">likely </span>${bare(low).number}–${bare(high).number}</small>`
        : nothing
    }</td>`;
  }

  protected override render() {
    const { results, reading, caption } = this;
    const figure = costStackFigure(results, reading);
    const lines = COST_LINES.filter((name) =>
      results.some(({ values }) => typeof values[name] === 'number' && values[name] !== 0),
    );
    const rows = [
      ...lines.map((name): [ResultName, string] => [name, capital(labelOf(name))]),
      ...AFTER.map(([name, label]): [ResultName, string] => [name, labelIn(label, reading.system)]),
    ];
    return html`<h2>What a year costs</h2>
      <wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>
      <div class="scroll" tabindex="0" role="group" aria-label="Yearly cost by line">
        <table>
          <thead><tr><th scope="col">${moneyOf(reading)}, a year</th>${results.map(({ name }) => html`<th scope="col" class="n">${name}</th>`)}</tr></thead>
          <tbody>${rows.map(
            ([name, label]) =>
              html`<tr class=${name === 'annualCost' || name === 'netCost' ? 'total' : ''}><th scope="row">${label}</th>${results.map((result) => this.#cell(result, name, label))}</tr>`,
          )}</tbody>
        </table>
      </div>
      ${offMiddleWords(results, AFTER_NAMES, reading).map((words) => html`<p class="quiet">${words}</p>`)}`;
  }
}

customElements.define('wk-costs', WkCosts);

declare global {
  interface HTMLElementTagNameMap {
    'wk-costs': WkCosts;
  }
}

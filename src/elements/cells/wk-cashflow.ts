import { css, html, LitElement, nothing } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import { percent, whole } from '../../paper/amounts.ts';
import { cashTable, economicTable, monthTable, type YearTable } from '../../paper/yearTables.ts';
import { cashFlowFigure } from '../../plots/cashFlow.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { type CashBand, cashBandsOf } from '../../uncertainty/cashBands.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** What the works earn to date against the baseline, the loans, and cash and economics of one scenario apart. */
export class WkCashflow extends LitElement {
  static override properties = {
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    changes: { attribute: false },
    draws: { attribute: false },
    caption: {},
    chosen: { state: true },
  };

  static override styles = [
    shared,
    css`
      label {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.6rem;
        align-items: center;
        margin: 1rem 0 0.4rem;
      }
      .scroll {
        overflow-x: auto;
        max-height: 26rem;
      }
      table {
        min-width: 100%;
        font-size: 0.9rem;
      }
      thead th {
        font-weight: 600;
        vertical-align: bottom;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      td,
      tbody th {
        white-space: nowrap;
      }
      tr.total > * {
        font-weight: 600;
        border-top: 1px solid var(--ink, currentColor);
      }
      h3 {
        margin: 1.2rem 0 0.3rem;
        font-size: 1rem;
      }
      @media print {
        /* The name of the scenario, not a list to choose from. */
        select {
          appearance: none;
          border: 0;
          padding: 0;
          background: none;
        }
        .scroll {
          max-height: none;
          overflow: visible;
        }
        table {
          font-size: 0.72rem;
        }
        th,
        td {
          padding-right: 0.4rem;
        }
        tr {
          break-inside: avoid;
        }
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  declare changes: RowChanges | undefined;
  /** Draws the page has made, which hold what the band needs. */
  declare draws: Draws | undefined;
  declare caption: string | undefined;
  /** Scenario whose years are shown. */
  declare chosen: string;

  #bands: { of: Draws; bands: Map<string, CashBand> } | undefined;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.chosen = '';
  }

  #bandsOf(run: Run): ReadonlyMap<string, CashBand> {
    const { draws, changes } = this;
    // While an input is turned the band would lag behind the lines: it comes back once it is let go.
    if (!draws || draws.scenarios !== run.bound.length || (changes && changes.size > 0)) return new Map();
    if (this.#bands?.of === draws) return this.#bands.bands;
    const bands = cashBandsOf(draws, run);
    this.#bands = { of: draws, bands };
    return bands;
  }

  #table({ title, words, head, rows, totals }: YearTable) {
    return html`<h3>${title}</h3>
      <div class="scroll" tabindex="0" role="group" aria-label=${title}>
        <table>
          <thead><tr>${head.map((name, k) => html`<th scope="col" class=${k > 0 ? 'n' : ''}>${name}</th>`)}</tr></thead>
          <tbody>${rows.map(
            ([first, ...cells], k) =>
              html`<tr class=${totals.has(k) ? 'total' : ''}><th scope="row">${first}</th>${cells.map((cell) => html`<td class="n">${cell}</td>`)}</tr>`,
          )}</tbody>
        </table>
      </div>
      <p class="quiet">${words}</p>`;
  }

  #years(result: ScenarioResult) {
    const { finance } = result;
    const { loans } = result.scenario.finance;
    const { reading } = this;
    return html`<p>${
      loans.length === 0
        ? 'Nothing is borrowed.'
        : loans
            .map(
              ({ name, amount, rate, years, graceYears, kind }) =>
                `${name}: ${reading.currency} ${whole(amount)} at ${percent(rate)} over ${years} years, ${kind === 'annuity' ? 'level payments' : 'equal parts of principal'}${graceYears > 0 ? `, ${graceYears} of grace` : ''}.`,
            )
            .join(' ')
    } ${finance.loanPayment.value !== null && finance.loanPayment.value > 0 ? `At most ${reading.currency} ${whole(finance.loanPayment.value)} a year.` : ''}</p>
      ${
        finance.years.length === 0
          ? html`<p>No cash flow: ${finance.netPresentValue.why}.</p>`
          : [monthTable, cashTable, economicTable].map((of) => this.#table(of(result, reading)))
      }`;
  }

  protected override render() {
    const { results, run, reading, caption } = this;
    if (!run || results.length === 0) return nothing;
    const figure = cashFlowFigure(results, reading, this.#bandsOf(run));
    const result =
      results.find(({ name }) => name === this.chosen) ??
      results.find(({ values }) => (values.loanTotal ?? 0) > 0) ??
      results[0];
    return html`<h2>Cash over the years</h2>
      <wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>
      <label>Month by month and year by year
        <select class="field" @change=${(event: Event) => {
          this.chosen = (event.target as HTMLSelectElement).value;
        }}>${results.map(({ name }) => html`<option value=${name} ?selected=${name === result.name}>${name}</option>`)}</select>
      </label>
      ${this.#years(result)}`;
  }
}

customElements.define('wk-cashflow', WkCashflow);

declare global {
  interface HTMLElementTagNameMap {
    'wk-cashflow': WkCashflow;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import { QUOTABLE } from '../../model/works/bill.ts';
import { about, cents, span } from '../../paper/amounts.ts';
import { priceSource, priceText, quantityText, unforeseenWords } from '../../paper/bill.ts';
import { type Budget, budgetOf } from '../../paper/budget.ts';
import { guessed } from '../../paper/summary.ts';
import { TIMBER_HEAD, timberRows, timberWords } from '../../paper/timber.ts';
import { capital, moneyOf, type Reading } from '../../plots/reading.ts';
import type { BillRow } from '../../study/billRow.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { houseWords } from '../../study/houseCost.ts';
import { moneyCase, proposalOf } from '../../study/moneyCase.ts';
import type { TimberList } from '../../study/timberList.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { labelIn, numbersIn, unitOfLabel, wordsIn } from '../../units/inWords.ts';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';

/** Says the middle and the span of a result, or nothing before the draws are in. */
type Likely = (name: ResultName) => TemplateResult | typeof nothing;

const QUOTABLE_IDS = new Set(QUOTABLE.map(({ id }) => id));

/**
 * The bill of quantities of one scenario: what must be built, at which price, on whose word. Any line can be
 * swapped by the keeper's own quote.
 *
 * @fires wk-quote - a quote was put in or taken out
 * @fires wk-explain - the working of the sum was opened
 */
export class WkBill extends LitElement {
  static override properties = {
    run: { attribute: false },
    reading: { attribute: false },
    results: { attribute: false },
    draws: { attribute: false },
    scenario: {},
    caption: {},
    editing: { state: true },
  };

  static override styles = [
    shared,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        width: 100%;
        max-width: 52rem;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      td small {
        display: block;
      }
      th small {
        display: inline-block;
        margin-right: 0.6rem;
      }
      th small,
      td small {
        color: var(--quiet);
        font-size: 0.82rem;
      }
      th:last-child,
      td:last-child {
        padding-right: 0;
      }
      td.n {
        white-space: nowrap;
      }
      tfoot th,
      tfoot td {
        font-weight: 600;
        padding-top: 0.35rem;
      }
      .members tfoot tr:last-child > * {
        font-weight: 400;
      }
      .gap {
        color: var(--alarm);
        font-weight: 600;
      }
      .link {
        border: 0;
        background: none;
        padding: 0.1rem 0;
        min-height: 1.5rem;
        text-decoration: underline;
        cursor: pointer;
        font-size: 0.85rem;
      }
      form {
        display: grid;
        gap: 0.5rem;
        padding: 0.7rem;
        background: var(--ground);
        max-width: 26rem;
      }
      form label {
        display: grid;
        gap: 0.15rem;
      }
      form div {
        display: flex;
        gap: 0.5rem;
        flex-wrap: wrap;
      }
      ul {
        padding-left: 1.1rem;
        max-width: 44rem;
      }
      @media print {
        tr {
          break-inside: avoid;
        }
        thead {
          display: table-header-group;
        }
        /* Else the sums would stand at the foot of every page. */
        tfoot {
          display: table-row-group;
        }
        table {
          font-size: 0.9rem;
        }
      }
    `,
  ];

  declare run: Run | undefined;
  declare reading: Reading;
  /** The results with their spans, once the draws are in. */
  declare results: readonly ScenarioResult[] | undefined;
  declare draws: Draws | undefined;
  /** Name; the one that borrows or costs most to build when absent. */
  declare scenario: string | undefined;
  declare caption: string | undefined;
  /** Line whose quote is being written. */
  declare editing: string;

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.editing = '';
  }

  #quote(event: SubmitEvent, row: BillRow, scenario: number): void {
    event.preventDefault();
    const data = new FormData(event.currentTarget as HTMLFormElement);
    const asked = Number(data.get('price'));
    const because = String(data.get('because') ?? '').trim();
    if (!Number.isFinite(asked) || asked < 0 || because === '') return;
    this.editing = '';
    ask(this, 'wk-quote', {
      scenario,
      line: row.id,
      unitPrice: row.spec?.onTop ? asked / 100 : asked,
      because,
    });
  }

  #edit(line: string): void {
    this.editing = line;
  }

  #editor(row: BillRow, scenario: number): TemplateResult {
    const now = row.unitPrice === null ? '' : row.spec?.onTop ? row.unitPrice * 100 : row.unitPrice;
    const unit = row.spec?.onTop ? '% of the lines above' : `${this.reading.currency} a ${row.unit}`;
    return html`<form aria-label="Quote for ${row.label}" @submit=${(event: SubmitEvent) => this.#quote(event, row, scenario)}>
      <label>Quoted price, ${unit}<input class="field" name="price" type="number" min="0" step="any" required .value=${String(now)} /></label>
      <label>Whose quote, and when<input class="field" name="because" required .value=${row.because ?? ''} placeholder="builder in town, March" /></label>
      <div>
        <button class="plain">Use it</button>
        <button type="button" class="plain" @click=${() => {
          this.editing = '';
        }}>Leave it</button>
      </div>
    </form>`;
  }

  #line(row: BillRow, scenario: number, quoted: ReadonlySet<string>, likely: Likely): TemplateResult {
    const quantity = quantityText(row, this.reading);
    const source = [row.year ?? '', priceSource(row), row.own ? 'own, no cash' : '']
      .filter((part) => part !== '')
      .join(' · ');
    return html`<tr>
        <th scope="row">${capital(row.label)}<br /><small>${source}</small>
          ${
            QUOTABLE_IDS.has(row.id) && this.editing !== row.id
              ? html`<span class="screen"><button type="button" class="link" aria-label="Own quote for ${row.label}" @click=${() => this.#edit(row.id)}>${quoted.has(row.id) ? 'change the quote' : 'own quote'}</button>
                ${
                  quoted.has(row.id)
                    ? html` <button type="button" class="link" aria-label="Take out the quote for ${row.label}" @click=${() => ask(this, 'wk-quote', { scenario, line: row.id, unitPrice: null, because: '' })}>use the table again</button>`
                    : nothing
                }</span>`
              : nothing
          }
        </th>
        <td class="n">${quantity}<small>${quantity === '' ? '' : '× '}${priceText(row)}</small></td>
        <td class="n">${row.amount === null ? html`<span class="gap">no price</span>` : cents(row.amount)}${row.spec ? likely(row.spec.cost) : nothing}</td>
      </tr>
      ${this.editing === row.id ? html`<tr class="screen"><td colspan="3">${this.#editor(row, scenario)}</td></tr>` : nothing}`;
  }

  #budget({ unforeseen, cash }: Budget) {
    if (unforeseen === null || cash === null) return nothing;
    const row = (label: string, value: number) =>
      html`<tr><th scope="row" colspan="2">${label}</th><td class="n">${cents(value)}</td></tr>`;
    return html`${row('Unforeseen, in cash: P80 less the lines', unforeseen)}${row('Budget in cash, P80', cash)}`;
  }

  #members(list: TimberList): TemplateResult {
    const { rows, sum, boards } = timberRows(list);
    const { system } = this.reading;
    const line = (cells: readonly string[]) =>
      html`<tr>${cells.map((cell, k) => (k === 0 ? html`<th scope="row">${capital(wordsIn(cell, system))}</th>` : html`<td class="n">${numbersIn(cell, unitOfLabel(`, ${TIMBER_HEAD[k]}`) ?? unitOfLabel(TIMBER_HEAD[k]), system)}</td>`))}</tr>`;
    return html`<h3>Timber for the saw</h3>
      <p>${timberWords(list)}</p>
      <div class="scroll" tabindex="0" role="group" aria-label="Timber for the saw">
        <table class="members">
          <thead><tr>${TIMBER_HEAD.map((head, k) => html`<th scope="col" class=${k > 0 ? 'n' : ''}>${labelIn(head, system)}</th>`)}</tr></thead>
          <tbody>${rows.map(line)}</tbody>
          <tfoot>${line(sum)}${line(boards)}</tfoot>
        </table>
      </div>`;
  }

  protected override render() {
    const { run, reading, caption } = this;
    if (!run) return nothing;
    const index = proposalOf(run, this.scenario);
    if (index < 0) return html`<p>No scenario is called “${this.scenario}”.</p>`;
    const { result, bill, timber, members, house } = moneyCase(run, index);
    const bands = this.results?.find(({ name }) => name === result.name)?.bands;
    const budget = budgetOf({ proposal: { result, index }, draws: this.draws });
    const quoted = new Set(result.scenario.finance.quotes.map(({ line }) => line));
    const { capitalCost, capitalCash, capitalNonCash } = result.values;
    const gaps = bill.filter(({ noPrice }) => noPrice);
    const likely: Likely = (name) => {
      const [low, middle, high] = [bands?.p10[name], bands?.p50[name], bands?.p90[name]];
      // A figure that no draw moves is a quote or a sum as given: it has no span.
      if (typeof low !== 'number' || typeof middle !== 'number' || low === high) return nothing;
      return html`<small>${span(low, high, 'money', reading)}<br />middle ${about(middle, reading).replace(reading.currency, '').trim()}</small>`;
    };
    const total = (label: string, value: number | null, quantity: ResultName) => html`<tr>
      <th scope="row" colspan="2">${label}</th>
      <td class="n">${value === null ? html`<span class="gap">no sum</span>` : html`<button type="button" class="number" aria-label="${label}: ${cents(value)}. Show the working" @click=${() => ask(this, 'wk-explain', { scenario: index, quantity })}>${cents(value)}</button>`}${likely(quantity)}</td>
    </tr>`;
    return html`<h2>What must be built: ${result.name}</h2>
      <p>${caption === undefined ? 'Quantities follow from the measures of the works.' : caption.replace(/([^.!?])\s*$/, '$1.')} Amounts in ${moneyOf(reading)}; a line with its own year is a price of that year. ${this.draws ? 'Under each amount stand its P10 to P90 and its middle, P50: the sum of lines is not the sum of their ends.' : ''}</p>
      ${gaps.map(({ label, id }) => html`<p class="gap">No price given for ${label} in ${reading.currency}. Give a quote for line “${id}”.</p>`)}
      ${
        bill.length === 0
          ? html`<p>Nothing is built in this scenario.</p>`
          : html`<div class="scroll" tabindex="0" role="group" aria-label="Bill of quantities, ${result.name}">
              <table>
                <thead><tr><th scope="col">Line</th><th scope="col" class="n">Quantity</th><th scope="col" class="n">${reading.currency}</th></tr></thead>
                <tbody>${bill.map((row) => this.#line(row, index, quoted, likely))}</tbody>
                <tfoot>${total('In cash', capitalCash, 'capitalCash')}${total('In own timber and hours', capitalNonCash, 'capitalNonCash')}${total('Together', capitalCost, 'capitalCost')}${this.#budget(budget)}</tfoot>
              </table>
            </div>
            <p>${guessed(bill)}</p>
            ${this.draws ? html`<p>${unforeseenWords(budget, { draws: this.draws, reading })}</p>` : nothing}
            ${house ? html`<h3>Beside published costs</h3><p>${wordsIn(houseWords(house), reading.system)}</p>` : nothing}`
      }
      ${members ? this.#members(members) : nothing}
      ${
        timber.length === 0
          ? nothing
          : html`<h3>Timber too long in one piece</h3>
            <ul>${timber.map(({ member, neededM, longestM, alternatives }) => html`<li>${wordsIn(`A ${member} would be ${neededM.toFixed(2)} m; the longest to be had is ${longestM.toFixed(2)} m. Instead: ${alternatives.join('; or ')}.`, reading.system)}</li>`)}</ul>`
      }`;
  }
}

customElements.define('wk-bill', WkBill);

declare global {
  interface HTMLElementTagNameMap {
    'wk-bill': WkBill;
  }
}

import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { COMPARISONS } from '../../model/measures.ts';
import { SYSTEMS } from '../../notebook/systems.ts';
import { GREYS, INK, scenarioColour } from '../../plots/palette.ts';
import { moneyOf, type Reading, show } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { measuresOf } from '../../uncertainty/decide.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { shareBest, shareBestWeighted } from '../../uncertainty/percentiles.ts';
import { differenceSentences, hundredths } from '../../uncertainty/sentences.ts';
import { isCaution } from '../parts/caution.ts';
import { ask } from '../parts/events.ts';
import { amountOf, type Block, bestOf, type Measure, STAYS, SURE, TAKES } from '../parts/measures.ts';
import { absentMark, numberButton } from '../parts/number.ts';
import { shared } from '../parts/style.ts';

/**
 * The scenarios side by side: columns are scenarios, rows are measures at one height across all columns.
 *
 * @fires wk-explain - a number was opened
 * @fires wk-go - the reader wants the checks
 */
export class WkCards extends LitElement {
  static override properties = {
    results: { attribute: false },
    reading: { attribute: false },
    draws: { attribute: false },
    asked: { type: Number },
    weights: { attribute: false },
  };

  static override styles = [
    shared,
    css`
      .grid {
        display: grid;
        grid-template-columns: minmax(10.5rem, 13.5rem) repeat(var(--columns, 3), minmax(10.5rem, 1fr));
        column-gap: 0.9rem;
        /* Positioned, so that hidden words of swiped-away cards do not widen the page. */
        position: relative;
        overflow-x: auto;
        padding: 2px 2px 0.4rem;
      }
      .card,
      .names {
        display: grid;
        grid-row: 1 / span var(--rows);
        grid-template-rows: subgrid;
        align-content: start;
      }
      .names {
        position: sticky;
        left: 0;
        background: var(--paper);
        z-index: 1;
      }
      .card > section,
      .names > div,
      dl {
        display: contents;
      }
      header {
        border-top: 6px solid var(--colour);
        padding: 0.3rem 0.1rem 0;
      }
      header h3 {
        font-size: 1.12rem;
        line-height: 1.2;
        margin: 0;
        color: var(--colour);
      }
      header p {
        margin: 0;
        font-size: 0.85rem;
        line-height: 1.2;
        color: var(--quiet);
      }
      h4,
      .names h3 {
        font-size: 0.95rem;
        font-weight: 700;
        margin: 0;
        padding: 0.4rem 0 0.1rem;
        border-bottom: 1px solid var(--ink);
        min-height: 1.9rem;
      }
      .names h3 .quiet {
        font-weight: 400;
        font-size: 0.8rem;
      }
      .card h4 > span {
        position: absolute;
        width: 1px;
        height: 1px;
        overflow: hidden;
        clip-path: inset(50%);
      }
      .row,
      .label {
        border-bottom: 1px solid var(--rule);
        padding: 0.2rem 0.1rem 0.15rem;
        min-height: 1.9rem;
      }
      .label {
        line-height: 1.25;
      }
      .label.part {
        padding-left: 1rem;
      }
      dt {
        position: absolute;
        width: 1px;
        height: 1px;
        overflow: hidden;
        clip-path: inset(50%);
      }
      dd {
        margin: 0;
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        column-gap: 0.6rem;
        line-height: 1.25;
      }
      dd .number {
        font-size: 1.06rem;
      }
      .unit,
      .range {
        font-size: 0.85rem;
        color: var(--quiet);
        font-weight: 400;
      }
      .best .number {
        font-weight: 700;
      }
      .absent {
        text-decoration: none;
        cursor: help;
        padding: 0 0.4rem;
      }
      svg {
        display: block;
        width: 100%;
        height: 4px;
        margin-top: 2px;
      }
      .words {
        margin: 0.9rem 0 0;
        padding: 0;
        list-style: none;
        max-width: 46rem;
        line-height: 1.45;
      }
      .words li {
        margin-bottom: 0.25rem;
      }
      .key {
        font-size: 0.85rem;
        margin: 0.5rem 0 0;
      }
      .key summary {
        cursor: pointer;
        width: fit-content;
        color: var(--quiet);
        padding: 0.25rem 0;
      }
      .key p {
        margin: 0;
        max-width: 42rem;
      }
      @media screen and (max-width: 700px) {
        .grid {
          grid-template-columns: none;
          grid-auto-flow: column;
          grid-auto-columns: 9.6rem;
          column-gap: 0.8rem;
          scroll-snap-type: x proximity;
          scroll-padding-left: 10.4rem;
          margin: 0 -1rem;
          padding: 0 1rem 0.4rem;
          overscroll-behavior-x: contain;
        }
        .names {
          display: none;
        }
        .card {
          scroll-snap-align: start;
        }
        .card:nth-child(2) {
          position: sticky;
          left: 0;
          z-index: 1;
          background: var(--paper);
          box-shadow: 0.8rem 0 0 var(--paper);
          clip-path: inset(0 -0.8rem 0 -1rem);
          border-right: 1px solid var(--rule);
          padding-right: 0.3rem;
        }
        dt,
        .card h4 > span {
          position: static;
          width: auto;
          height: auto;
          clip-path: none;
          font-size: 0.8rem;
          color: var(--quiet);
          line-height: 1.2;
        }
        .card h4 > span {
          color: var(--ink);
          font-size: 0.95rem;
        }
        dd {
          column-gap: 0.4rem;
        }
      }
      @media print {
        .grid {
          overflow: visible;
          grid-template-columns: 9rem repeat(var(--columns, 3), minmax(0, 1fr));
          column-gap: 0.6rem;
          break-inside: avoid;
        }
        .names {
          position: static;
        }
        .row,
        .label {
          padding-block: 0.12rem;
          min-height: 0;
        }
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  declare draws: Draws | undefined;
  /** Draws the notebook asks for; 0 where that is not known. */
  declare asked: number;
  /** What the keeper weighs, results by name; empty when that was not said. */
  declare weights: Readonly<Record<string, number>>;
  #shares: { draws: Draws; weights: WkCards['weights']; of: Map<string, readonly number[]> } | undefined;

  constructor() {
    super();
    this.asked = 0;
    this.weights = {};
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.draws = undefined;
  }

  protected override updated(): void {
    const grid = this.renderRoot.querySelector<HTMLElement>('.grid');
    const rows =
      1 +
      [STAYS, TAKES].reduce((sum, block) => sum + 1 + block.measures.length, 0) +
      this.#sureRows().length +
      2;
    grid?.style.setProperty('--columns', String(this.results.length));
    grid?.style.setProperty('--rows', String(rows));
    grid?.querySelectorAll<HTMLElement>('.card').forEach((card, k) => {
      card.style.setProperty('--colour', scenarioColour(k));
    });
  }

  /** The rows of the last block: the measures always told, then the keeper's own weights where there are any. */
  #sureRows(): readonly { readonly key: string; readonly label: string }[] {
    return [
      ...SURE.map(({ quantity, label }) => ({ key: quantity, label })),
      ...(Object.values(this.weights).some((w) => w > 0) ? [{ key: '', label: 'Best by your weights' }] : []),
    ];
  }

  /** Share of the draws each scenario wins in a row; counted once for the same draws. */
  #wins(key: string): readonly number[] | undefined {
    const { draws, weights } = this;
    if (!draws) return undefined;
    if (this.#shares?.draws !== draws || this.#shares.weights !== weights)
      this.#shares = { draws, weights, of: new Map() };
    const known = this.#shares.of.get(key);
    if (known) return known;
    const row = SURE.find(({ quantity }) => quantity === key);
    const names = row ? [row.quantity] : measuresOf(weights).map(({ name }) => name);
    if (!names.every((name) => draws.results[name])) return undefined;
    const wins = row
      ? shareBest(draws, row.quantity, row.better)
      : shareBestWeighted(draws, measuresOf(weights));
    this.#shares.of.set(key, wins);
    return wins;
  }

  #range(measure: Measure, result: ScenarioResult): [number, number] | null {
    if (!result.bands) return null;
    const low = amountOf(measure, result.values, result.bands.p10);
    const high = amountOf(measure, result.values, result.bands.p90);
    return low === null || high === null || !(high > low) ? null : [low, high];
  }

  #bar(
    value: number,
    range: [number, number] | null,
    span: [number, number],
    colour: string,
  ): TemplateResult {
    const [least, most] = span;
    const at = (v: number) => (most > least ? ((v - least) / (most - least)) * 100 : 0);
    const [from, to] = [Math.min(at(0), at(value)), Math.max(at(0), at(value))];
    return svg`<svg viewBox="0 0 100 5" preserveAspectRatio="none" aria-hidden="true">
      <rect x="0" y="0" width="100" height="5" fill=${GREYS.ground}></rect>
      <rect x=${from} y="0" width=${Math.max(0, to - from)} height="5" fill=${colour} fill-opacity="0.55"></rect>
      ${range ? svg`<rect x=${at(range[0])} y="1.75" width=${at(range[1]) - at(range[0])} height="1.5" fill=${INK}></rect>` : nothing}
    </svg>` as TemplateResult;
  }

  #measure(measure: Measure, result: ScenarioResult, index: number): TemplateResult {
    const numbers = this.results.map((r) => amountOf(measure, r.values));
    const ranges = this.results.map((r) => this.#range(measure, r));
    const all = [0, ...numbers.filter((n) => n !== null), ...ranges.flatMap((r) => r ?? [])];
    const value = numbers[index];
    const unit = measure.perDay ? 'h' : measure.unit;
    // The currency stands once, before the value.
    const said = (v: number) => show(v, unit.startsWith('money') ? '' : unit, this.reading, 2);
    const range = ranges[index];
    return html`<div class="row ${bestOf(numbers, measure.better) === index ? 'best' : ''}">
      <dt>${measure.label}${measure.perDay ? ', hours a day' : ''}</dt>
      <dd>
        ${
          value === null
            ? absentMark(measure.absent)
            : numberButton(show(value, unit, this.reading), {
                scenario: index,
                scenarioName: result.name,
                quantity: measure.quantity,
                label: measure.label,
              })
        }
        ${range ? html`<span class="range"><span class="hidden">likely </span>${said(range[0]).number}–${said(range[1]).number}</span>` : nothing}
      </dd>
      ${value === null ? nothing : this.#bar(value, range, [Math.min(...all), Math.max(...all)], scenarioColour(index))}
    </div>`;
  }

  #block(block: Block, result: ScenarioResult, index: number): TemplateResult {
    return html`<section>
      <h4><span>${block.title}</span></h4>
      <dl>${block.measures.map((measure) => this.#measure(measure, result, index))}</dl>
    </section>`;
  }

  #sure(result: ScenarioResult, index: number): TemplateResult {
    const stops = result.checks.filter((check) => check.status === 'stop').length;
    const looks = result.checks.filter((check) => check.status === 'look' && !isCaution(check)).length;
    const found = [stops > 0 ? `${stops} to stop at` : '', looks > 0 ? `${looks} to look at` : '']
      .filter((s) => s !== '')
      .join(', ');
    return html`<section>
      <h4><span>How sure</span></h4>
      <dl>
        ${this.#sureRows().map(({ key, label }) => {
          const share = this.#wins(key)?.[index] ?? null;
          return html`<div class="row">
            <dt>${label}</dt>
            <dd>${share === null ? html`<span class="quiet">drawing …</span>` : html`<span class="often">${hundredths(share)}<span class="unit"> of 100</span></span>`}</dd>
          </div>`;
        })}
        <div class="row">
          <dt>Limits checked</dt>
          <dd><button type="button" class="number" @click=${() => ask(this, 'wk-go', { to: 'checks' })}>${found === '' ? 'all pass' : found}</button></dd>
        </div>
      </dl>
    </section>`;
  }

  #drawn(): string {
    const { draws, asked } = this;
    const said = (n: number) => n.toLocaleString('en-GB');
    const count = draws?.count ?? 0;
    // Fewer while an input is turned, and where a page cannot keep as many as are asked for.
    return `${said(count)} draws${asked > count ? ` (of ${said(asked)})` : ''}`;
  }

  #weighed() {
    const measures = measuresOf(this.weights);
    if (this.#sureRows().length === SURE.length) return nothing;
    const words = measures.map(
      ({ name, better, weight }) =>
        `${COMPARISONS.find((c) => c.name === name)?.short ?? name} ${weight} (${better === 'more' ? 'more' : 'less'} is better)`,
    );
    return html`<details class="key">
      <summary>Your weights</summary>
      <p>${words.join(', ')}. In each draw the best scenario of a measure scores its whole weight, the worst nothing, the rest in proportion; one without the measure scores nothing. The highest sum is best. Change them under <code>decide</code> in the text.</p>
    </details>`;
  }

  protected override render() {
    const { results, reading } = this;
    return html`
      <h2 class="hidden">The scenarios side by side</h2>
      <div class="grid" role="group" aria-label="Scenarios side by side" tabindex="0">
        <div class="names" aria-hidden="true">
          <header></header>
          ${[STAYS, TAKES].map(
            (block) => html`<div>
              <h3>${block.title}${block === TAKES ? html` <span class="quiet">${moneyOf(reading)}</span>` : nothing}</h3>
              ${block.measures.map((m) => html`<div class="label ${m.label.startsWith('of ') ? 'part' : ''}">${m.label}${m.perDay ? ', hours a day' : ''}</div>`)}
            </div>`,
          )}
          <div>
            <h3>How sure <span class="quiet">draws in which it …</span></h3>
            ${this.#sureRows().map(({ label }) => html`<div class="label">${label}</div>`)}
            <div class="label">Limits checked</div>
          </div>
        </div>
        ${results.map(
          (result, index) => html`<article class="card" aria-label=${result.name}>
            <header>
              <h3>${result.name}</h3>
              <p>${SYSTEMS[result.system]?.label ?? result.system}</p>
            </header>
            ${this.#block(STAYS, result, index)} ${this.#block(TAKES, result, index)} ${this.#sure(result, index)}
          </article>`,
        )}
      </div>
      <p class="key quiet">
        Bold is the best in its row. ${results.some((r) => r.bands) ? `The small range and the dark line span what 8 of 10 of ${this.#drawn()} give.` : ''} Each underlined number opens its working.
      </p>
      ${this.#weighed()}
      <ul class="words">${differenceSentences({ currency: reading.currency, year: reading.year, scenarios: results }, reading, this.draws).map((sentence) => html`<li>${sentence}</li>`)}</ul>
    `;
  }
}

customElements.define('wk-cards', WkCards);

declare global {
  interface HTMLElementTagNameMap {
    'wk-cards': WkCards;
  }
}

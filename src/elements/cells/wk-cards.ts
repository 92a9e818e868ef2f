import { html, LitElement, nothing } from 'lit';
import { SYSTEMS } from '../../notebook/systems.ts';
import { scenarioColour } from '../../plots/palette.ts';
import { moneyOf, type Reading } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { differenceSentences, hundredthsOf } from '../../uncertainty/sentences.ts';
import { type Block, chosenBlock, STAYS, TAKES } from '../parts/measures.ts';
import { shared } from '../parts/style.ts';
import { type Card, measureRow } from './cardsRow.ts';
import { cardsStyle } from './cardsStyle.ts';
import { countingWins, sureBlock, sureRows, type Weights, weighed } from './cardsSure.ts';

/**
 * The scenarios side by side: columns are scenarios, rows are measures at one height across all columns: what
 * stays, what it takes, how sure; or, as a cell of the text, just the results it names.
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
    measures: { attribute: false },
    inText: { type: Boolean },
    caption: {},
  };

  static override styles = [shared, cardsStyle];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  declare draws: Draws | undefined;
  /** Draws the notebook asks for; 0 where that is not known. */
  declare asked: number;
  /** What the keeper weighs; empty when that was not said. */
  declare weights: Weights;
  /** Names of the results to show. */
  declare measures: readonly string[] | undefined;
  /** As a cell of the text: results only, since how sure and in what they differ is said of all at the top. */
  declare inText: boolean;
  declare caption: string | undefined;

  #wins = countingWins();

  constructor() {
    super();
    this.asked = 0;
    this.weights = {};
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.draws = undefined;
    this.inText = false;
  }

  #blocks(): readonly Block[] {
    return this.measures ? [chosenBlock(this.measures)] : [STAYS, TAKES];
  }

  #cards(): readonly Card[] {
    const { order } = this.reading;
    return this.results.map((result, k) => {
      const place = order?.indexOf(result.name) ?? -1;
      return { result, place: place < 0 ? k : place };
    });
  }

  protected override updated(): void {
    const grid = this.renderRoot.querySelector<HTMLElement>('.grid');
    const rows =
      1 +
      this.#blocks().reduce((sum, block) => sum + 1 + block.measures.length, 0) +
      (this.inText ? 0 : sureRows(this.weights).length + 2);
    grid?.style.setProperty('--columns', String(this.results.length));
    grid?.style.setProperty('--rows', String(rows));
    const cards = this.#cards();
    grid?.querySelectorAll<HTMLElement>('.card').forEach((card, k) => {
      card.style.setProperty('--colour', scenarioColour(cards[k].place));
    });
  }

  #names() {
    const blocks = this.#blocks();
    const priced = blocks.find(({ measures }) => measures.some((m) => m.unit.startsWith('money')));
    return html`<div class="names" aria-hidden="true">
      <header></header>
      ${blocks.map(
        (block) => html`<div>
          <h3>${block.title}${block === priced ? html` <span class="quiet">${moneyOf(this.reading)}</span>` : nothing}</h3>
          ${block.measures.map((m) => html`<div class="label">${m.label}${m.perDay ? ', hours a day' : ''}</div>`)}
        </div>`,
      )}
      ${
        this.inText
          ? nothing
          : html`<div>
              <h3>How sure <span class="quiet">draws in which it …</span></h3>
              ${sureRows(this.weights).map(({ label }) => html`<div class="label">${label}</div>`)}
              <div class="label">Limits checked</div>
            </div>`
      }
    </div>`;
  }

  #card(cards: readonly Card[], index: number) {
    const { draws, weights, reading, inText } = this;
    const { result, place } = cards[index];
    return html`<article class="card" aria-label=${result.name}>
      <header>
        <h3>${result.name}</h3>
        <p>${SYSTEMS[result.system]?.label ?? result.system}</p>
      </header>
      ${this.#blocks().map(
        (block) => html`<section>
          <h4><span>${block.title}</span></h4>
          <dl>${block.measures.map((measure) => measureRow(measure, cards, index, reading))}</dl>
        </section>`,
      )}
      ${inText ? nothing : sureBlock(result, weights, (key) => this.#ofHundred(draws, weights, key, place))}
    </article>`;
  }

  /** In whole hundredths that sum to 100 over the scenarios. */
  #ofHundred(draws: Draws | undefined, weights: Weights, key: string, place: number): string | null {
    if (this.results.length < 2) return '';
    const wins = this.#wins(draws, weights, key);
    return wins ? (hundredthsOf(wins)[place] ?? null) : null;
  }

  #drawn(): string {
    const { draws, asked } = this;
    const said = (n: number) => n.toLocaleString('en-GB');
    const count = draws?.count ?? 0;
    // Fewer while an input is turned, and where a page cannot keep as many as are asked for.
    return `${said(count)} draws${asked > count ? ` (of ${said(asked)})` : ''}`;
  }

  protected override render() {
    const { results, reading, inText, caption, weights, draws } = this;
    const cards = this.#cards();
    const heading = inText ? 'Scenarios side by side, in the text' : 'Scenarios side by side';
    return html`
      <h2 class="hidden">${inText ? heading : 'The scenarios side by side'}</h2>
      <div class="grid" role="group" aria-label=${heading} tabindex="0">
        ${this.#names()} ${cards.map((_, index) => this.#card(cards, index))}
      </div>
      ${caption ? html`<p class="key">${caption}</p>` : nothing}
      <p class="key quiet">
        Bold is the best in its row. ${results.some((r) => r.bands) ? `The small range and the dark line span what 8 of 10 of ${this.#drawn()} give.` : ''} Each underlined number opens its working.
      </p>
      ${
        inText
          ? nothing
          : html`${weighed(weights)}
            <ul class="words">${differenceSentences({ currency: reading.currency, year: reading.year, scenarios: results }, reading, draws).map((sentence) => html`<li>${sentence}</li>`)}</ul>`
      }
    `;
  }
}

customElements.define('wk-cards', WkCards);

declare global {
  interface HTMLElementTagNameMap {
    'wk-cards': WkCards;
  }
}

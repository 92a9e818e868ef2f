import { html, LitElement, nothing } from 'lit';
import { SYSTEMS } from '../../notebook/systems.ts';
import { offMiddleWords } from '../../plots/offMiddle.ts';
import { scenarioColour } from '../../plots/palette.ts';
import { moneyOf, type Reading } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { differenceSentences, hundredthsOf } from '../../uncertainty/sentences.ts';
import { formatWhole } from '../../units/format.ts';
import { type Block, chosenBlock, STAYS, TAKES } from '../parts/measures.ts';
import { shared } from '../parts/style.ts';
import { type Card, measureRow } from './cardsRow.ts';
import { cardsStyle } from './cardsStyle.ts';
import { countingWins, sureBlock, sureRows, type Weights, weighed } from './cardsSure.ts';

/** Below this width cards stand one behind the other. */
const NARROW = '(max-width: 700px)';

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
    against: { state: true },
    here: { state: true },
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
  /** The scenario the others are told against, by name; empty for none, undefined until the reader chooses. */
  declare against: string | undefined;
  /** On a phone: the card that is in sight. */
  declare here: number;

  #wins = countingWins();

  constructor() {
    super();
    this.asked = 0;
    this.weights = {};
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.draws = undefined;
    this.inText = false;
    this.here = 0;
  }

  /** One card at a time. */
  #narrow = matchMedia(NARROW);
  #turned = () => this.requestUpdate();

  override connectedCallback(): void {
    super.connectedCallback();
    this.#narrow.addEventListener('change', this.#turned);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#narrow.removeEventListener('change', this.#turned);
  }

  /** Index of the base among the cards: what the reader chose; on a phone, where no card stands beside another, the notebook's own. */
  get #base(): number | undefined {
    const { results } = this;
    const named = results
      .map(({ finance }) => finance.difference?.baseline)
      .find((name) => name !== undefined);
    const name = this.against ?? (this.#narrow.matches ? (named ?? results[0]?.name) : '');
    const at = results.findIndex((result) => result.name === name);
    return at < 0 || results.length < 2 ? undefined : at;
  }

  #chooser(base: number | undefined) {
    if (this.inText || this.results.length < 2) return nothing;
    return html`<p class="key base screen"><label>Show the difference to
      <select @change=${(event: Event) => {
        this.against = (event.target as HTMLSelectElement).value;
      }}>
        <option value="" .selected=${base === undefined}>none</option>
        ${this.results.map(({ name }, k) => html`<option value=${name} .selected=${k === base}>${name}</option>`)}
      </select></label></p>`;
  }

  /** Names in reach of the thumb: a press goes to the card, and the card in sight is marked. */
  #tabs(cards: readonly Card[]) {
    if (cards.length < 2) return nothing;
    return html`<div class="tabs screen" role="group" aria-label="Scenario in sight">${cards.map(
      ({ result }, k) =>
        html`<button type="button" aria-pressed=${this.here === k} @click=${() => this.#goTo(k)}>${result.name}</button>`,
    )}</div>`;
  }

  #goTo(k: number): void {
    const grid = this.renderRoot.querySelector<HTMLElement>('.grid');
    const card = grid?.querySelectorAll<HTMLElement>('.card')[k];
    if (grid && card) grid.scrollTo({ left: card.offsetLeft - grid.offsetLeft, behavior: 'smooth' });
    this.here = k;
  }

  #scrolled(event: Event): void {
    if (!this.#narrow.matches) return;
    const grid = event.currentTarget as HTMLElement;
    const width = grid.querySelector<HTMLElement>('.card')?.offsetWidth ?? 0;
    if (width > 0) this.here = Math.min(this.results.length - 1, Math.round(grid.scrollLeft / width));
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
    for (const what of ['.card', '.tabs button'])
      this.renderRoot.querySelectorAll<HTMLElement>(what).forEach((each, k) => {
        each.style.setProperty('--colour', scenarioColour(cards[k].place));
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

  #card(cards: readonly Card[], index: number, base: number | undefined) {
    const { draws, weights, reading, inText } = this;
    const { result, place } = cards[index];
    return html`<article class="card" aria-label=${result.name}>
      <header>
        <h3>${result.name}</h3>
        <p>${SYSTEMS[result.system]?.label ?? result.system}${base === undefined || base === index ? nothing : html`<span class="against">; + and − against “${cards[base].result.name}”</span>`}</p>
      </header>
      ${this.#blocks().map(
        (block) => html`<section>
          <h4><span>${block.title}</span></h4>
          <dl>${block.measures.map((measure) => measureRow(measure, cards, index, reading, base))}</dl>
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

  #offMiddle(): string[] {
    const names = new Set(this.#blocks().flatMap(({ measures }) => measures.map((m) => m.quantity)));
    return offMiddleWords(this.results, [...names], this.reading);
  }

  #drawn(): string {
    const { draws, asked } = this;
    const count = draws?.count ?? 0;
    // Fewer while an input is turned, and where a page cannot keep as many as are asked for.
    return `${formatWhole(count)} draws${asked > count ? ` (of ${formatWhole(asked)})` : ''}`;
  }

  protected override render() {
    const { results, reading, inText, caption, weights, draws } = this;
    const cards = this.#cards();
    const base = this.#base;
    const heading = inText ? 'Scenarios side by side, in the text' : 'Scenarios side by side';
    return html`
      <h2 class="hidden">${inText ? heading : 'The scenarios side by side'}</h2>
      ${this.#tabs(cards)}
      <div class="grid" role="group" aria-label=${heading} tabindex="0" @scroll=${this.#scrolled}>
        ${this.#names()} ${cards.map((_, index) => this.#card(cards, index, base))}
      </div>
      ${this.#chooser(base)}
      ${caption ? html`<p class="key">${caption}</p>` : nothing}
      <p class="key quiet">
        Bold is the best in its row. ${results.some((r) => r.bands) ? `The small range and the dark line span what 8 of 10 of ${this.#drawn()} give.` : ''} Each underlined number opens its working.${reading.noted?.some(({ size }) => size > 0) ? ' On one with a * stands a note.' : ''}
      </p>
      ${this.#offMiddle().map((words) => html`<p class="key quiet">${words}</p>`)}
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

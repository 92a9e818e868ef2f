import { html, LitElement, nothing } from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { RowChanges } from '../../model/bind.ts';
import { isValue } from '../../model/dictionary.ts';
import type { PreparedWeather } from '../../model/weather/prepared.ts';
import type { Block } from '../../notebook/body.ts';
import type { InlineValue } from '../../notebook/inline.ts';
import { proseParts } from '../../notebook/markdown.ts';
import { type BodyPart, partsOf } from '../../notebook/parts.ts';
import type { Notebook } from '../../notebook/read.ts';
import { type Reading, show, unitOf } from '../../plots/reading.ts';
import { mostDraws } from '../../store/drawn.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import type { Problem } from '../../units/problem.ts';
import { HERD_DEFAULT, type HerdMeaning, turnNames } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import { type CellPage, cellShown } from './cells.ts';
import { notebookStyle } from './notebookStyle.ts';
import { isForBoard, pairsOf } from './pairs.ts';
import { namedPart, partTools, type Writing } from './partTools.ts';
import { notesOn } from './placed.ts';
import { writingStyle } from './writingStyle.ts';
import '../parts/wk-problems.ts';
import './wk-add.ts';
import './wk-form.ts';
import './wk-words.ts';

/** Parts set at once: the rest follows in turns between which the page answers. */
const AT_ONCE = 60;
/** Of a cell that cannot be read so much is shown; all of it stands in the text. */
const MOST_WRITTEN = 4000;

/**
 * The notebook as it was written: prose and cells in their order, values by name set into the prose.
 *
 * @fires wk-explain - a value in the prose was opened
 */
export class WkNotebook extends LitElement implements CellPage {
  static override properties = {
    notebook: { attribute: false },
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    herd: {},
    draws: { attribute: false },
    winters: { attribute: false },
    board: { type: Boolean },
    whole: { attribute: false },
    asked: { type: Boolean },
    writing: { state: true },
    refused: { state: true },
  };

  static override styles = [shared, writingStyle, notebookStyle];

  declare notebook: Notebook | undefined;
  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare herd: HerdMeaning;
  declare draws: Draws | undefined;
  declare winters: readonly PreparedWeather[];
  /** Figures side by side, without the words between them. */
  declare board: boolean;
  /** Every cell is given what is new, in sight or not: before it is printed. */
  declare whole: boolean;
  /** Somebody else's, which is only read: notes are put on it, nothing of it is written. */
  declare asked: boolean;
  /** What is being written, and where. */
  declare writing: Writing | undefined;
  /** Why the last thing asked of a part was not done. */
  declare refused: Problem | undefined;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.herd = HERD_DEFAULT;
    this.winters = [];
    this.board = false;
    this.whole = false;
    this.asked = false;
  }

  get count(): number {
    return Math.min(this.notebook?.draws.count ?? 0, mostDraws(this.results.length));
  }

  /** Cells as they were last drawn, and those in sight: what is out of sight waits until it is scrolled to. */
  #drawn = new WeakMap<Block, ReturnType<typeof cellShown>>();
  #inSight = new Set<Element>();
  #sight = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        if (isIntersecting) this.#inSight.add(target);
        else this.#inSight.delete(target);
      }
      if (entries.some(({ isIntersecting }) => isIntersecting)) this.requestUpdate();
    },
    { rootMargin: '300px' },
  );
  #beforePrint = () => {
    this.#upTo = Number.POSITIVE_INFINITY;
    this.#drawn = new WeakMap();
    this.requestUpdate();
  };

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.#beforePrint);
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.#beforePrint);
    this.#sight.disconnect();
    this.#inSight.clear();
    clearTimeout(this.#more);
  }

  /** How many of the parts are set, and when the next are. */
  #upTo = AT_ONCE;
  #more: ReturnType<typeof setTimeout> | undefined;

  protected override updated(): void {
    for (const cell of this.renderRoot.querySelectorAll('.cell')) this.#sight.observe(cell);
    this.#writeValues();
    clearTimeout(this.#more);
    if (this.#upTo < this.#places.length && !this.board)
      this.#more = setTimeout(() => {
        this.#upTo += AT_ONCE;
        this.requestUpdate();
      });
    const focus = this.#focus;
    if (!focus) return;
    this.#focus = undefined;
    this.renderRoot.querySelector<HTMLElement>(`[data-place="${focus.place}"] :is(${focus.what})`)?.focus();
  }

  #scenarioOf(name: string | null): number {
    return name === null ? 0 : this.results.findIndex((result) => result.name === name);
  }

  #valueText = ({ quantity, scenario }: Omit<InlineValue, 'line'>): string => {
    const result = this.results[this.#scenarioOf(scenario)];
    const value = isValue(quantity) ? result?.values[quantity] : undefined;
    const unit = unitOf(quantity);
    const shown = show(value, unit, this.reading);
    // What is counted is named by the prose around it: "17 animals", "197 days".
    const text = unit === 'head' || unit === 'd' ? shown.number : shown.text;
    return this.reading.own?.[this.#scenarioOf(scenario)]?.has(quantity) ? `${text}\u00A0•` : text;
  };

  #opened(event: Event): void {
    const button = (event.target as HTMLElement).closest<HTMLElement>('.inline-value');
    const quantity = button?.dataset.quantity;
    const scenario = this.#scenarioOf(button?.dataset.scenario ?? null);
    if (button && quantity && scenario >= 0) ask(button, 'wk-explain', { scenario, quantity });
  }

  /** A paragraph is set once; what its values come to is written into it as they change. */
  #writeValues(): void {
    for (const button of this.renderRoot.querySelectorAll<HTMLElement>('.inline-value')) {
      const { quantity = '', scenario = null } = button.dataset;
      const text = this.#valueText({ quantity, scenario });
      if (button.textContent !== text) button.textContent = text;
    }
  }

  #prose = new WeakMap<Block, readonly string[]>();
  /** Paragraphs as they are set. Headings stand one rank under the page's own, whose words are not said twice. */
  #htmlOf(block: Block): readonly string[] {
    if (block.type !== 'prose') return [];
    const known = this.#prose.get(block);
    if (known) return known;
    const html = proseParts(block.text, this.#valueText).map((part) =>
      part.replace(
        /<(\/?)h([1-5])( [^>]*)?>/g,
        (_, slash, rank, more = '') => `<${slash}h${Number(rank) + 1}${more}>`,
      ),
    );
    const first = /^\s*<h2>([^<]*)<\/h2>/.exec(html[0] ?? '');
    if (first && first[1].trim() === this.notebook?.title.trim()) html[0] = '';
    this.#prose.set(block, html);
    return html;
  }

  #parts: { readonly of: Notebook | undefined; readonly parts: readonly BodyPart[] } | undefined;
  /** The place of the first part of each block. */
  #firsts: ReadonlyMap<Block, number> = new Map();
  get #places(): readonly BodyPart[] {
    if (!this.#parts || this.#parts.of !== this.notebook) {
      const parts = partsOf(this.notebook?.blocks ?? []);
      // One that is opened after another begins anew; an edit adds a few.
      this.#upTo = Math.min(this.#upTo, (this.#parts?.parts.length ?? 0) + AT_ONCE);
      this.#firsts = new Map([...parts.entries()].reverse().map(([place, { block }]) => [block, place]));
      this.#parts = { of: this.notebook, parts };
    }
    return this.#parts.parts;
  }

  #open(writing: Writing | undefined): void {
    const closed = writing === undefined ? this.writing : undefined;
    this.refused = undefined;
    this.writing = writing;
    if (closed) this.#focus = { place: closed.place, what: '.open' };
    else if (writing?.act === 'tools') this.#focus = { place: writing.place, what: '.tools button' };
  }

  /** Where the keyboard goes once all is drawn. */
  #focus: { readonly place: number; readonly what: string } | undefined;

  #moved(from: number, to: number | undefined): void {
    this.writing = to === undefined ? undefined : { place: to, act: 'tools' };
    this.#focus =
      to === undefined
        ? { place: Math.max(0, from - 1), what: '.open' }
        : { place: to, what: `[data-act=${to < from ? 'up' : 'down'}]:not(:disabled), [data-act=close]` };
  }

  #added(event: Event): void {
    const { writing } = this;
    if (!writing) return;
    const kind = (event as CustomEvent<string>).detail;
    this.writing =
      kind === 'words' ? { ...writing, act: 'newWords' } : { place: writing.place + 1, act: 'form' };
  }

  #note(place: number, named: string) {
    return html`<button type="button" class="open" aria-label="Put a note on: ${named}" @click=${() => this.#open({ place, act: 'note' })}>Note</button>`;
  }

  #notesOn(place: number) {
    const { writing } = this;
    return notesOn(this.notebook, this.#places, place, writing?.place === place && writing.act === 'note');
  }

  /** A press on a paragraph opens it, unless it was meant for a number, a link, or to mark words. */
  #pressed(event: Event, place: number): void {
    if ((event.target as HTMLElement).closest('button, a, wk-words, wk-notes, .tools, wk-add')) return;
    if (getSelection()?.type === 'Range') return;
    this.#open({ place, act: this.asked ? 'note' : 'words' });
  }

  /** What is open at a part, below it. */
  #below(part: BodyPart, place: number) {
    const { writing } = this;
    if (writing?.place !== place || writing.act === 'note') return nothing;
    const tools = () =>
      partTools(
        {
          part,
          place,
          count: this.#places.length,
          open: (next) => this.#open(next),
          moved: (to) => this.#moved(place, to),
          refused: (problem) => {
            this.refused = problem;
          },
        },
        this.refused,
      );
    if (writing.act === 'add') return html`<wk-add .behind=${place}></wk-add>`;
    if (writing.act === 'newWords') return html`<wk-words .place=${place} .adding=${true}></wk-words>`;
    return tools();
  }

  #paragraph(part: BodyPart, place: number, set: string) {
    const { block, from, to } = part;
    if (set === '') return nothing;
    if (this.writing?.place === place && this.writing.act === 'words')
      return html`<div class="part" id="place-${place}" data-place=${place}>
        <wk-words .place=${place} .text=${block.text.slice(from - block.from, to - block.from)}></wk-words>
        ${this.#below(part, place)} ${this.#notesOn(place)}
      </div>`;
    const named = namedPart(part);
    return html`<div class="part" id="place-${place}" data-place=${place}>
      <div class="prose" @click=${(event: Event) => this.#pressed(event, place)}>${unsafeHTML(set)}</div>
      <div class="reach screen">${this.asked ? nothing : html`<button type="button" class="open words" aria-label="Change the words: ${named}" @click=${() => this.#open({ place, act: 'words' })}>Change</button>`} ${this.#note(place, named)}</div>
      ${this.#below(part, place)} ${this.#notesOn(place)}
    </div>`;
  }

  #cell(part: BodyPart, place: number) {
    const { block } = part;
    const { writing } = this;
    if (block.type === 'prose') return nothing;
    const named = namedPart(part);
    return html`<div class="part" id="place-${place}" data-place=${place}>
      <div class="beside screen">${this.asked ? nothing : html`<button type="button" class="open" aria-label="Change: ${named}, line ${block.line}" aria-expanded=${writing?.place === place} @click=${() => this.#open(writing?.place === place ? undefined : { place, act: 'tools' })}>Change</button>`} ${block.type === 'cell' ? this.#note(place, `${named}, line ${block.line}`) : nothing}</div>
      ${writing?.place === place && writing.act !== 'add' && writing.act !== 'newWords' ? this.#below(part, place) : nothing}
      ${
        block.type === 'cell' && writing?.place === place && writing.act === 'form'
          ? html`<wk-form .block=${block} .place=${place} .scenarios=${this.results.map(({ name }) => name)} .inputs=${this.run ? turnNames(this.run) : []}></wk-form>`
          : nothing
      }
      ${this.#shown(block)} ${this.#notesOn(place)}
      ${writing?.place === place && (writing.act === 'add' || writing.act === 'newWords') ? this.#below(part, place) : nothing}
    </div>`;
  }

  #shown(block: Block) {
    if (block.type === 'prose') return nothing;
    if (block.type === 'broken')
      return html`<div class="cell"><wk-problems .problems=${block.problems}></wk-problems><pre tabindex="0" aria-label="Cell as written, line ${block.line}"><code>${clipped(block.text.trimEnd())}</code></pre></div>`;
    const seen =
      this.whole ||
      [...this.#inSight].some((cell) => (cell as HTMLElement).dataset.line === String(block.line));
    // The same template again leaves everything below it as it is.
    const cell = seen ? cellShown(block, this) : (this.#drawn.get(block) ?? cellShown(block, this));
    this.#drawn.set(block, cell);
    return cell === nothing
      ? html`<p class="quiet">The cards stand above the text.</p>`
      : html`<div class="cell" data-line=${block.line}>${cell}</div>`;
  }

  #part(part: BodyPart, place: number) {
    const { block } = part;
    if (block.type !== 'prose') return this.#cell(part, place);
    const first = this.#firsts.get(block) ?? place;
    return this.#paragraph(part, place, this.#htmlOf(block)[place - first] ?? '');
  }

  #board() {
    return html`<div class="board" @click=${(event: Event) => this.#opened(event)}>${this.#places
      .filter(({ block }) => isForBoard(block))
      .map(({ block }) => this.#shown(block))}</div>`;
  }

  protected override render() {
    if (this.results.length === 0) return nothing;
    if (this.board) return this.#board();
    const last = this.#places.length - 1;
    const set = (places: readonly number[]) => places.filter((place) => place < this.#upTo);
    const adding =
      this.writing?.place === last && (this.writing.act === 'add' || this.writing.act === 'newWords');
    return html`<div
      @click=${(event: Event) => this.#opened(event)}
      @wk-closed=${() => this.#open(undefined)}
      @wk-added=${(event: Event) => this.#added(event)}
    >
      <p class="quiet hint screen">${this.asked ? 'Press a paragraph to put a note on it; “Note” at a figure does the same there, and each underlined number takes one in its working.' : 'Press a paragraph to change its words; “Change” at a figure gives it other options, moves it or takes it out; “Note” puts a note on it.'}</p>
      ${pairsOf(this.#places)
        .filter(({ said, shown }) =>
          [...said.slice(0, 1), ...shown.slice(0, 1)].some((place) => place < this.#upTo),
        )
        .map(
          ({
            said,
            shown,
          }) => html`<section class="pair ${shown.length === 0 ? 'words' : said.length === 0 ? 'shown' : ''}">
          ${said.length === 0 ? nothing : html`<div class="said">${set(said).map((place) => this.#part(this.#places[place], place))}</div>`}
          ${shown.length === 0 ? nothing : html`<div class="figures">${set(shown).map((place) => this.#part(this.#places[place], place))}</div>`}
        </section>`,
        )}
      ${adding || this.asked ? nothing : html`<p class="screen"><button type="button" class="plain" @click=${() => this.#open({ place: last, act: 'add' })}>Add words or a figure</button></p>`}
    </div>`;
  }
}

const clipped = (text: string) =>
  text.length <= MOST_WRITTEN
    ? text
    : `${text.slice(0, MOST_WRITTEN)}… and ${text.length - MOST_WRITTEN} more letters, as they stand in the text`;

customElements.define('wk-notebook', WkNotebook);

declare global {
  interface HTMLElementTagNameMap {
    'wk-notebook': WkNotebook;
  }
}

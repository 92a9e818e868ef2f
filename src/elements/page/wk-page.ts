import { html, LitElement, nothing } from 'lit';
import type { PageSection } from '../../notebook/noteSchema.ts';
import type { Notebook } from '../../notebook/read.ts';
import { type Reading, show } from '../../plots/reading.ts';
import { mostDraws } from '../../store/drawn.ts';
import type { Scope } from '../../store/fields.ts';
import type { OpenNotebook } from '../../store/opening.ts';
import { restingOnOwn } from '../../study/own.ts';
import type { Climate } from '../../tables/weatherJoin.ts';
import type { Asked } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import { watch } from '../parts/watch.ts';
import '../cells/wk-answer.ts';
import '../cells/wk-cards.ts';
import type { ContentsEntry } from './contents.ts';
import type { InputChanges } from './inputChanges.ts';
import { pageStyle } from './pageStyle.ts';
import './wk-inputs.ts';
import '../parts/wk-problems.ts';

/** Made once: making one costs more than a whole card. */
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });

/** What comes once the cards are painted. */
type Rest = typeof import('./below.ts').BELOW;

const NO_CLIMATES: readonly Climate[] = [];
const NO_WEIGHTS: Readonly<Record<string, number>> = {};

/** An open notebook: the strip of inputs, the three answers, then the notebook itself. */
export class WkPage extends LitElement {
  static override properties = {
    open: { attribute: false },
    system: {},
    asked: { type: Boolean },
    lost: { state: true },
    rest: { state: true },
  };

  static override styles = [shared, pageStyle];

  declare open: OpenNotebook | undefined;
  declare system: Reading['system'] | '';
  /** Somebody else's, opened to be read. */
  declare asked: boolean;
  /** What stands below the cards could not be fetched. */
  declare lost: boolean;
  declare rest: Rest | undefined;

  constructor() {
    super();
    this.system = '';
    this.asked = false;
    this.lost = false;
    watch(this, () => {
      const open = this.open;
      return (
        open && [
          open.results.value,
          open.problems.value,
          open.strip.value,
          open.draws.value,
          open.notebook.value,
          open.weatherNotes.value,
          open.herd.value,
          open.text.value,
          open.run.value,
        ]
      );
    });
    this.addEventListener('wk-explain', (event) => this.#explain(event as CustomEvent<Asked['wk-explain']>));
    this.addEventListener('wk-preview', ({ detail }) => this.open?.preview(detail.id, detail.value));
    this.addEventListener('wk-commit', ({ detail }) => this.open?.commit(detail.id, detail.value));
    this.addEventListener('wk-herd', ({ detail }) => this.open?.setHerd(detail.herd));
    this.addEventListener('wk-override', ({ detail }) =>
      this.open?.override(detail.id, detail.value, detail.because),
    );
    this.addEventListener('wk-quote', ({ detail }) => this.#quote(detail));
    this.addEventListener('wk-weather-file', ({ detail }) => this.open?.useWeather(detail.name, detail.text));
    this.addEventListener('wk-edit', ({ detail }) => this.#edit(detail));
    this.addEventListener(
      'wk-weather-rain',
      ({ detail }) => void this.open?.useRain(detail.name, detail.rain, detail.climate),
    );
    this.addEventListener('wk-whose', ({ detail }) => {
      const notebook = this.open?.notebook.value;
      if (notebook) detail.tell({ title: notebook.title, invented: notebook.invented });
    });
    this.addEventListener('wk-go', ({ detail }) => this.#go(detail.to));
  }

  #inputs: InputChanges | undefined;
  /** What the open working explains, so that it follows the figures. */
  #explained: (Asked['wk-explain'] & { readonly run: unknown }) | undefined;

  #leavesOf = (id: string) => this.#inputs?.leavesOf(this.#explained?.scenario ?? -1, id) ?? [];

  protected override updated(): void {
    this.#followRun();
    // The figures and what draws them are the larger part of the page: they come once the cards are painted.
    if (this.#fetching || (this.open?.results.value.length ?? 0) === 0) return;
    requestAnimationFrame(() => setTimeout(() => void this.#fetchRest()));
  }

  #fetching: Promise<Rest | undefined> | undefined;
  #fetchRest(): Promise<Rest | undefined> {
    this.#fetching ??= import('./below.ts').then(
      ({ BELOW }) => {
        this.#inputs = new BELOW.InputChanges(() => this.open);
        this.rest = BELOW;
        return BELOW;
      },
      () => {
        this.#fetching = undefined;
        this.lost = true;
        return undefined;
      },
    );
    return this.#fetching;
  }

  /** Does what takes more than the cards; at once where that is there. */
  #withRest(act: (rest: Rest) => void): void {
    if (this.rest) act(this.rest);
    else void this.#fetchRest().then((rest) => rest && act(rest));
  }

  #followRun(): void {
    const [trace, run, explained] = [
      this.renderRoot.querySelector('wk-trace'),
      this.open?.run.value,
      this.#explained,
    ];
    if (!this.rest || !run || !trace?.node || !explained || explained.run === run) return;
    this.#explained = { ...explained, run };
    if (run.scenarios[explained.scenario])
      trace.node = this.rest.explain(run, explained.scenario, explained.quantity);
  }

  #explain(event: CustomEvent<Asked['wk-explain']>): void {
    const { scenario, quantity } = event.detail;
    const from = event.composedPath()[0] as HTMLElement;
    this.#withRest(({ explain }) => {
      const run = this.open?.run.value;
      if (!run) return;
      this.#explained = { scenario, quantity, run };
      // What is noted on it is given from here.
      this.requestUpdate();
      const trace = this.renderRoot.querySelector('wk-trace');
      void trace?.open(explain(run, scenario, quantity), run.scenarios[scenario].name, from);
    });
  }

  #quote({ scenario, ...quote }: Asked['wk-quote']): void {
    this.#withRest(({ setQuote }) => {
      const { open } = this;
      const scenarios = open?.notebook.value?.scenarios;
      // A text that cannot be read now is not edited: its problems are on show.
      if (!open || !scenarios || open.problems.value.length > 0) return;
      open.edit(
        setQuote(open.text.value, scenario, scenarios[scenario].finance.quotes, quote),
        `quote for ${quote.line}`,
      );
    });
  }

  #edit({ make, done }: Asked['wk-edit']): void {
    this.#withRest(({ readNotebook }) => {
      const { open } = this;
      if (!open) return;
      const [text, file] = [open.text.value, open.file];
      // What is on show is another text than the one that would be changed.
      if (open.notebook.value?.text !== text) {
        done({
          refused: {
            what: 'the text as it stands cannot be shown yet, so nothing else in it is changed',
            file,
            todo: 'wait a moment, mend what is listed above, or undo the last change',
          },
        });
        return;
      }
      const edited = make({ text, file, read: readNotebook });
      if ('text' in edited) open.edit(edited.text, edited.what);
      done(edited);
    });
  }

  /** Where a line of the contents leads. */
  #placeOf = (to: string): HTMLElement | null | undefined => {
    const inside = this.renderRoot.querySelector('wk-notebook')?.shadowRoot;
    return (
      this.renderRoot.querySelector<HTMLElement>(`#${to}`) ?? inside?.querySelector<HTMLElement>(`#${to}`)
    );
  };

  #go(to: string): void {
    const target = this.#placeOf(to);
    if (!target) return;
    if (!target.hasAttribute('tabindex')) target.tabIndex = -1;
    target.scrollIntoView({ block: 'start' });
    target.focus({ preventScroll: true });
  }

  /** Brings every cell to its answer, then prints. */
  printWhole(): void {
    this.#withRest(() => {
      const notebook = this.renderRoot.querySelector('wk-notebook');
      void this.renderRoot.querySelector('wk-print')?.begin(notebook ?? undefined);
    });
  }

  /** Notes on the number whose working is open, and what a new one would stand on. */
  #noted(notebook: Notebook | undefined) {
    const { quantity, scenario } = this.#explained ?? {};
    const name = this.open?.run.value?.scenarios[scenario ?? -1]?.name;
    return this.rest?.notedNumber(this.rest.placedIn(notebook), quantity, name);
  }

  #contents: { readonly of: Notebook; readonly entries: readonly ContentsEntry[] } | undefined;
  #entries(notebook: Notebook | undefined): readonly ContentsEntry[] {
    if (notebook && this.rest && this.#contents?.of !== notebook)
      this.#contents = { of: notebook, entries: this.rest.contentsOf(notebook) };
    return notebook ? (this.#contents?.entries ?? []) : [];
  }

  /** The cards' first ranges come before anything the cells ask: the worker takes up what is asked last. */
  #explorer() {
    return this.open?.draws.value ? this.open.explorer : undefined;
  }

  #about(reading: Reading): string {
    const notebook = this.open?.notebook.value;
    const values = this.open?.results.value[0]?.values;
    if (!notebook || !values) return '';
    const { place, winter } = notebook.farm;
    const day = DAY.format(new Date(winter.start));
    return [
      `${place.name}${notebook.invented && !/invented/.test(place.name) ? ', an invented farm' : ''}`,
      `${show(values.headCount, 'head', reading).text}`,
      `${show(values.winterDays, 'd', reading).number} winter days from ${day}`,
      typeof values.rainMm === 'number' ? `${show(values.rainMm, 'mm', reading).text} of rain and snow` : '',
    ]
      .filter((part) => part !== '')
      .join(' · ');
  }

  #reading: Reading | undefined;
  /** The one before when it says the same, so that elements can tell that nothing has changed for them. */
  #sameReading(next: Reading): Reading {
    const said = (reading: Reading | undefined) =>
      JSON.stringify({
        ...reading,
        own: reading?.own?.map((names) => [...names]),
        noted: reading?.noted?.map((names) => [...names]),
      });
    if (said(next) !== said(this.#reading)) this.#reading = next;
    return this.#reading ?? next;
  }

  /** Stays when the figures cannot be worked out: a missing file may be the reason. */
  #weather() {
    const { open } = this;
    const file = open?.notebook.value?.farm.weather.file;
    const climates = open?.climates.value ?? NO_CLIMATES;
    const name =
      file === undefined
        ? 'monthly normals'
        : (climates.find((climate) => climate.file === file)?.label ?? file);
    const notes = open?.weatherNotes.value ?? [];
    return html`<details class="weather">
      <summary>Weather: ${name}${notes.length > 0 ? html`, with ${notes.length === 1 ? 'a note' : `${notes.length} notes`}` : nothing}</summary>
      <p>Use your own:</p>
      ${notes.length === 0 ? nothing : html`<ul>${notes.map(({ what, found, todo }) => html`<li>${what}${found ? `: ${found}` : ''}${todo ? `; ${todo}` : ''}</li>`)}</ul>`}
      <wk-weather .climates=${climates}></wk-weather>
      <p class="quiet">The days of a file given here are written into the notebook’s text, the last 21 years of them: they are kept, saved and sent with it.</p>
    </details>`;
  }

  #panelOpen(): boolean {
    return this.renderRoot.querySelector('wk-panel')?.isOpen ?? false;
  }

  async #openPanel(event: Event, scope: Scope): Promise<void> {
    const from = event.currentTarget as HTMLElement;
    try {
      await import('./wk-panel.ts');
    } catch {
      this.lost = true;
      return;
    }
    await this.#fetchRest();
    const panel = this.renderRoot.querySelector('wk-panel');
    if (!panel || !this.#inputs) return;
    panel.of = this.#inputs.of;
    await panel.open(scope, from);
    // From now on what it is given follows the text.
    this.requestUpdate();
  }

  /** Every input in reach, of the farm and of each scenario. */
  #changes() {
    const notebook = this.open?.notebook.value;
    if (!notebook) return nothing;
    const run = this.open?.run.value;
    const own = run && restingOnOwn(run).some(({ size }) => size > 0);
    return html`<div class="changes" role="group" aria-label="Change inputs">
      <span>Change</span>
      <button type="button" @click=${(event: Event) => void this.#openPanel(event, 'farm')}>The farm</button>
      ${notebook.scenarios.map(({ name }, k) => html`<button type="button" @click=${(event: Event) => void this.#openPanel(event, k)}>${name}</button>`)}
      ${own ? html`<span><b>•</b> rests on a number of your own</span>` : nothing}
    </div>`;
  }

  /** Written into the text, so that a link or a file opens the way it was sent. */
  #viewButton(board: boolean) {
    const turn = ({ currentTarget }: Event) =>
      this.#withRest(({ turnView }) => turnView(currentTarget as HTMLElement, board));
    return html`<p class="view screen ${board ? 'on' : ''}"><button type="button" class="plain" @click=${turn}>${board ? 'Show the words again' : 'Show as a board'}</button>
      <span class="quiet">${board ? 'Answer, cards and figures side by side; the words are kept.' : 'Figures side by side without the words, for a meeting.'}</span></p>`;
  }

  protected override render() {
    const { open, rest } = this;
    if (!open) return nothing;
    const notebook = open.notebook.value;
    const results = open.results.value;
    const run = open.run.value;
    const reading = this.#sameReading({
      currency: run?.currency ?? notebook?.farm.money.currency ?? 'EUR',
      year: run?.year ?? notebook?.farm.money.year ?? 0,
      system: this.system === '' ? (notebook?.units ?? 'metric') : this.system,
      order: results.map((result) => result.name),
      ...(run
        ? {
            own: restingOnOwn(run),
            ...(rest ? { noted: rest.notedOf(rest.placedIn(notebook), results) } : {}),
          }
        : {}),
    });
    const as = { system: reading.system, currency: reading.currency };
    const board = notebook?.view === 'board';
    const placed = rest?.placedIn(notebook);
    const noted = this.#noted(notebook);
    const has = (kind: string) =>
      notebook?.blocks.some((block) => block.type === 'cell' && block.kind === kind);
    // What the text has itself is not put below it again; a board has no room for it.
    const shows = (section: PageSection) =>
      ['answer', 'cards', 'cautions'].includes(section) ||
      !(board || (section !== 'compare' && has(section)));
    const on = (section: PageSection) => (rest && placed ? rest.notesOnSection(placed, section) : nothing);
    return html`
      <main>
        <div class="column">
        ${notebook ? html`<h1>${notebook.title}</h1><p class="about">${this.#about(reading)}</p>` : nothing}
        <wk-problems .problems=${open.problems.value}></wk-problems>
        ${results.length === 0 ? nothing : html`<wk-answer id="verdict" .notebook=${notebook} .run=${run} .results=${results} .draws=${open.draws.value} .explorer=${this.#explorer()} .changes=${open.changes.value} .herd=${open.herd.value} .reading=${reading} .count=${notebook ? Math.min(notebook.draws.count, mostDraws(results.length)) : 0}></wk-answer>${on('answer')}`}
        ${
          board
            ? nothing
            : html`<div class="lines screen">
          ${this.#changes()}
          ${results.length === 0 || this.asked ? nothing : html`<wk-scenarios .notebook=${notebook} .run=${run}></wk-scenarios>`}
          ${this.#weather()}
        </div>`
        }
        ${notebook && results.length > 0 ? this.#viewButton(board) : nothing}
        ${results.length === 0 && open.problems.value.length === 0 ? html`<p class="about" role="status">Working out the figures …</p>` : nothing}
        </div>
      ${
        results.length === 0
          ? nothing
          : html`<wk-inputs .system=${reading.system} .inputs=${open.strip.value} .herd=${open.herd.value}></wk-inputs>
            <div class="column measured"><div class=${board ? 'boarded' : 'sided'}>
              ${board ? nothing : html`<wk-contents .entries=${this.#entries(notebook)} .find=${this.#placeOf}></wk-contents>`}
              <div class="flow">
              <wk-cards id="cards" .results=${results} .reading=${reading} .draws=${open.draws.value} .asked=${notebook?.draws.count ?? 0} .weights=${notebook?.decide.weights ?? NO_WEIGHTS}></wk-cards>${on('cards')}
              <wk-carry .notebook=${notebook} .run=${run} .explorer=${this.#explorer()}></wk-carry>
              ${this.lost ? html`<p role="alert">A part of the page could not be fetched: the page may have been renewed meanwhile. <button class="plain" @click=${() => location.reload()}>Load the page again</button></p>` : nothing}
              ${placed ? rest?.notesTogether('Notes on these numbers', placed.numbers, reading.order) : nothing}
              <wk-notebook .asked=${this.asked} .board=${board} .notebook=${notebook} .results=${results} .run=${run} .reading=${reading} .explorer=${this.#explorer()} .changes=${open.changes.value} .herd=${open.herd.value} .draws=${open.draws.value} .winters=${open.allWinters.value}></wk-notebook>
              ${rest && placed ? rest.sectionsBelow({ notebook, placed, shows, run, results, reading }) : nothing}
              </div>
            </div></div>`
      }
      </main>
      <wk-panel .of=${this.#panelOpen() ? this.#inputs?.of : undefined} .as=${as} .change=${this.#inputs?.change} .changeRows=${this.#inputs?.changeRows} .undo=${this.#inputs?.undo} .undone=${this.#inputs?.undone ?? ''}></wk-panel>
      <wk-print .open=${open}></wk-print>
      <wk-trace .notes=${noted?.threads ?? []} .noteOn=${noted?.on} .reading=${reading} .leaves=${this.#leavesOf} .change=${this.#inputs?.change} .weigh=${this.#inputs?.weigh} .usualOf=${this.#inputs?.usualOf}></wk-trace>
    `;
  }
}

customElements.define('wk-page', WkPage);

declare global {
  interface HTMLElementTagNameMap {
    'wk-page': WkPage;
  }
}

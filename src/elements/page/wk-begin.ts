import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { type Answers, answersFrom, answersText, isBegun, NO_ANSWERS, STEPS } from '../../begin/answers.ts';
import { type NewNotebook, newNotebook, type Setting } from '../../begin/begin.ts';
import { addRow, removeRow, setAnswer, setRow } from '../../begin/change.ts';
import { followsOf } from '../../begin/follows.ts';
import { planOf } from '../../begin/plan.ts';
import type { Begun, Fault } from '../../begin/reader.ts';
import type { Draft } from '../../store/draft.ts';
import type { Asked } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-problems.ts';
import { type Sheet, STEP_HEADINGS, STEP_NAMES, stepOf } from './beginSteps.ts';
import { beginStyle } from './beginStyle.ts';
import './wk-weather.ts';

/** What the page gives: tables and weather, the starts, and where answers are kept. */
export interface BeginSetting extends Setting, Omit<Begun, 'answers'> {
  readonly draft: Draft;
  /** The keeper's weather file, kept beside the answers. */
  readonly weatherDraft: Draft;
  /** Keeps a weather file; gives the name it is found by. */
  readonly keepWeather: (name: string, text: string) => string;
}

/** Typing pauses this long before the model runs. */
const PAUSE_MS = 200;

/**
 * Six short steps from an empty page to the keeper's own notebook. Every answer is kept as it is typed; every step may
 * be left empty, and shows what follows from what is there.
 *
 * @fires wk-begun - the notebook is made: detail `{ text }`
 */
export class WkBegin extends LitElement {
  static override properties = {
    setting: { attribute: false },
    answers: { state: true },
    made: { state: true },
    busy: { state: true },
    asked: { state: true },
    kept: { state: true },
  };

  static override styles = [shared, beginStyle];

  declare setting: BeginSetting | undefined;
  declare answers: Answers;
  /** The last notebook that was worked out. */
  declare made: NewNotebook | undefined;
  declare busy: boolean;
  /** The keeper asked for the notebook, and something stood in the way. */
  declare asked: boolean;
  declare kept: boolean;

  #pause: ReturnType<typeof setTimeout> | undefined;
  #run = 0;
  #toHeading = false;

  constructor() {
    super();
    this.answers = NO_ANSWERS;
    this.busy = false;
    this.asked = false;
    this.kept = true;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { setting } = this;
    if (!changed.has('setting') || !setting) return;
    this.answers = answersFrom(setting.draft.read());
    const weather = setting.weatherDraft.read();
    const name = this.answers.place.weatherFile ?? '';
    // Without its text the name of a file says nothing: the climate stands again.
    if (name !== '' && weather === undefined)
      this.answers = { ...this.answers, place: { ...this.answers.place, weatherFile: '' } };
    else if (name !== '' && weather !== undefined) setting.keepWeather(name, weather);
    this.#work(0);
  }

  protected override updated(): void {
    if (!this.#toHeading) return;
    this.#toHeading = false;
    const heading = this.renderRoot.querySelector<HTMLElement>('#heading');
    scrollTo(0, 0);
    heading?.focus({ preventScroll: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#pause);
    this.#run++;
  }

  get #begun(): Begun | undefined {
    return this.setting && { ...this.setting, answers: this.answers };
  }

  #change(answers: Answers): void {
    if (answers === this.answers) return;
    this.answers = answers;
    this.asked = false;
    this.kept = this.setting?.draft.write(answersText(answers)) ?? false;
    this.#work(PAUSE_MS);
  }

  #work(pause: number): void {
    clearTimeout(this.#pause);
    this.busy = true;
    this.#pause = setTimeout(() => void this.#now(), pause);
  }

  /** Works the notebook out from the answers as they stand; a later answer wins. */
  async #now(): Promise<NewNotebook | undefined> {
    clearTimeout(this.#pause);
    const [begun, setting] = [this.#begun, this.setting];
    if (!begun || !setting) return undefined;
    const mine = ++this.#run;
    const made = await newNotebook(begun, setting);
    if (mine !== this.#run) return undefined;
    this.made = made;
    this.busy = false;
    return made;
  }

  #go(step: number): void {
    this.#toHeading = true;
    this.answers = { ...this.answers, step };
    this.setting?.draft.write(answersText(this.answers));
  }

  async #make(anyway: boolean): Promise<void> {
    const made = await this.#now();
    if (!made) return;
    if (made.problems.length > 0 || (made.plan.faults.length > 0 && !anyway)) {
      this.asked = true;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('.stop')?.focus();
      return;
    }
    this.dispatchEvent(
      new CustomEvent('wk-begun', { detail: { text: made.text }, bubbles: true, composed: true }),
    );
  }

  async #toFault({ step, at }: Fault): Promise<void> {
    this.#go(step);
    await this.updateComplete;
    const field = this.renderRoot.querySelector<HTMLElement>(`[id="${at}"]`);
    field?.closest('details')?.setAttribute('open', '');
    field?.focus();
  }

  #anew(): void {
    if (!confirm('Throw away all answers and start again?')) return;
    this.setting?.draft.clear();
    this.setting?.weatherDraft.clear();
    this.#change({ ...NO_ANSWERS });
    this.#toHeading = true;
  }

  #weather(event: CustomEvent<Asked['wk-weather-file']>): void {
    // The page takes such a file for the open notebook; here there is none yet.
    event.stopPropagation();
    const [begun, setting] = [this.#begun, this.setting];
    if (!begun || !setting) return;
    const { name, text } = event.detail;
    this.kept = setting.weatherDraft.write(text);
    this.#change(setAnswer(begun, 'place', 'weatherFile', setting.keepWeather(name, text)));
  }

  #ownWeather(begun: Begun) {
    const name = begun.answers.place.weatherFile ?? '';
    return html`<h3>Your own weather</h3>
      ${
        name === ''
          ? nothing
          : html`<p>“${name}” is used in place of the climate above.
              <button type="button" class="plain" @click=${() => this.#change(setAnswer(begun, 'place', 'weatherFile', ''))}>Leave it out</button>
            </p>`
      }
      <wk-weather @wk-weather-file=${this.#weather}></wk-weather>`;
  }

  #follows() {
    const { made, busy, answers } = this;
    const follows = made && followsOf(answers.step, made);
    return html`<section class="follows" aria-busy=${busy ? 'true' : 'false'} aria-labelledby="follows">
      <h3 id="follows">What follows</h3>
      ${
        follows
          ? html`<table>
              ${follows.heads.length > 0 ? html`<thead><tr><td></td>${follows.heads.map((head) => html`<th class="n" scope="col">${head}</th>`)}</tr></thead>` : nothing}
              <tbody>${follows.rows.map(({ label, values }) => html`<tr><th scope="row">${label}</th>${values.map((value) => html`<td class="n">${value}</td>`)}</tr>`)}</tbody>
            </table>`
          : html`<p class="quiet">${busy ? 'Working it out …' : 'Nothing can be worked out yet.'}</p>`
      }
    </section>`;
  }

  #stops() {
    const { made, asked } = this;
    if (!asked || !made) return nothing;
    const { faults } = made.plan;
    return html`<div class="stop" role="alert" tabindex="-1">
      ${made.problems.length > 0 ? html`<wk-problems .problems=${made.problems}></wk-problems>` : nothing}
      ${
        faults.length > 0
          ? html`<p>${faults.length === 1 ? 'One answer cannot' : `${faults.length} answers cannot`} be taken as typed:</p>
            <ul>${faults.map((fault) => html`<li><button type="button" class="link" @click=${() => void this.#toFault(fault)}>${fault.label}</button>: ${fault.words}</li>`)}</ul>
            <button type="button" class="plain" @click=${() => void this.#make(true)}>Make it with the starts in their place</button>`
          : nothing
      }
    </div>`;
  }

  #steps(faults: readonly Fault[]) {
    const { step } = this.answers;
    return html`<ol class="steps" aria-label="Steps">${STEP_NAMES.map((name, k) => {
      const bad = faults.some((fault) => fault.step === k);
      return html`<li class=${k < step ? 'done' : ''}><button type="button" aria-current=${k === step ? 'step' : nothing} @click=${() => this.#go(k)}>
        <span>${k + 1}</span> <span class="name">${name}</span>${bad ? html` <span class="bad">!<span class="hidden"> something here cannot be taken</span></span>` : nothing}
      </button></li>`;
    })}</ol>`;
  }

  protected override render() {
    const begun = this.#begun;
    if (!begun || !this.setting) return html`<p role="status">Opening …</p>`;
    const plan = planOf(begun);
    const { step } = this.answers;
    const last = step === STEPS - 1;
    const sheet: Sheet = {
      begun,
      plan,
      tables: this.setting.tables,
      set: (section, key, value) => this.#change(setAnswer(begun, section, key, value)),
      setRow: (list, at, key, value) => this.#change(setRow(begun, list, at, key, value)),
      add: (list) => this.#change(addRow(begun, list)),
      remove: (list, at) => this.#change(removeRow(begun, list, at)),
      weather: this.#ownWeather(begun),
    };
    return html`<main>
      <a href="#">All notebooks</a>
      <h1>Start with my farm</h1>
      ${this.#steps(plan.faults)}
      <form
        @submit=${(event: Event) => {
          event.preventDefault();
          if (last) void this.#make(false);
          else this.#go(step + 1);
        }}
      >
        <h2 id="heading" tabindex="-1"><span class="hidden">Step ${step + 1} of ${STEPS}: </span>${STEP_HEADINGS[step]}</h2>
        ${step === 0 ? html`<p class="quiet">Leave empty what you do not know: a start for the country stands in grey.</p>` : nothing}
        ${this.kept ? nothing : html`<p class="fault" role="alert">This browser keeps nothing here (a private window, or no room left): do not close the page before the notebook is made.</p>`}
        <div class="sheet"><div>${stepOf(sheet)}</div>${this.#follows()}</div>
        ${this.#stops()}
        <nav class="foot" aria-label="Steps back and on">
          ${step > 0 ? html`<button type="button" class="plain" @click=${() => this.#go(step - 1)}>Back</button>` : nothing}
          ${!last ? html`<button type="button" class="plain" @click=${() => void this.#make(false)}>Make it now</button>` : nothing}
          <button class="next">${last ? 'Make my notebook' : 'Next'}</button>
        </nav>
      </form>
      ${isBegun(this.answers) ? html`<button type="button" class="plain" @click=${() => this.#anew()}>Start again with nothing answered</button>` : nothing}
    </main>`;
  }
}

customElements.define('wk-begin', WkBegin);

declare global {
  interface HTMLElementTagNameMap {
    'wk-begin': WkBegin;
  }
}

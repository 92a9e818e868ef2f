import { html, LitElement, nothing } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Edited, Editing } from '../../notebook/edit.ts';
import type { Notebook } from '../../notebook/read.ts';
import {
  addScenario,
  copyScenario,
  freeName,
  MOST_SCENARIOS,
  moveScenario,
  removeScenario,
  renameScenario,
  setBase,
} from '../../notebook/scenarioEdits.ts';
import { SYSTEM_NAMES, SYSTEMS, type System } from '../../notebook/systems.ts';
import { scenarioColour, scenarioSymbol } from '../../plots/palette.ts';
import type { Run } from '../../study/evaluate.ts';
import { newScenario } from '../../whatif/newScenario.ts';
import { ask } from '../parts/events.ts';
import { symbolMark } from '../parts/mark.ts';
import { saidProblem } from '../parts/saidProblem.ts';
import { shared } from '../parts/style.ts';
import { scenariosStyle } from './scenariosStyle.ts';

/** What a scenario of each system is called until it is named. */
const NAMED: Readonly<Record<System, string>> = {
  outwintered: 'On pasture',
  slatted: 'Slatted shed',
  'deep-bedded': 'Deep bed',
};

type Refusal = Extract<Edited, { readonly refused: unknown }>;

/**
 * The scenarios of the notebook: add, copy, rename, put in order, take out, and choose what differences are taken
 * against. Each is one step to undo.
 *
 * @fires wk-edit - one of these was chosen
 */
export class WkScenarios extends LitElement {
  static override properties = {
    notebook: { attribute: false },
    run: { attribute: false },
    refusal: { state: true },
    said: { state: true },
    system: { state: true },
    toHerd: { state: true },
    opened: { type: Boolean, reflect: true },
  };

  static override styles = [shared, scenariosStyle];

  declare notebook: Notebook | undefined;
  /** The figures as they stand, whose weather and tables size a new shed. */
  declare run: Run | undefined;
  /** What was not done, and at which scenario; −1 below the list. */
  declare refusal: (Refusal & { readonly at: number }) | undefined;
  declare said: string;
  declare system: System;
  declare toHerd: boolean;
  /** Opened, it takes a line of its own. */
  declare opened: boolean;

  /** Where the keyboard goes once the list is drawn. */
  #focus: string | undefined;

  constructor() {
    super();
    this.said = '';
    this.system = 'deep-bedded';
    this.toHerd = true;
    this.opened = false;
  }

  protected override updated(): void {
    // The list follows the text a moment later: a row that is not there yet is waited for.
    const found = this.#focus === undefined ? null : this.renderRoot.querySelector<HTMLElement>(this.#focus);
    if (!found) return;
    this.#focus = undefined;
    found.focus();
  }

  #send(at: number, make: (at: Editing) => Edited, focus?: string, more = ''): void {
    ask(this, 'wk-edit', {
      make,
      done: (edited) => {
        this.refusal = 'refused' in edited ? { ...edited, at } : undefined;
        this.said = 'text' in edited ? `${edited.what}${more}` : '';
        this.#focus = 'text' in edited ? focus : `#refusal button`;
        this.requestUpdate();
      },
    });
  }

  #rename(index: number, field: HTMLInputElement): void {
    const name = field.value;
    if (name.trim() !== this.notebook?.scenarios[index].name)
      this.#send(index, (at) => renameScenario(at, index, name));
    else field.value = name.trim();
  }

  #move(index: number, by: -1 | 1): void {
    const to = index + by;
    const count = this.notebook?.scenarios.length ?? 0;
    if (to < 0 || to >= count) return;
    // At the end the button can no longer be pressed: the other one has the keyboard then.
    const act = to === 0 ? 'down' : to === count - 1 ? 'up' : by < 0 ? 'up' : 'down';
    this.#send(index, (at) => moveScenario(at, index, to), `li[data-at="${to}"] [data-act="${act}"]`);
  }

  #add(): void {
    const { notebook, run, system, toHerd } = this;
    if (!notebook || !run) return;
    const names = notebook.scenarios.map(({ name }) => name);
    const name = names.includes(NAMED[system]) ? freeName(notebook, NAMED[system]) : NAMED[system];
    const winterOf = () => run.weather[run.weatherIndex[0]];
    const proposed = newScenario({ notebook, tables: run.tables, winterOf }, system, name, toHerd);
    const last = notebook.scenarios.length;
    this.#send(
      -1,
      (at) => addScenario(at, proposed.scenario),
      `li[data-at="${last}"] .name`,
      `: ${proposed.said}`,
    );
  }

  #row(name: string, system: System, index: number, count: number) {
    const key = (event: KeyboardEvent) => {
      const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
      if (by === 0 || !event.altKey) return;
      event.preventDefault();
      this.#move(index, by);
    };
    const button = (act: string, words: string, press: () => void, off = false) =>
      html`<button type="button" class="plain" data-act=${act} aria-label="${words}: ${name}" ?disabled=${off} @click=${press}>${words}</button>`;
    return html`<li data-at=${index} @keydown=${key}>
      ${symbolMark(scenarioSymbol(index), scenarioColour(index))}
      <input class="field name" type="text" maxlength="60" autocomplete="off" aria-label="Name of scenario ${index + 1}" .value=${live(name)} @change=${(event: Event) => this.#rename(index, event.target as HTMLInputElement)} />
      <span class="kind">${SYSTEMS[system].label}</span>
      <span class="acts">
        ${button('up', 'Up', () => this.#move(index, -1), index === 0)}
        ${button('down', 'Down', () => this.#move(index, 1), index === count - 1)}
        ${button('copy', 'Copy', () => this.#send(index, (at) => copyScenario(at, index), `li[data-at="${count}"] .name`))}
        ${button('out', 'Take out', () => this.#send(index, (at) => removeScenario(at, index), `li[data-at="${Math.max(0, index - 1)}"] .name`))}
      </span>
      ${this.refusal?.at === index ? this.#refusal(this.refusal) : nothing}
    </li>`;
  }

  #refusal({ refused, asks, at }: Refusal & { readonly at: number }) {
    const close = () => {
      this.refusal = undefined;
      this.#focus = `li[data-at="${at}"] [data-act="out"]`;
    };
    const letGo = () =>
      this.#send(
        at,
        (now) => removeScenario(now, at, { letGo: true }),
        `li[data-at="${Math.max(0, at - 1)}"] .name`,
      );
    return html`<div class="refused" id="refusal" role="alert">
      ${
        asks
          ? html`<p>${`${refused.what[0].toUpperCase()}${refused.what.slice(1)}`}:</p>
            <ul>${asks.map(({ words }) => html`<li>${words}</li>`)}</ul>
            <div class="acts"><button type="button" class="plain" @click=${letGo}>Take it out of these too</button>
            <button type="button" class="plain" @click=${close}>Keep it</button></div>`
          : html`<p>${saidProblem(refused)}</p><button type="button" class="plain" @click=${close}>I see</button>`
      }
    </div>`;
  }

  #base({ scenarios }: Notebook) {
    const bases = new Set(scenarios.map(({ finance }) => finance.baseline));
    bases.delete(undefined);
    const [only] = [...bases];
    const each =
      bases.size > 1 ||
      (only !== undefined && scenarios.some((s) => s.name !== only && s.finance.baseline !== only));
    const set = (value: string) => {
      if (value !== 'each') this.#send(-1, (at) => setBase(at, value === '' ? null : Number(value)));
    };
    return html`<label>Differences in money are taken against
      <select class="field" @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
        ${each ? html`<option value="each" selected>what each scenario names</option>` : nothing}
        <option value="" .selected=${live(bases.size === 0)}>the one that costs least to build</option>
        ${scenarios.map(({ name }, k) => html`<option value=${k} .selected=${live(!each && name === only)}>${name}</option>`)}
      </select></label>`;
  }

  #adding(count: number) {
    const full = count >= MOST_SCENARIOS;
    const housed = this.system !== 'outwintered';
    return html`<div class="line">
      <label>Another way of wintering
        <select class="field" ?disabled=${full} @change=${(event: Event) => {
          this.system = (event.target as HTMLSelectElement).value as System;
        }}>${SYSTEM_NAMES.map((system) => html`<option value=${system} .selected=${system === this.system}>${SYSTEMS[system].label}</option>`)}</select></label>
      <label class="tick"><input type="checkbox" .checked=${this.toHerd && housed} ?disabled=${full || !housed} @change=${(
        event: Event,
      ) => {
        this.toHerd = (event.target as HTMLInputElement).checked;
      }} />Size the shed to the herd</label>
      <button type="button" class="plain" ?disabled=${full || !this.run} @click=${() => this.#add()}>Add it</button>
      ${full ? html`<span class="quiet">${MOST_SCENARIOS} is as many as figures can tell apart: take one out to add another.</span>` : nothing}
    </div>`;
  }

  protected override render() {
    const { notebook, refusal, said } = this;
    if (!notebook) return nothing;
    const { scenarios } = notebook;
    return html`<details
      class="screen"
      @toggle=${(event: Event) => {
        this.opened = (event.target as HTMLDetailsElement).open;
      }}
    >
      <summary>Add or copy scenarios</summary>
      <div class="inside">
        <ol>${scenarios.map(({ name, system }, k) => this.#row(name, system, k, scenarios.length))}</ol>
        <div class="line">${this.#base(notebook)}</div>
        ${this.#adding(scenarios.length)}
        ${refusal?.at === -1 ? this.#refusal(refusal) : nothing}
        <p class="quiet" role="status">${said === '' ? '' : `Done: ${said}. Undo takes it back.`}</p>
      </div>
    </details>`;
  }
}

customElements.define('wk-scenarios', WkScenarios);

declare global {
  interface HTMLElementTagNameMap {
    'wk-scenarios': WkScenarios;
  }
}

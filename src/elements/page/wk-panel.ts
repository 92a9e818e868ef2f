import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { capital } from '../../plots/reading.ts';
import type { Outcome } from '../../store/change.ts';
import {
  type Field,
  type FieldsOf,
  inputsOf,
  type Row,
  type Rows,
  type Scope,
  type SubjectInputs,
} from '../../store/fields.ts';
import type { RowAct } from '../../store/rows.ts';
import type { TypedAs } from '../../units/typed.ts';
import { drawer, linkButton, shared } from '../parts/style.ts';
import '../parts/wk-field.ts';
import type { Changes } from '../parts/wk-field.ts';
import { panelStyle } from './panelStyle.ts';

/** What an input is found by: its words, its subject, the row it stands in, its options. */
const wordsOf = (subject: string, field: Field, row: string) =>
  [subject, row, field.label, field.note ?? '', ...(field.options ?? []).map(({ words }) => words)]
    .join(' ')
    .toLowerCase();

/** Whether an input, of this row where it stands in one, is what is looked for. */
type Found = (field: Field, row?: string) => boolean;
const anyFound = (row: Row, found: Found) => row.fields.some((field) => found(field, row.title));

/**
 * Every input of the farm, or of one scenario, by subject: found by words, changed in place, one step to undo each.
 */
export class WkPanel extends LitElement {
  static override properties = {
    of: { attribute: false },
    as: { attribute: false },
    scope: { state: true },
    asked: { state: true },
    told: { state: true },
    change: { attribute: false },
    changeRows: { attribute: false },
    undo: { attribute: false },
    undone: {},
  };

  static override styles = [shared, drawer, linkButton, panelStyle];

  /** The notebook as its text reads now; undefined where the text has a fault. */
  declare of: FieldsOf | undefined;
  declare as: TypedAs;
  declare scope: Scope;
  declare asked: string;
  /** What came of the last change of a list. */
  declare told: { readonly at: string; readonly outcome: Outcome } | undefined;
  declare change: Changes | undefined;
  declare changeRows: ((act: RowAct) => Outcome) | undefined;
  declare undo: (() => void) | undefined;
  /** Words of the step that would be undone; empty where there is none. */
  declare undone: string;

  /** Subjects stay open from one scenario to the next, so that the same can be set in each. */
  #opened = new Set<string>();
  #back: HTMLElement | undefined;

  constructor() {
    super();
    this.as = { system: 'metric' };
    this.scope = 'farm';
    this.asked = '';
    this.undone = '';
  }

  /** Opens the panel; focus goes back to `from` when it is closed. */
  async open(scope: Scope, from?: HTMLElement): Promise<void> {
    this.scope = scope;
    this.asked = '';
    this.told = undefined;
    this.#back = from;
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog?.isConnected && !dialog.open) dialog.showModal();
    this.requestUpdate();
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus();
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  get isOpen(): boolean {
    return this.renderRoot.querySelector('dialog')?.open ?? false;
  }

  #go(scope: Scope): void {
    this.scope = scope;
    this.told = undefined;
  }

  #rows(act: RowAct): void {
    const at = act.list.join('.');
    const list = this.#subjects()
      .flatMap(({ lists }) => lists)
      .find((each) => each.at.join('.') === at);
    const rows = list?.named ? undefined : list?.rows.length;
    const outcome = this.changeRows?.(act);
    this.told = outcome && { at, outcome };
    // The new row is what comes next, so it stands open.
    if (outcome?.kind === 'done' && (act.act === 'add' || act.act === 'copy'))
      this.#opened.add(`${at}.${rows === undefined ? act.choice : rows}`);
  }

  #subjects(): SubjectInputs[] {
    const { of, scope } = this;
    if (!of || (typeof scope === 'number' && !of.notebook.scenarios[scope])) return [];
    return inputsOf(of, scope);
  }

  #toggled(event: Event, key: string): void {
    if (this.asked.trim() !== '') return;
    const { open } = event.currentTarget as HTMLDetailsElement;
    if (open) this.#opened.add(key);
    else this.#opened.delete(key);
    this.requestUpdate();
  }

  #field(field: Field, inList: boolean): TemplateResult {
    return html`<wk-field .field=${field} .as=${this.as} .change=${this.change} ?back=${!inList && typeof this.scope === 'number'}></wk-field>`;
  }

  #row(list: Rows, row: Row, found: Found, all: boolean): TemplateResult | typeof nothing {
    const key = row.at.join('.');
    const fields = row.fields.filter((field) => found(field, row.title));
    if (fields.length === 0) return nothing;
    const last = row.at.at(-1) as string | number;
    const open = all || this.#opened.has(key);
    const copies = list.canAdd && !list.choices && !list.named;
    return html`<details class="row" ?open=${open} @toggle=${(event: Event) => this.#toggled(event, key)}>
      <summary>${capital(row.title)}${this.#gist(row)}</summary>
      ${
        open
          ? html`${repeat(
              fields,
              ({ at }) => at.join('.'),
              (field) => this.#field(field, true),
            )}
        <div class="acts">
          ${copies ? html`<button type="button" class="plain" @click=${() => this.#rows({ act: 'copy', list: list.at, row: last })}>Copy ${row.title}</button>` : nothing}
          <button type="button" class="plain" @click=${() => this.#rows({ act: 'remove', list: list.at, row: last })}>Take ${row.title} out</button>
        </div>`
          : nothing
      }
    </details>`;
  }

  /** The number that tells a row from the next: its head, share, tonnes or amount. */
  #gist({ fields }: Row): string {
    const field = fields.find(({ key }) =>
      ['head', 'share', 'tonnes', 'amount', 'value', 'unitPrice'].includes(key),
    );
    if (!field || typeof field.value !== 'number') return '';
    return ` · ${field.unit === 'fraction' ? `${Number((field.value * 100).toFixed(1))} %` : `${Number(field.value.toPrecision(6))} ${field.unit.startsWith('money') ? (this.as.currency ?? '') : field.unit}`.trim()}`;
  }

  #list(list: Rows, found: Found, all: boolean): TemplateResult | typeof nothing {
    const at = list.at.join('.');
    if (all && !list.rows.some((row) => anyFound(row, found))) return nothing;
    if (list.rows.length === 0 && !list.canAdd) return nothing;
    const { told } = this;
    return html`<section class="list ${list.differs ? 'differs' : ''}" aria-label=${capital(list.label)}>
      <h3>${capital(list.label)}</h3>
      ${list.differs ? html`<p class="guide"><b>Differs.</b> The scenario has a list of its own. <button type="button" class="link" @click=${() => this.#rows({ act: 'asTheFarm', list: list.at })}>As the farm</button></p>` : nothing}
      ${repeat(
        list.rows,
        (row) => row.at.join('.'),
        (row) => this.#row(list, row, found, all),
      )}
      ${list.canAdd && !all ? this.#add(list) : nothing}
      <div aria-live="polite">${
        told?.at === at && told.outcome.kind === 'refused'
          ? html`<p class="told refused">${capital(told.outcome.words)}.</p>`
          : told?.at === at && told.outcome.kind === 'done'
            ? html`<p class="told">${capital(told.outcome.what)}.</p>`
            : nothing
      }</div>
    </section>`;
  }

  #add(list: Rows): TemplateResult {
    const id = `add-${list.at.join('-')}`;
    const choice = () => this.renderRoot.querySelector<HTMLSelectElement>(`#${id}`)?.value;
    return html`<div class="acts">
      ${list.choices ? html`<select id=${id} class="field" aria-label="What to add to ${list.label}">${list.choices.map(({ value, words }) => html`<option value=${value}>${words}</option>`)}</select>` : nothing}
      <button type="button" class="plain" @click=${() => {
        const picked = list.choices ? choice() : undefined;
        this.#rows({ act: 'add', list: list.at, ...(picked === undefined ? {} : { choice: picked }) });
      }}>Add to ${list.label}</button>
    </div>`;
  }

  #subject({ subject, fields, lists, differing, idle }: SubjectInputs): TemplateResult | typeof nothing {
    const asked = this.asked.trim().toLowerCase();
    const all = asked !== '';
    const parts = asked.split(/\s+/);
    const found: Found = (field, row = '') =>
      !all || parts.every((part) => wordsOf(subject, field, row).includes(part));
    const mine = fields.filter((field) => found(field));
    const listed = lists.some((list) => list.rows.some((row) => anyFound(row, found)));
    if (all && mine.length === 0 && !listed) return nothing;
    const open = all || this.#opened.has(subject);
    return html`<details ?open=${open} @toggle=${(event: Event) => this.#toggled(event, subject)}>
      <summary><h2>${capital(subject)}</h2>${differing > 0 ? html`<span class="count">${differing === 1 ? '1 differs' : `${differing} differ`}</span>` : nothing}</summary>
      ${
        open
          ? html`${idle ? html`<p class="guide">${idle}</p>` : nothing}${lists.map((list) => this.#list(list, found, all))}
          ${repeat(
            mine,
            ({ at }) => at.join('.'),
            (field) => this.#field(field, false),
          )}`
          : nothing
      }
    </details>`;
  }

  #scopes(): TemplateResult {
    const { of, scope } = this;
    const one = (to: Scope, words: string) =>
      html`<button type="button" aria-pressed=${to === scope} @click=${() => this.#go(to)}>${words}</button>`;
    return html`<div class="scopes" role="group" aria-label="Whose inputs">
      ${one('farm', 'The farm')}${of?.notebook.scenarios.map(({ name }, k) => one(k, name))}
    </div>`;
  }

  #inside(): TemplateResult {
    const { of, scope, undone } = this;
    const name = typeof scope === 'number' ? (of?.notebook.scenarios[scope]?.name ?? '') : 'The farm';
    const subjects = this.#subjects().map((subject) => this.#subject(subject));
    const none = subjects.every((subject) => subject === nothing);
    return html`<div class="inside">
      <div class="top">
        <h1 id="title" tabindex="-1">${name}</h1>
        <button type="button" class="plain" ?disabled=${undone === ''} title=${undone === '' ? '' : `Undo: ${undone}`} @click=${() => this.undo?.()}>Undo</button>
        <button type="button" class="plain close" @click=${() => this.close()}>Close</button>
      </div>
      ${this.#scopes()}
      <p class="quiet about">${
        typeof scope === 'number'
          ? 'What this scenario has of its own, and what it has from the farm. What differs from the farm is marked.'
          : 'What all scenarios share. A scenario may differ from it in its own panel.'
      }</p>
      ${
        of
          ? html`<label class="find">Find an input<input class="field" type="search" .value=${this.asked} @input=${(
              event: Event,
            ) => {
              this.asked = (event.target as HTMLInputElement).value;
            }} placeholder="straw, snow, calving …" /></label>
            ${none ? html`<p role="status">No input is called that.</p>` : nothing}
            ${subjects}`
          : html`<p class="told refused" role="alert">The text of the notebook has a fault, so nothing can be changed here. Close this panel and mend what is named at the top of the page, or undo.</p>`
      }
    </div>`;
  }

  protected override render() {
    return html`<dialog aria-labelledby="title" @close=${() => {
      this.requestUpdate();
      this.#back?.focus();
    }} @click=${(event: Event) => {
      if (event.target === event.currentTarget) this.close();
    }}>${this.isOpenNow ? this.#inside() : html`<h1 id="title" class="hidden">No panel open</h1>`}</dialog>`;
  }

  /** Nothing is drawn while it is shut, so that a slider stays quick. */
  private get isOpenNow(): boolean {
    return this.hasUpdated && this.isOpen;
  }
}

customElements.define('wk-panel', WkPanel);

declare global {
  interface HTMLElementTagNameMap {
    'wk-panel': WkPanel;
  }
}

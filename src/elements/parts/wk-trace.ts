import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Usual } from '../../model/usual.ts';
import type { Thread } from '../../notebook/notePlaces.ts';
import type { NoteTarget } from '../../notebook/noteSchema.ts';
import { capital, type Reading, show } from '../../plots/reading.ts';
import type { Field } from '../../store/fields.ts';
import type { OwnNumber, Weighed } from '../../store/ownNumber.ts';
import { shownValue } from '../../store/weigh.ts';
import type { TraceNode } from '../../study/trace.ts';
import { labelIn } from '../../units/inWords.ts';
import { type TypedAs, typedForm, typedUnit } from '../../units/typed.ts';
import { ask } from './events.ts';
import { ownMark } from './number.ts';
import { drawer, shared } from './style.ts';
import type { Changes } from './wk-field.ts';
import './wk-field.ts';
import './wk-notes.ts';

/** An input a working ends in, and the scenario it is of; null for one of the farm, which all scenarios share. */
export interface Leaf {
  readonly field: Field;
  readonly scenario: string | null;
}

const KINDS: Readonly<Record<TraceNode['kind'], string>> = {
  stage: 'computed',
  week: 'computed week by week',
  input: 'from the notebook',
  coefficient: 'from the tables',
  price: 'from the price table',
  override: 'your own number',
  missing: 'missing from the tables',
};

/** A branch is written out once in a tree and only named where it comes again. */
const keyOf = ({ name, seen }: TraceNode) => (seen ? `${name} again` : name);

/**
 * How a number came about: formula in words, then what went into it, down to the coefficient and its source.
 * A coefficient or price can be replaced by the keeper's own measurement, with a reason; an input is changed in place.
 *
 * @fires wk-override - the keeper puts an own number in, or takes it out again
 */
export class WkTrace extends LitElement {
  static override properties = {
    node: { attribute: false },
    scenario: {},
    reading: { attribute: false },
    leaves: { attribute: false },
    change: { attribute: false },
    weigh: { attribute: false },
    usualOf: { attribute: false },
    notes: { attribute: false },
    noteOn: { attribute: false },
    editing: { state: true },
    weighed: { state: true },
  };

  static override styles = [
    shared,
    drawer,
    css`
      dialog {
        --drawer: 44rem;
      }
      dialog::backdrop {
        background: var(--veil);
      }
      .inside {
        padding: 1rem 1.2rem 2rem;
        overflow-y: auto;
        height: 100%;
      }
      .top {
        display: flex;
        justify-content: space-between;
        align-items: start;
        gap: 1rem;
      }
      .big {
        font-size: 1.6rem;
        font-weight: 700;
        margin: 0;
      }
      ul {
        list-style: none;
        margin: 0;
        padding: 0 0 0 0.9rem;
        border-left: 1px solid var(--rule);
      }
      .root {
        border: 0;
        padding: 0;
      }
      li {
        padding: 0.15rem 0;
      }
      summary,
      .leaf {
        display: flex;
        gap: 0.2rem 0.8rem;
        align-items: baseline;
        justify-content: space-between;
        padding: 0.3rem 0.2rem;
      }
      summary {
        cursor: pointer;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary .name::before {
        content: '▸';
        display: inline-block;
        width: 1.1rem;
        color: var(--quiet);
      }
      details[open] > summary .name::before {
        content: '▾';
      }
      .leaf .name {
        padding-left: 1.1rem;
      }
      .amount {
        white-space: nowrap;
        text-align: right;
      }
      .more {
        padding: 0 0.2rem 0.4rem 1.3rem;
        font-size: 0.92rem;
      }
      .more p {
        margin: 0 0 0.2rem;
      }
      form {
        display: grid;
        gap: 0.5rem;
        margin: 0.5rem 0;
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
        flex-wrap: wrap;
        gap: 0.5rem;
      }
      form .field,
      form button {
        min-height: 2.75rem;
      }
      .told {
        margin: 0;
      }
      .refused {
        border-left: 4px solid var(--alarm);
        padding-left: 0.6rem;
      }
      .link {
        border: 0;
        background: none;
        padding: 0.2rem 0;
        text-decoration: underline;
        cursor: pointer;
      }
      /* A flat list on a phone: however deep, a branch keeps the whole width. */
      @media screen and (max-width: 700px) {
        .inside {
          padding: 0.8rem 0.8rem 2rem;
        }
        ul {
          padding-left: 0;
          border-left: 0;
          border-top: 1px solid var(--rule);
        }
        summary,
        .leaf {
          flex-wrap: wrap;
        }
        .amount {
          white-space: normal;
          margin-left: auto;
        }
        .more {
          padding-left: 0.2rem;
        }
        .name,
        .more {
          overflow-wrap: anywhere;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare node: TraceNode | undefined;
  declare scenario: string;
  declare reading: Reading;
  /** Id of the number being replaced. */
  declare editing: string;
  /** What came of the number typed in its place. */
  declare weighed: Weighed | undefined;
  /** The inputs behind a place of the notebook. */
  declare leaves: ((id: string) => readonly Leaf[]) | undefined;
  declare change: Changes | undefined;
  /** Weighs a number typed in place of a row. */
  declare weigh: ((own: OwnNumber) => Weighed) | undefined;
  /** Notes on this number, and what a new one would stand on. */
  declare notes: readonly Thread[];
  declare noteOn: NoteTarget | undefined;
  declare usualOf: ((id: string) => Usual | undefined) | undefined;

  /** Branches by name, so that they stay open when the figures are worked out anew. */
  #opened = new Set<string>();
  #back: HTMLElement | undefined;

  constructor() {
    super();
    this.scenario = '';
    this.notes = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.editing = '';
  }

  /** Opens the working; focus goes back to `from` when it is closed. */
  async open(node: TraceNode, scenario: string, from?: HTMLElement): Promise<void> {
    this.node = node;
    this.scenario = scenario;
    this.editing = '';
    this.#back = from;
    this.weighed = undefined;
    this.#opened = new Set([keyOf(node)]);
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog?.isConnected && !dialog.open) dialog.showModal();
    dialog?.querySelector<HTMLElement>('.close')?.focus();
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  #closed(): void {
    this.node = undefined;
    this.#back?.focus();
  }

  #toggle(event: Event, node: TraceNode): void {
    const open = (event.currentTarget as HTMLDetailsElement).open;
    if (open === this.#opened.has(keyOf(node))) return;
    if (open) this.#opened.add(keyOf(node));
    else this.#opened.delete(keyOf(node));
    this.requestUpdate();
  }

  get #as(): TypedAs {
    return { system: this.reading.system, currency: this.reading.currency };
  }

  #replace(event: Event, id: string, sure: boolean): void {
    event.preventDefault();
    const form = this.renderRoot.querySelector('form');
    if (!form?.reportValidity()) return;
    const data = new FormData(form);
    const because = String(data.get('because') ?? '').trim();
    const typed = String(data.get('value') ?? '');
    const weighed = this.weigh?.({ id, typed, sure, as: this.#as });
    this.weighed = weighed;
    if (weighed?.kind !== 'value' || because === '') return;
    ask(this, 'wk-override', { id, value: weighed.value, because });
    this.editing = '';
  }

  #amount(node: TraceNode) {
    const { value, unit, low, high } = node;
    const shown = show(value, unit, this.reading, 4).text;
    return low === undefined || high === undefined
      ? shown
      : html`${shown} <span class="quiet">(${show(low, unit, this.reading).number} to ${show(high, unit, this.reading).number})</span>`;
  }

  #more(node: TraceNode): TemplateResult {
    const { kind, formula, sources, where, basis, note, because, id } = node;
    const source = sources
      .map(({ author, title, year }) => [author, title, year].filter((s) => s !== '').join(', '))
      .join('; ');
    const replaceable =
      (kind === 'coefficient' || kind === 'price' || kind === 'missing' || kind === 'override') &&
      id !== undefined;
    return html`<div class="more">
      ${formula ? html`<p>${capital(formula)}.</p>` : nothing}
      ${because ? html`<p>Because: ${because}</p>` : nothing}
      ${source === '' ? nothing : html`<p class="quiet">Source: ${source}${where ? `, ${where}` : ''}${basis ? ` · ${basis}` : ''}</p>`}
      ${note ? html`<p class="quiet">${note}</p>` : nothing}
      ${kind === 'input' && id ? this.#leaf(id) : nothing}
      ${replaceable ? this.#editor(node, id) : nothing}
    </div>`;
  }

  #leaf(id: string): TemplateResult {
    const leaves = this.leaves?.(id) ?? [];
    if (leaves.length === 0) return html`<p class="quiet">In the notebook at ${id}</p>`;
    return html`${leaves.map(
      ({
        field,
        scenario,
      }) => html`<wk-field .field=${field} .as=${this.#as} .change=${this.change}></wk-field>
        <p class="quiet">${scenario === null ? 'Of the farm: a change counts in every scenario that has none of its own.' : `Of ${scenario} alone.`}</p>`,
    )}`;
  }

  #editor(node: TraceNode, id: string): TemplateResult {
    if (this.editing !== id)
      return html`<button type="button" class="link" @click=${() => {
        this.editing = id;
        this.weighed = undefined;
      }}>${node.kind === 'override' ? 'Change your number' : 'Put your own measurement in its place'}</button>
      ${
        node.kind === 'override'
          ? html` <button type="button" class="link" @click=${() => ask(this, 'wk-override', { id, value: null, because: '' })}>Use the table again</button>`
          : nothing
      }`;
    const as = this.#as;
    const unit = typedUnit(node.unit, as);
    const usual = this.usualOf?.(id);
    const { weighed } = this;
    return html`<form @submit=${(event: SubmitEvent) => this.#replace(event, id, false)}>
      <label>Your number${unit === '' ? '' : `, ${unit}`}<input class="field" name="value" inputmode="decimal" autocomplete="off" required aria-invalid=${weighed?.kind === 'refused' ? 'true' : 'false'} .value=${node.value === null ? '' : typedForm(node.value, node.unit, as)} /></label>
      ${usual ? html`<p class="quiet told">The tables: ${typedForm(usual.low, node.unit, as)} to ${shownValue(usual.high, node.unit, as)} (${usual.basis})</p>` : nothing}
      <label>Where it comes from<input class="field" name="because" required autocomplete="off" placeholder="weighed two loads, January" .value=${node.because ?? ''} /></label>
      <div aria-live="polite">${weighed && weighed.kind !== 'value' ? html`<p class="told ${weighed.kind}">${capital(weighed.words)}${weighed.kind === 'ask' ? '' : '.'}</p>` : nothing}</div>
      <div>
        ${
          weighed?.kind === 'ask'
            ? html`<button type="button" class="plain" @click=${(event: Event) => this.#replace(event, id, true)}>Keep it</button>`
            : html`<button class="plain">Use it</button>`
        }
        <button type="button" class="plain" @click=${() => {
          this.editing = '';
        }}>Leave it</button>
      </div>
    </form>`;
  }

  /** Branches are drawn only once opened, so that a deep tree stays light. */
  #branch(node: TraceNode): TemplateResult {
    const open = this.#opened.has(keyOf(node));
    return html`<li>
      <details ?open=${open} @toggle=${(event: Event) => this.#toggle(event, node)}>
        <summary><span class="name">${labelIn(node.label, this.reading.system)}${node.seen ? html` <span class="quiet">(written out elsewhere in this tree)</span>` : nothing}</span><span class="amount">${this.#amount(node)}${node.own ? ownMark : nothing}</span></summary>
        ${
          open
            ? html`${node.kind === 'stage' ? nothing : html`<div class="more quiet">${capital(KINDS[node.kind])}</div>`}${this.#more(node)}
              ${node.children.length > 0 ? html`<ul>${node.children.map((child) => this.#branch(child))}</ul>` : nothing}`
            : nothing
        }
      </details>
    </li>`;
  }

  protected override render() {
    const { node } = this;
    return html`<dialog aria-labelledby="title" @close=${() => this.#closed()} @click=${(event: Event) => {
      if (event.target === event.currentTarget) this.close();
    }}>
      ${
        node
          ? html`<div class="inside">
              <div class="top">
                <h2 id="title">${capital(labelIn(node.label, this.reading.system))}, ${this.scenario}</h2>
                <button type="button" class="plain close" @click=${() => this.close()}>Close</button>
              </div>
              <p class="big">${show(node.value, node.unit, this.reading, 4).text}${node.own ? ownMark : nothing}</p>
              ${this.#more(node)}
              <wk-notes .threads=${this.notes} .on=${this.noteOn}></wk-notes>
              <h3>From</h3>
              <ul class="root">${node.children.map((child) => this.#branch(child))}</ul>
            </div>`
          : html`<h2 id="title" class="hidden">No working open</h2>`
      }
    </dialog>`;
  }
}

customElements.define('wk-trace', WkTrace);

declare global {
  interface HTMLElementTagNameMap {
    'wk-trace': WkTrace;
  }
}

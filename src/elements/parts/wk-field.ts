import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { capital } from '../../plots/reading.ts';
import type { Change, Outcome } from '../../store/change.ts';
import type { Field } from '../../store/fields.ts';
import { shownValue } from '../../store/weigh.ts';
import { labelIn } from '../../units/inWords.ts';
import { type TypedAs, typedForm, typedUnit } from '../../units/typed.ts';
import { linkButton, shared } from './style.ts';

/** Writes a change, or says why not. */
export type Changes = (change: Change) => Outcome;

/**
 * One input, changed where it stands: its value with the unit beside it, what is usual under it, and the question or
 * refusal a value brings about.
 */
export class WkField extends LitElement {
  static override properties = {
    field: { attribute: false },
    as: { attribute: false },
    change: { attribute: false },
    /** Whether a part of the farm can be set back in a scenario. */
    back: { type: Boolean },
    draft: { state: true },
    outcome: { state: true },
  };

  static override styles = [
    shared,
    linkButton,
    css`
      :host {
        padding: 0.45rem 0;
        border-top: 1px solid var(--rule);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.2rem 0.8rem;
      }
      label,
      .legend {
        flex: 1 1 9rem;
        line-height: 1.25;
      }
      .control {
        display: flex;
        align-items: center;
        gap: 0.4rem;
        flex: 0 1 auto;
        max-width: 100%;
      }
      .field {
        min-height: 2.75rem;
        max-width: 100%;
      }
      input.n {
        width: 6.5rem;
        text-align: right;
      }
      input.words {
        width: 15rem;
      }
      input.twelve {
        width: 21rem;
        max-width: 82vw;
      }
      select.field {
        width: 15rem;
      }
      .unit {
        min-width: 3.4rem;
        color: var(--quiet);
        font-size: 0.92rem;
      }
      .check {
        width: 1.5rem;
        height: 1.5rem;
        margin: 0.6rem 0.2rem;
        accent-color: var(--ink);
      }
      .several {
        display: flex;
        flex-wrap: wrap;
        gap: 0 1rem;
      }
      .several label {
        display: flex;
        align-items: center;
        flex: none;
      }
      .guide {
        margin: 0.1rem 0 0;
        font-size: 0.85rem;
        color: var(--quiet);
      }
      .differs .guide b {
        color: var(--ink);
      }
      .differs label,
      .differs .legend {
        font-weight: 700;
      }
      .differs {
        border-left: 4px solid var(--ink);
        padding-left: 0.6rem;
      }
      .told {
        margin: 0.3rem 0 0;
        padding: 0.5rem 0.7rem;
        background: var(--ground);
        font-size: 0.95rem;
      }
      .refused {
        border-left: 4px solid var(--alarm);
      }
      .told .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        margin-top: 0.4rem;
      }
      .told button {
        min-height: 2.75rem;
      }
      [aria-invalid='true'] {
        border-color: var(--alarm);
      }
    `,
  ];

  declare field: Field | undefined;
  declare as: TypedAs;
  declare change: Changes | undefined;
  declare back: boolean;
  /** What was typed and is not kept yet. */
  declare draft: string | undefined;
  declare outcome: Outcome | undefined;

  constructor() {
    super();
    this.as = { system: 'metric' };
    this.back = false;
  }

  /** What stands in the field when nothing has been typed. */
  #shown({ value, kind, unit }: Field): string {
    if (value === undefined || value === null) return '';
    if (kind === 'number') return typedForm(Number(value), unit, this.as);
    if (kind === 'numbers')
      return (value as number[]).map((each) => typedForm(each, unit, this.as)).join(' ');
    return String(value);
  }

  #try(typed: string, sure = false): void {
    const { field, change } = this;
    if (!field || !change) return;
    this.draft = typed;
    // What stands there already is no change, however it was come by.
    if (!sure && typed.trim() === this.#shown(field) && field.kind !== 'several') {
      this.#putBack();
      return;
    }
    const outcome = change({ at: field.at, typed, as: this.as, ...(sure ? { sure } : {}) });
    this.outcome = outcome.kind === 'same' ? undefined : outcome;
    if (outcome.kind === 'done' || outcome.kind === 'same') this.draft = undefined;
  }

  /** A question nobody sees is no question: on a phone the keys stand over it. */
  protected override updated(changed: Map<string, unknown>): void {
    if (changed.has('outcome') && (this.outcome?.kind === 'ask' || this.outcome?.kind === 'refused'))
      this.renderRoot.querySelector('#told')?.scrollIntoView({ block: 'nearest' });
  }

  #putBack(): void {
    this.draft = undefined;
    this.outcome = undefined;
    this.requestUpdate();
  }

  #text(field: Field, looks: string): TemplateResult {
    const { draft, outcome } = this;
    const number = field.kind === 'number' || field.kind === 'numbers';
    const hint =
      field.value === undefined && field.usual ? typedForm(field.usual.central, field.unit, this.as) : '';
    return html`<input
      id="input"
      class="field ${looks}"
      type=${field.kind === 'date' ? 'date' : 'text'}
      inputmode=${number ? 'decimal' : 'text'}
      autocomplete="off"
      placeholder=${hint}
      aria-describedby="guide told"
      aria-invalid=${outcome?.kind === 'refused' ? 'true' : 'false'}
      .value=${live(draft ?? this.#shown(field))}
      @input=${(event: Event) => {
        // What is being typed stays, whatever figures come in meanwhile.
        this.draft = (event.target as HTMLInputElement).value;
      }}
      @blur=${() => {
        if (this.draft === this.#shown(field) && this.outcome === undefined) this.draft = undefined;
      }}
      @change=${(event: Event) => {
        const { value } = event.target as HTMLInputElement;
        // A year half typed is a date to the browser.
        if (field.kind === 'date' && /^0/.test(value)) return;
        this.#try(value);
      }}
    />`;
  }

  #choice(field: Field): TemplateResult {
    const now = this.draft ?? this.#shown(field);
    const open = field.optional && field.fallback === undefined;
    return html`<select
      id="input"
      class="field"
      aria-describedby="guide told"
      @change=${(event: Event) => this.#try((event.target as HTMLSelectElement).value)}
    >
      ${open ? html`<option value="" .selected=${live(now === '')}>not said</option>` : nothing}
      ${field.options?.map(({ value, words }) => html`<option value=${value} .selected=${live(value === now)}>${words}</option>`)}
    </select>`;
  }

  #several(field: Field): TemplateResult {
    const now = field.value as readonly string[] | undefined;
    const pick = (name: string, on: boolean) => {
      const next = (field.options ?? [])
        .map(({ value }) => value)
        .filter((value) => (value === name ? on : (now?.includes(value) ?? false)));
      this.#try(next.join(' '));
    };
    return html`<span class="several" role="group" aria-labelledby="legend">
      ${field.options?.map(
        ({ value, words }) =>
          html`<label><input type="checkbox" class="check" .checked=${live(now?.includes(value) ?? false)} @change=${(
            event: Event,
          ) => pick(value, (event.target as HTMLInputElement).checked)} />${words}</label>`,
      )}
      <label><input type="checkbox" class="check" .checked=${live(now === undefined)} @change=${(
        event: Event,
      ) => this.#try((event.target as HTMLInputElement).checked ? 'unknown' : '')} />not known</label>
    </span>`;
  }

  #control(field: Field): TemplateResult {
    switch (field.kind) {
      case 'choice':
        return this.#choice(field);
      case 'several':
        return this.#several(field);
      case 'yesNo':
        return html`<input id="input" type="checkbox" class="check" aria-describedby="guide told" .checked=${live(field.value === true)} @change=${(
          event: Event,
        ) => this.#try(String((event.target as HTMLInputElement).checked))} />`;
      case 'number':
        return html`${this.#text(field, 'n')}<span class="unit" aria-hidden="true">${typedUnit(field.unit, this.as)}</span>`;
      case 'numbers':
        return this.#text(field, 'twelve');
      default:
        return this.#text(field, 'words');
    }
  }

  /** What is usual, where the value came from, and what the key is about. */
  #guide(field: Field): TemplateResult | typeof nothing {
    const { usual, origin, note, unit, differs, farmValue } = field;
    const parts: (string | TemplateResult)[] = [];
    if (differs) parts.push(html`<b>Differs.</b> The farm: ${this.#worded(field, farmValue)}`);
    if (usual && usual.low < usual.high)
      parts.push(
        `usual ${typedForm(usual.low, unit, this.as)} to ${shownValue(usual.high, unit, this.as)} (${usual.basis})`,
      );
    // The price of the tables does not count where the keeper has given one in its place.
    if (origin === 'tables' && usual)
      parts.push(
        unit.startsWith('money')
          ? 'while it is empty your own price counts, or the tables where you gave none'
          : 'the tables are used while it is empty',
      );
    if (origin === 'default') parts.push('by default');
    if (origin === 'system') parts.push('from the way of wintering');
    if (note) parts.push(note);
    if (parts.length === 0) return nothing;
    return html`<p class="guide" id="guide">${parts.map((part, k) => html`${k > 0 ? ' · ' : ''}${part}`)}</p>`;
  }

  #worded(field: Field, value: unknown): string {
    if (value === undefined) return 'not said';
    if (typeof value === 'number') return shownValue(value, field.unit, this.as);
    if (typeof value === 'boolean') return value ? 'yes' : 'no';
    if (Array.isArray(value)) return value.length === 0 ? 'none' : value.join(', ');
    return field.options?.find((option) => option.value === value)?.words ?? String(value);
  }

  #told(): TemplateResult | typeof nothing {
    const { outcome, draft } = this;
    if (!outcome) return nothing;
    if (outcome.kind === 'done') return outcome.said ? html`<p class="told">${outcome.said}</p>` : nothing;
    if (outcome.kind === 'same') return nothing;
    const asks = outcome.kind === 'ask';
    return html`<div class="told ${asks ? '' : 'refused'}">
      ${capital(outcome.words)}${/[.?!]$/.test(outcome.words) ? '' : '.'}
      <span class="buttons">
        ${asks ? html`<button type="button" class="plain" @click=${() => this.#try(draft ?? '', true)}>Keep it</button>` : nothing}
        <button type="button" class="plain" @click=${() => this.#putBack()}>Put it back</button>
      </span>
    </div>`;
  }

  protected override render() {
    const { field, back } = this;
    if (!field) return nothing;
    const unit = field.kind === 'number' ? typedUnit(field.unit, this.as) : '';
    const label = html`${capital(labelIn(field.label, this.as.system))}${unit === '' ? nothing : html`<span class="hidden">, ${unit}</span>`}`;
    return html`<div class=${field.differs ? 'differs' : ''}>
      <div class="line">
        ${field.kind === 'several' ? html`<span class="legend" id="legend">${label}</span>` : html`<label for="input">${label}</label>`}
        <span class="control">${this.#control(field)}</span>
      </div>
      ${this.#guide(field)}
      ${
        back && field.differs
          ? html`<button type="button" class="link" @click=${() => this.#try('')}>As the farm</button>`
          : nothing
      }
      <div id="told" aria-live="polite">${this.#told()}</div>
    </div>`;
  }
}

customElements.define('wk-field', WkField);

declare global {
  interface HTMLElementTagNameMap {
    'wk-field': WkField;
  }
}

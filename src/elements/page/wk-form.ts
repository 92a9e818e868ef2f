import { css, html, LitElement, nothing } from 'lit';
import { describe, RESULTS } from '../../model/dictionary.ts';
import { COMPARISONS } from '../../model/measures.ts';
import type { CellBlock } from '../../notebook/body.ts';
import { type Options, setOptions } from '../../notebook/bodyEdits.ts';
import { type Field, fieldsOf } from '../../notebook/cellForm.ts';
import { CELL_WORDS } from '../../notebook/cellWords.ts';
import type { Problem } from '../../units/problem.ts';
import { ask } from '../parts/events.ts';
import { saidProblem } from '../parts/saidProblem.ts';
import { shared } from '../parts/style.ts';

/** Inputs a keeper turns first. */
const OFTEN = ['headCount', 'rainFactor', 'winterDays', 'beddingRateKgPer100Kg', 'labourPricePerHour'];
type Values = Readonly<Record<string, unknown>>;
type Named = Extract<Field, { readonly many: unknown }>;
type Choice = Extract<Field, { readonly type: 'choice' }>;
type Amount = Extract<Field, { readonly type: 'number' }>;

const labelOf = (name: string) => {
  const { label, unit } = describe(name) ?? { label: name, unit: '' };
  return name === 'headCount' ? 'animals in all' : unit === '' || unit === '–' ? label : `${label}, ${unit}`;
};
const byLabel = (names: readonly string[]) =>
  names.map((name) => [name, labelOf(name)] as const).sort((a, b) => a[1].localeCompare(b[1], 'en'));

/**
 * The options of a cell as a form, read off what the file is held to: each change is set at once and can be undone.
 *
 * @fires wk-edit - one option stands otherwise
 * @fires wk-closed - the form is done with
 */
export class WkForm extends LitElement {
  static override properties = {
    block: { attribute: false },
    place: { type: Number },
    scenarios: { attribute: false },
    inputs: { attribute: false },
    refused: { state: true },
  };

  static override styles = [
    shared,
    css`
      :host {
        background: var(--ground);
        padding: 0.7rem 0.9rem;
        margin: 0 0 0.8rem;
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
        gap: 0.7rem 1.2rem;
        margin-bottom: 0.7rem;
      }
      label,
      legend {
        font-size: 0.92rem;
        padding: 0;
      }
      .fields label > .field {
        display: block;
        width: 100%;
        margin-top: 0.15rem;
      }
      fieldset {
        border: 0;
        padding: 0;
        margin: 0;
        min-width: 0;
      }
      .ticks {
        max-height: 11rem;
        overflow-y: auto;
        background: var(--paper);
        border: 1px solid var(--quiet);
        border-radius: 4px;
        padding: 0.2rem 0.6rem;
      }
      .ticks label {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        min-height: 2.1rem;
      }
      .refused {
        border-left: 6px solid var(--alarm);
        padding-left: 0.8rem;
      }
    `,
  ];

  declare block: CellBlock | undefined;
  declare place: number;
  declare scenarios: readonly string[];
  /** Inputs that can be turned here. */
  declare inputs: readonly string[];
  declare refused: Problem | undefined;

  constructor() {
    super();
    this.place = 0;
    this.scenarios = [];
    this.inputs = [];
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus();
  }

  #set(options: Options): void {
    ask(this, 'wk-edit', {
      make: (at) => setOptions(at, this.place, options),
      done: (edited) => {
        this.refused = 'refused' in edited ? edited.refused : undefined;
        // What was refused is shown as it stands in the notebook.
        this.requestUpdate();
      },
    });
  }

  #groups(field: Named): readonly (readonly [string, readonly (readonly [string, string])[]])[] {
    if (field.type === 'scenario') return [['', this.scenarios.map((name) => [name, name] as const)]];
    if (field.type === 'input') {
      const often = OFTEN.filter((name) => this.inputs.includes(name));
      return [
        ['Often turned', often.map((name) => [name, labelOf(name)] as const)],
        ['Everything else', byLabel(this.inputs.filter((name) => !often.includes(name)))],
      ];
    }
    const compared = COMPARISONS.map(({ name }) => name as string);
    return [
      ['What is compared', compared.map((name) => [name, labelOf(name)] as const)],
      [
        'Everything else',
        byLabel(RESULTS.map(({ name }) => name as string).filter((name) => !compared.includes(name))),
      ],
    ];
  }

  #select(
    field: Named,
    label: string,
    value: string | undefined,
    none: string | null,
    set: (value: string) => void,
  ) {
    const groups = this.#groups(field);
    const options = (all: readonly (readonly [string, string])[]) =>
      all.map(([name, words]) => html`<option value=${name} .selected=${name === value}>${words}</option>`);
    return html`<label>${label}<select class="field" @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
      ${none === null ? nothing : html`<option value="" .selected=${value === undefined}>${none}</option>`}
      ${groups.map(([title, all]) => (title === '' ? options(all) : html`<optgroup label=${title}>${options(all)}</optgroup>`))}
    </select></label>`;
  }

  #named(field: Named, value: unknown) {
    const { key, label, many, required } = field;
    if (many === 'list') return this.#ticks(field, (value as readonly string[] | undefined) ?? []);
    if (many === 'one') {
      const none = required ? null : field.type === 'scenario' ? 'the first that has it' : 'none';
      return this.#select(field, label, value as string | undefined, none, (to) =>
        this.#set({ [key]: to === '' ? undefined : to }),
      );
    }
    const pair = value as readonly [string, string] | undefined;
    const shown = pair ?? [this.scenarios[0], this.scenarios[1]];
    const set = (k: number, to: string) => {
      if (to === '') this.#set({ [key]: undefined });
      else this.#set({ [key]: k === 0 ? [to, shown[1] ?? to] : [shown[0], to] });
    };
    return html`${this.#select(field, `${label}: one`, pair?.[0], 'the first two', (to) => set(0, to))}
      ${this.#select(field, 'and the other', pair?.[1], 'the first two', (to) => set(1, to))}`;
  }

  #ticks(field: Named, chosen: readonly string[]) {
    const all = this.#groups(field).flatMap(([title, names]) =>
      field.type === 'scenario' || title === 'What is compared'
        ? names
        : names.filter(([name]) => chosen.includes(name)),
    );
    const set = (name: string, on: boolean) => {
      const next = on ? [...chosen, name] : chosen.filter((each) => each !== name);
      this.#set({ [field.key]: next.length === 0 ? undefined : next });
    };
    return html`<fieldset><legend>${field.label}${field.type === 'scenario' ? ' (all when none is ticked)' : ''}</legend>
      <div class="ticks" tabindex="0" role="group" aria-label=${field.label}>${all.map(
        ([name, words]) =>
          html`<label><input type="checkbox" .checked=${chosen.includes(name)} @change=${(event: Event) => set(name, (event.target as HTMLInputElement).checked)} />${words}</label>`,
      )}</div></fieldset>`;
  }

  #choice({ key, label, options, start }: Choice, value: unknown) {
    const set = (to: string) => this.#set({ [key]: to === '' || to === start ? undefined : to });
    return html`<label>${label}<select class="field" @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
      ${start === undefined ? html`<option value="" .selected=${value === undefined}>as on the page</option>` : nothing}
      ${options.map(({ value: each, words }) => html`<option value=${each} .selected=${each === value}>${words}</option>`)}
    </select></label>`;
  }

  #amount({ key, label, whole, start, allowed }: Amount, value: unknown, over: string | undefined) {
    const unit = (key === 'from' || key === 'to') && over ? `, ${describe(over)?.unit ?? ''}` : '';
    const set = (field: HTMLInputElement) => {
      const to = field.valueAsNumber;
      if (field.value !== '' && !Number.isFinite(to)) return;
      this.#set({ [key]: field.value === '' || to === start ? undefined : to });
    };
    return html`<label>${label}${unit} <small class="quiet">${start === undefined ? 'as it comes when empty' : allowed}</small>
      <input class="field" type="number" inputmode=${whole ? 'numeric' : 'decimal'} step=${whole ? '1' : 'any'} .value=${value === undefined ? '' : String(value)} @change=${(event: Event) => set(event.target as HTMLInputElement)} /></label>`;
  }

  #field(field: Field, values: Values) {
    const value = values[field.key];
    if ('many' in field) return this.#named(field, value);
    if (field.type === 'choice') return this.#choice(field, value);
    if (field.type === 'number') return this.#amount(field, value, values.over as string | undefined);
    return html`<label>${field.label}<input class="field" type="text" .value=${String(value ?? '')} @change=${(
      event: Event,
    ) => {
      const words = (event.target as HTMLInputElement).value.trim();
      this.#set({ [field.key]: words === '' ? undefined : words });
    }} /></label>`;
  }

  protected override render() {
    const { block, refused } = this;
    if (!block) return nothing;
    const { name, answers } = CELL_WORDS[block.kind];
    return html`<h3 tabindex="-1">${name}</h3>
      <p class="quiet">${answers}</p>
      ${refused ? html`<p class="refused" role="alert">${saidProblem(refused)}</p>` : nothing}
      <div class="fields">${fieldsOf(block.kind).map((field) => this.#field(field, block.options))}</div>
      <button type="button" class="plain" @click=${() => this.dispatchEvent(new CustomEvent('wk-closed', { bubbles: true, composed: true }))}>Done</button>`;
  }
}

customElements.define('wk-form', WkForm);

declare global {
  interface HTMLElementTagNameMap {
    'wk-form': WkForm;
  }
}

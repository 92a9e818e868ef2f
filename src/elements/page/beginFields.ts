/** One question on the page: its label, where the answer goes, the start behind it and what is wrong with it. */
import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Field } from '../../begin/fields.ts';
import type { Fault } from '../../begin/reader.ts';
import { shownUnit } from '../../begin/typed.ts';
import type { UnitSystem } from '../../units/quantities.ts';

export interface Question {
  /** Path of the answer, and id of its field. */
  readonly at: string;
  readonly field: Field;
  readonly value: string;
  /** What stands where nothing is answered, as it is shown; '' for nothing. */
  readonly start: string;
  readonly system: UnitSystem;
  readonly currency: string;
  readonly fault: Fault | undefined;
  readonly options?: readonly (readonly [string, string])[];
  /** Names the row a question belongs to, for who cannot see it. */
  readonly of?: string;
  readonly set: (value: string) => void;
}

const typed = (event: Event) => (event.target as HTMLInputElement | HTMLSelectElement).value;

export function question(q: Question): TemplateResult {
  const { at, field, fault } = q;
  const described = fault ? `${at}-fault` : '';
  return html`<div class="question ${field.kind}">
    <label for=${at}>${field.label}${q.of === undefined ? nothing : html`<span class="hidden"> of ${q.of}</span>`}</label>
    <div class="answer">${control(q, described)}</div>
    ${fault ? html`<p class="fault" id="${at}-fault">${fault.words}</p>` : nothing}
  </div>`;
}

function control(q: Question, described: string): TemplateResult {
  const { at, field, value, start, set } = q;
  const about = described === '' ? nothing : described;
  const invalid = q.fault ? 'true' : nothing;
  if (field.kind === 'choice') {
    const options = q.options ?? field.options;
    const nothingSaid = start === '' ? (field.otherwise ?? 'not said') : `${start} (a start)`;
    return html`<select class="field" id=${at} aria-describedby=${about} aria-invalid=${invalid} @change=${(event: Event) => set(typed(event))}>
      ${isKind(at) ? nothing : html`<option value="" .selected=${live(value === '')}>${nothingSaid}</option>`}
      ${options.map(([option, words]) => html`<option value=${option} .selected=${live(option === value)}>${words}</option>`)}
    </select>`;
  }
  if (field.kind === 'date')
    return html`<input class="field" id=${at} type="date" .value=${live(value === '' ? start : value)} aria-describedby=${about} aria-invalid=${invalid}
      @change=${(event: Event) => set(typed(event))} />`;
  if (field.kind === 'text')
    return html`<input class="field" id=${at} type="text" maxlength=${field.most} autocomplete="off" .value=${live(value)} aria-describedby=${about}
      @input=${(event: Event) => set(typed(event))} />`;
  const unit = shownUnit(field.unit, q.system).replace(/^money/, q.currency);
  return html`<input class="field" id=${at} type="text" inputmode="decimal" autocomplete="off" .value=${live(value)} placeholder=${start}
      aria-describedby=${about} aria-invalid=${invalid} @input=${(event: Event) => set(typed(event))} />
    ${unit === 'head' ? nothing : html`<span class="unit">${unit}</span>`}`;
}

/** What a row is of always stands on an option: there is no row of nothing. */
const isKind = (at: string) => /\.(class|feed|material)$/.test(at);

/** A number on the page: a button that opens its working, or a dash with its reason. */
import { html, type TemplateResult } from 'lit';
import type { Shown } from '../../plots/reading.ts';
import { ask } from './events.ts';

export interface NumberOf {
  readonly scenario: number;
  readonly scenarioName: string;
  readonly quantity: string;
  readonly label: string;
  /** Rests on a number the keeper has put in place of the tables. */
  readonly own?: boolean | undefined;
  /** A reader has noted something on it. */
  readonly noted?: boolean | undefined;
}

/** Beside a figure that rests on the keeper's own number. */
export const ownMark = html`<abbr class="own" title="rests on a number of your own"><span aria-hidden="true">•</span><span class="hidden">, rests on a number of your own</span></abbr>`;

export function numberButton(
  shown: Shown,
  { scenario, scenarioName, quantity, label, own, noted }: NumberOf,
): TemplateResult {
  return html`<button
    type="button"
    class="number"
    aria-label="${label}, ${scenarioName}: ${shown.text}${own ? ', rests on a number of your own' : ''}${noted ? ', with a note' : ''}. Show the working"
    @click=${(event: Event) => ask(event.currentTarget as HTMLElement, 'wk-explain', { scenario, quantity })}
  >${shown.number}${shown.unit === '' ? '' : html`<span class="unit"> ${shown.unit}</span>`}${own ? html`<span class="own" aria-hidden="true" title="rests on a number of your own">•</span>` : ''}${noted ? html`<span class="own" aria-hidden="true" title="with a note">*</span>` : ''}</button>`;
}

/** Absent is not zero: a dash, and why on demand. */
export function absentMark(reason: string): TemplateResult {
  return html`<abbr class="absent" tabindex="0" title=${reason}><span aria-hidden="true">–</span><span class="hidden">none: ${reason}</span></abbr>`;
}

/** A number on the page: a button that opens its working, or a dash with its reason. */
import { html, type TemplateResult } from 'lit';
import type { Shown } from '../../plots/reading.ts';
import { ask } from './events.ts';

export interface NumberOf {
  readonly scenario: number;
  readonly scenarioName: string;
  readonly quantity: string;
  readonly label: string;
}

export function numberButton(
  shown: Shown,
  { scenario, scenarioName, quantity, label }: NumberOf,
): TemplateResult {
  return html`<button
    type="button"
    class="number"
    aria-label="${label}, ${scenarioName}: ${shown.text}. Show the working"
    @click=${(event: Event) => ask(event.currentTarget as HTMLElement, 'wk-explain', { scenario, quantity })}
  >${shown.number}${shown.unit === '' ? '' : html`<span class="unit"> ${shown.unit}</span>`}</button>`;
}

/** Absent is not zero: a dash, and why on demand. */
export function absentMark(reason: string): TemplateResult {
  return html`<abbr class="absent" tabindex="0" title=${reason}><span aria-hidden="true">–</span><span class="hidden">none: ${reason}</span></abbr>`;
}

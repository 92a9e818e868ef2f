import type { Edited, Editing } from '../../notebook/edit.ts';
import type { Climate } from '../../tables/weatherJoin.ts';
import type { RainDay, WeatherSeries } from '../../tables/weatherSeries.ts';
import type { HerdMeaning } from '../../whatif/turn.ts';

/** What elements tell the page; all bubble and cross shadow roots, and only a person's act sends one. */
export interface Asked {
  /** Open the working of a result. */
  'wk-explain': { readonly scenario: number; readonly quantity: string };
  /** An input is being turned; nothing is written yet. */
  'wk-preview': { readonly id: string; readonly value: number };
  /** An input was let go of: one step to undo. */
  'wk-commit': { readonly id: string; readonly value: number };
  /** What turning the herd means for the shed, for everything that turns it. */
  'wk-herd': { readonly herd: HerdMeaning };
  /** A keeper's own number in place of a table row; `value` null takes it out again. */
  'wk-override': { readonly id: string; readonly value: number | null; readonly because: string };
  /** A keeper's quote for a line of a scenario's bill; `unitPrice` null takes it out again. */
  'wk-quote': {
    readonly scenario: number;
    readonly line: string;
    readonly unitPrice: number | null;
    readonly because: string;
  };
  /** The keeper takes a weather file: its text in our own form. */
  'wk-weather-file': { readonly name: string; readonly text: string; readonly series: WeatherSeries };
  /** The keeper takes the rain of a gauge, with the temperature of a shipped climate. */
  'wk-weather-rain': { readonly name: string; readonly rain: readonly RainDay[]; readonly climate: Climate };
  /** The text is wanted at a line of it. */
  'wk-line': { readonly line: number };
  /** Whose notebook this is, for the name and the foot of a file; told at once or not at all. */
  'wk-whose': {
    readonly tell: (whose: { readonly title: string; readonly invented: boolean }) => void;
  };
  'wk-go': { readonly to: string };
  /** An edit of the text, made of the text as it stands: one named step to undo, or a refusal with its reason. */
  'wk-edit': {
    readonly make: (at: Editing) => Edited;
    readonly done: (edited: Edited) => void;
  };
}

export function ask<K extends keyof Asked>(from: EventTarget, name: K, detail: Asked[K]): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementEventMap extends AskedEvents {}
  interface GlobalEventHandlersEventMap extends AskedEvents {}
}
type AskedEvents = { [K in keyof Asked]: CustomEvent<Asked[K]> };

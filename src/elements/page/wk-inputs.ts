import { css, html, LitElement, nothing } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Strip } from '../../store/strip.ts';
import { labelIn } from '../../units/inWords.ts';
import { toSystem, type UnitSystem } from '../../units/quantities.ts';
import { HERD_DEFAULT, HERD_NOTES, type HerdMeaning } from '../../whatif/turn.ts';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';

/** Units of the inputs that have another where customary units are used; the strip names units in words. */
const MODEL_UNITS: Readonly<Record<string, string>> = {
  materialPrice: 'money/t',
  beddingRate: 'kg/100 kg',
};
/** Figures kept of a number that was converted. */
const DIGITS = 5;

/**
 * The few inputs that change everything, always in reach: above the figures on a laptop, under the thumb on a phone.
 *
 * @fires wk-preview - while an input is turned
 * @fires wk-commit - when it is let go of
 * @fires wk-herd - when another meaning of turning the herd is chosen
 */
export class WkInputs extends LitElement {
  static override properties = {
    inputs: { attribute: false },
    herd: {},
    chosen: { state: true },
    system: {},
  };

  static override styles = [
    shared,
    css`
      :host {
        background: var(--ground);
        border-block: 1px solid var(--rule);
      }
      .names {
        display: none;
      }
      .all {
        display: flex;
        gap: 0.4rem 1.8rem;
        padding: 0.4rem 1rem 0.2rem;
        max-width: var(--measure);
        margin: 0 auto;
      }
      .one {
        flex: 1 1 0;
        min-width: 0;
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: start;
        column-gap: 0.4rem;
      }
      label {
        font-size: 0.92rem;
        line-height: 1.15;
      }
      small {
        display: block;
        font-size: 0.8rem;
        color: var(--quiet);
        white-space: nowrap;
        overflow: hidden;
        text-overflow: ellipsis;
      }
      .said {
        min-width: 0;
      }
      .one:has(.meaning) {
        flex-grow: 1.3;
      }
      .meaning {
        display: flex;
        align-items: center;
        gap: 0.35rem;
        min-height: 1.5rem;
        margin: -0.1rem 0;
        font-size: 0.8rem;
        color: var(--quiet);
        white-space: nowrap;
        cursor: pointer;
      }
      .meaning input {
        width: 1.05rem;
        height: 1.05rem;
        margin: 0;
        accent-color: var(--ink);
      }
      .typed {
        width: 3.1rem;
        text-align: right;
        border: 0;
        border-bottom: 1px solid var(--quiet);
        background: none;
        font-size: 1.1rem;
        padding: 0.1rem;
        -moz-appearance: textfield;
        appearance: textfield;
      }
      .typed::-webkit-inner-spin-button {
        display: none;
      }
      input[type='range'] {
        grid-column: 1 / -1;
        width: 100%;
        margin: 0;
        height: 1.6rem;
        accent-color: var(--ink);
        cursor: pointer;
      }
      @media screen and (max-width: 700px) {
        .names {
          display: flex;
          position: relative;
          overflow-x: auto;
          gap: 0.3rem;
          padding: 0.4rem 1rem 0;
        }
        .names button {
          flex: none;
          border: 1px solid var(--rule);
          border-radius: 1.2rem;
          background: var(--paper);
          padding: 0.2rem 0.7rem;
          min-height: 2.3rem;
          font-size: 0.9rem;
        }
        .names button[aria-pressed='true'] {
          border-color: var(--ink);
          background: var(--ink);
          color: var(--paper);
        }
        .all {
          display: block;
          padding: 0.3rem 1rem 0.4rem;
        }
        .one {
          display: none;
        }
        .one.chosen {
          display: grid;
        }
        .said {
          display: flex;
          align-items: center;
          gap: 1rem;
        }
        .meaning {
          min-height: 2rem;
        }
        input[type='range'] {
          height: 2.4rem;
        }
      }
      @media print {
        :host {
          border: 0;
          background: none;
        }
        .all {
          padding: 0;
          flex-wrap: wrap;
        }
        .one {
          flex: 0 0 28%;
        }
        small {
          white-space: normal;
        }
        input[type='range'] {
          display: none;
        }
        .typed {
          border: 0;
          padding: 0;
        }
      }
    `,
  ];

  declare inputs: readonly Strip[];
  /** What turning the herd means for the shed. */
  declare herd: HerdMeaning;
  declare chosen: string;
  declare system: UnitSystem;

  constructor() {
    super();
    this.inputs = [];
    this.herd = HERD_DEFAULT;
    this.chosen = '';
    this.system = 'metric';
  }

  #send(event: Event, name: 'wk-preview' | 'wk-commit', input: Strip): void {
    const field = event.target as HTMLInputElement;
    const value = field.valueAsNumber;
    // An emptied or impossible number is left as typed until it makes sense; the figures stay as they were.
    if (!Number.isFinite(value) || value < input.min || (field.type === 'range' && value > input.max)) return;
    ask(this, name, { id: input.id, value: Number((value / this.#factor(input.id)).toPrecision(DIGITS)) });
  }

  /** As this reader counts it: the same input, its numbers and its unit in their system. */
  #shown(input: Strip): Strip {
    const holds = this.#factor(input.id);
    if (this.system === 'metric') return input;
    const { value, min, max, step } = input;
    // A step stays a round number: sliders are moved by it.
    return {
      ...input,
      unit: labelIn(input.unit, this.system),
      value: Number((value * holds).toPrecision(DIGITS)),
      min: min * holds,
      max: Math.ceil((max * holds) / step) * step,
      step,
    };
  }

  /** How many of the unit shown are one of the model's. */
  #factor = (id: string): number => toSystem(1, MODEL_UNITS[id] ?? '', this.system).value;

  #one(given: Strip, chosen: boolean) {
    const input = this.#shown(given);
    const { id, label, unit, value, min, max, step } = input;
    // A price that was converted is no whole number: half a coin of it is kept.
    const converted = this.#factor(id) !== 1 && value < 100 ? 1 : 0;
    const shown = String(Number(value.toFixed(Math.max(converted, step < 0.1 ? 2 : step < 1 ? 1 : 0))));
    return html`<div class="one ${chosen ? 'chosen' : ''}">
      <div class="said"><label for=${id}>${label}${id === 'head' ? nothing : html`<small>${unit}</small>`}</label>${id === 'head' ? this.#meaning() : nothing}</div>
      <input class="typed" type="number" inputmode="decimal" aria-label="${label}, ${unit}, typed" .min=${String(min)} step="any" .value=${live(shown)} @change=${(e: Event) => this.#send(e, 'wk-commit', input)} />
      <input
        id=${id}
        type="range"
        .min=${String(min)}
        .max=${String(Math.max(max, value))}
        .step=${String(step)}
        .value=${live(String(value))}
        aria-valuetext="${shown} ${unit}"
        @input=${(e: Event) => this.#send(e, 'wk-preview', input)}
        @change=${(e: Event) => this.#send(e, 'wk-commit', input)}
      />
    </div>`;
  }

  /** Beside the slider, since the same number of animals costs another sum by the other meaning. */
  #meaning() {
    return html`<label class="meaning" title="Here ${HERD_NOTES[this.herd]}."><input type="checkbox" .checked=${live(this.herd === 'built')} @change=${(
      event: Event,
    ) => {
      ask(this, 'wk-herd', { herd: (event.target as HTMLInputElement).checked ? 'built' : 'stays' });
    }} />Size shed to herd</label>`;
  }

  protected override render() {
    const chosen = this.inputs.some((i) => i.id === this.chosen) ? this.chosen : (this.inputs[0]?.id ?? '');
    return html`
      <div class="names screen" role="group" aria-label="Which input to turn">
        ${this.inputs.map(
          (i) =>
            html`<button type="button" aria-pressed=${i.id === chosen} @click=${() => {
              this.chosen = i.id;
            }}>${i.short}</button>`,
        )}
      </div>
      <div class="all" role="group" aria-label="Inputs that change everything">${this.inputs.map((i) => this.#one(i, i.id === chosen))}</div>
    `;
  }
}

customElements.define('wk-inputs', WkInputs);

declare global {
  interface HTMLElementTagNameMap {
    'wk-inputs': WkInputs;
  }
}

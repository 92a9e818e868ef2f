import { css, html, LitElement } from 'lit';
import { ledgerFigure, NUTRIENTS, type NutrientName } from '../../plots/ledger.ts';
import type { Reading } from '../../plots/reading.ts';
import { capital } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** Where each nutrient went, for the element the reader chooses. */
export class WkLedger extends LitElement {
  static override properties = {
    results: { attribute: false },
    reading: { attribute: false },
    nutrient: {},
  };

  static override styles = [
    shared,
    css`
      fieldset {
        border: 0;
        margin: 0 0 0.5rem;
        padding: 0;
        display: flex;
        flex-wrap: wrap;
        gap: 0.2rem 1.2rem;
      }
      label {
        display: flex;
        gap: 0.4rem;
        align-items: center;
        min-height: 2.2rem;
        cursor: pointer;
      }
      input {
        accent-color: var(--ink);
        width: 1.1rem;
        height: 1.1rem;
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  declare nutrient: NutrientName;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.nutrient = 'nitrogen';
  }

  protected override render() {
    return html`<h2>Where each nutrient went</h2>
      <fieldset class="screen">
        <legend class="hidden">Element</legend>
        ${NUTRIENTS.map(
          (name) =>
            html`<label><input type="radio" name="nutrient" .checked=${this.nutrient === name} @change=${() => {
              this.nutrient = name;
            }} />${capital(name)}</label>`,
        )}
      </fieldset>
      <wk-figure .figure=${ledgerFigure(this.results, this.nutrient, this.reading)}></wk-figure>`;
  }
}

customElements.define('wk-ledger', WkLedger);

declare global {
  interface HTMLElementTagNameMap {
    'wk-ledger': WkLedger;
  }
}

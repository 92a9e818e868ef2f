import { css, html, LitElement } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { RESULTS, resultNamed } from '../../model/dictionary.ts';
import { COMPARISONS } from '../../model/measures.ts';
import type { ResultName } from '../../model/quantities.ts';
import { compareFigure } from '../../plots/compare.ts';
import { capital, type Reading } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { labelIn } from '../../units/inWords.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** Any result across the scenarios; the reader chooses which. */
export class WkCompare extends LitElement {
  static override properties = {
    results: { attribute: false },
    reading: { attribute: false },
    quantity: {},
  };

  static override styles = [
    shared,
    css`
      label {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.6rem;
        align-items: center;
        margin-bottom: 0.6rem;
      }
      select {
        max-width: 100%;
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  declare quantity: ResultName;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.quantity = 'nitrogenKeptKg';
  }

  protected override render() {
    const short = new Set<string>(COMPARISONS.map((c) => c.name));
    const rest = RESULTS.filter(({ name }) => !short.has(name));
    const option = (name: string, label: string) =>
      html`<option value=${name} ?selected=${name === this.quantity}>${labelIn(capital(label), this.reading.system)}</option>`;
    return html`<h2>Side by side</h2>
      <label class="screen">Compare
        <select class="field" @change=${(event: Event) => {
          this.quantity = resultNamed((event.target as HTMLSelectElement).value);
        }}>
          ${guard(
            [this.quantity, this.reading.system],
            () => html`<optgroup label="What is mostly asked">${COMPARISONS.map((c) => option(c.name, c.short))}</optgroup>
              <optgroup label="Everything else">${rest.map((r) => option(r.name, r.label))}</optgroup>`,
          )}
        </select>
      </label>
      <wk-figure .figure=${compareFigure(this.results, this.quantity, this.reading)}></wk-figure>`;
  }
}

customElements.define('wk-compare', WkCompare);

declare global {
  interface HTMLElementTagNameMap {
    'wk-compare': WkCompare;
  }
}

import { css, html, LitElement } from 'lit';
import { groupOf } from '../../model/checks/titles.ts';
import { inWords } from '../../plots/reading.ts';
import { cautionsOf } from '../../study/cautions.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { wordsIn } from '../../units/inWords.ts';
import type { UnitSystem } from '../../units/quantities.ts';
import { shared } from '../parts/style.ts';

/** What can kill or ruin, said once, on screen and on paper. */
export class WkCautions extends LitElement {
  static override properties = { results: { attribute: false }, system: {} };

  static override styles = [
    shared,
    css`
      section {
        border-left: 6px solid var(--alarm);
        padding: 0.1rem 0 0.1rem 1rem;
        max-width: 46rem;
        break-inside: avoid;
      }
      p:last-child {
        margin: 0;
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare system: UnitSystem;

  constructor() {
    super();
    this.results = [];
    this.system = 'metric';
  }

  protected override render() {
    const found = cautionsOf(this.results, (check) => groupOf(check) === 'caution');
    // The one that kills is said even when the checks could not run.
    const gas =
      found.some(({ check }) => check.id === 'slurryGas') ||
      !this.results.some(({ values }) => (values.slurryM3 ?? 0) > 0);
    return html`<section aria-label="Cautions">
      <h2>Before you act on this</h2>
      ${gas ? '' : html`<p><strong>Slurry gas kills within breaths.</strong> People and animals out before any tank is stirred or emptied; nobody enters a tank.</p>`}
      ${found.map(({ check, names }) => html`<p>${wordsIn(check.words, this.system)} <span class="quiet">(${inWords(names)})</span></p>`)}
      <p>
        Loads on walls, roofs and slabs belong to a licensed engineer. Welfare, storage and spreading rules are for the local authority to say. Loans and taxes
        belong with a professional. The figures here are estimates with ranges, not a design.
      </p>
    </section>`;
  }
}

customElements.define('wk-cautions', WkCautions);

declare global {
  interface HTMLElementTagNameMap {
    'wk-cautions': WkCautions;
  }
}

import { html, LitElement, nothing } from 'lit';
import type { ShedResult } from '../../model/checks/check.ts';
import { planFigure } from '../../plots/plan.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** The shed from above: feed places, the way behind them, water and ways out. */
export class WkPlan extends LitElement {
  static override properties = { result: { attribute: false }, coefficients: { attribute: false } };
  static override styles = shared;

  declare result: ShedResult | undefined;
  declare coefficients: ReadonlyMap<string, Coefficient> | undefined;

  protected override render() {
    const { result, coefficients } = this;
    if (!result || !coefficients?.size) return nothing;
    return html`<wk-figure heading=${`Plan: ${result.name}`} .figure=${planFigure({ ...result, coefficients })}></wk-figure>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wk-plan': WkPlan;
  }
}

customElements.define('wk-plan', WkPlan);

import { html, LitElement, nothing } from 'lit';
import type { ShedResult } from '../../model/checks/check.ts';
import { figureIn } from '../../plots/figureIn.ts';
import { planFigure } from '../../plots/plan.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import type { UnitSystem } from '../../units/quantities.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** The shed from above: feed places, the way behind them, water and ways out. */
export class WkPlan extends LitElement {
  static override properties = {
    result: { attribute: false },
    coefficients: { attribute: false },
    system: {},
  };
  static override styles = shared;

  declare result: ShedResult | undefined;
  declare coefficients: ReadonlyMap<string, Coefficient> | undefined;
  declare system: UnitSystem;

  constructor() {
    super();
    this.system = 'metric';
  }

  protected override render() {
    const { result, coefficients } = this;
    if (!result || !coefficients?.size) return nothing;
    return html`<wk-figure heading=${`Plan: ${result.name}`} .figure=${figureIn(planFigure({ ...result, coefficients }), this.system)}></wk-figure>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wk-plan': WkPlan;
  }
}

customElements.define('wk-plan', WkPlan);

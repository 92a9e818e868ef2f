import { html, LitElement } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import type { PreparedWeather } from '../../model/weather/prepared.ts';
import { rainFigure, wintersFigure } from '../../plots/rain.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Run } from '../../study/evaluate.ts';
import { daysOf } from '../../whatif/winterDays.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** Rain, snow, soil water and drainage through the winter; or a result in every winter of the weather file. */
export class WkRain extends LitElement {
  static override properties = {
    run: { attribute: false },
    explorer: { attribute: false },
    winters: { attribute: false },
    reading: { attribute: false },
    show: {},
    scenario: {},
    measure: {},
    caption: {},
  };

  static override styles = shared;

  declare run: Run | undefined;
  declare explorer: Explorer | undefined;
  /** Every winter of the weather file, for `show` winters. */
  declare winters: readonly PreparedWeather[];
  declare reading: Reading;
  declare show: 'winter' | 'winters';
  /** One scenario by name; the first for one winter, all for many when absent. */
  declare scenario: string | undefined;
  declare measure: ResultName;
  declare caption: string | undefined;

  #many: Answering<'winters'> = answering(this, 'winters');

  constructor() {
    super();
    this.winters = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.show = 'winter';
    this.measure = 'nitrogenLeachedKg';
  }

  protected override willUpdate(): void {
    const { run, explorer, winters, measure } = this;
    if (this.show !== 'winters' || winters.length === 0) return;
    this.#many.ask(explorer, run, { kind: 'winters', winters, names: [measure] });
  }

  #figure(run: Run) {
    const names = run.scenarios.map(({ name }) => name);
    const at = this.scenario === undefined ? -1 : names.indexOf(this.scenario);
    if (this.show === 'winter') return rainFigure(daysOf(run, Math.max(0, at)), this.reading);
    const many = this.#many.answer();
    return (
      many?.results[this.measure] &&
      wintersFigure(many, names, this.measure, this.reading, at < 0 ? undefined : [at])
    );
  }

  protected override render() {
    const { run, caption } = this;
    if (this.show === 'winters' && this.winters.length === 0)
      return html`<p>There are no winters to show: name a weather file in the notebook.</p>`;
    const progress = html`<wk-progress .explorer=${this.explorer} slot-name=${this.#many.slot}></wk-progress>`;
    const fault = this.#many.fault();
    if (fault !== undefined) return html`<p>The winters could not be computed: ${fault}.</p>`;
    const figure = run && this.#figure(run);
    if (!figure) return notReady(progress);
    return html`${progress}<wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>`;
  }
}

customElements.define('wk-rain', WkRain);

declare global {
  interface HTMLElementTagNameMap {
    'wk-rain': WkRain;
  }
}

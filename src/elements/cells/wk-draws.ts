import { html, LitElement } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { ResultName } from '../../model/quantities.ts';
import { drawsFigure } from '../../plots/drawsDots.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Run } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering, placesOf } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** How sure a result is, and in how many draws each scenario is best in it. */
export class WkDraws extends LitElement {
  static override properties = {
    run: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    draws: { attribute: false },
    reading: { attribute: false },
    measure: {},
    scenarios: { attribute: false },
    count: { type: Number },
    seed: { type: Number },
    caption: {},
  };

  static override styles = shared;

  declare run: Run | undefined;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  /** Draws already made, used when they hold the measure. */
  declare draws: Draws | undefined;
  declare reading: Reading;
  declare measure: ResultName;
  declare scenarios: readonly string[] | undefined;
  declare count: number;
  declare seed: number;
  declare caption: string | undefined;

  #own: Answering<'draws'> = answering(this, 'draws');

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.measure = 'netCost';
    this.count = 10_000;
    this.seed = 1;
  }

  #made(): Draws | undefined {
    return this.draws?.results[this.measure] ? this.draws : this.#own.answer()?.draws;
  }

  protected override willUpdate(): void {
    const { run, explorer, measure, count, seed, changes } = this;
    if (this.draws?.results[measure]) return;
    this.#own.ask(explorer, run, { kind: 'draws', count, seed, keep: [measure] }, changes);
  }

  protected override render() {
    const { run, reading, measure, caption } = this;
    const progress = html`<wk-progress .explorer=${this.explorer} slot-name=${this.#own.slot}></wk-progress>`;
    const fault = this.#own.fault();
    if (fault !== undefined) return html`<p>The draws could not be made: ${fault}.</p>`;
    const draws = this.#made();
    if (!run || !draws?.results[measure] || draws.scenarios !== run.scenarios.length)
      return notReady(progress);
    const names = run.scenarios.map(({ name }) => name);
    const figure = drawsFigure(draws, { measure, names, shown: placesOf(names, this.scenarios) }, reading);
    return html`${progress}<wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>`;
  }
}

customElements.define('wk-draws', WkDraws);

declare global {
  interface HTMLElementTagNameMap {
    'wk-draws': WkDraws;
  }
}

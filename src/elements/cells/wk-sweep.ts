import { html, LitElement, nothing } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { ResultName } from '../../model/quantities.ts';
import { bestMapFigure } from '../../plots/bestMap.ts';
import type { Reading } from '../../plots/reading.ts';
import { sweepFigure } from '../../plots/sweepLines.ts';
import type { Run } from '../../study/evaluate.ts';
import type { HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering, placesOf } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** Columns of a map: more would be too narrow for a letter on a phone. */
const MAP_STEPS = 25;

/** A result while an input is turned; with `across`, a map of which scenario is best over two inputs. */
export class WkSweep extends LitElement {
  static override properties = {
    run: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    reading: { attribute: false },
    over: {},
    from: { type: Number },
    to: { type: Number },
    herd: {},
    steps: { type: Number },
    measure: {},
    across: {},
    scenarios: { attribute: false },
    caption: {},
  };

  static override styles = shared;

  declare run: Run | undefined;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare reading: Reading;
  declare over: string;
  declare from: number | undefined;
  declare to: number | undefined;
  /** What turning the herd means for the shed. */
  declare herd: HerdMeaning | undefined;
  declare steps: number;
  declare measure: ResultName;
  declare across: string | undefined;
  declare scenarios: readonly string[] | undefined;
  declare caption: string | undefined;

  #lines: Answering<'sweep'> = answering(this, 'sweep');
  #map: Answering<'grid'> = answering(this, 'grid');

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.over = '';
    this.steps = 41;
    this.measure = 'netCost';
  }

  protected override willUpdate(): void {
    const { run, explorer, over, from, to, herd, steps, measure, across, changes } = this;
    if (over === '') return;
    if (across)
      this.#map.ask(
        explorer,
        run,
        { kind: 'grid', over, from, to, herd, steps: Math.min(steps, MAP_STEPS), across, names: [measure] },
        changes,
      );
    else
      this.#lines.ask(
        explorer,
        run,
        { kind: 'sweep', over, from, to, herd, steps, names: [measure] },
        changes,
      );
  }

  protected override render() {
    const { run, reading, measure, across, caption } = this;
    const used = across ? this.#map : this.#lines;
    const progress = html`<wk-progress .explorer=${this.explorer} slot-name=${used.slot}></wk-progress>`;
    if (used.fault() !== undefined) return html`<p>The sweep could not be computed: ${used.fault()}.</p>`;
    if (!run || used.answer() === undefined) return notReady(progress);
    const names = run.scenarios.map(({ name }) => name);
    const view = { measure, names, shown: placesOf(names, this.scenarios) };
    const [grid, sweep] = [this.#map.answer(), this.#lines.answer()];
    const figure = across
      ? grid && bestMapFigure(grid, view, reading)
      : sweep && sweepFigure(sweep, view, reading);
    if (!figure)
      return html`<p>No scenario has an input named “${this.over}”${across ? html` or “${across}”` : nothing}.</p>`;
    return html`${progress}<wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>`;
  }
}

customElements.define('wk-sweep', WkSweep);

declare global {
  interface HTMLElementTagNameMap {
    'wk-sweep': WkSweep;
  }
}

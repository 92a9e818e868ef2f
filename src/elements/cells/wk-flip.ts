import { html, LitElement } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { ResultName } from '../../model/quantities.ts';
import type { Reading } from '../../plots/reading.ts';
import { flipFinding, sweepFigure } from '../../plots/sweepLines.ts';
import type { Run } from '../../study/evaluate.ts';
import type { HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** Where one scenario overtakes another while an input is turned. */
export class WkFlip extends LitElement {
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
    between: { attribute: false },
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
  /** Names of two scenarios; the first two when absent. */
  declare between: readonly [string, string] | undefined;
  declare caption: string | undefined;

  #sweep: Answering<'sweep'> = answering(this, 'sweep');
  #flips: Answering<'flips'> = answering(this, 'flips');

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.over = '';
    this.steps = 41;
    this.measure = 'netCost';
  }

  #pair(): [number, number] | undefined {
    const names = this.run?.scenarios.map(({ name }) => name) ?? [];
    const pair = this.between?.map((name) => names.indexOf(name)) ?? [0, 1];
    return pair.every((k) => k >= 0 && k < names.length) ? [pair[0], pair[1]] : undefined;
  }

  protected override willUpdate(): void {
    const { run, explorer, over, from, to, herd, steps, measure, changes } = this;
    const pair = this.#pair();
    if (over === '' || !pair) return;
    const [first, second] = pair;
    this.#sweep.ask(explorer, run, { kind: 'sweep', over, from, to, herd, steps, names: [measure] }, changes);
    this.#flips.ask(explorer, run, { kind: 'flips', over, from, to, herd, measure, first, second }, changes);
  }

  protected override render() {
    const { run, reading, measure, caption } = this;
    const progress = html`<wk-progress .explorer=${this.explorer} slot-name=${this.#flips.slot}></wk-progress>`;
    if (!run) return notReady(progress);
    if (run.scenarios.length < 2) return html`<p>There is one scenario only; nothing can flip.</p>`;
    const fault = this.#sweep.fault() ?? this.#flips.fault();
    if (fault !== undefined) return html`<p>Where the answer flips could not be computed: ${fault}.</p>`;
    const [sweep, flips] = [this.#sweep.answer(), this.#flips.answer()];
    if (sweep === undefined || flips === undefined) return notReady(progress);
    if (!sweep || !flips) return html`<p>No scenario has an input named “${this.over}”.</p>`;
    const names = run.scenarios.map(({ name }) => name);
    const capital = run.scenarios.map(({ values }) => values.capitalCost ?? null);
    const view = { measure, names, shown: [flips.first, flips.second].sort((a, b) => a - b), flips, capital };
    const figure = flips.comparable ? sweepFigure(sweep, view, reading) : undefined;
    if (!figure) return html`<p>${flipFinding(flips, view, reading)}</p>`;
    return html`${progress}<wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>`;
  }
}

customElements.define('wk-flip', WkFlip);

declare global {
  interface HTMLElementTagNameMap {
    'wk-flip': WkFlip;
  }
}

import { html, LitElement } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { Reading } from '../../plots/reading.ts';
import { WEEK_SERIES, type WeekSeries, weekFigure } from '../../plots/weeks.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** While an input is turned. */
const DRAWS_WHILE_TURNED = 150;

/** A weekly series of the bed, with the span of the draws once they are made. */
export class WkBed extends LitElement {
  static override properties = {
    run: { attribute: false },
    results: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    reading: { attribute: false },
    series: { attribute: false },
    count: { type: Number },
    seed: { type: Number },
    caption: {},
  };

  static override styles = shared;

  declare run: Run | undefined;
  /** The scenarios to show. */
  declare results: readonly ScenarioResult[];
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare reading: Reading;
  declare series: WeekSeries;
  declare count: number;
  declare seed: number;
  declare caption: string | undefined;

  #bands: Answering<'weekBands'> = answering(this, 'weekBands');

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.series = WEEK_SERIES.weekPackDepthM;
    this.count = 10_000;
    this.seed = 1;
  }

  protected override willUpdate(): void {
    const { run, explorer, changes, count, seed, series, results } = this;
    // Weeks to be ranged only where there is a line to range.
    if (!results.some(({ tracks }) => tracks[series.track]?.some((value) => value > 0))) return;
    this.#bands.ask(
      explorer,
      run,
      {
        kind: 'weekBands',
        tracks: [series.track],
        count: changes?.size ? Math.min(DRAWS_WHILE_TURNED, count) : count,
        seed,
      },
      changes,
    );
  }

  protected override render() {
    const { results, series, reading, caption } = this;
    const answer = this.#bands.answer();
    const fault = this.#bands.fault();
    const bands = answer && {
      count: answer.count,
      of: new Map(
        answer.scenarios.flatMap(({ name, tracks }) => {
          const band = tracks[series.track];
          return band ? [[name, band] as const] : [];
        }),
      ),
    };
    const figure = weekFigure(results, series, reading, bands);
    return html`<wk-progress .explorer=${this.explorer} slot-name=${this.#bands.slot}></wk-progress>
      <wk-figure heading="The bed" .figure=${caption ? { ...figure, caption: `${caption} ${figure.caption ?? ''}`.trim() } : figure}></wk-figure>
      ${fault === undefined ? '' : html`<p>The span of the weeks could not be computed: ${fault}. The line stands without it.</p>`}`;
  }
}

customElements.define('wk-bed', WkBed);

declare global {
  interface HTMLElementTagNameMap {
    'wk-bed': WkBed;
  }
}

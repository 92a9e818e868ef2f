import { css, html, LitElement, nothing } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { ResultName } from '../../model/quantities.ts';
import { adviceLine, rankingFigure, surelyFirst } from '../../plots/ranking.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Run } from '../../study/evaluate.ts';
import { adviceFrom } from '../../uncertainty/advice.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

/** Which numbers decide between two scenarios, and which to measure first. */
export class WkRank extends LitElement {
  static override properties = {
    run: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    reading: { attribute: false },
    measure: {},
    between: { attribute: false },
    top: { type: Number },
    count: { type: Number },
    seed: { type: Number },
    caption: {},
  };

  static override styles = [
    shared,
    css`
      h4 {
        font-size: 1rem;
        margin: 0.8rem 0 0.2rem;
      }
      ol {
        margin: 0;
        padding-left: 1.4rem;
        max-width: 42rem;
      }
    `,
  ];

  declare run: Run | undefined;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare reading: Reading;
  declare measure: ResultName;
  /** Names of two scenarios; the best two when absent. */
  declare between: readonly [string, string] | undefined;
  declare top: number;
  declare count: number;
  declare seed: number;
  declare caption: string | undefined;

  #rank: Answering<'rank'> = answering(this, 'rank');

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.measure = 'netCost';
    this.top = 10;
    this.count = 10_000;
    this.seed = 1;
  }

  protected override willUpdate(): void {
    const { run, explorer, measure, top, count, seed, changes } = this;
    const names = run?.scenarios.map(({ name }) => name) ?? [];
    const pair = this.between?.map((name) => names.indexOf(name));
    if (pair?.some((k) => k < 0)) return;
    const between = pair ? ([pair[0], pair[1]] as const) : undefined;
    this.#rank.ask(explorer, run, { kind: 'rank', measure, between, top, count, seed }, changes);
  }

  protected override render() {
    const { run, reading, measure, caption } = this;
    const progress = html`<wk-progress .explorer=${this.explorer} slot-name=${this.#rank.slot}></wk-progress>`;
    const fault = this.#rank.fault();
    if (fault !== undefined) return html`<p>What decides could not be computed: ${fault}.</p>`;
    const answer = this.#rank.answer();
    if (run && run.scenarios.length < 2)
      return html`<p>There is one scenario only; nothing decides between two.</p>`;
    if (!run || !answer) return notReady(progress);
    const names = run.scenarios.map(({ name }) => name);
    const figure = rankingFigure(answer.ranking, names, answer.ranking?.measure ?? measure, reading);
    const { ranking } = answer;
    const advice = ranking ? adviceFrom(ranking) : [];
    return html`${progress}<wk-figure .figure=${caption ? { ...figure, caption } : figure}></wk-figure>
      ${
        !ranking || advice.length === 0
          ? nothing
          : html`<h4>${surelyFirst(ranking) !== null ? 'What would narrow the difference most; which is ahead does not hang on it' : 'What to measure first'}</h4>
              <ol>${advice.map((a) => html`<li>${adviceLine(a, ranking, reading)}</li>`)}</ol>`
      }`;
  }
}

customElements.define('wk-rank', WkRank);

declare global {
  interface HTMLElementTagNameMap {
    'wk-rank': WkRank;
  }
}

import { css, html, LitElement, nothing } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { Notebook } from '../../notebook/read.ts';
import { answerOf, missingOf } from '../../plots/answer.ts';
import { answerWords } from '../../plots/answerWords.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { measuresOf } from '../../uncertainty/decide.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import type { HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { shared } from '../parts/style.ts';

/** Which way, before anything else: at once with what is known, completed as draws and turns come in. */
export class WkAnswer extends LitElement {
  static override properties = {
    notebook: { attribute: false },
    run: { attribute: false },
    results: { attribute: false },
    draws: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    herd: {},
    reading: { attribute: false },
    count: { type: Number },
  };

  static override styles = [
    shared,
    css`
      section {
        max-width: 46rem;
      }
      @media screen and (min-width: 1000px) {
        /* Which way on the left, what speaks for it beside: both before the cards without scrolling. */
        section {
          display: grid;
          grid-template-columns: minmax(18rem, 2fr) 3fr;
          gap: 0 2.2rem;
          max-width: none;
          padding: 0.4rem 0;
        }
      }
      .lead {
        font-size: 1.2rem;
        font-weight: 600;
        line-height: 1.35;
        margin: 0 0 0.3rem;
      }
      .rest {
        margin: 0 0 0.6rem;
        line-height: 1.5;
      }
      .still {
        color: var(--quiet);
      }
      @media screen and (max-width: 700px) {
        .lead {
          font-size: 1.08rem;
        }
        .rest {
          font-size: 0.95rem;
          line-height: 1.4;
        }
      }
    `,
  ];

  declare notebook: Notebook | undefined;
  declare run: Run | undefined;
  declare results: readonly ScenarioResult[];
  declare draws: Draws | undefined;
  /** Asked for what would turn the answer and what is doubtful; neither is said without one. */
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare herd: HerdMeaning | undefined;
  declare reading: Reading;
  declare count: number;

  #turns: Answering<'overtakes'> = answering(this, 'overtakes', { urgent: true });
  #doubt: Answering<'doubt'> = answering(this, 'doubt', { urgent: true });

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.count = 10_000;
  }

  protected override willUpdate(): void {
    const { run, notebook, explorer, herd, draws, count, changes } = this;
    // While an input is turned what is found would be out of date before it is read.
    if (!run || !notebook || run.scenarios.length < 2 || this.#isTurned()) return;
    const measures = measuresOf(notebook.decide.weights);
    this.#turns.ask(explorer, run, { kind: 'overtakes', measures, herd }, changes);
    const { first, second } = this.#answer();
    if (!draws || second === null || count === 0) return;
    const { seed } = notebook.draws;
    this.#doubt.ask(explorer, run, { kind: 'doubt', measures, first, second, count, seed }, changes);
  }

  #isTurned = () => (this.changes?.size ?? 0) > 0;

  #answer() {
    const { notebook, run, results, draws, reading } = this;
    const still = !this.#isTurned();
    return answerOf(
      {
        results,
        weights: notebook?.decide.weights ?? {},
        missing: run && notebook ? missingOf(run, notebook) : { prices: 0, unsourced: 0, unsaid: [] },
        draws,
        overtakes: still ? this.#turns.fresh() : undefined,
        doubt: still ? this.#doubt.fresh() : undefined,
      },
      reading,
    );
  }

  protected override render() {
    const { results, notebook, reading } = this;
    if (results.length === 0 || !notebook) return nothing;
    const answer = this.#answer();
    const { lead, rest } = answerWords(answer, reading);
    const waits =
      this.explorer && answer.second !== null && !this.#isTurned() && answer.overtakes === undefined;
    return html`<section aria-labelledby="which-way" aria-busy=${waits ? 'true' : 'false'}>
      <h2 id="which-way" class="hidden">Which way</h2>
      <p class="lead">${lead}</p>
      <p class="rest">${rest.join(' ')}${waits ? html` <span class="still">What would turn it is being looked for …</span>` : nothing}</p>
    </section>`;
  }
}

customElements.define('wk-answer', WkAnswer);

declare global {
  interface HTMLElementTagNameMap {
    'wk-answer': WkAnswer;
  }
}

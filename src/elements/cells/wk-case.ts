import { css, html, LitElement, nothing } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import { whole } from '../../paper/amounts.ts';
import { answerLines } from '../../paper/answers.ts';
import { paperDocument } from '../../paper/document.ts';
import { gather, movesQuestion } from '../../paper/gather.ts';
import { dayText, type PaperNotebook, type Report, reportFrom } from '../../paper/report.ts';
import { changeText } from '../../paper/stress.ts';
import type { Paper } from '../../paper/style.ts';
import { capital, moneyOf, type Reading } from '../../plots/reading.ts';
import { levelText, tornadoFigure } from '../../plots/tornado.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { type MoneyCase, moneyCase, proposalOf } from '../../study/moneyCase.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { type Answering, answering } from '../parts/answering.ts';
import { notReady } from '../parts/notReady.ts';
import { inertName, offer } from '../parts/offer.ts';
import { answerBy, type PaperSlots } from '../parts/paperAnswers.ts';
import { printText } from '../parts/printText.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';
import '../parts/wk-progress.ts';

const today = () => dayText(new Date().toISOString());

/** A case shown outside a notebook, which cannot be printed. */
const nameless = ({ system }: Reading): PaperNotebook => ({
  title: '',
  invented: false,
  units: system,
  draws: { count: 0, seed: 1 },
});

/** The case for a partner or lender in short: five answers, the stresses, what moves it, and the whole paper to print. */
export class WkCase extends LitElement {
  static override properties = {
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    draws: { attribute: false },
    notebook: { attribute: false },
    scenario: {},
    caption: {},
    fault: { state: true },
  };

  static override styles = [
    shared,
    css`
      dl {
        margin: 0 0 1rem;
        max-width: 50rem;
        border-top: 1px solid var(--ink);
      }
      dl div {
        display: grid;
        grid-template-columns: 8.5rem 1fr;
        gap: 0 0.8rem;
        padding: 0.35rem 0;
        border-bottom: 1px solid var(--rule);
        line-height: 1.45;
      }
      dt {
        font-weight: 600;
      }
      dd {
        margin: 0;
      }
      .gaps {
        border-left: 6px solid var(--alarm);
        padding-left: 1rem;
        margin-bottom: 1rem;
      }
      .gaps ul {
        padding-left: 1.1rem;
        margin: 0;
      }
      .scroll {
        overflow-x: auto;
        margin-bottom: 1rem;
      }
      table {
        min-width: 100%;
      }
      thead th {
        font-weight: 600;
        vertical-align: bottom;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      th[scope='row'] {
        min-width: 9.5rem;
      }
      td.n {
        white-space: nowrap;
      }
      td:last-child {
        min-width: 12rem;
        padding-right: 0;
      }
      @media screen and (max-width: 700px) {
        dl div {
          grid-template-columns: 1fr;
        }
      }
      @media print {
        dl div,
        tr {
          break-inside: avoid;
        }
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare draws: Draws | undefined;
  declare notebook: PaperNotebook | undefined;
  declare scenario: string | undefined;
  declare caption: string | undefined;

  declare fault: string;

  #asked: Answering<'money'> = answering(this, 'money');
  #paperSlots: PaperSlots = {
    draws: `${this.#asked.slot} paper draws`,
    moves: `${this.#asked.slot} paper moves`,
  };

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.fault = '';
  }

  #case(): MoneyCase | undefined {
    const { run, scenario } = this;
    const index = run ? proposalOf(run, scenario) : -1;
    return run && index >= 0 ? moneyCase(run, index) : undefined;
  }

  protected override willUpdate(): void {
    const { run, explorer, changes } = this;
    const found = this.#case();
    // The stresses take half a second: they follow once an input is let go.
    if (!run || !found || (changes && changes.size > 0)) return;
    this.#asked.ask(explorer, run, { kind: 'money', ...movesQuestion(found) });
  }

  /** The paper as the command gathers it; the lines on the page go by the draws that are there already. */
  async #make(paper: Paper, then: (text: string) => void): Promise<void> {
    const { run, notebook, explorer, changes } = this;
    const index = run ? proposalOf(run, this.scenario) : -1;
    if (!run || !notebook || !explorer || index < 0) return;
    this.fault = '';
    try {
      const report = await gather(
        { notebook, run, index, day: today() },
        answerBy(explorer, run, this.#paperSlots, changes),
      );
      if (report && this.isConnected) then(paperDocument(report, paper));
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
  }

  #save(text: string, name: string): void {
    const title = inertName(this.notebook?.title ?? '', 'notebook');
    offer(new Blob([text], { type: 'text/html' }), `${title}-case-${inertName(name, 'proposal')}.html`);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const slot of Object.values(this.#paperSlots)) this.explorer?.stop(slot);
  }

  #report(run: Run, found: MoneyCase): Report {
    const { stress, sensitivities, needs } = this.#asked.answer() ?? {
      stress: [],
      sensitivities: { central: Number.NaN, rows: [] },
      needs: [],
    };
    return reportFrom(this.notebook ?? nameless(this.reading), run, found, {
      stress,
      sensitivities,
      needs,
      results: this.results.length === run.results.length ? this.results : run.results,
      ...(this.draws ? { draws: this.draws } : {}),
      day: today(),
    });
  }

  #stress({ result }: MoneyCase, { stress }: Report) {
    const round = (value: number | null | undefined) =>
      value == null ? '–' : whole(Number(value.toPrecision(3)));
    return html`<h3>Bad times</h3>
      <div class="scroll" tabindex="0" role="group" aria-label="Stresses on ${result.name}">
        <table>
          <thead><tr><th scope="col">${moneyOf(this.reading)}</th><th scope="col" class="n">by</th><th scope="col" class="n">net cost a year</th><th scope="col" class="n">present value</th><th scope="col" class="n">cover</th><th scope="col">when it turns</th></tr></thead>
          <tbody>${stress.map((row) => {
            const outcome = row.outcomes.find(({ name }) => name === result.name);
            return html`<tr><th scope="row">${capital(row.label)}</th><td class="n">${levelText(row)}</td><td class="n">${changeText(outcome, this.reading)}</td><td class="n">${round(outcome?.gain ?? outcome?.netPresentValue)}</td><td class="n">${outcome?.debtServiceCover == null ? '–' : outcome.debtServiceCover.toFixed(2)}</td><td>${outcome?.words ?? ''}</td></tr>`;
          })}</tbody>
        </table>
      </div>`;
  }

  protected override render() {
    const { run, reading, caption, scenario } = this;
    if (!run) return nothing;
    const found = this.#case();
    if (!found) return html`<p>No scenario is called “${scenario}”.</p>`;
    const report = this.#report(run, found);
    const { faults, result, finance } = found;
    const ready = report.stress.length > 0;
    const fault = this.#asked.fault();
    const print = (paper: Paper, label: string) =>
      html`<button type="button" class="plain" @click=${() => this.#make(paper, printText)}>${label}</button>`;
    return html`<h2>The case for ${result.name}</h2>
      ${caption ? html`<p>${caption}</p>` : nothing}
      ${faults.length === 0 ? nothing : html`<div class="gaps"><h3>Gaps in this case</h3><ul>${faults.map(({ words }) => html`<li>${capital(words)}.</li>`)}</ul></div>`}
      <dl>${answerLines(report).map(({ head, words }) => html`<div><dt>${head}</dt><dd>${words}</dd></div>`)}</dl>
      <wk-progress .explorer=${this.explorer} slot-name=${this.#asked.slot}></wk-progress>
      ${fault === undefined ? nothing : html`<p>The stresses could not be run: ${fault}.</p>`}
      ${
        ready
          ? html`${this.#stress(found, report)}
            <h3>What moves it</h3>
            <wk-figure .figure=${tornadoFigure({ scenario: result.name, baseline: finance.difference?.baseline ?? null, sensitivities: report.sensitivities, stress: report.stress }, reading)}></wk-figure>
            <p class="screen">${print('a4', 'Print the lender’s paper, A4')} ${print('letter', 'Letter')}
              <button type="button" class="plain" @click=${() => this.#make('a4', (text) => this.#save(text, result.name))}>Save it as a file</button></p>
            <wk-progress .explorer=${this.explorer} slot-name=${this.#paperSlots.draws}></wk-progress>
            ${this.fault === '' ? nothing : html`<p>The paper could not be made: ${this.fault}.</p>`}`
          : fault === undefined
            ? notReady(nothing)
            : nothing
      }`;
  }
}

customElements.define('wk-case', WkCase);

declare global {
  interface HTMLElementTagNameMap {
    'wk-case': WkCase;
  }
}

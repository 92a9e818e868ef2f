import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { CONTRARY_EVIDENCE } from '../../bedmix/binding.ts';
import { cheapestMix, type MixAnswer } from '../../bedmix/leastCost.ts';
import { type BeddingQuestion, beddingQuestion, missingIn } from '../../bedmix/question.ts';
import type { Override } from '../../notebook/schema.ts';
import { bindingWords, mixBeside, mixDecides, mixFigure, mixFrees, unpricedWords } from '../../plots/mix.ts';
import { inWords, type Reading, show } from '../../plots/reading.ts';
import type { Run } from '../../study/evaluate.ts';
import { labelIn } from '../../units/inWords.ts';
import { readTyped, typedForm, typedUnit } from '../../units/typed.ts';
import { notReady } from '../parts/notReady.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** How long an input must rest before the mix is sought anew, ms: a dragged slider never waits for it. */
const REST_MS = 180;

/** The cheapest bedding from what the keeper has or can buy, or what stands in its way. */
export class WkMix extends LitElement {
  static override properties = {
    run: { attribute: false },
    reading: { attribute: false },
    scenario: {},
    overrides: { attribute: false },
    caption: {},
    carried: { state: true },
    sought: { state: true },
  };

  static override styles = [
    shared,
    css`
      ul {
        margin: 0 0 0.8rem;
        padding-left: 1.2rem;
        max-width: 42rem;
      }
      p {
        max-width: 42rem;
        line-height: 1.45;
      }
      h4 {
        font-size: 1rem;
        margin: 1rem 0 0.2rem;
      }
      .ask {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.4rem 0.7rem;
        margin: 0.6rem 0;
      }
      .ask input {
        width: 7rem;
      }
      .scroll {
        overflow-x: auto;
        margin-bottom: 0.7rem;
      }
      thead th {
        vertical-align: bottom;
        font-weight: 600;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      @media print {
        .scroll {
          overflow: visible;
        }
      }
    `,
  ];

  declare run: Run | undefined;
  declare reading: Reading;
  /** Its name; the first with a bed when absent. */
  declare scenario: string | undefined;
  declare overrides: readonly Override[];
  declare caption: string | undefined;
  /** Most bedding the keeper can carry in a day, kg; null for no limit. Not written to the notebook. */
  declare carried: number | null;
  declare sought: Sought | undefined;

  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.overrides = [];
    this.carried = null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#rest);
    this.#rest = undefined;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.#seekSoon();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (['run', 'scenario', 'overrides', 'carried'].some((name) => changed.has(name as keyof WkMix)))
      this.#seekSoon();
  }

  #seekSoon(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(
      () => {
        this.sought = this.run && seek(this.run, this.scenario, this.overrides, this.carried);
      },
      this.sought ? REST_MS : 0,
    );
  }

  #carries({ currentTarget }: Event): void {
    const { value } = currentTarget as HTMLInputElement;
    const typed = readTyped(value, 'kg', { system: this.reading.system });
    this.carried = 'value' in typed && typed.value >= 0 ? typed.value : null;
  }

  protected override render() {
    const { sought, reading, caption } = this;
    if (!sought) return notReady(nothing);
    if ('problem' in sought) return html`<h3>The cheapest bed</h3><p>${sought.problem}</p>`;
    const { name, question, answer } = sought;
    const figure = mixFigure(question, answer, name, reading);
    const frees = answer?.status === 'impossible' ? answer.frees : [];
    const [decides, unpriced] = [mixDecides(answer), unpricedWords(question)];
    return html`<wk-figure heading="The cheapest bed" .figure=${caption ? { ...figure, caption } : figure}></wk-figure>
      ${decides === '' ? nothing : html`<p>${decides}</p>`}
      ${mixBeside(question, answer, name, reading).map((words) => html`<p>${words}</p>`)}
      ${
        frees.length === 0
          ? nothing
          : html`<h4>${frees[0].together ? 'All of these together would free it' : 'Any one of these would free it'}</h4>
              <ul>${mixFrees(frees).map((words) => html`<li>${words}</li>`)}</ul>`
      }
      ${unpriced === '' ? nothing : html`<p>${unpriced}</p>`}
      ${
        question
          ? html`<div class="ask screen">
                <label for="carried">Most bedding we can carry in a day, ${typedUnit('kg', this.reading)} (empty for no limit)</label>
                <input id="carried" class="field" type="number" min="0" step="10" inputmode="decimal" .value=${this.carried === null ? '' : typedForm(this.carried, 'kg', this.reading)} @change=${this.#carries} />
              </div>
              ${this.carried === null ? nothing : html`<p class="quiet">With at most ${show(this.carried, 'kg', this.reading).text} carried in a day; tried here and not written to the notebook.</p>`}
              ${this.#binds(question)}`
          : nothing
      }`;
  }

  #binds(question: BeddingQuestion) {
    const told = bindingWords(question, this.reading);
    if (!told) return nothing;
    return html`<h4>What the bedding binds</h4>
      <p>${told.sentence}</p>
      <div class="scroll" tabindex="0" role="group" aria-label="What each bedding binds">
        <table>
          <thead><tr>${told.head.map((cell, k) => html`<th scope="col" class=${k === 0 ? '' : 'n'}>${cell}</th>`)}</tr></thead>
          <tbody>${told.rows.map((row) => html`<tr>${row.map((cell, k) => (k === 0 ? html`<th scope="row">${cell}</th>` : html`<td class="n">${cell}</td>`))}</tr>`)}</tbody>
        </table>
      </div>
      <p class="quiet">${labelIn(CONTRARY_EVIDENCE, this.reading.system)}</p>`;
  }
}

type Sought =
  | { readonly problem: string }
  | {
      readonly name: string;
      readonly question: BeddingQuestion | null;
      readonly answer: MixAnswer | null;
    };

function seek(
  run: Run,
  scenario: string | undefined,
  overrides: readonly Override[],
  handledKgPerDay: number | null,
): Sought {
  const names = run.results.map(({ name }) => name);
  const index =
    scenario === undefined
      ? run.results.findIndex(({ values }) => (values.packDryMatterInKg ?? 0) > 0)
      : names.indexOf(scenario);
  if (index < 0)
    return {
      problem:
        scenario === undefined
          ? 'No scenario has a bed to lay bedding on.'
          : `There is no scenario “${scenario}”. There are ${inWords(names.map((name) => `“${name}”`))}.`,
    };
  const question = beddingQuestion(run, index, overrides, { handledKgPerDay });
  const gaps = question ? missingIn(question) : [];
  if (gaps.length > 0)
    return {
      problem: `The cheapest mix for “${names[index]}” cannot be sought: no number for ${inWords(gaps)}. Put the rows back into the tables.`,
    };
  return { name: names[index], question, answer: question && cheapestMix(question) };
}

customElements.define('wk-mix', WkMix);

declare global {
  interface HTMLElementTagNameMap {
    'wk-mix': WkMix;
  }
}

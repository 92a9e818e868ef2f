import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { RowChanges } from '../../model/bind.ts';
import type { PreparedWeather } from '../../model/weather/prepared.ts';
import type { Block, CellBlock } from '../../notebook/body.ts';
import type { InlineValue } from '../../notebook/inline.ts';
import { proseHtml } from '../../notebook/markdown.ts';
import type { PaperNotebook } from '../../paper/report.ts';
import { compareFigure } from '../../plots/compare.ts';
import type { Figure } from '../../plots/figure.ts';
import { ladderFigure } from '../../plots/ladder.ts';
import { type Reading, show, unitOf } from '../../plots/reading.ts';
import { WEEK_SERIES } from '../../plots/weeks.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { HERD_DEFAULT, type HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import '../cells/wk-bed.ts';
import '../cells/wk-bill.ts';
import '../cells/wk-case.ts';
import '../cells/wk-cashflow.ts';
import '../cells/wk-checks.ts';
import '../cells/wk-costs.ts';
import '../cells/wk-draws.ts';
import '../parts/wk-figure.ts';
import '../cells/wk-flip.ts';
import '../cells/wk-ledger.ts';
import '../cells/wk-mix.ts';
import '../parts/wk-problems.ts';
import '../cells/wk-rain.ts';
import '../cells/wk-rank.ts';
import '../cells/wk-sources.ts';
import '../cells/wk-sweep.ts';
import '../cells/wk-calendar.ts';
import '../cells/wk-plan.ts';
import '../cells/wk-section.ts';

/** Series of the model behind the words a bed cell uses. */
const BED: Readonly<Record<string, keyof typeof WEEK_SERIES>> = {
  depth: 'weekPackDepthM',
  moisture: 'weekPackMoisture',
  carbonNitrogen: 'weekPackCarbonNitrogen',
  dryMatter: 'weekPackDryMatterKg',
  nitrogen: 'weekPackNitrogenKg',
  temperature: 'weekPackTemperatureC',
};

/**
 * The notebook as it was written: prose and cells in their order, values by name set into the prose.
 *
 * @fires wk-explain - a value in the prose was opened
 */
export class WkNotebook extends LitElement {
  static override properties = {
    blocks: { attribute: false },
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    heading: {},
    explorer: { attribute: false },
    changes: { attribute: false },
    herd: {},
    draws: { attribute: false },
    seed: { type: Number },
    winters: { attribute: false },
    paper: { attribute: false },
  };

  static override styles = [
    shared,
    css`
      .prose {
        max-width: 40rem;
        font-size: 1.1rem;
        line-height: 1.6;
      }
      .prose h2 {
        margin: 2rem 0 0.6rem;
      }
      .prose h3 {
        font-size: 1.12rem;
        margin: 1.4rem 0 0.4rem;
      }
      .prose p,
      .prose li {
        margin: 0 0 0.8rem;
      }
      .prose blockquote {
        margin: 0 0 1rem;
        padding-left: 1rem;
        border-left: 3px solid var(--rule);
      }
      .prose table {
        font-size: 0.95rem;
        margin-bottom: 1rem;
      }
      .prose th,
      .prose td {
        border-bottom: 1px solid var(--rule);
      }
      .inline-value {
        appearance: none;
        background: none;
        border: 0;
        padding: 0;
        cursor: pointer;
        font-weight: 600;
        text-decoration: underline dotted var(--quiet) 1px;
        text-underline-offset: 0.22em;
      }
      .cell {
        margin: 1.6rem 0 2rem;
        /* What changes in one cell lays out only that cell. */
        contain: layout style;
      }
      pre {
        overflow-x: auto;
        background: var(--ground);
        padding: 0.7rem 0.9rem;
        font-size: 0.9rem;
        margin: 0 0 0.4rem;
      }
      @media print {
        .prose {
          font-size: 1rem;
          line-height: 1.4;
          max-width: none;
        }
        .inline-value {
          text-decoration: none;
        }
        .cell {
          margin: 0.8rem 0;
          contain: none;
        }
      }
    `,
  ];

  declare blocks: readonly Block[];
  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  /** The page's own heading; the same words at the top of the prose are not said twice. */
  declare heading: string;
  /** What the exploring cells ask; without it they stay empty. */
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  /** What turning the herd means for the shed, where a cell does not say its own. */
  declare herd: HerdMeaning;
  declare draws: Draws | undefined;
  declare seed: number;
  /** Every winter of the weather file. */
  declare winters: readonly PreparedWeather[];
  /** What the lender's paper says of the notebook itself. */
  declare paper: PaperNotebook | undefined;

  constructor() {
    super();
    this.blocks = [];
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.heading = '';
    this.herd = HERD_DEFAULT;
    this.seed = 1;
    this.winters = [];
  }

  /** Cells as they were last drawn, and those in sight: what is out of sight waits until it is scrolled to. */
  #drawn = new WeakMap<Block, TemplateResult | typeof nothing>();
  #inSight = new Set<Element>();
  #sight = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        if (isIntersecting) this.#inSight.add(target);
        else this.#inSight.delete(target);
      }
      if (entries.some(({ isIntersecting }) => isIntersecting)) this.requestUpdate();
    },
    { rootMargin: '300px' },
  );
  #beforePrint = () => {
    this.#drawn = new WeakMap();
    this.requestUpdate();
  };

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.#beforePrint);
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.#beforePrint);
    this.#sight.disconnect();
    this.#inSight.clear();
  }

  protected override updated(): void {
    for (const cell of this.renderRoot.querySelectorAll('.cell')) this.#sight.observe(cell);
  }

  #scenarioOf(name: string | null): number {
    return name === null ? 0 : this.results.findIndex((result) => result.name === name);
  }

  #valueText = ({ quantity, scenario }: InlineValue): string => {
    const result = this.results[this.#scenarioOf(scenario)];
    const value = result?.values[quantity];
    const unit = unitOf(quantity);
    const shown = show(value, unit, this.reading);
    // What is counted is named by the prose around it: "17 animals", "197 days".
    return unit === 'head' || unit === 'd' ? shown.number : shown.text;
  };

  #opened(event: Event): void {
    const button = (event.target as HTMLElement).closest<HTMLElement>('.inline-value');
    const quantity = button?.dataset.quantity;
    const scenario = this.#scenarioOf(button?.dataset.scenario ?? null);
    if (button && quantity && scenario >= 0) ask(button, 'wk-explain', { scenario, quantity });
  }

  /** Headings in the prose stand one rank under the page's own. */
  #prose(text: string): TemplateResult {
    const lowered = proseHtml(text, this.#valueText).replace(
      /<(\/?)h([1-5])>/g,
      (_, slash, rank) => `<${slash}h${Number(rank) + 1}>`,
    );
    const first = /^\s*<h2>([^<]*)<\/h2>/.exec(lowered);
    const told = first && first[1].trim() === this.heading.trim();
    return html`<div class="prose">${unsafeHTML(told ? lowered.slice(first[0].length) : lowered)}</div>`;
  }

  #some(names: readonly string[] | undefined): readonly ScenarioResult[] {
    if (!names) return this.results;
    // Order and colour stay those of the notebook: a scenario keeps its look everywhere.
    return this.results.filter((result) => names.includes(result.name));
  }

  /** The same without ranges, for what shows none: it is not drawn again when the draws come in. */
  #unranged(names: readonly string[] | undefined): readonly ScenarioResult[] {
    const all = this.run?.scenarios ?? this.results;
    return names ? all.filter((result) => names.includes(result.name)) : all;
  }

  /** The scenario a cell names; without one, the first that has a bed, else the first. */
  #one(block: CellBlock): ScenarioResult | undefined {
    const name = 'scenario' in block.options ? block.options.scenario : undefined;
    if (name !== undefined) return this.results.find((result) => result.name === name);
    return this.results.find(({ values }) => (values.packTonnes ?? 0) > 0) ?? this.results[0];
  }

  #figure(figure: Figure, caption: string | undefined, heading = '') {
    return html`<wk-figure heading=${heading} .figure=${caption === undefined ? figure : { ...figure, caption }}></wk-figure>`;
  }

  #cell(block: CellBlock): TemplateResult | typeof nothing {
    const { changes, explorer, reading, run } = this;
    switch (block.kind) {
      case 'cards':
        return nothing;
      case 'ledger':
        return html`<wk-ledger .results=${this.#unranged(block.options.scenarios)} .reading=${reading} .nutrient=${block.options.element}></wk-ledger>`;
      case 'compare':
        return this.#figure(
          compareFigure(this.#some(block.options.scenarios), block.options.measure, reading),
          block.options.caption,
        );
      case 'ladder':
        return this.#figure(
          ladderFigure(this.#some(block.options.scenarios), reading),
          block.options.caption,
          'Nitrogen step by step',
        );
      case 'rain': {
        const { show: which, scenario, measure, caption } = block.options;
        return html`<wk-rain .run=${run} .explorer=${explorer} .winters=${this.winters} .reading=${reading} .show=${which} .scenario=${scenario} .measure=${measure ?? 'nitrogenLeachedKg'} .caption=${caption}></wk-rain>`;
      }
      case 'sweep': {
        const { over, from, to, herd, steps, measure, across, scenarios, caption } = block.options;
        return html`<wk-sweep .herd=${herd ?? this.herd} .run=${run} .explorer=${explorer} .changes=${changes} .reading=${reading} .over=${over} .from=${from} .to=${to} .steps=${steps} .measure=${measure} .across=${across} .scenarios=${scenarios} .caption=${caption}></wk-sweep>`;
      }
      case 'flip': {
        const { over, from, to, herd, steps, measure, between, caption } = block.options;
        return html`<wk-flip .herd=${herd ?? this.herd} .run=${run} .explorer=${explorer} .changes=${changes} .reading=${reading} .over=${over} .from=${from} .to=${to} .steps=${steps} .measure=${measure} .between=${between} .caption=${caption}></wk-flip>`;
      }
      case 'draws': {
        const { measure, scenarios, caption } = block.options;
        return html`<wk-draws .run=${run} .explorer=${explorer} .changes=${changes} .draws=${this.draws} .seed=${this.seed} .reading=${reading} .measure=${measure} .scenarios=${scenarios} .caption=${caption}></wk-draws>`;
      }
      case 'rank': {
        const { measure, between, top, caption } = block.options;
        return html`<wk-rank .run=${run} .explorer=${explorer} .seed=${this.seed} .reading=${reading} .measure=${measure} .between=${between} .top=${top} .caption=${caption}></wk-rank>`;
      }
      case 'bed':
        return html`<wk-bed .run=${run} .results=${this.#some(block.options.scenarios)} .explorer=${explorer} .changes=${changes} .seed=${this.seed} .reading=${reading} .series=${WEEK_SERIES[BED[block.options.show]]} .caption=${block.options.caption}></wk-bed>`;
      case 'mix':
        return html`<wk-mix .run=${run} .reading=${reading} .scenario=${block.options.scenario} .caption=${block.options.caption}></wk-mix>`;
      case 'checks':
        return html`<wk-checks id="checks" .sources=${this.run?.tables.sources} ?openOnly=${block.options.show === 'open'} .results=${this.#some(block.options.scenarios)} .reading=${reading}></wk-checks>`;
      case 'section':
        return html`<wk-section .result=${this.#one(block)} .coefficients=${this.run?.tables.coefficients} .week=${block.options.week ?? 26}></wk-section>`;
      case 'plan':
        return html`<wk-plan .result=${this.#one(block)} .coefficients=${this.run?.tables.coefficients}></wk-plan>`;
      case 'calendar':
        return html`<wk-calendar .result=${this.#one(block)} .coefficients=${this.run?.tables.coefficients}></wk-calendar>`;
      case 'bill':
        return html`<wk-bill .run=${run} .reading=${reading} .scenario=${block.options.scenario} .caption=${block.options.caption}></wk-bill>`;
      case 'costs':
        return html`<wk-costs .run=${run} .results=${this.#some(block.options.scenarios)} .reading=${reading} .caption=${block.options.caption}></wk-costs>`;
      case 'cashflow':
        return html`<wk-cashflow .run=${run} .results=${this.#some(block.options.scenarios)} .explorer=${explorer} .changes=${changes} .seed=${this.seed} .reading=${reading} .caption=${block.options.caption}></wk-cashflow>`;
      case 'case':
        return html`<wk-case .run=${run} .results=${this.results} .explorer=${explorer} .changes=${changes} .draws=${this.draws} .notebook=${this.paper} .reading=${reading} .scenario=${block.options.scenario} .caption=${block.options.caption}></wk-case>`;
      case 'sources':
        return html`<wk-sources .run=${this.run} .reading=${reading}></wk-sources>`;
      default:
        return this.#asWritten(block);
    }
  }

  /** A cell this page cannot draw is shown as it stands in the file. */
  #asWritten(block: Block) {
    return html`<pre tabindex="0" aria-label="Cell as written, line ${block.line}"><code>${block.text.trimEnd()}</code></pre>
      <p class="quiet">This page does not draw this cell yet; it is kept as written.</p>`;
  }

  #block(block: Block) {
    if (block.type === 'prose')
      return guard([block.text, this.heading, ...block.values.map(this.#valueText)], () =>
        this.#prose(block.text),
      );
    if (block.type === 'broken')
      return html`<div class="cell"><wk-problems .problems=${block.problems}></wk-problems><pre tabindex="0" aria-label="Cell as written, line ${block.line}"><code>${block.text.trimEnd()}</code></pre></div>`;
    const seen = [...this.#inSight].some((cell) => (cell as HTMLElement).dataset.line === String(block.line));
    // The same template again leaves everything below it as it is.
    const cell = seen ? this.#cell(block) : (this.#drawn.get(block) ?? this.#cell(block));
    this.#drawn.set(block, cell);
    return cell === nothing ? nothing : html`<div class="cell" data-line=${block.line}>${cell}</div>`;
  }

  protected override render() {
    if (this.results.length === 0) return nothing;
    return html`<div @click=${(event: Event) => this.#opened(event)}>${this.blocks.map((block) => this.#block(block))}</div>`;
  }
}

customElements.define('wk-notebook', WkNotebook);

declare global {
  interface HTMLElementTagNameMap {
    'wk-notebook': WkNotebook;
  }
}

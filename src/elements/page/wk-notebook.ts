import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { RowChanges } from '../../model/bind.ts';
import { isValue } from '../../model/dictionary.ts';
import type { PreparedWeather } from '../../model/weather/prepared.ts';
import type { Block } from '../../notebook/body.ts';
import type { InlineValue } from '../../notebook/inline.ts';
import { proseHtml } from '../../notebook/markdown.ts';
import type { Notebook } from '../../notebook/read.ts';
import { type Reading, show, unitOf } from '../../plots/reading.ts';
import { mostDraws } from '../../store/open.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { HERD_DEFAULT, type HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import { type CellPage, cellShown } from './cells.ts';
import '../parts/wk-problems.ts';

/**
 * The notebook as it was written: prose and cells in their order, values by name set into the prose.
 *
 * @fires wk-explain - a value in the prose was opened
 */
export class WkNotebook extends LitElement implements CellPage {
  static override properties = {
    notebook: { attribute: false },
    results: { attribute: false },
    run: { attribute: false },
    reading: { attribute: false },
    explorer: { attribute: false },
    changes: { attribute: false },
    herd: {},
    draws: { attribute: false },
    winters: { attribute: false },
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

  declare notebook: Notebook | undefined;
  declare results: readonly ScenarioResult[];
  declare run: Run | undefined;
  declare reading: Reading;
  declare explorer: Explorer | undefined;
  declare changes: RowChanges | undefined;
  declare herd: HerdMeaning;
  declare draws: Draws | undefined;
  declare winters: readonly PreparedWeather[];

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.herd = HERD_DEFAULT;
    this.winters = [];
  }

  get count(): number {
    return Math.min(this.notebook?.draws.count ?? 0, mostDraws(this.results.length));
  }

  /** Cells as they were last drawn, and those in sight: what is out of sight waits until it is scrolled to. */
  #drawn = new WeakMap<Block, ReturnType<typeof cellShown>>();
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
    const value = isValue(quantity) ? result?.values[quantity] : undefined;
    const unit = unitOf(quantity);
    const shown = show(value, unit, this.reading);
    // What is counted is named by the prose around it: "17 animals", "197 days".
    const text = unit === 'head' || unit === 'd' ? shown.number : shown.text;
    return this.reading.own?.[this.#scenarioOf(scenario)]?.has(quantity) ? `${text}\u00A0•` : text;
  };

  #opened(event: Event): void {
    const button = (event.target as HTMLElement).closest<HTMLElement>('.inline-value');
    const quantity = button?.dataset.quantity;
    const scenario = this.#scenarioOf(button?.dataset.scenario ?? null);
    if (button && quantity && scenario >= 0) ask(button, 'wk-explain', { scenario, quantity });
  }

  /** Headings in the prose stand one rank under the page's own, whose words are not said twice. */
  #prose(text: string): TemplateResult {
    const lowered = proseHtml(text, this.#valueText).replace(
      /<(\/?)h([1-5])>/g,
      (_, slash, rank) => `<${slash}h${Number(rank) + 1}>`,
    );
    const first = /^\s*<h2>([^<]*)<\/h2>/.exec(lowered);
    const told = first && first[1].trim() === this.notebook?.title.trim();
    return html`<div class="prose">${unsafeHTML(told ? lowered.slice(first[0].length) : lowered)}</div>`;
  }

  #block(block: Block) {
    if (block.type === 'prose')
      return guard([block.text, this.notebook?.title, ...block.values.map(this.#valueText)], () =>
        this.#prose(block.text),
      );
    if (block.type === 'broken')
      return html`<div class="cell"><wk-problems .problems=${block.problems}></wk-problems><pre tabindex="0" aria-label="Cell as written, line ${block.line}"><code>${block.text.trimEnd()}</code></pre></div>`;
    const seen = [...this.#inSight].some((cell) => (cell as HTMLElement).dataset.line === String(block.line));
    // The same template again leaves everything below it as it is.
    const cell = seen ? cellShown(block, this) : (this.#drawn.get(block) ?? cellShown(block, this));
    this.#drawn.set(block, cell);
    return cell === nothing ? nothing : html`<div class="cell" data-line=${block.line}>${cell}</div>`;
  }

  protected override render() {
    if (this.results.length === 0) return nothing;
    return html`<div @click=${(event: Event) => this.#opened(event)}>${this.notebook?.blocks.map((block) => this.#block(block))}</div>`;
  }
}

customElements.define('wk-notebook', WkNotebook);

declare global {
  interface HTMLElementTagNameMap {
    'wk-notebook': WkNotebook;
  }
}

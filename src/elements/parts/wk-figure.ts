import { css, html, LitElement, nothing, type PropertyValues, svg } from 'lit';
import type { Figure, FigureTable, LegendEntry } from '../../plots/figure.ts';
import { patternElement } from '../../plots/pattern.ts';
import { symbolMark } from './mark.ts';
import { Readings, sayReadings } from './readings.ts';
import { redraw } from './redraw.ts';
import { shared } from './style.ts';
import './wk-take.ts';

/** Width of the drawing area on A4 and Letter paper inside the page margins, in CSS pixels. */
const PAPER_WIDTH = 640;
let nextId = 0;

/** One figure: its finding, a legend, the drawing, and the table behind it. Redraws at most once a frame, and only when visible. */
export class WkFigure extends LitElement {
  static override properties = {
    figure: { attribute: false },
    heading: {},
    tabled: { state: true },
    full: { state: true },
    said: { state: true },
  };

  static override styles = [
    shared,
    css`
      figure {
        margin: 0;
        break-inside: avoid;
      }
      .finding {
        max-width: 42rem;
        line-height: 1.45;
      }
      ul {
        display: flex;
        flex-wrap: wrap;
        gap: 0.25rem 1.1rem;
        list-style: none;
        margin: 0 0 0.5rem;
        padding: 0;
        font-size: 0.9rem;
      }
      li {
        display: flex;
        align-items: center;
        gap: 0.4rem;
      }
      li > svg {
        flex: none;
        filter: var(--drawn);
      }
      .drawing {
        min-height: 4rem;
        overflow: visible;
      }
      /* Plot's own rules, repeated so that a drawing does not need its inline style sheet. */
      .drawing svg {
        display: block;
        height: auto;
        max-width: 100%;
        overflow: visible;
        filter: var(--drawn);
      }
      .drawing svg text {
        white-space: pre;
      }
      .drawing .read {
        stroke: var(--ink);
        stroke-width: 2.5px;
      }
      .reading {
        min-height: 1.35em;
        margin: 0.15rem 0 0;
        font-size: 0.9rem;
        font-weight: 600;
      }
      figcaption {
        font-size: 0.85rem;
        color: var(--quiet);
        max-width: 42rem;
        margin-top: 0.3rem;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 1.2rem;
        align-items: baseline;
      }
      .full {
        border: 0;
        background: none;
        padding: 0.25rem 0;
        margin-top: 0.2rem;
        font-size: 0.9rem;
        color: var(--quiet);
        cursor: pointer;
        text-decoration: underline;
        text-decoration-color: var(--rule);
      }
      dialog {
        border: 0;
        padding: 1rem 1.5rem;
        width: 100vw;
        max-width: 100vw;
        height: 100dvh;
        max-height: 100dvh;
        background: var(--paper);
        color: var(--ink);
        overflow: auto;
      }
      dialog .top {
        display: flex;
        justify-content: space-between;
        align-items: start;
        gap: 1rem;
      }
      dialog .drawing svg {
        width: 100%;
        max-height: 78dvh;
      }
      details {
        margin-top: 0.4rem;
        font-size: 0.9rem;
      }
      summary {
        cursor: pointer;
        color: var(--quiet);
        width: fit-content;
        padding: 0.25rem 0;
      }
      .scroll {
        position: relative;
        overflow-x: auto;
        max-height: 22rem;
      }
      caption {
        text-align: left;
        padding: 0.2rem 0;
        font-weight: 600;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      @media print {
        .reading,
        details,
        dialog {
          display: none;
        }
        /* A drawing is not broken: one of a page's height would leave most of the page before it empty. */
        .drawing > svg {
          max-height: 150mm;
        }
      }
    `,
  ];

  declare figure: Figure | undefined;
  declare heading: string;
  /** The table is written only once it is opened: most never are. */
  declare tabled: boolean;

  /** Open over the whole window. */
  declare full: boolean;

  /** What the mark under the pointer or the keyboard says. */
  declare said: string;

  #readings = new Readings((text) => {
    this.said = text;
  });
  #width = 0;
  #measured: Element | undefined;
  #seen = false;
  #stale = true;
  #frame = 0;
  #id = `wk-legend-${nextId++}`;
  #size = new ResizeObserver(([entry]) => {
    const width = Math.round(entry.contentRect.width);
    if (width === this.#width || width === 0) return;
    this.#width = width;
    this.#redraw();
  });
  #sight = new IntersectionObserver(
    (entries) => {
      // Several may have come in since the last call; the newest is the last.
      this.#seen = entries[entries.length - 1].isIntersecting;
      if (this.#seen && this.#stale) this.#redraw();
    },
    { rootMargin: '200px' },
  );
  #printing = false;
  #beforePrint = () => {
    this.#printing = true;
    this.#draw(PAPER_WIDTH);
  };
  #afterPrint = () => {
    this.#printing = false;
    this.#redraw();
  };

  constructor() {
    super();
    this.heading = '';
    this.tabled = false;
    this.full = false;
    this.said = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#sight.observe(this);
    this.#observeSize();
    addEventListener('beforeprint', this.#beforePrint);
    addEventListener('afterprint', this.#afterPrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#size.disconnect();
    this.#measured = undefined;
    this.#sight.disconnect();
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    removeEventListener('beforeprint', this.#beforePrint);
    removeEventListener('afterprint', this.#afterPrint);
  }

  protected override firstUpdated(): void {
    this.#observeSize();
  }

  #observeSize(): void {
    const drawing = this.renderRoot?.querySelector('.drawing');
    if (!drawing || drawing === this.#measured) return;
    this.#measured = drawing;
    this.#size.observe(drawing);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('figure')) {
      // The place to draw in comes with the first figure.
      this.#observeSize();
      this.#redraw();
    }
    if (this.full && (changed.has('figure') || changed.has('full'))) this.#drawFull();
  }

  #drawFull(): void {
    const dialog = this.renderRoot.querySelector('dialog');
    if (!dialog) return;
    if (!dialog.open) dialog.showModal();
    // Drawn narrower than the window and then enlarged with its letters, to be read from further away.
    const made = this.figure?.draw?.(Math.max(300, Math.min(dialog.clientWidth - 48, 1000)));
    made?.setAttribute('aria-hidden', 'true');
    dialog.querySelector('.drawing')?.replaceChildren(...(made ? [made] : []));
  }

  #closed(): void {
    this.full = false;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.full')?.focus());
  }

  /** Esc closes a dialog by itself; its end is the same either way. */
  #fullScreen({ finding, legend, caption }: Figure) {
    return html`<dialog aria-label=${this.heading || finding} @close=${() => this.#closed()}>
      <div class="top"><p class="finding">${finding}</p><button type="button" class="plain" @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Close</button></div>
      ${this.#legend(legend)}
      <div class="drawing" role="img" aria-label=${finding}></div>
      ${caption ? html`<p class="quiet">${caption}</p>` : nothing}
    </dialog>`;
  }

  #legend(legend: Figure['legend']) {
    return legend.length === 0
      ? nothing
      : html`<ul aria-label="What the looks mean">${legend.map((entry, k) => html`<li>${this.#swatch(entry, k)} ${entry.label}</li>`)}</ul>`;
  }

  #redraw(): void {
    this.#stale = true;
    if (this.#printing) this.#draw(PAPER_WIDTH);
    if (!this.#seen || this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.#draw(this.#width);
    });
  }

  #draw(width: number): void {
    const drawing = this.renderRoot.querySelector<HTMLElement>('.drawing');
    if (!drawing || width === 0) return;
    const made = this.figure?.draw?.(width);
    made?.setAttribute('aria-hidden', 'true');
    if (made) sayReadings(made);
    redraw(drawing, made);
    this.#readings.take(drawing);
    if (this.#readings.count > 0) drawing.tabIndex = 0;
    else drawing.removeAttribute('tabindex');
    this.#stale = false;
  }

  #swatch(entry: LegendEntry, index: number) {
    if (entry.symbol) return html`<span aria-hidden="true">${symbolMark(entry.symbol, entry.fill)}</span>`;
    const id = `${this.#id}-${index}`;
    return svg`<svg width="26" height="16" aria-hidden="true"><defs>${patternElement(id, entry.pattern ?? 'solid', entry.fill)}</defs><rect width="26" height="16" fill="url(#${id})"></rect></svg>`;
  }

  protected override render() {
    const { figure, heading } = this;
    if (!figure) return nothing;
    const { finding, legend, caption, table } = figure;
    return html`<figure>
      ${heading === '' ? nothing : html`<h3>${heading}</h3>`}
      <p class="finding">${finding}</p>
      ${this.#legend(legend)}
      <div
        class="drawing"
        role="img"
        aria-label=${finding}
        @pointermove=${this.#readings.pointed}
        @pointerdown=${this.#readings.pointed}
        @pointerleave=${this.#readings.left}
        @keydown=${this.#readings.keyed}
        @focus=${this.#readings.focused}
        @blur=${this.#readings.left}
      ></div>
      ${figure.draw ? html`<p class="reading" role="status">${this.said}</p>` : nothing}
      ${caption ? html`<figcaption>${caption}</figcaption>` : nothing}
      <div class="acts screen">${
        figure.draw
          ? html`<button type="button" class="full" @click=${() => {
              this.full = true;
            }}>Full screen</button>`
          : nothing
      }<wk-take .figure=${figure} .heading=${heading}></wk-take></div>
      ${this.full ? this.#fullScreen(figure) : nothing}
      ${
        table.rows.length === 0
          ? nothing
          : html`<details @toggle=${(event: Event) => {
              this.tabled = (event.currentTarget as HTMLDetailsElement).open;
            }}>
              <summary>The numbers as a table</summary>
              ${this.tabled ? this.#table(table) : nothing}
            </details>`
      }
    </figure>`;
  }

  #table(table: FigureTable) {
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${table.caption}>
                <table>
                  <caption>${table.caption}</caption>
                  <thead><tr>${table.head.map((cell, k) => (k === 0 && cell === '' ? html`<td></td>` : html`<th scope="col" class=${k === 0 ? '' : 'n'}>${cell}</th>`))}</tr></thead>
                  <tbody>${table.rows.map((row) => html`<tr>${row.map((cell, k) => (k === 0 ? html`<th scope="row">${cell}</th>` : html`<td class="n">${cell}</td>`))}</tr>`)}</tbody>
                </table>
              </div>`;
  }
}

customElements.define('wk-figure', WkFigure);

declare global {
  interface HTMLElementTagNameMap {
    'wk-figure': WkFigure;
  }
}

import { css, html, LitElement } from 'lit';
import { ask } from '../parts/events.ts';
import { shared } from '../parts/style.ts';
import type { ContentsEntry } from './contents.ts';

/** What is read is what stands this far down the window, under the strip of inputs. */
const READ_AT = 0.3;

/**
 * The contents at the side, with the place that is being read marked.
 *
 * @fires wk-go - a line was chosen
 */
export class WkContents extends LitElement {
  static override properties = {
    entries: { attribute: false },
    find: { attribute: false },
    here: { state: true },
  };

  static override styles = [
    shared,
    css`
      ol {
        list-style: none;
        margin: 0.6rem 0 1rem;
        padding: 0;
        font-size: 0.86rem;
        line-height: 1.25;
      }
      button {
        appearance: none;
        border: 0;
        border-left: 3px solid transparent;
        background: none;
        width: 100%;
        text-align: left;
        padding: 0.28rem 0.5rem;
        cursor: pointer;
      }
      .under button {
        padding-left: 1.3rem;
        color: var(--quiet);
      }
      button:hover {
        background: var(--ground);
      }
      button[aria-current='location'] {
        border-left-color: var(--ink);
        color: var(--ink);
        font-weight: 600;
        background: var(--ground);
      }
      :focus-visible {
        outline-offset: -3px;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare entries: readonly ContentsEntry[];
  /** The place a line leads to. */
  declare find: ((to: string) => Element | null | undefined) | undefined;
  declare here: string;

  #frame = 0;

  constructor() {
    super();
    this.entries = [];
    this.here = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('scroll', this.#scrolled, { passive: true });
    addEventListener('resize', this.#scrolled, { passive: true });
    this.#scrolled();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('scroll', this.#scrolled);
    removeEventListener('resize', this.#scrolled);
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  #scrolled = () => {
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      // Where it is not shown there is nothing to mark.
      if (this.offsetParent === null && this.getClientRects().length === 0) return;
      const line = innerHeight * READ_AT;
      const passed = this.entries.filter(({ to }) => {
        const box = this.find?.(to)?.getBoundingClientRect();
        return box !== undefined && box.top <= line;
      });
      const atEnd = scrollY + innerHeight >= document.documentElement.scrollHeight - 2;
      this.here = (atEnd ? this.entries.at(-1)?.to : passed.at(-1)?.to) ?? this.entries[0]?.to ?? '';
    });
  };

  /** The line that is marked stays in sight of a long list; the page itself does not move for it. */
  protected override updated(): void {
    const marked = this.renderRoot.querySelector<HTMLElement>('[aria-current=location]');
    if (!marked) return;
    const [box, own] = [marked.getBoundingClientRect(), this.getBoundingClientRect()];
    if (box.top < own.top) this.scrollTop -= own.top - box.top + 20;
    else if (box.bottom > own.bottom) this.scrollTop += box.bottom - own.bottom + 20;
  }

  protected override render() {
    return html`<nav aria-label="Contents">
      <ol>${this.entries.map(
        ({ to, words, rank }) =>
          html`<li class=${rank === 2 ? 'under' : ''}><button type="button" aria-current=${to === this.here ? 'location' : 'false'} @click=${() => ask(this, 'wk-go', { to })}>${words}</button></li>`,
      )}</ol>
    </nav>`;
  }
}

customElements.define('wk-contents', WkContents);

declare global {
  interface HTMLElementTagNameMap {
    'wk-contents': WkContents;
  }
}

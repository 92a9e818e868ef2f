import { css, html, LitElement, nothing } from 'lit';
import type { OpenNotebook } from '../../store/opening.ts';
import { shared } from '../parts/style.ts';
import type { WkNotebook } from './wk-notebook.ts';

/** Nothing asked for this long: a cell asks once it is drawn, and one answer may lead to the next question. */
const STILL_MS = 300;
const LOOK_MS = 60;
/** A page that cannot work anything out, for want of a worker or of a text that reads, is printed as it is. */
const NOTHING_MS = 3000;

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** What is still to come before the page can be printed. */
interface Waiting {
  readonly missing: number;
  /** Share of what was asked that is answered, 0 to 1. */
  readonly done: number;
}

/** Brings every cell to its answer, then prints; says how far it is, and can be stopped. */
export class WkPrint extends LitElement {
  static override properties = { open: { attribute: false }, waiting: { state: true } };

  static override styles = [
    shared,
    css`
      .bar {
        position: fixed;
        inset: auto 0 0 0;
        z-index: 9;
        margin: 0 auto;
        max-width: 46rem;
        padding: 0.8rem 1rem calc(0.8rem + env(safe-area-inset-bottom));
        background: var(--paper);
        border: 1px solid var(--quiet);
        border-bottom: 0;
        border-radius: 6px 6px 0 0;
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem 1rem;
        align-items: center;
      }
      .bar p {
        margin: 0;
        flex: 1 1 16rem;
      }
      progress {
        accent-color: var(--ink);
        flex: 1 1 8rem;
        height: 0.6rem;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare open: OpenNotebook | undefined;
  declare waiting: Waiting | undefined;

  /** Rises with each printing and each stop: an older one finds itself out of date. */
  #turn = 0;

  /** `notebook` is what holds the cells; without one the page is printed as it is. */
  async begin(notebook: WkNotebook | undefined): Promise<void> {
    this.#stop();
    const mine = this.#turn;
    this.#notebook = notebook;
    if (notebook) {
      notebook.whole = true;
      if (!(await this.#answered(() => mine === this.#turn))) return;
      this.waiting = undefined;
      await this.updateComplete;
    }
    print();
    if (mine === this.#turn) this.#stop();
  }
  #notebook: WkNotebook | undefined;

  /** True once every question is answered or the reader will have it as it stands; false when stopped. */
  async #answered(mine: () => boolean): Promise<boolean> {
    let [most, quiet, none] = [1, 0, 0];
    this.#asItStands = false;
    while (mine() && !this.#asItStands) {
      const missing = this.#missing();
      most = Math.max(most, missing);
      quiet = missing === 0 ? quiet + LOOK_MS : 0;
      none = missing > 0 && (this.open?.explorer?.waiting.value ?? 0) === 0 ? none + LOOK_MS : 0;
      if (quiet > STILL_MS || none > NOTHING_MS) return true;
      const partly = (this.open?.explorer?.progress.value ?? []).reduce((sum, { done }) => sum + done, 0);
      this.waiting = { missing, done: Math.min(1, Math.max(0, (most - missing + partly) / most)) };
      await pause(LOOK_MS);
    }
    return mine();
  }
  #asItStands = false;

  /** Cells ask once the first ranges are there, so until then something is missing. */
  #missing(): number {
    const { open } = this;
    if (!open?.explorer) return 0;
    return open.explorer.waiting.value + (open.draws.value ? 0 : 1);
  }

  #stop(): void {
    this.#turn++;
    this.waiting = undefined;
    if (this.#notebook) this.#notebook.whole = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop();
  }

  protected override render() {
    const { waiting } = this;
    return html`<div role="status">${
      waiting === undefined
        ? nothing
        : html`<div class="bar">
            <p>${waiting.missing === 0 ? 'Putting the figures in their places before printing …' : `Before printing: ${waiting.missing === 1 ? 'one answer is' : `${waiting.missing} answers are`} still being worked out.`}</p>
            <progress max="1" .value=${waiting.done} aria-label="Ready to print"></progress>
            <button type="button" class="plain" @click=${() => {
              this.#asItStands = true;
            }}>Print without them</button>
            <button type="button" class="plain" @click=${() => this.#stop()}>Do not print</button>
          </div>`
    }</div>`;
  }
}

customElements.define('wk-print', WkPrint);

declare global {
  interface HTMLElementTagNameMap {
    'wk-print': WkPrint;
  }
}

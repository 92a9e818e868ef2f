import { css, html, LitElement, nothing } from 'lit';
import { ask } from './events.ts';
import { shared } from './style.ts';

/** What can be done with the open notebook; `null` words leave an act out. */
export interface BarState {
  readonly undo: string | null;
  readonly redo: string | null;
  readonly system: 'metric' | 'us';
  readonly editing: boolean;
  readonly saved: string;
  readonly notice: string;
  /** The notice is about a text that is kept nowhere: it offers the file. */
  readonly offer?: boolean;
}

export type BarAct = 'undo' | 'redo' | 'edit' | 'days' | 'save' | 'link' | 'print' | 'units';

/**
 * The line above a notebook.
 *
 * @fires wk-act - with the act the reader chose
 */
export class WkBar extends LitElement {
  static override properties = { state: { attribute: false } };

  static override styles = [
    shared,
    css`
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1rem 1.1rem;
        align-items: center;
        max-width: var(--measure);
        margin: 0 auto;
        padding: 0.35rem 1rem;
        font-size: 0.92rem;
      }
      a {
        color: var(--ink);
        font-weight: 700;
        text-decoration: none;
        padding: 0.35rem 0;
      }
      .acts {
        display: flex;
        gap: 0.1rem 1rem;
        flex-wrap: wrap;
        margin-left: auto;
      }
      button {
        border: 0;
        background: none;
        padding: 0.35rem 0;
        min-height: 2.1rem;
        cursor: pointer;
        text-decoration: underline;
        text-decoration-color: var(--rule);
        text-underline-offset: 0.2em;
      }
      button:hover {
        text-decoration-color: currentColor;
      }
      button:disabled {
        color: var(--quiet);
        cursor: default;
        text-decoration: none;
      }
      /* The first stop of the keyboard: past bar and strip to the answer. */
      .skip {
        position: absolute;
        left: 0.5rem;
        top: -6rem;
        z-index: 10;
        background: var(--paper);
        padding: 0.5rem 1rem;
      }
      .skip:focus {
        top: 0.3rem;
      }
      .notice {
        max-width: var(--measure);
        margin: 0 auto;
        padding: 0.5rem 1rem;
        background: var(--ground);
      }
      @media screen and (max-width: 700px) {
        nav,
        .acts {
          flex-wrap: nowrap;
          white-space: nowrap;
        }
        nav {
          overflow-x: auto;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare state: BarState | undefined;

  #act(act: BarAct): void {
    this.dispatchEvent(new CustomEvent('wk-act', { detail: act, bubbles: true, composed: true }));
  }

  /** A button, since the address after # says which notebook is open. */
  #skip(): void {
    const page = (this.getRootNode() as ParentNode).querySelector('wk-page');
    if (page) ask(page, 'wk-go', { to: 'verdict' });
  }

  #button(act: BarAct, words: string, title: string | null = words) {
    return html`<button type="button" ?disabled=${title === null} title=${title ?? ''} @click=${() => this.#act(act)}>${words}</button>`;
  }

  protected override render() {
    const { state } = this;
    return html`<nav aria-label="Notebook">
        ${state ? html`<button type="button" class="skip" @click=${() => this.#skip()}>Skip to the answer</button>` : nothing}
        <a href="#">winterkeep</a>
        ${
          state
            ? html`<span class="quiet" aria-live="polite">${state.saved}</span>
              <span class="acts">
                ${this.#button('undo', 'Undo', state.undo)} ${this.#button('redo', 'Redo', state.redo)}
                ${this.#button('edit', state.editing ? 'Close the text' : 'Edit the text')} ${this.#button('days', 'Earlier days')}
                ${this.#button('save', 'Save as file')} ${this.#button('link', 'Copy a link')} ${this.#button('print', 'Print')}
                ${this.#button('units', state.system === 'us' ? 'Metric units' : 'US units')}
              </span>`
            : nothing
        }
      </nav>
      ${state && state.notice !== '' ? html`<p class="notice" role="status">${state.notice} ${state.offer ? this.#button('save', 'Save as file') : nothing}</p>` : nothing}`;
  }
}

customElements.define('wk-bar', WkBar);

declare global {
  interface HTMLElementTagNameMap {
    'wk-bar': WkBar;
  }
}

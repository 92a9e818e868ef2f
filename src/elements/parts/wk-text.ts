import { css, html, LitElement } from 'lit';
import { live } from 'lit/directives/live.js';
import { shared } from './style.ts';

/**
 * The notebook's text beside the page it makes.
 *
 * @fires wk-text - with the whole text, as it is typed
 */
export class WkText extends LitElement {
  static override properties = { text: {} };

  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-direction: column;
        background: var(--paper);
      }
      label {
        padding: 0.4rem 0.8rem;
        color: var(--quiet);
        font-size: 0.9rem;
      }
      textarea {
        flex: 1;
        width: 100%;
        border: 0;
        border-top: 1px solid var(--rule);
        background: var(--paper);
        font-family: ui-monospace, "Cascadia Mono", "DejaVu Sans Mono", monospace;
        font-size: 0.9rem;
        line-height: 1.5;
        padding: 0.8rem;
        resize: none;
        min-height: 60vh;
        tab-size: 2;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare text: string;

  constructor() {
    super();
    this.text = '';
  }

  protected override render() {
    return html`<label for="text">The notebook as plain text: the farm and the scenarios between the dashes, your own words below.</label>
      <textarea
        id="text"
        spellcheck="false"
        autocapitalize="off"
        .value=${live(this.text)}
        @input=${(event: Event) => this.dispatchEvent(new CustomEvent('wk-text', { detail: (event.target as HTMLTextAreaElement).value }))}
      ></textarea>`;
  }
}

customElements.define('wk-text', WkText);

declare global {
  interface HTMLElementTagNameMap {
    'wk-text': WkText;
  }
}

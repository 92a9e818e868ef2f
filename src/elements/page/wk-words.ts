import { css, html, LitElement, nothing } from 'lit';
import { addProse, setProse } from '../../notebook/bodyEdits.ts';
import type { Problem } from '../../units/problem.ts';
import { ask } from '../parts/events.ts';
import { saidProblem } from '../parts/saidProblem.ts';
import { shared } from '../parts/style.ts';

/**
 * A paragraph of the notebook while it is written, where it stands.
 *
 * @fires wk-edit - the words as they are to stand
 * @fires wk-closed - writing is over, with words set or left
 */
export class WkWords extends LitElement {
  static override properties = {
    text: {},
    place: { type: Number },
    adding: { type: Boolean },
    refused: { state: true },
  };

  static override styles = [
    shared,
    css`
      :host {
        max-width: 42rem;
        margin: 0.4rem 0 1rem;
      }
      textarea {
        display: block;
        width: 100%;
        min-height: 4.5rem;
        field-sizing: content;
        max-height: 70vh;
        resize: vertical;
        padding: 0.6rem 0.7rem;
        font-size: 1.05rem;
        line-height: 1.5;
      }
      label {
        font-size: 0.85rem;
        color: var(--quiet);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        margin-top: 0.5rem;
      }
      .refused {
        border-left: 6px solid var(--alarm);
        padding-left: 0.8rem;
        margin: 0.5rem 0;
      }
    `,
  ];

  declare text: string;
  /** Which part it is, or behind which it goes. */
  declare place: number;
  declare adding: boolean;
  declare refused: Problem | undefined;

  constructor() {
    super();
    this.text = '';
    this.place = 0;
    this.adding = false;
  }

  get #field(): HTMLTextAreaElement | null {
    return this.renderRoot.querySelector('textarea');
  }

  protected override firstUpdated(): void {
    const field = this.#field;
    if (!field) return;
    // Where the browser does not grow the field with its words.
    field.rows = Math.min(24, Math.max(2, this.text.split('\n').length + Math.ceil(this.text.length / 90)));
    field.focus();
    field.setSelectionRange(this.text.length, this.text.length);
  }

  #done(): void {
    const words = this.#field?.value ?? this.text;
    const { place, adding } = this;
    ask(this, 'wk-edit', {
      make: (at) => (adding ? addProse(at, place, words) : setProse(at, place, words, this.text)),
      done: (edited) => {
        this.refused = 'refused' in edited ? edited.refused : undefined;
        if (!this.refused) this.#close();
      },
    });
  }

  #close(): void {
    this.dispatchEvent(new CustomEvent('wk-closed', { bubbles: true, composed: true }));
  }

  #key(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.#close();
    else if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) this.#done();
    else return;
    event.preventDefault();
  }

  protected override render() {
    const { refused, adding } = this;
    return html`<label for="words">${adding ? 'New words' : 'Your words'}: an empty line begins another paragraph, ## a heading, - a list, **bold**</label>
      <textarea id="words" class="field" spellcheck="true" .value=${this.text} @keydown=${(event: KeyboardEvent) => this.#key(event)}></textarea>
      ${refused ? html`<p class="refused" role="alert">${saidProblem(refused)}</p>` : nothing}
      <div class="acts">
        <button type="button" class="plain" @click=${() => this.#done()}>Done</button>
        <button type="button" class="plain" @click=${() => this.#close()}>Leave as it was</button>
      </div>`;
  }
}

customElements.define('wk-words', WkWords);

declare global {
  interface HTMLElementTagNameMap {
    'wk-words': WkWords;
  }
}

import { css, html, LitElement } from 'lit';
import { addCell } from '../../notebook/bodyEdits.ts';
import type { CellKind } from '../../notebook/cells.ts';
import { CELL_WORDS } from '../../notebook/cellWords.ts';
import type { Problem } from '../../units/problem.ts';
import { ask } from '../parts/events.ts';
import { saidProblem } from '../parts/saidProblem.ts';
import { shared } from '../parts/style.ts';

/** In the order of the table of words. */
const OFFERED = Object.keys(CELL_WORDS) as readonly CellKind[];

/**
 * What can be put into the notebook here, each with the question it answers.
 *
 * @fires wk-edit - a cell goes in
 * @fires wk-added - with the kind that went in, or words to be written
 * @fires wk-closed - nothing is wanted
 */
export class WkAdd extends LitElement {
  static override properties = { behind: { type: Number }, refused: { state: true } };

  static override styles = [
    shared,
    css`
      :host {
        background: var(--ground);
        padding: 0.7rem 0.9rem;
        margin: 0.6rem 0 1.2rem;
      }
      ul {
        list-style: none;
        padding: 0;
        margin: 0.3rem 0 0.6rem;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(17rem, 1fr));
        gap: 0 1.2rem;
      }
      li button {
        display: block;
        width: 100%;
        height: 100%;
        text-align: left;
        border: 0;
        border-bottom: 1px solid var(--rule);
        background: none;
        padding: 0.45rem 0.1rem;
        min-height: 3rem;
        cursor: pointer;
        line-height: 1.25;
      }
      li button:hover {
        background: var(--paper);
      }
      strong {
        display: block;
      }
      small {
        font-size: 0.88rem;
        color: var(--quiet);
      }
    `,
  ];

  /** The part it goes behind. */
  declare behind: number;
  declare refused: Problem | undefined;

  constructor() {
    super();
    this.behind = -1;
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus();
  }

  #add(kind: CellKind): void {
    ask(this, 'wk-edit', {
      make: (at) => addCell(at, this.behind, kind, CELL_WORDS[kind].start),
      done: (edited) => {
        this.refused = 'refused' in edited ? edited.refused : undefined;
        if (!this.refused) this.#say('wk-added', kind);
      },
    });
  }

  #say(name: 'wk-added' | 'wk-closed', detail?: CellKind | 'words'): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  protected override render() {
    return html`<h3 tabindex="-1">What do you want to put here?</h3>
      ${this.refused ? html`<p role="alert">${saidProblem(this.refused)}</p>` : ''}
      <ul>
        <li><button type="button" @click=${() => this.#say('wk-added', 'words')}><strong>Your own words</strong><small>What do I want to say or remember?</small></button></li>
        ${OFFERED.map((kind) => {
          const { name, answers } = CELL_WORDS[kind];
          return html`<li><button type="button" @click=${() => this.#add(kind)}><strong>${name}</strong><small>${answers}</small></button></li>`;
        })}
      </ul>
      <button type="button" class="plain" @click=${() => this.#say('wk-closed')}>Nothing</button>`;
  }
}

customElements.define('wk-add', WkAdd);

declare global {
  interface HTMLElementTagNameMap {
    'wk-add': WkAdd;
  }
}

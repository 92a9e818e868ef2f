import { css, html, LitElement, nothing } from 'lit';
import type { Problem } from '../../units/problem.ts';
import { ask } from './events.ts';
import { linkButton, shared } from './style.ts';

/**
 * What is wrong with the notebook: where, what was found, what is allowed, what to do.
 *
 * @fires wk-line - the text is wanted where it is at fault
 */
export class WkProblems extends LitElement {
  static override properties = { problems: { attribute: false }, heading: {} };

  static override styles = [
    shared,
    linkButton,
    css`
      section {
        border-left: 6px solid var(--alarm);
        padding: 0.5rem 0 0.2rem 1rem;
        margin: 0 0 1rem;
        max-width: 46rem;
      }
      li {
        margin-bottom: 0.6rem;
      }
      ol {
        padding-left: 1.4rem;
        margin: 0;
      }
      small {
        display: block;
        font-size: 0.9rem;
        color: var(--quiet);
      }
      code {
        font-family: ui-monospace, monospace;
        font-size: 0.92em;
        overflow-wrap: anywhere;
      }
    `,
  ];

  declare problems: readonly Problem[];
  /** Set where the problems are not those of one open text: each then names its file. */
  declare heading: string;

  constructor() {
    super();
    this.problems = [];
    this.heading = '';
  }

  protected override render() {
    if (this.problems.length === 0) return nothing;
    return html`<section role="alert">
      <h2>${this.heading || `${this.problems.length === 1 ? 'One thing has' : `${this.problems.length} things have`} to be mended`}</h2>
      <ol>
        ${this.problems.map(
          ({ what, file, line, key, found, allowed, todo }) => html`<li>
            ${this.heading === '' ? nothing : html`<code>${file}</code>: `}${line === undefined ? nothing : this.heading === '' ? html`<button type="button" class="link" @click=${() => ask(this, 'wk-line', { line })}>Line ${line}</button>: ` : html`Line ${line}: `}${what}${key ? html` (<code>${key}</code>)` : nothing}
            <small>
              ${found === undefined ? nothing : html`Found <code>${found}</code>. `}${allowed === undefined ? nothing : html`Allowed: ${allowed}. `}${todo ?? nothing}
            </small>
          </li>`,
        )}
      </ol>
      ${this.heading === '' ? html`<p class="quiet">The figures below, if any, are from the last text that could be read.</p>` : nothing}
    </section>`;
  }
}

customElements.define('wk-problems', WkProblems);

declare global {
  interface HTMLElementTagNameMap {
    'wk-problems': WkProblems;
  }
}

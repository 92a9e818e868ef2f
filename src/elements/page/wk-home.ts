import { css, html, LitElement, nothing } from 'lit';
import type { Problem } from '../../units/problem.ts';
import { entries, shared } from '../parts/style.ts';
import '../parts/wk-problems.ts';
import type { KeptEntry } from './wk-kept.ts';
import './wk-kept.ts';

export interface HomeEntry {
  readonly href: string;
  readonly title: string;
  readonly note: string;
}

/**
 * Where a reader starts: a worked example near their own farm, a notebook kept here before, or a file.
 *
 * @fires wk-file - with the File chosen or dropped
 */
export class WkHome extends LitElement {
  static override properties = {
    begin: { attribute: false },
    examples: { attribute: false },
    kept: { attribute: false },
    said: {},
    undoable: { type: Boolean },
    problems: { attribute: false },
  };

  static override styles = [
    shared,
    entries,
    css`
      main {
        max-width: 42rem;
        margin: 0 auto;
        padding: 1rem 1rem 4rem;
        font-size: 1.1rem;
        line-height: 1.6;
      }
      h1 {
        font-size: 1.9rem;
        line-height: 1.15;
        margin: 1rem 0 0.6rem;
      }
      h2 {
        margin-top: 2rem;
      }
      ul {
        list-style: none;
        padding: 0;
        margin: 0;
      }
      li {
        border-top: 1px solid var(--rule);
      }
      li a {
        padding: 0.6rem 0;
        min-height: 2.8rem;
      }
      .file {
        display: block;
        border: 1px dashed var(--quiet);
        padding: 1rem;
        cursor: pointer;
      }
      .file input {
        display: block;
        margin-top: 0.5rem;
        max-width: 100%;
      }
      .begin {
        display: inline-block;
        margin: 0.4rem 0 0.2rem;
        padding: 0.7rem 1.4rem;
        border-radius: 4px;
        background: var(--action);
        color: var(--on-action);
        font-weight: 600;
        text-decoration: none;
      }
      .begin:hover {
        background: var(--action-pressed);
      }
      @media print {
        .begin,
        .file {
          display: none;
        }
      }
    `,
  ];

  /** Address at which one starts with one's own farm. */
  declare begin: string;
  declare examples: readonly HomeEntry[];
  declare kept: readonly KeptEntry[];
  /** What was done last with a kept notebook, and whether it can be undone. */
  declare said: string;
  declare undoable: boolean;
  declare problems: readonly Problem[];

  constructor() {
    super();
    this.begin = '';
    this.examples = [];
    this.kept = [];
    this.said = '';
    this.undoable = false;
    this.problems = [];
  }

  #file(files: FileList | null | undefined): void {
    const file = files?.[0];
    if (file) this.dispatchEvent(new CustomEvent('wk-file', { detail: file, bubbles: true, composed: true }));
  }

  #list(entries: readonly HomeEntry[]) {
    return html`<ul>${entries.map(({ href, title, note }) => html`<li><a href=${href}><span class="title">${title}</span>${note === '' ? nothing : html`<small>${note}</small>`}</a></li>`)}</ul>`;
  }

  protected override render() {
    return html`<main>
      <h1>How will the herd winter?</h1>
      <p>
        Out on pasture, on slats over slurry, or on a deep bed that becomes compost: what each keeps of the herd's nutrients, what it takes in hours and money,
        and how sure that is, for your herd, ground, weather and prices. Everything is worked out on this machine; nothing is sent anywhere.
      </p>
      ${
        this.begin === ''
          ? nothing
          : html`<a class="begin" href=${this.begin}>Start with my farm</a>
              <p class="quiet">Six short steps; a few minutes on a phone. What you do not know can stay empty.</p>`
      }
      <wk-problems heading="Please note" .problems=${this.problems}></wk-problems>
      <h2 ?hidden=${this.kept.length === 0}>Your notebooks</h2>
      <wk-kept .entries=${this.kept} .said=${this.said} .undoable=${this.undoable}></wk-kept>
      <h2>Or look at a worked example</h2>
      <p class="quiet">The farms are invented. Take the one nearest yours and change it; your changes are kept in this browser.</p>
      ${this.#list(this.examples)}
      <h2>Open a file</h2>
      <label class="file">A notebook is a plain text file that ends in .md. Choose one, or drop it anywhere on this page.
        <input type="file" accept=".md,text/markdown,text/plain" @change=${(event: Event) => this.#file((event.target as HTMLInputElement).files)} />
      </label>
    </main>`;
  }
}

customElements.define('wk-home', WkHome);

declare global {
  interface HTMLElementTagNameMap {
    'wk-home': WkHome;
  }
}

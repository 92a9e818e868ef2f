import { css, html, LitElement, nothing } from 'lit';
import { entries, shared } from '../parts/style.ts';

export interface KeptEntry {
  readonly id: string;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  /** Where its earlier days are shown; absent where none is kept. */
  readonly days?: string;
}

export type KeptAct =
  | { readonly act: 'rename'; readonly id: string; readonly title: string }
  | { readonly act: 'copy'; readonly id: string }
  | { readonly act: 'delete'; readonly id: string };

/**
 * The notebooks kept in this browser, and what can be done with them.
 *
 * @fires wk-kept - with the act chosen for one of them
 * @fires wk-kept-undo - what was deleted last is wanted back
 * @fires wk-export - all of them are wanted in one file
 * @fires wk-import - with the files to take onto the list
 */
export class WkKept extends LitElement {
  static override properties = {
    entries: { attribute: false },
    said: {},
    undoable: { type: Boolean },
    renaming: { state: true },
  };

  static override styles = [
    shared,
    entries,
    css`
      ul {
        list-style: none;
        padding: 0;
        margin: 0;
      }
      li {
        border-top: 1px solid var(--rule);
        padding: 0.5rem 0 0.3rem;
      }
      .acts,
      .all {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1rem 1.2rem;
        align-items: center;
        font-size: 0.92rem;
      }
      .all {
        border-top: 1px solid var(--rule);
        padding-top: 0.3rem;
      }
      button,
      .acts a.days,
      .import span {
        font: inherit;
        color: inherit;
        border: 0;
        background: none;
        padding: 0.35rem 0;
        min-height: 2.4rem;
        cursor: pointer;
        text-decoration: underline;
        text-decoration-color: var(--rule);
        text-underline-offset: 0.2em;
      }
      .acts a.days,
      .import span {
        display: inline-flex;
        align-items: center;
        box-sizing: border-box;
      }
      button:hover,
      .acts a.days:hover,
      .import:hover span {
        text-decoration-color: currentColor;
      }
      .import {
        position: relative;
      }
      .import input {
        position: absolute;
        inset: 0;
        opacity: 0;
        cursor: pointer;
        width: 100%;
      }
      .import:focus-within span {
        outline: 2px solid currentColor;
        outline-offset: 2px;
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 1rem;
        align-items: center;
        padding: 0.3rem 0;
      }
      form input {
        font: inherit;
        flex: 1 1 14rem;
        min-height: 2.4rem;
        padding: 0 0.5rem;
        border: 1px solid var(--quiet);
        background: var(--paper);
        color: inherit;
      }
      .said {
        margin: 0.4rem 0;
        padding: 0.3rem 0.6rem;
        background: var(--ground);
      }
      @media print {
        .acts,
        .all {
          display: none;
        }
      }
    `,
  ];

  declare entries: readonly KeptEntry[];
  /** What was done last. */
  declare said: string;
  declare undoable: boolean;
  declare renaming: string | undefined;

  constructor() {
    super();
    this.entries = [];
    this.said = '';
    this.undoable = false;
  }

  #ask(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #act(act: KeptAct): void {
    this.#ask('wk-kept', act);
  }

  async #rename(id: string | undefined, focus = id): Promise<void> {
    this.renaming = id;
    await this.updateComplete;
    const row = this.renderRoot.querySelector(`li[data-id="${CSS.escape(focus ?? '')}"]`);
    const field = row?.querySelector('input');
    if (field) field.select();
    else row?.querySelector('button')?.focus();
  }

  #renamed(event: SubmitEvent, { id, title: before }: KeptEntry): void {
    event.preventDefault();
    const title = String(new FormData(event.target as HTMLFormElement).get('title') ?? '').trim();
    void this.#rename(undefined, id);
    if (title !== '' && title !== before) this.#act({ act: 'rename', id, title });
  }

  #row(entry: KeptEntry) {
    const { id, href, title, note, days } = entry;
    if (this.renaming === id)
      return html`<li data-id=${id}>
        <form @submit=${(event: SubmitEvent) => this.#renamed(event, entry)} @keydown=${(
          event: KeyboardEvent,
        ) => {
          if (event.key === 'Escape') void this.#rename(undefined, id);
        }}>
          <input name="title" .value=${title} aria-label=${`New title of ${title}`} maxlength="200" autocomplete="off" />
          <button type="submit">Rename</button>
          <button type="button" @click=${() => this.#rename(undefined, id)}>Leave it</button>
        </form>
      </li>`;
    return html`<li data-id=${id}>
      <a href=${href}><span class="title">${title}</span><small>${note}</small></a>
      <span class="acts">
        ${days === undefined ? nothing : html`<a class="days" href=${days} aria-label=${`Earlier days of ${title}`}>Earlier days</a>`}
        <button type="button" aria-label=${`Rename ${title}`} @click=${() => this.#rename(id)}>Rename</button>
        <button type="button" aria-label=${`Copy ${title}`} @click=${() => this.#act({ act: 'copy', id })}>Copy</button>
        <button type="button" aria-label=${`Delete ${title}`} @click=${() => this.#act({ act: 'delete', id })}>Delete</button>
      </span>
    </li>`;
  }

  protected override render() {
    const { entries, said } = this;
    return html`<div role="status">${
      said === ''
        ? nothing
        : html`<p class="said">${said} ${this.undoable ? html`<button type="button" @click=${() => this.#ask('wk-kept-undo')}>Undo</button>` : nothing}</p>`
    }</div>
      <ul>${entries.map((entry) => this.#row(entry))}</ul>
      <p class="all">
        ${entries.length > 0 ? html`<button type="button" @click=${() => this.#ask('wk-export')}>Save all as one file</button>` : nothing}
        <label class="import"><span>Take in saved notebooks</span><input type="file" multiple accept=".md,.zip,text/markdown,text/plain,application/zip" @change=${(
          event: Event,
        ) => {
          const field = event.target as HTMLInputElement;
          const files = [...(field.files ?? [])];
          field.value = '';
          if (files.length > 0) this.#ask('wk-import', files);
        }} /></label>
      </p>`;
  }
}

customElements.define('wk-kept', WkKept);

declare global {
  interface HTMLElementTagNameMap {
    'wk-kept': WkKept;
  }
}

import { html, LitElement, nothing } from 'lit';
import { momentAfter, putNote, takeOutNote } from '../../notebook/noteEdits.ts';
import type { Thread } from '../../notebook/notePlaces.ts';
import { MOST_NAME, MOST_NOTE_LETTERS, type Note, type NoteTarget } from '../../notebook/noteSchema.ts';
import { randomId } from '../../store/shelf.ts';
import type { Problem } from '../../units/problem.ts';
import { ask } from './events.ts';
import { notesStyle } from './notesStyle.ts';
import { keepReaderName, readerName } from './readerName.ts';
import { saidProblem } from './saidProblem.ts';
import { linkButton, shared } from './style.ts';

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' });

/** What is being written: a note on what this element stands beside, an answer, or other words for a note. */
type Writing = { readonly act: 'new' } | { readonly act: 'answer' | 'change'; readonly note: Note };

/**
 * Notes on one place of the notebook with their answers, and the form a note is written in.
 *
 * @fires wk-edit - a note was put, changed, answered or taken out
 * @fires wk-closed - the new note is put, or left
 */
export class WkNotes extends LitElement {
  static override properties = {
    threads: { attribute: false },
    on: { attribute: false },
    adding: { type: Boolean },
    place: { attribute: false },
    called: {},
    writing: { state: true },
    refused: { state: true },
  };

  static override styles = [shared, linkButton, notesStyle];

  declare threads: readonly Thread[];
  /** What a new note stands on. */
  declare on: NoteTarget | undefined;
  /** The form of a new note is open from the start. */
  declare adding: boolean;
  /** Says what a note stands on, where notes of several places stand together. */
  declare place: ((note: Note) => unknown) | undefined;
  /** What a new note would stand on, in words. */
  declare called: string;
  declare writing: Writing | undefined;
  declare refused: Problem | undefined;

  constructor() {
    super();
    this.threads = [];
    this.adding = false;
    this.called = 'this';
  }

  protected override willUpdate(): void {
    if (!this.hasUpdated && this.adding) this.#open({ act: 'new' });
  }

  #open(writing: Writing): void {
    this.refused = undefined;
    this.writing = writing;
    void this.updateComplete.then(() => this.renderRoot.querySelector('textarea')?.focus());
  }

  #close(): void {
    const was = this.writing;
    this.writing = undefined;
    this.refused = undefined;
    if (was?.act === 'new')
      this.dispatchEvent(new CustomEvent('wk-closed', { bubbles: true, composed: true }));
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.link')?.focus());
  }

  #put(event: Event): void {
    event.preventDefault();
    const { writing, on } = this;
    const data = new FormData(event.target as HTMLFormElement);
    const text = String(data.get('text') ?? '');
    const typed = String(data.get('by') ?? '')
      .replace(/\p{Cc}/gu, '')
      .trim();
    keepReaderName(typed);
    const by = typed === '' ? 'A reader' : typed;
    const now = Date.now();
    let note: Note | undefined;
    if (writing?.act === 'change')
      note = { ...writing.note, by, text, when: momentAfter(writing.note.when, now) };
    else {
      const target: NoteTarget | undefined =
        writing?.act === 'answer' ? { kind: 'note', id: writing.note.id } : on;
      if (target) note = { id: randomId(), on: target, by, when: momentAfter(undefined, now), text };
    }
    if (!note) return;
    const put = note;
    ask(this, 'wk-edit', {
      make: (at) => putNote(at, put),
      done: (edited) => {
        this.refused = 'refused' in edited ? edited.refused : undefined;
        if (!this.refused) this.#close();
      },
    });
  }

  #takeOut(note: Note): void {
    ask(this, 'wk-edit', {
      make: (at) => takeOutNote(at, { ...note, when: momentAfter(note.when, Date.now()) }),
      done: (edited) => {
        this.refused = 'refused' in edited ? edited.refused : undefined;
      },
    });
  }

  #key(event: KeyboardEvent): void {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      this.#close();
    } else if (event.key === 'Enter' && (event.ctrlKey || event.metaKey))
      (event.currentTarget as HTMLFormElement).requestSubmit();
  }

  #form() {
    const { writing, refused } = this;
    const words = writing?.act === 'answer' ? 'Your answer' : 'Your note';
    const was = writing?.act === 'change' ? writing.note : undefined;
    return html`<form class="screen" aria-label=${words} @submit=${(event: Event) => this.#put(event)} @keydown=${(event: KeyboardEvent) => this.#key(event)}>
      <label>${words}<textarea class="field" name="text" required maxlength=${MOST_NOTE_LETTERS} .value=${was?.text ?? ''}></textarea></label>
      <label class="name">Your name, as it is to stand there<input class="field" name="by" autocomplete="name" maxlength=${MOST_NAME} .value=${was?.by ?? readerName()} /></label>
      ${refused ? html`<p class="refused" role="alert">${saidProblem(refused)}</p>` : nothing}
      <div class="buttons"><button class="plain">${writing?.act === 'answer' ? 'Put the answer' : 'Put the note'}</button>
      <button type="button" class="plain" @click=${() => this.#close()}>Leave it</button></div>
    </form>`;
  }

  #note(note: Note, root: Note) {
    const { writing } = this;
    if (writing?.act === 'change' && writing.note.id === note.id) return this.#form();
    const of = `note of ${note.by}`;
    if (note.text === '')
      return html`<p class="head quiet">A note of <span class="by">${note.by}</span>, taken out</p>`;
    return html`<p class="head">${note === root && this.place ? html`${this.place(note)} · ` : nothing}<b class="by">${note.by}</b>, <time datetime=${note.when}>${DAY.format(new Date(note.when))}</time></p>
      <p class="said">${note.text}</p>
      <div class="acts screen">
        <button type="button" class="link" aria-label="Answer the ${of}" @click=${() => this.#open({ act: 'answer', note: root })}>Answer</button>
        <button type="button" class="link" aria-label="Change the ${of}" @click=${() => this.#open({ act: 'change', note })}>Change</button>
        <button type="button" class="link" aria-label="Take out the ${of}" @click=${() => this.#takeOut(note)}>Take out</button>
      </div>`;
  }

  #thread({ note, answers }: Thread) {
    const { writing } = this;
    const answering = writing?.act === 'answer' && writing.note.id === note.id;
    return html`<li class="thread">
      ${this.#note(note, note)}
      ${answers.length === 0 ? nothing : html`<ul aria-label="Answers">${answers.map((answer) => html`<li>${this.#note(answer, note)}</li>`)}</ul>`}
      ${answering ? this.#form() : nothing}
    </li>`;
  }

  protected override render() {
    const { threads, on, writing, refused } = this;
    return html`${threads.length === 0 ? nothing : html`<ul aria-label="Notes">${threads.map((thread) => this.#thread(thread))}</ul>`}
      ${refused && !writing ? html`<p class="refused" role="alert">${saidProblem(refused)}</p>` : nothing}
      ${writing?.act === 'new' ? this.#form() : on && !this.adding ? html`<button type="button" class="link screen" @click=${() => this.#open({ act: 'new' })}>Put a note on ${this.called}</button>` : nothing}`;
  }
}

customElements.define('wk-notes', WkNotes);

declare global {
  interface HTMLElementTagNameMap {
    'wk-notes': WkNotes;
  }
}

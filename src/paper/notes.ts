/** What readers noted on the notebook, at the end of the paper: who, when, on what. */
import { type Thread, targetWords, threadsOf } from '../notebook/notePlaces.ts';
import type { Note } from '../notebook/noteSchema.ts';
import { labelOf } from '../plots/reading.ts';
import { type Html, html } from './html.ts';
import { dayText, type Report } from './report.ts';

/** Empty where nobody noted anything; a note that was taken out stands only for its answers. */
export function notesSection({ notebook: { readerNotes = [] } }: Report): Html {
  const threads = threadsOf(readerNotes);
  if (threads.length === 0) return html``;
  return html`<section><h2>Notes of readers</h2>
    <p class="small">Put on the notebook by who read it, as they stand in its text; names as they were given.</p>
    <ul class="checks">${threads.map(threadItem)}</ul>
  </section>`;
}

const threadItem = ({ note, answers }: Thread) =>
  html`<li>On ${targetWords(note.on, labelOf)}: ${note.text === '' ? html`a note of ${note.by}, taken out.` : said(note)}${
    answers.length === 0 ? '' : html`<ul>${answers.map((answer) => html`<li>${said(answer)}</li>`)}</ul>`
  }</li>`;

const said = ({ by, when, text }: Note) => html`<b>${by}</b>, ${dayText(when)}: ${text}`;

/** What is said of keeping, above an open notebook. */
import { html, type TemplateResult } from 'lit';
import { fileNameOf } from '../store/fileName.ts';
import type { State } from '../store/journal.ts';
import { download } from './kept.ts';

/** What is said first; `blocked` is why nothing can be kept. */
export const firstNotice = (blocked: string, notice: string): string =>
  blocked === ''
    ? notice
    : `This browser keeps nothing here (${blocked}): what you change is lost when this page is closed.`;

/** A notebook was left with changes that could not be kept. */
export function rescue({ title, history: { now } }: State, done: () => void): TemplateResult {
  const save = () => {
    download(now.text, fileNameOf(title));
    done();
  };
  return html`<p class="wait" role="alert">The last changes of “${title}” could not be kept in this browser.
    <button type="button" @click=${save}>Save it as a file</button></p>`;
}

/** In place of a notebook: what could not be fetched, or that it is on its way; undefined where neither is so. */
export function standIn(unfetched: string, loading: boolean): TemplateResult | undefined {
  if (unfetched !== '')
    return html`<p class="wait" role="alert">A part of this page could not be fetched (${unfetched}). What you have kept is safe. <button type="button" @click=${() => location.reload()}>Reload</button></p>`;
  return loading ? html`<p class="wait" role="status">Opening the notebook …</p>` : undefined;
}

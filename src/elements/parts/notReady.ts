import { html } from 'lit';

/** What stands where a figure is still worked out: how far it is on the screen, and on paper that it is missing. */
export const notReady = (progress: unknown) =>
  html`${progress}<p class="paper">A figure belongs here; it was not ready when this was printed. “Print” above the notebook waits until every figure stands.</p>`;

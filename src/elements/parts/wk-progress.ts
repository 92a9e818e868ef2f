import { css, html, LitElement, nothing } from 'lit';
import type { Explorer } from '../../worker/explorer.ts';
import { shared } from './style.ts';
import { watch } from './watch.ts';

/** How far one question is, with a way to stop it; shown only when it takes longer than a moment. */
export class WkProgress extends LitElement {
  static override properties = { explorer: { attribute: false }, slotName: { attribute: 'slot-name' } };

  static override styles = [
    shared,
    css`
      div {
        display: flex;
        gap: 0.7rem;
        align-items: center;
        min-height: 2.4rem;
        font-size: 0.9rem;
      }
      progress {
        accent-color: var(--ink);
        width: min(14rem, 50%);
        height: 0.6rem;
      }
    `,
  ];

  declare explorer: Explorer | undefined;
  declare slotName: string;

  constructor() {
    super();
    this.slotName = '';
    watch(this, () => this.explorer?.progress.value);
  }

  protected override render() {
    const running = this.explorer?.progress.value.find(({ slot }) => slot === this.slotName);
    if (!running) return nothing;
    return html`<div class="screen">
      <progress max="1" .value=${running.done} aria-label="Computing"></progress>
      <button type="button" class="plain" @click=${() => this.explorer?.stop(this.slotName)}>Stop</button>
    </div>`;
  }
}

customElements.define('wk-progress', WkProgress);

declare global {
  interface HTMLElementTagNameMap {
    'wk-progress': WkProgress;
  }
}

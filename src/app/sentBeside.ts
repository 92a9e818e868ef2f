/** What was sent to this reader: said above the open notebook, only read until it is made theirs. */
import { html, nothing, type TemplateResult } from 'lit';
import type {} from '../elements/page/wk-asked.ts';
import type { OpenNotebook } from '../store/opening.ts';
import type { Sent } from './asked.ts';
import type { Keeper } from './keeper.ts';
import { keptHref } from './routes.ts';

interface Host extends HTMLElement {
  notice: string;
  readonly open: OpenNotebook | undefined;
  readonly keeper: Keeper;
  requestUpdate(): void;
}

export class SentBeside {
  readonly #host: Host;
  #sent: Sent | undefined;
  /** The text itself is being written, and not just an input tried. */
  #writes = false;

  constructor(host: Host) {
    this.#host = host;
    host.addEventListener('wk-edit', () => this.#turn(true), { capture: true });
    host.addEventListener('wk-edit', () => this.#turn(false));
    host.addEventListener('wk-make-mine', () => {
      if (host.open) host.keeper.makeMine(host.open.history.value);
    });
    host.addEventListener('wk-take-in', () => void this.#takeIn());
  }

  #turn(writes: boolean): void {
    this.#writes = writes;
  }

  get writes(): boolean {
    return this.#writes;
  }

  /** Undefined for what nobody sent. */
  set sent(sent: Sent | undefined) {
    this.#sent = sent;
    this.#host.requestUpdate();
  }

  /** It has become this reader's own. */
  mine(): void {
    const setting = this.#sent?.setting;
    if (!setting?.link) return;
    this.sent = undefined;
    // Where nothing is kept that has been said, and stays.
    if (!setting.keeps) return;
    this.#host.notice = 'This is your copy now, kept in this browser. Copy a link to send it back.';
  }

  async #takeIn(): Promise<void> {
    if (!this.#sent) return;
    const { takeIn } = await import('./asked.ts');
    const taken = await takeIn(this.#host.keeper.shelf, this.#sent).catch(String);
    if (typeof taken === 'string') this.#host.notice = taken;
    else location.hash = keptHref(taken.id);
  }

  render(open: OpenNotebook, system: 'metric' | 'us'): TemplateResult | typeof nothing {
    const setting = this.#sent?.setting;
    return setting
      ? html`<wk-asked .setting=${setting} .open=${open} .system=${system}></wk-asked>`
      : nothing;
  }
}

/** The text beside the page: its editor is fetched when it is opened for the first time. */
import { html, nothing, type TemplateResult } from 'lit';
import type {} from '../elements/parts/wk-text.ts';
import type { OpenNotebook } from '../store/opening.ts';
import type { Typing } from './typing.ts';

interface Host {
  editing: boolean;
  notice: string;
  readonly open: OpenNotebook | undefined;
  readonly updateComplete: Promise<boolean>;
  readonly renderRoot: ParentNode;
}

export class TextBeside {
  readonly #host: Host;
  readonly #typing: Typing;
  /** How far down the page was when the text was opened: on a phone the text stands in its place. */
  #from = 0;

  constructor(host: Host, typing: Typing) {
    this.#host = host;
    this.#typing = typing;
  }

  async turn(): Promise<void> {
    const { editing } = this.#host;
    if (!editing) return this.#show();
    this.#host.editing = false;
    await this.#host.updateComplete;
    scrollTo(0, this.#from);
  }

  /** To a line of the text, opened for it where it is not open. */
  async goTo(line: number): Promise<void> {
    if (!this.#host.editing) await this.#show();
    this.#host.renderRoot.querySelector('wk-text')?.goTo?.(line);
  }

  async #show(): Promise<void> {
    this.#from = scrollY;
    this.#host.editing = true;
    try {
      await import('../elements/parts/wk-text.ts');
    } catch {
      this.#host.editing = false;
      this.#host.notice =
        'The text editor could not be fetched. What you have kept is safe: reload the page to try again.';
    }
    await this.#host.updateComplete;
  }

  render(open: OpenNotebook): TemplateResult | typeof nothing {
    if (!this.#host.editing) return nothing;
    return html`<wk-text
      .text=${this.#typing.text ?? open.text.value}
      .problems=${open.problems.value}
      .run=${open.run.value}
      @wk-text=${(event: CustomEvent<string>) => this.#typing.type(event.detail)}
      @focusout=${() => this.#typing.endRun()}
    ></wk-text>`;
  }
}

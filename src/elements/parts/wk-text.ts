import { html, LitElement, nothing } from 'lit';
import { describe, RESULTS } from '../../model/dictionary.ts';
import type { NamesToSuggest } from '../../notebook/suggest.ts';
import type { Run } from '../../study/evaluate.ts';
import type { Problem } from '../../units/problem.ts';
import { turnNames } from '../../whatif/turn.ts';
import { shared } from './style.ts';
import { type TextEditor, textEditor } from './textEditor.ts';
import { textStyle } from './textStyle.ts';

/** Below this width the text stands alone. */
const ALONE = '(max-width: 900px)';
/** A few lines and a message, where a phone lies on its side. */
const LEAST_PX = 160;

const named = (name: string) => ({ word: name, tells: describe(name)?.label ?? '' });

const namesOf = (run: Run | undefined): NamesToSuggest => ({
  results: RESULTS.map(({ name }) => named(name)),
  inputs: run ? turnNames(run).map(named) : [],
  scenarios: run?.scenarios.map(({ name }) => name) ?? [],
});

/**
 * The notebook's text beside the page it makes, or on a phone in its place, with what has to be mended at its foot.
 *
 * @fires wk-text - with the whole text, as it is typed
 * @fires wk-act - `edit`, when it is to be closed
 */
export class WkText extends LitElement {
  static override properties = {
    text: {},
    problems: { attribute: false },
    run: { attribute: false },
  };

  static override styles = [shared, textStyle];

  declare text: string;
  declare problems: readonly Problem[];
  /** The figures as they stand, whose names a cell may write. */
  declare run: Run | undefined;

  #editor: TextEditor | undefined;
  #line: number | undefined;
  #resized = new ResizeObserver(() => this.#place());

  constructor() {
    super();
    this.text = '';
    this.problems = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    for (const type of ['resize', 'scroll']) visualViewport?.addEventListener(type, this.#place);
    for (const type of ['resize', 'scroll']) addEventListener(type, this.#place, { passive: true });
    // What stands above may grow: a notice comes and goes.
    this.#resized.observe(document.body);
    if (this.hasUpdated) this.#make();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const type of ['resize', 'scroll']) visualViewport?.removeEventListener(type, this.#place);
    for (const type of ['resize', 'scroll']) removeEventListener(type, this.#place);
    this.#resized.disconnect();
    this.#editor?.destroy();
    this.#editor = undefined;
  }

  /** To a line of the text, and the keyboard with it. */
  goTo(line: number): void {
    if (this.#editor) this.#editor.goTo(line);
    else this.#line = line;
  }

  #make(): void {
    const parent = this.renderRoot.querySelector('.editor');
    if (!parent || this.#editor) return;
    this.#editor = textEditor(this.renderRoot as ShadowRoot, parent, {
      text: this.text,
      label: 'The notebook as plain text',
      names: () => namesOf(this.run),
      changed: (text) => {
        this.text = text;
        this.dispatchEvent(new CustomEvent('wk-text', { detail: text }));
      },
    });
    this.#editor.setProblems(this.problems);
    if (this.#line !== undefined) this.#editor.goTo(this.#line);
    this.#line = undefined;
  }

  protected override firstUpdated(): void {
    this.#make();
    this.#place();
  }

  protected override updated(changed: Map<string, unknown>): void {
    if (changed.has('text')) this.#editor?.setText(this.text);
    if (changed.has('problems')) this.#editor?.setProblems(this.problems);
    // What is said above it may have come or gone meanwhile.
    this.#place();
  }

  /** It ends at the foot of the window, or where a keyboard on the screen begins, so that its messages stay in sight. */
  #place = () => {
    const above = this.parentElement?.getBoundingClientRect().top ?? 0;
    const alone = matchMedia(ALONE).matches;
    const [from, height] =
      alone && visualViewport ? [visualViewport.offsetTop, visualViewport.height] : [0, innerHeight];
    const top = Math.max(from, above);
    this.style.top = alone ? `${top}px` : '';
    this.style.height = `${Math.max(LEAST_PX, from + height - top)}px`;
  };

  #close(): void {
    this.dispatchEvent(new CustomEvent('wk-act', { detail: 'edit', bubbles: true, composed: true }));
  }

  #fault({ what, line, key, found, allowed, todo }: Problem) {
    const words = html`${line === undefined ? nothing : html`<b>Line ${line}:</b> `}${what}${key ? html` (${key})` : nothing}
      <small>${found === undefined ? nothing : html`Found ${found}. `}${allowed === undefined ? nothing : html`Allowed: ${allowed}. `}${todo ?? nothing}</small>`;
    return html`<li>${
      line === undefined
        ? html`<div class="plainly">${words}</div>`
        : html`<button type="button" @click=${() => this.goTo(line)}>${words}</button>`
    }</li>`;
  }

  protected override render() {
    const { length } = this.problems;
    return html`<div class="about"><button type="button" class="plain" @click=${() => this.#close()}>Close</button>
        <span id="about">The farm and the scenarios between the dashes, your own words below.<span class="keys"> Ctrl and space: what may stand here. Esc, then Tab: out of the text.</span></span></div>
      <div class="editor"></div>
      <section class="faults ${length > 0 ? 'some' : ''}" aria-label="What has to be mended in the text" tabindex=${length > 0 ? 0 : nothing}>
        <p role="status">${length === 0 ? 'Nothing has to be mended.' : length === 1 ? 'One thing has to be mended' : `${length} things have to be mended`}</p>
        ${length === 0 ? nothing : html`<ol>${this.problems.map((problem) => this.#fault(problem))}</ol>`}
      </section>`;
  }
}

customElements.define('wk-text', WkText);

declare global {
  interface HTMLElementTagNameMap {
    'wk-text': WkText;
  }
}

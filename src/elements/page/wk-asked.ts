import { css, html, LitElement, nothing } from 'lit';
import { isValue } from '../../model/dictionary.ts';
import type { ResultName } from '../../model/quantities.ts';
import type { Told } from '../../notebook/bodyDifferences.ts';
import type { InlineValue } from '../../notebook/inline.ts';
import { proseParts } from '../../notebook/markdown.ts';
import type { Notebook } from '../../notebook/read.ts';
import { textDifferences } from '../../notebook/textDifferences.ts';
import { type Reading, show, unitOf } from '../../plots/reading.ts';
import type { Figures } from '../../store/figuresOf.ts';
import type { OpenNotebook } from '../../store/opening.ts';
import type { Problem } from '../../units/problem.ts';
import { shared } from '../parts/style.ts';
import { watch } from '../parts/watch.ts';
import { differencesTold, type Earlier, HEADLINES, movedFigures } from './differences.ts';

/** The version that what was opened is compared with. */
export interface EarlierText {
  readonly text: string;
  /** "the version you saw on 24 November 2026". */
  readonly words: string;
  /** The same above a column: "Then". */
  readonly short: string;
}

/** A kept copy of the same notebook, which lacks notes that what was opened holds. */
export interface NotesOffered {
  readonly title: string;
  readonly count: number;
}

export interface AskedSetting {
  /** Opened from a link, and nobody's here yet; a file is kept as soon as it is opened. */
  readonly link: boolean;
  /** Whether this browser keeps anything at all. */
  readonly keeps: boolean;
  /** The text as it was opened: what is tried on it is no difference. */
  readonly text: string;
  readonly earlier?: EarlierText;
  readonly offered?: NotesOffered;
  readonly figuresOf: (
    text: string,
    keep: readonly ResultName[],
    ranged: (figures: Figures) => void,
  ) => Promise<Figures | { readonly problems: readonly Problem[] }>;
}

/** Of a first paragraph so much is said again. */
const MOST_SAID = 300;

/**
 * Above a notebook that somebody sent: what is asked, by whom, what differs from what this reader saw before, and what
 * becomes of what is changed here.
 *
 * @fires wk-make-mine - the reader wants a copy
 * @fires wk-take-in - the reader wants its notes in the copy that is kept
 */
export class WkAsked extends LitElement {
  static override properties = {
    setting: { attribute: false },
    open: { attribute: false },
    system: {},
    figures: { state: true },
  };

  static override styles = [
    shared,
    css`
      section {
        max-width: var(--measure);
        margin: 0 auto 0.7rem;
        padding: 0.6rem 1rem 0.9rem;
        border-bottom: 1px solid var(--rule);
        background: var(--ground);
      }
      p,
      details {
        max-width: 46rem;
        margin: 0 0 0.4rem;
      }
      .by,
      .title {
        unicode-bidi: isolate;
        overflow-wrap: anywhere;
      }
      blockquote {
        max-width: 46rem;
        margin: 0 0 0.5rem;
        padding-left: 0.8rem;
        border-left: 3px solid var(--rule);
        overflow-wrap: anywhere;
        unicode-bidi: isolate;
      }
      summary {
        cursor: pointer;
        padding: 0.3rem 0;
      }
      h4 {
        font-size: 0.95rem;
        margin: 0.5rem 0 0.1rem;
      }
      ul {
        margin: 0;
        padding-left: 1.2rem;
        overflow-wrap: anywhere;
      }
      .scroll {
        overflow-x: auto;
        margin: 0.7rem 0 0.3rem;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      thead th {
        font-weight: 600;
      }
      td.n {
        white-space: nowrap;
      }
      small {
        display: block;
        font-size: 0.88rem;
        color: var(--quiet);
      }
      button.plain {
        min-height: 2.75rem;
      }
      /* What is asked and what becomes of it, side by side where there is room. */
      @media screen and (min-width: 1100px) {
        section {
          display: grid;
          grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
          gap: 0 2.6rem;
          align-items: start;
        }
      }
      @media screen and (max-width: 700px) {
        td.n small {
          white-space: normal;
          max-width: 7rem;
          margin-left: auto;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare setting: AskedSetting | undefined;
  declare open: OpenNotebook | undefined;
  declare system: Reading['system'];
  declare figures: Earlier;

  constructor() {
    super();
    this.system = 'metric';
    watch(this, () => this.open && [this.open.notebook.value, this.open.run.value, this.open.results.value]);
  }

  #told: { readonly of: AskedSetting; readonly told: readonly Told[] | undefined } | undefined;
  /** Told once: what is tried on the page changes nothing of it. */
  #differences(setting: AskedSetting): readonly Told[] | undefined {
    const { earlier, text } = setting;
    if (this.#told?.of !== setting)
      this.#told = { of: setting, told: earlier ? textDifferences(earlier.text, text) : [] };
    return this.#told.told;
  }

  #asking: AskedSetting | undefined;
  /** The figures of then are worked out when they are looked at. */
  #looked(event: Event): void {
    const { setting } = this;
    if (!(event.currentTarget as HTMLDetailsElement).open || !setting?.earlier || this.#asking === setting)
      return;
    this.#asking = setting;
    this.figures = undefined;
    const take = (figures: Earlier) => {
      if (this.#asking === setting) this.figures = figures;
    };
    void setting.figuresOf(setting.earlier.text, HEADLINES, take).then(take, () => {});
  }

  #send(name: string): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }));
  }

  #valueText = ({ quantity, scenario }: Omit<InlineValue, 'line'>): string => {
    const run = this.open?.run.value;
    const found = run?.scenarios.find(({ name }) => scenario === null || name === scenario);
    const value = isValue(quantity) ? found?.values[quantity] : undefined;
    if (!run || value === undefined) return '…';
    const { currency, year } = run;
    return show(value, unitOf(quantity), { currency, year, system: this.system }).text;
  };

  #first(notebook: Notebook): string {
    for (const block of notebook.blocks) {
      if (block.type !== 'prose') continue;
      const paragraph = proseParts(block.text, this.#valueText).find((part) => part.startsWith('<p>'));
      if (paragraph === undefined) continue;
      // Only its words: nothing in it can be pressed or followed from here.
      const inert = document.createElement('template');
      inert.innerHTML = paragraph;
      const words = (inert.content.textContent ?? '').replace(/\s+/g, ' ').trim();
      return words.length > MOST_SAID ? `${words.slice(0, words.lastIndexOf(' ', MOST_SAID))} …` : words;
    }
    return '';
  }

  #earlier(setting: AskedSetting) {
    const { earlier } = setting;
    if (!earlier) return html`<p class="quiet">You have seen no earlier version of it in this browser.</p>`;
    if (earlier.text === setting.text)
      return html`<p>It is the same, to the letter, as ${earlier.words}.</p>`;
    const told = this.#differences(setting);
    const count = told?.length ?? 0;
    const { run, results } = this.open ?? {};
    return html`<details @toggle=${(event: Event) => this.#looked(event)}>
      <summary>What differs from ${earlier.words}${count > 0 ? `: ${count} ${count === 1 ? 'thing' : 'things'}` : ''}</summary>
      ${differencesTold(false, told)}
      ${movedFigures({
        earlier: this.figures,
        run: run?.value,
        results: results?.value ?? [],
        system: this.system,
        heading: earlier.short,
        called: earlier.words,
      })}
    </details>`;
  }

  #offer({ title, count }: NotesOffered) {
    return html`<p>You keep this notebook as “<span class="title">${title}</span>”, without ${count === 1 ? 'a note' : `${count} notes`} that ${count === 1 ? 'stands' : 'stand'} here.</p>
      <p><button type="button" class="plain" @click=${() => this.#send('wk-take-in')}>Take ${count === 1 ? 'the note' : `the ${count} notes`} in</button></p>`;
  }

  protected override render() {
    const { setting, open } = this;
    const notebook = open?.notebook.value;
    if (!setting || !notebook) return nothing;
    const { link, offered } = setting;
    const first = this.#first(notebook);
    return html`<section aria-label="Sent to you">
      <div>${
        link
          ? html`<p>${notebook.by === undefined ? html`Sent to you by somebody who does not say who they are.` : html`<b class="by">${notebook.by}</b> asks, as this notebook says of itself.`} It is about “<span class="title">${notebook.title}</span>”.</p>
            ${first === '' ? nothing : html`<blockquote>${first}</blockquote>`}`
          : nothing
      }
      ${link || setting.earlier ? this.#earlier(setting) : nothing}</div>
      <div>${offered ? this.#offer(offered) : nothing}
      ${
        link
          ? html`<p><b>You are reading: nothing is kept.</b> Turn sliders and fields to try what you like; a reload brings all back. A note, or any other change of the text, makes a copy of your own with what you tried, ${setting.keeps ? 'kept in this browser' : 'which this browser cannot keep: save it as a file'}; the sender sees it once you send it back.</p>
            <button type="button" class="plain" @click=${() => this.#send('wk-make-mine')}>Make it mine</button>`
          : nothing
      }</div>
    </section>`;
  }
}

customElements.define('wk-asked', WkAsked);

declare global {
  interface HTMLElementTagNameMap {
    'wk-asked': WkAsked;
  }
}

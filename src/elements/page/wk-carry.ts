import { css, html, LitElement, nothing } from 'lit';
import type { Notebook } from '../../notebook/read.ts';
import type { Run } from '../../study/evaluate.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { inertName, offer } from '../parts/offer.ts';
import { answerBy } from '../parts/paperAnswers.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-progress.ts';
import type { Form } from './carryFiles.ts';

const FORMS: readonly (readonly [form: Form, words: string, note: string])[] = [
  [
    'xlsx',
    'Spreadsheet, XLSX',
    'every figure with its range, the checks, and the tables of the lender’s paper',
  ],
  ['csv', 'Table, CSV', 'every figure with its range'],
  ['json', 'For programs, JSON', 'every figure with its range, and the checks'],
  ['html', 'Lender’s paper, HTML', 'to read, print or send'],
];

/** All figures of the notebook as a file, in the form that is asked for. */
export class WkCarry extends LitElement {
  static override properties = {
    notebook: { attribute: false },
    run: { attribute: false },
    explorer: { attribute: false },
    making: { state: true },
    fault: { state: true },
  };

  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin: 0.6rem 0;
      }
      summary {
        cursor: pointer;
        color: var(--quiet);
        padding: 0.2rem 0;
        width: fit-content;
      }
      ul {
        list-style: none;
        margin: 0 0 0.6rem;
        padding: 0;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.2rem 0.8rem;
        align-items: baseline;
        margin: 0.3rem 0;
      }
      li button {
        min-width: 13rem;
        text-align: left;
      }
      @media screen and (max-width: 700px) {
        summary,
        li button {
          min-height: 2.75rem;
        }
        summary {
          padding-block: 0.6rem;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare notebook: Notebook | undefined;
  declare run: Run | undefined;
  declare explorer: Explorer | undefined;
  /** The form that is being made. */
  declare making: Form | undefined;
  declare fault: string;

  constructor() {
    super();
    this.fault = '';
  }

  readonly #slots = { draws: 'carry draws', moves: 'carry moves' };

  async #make(form: Form): Promise<void> {
    const { notebook, run, explorer } = this;
    if (!notebook || !run || !explorer || this.making) return;
    this.fault = '';
    this.making = form;
    try {
      const { carried } = await import('./carryFiles.ts');
      const answers = answerBy(explorer, run, this.#slots);
      const file = await carried(form, { notebook, run, answers });
      if (file && this.isConnected)
        offer(file, `${inertName(notebook.title, 'notebook')}${form === 'html' ? '-case' : ''}.${form}`);
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
    this.making = undefined;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const slot of Object.values(this.#slots)) this.explorer?.stop(slot);
  }

  protected override render() {
    return html`<details>
      <summary>Take the figures along</summary>
      <ul>${FORMS.map(
        ([form, words, note]) =>
          html`<li><button type="button" class="plain" ?disabled=${!this.explorer || this.making !== undefined} aria-label="${words}: ${note}" @click=${() => this.#make(form)}>${words}</button><span class="quiet">${note}</span></li>`,
      )}</ul>
      <div role="status">${this.making ? html`<p>Gathering every figure and its range …</p>` : nothing}</div>
      <wk-progress .explorer=${this.explorer} slot-name=${this.#slots.draws}></wk-progress>
      ${this.fault === '' ? nothing : html`<p role="alert">The file could not be made: ${this.fault}.</p>`}
    </details>`;
  }
}

customElements.define('wk-carry', WkCarry);

declare global {
  interface HTMLElementTagNameMap {
    'wk-carry': WkCarry;
  }
}

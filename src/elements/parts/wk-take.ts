import { css, html, LitElement, nothing } from 'lit';
import type { Figure } from '../../plots/figure.ts';
import { ask } from './events.ts';
import { inertName, offer } from './offer.ts';
import { linkButton, shared } from './style.ts';

const FORMS = ['svg', 'png', 'csv'] as const;
type Form = (typeof FORMS)[number];

const SAID: Readonly<Record<Form, { readonly words: string; readonly type: string }>> = {
  svg: { words: 'Drawing, SVG', type: 'image/svg+xml' },
  png: { words: 'Picture, PNG', type: 'image/png' },
  csv: { words: 'Numbers, CSV', type: 'text/csv' },
};

/** One figure as a file: a small menu that makes the file when it is asked for. */
export class WkTake extends LitElement {
  static override properties = {
    figure: { attribute: false },
    heading: {},
    opened: { state: true },
    fault: { state: true },
  };

  static override styles = [
    shared,
    linkButton,
    css`
      :host {
        font-size: 0.9rem;
      }
      .toggle {
        color: var(--quiet);
        text-decoration-color: var(--rule);
      }
      .forms {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 0 1rem;
        margin-left: 0.8rem;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare figure: Figure | undefined;
  declare heading: string;
  declare opened: boolean;
  declare fault: string;

  constructor() {
    super();
    this.heading = '';
    this.opened = false;
    this.fault = '';
  }

  async #take(form: Form): Promise<void> {
    const { figure, heading } = this;
    if (!figure) return;
    this.fault = '';
    let from = { title: '', invented: false };
    ask(this, 'wk-whose', {
      tell: (whose) => {
        from = whose;
      },
    });
    try {
      const { figureCsv, figurePng, figureSvg } = await import('./figureFile.ts');
      const of = from.title === '' ? '' : ` of “${from.title}”${from.invented ? ', an invented farm' : ''}`;
      const source = `winterkeep: worked out from the notebook${of}, which names the source of every number.`;
      const body =
        form === 'csv'
          ? figureCsv(figure.table)
          : form === 'svg'
            ? figureSvg(figure, { heading, source })
            : await figurePng(figureSvg(figure, { heading, source }));
      const name = [
        inertName(from.title, 'notebook'),
        inertName(heading === '' ? figure.table.caption : heading, 'figure'),
      ];
      offer(new Blob([body], { type: SAID[form].type }), `${name.join('-')}.${form}`);
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
  }

  protected override render() {
    const { figure, opened } = this;
    if (!figure || (!figure.draw && figure.table.rows.length === 0)) return nothing;
    const forms = FORMS.filter((form) => (form === 'csv' ? figure.table.rows.length > 0 : figure.draw));
    return html`<button type="button" class="link toggle" aria-expanded=${opened} @click=${() => {
      this.opened = !opened;
    }}>Take this figure along</button>${
      opened
        ? html`<span class="forms" role="group" aria-label="As a file">${forms.map((form) => html`<button type="button" class="link" @click=${() => this.#take(form)}>${SAID[form].words}</button>`)}</span>`
        : nothing
    }${this.fault === '' ? nothing : html`<p role="alert">The file could not be made: ${this.fault}.</p>`}`;
  }
}

customElements.define('wk-take', WkTake);

declare global {
  interface HTMLElementTagNameMap {
    'wk-take': WkTake;
  }
}

import { css, html, LitElement } from 'lit';
import score from '../../../data/cases/score.json';
import { type Reading, show } from '../../plots/reading.ts';
import type { Run } from '../../study/evaluate.ts';
import type { Basis, Coefficient, Source } from '../../tables/coefficient.ts';
import { meanWords } from '../../tables/publishedMean.ts';
import { shared } from '../parts/style.ts';

const BASIS_SAID: Readonly<Record<Basis, string>> = {
  published: 'read in the source',
  derived: 'computed from what the source gives',
  'common practice': 'a rule of thumb of the trade',
  'from memory': 'known to the makers, not looked up again',
  invented: "the makers' own guess",
};

/** Every number of the tables these results stand on, with its source, and how many of each basis. */
export class WkSources extends LitElement {
  static override properties = {
    run: { attribute: false },
    reading: { attribute: false },
    listed: { state: true },
  };

  static override styles = [
    shared,
    css`
      ul {
        padding-left: 1.1rem;
        margin: 0 0 0.6rem;
        max-width: 46rem;
      }
      .scroll {
        position: relative;
        overflow: auto;
        max-height: 28rem;
      }
      table {
        font-size: 0.88rem;
        width: 100%;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      summary {
        cursor: pointer;
        padding: 0.3rem 0;
      }
      details details {
        margin-left: 1rem;
      }
      @media print {
        .scroll {
          max-height: none;
        }
      }
    `,
  ];

  declare run: Run | undefined;
  declare reading: Reading;
  /** Sources are listed once asked for: there are dozens, with hundreds of rows. */
  declare listed: boolean;

  constructor() {
    super();
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.listed = false;
  }

  #used(run: Run): Coefficient[] {
    const found = new Map<string, Coefficient>();
    for (const { bindings } of run.bound)
      for (const { coefficient, origin } of bindings.values())
        if (coefficient && origin !== 'override') found.set(coefficient.id, coefficient);
    return [...found.values()];
  }

  protected override render() {
    const { run, reading } = this;
    if (!run) return html``;
    const used = this.#used(run);
    const sources = new Map<string, { source: Source; rows: Coefficient[] }>();
    for (const row of used) {
      const source = run.tables.sources.get(row.source) ?? {
        id: row.source,
        author: '',
        title: row.source,
        year: '',
      };
      const entry = sources.get(row.source) ?? { source, rows: [] };
      entry.rows.push(row);
      sources.set(row.source, entry);
    }
    const bases = (Object.keys(BASIS_SAID) as Basis[]).map((basis) => ({
      basis,
      count: used.filter((row) => row.basis === basis).length,
    }));
    const { outputs, studies, pass, near, fail, insideDraws } = score.independent;
    return html`<h2>What the figures stand on</h2>
      <p>${used.length} numbers from the tables, each with its source:</p>
      <ul>${bases.filter(({ count }) => count > 0).map(({ basis, count }) => html`<li>${count} ${basis}: ${BASIS_SAID[basis]}</li>`)}</ul>
      <p>The model was held against ${outputs} measurements of ${studies} published studies it was not fitted to: ${pass} agree, ${near} are near, ${fail} are off; ${insideDraws} lie inside the range it shows.</p>
      <details @toggle=${(event: Event) => {
        if (event.target === event.currentTarget)
          this.listed = (event.currentTarget as HTMLDetailsElement).open;
      }}><summary>All ${sources.size} sources and their numbers</summary>${this.listed ? this.#list(sources, reading) : ''}</details>`;
  }

  #list(
    sources: ReadonlyMap<string, { readonly source: Source; readonly rows: readonly Coefficient[] }>,
    reading: Reading,
  ) {
    return html`${[...sources.values()]
      .sort((a, b) => b.rows.length - a.rows.length)
      .map(
        ({ source, rows }) => html`<details>
            <summary>${[source.author, source.title, source.year].filter((s) => s !== '').join(', ')} <span class="quiet">(${rows.length})</span></summary>
            <div class="scroll" tabindex="0" role="group" aria-label=${source.title}>
              <table>
                <thead><tr><th scope="col">what</th><th scope="col" class="n">low</th><th scope="col" class="n">central</th><th scope="col" class="n">high</th><th scope="col">unit</th><th scope="col">where</th><th scope="col">basis</th></tr></thead>
                <tbody>
                  ${rows.map(
                    (row) => html`<tr>
                      <th scope="row">${row.appliesTo}</th>
                      ${[row.low, row.central, row.high].map((value) => html`<td class="n">${show(value, row.unit === 'fraction' ? 'fraction' : '', reading).number}</td>`)}
                      <td>${[row.unit === 'fraction' ? '' : row.unit.replace('money', reading.currency), row.country ?? '', row.year ?? '', row.vat === 'without' ? 'without VAT' : '', row.terms ?? ''].filter((part) => part !== '').join(', ')}</td><td>${row.mean ? `${row.where}; ${meanWords(row.mean.value, row.unit)}` : row.where}</td><td>${row.basis}</td>
                    </tr>`,
                  )}
                </tbody>
              </table>
            </div>
          </details>`,
      )}`;
  }
}

customElements.define('wk-sources', WkSources);

declare global {
  interface HTMLElementTagNameMap {
    'wk-sources': WkSources;
  }
}

import { css, html, LitElement, nothing } from 'lit';
import type { Check } from '../../model/checks/check.ts';
import { inWords, type Reading, show } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import type { Source } from '../../tables/coefficient.ts';
import { isCaution } from '../parts/caution.ts';
import { shared } from '../parts/style.ts';

const SAID: Readonly<Record<Check['status'], string>> = { stop: 'Stop', look: 'Look', pass: 'Pass' };
const ORDER: readonly Check['status'][] = ['stop', 'look', 'pass'];

/** Every limit that was checked: what stops first, what passes folded away. */
export class WkChecks extends LitElement {
  static override properties = {
    results: { attribute: false },
    reading: { attribute: false },
    sources: { attribute: false },
    openOnly: { type: Boolean },
  };

  static override styles = [
    shared,
    css`
      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        display: grid;
        grid-template-columns: 3.6rem 1fr;
        gap: 0 0.6rem;
        padding: 0.4rem 0;
        border-top: 1px solid var(--rule);
        max-width: 46rem;
      }
      .status {
        font-weight: 700;
      }
      .stop .status {
        border-left: 6px solid #9b1c1c;
        padding-left: 0.4rem;
        color: #9b1c1c;
      }
      .look .status {
        border-left: 6px double #7a5200;
        padding-left: 0.4rem;
        color: #7a5200;
      }
      .pass .status {
        padding-left: 0.6rem;
        color: var(--quiet);
      }
      small {
        display: block;
        color: var(--quiet);
        font-size: 0.85rem;
      }
      summary {
        cursor: pointer;
        padding: 0.3rem 0;
        color: var(--quiet);
      }
      @media print {
        li {
          break-inside: avoid;
        }
        summary {
          list-style: none;
        }
      }
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  /** Titles of what gives the limits. */
  declare sources: ReadonlyMap<string, Source> | undefined;
  /** Leaves out what passes. */
  declare openOnly: boolean;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.openOnly = false;
  }

  #one({ check, names }: Found) {
    const { status, words, value, limit, unit, source, basis, week } = check;
    const measured = value === null || unit === 'month' ? '' : show(value, unit, this.reading).text;
    const against = limit === null ? '' : `limit ${show(limit, unit, this.reading).text}`;
    const numbers = [measured, against, week === undefined ? '' : `from week ${week}`]
      .filter((s) => s !== '')
      .join(', ');
    const title = this.sources?.get(source);
    const from = title
      ? [title.title.startsWith(title.author) ? '' : title.author, title.title, title.year]
          .filter((s) => s !== '')
          .join(', ')
      : source;
    return html`<li class=${status}>
      <span class="status">${SAID[status]}</span>
      <span><strong>${inWords(names)}.</strong> ${words}${numbers === '' ? nothing : html` <span class="numbers">(${numbers})</span>`}<small>${from} · ${basis}</small></span>
    </li>`;
  }

  protected override render() {
    const found = gather(this.results);
    const open = found.filter(({ check }) => check.status !== 'pass');
    const passed = this.openOnly ? [] : found.filter(({ check }) => check.status === 'pass');
    return html`<h2>Limits checked</h2>
      <p class="quiet">Limits differ from place to place: check the local rule behind each.</p>
      ${open.length > 0 ? html`<ul>${open.map((each) => this.#one(each))}</ul>` : html`<p class="quiet">Nothing to stop at or look at.</p>`}
      ${passed.length > 0 ? html`<details><summary>${passed.length} ${passed.length === 1 ? 'limit is' : 'limits are'} kept</summary><ul>${passed.map((each) => this.#one(each))}</ul></details>` : nothing}`;
  }
}

interface Found {
  readonly check: Check;
  readonly names: readonly string[];
}

/** What is the same in several scenarios is said once, with their names; what stops comes first. */
function gather(results: readonly ScenarioResult[]): Found[] {
  const found = new Map<string, { check: Check; names: string[] }>();
  for (const { name, checks } of results)
    for (const check of checks.filter((each) => !isCaution(each))) {
      const key = `${check.id} ${check.status} ${check.words} ${check.value}`;
      const entry = found.get(key) ?? { check, names: [] };
      entry.names.push(name);
      found.set(key, entry);
    }
  return [...found.values()].sort((a, b) => ORDER.indexOf(a.check.status) - ORDER.indexOf(b.check.status));
}

customElements.define('wk-checks', WkChecks);

declare global {
  interface HTMLElementTagNameMap {
    'wk-checks': WkChecks;
  }
}

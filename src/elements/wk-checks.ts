import { css, html, LitElement, nothing } from 'lit';
import type { Check } from '../model/checks/check.ts';
import type { ScenarioResult } from '../model/evaluate.ts';
import { type Reading, show } from '../plots/reading.ts';
import { isCaution } from './caution.ts';
import { shared } from './style.ts';

const SAID: Readonly<Record<Check['status'], string>> = { stop: 'Stop', look: 'Look', pass: 'Pass' };
const ORDER: readonly Check['status'][] = ['stop', 'look', 'pass'];

/** Every limit that was checked: what stops first, what passes folded away. */
export class WkChecks extends LitElement {
  static override properties = {
    results: { attribute: false },
    reading: { attribute: false },
    openOnly: { type: Boolean },
  };

  static override styles = [
    shared,
    css`
      .scenario {
        margin: 0 0 1rem;
      }
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
    `,
  ];

  declare results: readonly ScenarioResult[];
  declare reading: Reading;
  /** Leaves out what passes. */
  declare openOnly: boolean;

  constructor() {
    super();
    this.results = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
    this.openOnly = false;
  }

  #one({ status, words, value, limit, unit, source, basis, week }: Check) {
    const measured = value === null ? '' : show(value, unit, this.reading).text;
    const against = limit === null ? '' : `limit ${show(limit, unit, this.reading).text}`;
    const numbers = [measured, against, week === undefined ? '' : `from week ${week}`].filter((s) => s !== '').join(', ');
    return html`<li class=${status}>
      <span class="status">${SAID[status]}</span>
      <span>${words}${numbers === '' ? nothing : html` <span class="numbers">(${numbers})</span>`}<small>${source} · ${basis} · check the local rule</small></span>
    </li>`;
  }

  #list(checks: readonly Check[]) {
    const sorted = [...checks].sort((a, b) => ORDER.indexOf(a.status) - ORDER.indexOf(b.status));
    return html`<ul>${sorted.map((check) => this.#one(check))}</ul>`;
  }

  protected override render() {
    return html`<h2>Limits checked</h2>
      ${this.results.map(({ name, checks: all }) => {
        const checks = all.filter((check) => !isCaution(check));
        const open = checks.filter((check) => check.status !== 'pass');
        const passed = this.openOnly ? [] : checks.filter((check) => check.status === 'pass');
        return html`<div class="scenario">
          <h3>${name}</h3>
          ${open.length > 0 ? this.#list(open) : html`<p class="quiet">${checks.length === 0 ? 'Nothing to check.' : 'Nothing to stop at or look at.'}</p>`}
          ${passed.length > 0 ? html`<details><summary>${passed.length} ${passed.length === 1 ? 'check passes' : 'checks pass'}</summary>${this.#list(passed)}</details>` : nothing}
        </div>`;
      })}`;
  }
}

customElements.define('wk-checks', WkChecks);

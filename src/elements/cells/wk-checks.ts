import { css, html, LitElement, nothing } from 'lit';
import type { Check } from '../../model/checks/check.ts';
import { type CheckGroup, groupOf, titleOf } from '../../model/checks/titles.ts';
import { GROUP_TITLES, grouped, limitText, rulesInUse } from '../../plots/checkWords.ts';
import { capital, inWords, type Reading } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import type { Source } from '../../tables/coefficient.ts';
import { wordsIn } from '../../units/inWords.ts';
import { shared } from '../parts/style.ts';

/** Told at once, the same in several scenarios said once; the rest is folded under each scenario. */
const FIRST = ['stop', 'change'] as const;
const FOLDED = ['engineer', 'local', 'pass'] as const;

/** Every limit that was checked, in order of use: stops, what the keeper can change, the rest folded by scenario. */
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
        padding: 0.4rem 0 0.4rem 0.7rem;
        border-top: 1px solid var(--rule);
        max-width: 46rem;
      }
      /* Told apart without colour too: one line for what stops, two for what can be changed. */
      .stop {
        border-left: 6px solid var(--alarm);
      }
      .stop strong {
        color: var(--alarm);
      }
      .change {
        border-left: 6px double var(--look);
      }
      .folded li {
        padding-left: 0;
      }
      .passes {
        display: block;
      }
      h3 {
        margin-top: 1rem;
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

  #one({ check, names }: Found, folded: boolean) {
    const { id, source, basis } = check;
    const { system } = this.reading;
    const words = wordsIn(check.words, system);
    // Four figures, so that what is built to the number does pass.
    const passesWith = check.passesWith === undefined ? undefined : wordsIn(check.passesWith, system, 4);
    const group = groupOf(check);
    const numbers = limitText(check, this.reading);
    const title = this.sources?.get(source);
    const from = title
      ? [title.title.startsWith(title.author) ? '' : title.author, title.title, title.year]
          .filter((s) => s !== '')
          .join(', ')
      : source;
    return html`<li class=${group}>
      <span><strong>${capital(titleOf(id))}</strong>${folded ? '' : ` in ${inWords(names.map((name) => `“${name}”`))}`}${numbers === '' ? nothing : html` <span class="numbers">(${numbers})</span>`}. ${words}${passesWith === undefined || group === 'pass' ? nothing : html` <span class="passes">Passes with ${passesWith}.</span>`}<small>${from} · ${basis}</small></span>
    </li>`;
  }

  #folded({ name, checks }: ScenarioResult) {
    const by = grouped(checks);
    const shown = FOLDED.filter((group) => by[group].length > 0 && !(this.openOnly && group === 'pass'));
    if (shown.length === 0) return nothing;
    return html`<h3>“${name}”</h3>
      ${shown.map((group) => html`<details class="folded"><summary>${GROUP_TITLES[group]}: ${by[group].length}</summary><ul>${by[group].map((check) => this.#one({ check, names: [name] }, true))}</ul></details>`)}`;
  }

  protected override render() {
    const { results } = this;
    return html`<h2>Limits checked</h2>
      <p class="quiet">${results.length === 0 ? nothing : rulesInUse(results)} Limits differ from place to place: check the local rule behind each.</p>
      ${FIRST.map((group) => {
        const found = gather(results, group);
        return found.length === 0
          ? nothing
          : html`<h3>${GROUP_TITLES[group]}</h3><ul>${found.map((each) => this.#one(each, false))}</ul>`;
      })}
      ${FIRST.every((group) => gather(results, group).length === 0) ? html`<p class="quiet">Nothing stops, and nothing is yours to change.</p>` : nothing}
      ${results.map((result) => this.#folded(result))}`;
  }
}

interface Found {
  readonly check: Check;
  readonly names: readonly string[];
}

/** What is the same in several scenarios is said once, with their names. */
function gather(results: readonly ScenarioResult[], group: CheckGroup): Found[] {
  const found = new Map<string, { check: Check; names: string[] }>();
  for (const { name, checks } of results)
    for (const check of grouped(checks)[group]) {
      const key = `${check.id} ${check.words} ${check.value}`;
      const entry = found.get(key) ?? { check, names: [] };
      entry.names.push(name);
      found.set(key, entry);
    }
  return [...found.values()];
}

customElements.define('wk-checks', WkChecks);

declare global {
  interface HTMLElementTagNameMap {
    'wk-checks': WkChecks;
  }
}

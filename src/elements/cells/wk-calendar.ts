import { css, html, LitElement, nothing } from 'lit';
import { sayDay } from '../../model/checks/bedSeries.ts';
import type { ShedResult } from '../../model/checks/check.ts';
import { calendarFile } from '../../season/calendarFile.ts';
import { type SeasonPlan, seasonPlan } from '../../season/plan.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import { labelIn, numbersIn, wordsIn } from '../../units/inWords.ts';
import type { UnitSystem } from '../../units/quantities.ts';
import { offer } from '../parts/offer.ts';
import { shared } from '../parts/style.ts';

const metres = (value: number | null) => (value === null ? '–' : value.toFixed(2));

/** The season as a list to hang in the barn and to take into a calendar. */
export class WkCalendar extends LitElement {
  static override properties = {
    result: { attribute: false },
    coefficients: { attribute: false },
    system: {},
  };

  static override styles = [
    shared,
    css`
      ol {
        list-style: none;
        margin: 0 0 0.8rem;
        padding: 0;
        max-width: 46rem;
      }
      li {
        display: grid;
        grid-template-columns: 7.5rem 1fr;
        gap: 0 0.8rem;
        padding: 0.45rem 0;
        border-top: 1px solid var(--rule);
      }
      time {
        font-weight: 600;
      }
      small {
        display: block;
        font-size: 0.9rem;
        color: var(--quiet);
      }
      summary {
        cursor: pointer;
        padding: 0.3rem 0;
        color: var(--quiet);
      }
      .scroll {
        overflow-x: auto;
      }
      .box {
        display: none;
      }
      @media (max-width: 30rem) {
        li {
          grid-template-columns: 1fr;
        }
      }
      /* The barn list: large enough to read with gloves on, a box to tick, one task not cut in two. */
      @media print {
        details:not([open]) {
          display: none;
        }
        ol {
          max-width: none;
          font-size: 15pt;
        }
        li {
          grid-template-columns: 1.2em 7.5em 1fr;
          break-inside: avoid;
          border-top: 1px solid;
        }
        small {
          font-size: 12pt;
          color: inherit;
        }
        .box {
          display: block;
          width: 0.8em;
          height: 0.8em;
          border: 1.5pt solid;
          margin-top: 0.25em;
        }
      }
    `,
  ];

  declare result: ShedResult | undefined;
  declare coefficients: ReadonlyMap<string, Coefficient> | undefined;
  declare system: UnitSystem;

  constructor() {
    super();
    this.system = 'metric';
  }

  #save(plan: SeasonPlan): void {
    offer(
      new Blob([calendarFile(plan, new Date())], { type: 'text/calendar' }),
      `${plan.name.replace(/[^\p{L}\p{N}]+/gu, '-')}.ics`,
    );
  }

  protected override render() {
    const { result, coefficients } = this;
    if (!result || !coefficients?.size) return nothing;
    const plan = seasonPlan(result, coefficients);
    return html`<h3>Season: ${plan.name}</h3>
      <ol aria-label="What to do and when">
        ${plan.tasks.map(
          ({ day, until, title, words }) => html`<li>
            <span class="box" aria-hidden="true"></span>
            <time datetime=${day}>${sayDay(day)}${until ? html`<br />to ${sayDay(until)}` : nothing}</time>
            <span>${wordsIn(title, this.system)}<small>${wordsIn(words, this.system)}</small></span>
          </li>`,
        )}
      </ol>
      <p class="screen"><button class="plain" type="button" @click=${() => this.#save(plan)}>Save as calendar (.ics)</button></p>
      ${
        plan.weeks.length === 0
          ? nothing
          : html`<details>
              <summary>Bedding week by week</summary>
              <div class="scroll" tabindex="0" role="group" aria-label="Bedding week by week">
                <table>
                  <thead><tr><th scope="col">Week</th><th scope="col">From</th><th scope="col" class="n">${labelIn('Bedding, kg', this.system)}</th><th scope="col" class="n">${labelIn('Bed, m', this.system)}</th><th scope="col" class="n">${labelIn('Raise barrier, m', this.system)}</th></tr></thead>
                  <tbody>${plan.weeks.map((w) => html`<tr><th scope="row">${w.week}</th><td>${sayDay(w.day)}</td><td class="n">${numbersIn(w.beddingKg.toFixed(0), 'kg', this.system)}</td><td class="n">${numbersIn(metres(w.bedM), 'm', this.system)}</td><td class="n">${w.raiseM > 0 ? numbersIn(metres(w.raiseM), 'm', this.system) : ''}</td></tr>`)}</tbody>
                </table>
              </div>
            </details>`
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wk-calendar': WkCalendar;
  }
}

customElements.define('wk-calendar', WkCalendar);

import { css, html, LitElement, nothing } from 'lit';
import type { DiaryEntry } from '../../notebook/diary.ts';
import { capital, type Reading, show } from '../../plots/reading.ts';
import { shared } from '../parts/style.ts';

/** Digits that leave a reading as it was written. */
const AS_WRITTEN = 12;

/** What was put down, and what was read. */
function said(entry: DiaryEntry, reading: Reading): { readonly what: string; readonly value: string } {
  // In the units it is written in the number stays whole; turned into others it is rounded.
  const digits = reading.system === 'metric' ? AS_WRITTEN : 3;
  const text = (value: number, unit: string) => show(value, unit, reading, digits).text;
  const percent = (fraction: number) => `${Number((fraction * 100).toPrecision(AS_WRITTEN))} %`;
  switch (entry.kind) {
    case 'load': {
      const material = entry.material.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
      const moisture =
        entry.moistureFraction === undefined ? '' : `, ${percent(entry.moistureFraction)} moisture`;
      return { what: 'Bedding put on', value: `${text(entry.tonnes, 't')} of ${material}${moisture}` };
    }
    case 'depth':
      return { what: 'Depth of the bed', value: text(entry.depthM, 'm') };
    case 'temperature':
      return {
        what: 'Temperature in the bed',
        value: `${text(entry.temperatureC, '°C')}, ${text(entry.atDepthM, 'm')} deep`,
      };
    case 'moisture':
      return { what: 'Moisture of the bed', value: percent(entry.moistureFraction) };
    case 'head':
      return { what: 'Animals in the shed', value: text(entry.head, 'head') };
    case 'note':
      return { what: 'Note', value: '' };
  }
}

/** The keeper's diary of the winter, by day: loads, readings and notes as they were written. */
export class WkDiary extends LitElement {
  static override properties = {
    diary: { attribute: false },
    reading: { attribute: false },
    scenario: {},
    caption: {},
  };

  static override styles = [
    shared,
    css`
      .scroll {
        overflow-x: auto;
        margin-bottom: 0.6rem;
      }
      td .quiet {
        display: block;
        font-size: 0.9rem;
      }
      table {
        min-width: 100%;
        font-size: 0.95rem;
      }
      thead th {
        font-weight: 600;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      th[scope='row'] {
        white-space: nowrap;
      }
      @media print {
        .scroll {
          overflow: visible;
        }
        tr {
          break-inside: avoid;
        }
      }
    `,
  ];

  declare diary: readonly DiaryEntry[];
  declare reading: Reading;
  /** Entries of this scenario, and those that name none; all when absent. */
  declare scenario: string | undefined;
  declare caption: string | undefined;

  constructor() {
    super();
    this.diary = [];
    this.reading = { currency: 'EUR', year: 0, system: 'metric' };
  }

  protected override render() {
    const { scenario, caption, reading } = this;
    const entries = this.diary
      .filter(
        (entry) => scenario === undefined || entry.scenario === undefined || entry.scenario === scenario,
      )
      .sort((a, b) => a.date.localeCompare(b.date));
    return html`<h2>Diary${scenario === undefined ? nothing : ` of ${scenario}`}</h2>
      ${
        entries.length === 0
          ? html`<p>Nothing is written down yet. An entry stands under <code>diary</code> at the top of the text, such as <code>- { date: 2025-12-01, kind: depth, depthM: 0.45 }</code>.</p>`
          : html`<div class="scroll" tabindex="0" role="group" aria-label="Diary, ${entries.length} entries">
              <table>
                <thead><tr><th scope="col">Day</th><th scope="col">What</th><th scope="col">Written down</th></tr></thead>
                <tbody>${entries.map((entry) => {
                  const { what, value } = said(entry, reading);
                  const words = [value, capital(entry.note ?? '')].filter((part) => part !== '').join('. ');
                  return html`<tr><th scope="row">${entry.date}</th><td>${what}${entry.scenario === undefined ? nothing : html` <span class="quiet">${entry.scenario}</span>`}</td><td>${words}</td></tr>`;
                })}</tbody>
              </table>
            </div>`
      }
      <p class="quiet">${caption ? `${caption} ` : ''}A record only: the figures are of the scenarios, not of what is written here.</p>`;
  }
}

customElements.define('wk-diary', WkDiary);

declare global {
  interface HTMLElementTagNameMap {
    'wk-diary': WkDiary;
  }
}

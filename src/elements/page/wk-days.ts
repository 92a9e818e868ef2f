import { html, LitElement, nothing } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import { type Told, textDifferences } from '../../notebook/textDifferences.ts';
import { capital, inWords, labelOf, type Reading, show, unitOf } from '../../plots/reading.ts';
import type { Figures } from '../../store/figuresOf.ts';
import type { VersionEntry } from '../../store/versions.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { formatRange } from '../../units/format.ts';
import type { Problem } from '../../units/problem.ts';
import { drawer, linkButton, shared } from '../parts/style.ts';
import { daysStyle } from './daysStyle.ts';

/** What a change is judged by. */
const HEADLINES: readonly ResultName[] = ['nitrogenKeptKg', 'netCost', 'labourHours', 'capitalCost'];

const HEADS: Readonly<Record<Told['of'], string>> = {
  inputs: 'Inputs',
  scenarios: 'Scenarios',
  cells: 'Figures and tables',
  words: 'Words',
  notes: 'Notes',
};

/** What the list needs of the open notebook and the shelf. */
export interface DaysSetting {
  /** Newest first. */
  readonly list: readonly VersionEntry[];
  readonly textOf: (day: string) => Promise<string | undefined>;
  readonly now: string;
  readonly run: Run | undefined;
  readonly results: readonly ScenarioResult[];
  readonly system: Reading['system'];
  readonly figuresOf: (
    text: string,
    keep: readonly ResultName[],
    ranged: (figures: Figures) => void,
  ) => Promise<Figures | { readonly problems: readonly Problem[] }>;
}

interface Chosen {
  readonly entry: VersionEntry;
  /** Undefined until it is read; null where it is gone. */
  readonly text?: string | null;
  readonly told?: readonly Told[] | undefined;
  readonly figures?: Figures | { readonly problems: readonly Problem[] };
}

/** "Tuesday 24 November 2026". */
export const dayWords = (day: string): string =>
  new Date(`${day}T12:00:00Z`).toLocaleDateString('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });

/**
 * The notebook as it stood on earlier days: what differs from now, in words and in figures; and brought back.
 *
 * @fires wk-brought-back - with the day and its text
 * @fires wk-closed - the list is done with
 */
export class WkDays extends LitElement {
  static override properties = { setting: { attribute: false }, chosen: { state: true } };

  static override styles = [shared, drawer, linkButton, daysStyle];

  declare setting: DaysSetting | undefined;
  declare chosen: Chosen | undefined;

  async open(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('dialog')?.showModal();
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus();
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  async #choose(entry: VersionEntry): Promise<void> {
    const { setting } = this;
    if (!setting) return;
    this.chosen = { entry };
    const text = (await setting.textOf(entry.day).catch(() => undefined)) ?? null;
    if (this.chosen?.entry !== entry) return;
    const told = text === null ? undefined : textDifferences(text, setting.now);
    this.chosen = { entry, text, told };
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('#what')?.focus();
    if (text === null) return;
    const take = (figures: Chosen['figures']) => {
      if (this.chosen?.entry === entry) this.chosen = { ...this.chosen, figures };
    };
    // Never the figures without ranges after those with them: `ranged` waits for the worker, this for nothing more.
    take(await setting.figuresOf(text, HEADLINES, take));
  }

  #bringBack({ entry, text }: Chosen): void {
    this.close();
    this.dispatchEvent(new CustomEvent('wk-brought-back', { detail: { day: entry.day, text } }));
  }

  #differences({ text, told }: Chosen) {
    const now = this.setting?.now;
    if (text === now) return html`<p>Nothing: it is the same to the letter.</p>`;
    if (!told)
      return html`<p>One of the two texts has a fault in its front matter, so what differs cannot be said in words.</p>`;
    if (told.length === 0) return html`<p>Only remarks, spaces or how something is written.</p>`;
    return (Object.keys(HEADS) as Told['of'][]).map((of) => {
      const mine = told.filter((each) => each.of === of);
      return mine.length === 0
        ? nothing
        : html`<h4>${HEADS[of]}</h4><ul>${mine.map(({ words }) => html`<li>${words}</li>`)}</ul>`;
    });
  }

  #figures({ figures }: Chosen) {
    const { run, results = [], system = 'metric' } = this.setting ?? {};
    if (!figures)
      return html`<p class="quiet" role="status">The figures of that day are being worked out …</p>`;
    if ('problems' in figures)
      return html`<p>There are no figures of that day: ${figures.problems[0]?.what ?? 'its text cannot be read'}.</p>`;
    const readingOf = ({ currency, year }: Run): Reading => ({ currency, year, system });
    const [was, is] = [readingOf(figures.run), run && readingOf(run)];
    const names = [...new Set([...figures.results, ...results].map(({ name }) => name))];
    const moved = HEADLINES.flatMap((quantity) =>
      names.map((name) => {
        const [old, now] = [figures.results, results].map((all) => all.find((each) => each.name === name));
        return {
          quantity,
          name,
          before: cell(old, quantity, was),
          after: is ? cell(now, quantity, is) : NONE,
        };
      }),
    ).filter(({ before, after }) => before.text !== after.text);
    if (moved.length === 0)
      return html`<p>${capital(inWords(HEADLINES.map(labelOf)))}: the same as now in every scenario, as far as is shown.</p>`;
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Figures that moved"><table>
      <thead><tr><th scope="col">What moved</th><th scope="col" class="n">That day</th><th scope="col" class="n">Now</th></tr></thead>
      <tbody>${moved.map(
        ({
          quantity,
          name,
          before,
          after,
        }) => html`<tr><th scope="row">${capital(labelOf(quantity))}<small>${name}</small></th>
          <td class="n">${before.text}<small>${before.range}</small></td><td class="n">${after.text}<small>${after.range}</small></td></tr>`,
      )}</tbody></table></div>
      <p class="quiet">Below each the span that 80 of 100 draws fall in. What is not listed of ${inWords(HEADLINES.map(labelOf))} reads the same.</p>`;
  }

  #what(chosen: Chosen) {
    const day = dayWords(chosen.entry.day);
    if (chosen.text === undefined) return html`<p role="status">Reading ${day} …</p>`;
    if (chosen.text === null) return html`<p role="alert">${day} is no longer kept in this browser.</p>`;
    return html`<section aria-labelledby="what">
      <h3 id="what" tabindex="-1">What has become different since ${day}</h3>
      ${this.#differences(chosen)}
      ${this.#figures(chosen)}
      <p><button type="button" class="plain" ?disabled=${chosen.text === this.setting?.now} @click=${() => this.#bringBack(chosen)}>Bring ${day} back</button></p>
      <p class="quiet">One step, which can be undone: nothing is lost by trying.</p>
    </section>`;
  }

  protected override render() {
    const { setting, chosen } = this;
    const list = setting?.list ?? [];
    return html`<dialog aria-labelledby="title" @close=${() => this.dispatchEvent(new CustomEvent('wk-closed'))}>
      <header><h2 id="title" tabindex="-1">Earlier days</h2><button type="button" class="link" @click=${() => this.close()}>Close</button></header>
      <p class="quiet">${
        list.length === 0
          ? 'None is kept yet. What this notebook is when a day ends is kept in this browser once it is changed on a later day; at most 30 days.'
          : 'The notebook as it stood when each of these days was over, kept in this browser; at most 30 days.'
      }</p>
      <ul class="days">${list.map(
        (
          entry,
        ) => html`<li><button type="button" aria-pressed=${chosen?.entry === entry ? 'true' : 'false'} @click=${() => void this.#choose(entry)}>
          ${dayWords(entry.day)}<small>${entry.title}</small></button></li>`,
      )}</ul>
      ${chosen ? this.#what(chosen) : nothing}
    </dialog>`;
  }
}

interface Cell {
  readonly text: string;
  readonly range: string;
}
const NONE: Cell = { text: 'not there', range: '' };

function cell(result: ScenarioResult | undefined, quantity: ResultName, reading: Reading): Cell {
  if (!result) return NONE;
  const unit = unitOf(quantity);
  const [low, high] = [result.bands?.p10[quantity], result.bands?.p90[quantity]];
  const range =
    typeof low === 'number' && typeof high === 'number' ? formatRange(low, high, unit, reading) : '';
  return { text: show(result.values[quantity], unit, reading).text, range };
}

customElements.define('wk-days', WkDays);

declare global {
  interface HTMLElementTagNameMap {
    'wk-days': WkDays;
  }
}

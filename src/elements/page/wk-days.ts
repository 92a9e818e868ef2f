import { html, LitElement, nothing } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import type { Told } from '../../notebook/bodyDifferences.ts';
import { textDifferences } from '../../notebook/textDifferences.ts';
import type { Reading } from '../../plots/reading.ts';
import type { Figures } from '../../store/figuresOf.ts';
import type { VersionEntry } from '../../store/versions.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Problem } from '../../units/problem.ts';
import { drawer, linkButton, shared } from '../parts/style.ts';
import { daysStyle } from './daysStyle.ts';
import { differencesTold, type Earlier, HEADLINES, movedFigures } from './differences.ts';

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
  readonly figures?: Earlier;
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

  #what(chosen: Chosen) {
    const day = dayWords(chosen.entry.day);
    if (chosen.text === undefined) return html`<p role="status">Reading ${day} …</p>`;
    const { run, results = [], system = 'metric' } = this.setting ?? {};
    if (chosen.text === null) return html`<p role="alert">${day} is no longer kept in this browser.</p>`;
    return html`<section aria-labelledby="what">
      <h3 id="what" tabindex="-1">What has become different since ${day}</h3>
      ${differencesTold(chosen.text === this.setting?.now, chosen.told)}
      ${movedFigures({ earlier: chosen.figures, run, results, system, heading: 'That day', called: 'that day' })}
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

customElements.define('wk-days', WkDays);

declare global {
  interface HTMLElementTagNameMap {
    'wk-days': WkDays;
  }
}

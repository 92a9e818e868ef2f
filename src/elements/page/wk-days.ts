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
  /** The later day it is held against; the notebook as it is now where there is none. */
  readonly until?: VersionEntry;
  /** Undefined until it is read; null where it is gone. */
  readonly text?: string | null;
  readonly told?: readonly Told[] | undefined;
  readonly figures?: Earlier;
  /** Text and figures of `until`. */
  readonly other?: string | null;
  readonly otherFigures?: Earlier;
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
  static override properties = {
    setting: { attribute: false },
    chosen: { state: true },
    kept: { state: true },
  };

  static override styles = [shared, drawer, linkButton, daysStyle];

  declare setting: DaysSetting | undefined;
  declare chosen: Chosen | undefined;
  /** Day picked from the list. */
  declare kept: string | undefined;

  async open(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('dialog')?.showModal();
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus();
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  async #choose(entry: VersionEntry, until?: VersionEntry, focus = '#what'): Promise<void> {
    const { setting } = this;
    if (!setting) return;
    const asked: Chosen = { entry, ...(until ? { until } : {}) };
    this.chosen = asked;
    const read = async ({ day }: VersionEntry) => (await setting.textOf(day).catch(() => undefined)) ?? null;
    const text = await read(entry);
    const other = until ? await read(until) : setting.now;
    const still = () => this.chosen?.entry === entry && this.chosen.until === until;
    if (!still()) return;
    const told = text === null || other === null ? undefined : textDifferences(text, other);
    this.chosen = { ...asked, text, told, other };
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(focus)?.focus();
    if (text === null || other === null) return;
    const figures = async (of: string, name: 'figures' | 'otherFigures') => {
      const take = (found: Earlier) => {
        if (still() && this.chosen) this.chosen = { ...this.chosen, [name]: found };
      };
      // Never the figures without ranges after those with them: `ranged` waits for the worker, this for nothing more.
      take(await setting.figuresOf(of, HEADLINES, take));
    };
    await figures(text, 'figures');
    if (until && still()) await figures(other, 'otherFigures');
  }

  /** Against now, or against another day: whichever is later is the one it has become. */
  #against(chosen: Chosen, event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    const ends = [chosen.entry, chosen.until].filter((each) => each !== undefined);
    const stays = ends.find(({ day }) => day === this.kept) ?? chosen.entry;
    const picked = this.setting?.list.find(({ day }) => day === value);
    if (!picked) return void this.#choose(stays, undefined, '#against');
    const [first, last] = picked.day < stays.day ? [picked, stays] : [stays, picked];
    void this.#choose(first, last, '#against');
  }

  #bringBack({ entry, text }: Chosen): void {
    this.close();
    this.dispatchEvent(new CustomEvent('wk-brought-back', { detail: { day: entry.day, text } }));
  }

  #what(chosen: Chosen) {
    const day = dayWords(chosen.entry.day);
    if (chosen.text === undefined) return html`<p role="status">Reading ${day} …</p>`;
    if (chosen.text === null) return html`<p role="alert">${day} is no longer kept in this browser.</p>`;
    const later = chosen.until && dayWords(chosen.until.day);
    if (chosen.other === null) return html`<p role="alert">${later} is no longer kept in this browser.</p>`;
    const others = (this.setting?.list ?? []).filter((each) => each.day !== this.kept);
    const held = [chosen.entry, chosen.until].find((each) => each && each.day !== this.kept);
    return html`<section aria-labelledby="what">
      <h3 id="what" tabindex="-1">What has become different ${later ? `between ${day} and ${later}` : `since ${day}`}</h3>
      ${
        others.length === 0
          ? nothing
          : html`<p><label for="against">Held against</label> <select id="against" class="field" @change=${(event: Event) => this.#against(chosen, event)}>
              <option value="" ?selected=${chosen.until === undefined}>the notebook as it is now</option>
              ${others.map((each) => html`<option value=${each.day} ?selected=${chosen.until !== undefined && held === each}>${dayWords(each.day)}</option>`)}
            </select></p>`
      }
      ${differencesTold(chosen.text === chosen.other, chosen.told)}
      ${this.#figures(chosen)}
      <p><button type="button" class="plain" ?disabled=${chosen.text === this.setting?.now} @click=${() => this.#bringBack(chosen)}>Bring ${day} back</button></p>
      <p class="quiet">One step, which can be undone: nothing is lost by trying.</p>
    </section>`;
  }

  #figures({ entry, until, figures, otherFigures }: Chosen) {
    const { run, results = [], system = 'metric' } = this.setting ?? {};
    if (!until)
      return movedFigures({
        earlier: figures,
        run,
        results,
        system,
        heading: 'That day',
        called: 'that day',
      });
    const [from, to] = [entry, until].map(({ day }) => dayWords(day).replace(/^\S+ /, ''));
    // Figures of both are worked out: the second may have a fault of its own.
    if (figures && (!otherFigures || 'problems' in otherFigures))
      return movedFigures({
        earlier: otherFigures,
        run: undefined,
        results: [],
        system,
        heading: to,
        called: to,
      });
    const after = otherFigures && !('problems' in otherFigures) ? otherFigures : undefined;
    return movedFigures({ earlier: figures, run: after?.run, results: after?.results ?? [], system, heading: from, called: from, later: to }); // biome-ignore format: one question
  }

  /** A day is chosen from the list: what it is held against is chosen beside it. */
  #pick(entry: VersionEntry): void {
    this.kept = entry.day;
    void this.#choose(entry);
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
        ) => html`<li><button type="button" aria-pressed=${entry.day === this.kept ? 'true' : 'false'} @click=${() => this.#pick(entry)}>
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

/** Notes of the open notebook where they stand, found once for each reading of it. */
import { html, nothing, type TemplateResult } from 'lit';
import { isValue } from '../../model/dictionary.ts';
import { keyOfTarget } from '../../notebook/noteMerge.ts';
import {
  type PlacedNotes,
  placeNotes,
  SECTION_WORDS,
  type Thread,
  targetOfPart,
  targetWords,
} from '../../notebook/notePlaces.ts';
import { type Note, type NoteTarget, PAGE_SECTIONS, type PageSection } from '../../notebook/noteSchema.ts';
import type { BodyPart } from '../../notebook/parts.ts';
import type { Notebook } from '../../notebook/read.ts';
import { capital, labelOf } from '../../plots/reading.ts';
import { ask } from '../parts/events.ts';
import '../parts/wk-notes.ts';

const NONE: PlacedNotes = { parts: new Map(), numbers: [], page: new Map(), lost: [] };
const known = new WeakMap<Notebook, PlacedNotes>();

export function placedIn(notebook: Notebook | undefined): PlacedNotes {
  if (!notebook) return NONE;
  const found = known.get(notebook) ?? placeNotes(notebook, isValue);
  known.set(notebook, found);
  return found;
}

/** What is noted on a part of the text, below it; and the form of a new note where one is being put. */
export function notesOn(
  notebook: Notebook | undefined,
  parts: readonly BodyPart[],
  place: number,
  adding: boolean,
): TemplateResult | typeof nothing {
  const threads = placedIn(notebook).parts.get(place);
  if (!threads && !adding) return nothing;
  return html`${threads ? html`<wk-notes .threads=${threads}></wk-notes>` : nothing}
    ${adding ? html`<wk-notes .adding=${true} .on=${targetOfPart(parts, place)}></wk-notes>` : nothing}`;
}

const NO_THREADS: readonly Thread[] = [];
const ON = new Map(PAGE_SECTIONS.map((section) => [section, { kind: 'page', section } as const]));

/** What is noted on a section that the page puts round the text, below it, and a way to note one more. */
export const notesOnSection = ({ page }: PlacedNotes, section: PageSection): TemplateResult =>
  html`<wk-notes class="on-section" .threads=${page.get(section) ?? NO_THREADS} .on=${ON.get(section)} .called=${SECTION_WORDS[section]}></wk-notes>`;

/** Notes on sections that are not on this page, since the text has them itself. */
export const notesElsewhere = ({ page }: PlacedNotes, shown: (section: PageSection) => boolean): Thread[] =>
  [...page].flatMap(([section, threads]) => (shown(section) ? [] : [...threads]));

/** Notes on a result of a scenario, and what one more would stand on; inputs take none. */
export function notedNumber(
  { numbers }: PlacedNotes,
  quantity: string | undefined,
  scenario: string | undefined,
): { readonly threads: readonly Thread[]; readonly on?: NoteTarget } {
  if (quantity === undefined || scenario === undefined || !isValue(quantity)) return { threads: [] };
  const on = { kind: 'number', quantity, scenario } as const;
  return { on, threads: numbers.filter(({ note }) => keyOfTarget(note.on) === keyOfTarget(on)) };
}

/** Notes of several places under one heading, each with what it stands on; a press on a number opens its working. */
export function notesTogether(
  heading: string,
  threads: readonly Thread[],
  scenarios: readonly string[] = [],
): TemplateResult | typeof nothing {
  if (threads.length === 0) return nothing;
  const place = ({ on }: Note) => {
    const words = targetWords(on, (quantity) => capital(labelOf(quantity)));
    const scenario = on.kind === 'number' ? scenarios.indexOf(on.scenario) : -1;
    if (on.kind !== 'number' || scenario < 0) return html`on ${words}`;
    const explain = (event: Event) =>
      ask(event.currentTarget as HTMLElement, 'wk-explain', { scenario, quantity: on.quantity });
    return html`<button type="button" class="number" @click=${explain}>${words}</button>`;
  };
  return html`<section class="noted" aria-label=${heading}><h2>${heading}</h2><wk-notes .threads=${threads} .place=${place}></wk-notes></section>`;
}

/** For each scenario the results that are noted on. */
export const notedOf = ({ numbers }: PlacedNotes, results: readonly { readonly name: string }[]) =>
  results.map(
    ({ name }) =>
      new Set(
        numbers.flatMap(({ note: { on } }) =>
          on.kind === 'number' && on.scenario === name ? [on.quantity] : [],
        ),
      ),
  );

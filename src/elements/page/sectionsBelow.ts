/** What the page puts below the text: sections that the text does not have itself, each with what is noted on it. */
import { html, nothing, type TemplateResult } from 'lit';
import type { PlacedNotes } from '../../notebook/notePlaces.ts';
import type { PageSection } from '../../notebook/noteSchema.ts';
import type { Notebook } from '../../notebook/read.ts';
import { capital, type Reading } from '../../plots/reading.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { readingNotes } from '../../study/readingNotes.ts';
import { wordsIn } from '../../units/inWords.ts';
import type { Problem } from '../../units/problem.ts';
import '../cells/wk-cautions.ts';
import '../cells/wk-checks.ts';
import '../cells/wk-compare.ts';
import '../cells/wk-ledger.ts';
import '../cells/wk-sources.ts';
import { notesElsewhere, notesOnSection, notesTogether } from './placed.ts';

export interface Below {
  readonly notebook: Notebook | undefined;
  readonly placed: PlacedNotes;
  readonly shows: (section: PageSection) => boolean;
  readonly run: Run | undefined;
  readonly results: readonly ScenarioResult[];
  readonly reading: Reading;
}

/** How the text was read, where older versions read it another way or a key was read over. */
function howRead({ notebook, run, reading }: Below): TemplateResult | typeof nothing {
  const notes = notebook && run ? readingNotes(notebook, run) : [];
  if (notes.length === 0) return nothing;
  const line = ({ what, found, line, todo }: Problem) =>
    html`<li>${wordsIn(what, reading.system)}${found === undefined ? nothing : html`: <q>${found}</q>`}${line === undefined ? nothing : ` (line ${line} of the text)`}${todo === undefined ? nothing : html`<br /><span class="quiet">${capital(todo)}.</span>`}</li>`;
  return html`<section class="noted" id="how-read" aria-label="How the text was read"><h2>How the text was read</h2><ul>${notes.map(line)}</ul></section>`;
}

export function sectionsBelow(below: Below): TemplateResult {
  const { placed, shows, run, results, reading } = below;
  const noted = (section: PageSection, shown: TemplateResult) =>
    shows(section) ? html`${shown}${notesOnSection(placed, section)}` : nothing;
  const elsewhere = [...placed.lost, ...notesElsewhere(placed, shows)];
  return html`
    ${howRead(below)}
    ${notesTogether('Notes whose place is gone', elsewhere, reading.order)}
    ${noted('ledger', html`<wk-ledger id="ledger" .results=${run?.scenarios ?? results} .reading=${reading}></wk-ledger>`)}
    ${noted('compare', html`<wk-compare id="compare" .results=${results} .reading=${reading}></wk-compare>`)}
    ${noted('checks', html`<wk-checks id="checks" .sources=${run?.tables.sources} tabindex="-1" .results=${results} .reading=${reading}></wk-checks>`)}
    ${noted('cautions', html`<wk-cautions id="cautions" .results=${results} .system=${reading.system}></wk-cautions>`)}
    ${noted('sources', html`<wk-sources id="sources" .run=${run} .reading=${reading}></wk-sources>`)}`;
}

/** What differs between two texts of a notebook, for whoever reads it: in words, and in the figures that moved. */
import { html, nothing, type TemplateResult } from 'lit';
import type { ResultName } from '../../model/quantities.ts';
import type { Told } from '../../notebook/bodyDifferences.ts';
import { capital, inWords, labelOf, type Reading, show, unitOf } from '../../plots/reading.ts';
import type { Figures } from '../../store/figuresOf.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import { formatRange } from '../../units/format.ts';
import type { Problem } from '../../units/problem.ts';

/** What a change is judged by. */
export const HEADLINES: readonly ResultName[] = ['nitrogenKeptKg', 'netCost', 'labourHours', 'capitalCost'];

const HEADS: Readonly<Record<Told['of'], string>> = {
  inputs: 'Inputs',
  scenarios: 'Scenarios',
  cells: 'Figures and tables',
  words: 'Words',
  notes: 'Notes',
};

/** `same` where the two texts are one to the letter; `told` is undefined where one of them cannot be read. */
export function differencesTold(same: boolean, told: readonly Told[] | undefined) {
  if (same) return html`<p>Nothing: it is the same to the letter.</p>`;
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

/** The figures of an earlier text, or why there are none; undefined until they are worked out. */
export type Earlier = Figures | { readonly problems: readonly Problem[] } | undefined;

export interface MovedFigures {
  readonly earlier: Earlier;
  readonly run: Run | undefined;
  readonly results: readonly ScenarioResult[];
  readonly system: Reading['system'];
  /** What the earlier one is called above its column, and in a sentence. */
  readonly heading: string;
  readonly called: string;
  /** Heading of the later one's column. */
  readonly later?: string;
}

export function movedFigures({
  earlier,
  run,
  results,
  system,
  heading,
  called,
  later = 'Now',
}: MovedFigures): TemplateResult {
  if (!earlier)
    return html`<p class="quiet" role="status">The figures of ${called} are being worked out …</p>`;
  if ('problems' in earlier)
    return html`<p>There are no figures of ${called}: ${earlier.problems[0]?.what ?? 'its text cannot be read'}.</p>`;
  const readingOf = ({ currency, year }: Run): Reading => ({ currency, year, system });
  const [was, is] = [readingOf(earlier.run), run && readingOf(run)];
  const names = [...new Set([...earlier.results, ...results].map(({ name }) => name))];
  const moved = HEADLINES.flatMap((quantity) =>
    names.map((name) => {
      const [old, now] = [earlier.results, results].map((all) => all.find((each) => each.name === name));
      return {
        quantity,
        name,
        before: cell(old, quantity, was),
        after: is ? cell(now, quantity, is) : NONE,
      };
    }),
  ).filter(({ before, after }) => before.text !== after.text);
  if (moved.length === 0)
    return html`<p>${capital(inWords(HEADLINES.map(labelOf)))}: the same ${later === 'Now' ? 'as now' : 'on both'} in every scenario, as far as is shown.</p>`;
  return html`<div class="scroll" tabindex="0" role="group" aria-label="Figures that moved"><table>
      <thead><tr><th scope="col">What moved</th><th scope="col" class="n">${heading}</th><th scope="col" class="n">${later}</th></tr></thead>
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

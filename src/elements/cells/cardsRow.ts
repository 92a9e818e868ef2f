/** One measure on one card: its number, its likely range and a bar on the scale that all cards share. */
import { html, nothing, svg, type TemplateResult } from 'lit';
import { GREYS, INK, scenarioColour } from '../../plots/palette.ts';
import { type Reading, show } from '../../plots/reading.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { formatDifference } from '../../units/format.ts';
import { amountOf, bestOf, type Measure } from '../parts/measures.ts';
import { absentMark, numberButton } from '../parts/number.ts';

/** A scenario on a card, and its place in the notebook, which gives its colour and its working. */
export interface Card {
  readonly result: ScenarioResult;
  readonly place: number;
}

type Range = readonly [number, number];

/** P10 and P90; null where nothing was drawn or the draws do not spread. */
function rangeOf(measure: Measure, { values, bands }: ScenarioResult): Range | null {
  if (!bands) return null;
  const low = amountOf(measure, values, bands.p10);
  const high = amountOf(measure, values, bands.p90);
  return low === null || high === null || !(high > low) ? null : [low, high];
}

function bar(value: number, range: Range | null, [least, most]: Range, colour: string): TemplateResult {
  const at = (v: number) => (most > least ? ((v - least) / (most - least)) * 100 : 0);
  const [from, to] = [Math.min(at(0), at(value)), Math.max(at(0), at(value))];
  return svg`<svg viewBox="0 0 100 5" preserveAspectRatio="none" aria-hidden="true">
      <rect x="0" y="0" width="100" height="5" fill=${GREYS.ground}></rect>
      <rect x=${from} y="0" width=${Math.max(0, to - from)} height="5" fill=${colour} fill-opacity="0.55"></rect>
      ${range ? svg`<rect x=${at(range[0])} y="1.75" width=${at(range[1]) - at(range[0])} height="1.5" fill=${INK}></rect>` : nothing}
    </svg>` as TemplateResult;
}

/** How far a number stands from the base's, as a reader finds it who subtracts what is shown: "+179 kg". */
function apartFrom(value: number, base: number, unit: string, reading: Reading): string {
  // The currency stands once, before the value.
  const apart = formatDifference(value, base, unit.startsWith('money') ? '' : unit, reading);
  return /[1-9]/.test(apart) ? `${value > base ? '+' : '\u2212'}${apart}` : 'the same';
}

/** The row of a measure on the card at `index`; with its distance from the card at `base`, where one is chosen. */
export function measureRow(
  measure: Measure,
  cards: readonly Card[],
  index: number,
  reading: Reading,
  base?: number,
): TemplateResult {
  const { result, place } = cards[index];
  const numbers = cards.map((card) => amountOf(measure, card.result.values));
  const ranges = cards.map((card) => rangeOf(measure, card.result));
  const all = [0, ...numbers.filter((n) => n !== null), ...ranges.flatMap((r) => r ?? [])];
  const value = numbers[index];
  const unit = measure.perDay ? 'h' : measure.unit;
  // The currency stands once, before the value.
  const said = (v: number) => show(v, unit.startsWith('money') ? '' : unit, reading, 2);
  const range = ranges[index];
  const from = base === undefined || base === index ? null : numbers[base];
  return html`<div class="row ${bestOf(numbers, measure.better) === index ? 'best' : ''}">
      <dt>${measure.label}${measure.perDay ? ', hours a day' : ''}</dt>
      <dd>
        ${
          value === null
            ? absentMark(measure.absent)
            : numberButton(show(value, unit, reading), {
                scenario: place,
                scenarioName: result.name,
                quantity: measure.quantity,
                label: measure.label,
                own: reading.own?.[place]?.has(measure.quantity),
                noted: reading.noted?.[place]?.has(measure.quantity),
              })
        }
        ${value === null || from == null ? nothing : html`<span class="apart">${apartFrom(value, from, unit, reading)}</span>`}
        ${range ? html`<span class="range"><span class="hidden">likely </span>${said(range[0]).number}–${said(range[1]).number}</span>` : nothing}
      </dd>
      ${value === null ? nothing : bar(value, range, [Math.min(...all), Math.max(...all)], scenarioColour(place))}
    </div>`;
}

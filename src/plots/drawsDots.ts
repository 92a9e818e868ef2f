/** How sure a result is: twenty equally likely values for each scenario, and how often each is best. */

import { axisX, dot, plot, ruleY, text } from '@observablehq/plot';
import { quantileSorted } from 'd3-array';
import { betterOf } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import { drawsOf, shareBest } from '../uncertainty/percentiles.ts';
import { hundredthsOf } from '../uncertainty/sentences.ts';
import { formatWhole } from '../units/format.ts';
import { type AxisUnit, axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, overhang } from './frame.ts';
import { GREYS, INK, PAPER, scenarioColour } from './palette.ts';
import { capital, inWords, labelOf, moneyOf, type Reading, show, unitOf } from './reading.ts';
import { verdictOf } from './verdict.ts';

/** Dots a scenario: few enough to count, so that one dot is one chance in twenty. */
const DOTS = 20;
const DOT_PX = 5;

export interface DrawsView {
  readonly measure: ResultName;
  readonly names: readonly string[];
  readonly shown?: readonly number[];
}

interface Spread {
  readonly scenario: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Twenty values that are equally likely. */
  readonly likely: readonly number[];
}

/** Spread of each scenario that has the measure in every draw. */
export function spreadsOf(draws: Draws, measure: ResultName, shown: readonly number[]): Spread[] {
  return shown.flatMap((scenario) => {
    const sorted = drawsOf(draws, measure, scenario).filter(Number.isFinite).sort();
    if (sorted.length < draws.count || sorted.length === 0) return [];
    const at = (p: number) => quantileSorted(sorted as ArrayLike<number> as number[], p) as number;
    return [
      {
        scenario,
        p10: at(0.1),
        p50: at(0.5),
        p90: at(0.9),
        likely: Array.from({ length: DOTS }, (_, k) => at((k + 0.5) / DOTS)),
      },
    ];
  });
}

export function drawsFinding(
  draws: Draws,
  { measure, names, shown = names.map((_, k) => k) }: DrawsView,
  reading: Reading,
): string {
  const better = betterOf(measure);
  const spreads = spreadsOf(draws, measure, shown);
  const unit = unitOf(measure);
  const said = (v: number) => show(v, unit, reading).text;
  if (spreads.length === 0) return `${capital(labelOf(measure))}: no scenario has it in every draw.`;
  if (spreads.length === 1 || !better || shown.length < names.length) {
    const parts = spreads.map((s) => `${said(s.p10)} to ${said(s.p90)} in “${names[s.scenario]}”`);
    return `${capital(labelOf(measure))}: in 8 of 10 draws ${inWords(parts)}.`;
  }
  const shares = shareBest(draws, measure, better);
  const order = [...spreads].sort((a, b) => shares[b.scenario] - shares[a.scenario]);
  const { wins } = verdictOf(measure);
  const [top, ...rest] = order;
  const said100 = hundredthsOf(shares);
  // One that is never best is not in the race.
  const others = rest
    .filter((s) => shares[s.scenario] > 0)
    .map((s) => `“${names[s.scenario]}” in ${said100[s.scenario]}`);
  const who = names.length === 2 ? `“${names[rest[0].scenario]}”` : 'the others';
  return `“${names[top.scenario]}” ${wins} than ${who} in ${said100[top.scenario]} of 100 draws${others.length > 0 ? `, ${inWords(others)}` : ''}.`;
}

export function drawsFigure(draws: Draws, view: DrawsView, reading: Reading): Figure {
  const { measure, names, shown = names.map((_, k) => k) } = view;
  const finding = drawsFinding(draws, view, reading);
  const spreads = spreadsOf(draws, measure, shown);
  if (spreads.length === 0) return emptyFigure(finding);
  const unit = unitOf(measure);
  const said = (v: number) => show(v, unit, reading).text;
  const better = betterOf(measure);
  const shares = better ? shareBest(draws, measure, better) : null;
  const money = unit.startsWith('money') ? ` Money in ${moneyOf(reading)}.` : '';
  return {
    finding,
    legend: [],
    caption: `Each dot is one chance in ${DOTS}; the line spans 8 of 10 draws, its mark is the middle. ${formatWhole(draws.count)} draws of ${draws.uncertain.length} uncertain numbers, the same for every scenario.${money}`,
    table: {
      caption: `${capital(labelOf(measure))} in ${formatWhole(draws.count)} draws, seed ${draws.seed}`,
      head: [
        '',
        'low (1 in 10 below)',
        'middle',
        'high (1 in 10 above)',
        ...(shares ? ['best, of 100 draws'] : []),
      ],
      rows: spreads.map((s) => [
        names[s.scenario],
        said(s.p10),
        said(s.p50),
        said(s.p90),
        ...(shares ? [hundredthsOf(shares)[s.scenario]] : []),
      ]),
    },
    draw: (width) => drawDots(spreads, names, said, axisIn(unit, reading), width),
  };
}

interface Placed {
  readonly value: number;
  /** Place in its stack, from 0. */
  readonly up: number;
  readonly scenario: number;
}

/** Stacks dots that would overlap: each goes to the column of the first one it touches. */
export function stackDots(
  values: readonly number[],
  touching: number,
): { readonly value: number; readonly up: number }[] {
  let start = Number.NEGATIVE_INFINITY;
  let up = 0;
  let column: number[] = [];
  const out: { value: number; up: number }[] = [];
  const close = () => {
    const middle = column.reduce((a, v) => a + v, 0) / column.length;
    column.forEach((_, k) => {
      out.push({ value: middle, up: k });
    });
  };
  for (const value of values) {
    if (value - start < touching) up++;
    else {
      if (column.length > 0) close();
      [start, up, column] = [value, 0, []];
    }
    column[up] = value;
  }
  if (column.length > 0) close();
  return out;
}

function drawDots(
  spreads: readonly Spread[],
  names: readonly string[],
  said: (v: number) => string,
  axis: AxisUnit,
  width: number,
): Element {
  const all = spreads.flatMap((s) => s.likely);
  const least = Math.min(0, ...all);
  const most = Math.max(0, ...all);
  // Far from 0 the dots would all stand on one spot.
  const near = least === 0 && Math.min(...all) > 0.5 * most;
  const low = near ? Math.min(...all) - 0.15 * (most - Math.min(...all)) : least < 0 ? axis.end(least) : 0;
  const domain: [number, number] = [low, near ? most : most > 0 ? axis.end(most) : 0];
  const margins = {
    marginLeft: overhang(said(domain[0])),
    marginRight: overhang(said(domain[1])),
    marginTop: 4,
    marginBottom: 28,
  };
  const perPx = (domain[1] - domain[0]) / Math.max(1, width - margins.marginLeft - margins.marginRight);
  const placed = spreads.flatMap((s): Placed[] =>
    stackDots(s.likely, 2 * DOT_PX * perPx).map((d) => ({ ...d, scenario: s.scenario })),
  );
  const stack = Math.max(...placed.map((p) => p.up)) + 1;
  const band = 42 + Math.max(2, stack) * 2 * DOT_PX;
  // y counts pixels down from the top of the drawing.
  const base = (scenario: number) => (spreads.findIndex((s) => s.scenario === scenario) + 1) * band - 12;
  const height = spreads.length * band;
  return plot({
    ...frame(width, height + 32),
    ...margins,
    x: { domain, label: null },
    y: { domain: [0, height], range: [4, height + 4], axis: null },
    marks: [
      axisX({
        ticks: axis.ticks(...domain, Math.max(2, Math.floor(width / 130))),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: said,
      }),
      ruleY(spreads, {
        x1: domain[0],
        x2: domain[1],
        y: (s: Spread) => base(s.scenario),
        stroke: GREYS.rule,
      }),
      dot(placed, {
        x: 'value',
        y: (p: Placed) => base(p.scenario) - DOT_PX - p.up * 2 * DOT_PX,
        r: DOT_PX - 0.6,
        fill: { value: (p: Placed) => scenarioColour(p.scenario), scale: null },
        title: (p: Placed) => `${names[p.scenario]}, one chance in ${DOTS}: about ${said(p.value)}`,
      }),
      ruleY(spreads, {
        x1: 'p10',
        x2: 'p90',
        y: (s: Spread) => base(s.scenario) + 5,
        stroke: INK,
        strokeWidth: 2.5,
      }),
      dot(spreads, {
        x: 'p50',
        y: (s: Spread) => base(s.scenario) + 5,
        r: 4.5,
        fill: PAPER,
        stroke: INK,
        strokeWidth: 2,
        title: (s: Spread) => `${names[s.scenario]}, the middle of the draws: ${said(s.p50)}`,
      }),
      text(spreads, {
        frameAnchor: 'left',
        dx: 4 - margins.marginLeft,
        y: (s: Spread) => base(s.scenario) - band + 22,
        text: (s: Spread) => `${names[s.scenario]}: ${said(s.p10)} to ${said(s.p90)}`,
        textAnchor: 'start',
        fontWeight: 600,
        fill: { value: (s: Spread) => scenarioColour(s.scenario), scale: null },
      }),
    ],
  });
}

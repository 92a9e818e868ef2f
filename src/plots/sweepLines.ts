/** A result while one input is turned, a line for each scenario; and where two of them change places. */

import { axisX, axisY, dot, gridY, lineY, plot, ruleX, ruleY, text } from '@observablehq/plot';
import type { ResultName } from '../model/quantities.ts';
import { resultIn } from '../study/rows.ts';
import type { BreakEvens } from '../whatif/breakEven.ts';
import type { Sweep } from '../whatif/sweep.ts';
import { axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, hits, leftMargin, overhang } from './frame.ts';
import { GREYS, INK, PAPER, scenarioColour, scenarioSymbol } from './palette.ts';
import { apart, drawPanels } from './panels.ts';
import { capital, inWords, labelOf, moneyOf, type Reading, show, unitOf } from './reading.ts';
import { noteOf, orNothing, saidSpan, saidTurn, saidValue, verdictOf } from './verdict.ts';

export interface SweepView {
  readonly measure: ResultName;
  /** Every scenario of the notebook, in its order. */
  readonly names: readonly string[];
  /** Places of the scenarios to draw; all when absent. */
  readonly shown?: readonly number[];
  readonly flips?: BreakEvens | null;
  /** To build each scenario, for saying what has to pay for itself. */
  readonly capital?: readonly (number | null)[];
}

const valueAt = (
  { results, scenarios }: Sweep,
  measure: ResultName,
  step: number,
  scenario: number,
): number => resultIn(results, measure)[step * scenarios + scenario];

/** "Between 5 and 54 head “Slats” costs from … to …; …" */
export function sweepFinding(
  sweep: Sweep,
  { measure, names, shown = names.map((_, k) => k) }: SweepView,
  reading: Reading,
): string {
  const { turn, at } = sweep;
  const unit = unitOf(measure);
  const last = at.length - 1;
  const said = (v: number) => show(v, unit, reading).text;
  const scale = Math.max(0, ...resultIn(sweep.results, measure).filter(Number.isFinite).map(Math.abs));
  const parts = shown.flatMap((s) => {
    const [a, b] = [0, last].map((step) => orNothing(valueAt(sweep, measure, step, s), scale));
    if (!Number.isFinite(a) || !Number.isFinite(b)) return [];
    if (said(a) === said(b)) {
      const all = at.map((_, step) => orNothing(valueAt(sweep, measure, step, s), scale));
      const [low, high] = [Math.min(...all), Math.max(...all)];
      return said(low) === said(high)
        ? [`stays ${said(a)} in “${names[s]}”`]
        : [`is ${said(a)} at both ends and ${said(low)} to ${said(high)} between in “${names[s]}”`];
    }
    return [`goes from ${said(a)} to ${said(b)} in “${names[s]}”`];
  });
  const span = `From ${saidSpan(turn, at[0], at[last], reading)}${turn.name === 'headCount' ? '' : ` (${turn.label})`}`;
  return parts.length === 0
    ? `${span}: no scenario has ${labelOf(measure)}.`
    : `${span}, ${labelOf(measure)} ${inWords(parts)}.${noteOf(turn)}`;
}

/** The flips in a sentence that a keeper can act on. */
export function flipFinding(
  flips: BreakEvens,
  view: Pick<SweepView, 'names' | 'capital'>,
  reading: Reading,
): string {
  return `${flipWords(flips, view, reading)}${noteOf(flips.turn)}`;
}

function flipWords(
  flips: BreakEvens,
  { names, capital: build }: Pick<SweepView, 'names' | 'capital'>,
  reading: Reading,
): string {
  const { turn, first, second, ties, measure, from, to } = flips;
  const { wins, byMore } = verdictOf(measure);
  const [a, b] = [`“${names[first]}”`, `“${names[second]}”`];
  const span = `from ${saidSpan(turn, from, to, reading)}${turn.name === 'headCount' ? '' : ` (${turn.label})`}`;
  if (!flips.comparable)
    return `${a} and ${b} cannot be set against each other: one of them has no ${labelOf(measure)}.`;
  const other = (k: number) => (k === first ? second : first);
  const winner = (more: number) => (byMore ? more : other(more));
  if (ties.length === 0) {
    if (flips.moreAtLow === null) return `${a} and ${b} do not part in ${labelOf(measure)} ${span}.`;
    const best = winner(flips.moreAtLow);
    return `“${names[best]}” ${wins} than “${names[other(best)]}” all the way ${span}; the answer does not flip.`;
  }
  const at = ties.map((tie) => saidTurn(turn, tie.at, reading));
  if (ties.length === 1) {
    const [below, above] = [winner(ties[0].moreBelow), winner(ties[0].moreAbove)];
    const dearer = (k: number) => (build?.[k] ?? 0) > (build?.[other(k)] ?? 0);
    const cost = unitOf(measure).startsWith('money') && !byMore;
    if (cost && dearer(above))
      return `Below ${at[0]} “${names[above]}” does not pay for itself against “${names[below]}”: “${names[below]}” ${wins} there, “${names[above]}” above.`;
    if (cost && dearer(below))
      return `Above ${at[0]} “${names[below]}” does not pay for itself against “${names[above]}”: “${names[above]}” ${wins} there, “${names[below]}” below.`;
    return `Below ${at[0]} “${names[below]}” ${wins}, above it “${names[above]}” does.`;
  }
  const order = [winner(ties[0].moreBelow), ...ties.map((tie) => winner(tie.moreAbove))];
  const stretches = order.map((k, i) =>
    i === ties.length ? `“${names[k]}” above ${at[i - 1]}` : `“${names[k]}” up to ${at[i]}`,
  );
  return `The answer flips ${ties.length} times ${span}. What ${wins}: ${stretches.join(', then ')}.`;
}

export function sweepFigure(sweep: Sweep, view: SweepView, reading: Reading): Figure {
  const { measure, names, flips, shown = names.map((_, k) => k) } = view;
  const { turn, at } = sweep;
  const finding = flips ? flipFinding(flips, view, reading) : sweepFinding(sweep, view, reading);
  const lines = shown.filter((s) => at.some((_, step) => Number.isFinite(valueAt(sweep, measure, step, s))));
  if (lines.length === 0) return emptyFigure(finding);
  const unit = unitOf(measure);
  const said = (v: number) => show(v, unit, reading).text;
  const money = unit.startsWith('money') ? ` Money in ${moneyOf(reading)}.` : '';
  const absent = shown.filter((s) => !lines.includes(s)).map((s) => `“${names[s]}”`);
  return {
    finding,
    legend: lines.map((s) => ({ label: names[s], fill: scenarioColour(s), symbol: scenarioSymbol(s) })),
    caption: `Across, ${turn.label}; up, ${labelOf(measure)}. The upright line is where it stands now.${flips && flips.ties.length > 0 ? ' The ring is where the two are equal.' : ''}${absent.length > 0 ? ` There is none in ${inWords(absent)}.` : ''}${money}`,
    table: {
      caption: `${capital(labelOf(measure))} by ${turn.label}`,
      head: [turn.label, ...lines.map((s) => names[s])],
      rows: at.map((value, step) => [
        saidValue(turn, value, reading),
        ...lines.map((s) => said(valueAt(sweep, measure, step, s))),
      ]),
    },
    draw: (width) => drawSweep(sweep, { ...view, shown: lines }, reading, width),
  };
}

interface Point {
  readonly at: number;
  readonly value: number;
  readonly scenario: string;
}

function drawSweep(
  sweep: Sweep,
  { measure, names, flips, shown = [] }: SweepView,
  reading: Reading,
  width: number,
): Element {
  const { at, turn } = sweep;
  const unit = unitOf(measure);
  const said = (v: number) => show(v, unit, reading).text;
  const axis = axisIn(unit, reading);
  const lines = shown.map((s) => ({
    name: names[s],
    points: at.map(
      (value, step): Point => ({ at: value, value: valueAt(sweep, measure, step, s), scenario: names[s] }),
    ),
  }));
  const points = lines.flatMap((line) => line.points).filter((p) => Number.isFinite(p.value));
  const low = Math.min(0, ...points.map((p) => p.value));
  const high = Math.max(0, ...points.map((p) => p.value));
  const reach: [number, number] = [low < 0 ? axis.end(low) : 0, high > 0 ? axis.end(high) : 0];
  const span = [at[0], at[at.length - 1]] as const;
  const across = axisIn(turn.unit, reading);
  const says = (name: string, x: number, y: number) =>
    `${name}, ${turn.label} ${saidValue(turn, x, reading)}: ${said(y)}`;
  if (apart(lines))
    return drawPanels(
      {
        lines: lines.map(({ name, points: own }, k) => ({
          name,
          colour: scenarioColour(shown[k]),
          points: own.filter((p) => Number.isFinite(p.value)).map((p) => ({ x: p.at, y: p.value })),
        })),
        x: [at[0], at[at.length - 1]],
        y: reach,
        saidX: (v) => saidValue(turn, v, reading),
        saidY: said,
        ticksX: (count) => across.ticks(...span, count),
        ticksY: (count) => axis.ticks(...reach, count),
        now: turn.now,
        says: (name, { x, y }) => says(name, x, y),
      },
      width,
    );
  const every = Math.max(1, Math.round(at.length / 6));
  const marked = lines.flatMap(({ points: own }, k) =>
    own.filter((p, i) => Number.isFinite(p.value) && (i + k) % every === 0),
  );
  const rings = (flips?.ties ?? []).map((tie) => ({
    at: tie.at,
    value: between(
      sweep,
      measure,
      shown.includes(flips?.first ?? -1) ? (flips?.first as number) : shown[0],
      tie.at,
    ),
  }));
  return plot({
    ...frame(width, Math.min(330, Math.max(220, width * 0.45))),
    marginLeft: leftMargin(reach.map(said)),
    marginRight: overhang(saidValue(turn, at[at.length - 1], reading)),
    marginTop: 22,
    marginBottom: 34,
    x: { domain: [at[0], at[at.length - 1]], label: null },
    y: { domain: reach, label: null },
    color: { type: 'ordinal', domain: names, range: names.map((_, k) => scenarioColour(k)) },
    symbol: { domain: names, range: names.map((_, k) => scenarioSymbol(k)) },
    marks: [
      gridY({ stroke: GREYS.rule, ticks: axis.ticks(...reach, 4) }),
      axisY({ ticks: axis.ticks(...reach, 4), tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      axisX({
        ticks: across.ticks(...span, Math.max(2, Math.floor(width / 110))),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (v: number) => saidValue(turn, v, reading),
      }),
      ruleY([0], { stroke: INK }),
      turn.now >= at[0] && turn.now <= at[at.length - 1]
        ? [
            ruleX([turn.now], { stroke: GREYS.quiet, strokeDasharray: '3 3' }),
            text([turn.now], {
              x: (v: number) => v,
              frameAnchor: 'top',
              dy: -14,
              text: () => 'now',
              fill: GREYS.quiet,
            }),
          ]
        : [],
      lineY(points, {
        x: 'at',
        y: 'value',
        z: 'scenario',
        stroke: { value: 'scenario', scale: 'color' },
        strokeWidth: 2,
      }),
      dot(marked, {
        x: 'at',
        y: 'value',
        fill: { value: 'scenario', scale: 'color' },
        symbol: { value: 'scenario', scale: 'symbol' },
        r: 4.5,
        stroke: PAPER,
      }),
      dot(rings, { x: 'at', y: 'value', r: 8, stroke: INK, strokeWidth: 2 }),
      hits(points, 'at', 'value', (p) => says(p.scenario, p.at, p.value)),
      text(rings, {
        x: 'at',
        y: 'value',
        dy: -16,
        fontWeight: 600,
        fill: INK,
        text: (r: { at: number }) => saidValue(turn, r.at, reading),
      }),
    ],
  });
}

/** The measure between two steps, on the line as it is drawn. */
function between(sweep: Sweep, measure: ResultName, scenario: number, at: number): number {
  const k = Math.max(
    1,
    sweep.at.findIndex((value) => value >= at),
  );
  const [x0, x1] = [sweep.at[k - 1], sweep.at[k]];
  const [y0, y1] = [valueAt(sweep, measure, k - 1, scenario), valueAt(sweep, measure, k, scenario)];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}

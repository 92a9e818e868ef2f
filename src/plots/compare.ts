/** Any result across the scenarios, with its range where draws have been made. */

import { axisX, barX, plot, ruleX, ruleY, text } from '@observablehq/plot';
import type { ResultName } from '../model/quantities.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { formatDifference } from '../units/format.ts';
import { type AxisUnit, axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, roomFor } from './frame.ts';
import { GREYS, INK, type Looks, looksOf, PAPER } from './palette.ts';
import { capital, inWords, labelOf, moneyOf, type Reading, show, unitOf } from './reading.ts';

export interface CompareRow {
  readonly scenario: string;
  readonly index: number;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** The scenarios that have the quantity, in the notebook's order. */
export function compareRows(results: readonly ScenarioResult[], quantity: ResultName): CompareRow[] {
  return results.flatMap(({ name, values, bands }, index) => {
    const value = values[quantity];
    if (typeof value !== 'number') return [];
    return [
      { scenario: name, index, value, low: bands?.p10[quantity] ?? null, high: bands?.p90[quantity] ?? null },
    ];
  });
}

/** "Kept nitrogen: most in “Deep bed”, 412 kg, 140 kg more than “Paddock”. “…” has none." */
export function compareFinding(
  results: readonly ScenarioResult[],
  quantity: ResultName,
  reading: Reading,
): string {
  const label = capital(labelOf(quantity));
  const unit = unitOf(quantity);
  const rows = compareRows(results, quantity).sort((a, b) => b.value - a.value);
  const without = results.filter((r) => typeof r.values[quantity] !== 'number').map((r) => `“${r.name}”`);
  if (rows.length === 0) return `${label}: no scenario has it.`;
  const said = (value: number) => show(value, unit, reading).text;
  const [top] = rows;
  const low = rows[rows.length - 1];
  const absent = without.length === 0 ? '' : ` There is none in ${inWords(without)}.`;
  if (rows.length === 1) return `${label}: ${said(top.value)} in “${top.scenario}”.${absent}`;
  if (said(top.value) === said(low.value))
    return `${label}: the same in ${inWords(rows.map((r) => `“${r.scenario}”`))}, ${said(top.value)}.${absent}`;
  const apart = overlap(top, low) ? ' Their ranges overlap.' : '';
  return `${label}: most in “${top.scenario}”, ${said(top.value)}; least in “${low.scenario}”, ${said(low.value)}, ${formatDifference(top.value, low.value, unit, reading)} less.${apart}${absent}`;
}

const overlap = (top: CompareRow, low: CompareRow) =>
  top.low !== null && low.high !== null && low.high > top.low;

export function compareFigure(
  results: readonly ScenarioResult[],
  quantity: ResultName,
  reading: Reading,
): Figure {
  const finding = compareFinding(results, quantity, reading);
  const rows = compareRows(results, quantity);
  if (rows.length === 0) return emptyFigure(finding);
  const unit = unitOf(quantity);
  const ranged = rows.some((row) => row.low !== null);
  const money = unit.startsWith('money') ? ` Money in ${moneyOf(reading)}.` : '';
  const number = (value: number | null) => show(value, unit, reading).text;
  return {
    finding,
    legend: [],
    caption: `${ranged ? 'The thin line spans what 8 of 10 draws give.' : 'Central values; no draws of this measure have been made.'}${money}`,
    table: {
      caption: capital(labelOf(quantity)),
      head: ['', 'value', ...(ranged ? ['low (1 in 10 below)', 'high (1 in 10 above)'] : [])],
      rows: results.map((r, k) => {
        const row = rows.find((each) => each.index === k);
        return [
          r.name,
          number(row?.value ?? null),
          ...(ranged ? [number(row?.low ?? null), number(row?.high ?? null)] : []),
        ];
      }),
    },
    draw: (width) => drawCompare(looksOf(results, reading.order), rows, number, axisIn(unit, reading), width),
  };
}

function drawCompare(
  { names, colours }: Looks,
  rows: readonly CompareRow[],
  said: (value: number | null) => string,
  axis: AxisUnit,
  width: number,
): Element {
  const values = rows.flatMap((row) => [row.value, row.low ?? row.value, row.high ?? row.value]);
  const most = Math.max(0, ...values);
  const least = Math.min(0, ...values);
  const domain: [number, number] = [least < 0 ? axis.end(least) : 0, most > 0 ? axis.end(most) : 0];
  return plot({
    ...frame(width, 30 + 52 * names.length),
    marginLeft: 2,
    marginRight: roomFor(rows.map((row) => said(row.value))),
    marginTop: 2,
    marginBottom: 28,
    x: { domain, label: null },
    y: { domain: names, axis: null, padding: 0 },
    color: { type: 'ordinal', domain: names, range: colours },
    marks: [
      axisX({
        ticks: axis.ticks(...domain, Math.max(2, Math.min(5, Math.floor(width / 130)))),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (value: number) => (value === 0 ? '' : said(value)),
      }),
      barX(rows, {
        x1: 0,
        x2: 'value',
        y: 'scenario',
        fill: { value: 'scenario', scale: 'color' },
        insetTop: 22,
        insetBottom: 12,
        title: ({ scenario, value, low, high }: CompareRow) =>
          `${scenario}: ${said(value)}${low === null || high === null ? '' : `; 8 of 10 draws from ${said(low)} to ${said(high)}`}`,
      }),
      ruleY(
        rows.filter((row) => row.low !== null),
        { x1: 'low', x2: 'high', y: 'scenario', dy: 5, stroke: PAPER, strokeWidth: 5 },
      ),
      ruleY(
        rows.filter((row) => row.low !== null),
        { x1: 'low', x2: 'high', y: 'scenario', dy: 5, stroke: INK, strokeWidth: 2, marker: 'tick' },
      ),
      ruleX([0], { stroke: INK }),
      text(names, {
        x: 0,
        y: (name: string) => name,
        text: (name: string) => name,
        dx: 1,
        dy: -14,
        textAnchor: 'start',
        lineAnchor: 'middle',
        fontWeight: 600,
      }),
      text(rows, {
        x: (row: CompareRow) => Math.max(0, row.value, row.high ?? 0),
        y: 'scenario',
        text: (row: CompareRow) => said(row.value),
        dx: 7,
        dy: 5,
        textAnchor: 'start',
        fontWeight: 600,
        fill: INK,
      }),
    ],
  });
}

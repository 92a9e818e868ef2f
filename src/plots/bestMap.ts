/** Two inputs against each other: which scenario is best where, by its letter, and by how much, by its shade. */

import { axisX, axisY, dot, plot, rect, text } from '@observablehq/plot';
import type { Better } from '../model/measures.ts';
import { betterOf } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import { resultIn } from '../study/rows.ts';
import type { Grid } from '../whatif/sweep.ts';
import { axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, leftMargin, overhang } from './frame.ts';
import { GREYS, INK, scenarioColour } from './palette.ts';
import { inWords, labelOf, moneyOf, type Reading, show, unitOf } from './reading.ts';
import { noteOf, saidSpan, saidValue, verdictOf } from './verdict.ts';

export interface Cell {
  readonly column: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
  /** Best scenario; null where none has the measure or the best two tie. */
  readonly best: number | null;
  /** How much better it is than the next, 0 or more; null when it stands alone. */
  readonly by: number | null;
}

/** Shades of a lead: at most a third, at most two thirds, all of the largest. */
const SHADES = [0.12, 0.27, 0.45] as const;
/** Narrowest cell that a letter can be read in, CSS pixels. */
const LETTER_PX = 15;

export const letterOf = (scenario: number) => String.fromCharCode(65 + (scenario % 26));

/** The cells of a grid, of the scenarios looked at. */
export function bestCells(
  { acrossAt, downAt, scenarios, results }: Grid,
  measure: ResultName,
  shown: readonly number[],
  better: Better,
): Cell[] {
  const sign = better === 'more' ? 1 : -1;
  const values = resultIn(results, measure);
  return downAt.flatMap((y, row) =>
    acrossAt.map((x, column): Cell => {
      const at = (row * acrossAt.length + column) * scenarios;
      const order = shown
        .map((s) => ({ s, value: sign * values[at + s] }))
        .filter(({ value }) => Number.isFinite(value))
        .sort((a, b) => b.value - a.value);
      const [first, next] = order;
      const tie = next !== undefined && first.value === next.value;
      return {
        column,
        row,
        x,
        y,
        best: first === undefined || tie ? null : first.s,
        by: next === undefined ? null : first.value - next.value,
      };
    }),
  );
}

export interface MapView {
  readonly measure: ResultName;
  readonly names: readonly string[];
  readonly shown?: readonly number[];
}

/** "What costs less net a year over head and rain: “Slats” on 54 % of it (1 to 20 head) and …" */
export function bestMapFinding(
  grid: Grid,
  { measure, names, shown = names.map((_, k) => k) }: MapView,
  reading: Reading,
): string {
  const { wins } = verdictOf(measure);
  const cells = bestCells(grid, measure, shown, betterOf(measure) ?? 'more');
  const decided = cells.filter((c) => c.best !== null);
  if (decided.length === 0) return `No scenario is ahead in ${labelOf(measure)} anywhere here.`;
  const { across, down } = grid;
  const range = (own: readonly Cell[], key: 'x' | 'y', turn: typeof across, all: readonly number[]) => {
    const values = own.map((c) => c[key]);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    if (low === all[0] && high === all[all.length - 1]) return '';
    return `${turn.name === 'headCount' ? '' : `${turn.label} `}${saidSpan(turn, low, high, reading)}`;
  };
  const ofMap = (some: readonly Cell[]) => {
    const share = Math.round((some.length / cells.length) * 100);
    return `${share === 0 ? 'less than 1' : share} % of the map`;
  };
  // Told, so that what is said of the map adds up to all of it.
  const level = cells.filter((c) => c.best === null && c.by !== null);
  const parts = shown
    .map((s) => ({ s, own: decided.filter((c) => c.best === s) }))
    .filter(({ own }) => own.length > 0)
    .sort((a, b) => b.own.length - a.own.length)
    .map(({ s, own }) => {
      if (own.length === cells.length) return `“${names[s]}” everywhere`;
      const where = [range(own, 'x', across, grid.acrossAt), range(own, 'y', down, grid.downAt)].filter(
        (w) => w !== '',
      );
      return `“${names[s]}” on ${ofMap(own)}${where.length > 0 ? ` (${where.join(', ')})` : ''}`;
    })
    .concat(level.length > 0 ? [`a tie for best on ${ofMap(level)}`] : []);
  const leads = decided.flatMap((c) => (c.by === null ? [] : [c.by]));
  const most =
    leads.length > 0
      ? ` The lead is at most ${show(Math.max(...leads), unitOf(measure), reading).text}.`
      : '';
  return `What ${wins} over ${down.label} and ${across.label}: ${inWords(parts)}.${most}${noteOf(across, down)}`;
}

export function bestMapFigure(grid: Grid, view: MapView, reading: Reading): Figure {
  const { measure, names, shown = names.map((_, k) => k) } = view;
  const finding = bestMapFinding(grid, view, reading);
  const cells = bestCells(grid, measure, shown, betterOf(measure) ?? 'more');
  const leads = cells.flatMap((c) => (c.best === null || c.by === null ? [] : [c.by]));
  if (!cells.some((c) => c.best !== null)) return emptyFigure(finding);
  const most = Math.max(0, ...leads);
  const unit = unitOf(measure);
  const said = (v: number) => show(v, unit, reading, 2).text;
  const winners = shown.filter((s) => cells.some((c) => c.best === s));
  const { across, down, acrossAt, downAt } = grid;
  const money = unit.startsWith('money') ? ` Money in ${moneyOf(reading)}.` : '';
  // A table of every cell would be a page long; every second column says as much.
  const columns = acrossAt.flatMap((_, k) =>
    acrossAt.length <= 9 || k % Math.ceil(acrossAt.length / 9) === 0 ? [k] : [],
  );
  return {
    finding,
    legend: winners.map((s) => ({
      label: `${letterOf(s)} ${names[s]}`,
      fill: scenarioColour(s),
      pattern: 'solid' as const,
    })),
    caption: `Each letter is the scenario that is best there. Palest: ahead by up to ${said(most / 3)}; middle: up to ${said((2 * most) / 3)}; darkest: up to ${said(most)}. The ring is where you stand now. Across, ${across.label}; up, ${down.label}.${money}`,
    table: {
      caption: `Best in ${labelOf(measure)}, and by how much: ${down.label} down, ${across.label} across`,
      head: [down.label, ...columns.map((k) => saidValue(across, acrossAt[k], reading))],
      rows: [...downAt.keys()].reverse().map((row) => [
        saidValue(down, downAt[row], reading),
        ...columns.map((k) => {
          const cell = cells[row * acrossAt.length + k];
          if (cell.best === null) return '=';
          return `${letterOf(cell.best)}${cell.by === null ? '' : ` by ${said(cell.by)}`}`;
        }),
      ]),
    },
    draw: (width) => drawMap(grid, cells, most, said, reading, width),
  };
}

function drawMap(
  { across, down, acrossAt, downAt }: Grid,
  cells: readonly Cell[],
  most: number,
  lead: (by: number) => string,
  reading: Reading,
  width: number,
): Element {
  const [edgeX, edgeY] = [edgesOf(acrossAt), edgesOf(downAt)];
  const height = Math.min(420, Math.max(240, width * 0.5));
  // The outer cells reach half a step beyond what was tried; the numbers on the axes do not.
  const marked = ({ unit }: Grid['across'], at: readonly number[], count: number) =>
    axisIn(unit, reading).places(at[0], at[at.length - 1], count);
  const ticksX = marked(across, acrossAt, Math.max(2, Math.floor(width / 110)));
  const ticksY = marked(down, downAt, 6);
  const margins = {
    marginLeft: leftMargin(ticksY.map((v) => saidValue(down, v, reading))),
    marginRight: overhang(saidValue(across, acrossAt[acrossAt.length - 1], reading)),
    marginTop: 12,
    marginBottom: 34,
  };
  const cellWidth = (width - margins.marginLeft - margins.marginRight) / acrossAt.length;
  const cellHeight = (height - 46) / downAt.length;
  const [everyX, everyY] = [Math.ceil(LETTER_PX / cellWidth), Math.ceil(LETTER_PX / cellHeight)];
  const shade = (c: Cell) =>
    SHADES[c.by === null || most === 0 ? 2 : Math.min(2, Math.floor((c.by / most) * 3))];
  const decided = cells.filter((c) => c.best !== null);
  const lettered = decided.filter(
    (c) => c.column % everyX === Math.floor(everyX / 2) && c.row % everyY === Math.floor(everyY / 2),
  );
  return plot({
    ...frame(width, height),
    ...margins,
    x: { domain: [edgeX[0], edgeX[acrossAt.length]], label: null },
    y: { domain: [edgeY[0], edgeY[downAt.length]], label: null },
    marks: [
      rect(decided, {
        x1: (c: Cell) => edgeX[c.column],
        x2: (c: Cell) => edgeX[c.column + 1],
        y1: (c: Cell) => edgeY[c.row],
        y2: (c: Cell) => edgeY[c.row + 1],
        fill: { value: (c: Cell) => scenarioColour(c.best as number), scale: null },
        fillOpacity: { value: shade, scale: null },
        title: ({ best, by, x, y }: Cell) =>
          `${letterOf(best as number)}${by === null ? '' : ` by ${lead(by)}`} at ${across.label} ${saidValue(across, x, reading)}, ${down.label} ${saidValue(down, y, reading)}`,
      }),
      text(lettered, {
        x: 'x',
        y: 'y',
        text: (c: Cell) => letterOf(c.best as number),
        fill: INK,
        fontWeight: 600,
        fontSize: 12,
      }),
      dot([0], { x: () => across.now, y: () => down.now, r: 9, stroke: INK, strokeWidth: 2.5 }),
      axisY({
        ticks: ticksY,
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (v: number) => saidValue(down, v, reading),
      }),
      axisX({
        ticks: ticksX,
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (v: number) => saidValue(across, v, reading),
      }),
    ],
  });
}

/** Borders of cells half way between neighbours, and as far beyond the ends. */
export function edgesOf(at: readonly number[]): number[] {
  if (at.length === 1) return [at[0] - 0.5, at[0] + 0.5];
  const inner = at.slice(1).map((value, k) => (at[k] + value) / 2);
  const last = at.length - 1;
  return [at[0] - (at[1] - at[0]) / 2, ...inner, at[last] + (at[last] - at[last - 1]) / 2];
}

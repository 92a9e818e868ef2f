/** Many lines that would lie on each other: a small drawing for each, on one scale, the others behind it in grey. */
import { areaY, axisX, axisY, gridY, lineY, plot, ruleX, ruleY, text } from '@observablehq/plot';
import { frame, hits, leftMargin } from './frame.ts';
import { GREYS, INK, PAPER } from './palette.ts';

/** So many lines still stand apart in one drawing. */
const IN_ONE = 4;
const PANEL_HEIGHT = 128;

export interface PanelPoint {
  readonly x: number;
  readonly y: number;
  readonly low?: number;
  readonly high?: number;
}

export interface PanelLine {
  readonly name: string;
  readonly colour: string;
  readonly points: readonly PanelPoint[];
}

export interface Panels {
  readonly lines: readonly PanelLine[];
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly saidX: (x: number) => string;
  readonly saidY: (y: number) => string;
  /** Where about so many ticks fall; left to the drawing when absent. */
  readonly ticksX?: (count: number) => number | number[];
  readonly ticksY?: (count: number) => number | number[];
  /** Marked by an upright line in each. */
  readonly now?: number;
  /** What a point says when it is pointed at. */
  readonly says: (name: string, point: PanelPoint) => string;
}

/** Whether these lines are better read one by one. */
export const apart = (lines: readonly unknown[]): boolean => lines.length > IN_ONE;

interface Placed extends PanelPoint {
  readonly name: string;
  readonly column: number;
  readonly row: number;
}

export function drawPanels(
  { lines, x, y, saidX, saidY, ticksX = Number, ticksY = Number, now, says }: Panels,
  width: number,
): Element {
  const columns = width < 420 ? 1 : width < 760 ? 2 : 3;
  const rows = Math.ceil(lines.length / columns);
  const place = (k: number) => ({ column: k % columns, row: Math.floor(k / columns) });
  const own: Placed[] = lines.flatMap(({ name, points }, k) =>
    points.map((point) => ({ ...point, name, ...place(k) })),
  );
  const titles = lines.map(({ name, colour }, k) => ({ name, colour, ...place(k) }));
  const colours = new Map(lines.map(({ name, colour }) => [name, colour]));
  const facet = { fx: 'column', fy: 'row' } as const;
  const banded = own.filter(({ low, high }) => low !== undefined && high !== undefined);
  return plot({
    ...frame(width, rows * PANEL_HEIGHT + 34),
    marginLeft: leftMargin([saidY(y[0]), saidY(y[1])]),
    marginRight: 10,
    marginTop: 20,
    marginBottom: 30,
    x: { domain: [...x], label: null },
    y: { domain: [...y], label: null },
    fx: { domain: [...Array(columns).keys()], axis: null, padding: 0.06 },
    fy: { domain: [...Array(rows).keys()], axis: null, padding: 0.24 },
    marks: [
      gridY({ stroke: GREYS.rule, ticks: ticksY(3) }),
      axisY({ ticks: ticksY(3), tickSize: 0, fill: GREYS.quiet, tickFormat: saidY, facetAnchor: 'left' }),
      axisX({ ticks: ticksX(2), tickSize: 0, fill: GREYS.quiet, tickFormat: saidX, facetAnchor: 'bottom' }),
      ruleY([Math.max(y[0], 0)], { stroke: INK }),
      ...(now === undefined ? [] : [ruleX([now], { stroke: GREYS.quiet, strokeDasharray: '3 3' })]),
      // Not by place: all lines stand in every panel.
      lineY(
        lines.flatMap(({ name, points }) => points.map((point) => ({ ...point, name }))),
        { x: 'x', y: 'y', z: 'name', stroke: GREYS.rule, strokeWidth: 1.2 },
      ),
      areaY(banded, {
        ...facet,
        x: 'x',
        y1: 'low',
        y2: 'high',
        z: 'name',
        fill: { value: ({ name }: Placed) => colours.get(name), scale: null },
        fillOpacity: 0.18,
      }),
      lineY(own, {
        ...facet,
        x: 'x',
        y: 'y',
        z: 'name',
        stroke: { value: ({ name }: Placed) => colours.get(name), scale: null },
        strokeWidth: 2.4,
      }),
      text(titles, {
        ...facet,
        frameAnchor: 'top-left',
        dy: -17,
        text: 'name',
        fontWeight: 600,
        fill: { value: 'colour', scale: null },
        stroke: PAPER,
        strokeWidth: 4,
      }),
      hits(own, 'x', 'y', (point) => says(point.name, point), facet),
    ],
  });
}

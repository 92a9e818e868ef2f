/** Series over the weeks of the winter: the bed as it rises, water that drains, rain that falls. */
import { axisX, axisY, dot, gridY, lineY, plot, ruleY, text } from '@observablehq/plot';
import type { ScenarioResult } from '../model/evaluate.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, roomFor, roundUp } from './frame.ts';
import { GREYS, INK, type Looks, looksOf, PAPER } from './palette.ts';
import { capital, type Reading, show } from './reading.ts';

export interface WeekSeries {
  readonly track: string;
  readonly label: string;
  readonly unit: string;
  /** How the sentence says where a scenario ended. */
  readonly ends: 'level' | 'sum';
}

/** Series worth a figure, by the name a notebook gives. */
export const WEEK_SERIES: Readonly<Record<string, WeekSeries>> = {
  bedDepthM: { track: 'bedDepthM', label: 'bed above the floor', unit: 'm', ends: 'level' },
  bedMoisture: { track: 'bedMoisture', label: 'moisture of the bed', unit: 'fraction', ends: 'level' },
  bedCarbonNitrogen: {
    track: 'bedCarbonNitrogen',
    label: 'carbon to nitrogen in the bed',
    unit: '',
    ends: 'level',
  },
  bedDryMatterKg: { track: 'bedDryMatterKg', label: 'dry matter of the bed', unit: 'kg', ends: 'level' },
  bedNitrogenKg: { track: 'bedNitrogenKg', label: 'nitrogen in the bed', unit: 'kg', ends: 'level' },
  weekDrainageMm: {
    track: 'weekDrainageMm',
    label: 'water draining below the roots',
    unit: 'mm',
    ends: 'sum',
  },
  weekRainMm: { track: 'weekRainMm', label: 'rain', unit: 'mm', ends: 'sum' },
  weekLabourHours: { track: 'weekLabourHours', label: 'hours of work', unit: 'h', ends: 'sum' },
};

export interface WeekPoint {
  readonly scenario: string;
  /** 1 for the first week of the winter. */
  readonly week: number;
  readonly value: number;
}

/** Points of the scenarios that have the series; NaN weeks left out. */
export function weekPoints(results: readonly ScenarioResult[], { track, ends }: WeekSeries): WeekPoint[] {
  return results.flatMap(({ name, tracks, values }) => {
    const points = [...(tracks[track] ?? [])].flatMap((value, week) =>
      Number.isFinite(value) ? [{ scenario: name, week: week + 1, value }] : [],
    );
    const winterWeeks = Math.ceil((values.winterDays ?? 0) / 7);
    const within = ends === 'level' ? points : points.filter((point) => point.week <= winterWeeks);
    return within.some((point) => point.value !== 0) ? within : [];
  });
}

/** Scenarios whose series are the same week by week share one line: one rain falls on all. */
export function sameLines(
  points: readonly WeekPoint[],
): { readonly name: string; readonly of: string; readonly points: readonly WeekPoint[] }[] {
  const lines = new Map<string, { name: string; of: string; points: WeekPoint[] }>();
  for (const scenario of new Set(points.map((point) => point.scenario))) {
    const own = points.filter((point) => point.scenario === scenario);
    const key = own.map((point) => point.value.toPrecision(9)).join(' ');
    const same = lines.get(key);
    if (same) same.name = `${same.name}, ${scenario}`;
    else lines.set(key, { name: scenario, of: scenario, points: own });
  }
  return [...lines.values()];
}

export function weekFinding(
  results: readonly ScenarioResult[],
  series: WeekSeries,
  reading: Reading,
): string {
  const lines = sameLines(weekPoints(results, series));
  if (lines.length === 0) return `${capital(series.label)}: no scenario has it.`;
  const all = lines.length === 1 && results.length > 1 && lines[0].name.includes(', ');
  const said = lines.map(({ name, points }) => {
    const who = all ? '' : ` in “${name.replaceAll(', ', '”, “')}”`;
    if (series.ends === 'sum') {
      const total = points.reduce((sum, point) => sum + point.value, 0);
      const top = points.reduce((a, b) => (b.value > a.value ? b : a));
      return `${show(total, series.unit, reading).text} over the winter${who}, most in week ${top.week}`;
    }
    const last = points[points.length - 1];
    const first = points[0];
    return `from ${show(first.value, series.unit, reading, 2).text} to ${show(last.value, series.unit, reading, 2).text} by week ${last.week}${who}`;
  });
  return `${capital(series.label)}: ${said.join('; ')}.`;
}

export function weekFigure(results: readonly ScenarioResult[], series: WeekSeries, reading: Reading): Figure {
  const finding = weekFinding(results, series, reading);
  const points = weekPoints(results, series);
  const lines = sameLines(points);
  if (lines.length === 0) return emptyFigure(finding);
  const looks = looksOf(results, reading.order);
  const at = (name: string) => looks.names.indexOf(name);
  const one = lines.length === 1;
  const weeks = [...new Set(points.map((point) => point.week))].sort((a, b) => a - b);
  const valueAt = (line: (typeof lines)[number], week: number) =>
    line.points.find((point) => point.week === week)?.value ?? null;
  return {
    finding,
    legend: one
      ? []
      : lines.map(({ name, of }) => ({
          label: name,
          fill: looks.colours[at(of)],
          symbol: looks.symbols[at(of)],
        })),
    caption: 'By week of the winter.',
    table: {
      caption: `${capital(series.label)}${series.unit === '' ? '' : ` by week, ${show(1, series.unit, reading).unit || '%'}`}`,
      head: ['week', ...lines.map((line) => line.name)],
      rows: weeks.map((week) => [
        String(week),
        ...lines.map((line) => show(valueAt(line, week), series.unit, reading).number),
      ]),
    },
    draw: (width) => drawWeeks(lines, looks, series, reading, width),
  };
}

function drawWeeks(
  lines: ReturnType<typeof sameLines>,
  { names, colours, symbols }: Looks,
  series: WeekSeries,
  reading: Reading,
  width: number,
): Element {
  const points = lines.flatMap((line) => line.points);
  const top = roundUp(Math.max(...points.map((point) => point.value)));
  const last = Math.max(...points.map((point) => point.week));
  const said = (value: number) => show(value, series.unit, reading).text;
  const ends = lines.map((line) => line.points[line.points.length - 1]);
  const marked = points.filter((point) => point.week % 4 === 1 || point.week === last);
  return plot({
    ...frame(width, Math.min(300, Math.max(200, width * 0.4))),
    marginLeft: Math.max(54, roomFor([said(top)])),
    marginRight: roomFor(ends.map((point) => said(point.value))),
    marginTop: 12,
    marginBottom: 34,
    x: { domain: [1, last], label: null },
    y: { domain: [0, top], label: null },
    color: { type: 'ordinal', domain: names, range: colours },
    symbol: { domain: names, range: symbols },
    marks: [
      gridY({ stroke: GREYS.rule, strokeOpacity: 1, ticks: 4 }),
      axisY({ ticks: 4, tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      axisX({
        ticks: Math.min(last, Math.floor(width / 90)),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (week: number) => `week ${week}`,
      }),
      ruleY([0], { stroke: INK }),
      lineY(points, {
        x: 'week',
        y: 'value',
        z: 'scenario',
        stroke: { value: 'scenario', scale: 'color' },
        strokeWidth: 2,
      }),
      dot(marked, {
        x: 'week',
        y: 'value',
        fill: { value: 'scenario', scale: 'color' },
        symbol: { value: 'scenario', scale: 'symbol' },
        stroke: PAPER,
        r: 4.5,
      }),
      text(apart(ends, top / 16), {
        x: 'week',
        y: 'value',
        dx: 8,
        textAnchor: 'start',
        fontWeight: 600,
        text: (point: WeekPoint) => said(point.value),
      }),
    ],
  });
}

/** End points whose labels would lie on each other are labelled once. */
function apart(points: readonly WeekPoint[], gap: number): WeekPoint[] {
  const out: WeekPoint[] = [];
  for (const point of points)
    if (out.every((other) => Math.abs(other.value - point.value) > gap)) out.push(point);
  return out;
}

/** Series over the weeks of the winter: the bed as it rises, water that drains, rain that falls. */

import { areaY, axisX, axisY, dot, gridY, lineY, plot, ruleY, text } from '@observablehq/plot';
import type { WeekName } from '../model/quantities.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import type { WeekBand } from '../uncertainty/weekBands.ts';
import { formatRange, formatWhole } from '../units/format.ts';
import { type AxisUnit, axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, hits, roomFor } from './frame.ts';
import { GREYS, INK, type Looks, looksOf, PAPER } from './palette.ts';
import { apart, drawPanels } from './panels.ts';
import { capital, type Reading, show } from './reading.ts';

export interface WeekSeries {
  readonly track: WeekName;
  readonly label: string;
  readonly unit: string;
  /** How the sentence says where a scenario ended. */
  readonly ends: 'level' | 'sum';
}

/** Series worth a figure, by the name a notebook gives. */
export const WEEK_SERIES: Readonly<Record<string, WeekSeries>> = {
  weekPackDepthM: { track: 'weekPackDepthM', label: 'bed above the floor', unit: 'm', ends: 'level' },
  weekPackMoisture: {
    track: 'weekPackMoisture',
    label: 'moisture of the bed',
    unit: 'fraction',
    ends: 'level',
  },
  weekPackCarbonNitrogen: {
    track: 'weekPackCarbonNitrogen',
    label: 'carbon to nitrogen in the bed',
    unit: '',
    ends: 'level',
  },
  weekPackDryMatterKg: {
    track: 'weekPackDryMatterKg',
    label: 'dry matter of the bed',
    unit: 'kg',
    ends: 'level',
  },
  weekPackTemperatureC: {
    track: 'weekPackTemperatureC',
    label: 'temperature inside the bed',
    unit: '°C',
    ends: 'level',
  },
  weekPackNitrogenKg: {
    track: 'weekPackNitrogenKg',
    label: 'nitrogen in the bed',
    unit: 'kg',
    ends: 'level',
  },
  weekDrainageMm: {
    track: 'weekDrainageMm',
    label: 'water draining below the roots',
    unit: 'mm',
    ends: 'sum',
  },
  weekRainMm: { track: 'weekRainMm', label: 'rain', unit: 'mm', ends: 'sum' },
  weekLabourHours: { track: 'weekLabourHours', label: 'hours of work', unit: 'h', ends: 'sum' },
};

/** Spans of one series by scenario name, from this many draws. */
export interface SeriesBands {
  readonly count: number;
  readonly of: ReadonlyMap<string, WeekBand>;
}

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

/** A level to two digits, metres above one to the centimetre, the same in the sentence and at the line's end. */
function saidLevel(value: number, { unit, ends }: WeekSeries, reading: Reading): string {
  const digits = ends === 'sum' || (unit === 'm' && Math.abs(value) >= 1) ? 3 : 2;
  return show(value, unit, reading, digits).text;
}

export function weekFinding(
  results: readonly ScenarioResult[],
  series: WeekSeries,
  reading: Reading,
  bands?: SeriesBands,
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
    return `from ${saidLevel(first.value, series, reading)} to ${saidLevel(last.value, series, reading)} by week ${last.week}${who}`;
  });
  return `${capital(series.label)}: ${said.join('; ')}.${springSpan(lines, series, reading, bands)}`;
}

type Lines = ReturnType<typeof sameLines>;

/** " By spring 8 of 10 draws stand between 0.9 and 1.4 m." */
function springSpan(lines: Lines, series: WeekSeries, reading: Reading, bands?: SeriesBands): string {
  if (series.ends === 'sum') return '';
  const said = lines.flatMap(({ name, of, points }) => {
    const band = bands?.of.get(of);
    const at = points[points.length - 1].week - 1;
    if (!band || !Number.isFinite(band.p10[at])) return [];
    const span = formatRange(band.p10[at], band.p90[at], series.unit, { system: reading.system, digits: 2 });
    return [`${span}${lines.length === 1 ? '' : ` in “${name.replaceAll(', ', '”, “')}”`}`];
  });
  return said.length === 0 ? '' : ` By spring 8 of 10 draws end within ${said.join('; ')}.`;
}

/** The series as lines; with `bands`, the span of the draws lies behind each. */
export function weekFigure(
  results: readonly ScenarioResult[],
  series: WeekSeries,
  reading: Reading,
  bands?: SeriesBands,
): Figure {
  const finding = weekFinding(results, series, reading, bands);
  const points = weekPoints(results, series);
  const lines = sameLines(points);
  if (lines.length === 0) return emptyFigure(finding);
  const looks = looksOf(results, reading.order);
  const at = (name: string) => looks.names.indexOf(name);
  const one = lines.length === 1;
  const ranged = lines.some(({ of }) => bands?.of.has(of));
  const bandAt = (of: string, part: keyof WeekBand, week: number) => bands?.of.get(of)?.[part][week - 1];
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
    caption: `By week of the winter.${ranged ? ` The shade spans what 8 of 10 of ${formatWhole(bands?.count ?? 0)} draws give in each week by itself; the line is the best guess.` : ''}`,
    table: {
      caption: `${capital(series.label)}${series.unit === '' ? '' : ` by week, ${show(1, series.unit, reading).unit || '%'}`}`,
      head: [
        'week',
        ...lines.flatMap(({ name, of }) =>
          bands?.of.has(of) ? [name, `${name}, P10`, `${name}, P50`, `${name}, P90`] : [name],
        ),
      ],
      rows: weeks.map((week) => [
        String(week),
        ...lines.flatMap((line) => [
          show(valueAt(line, week), series.unit, reading).number,
          ...(bands?.of.has(line.of)
            ? (['p10', 'p50', 'p90'] as const).map(
                (part) => show(bandAt(line.of, part, week), series.unit, reading).number,
              )
            : []),
        ]),
      ]),
    },
    draw: (width) => drawWeeks(lines, looks, series, reading, width, bands),
  };
}

/** Long: one drawing; scales, axes and marks share a frame. */
function drawWeeks(
  lines: Lines,
  { names, colours, symbols }: Looks,
  series: WeekSeries,
  reading: Reading,
  width: number,
  bands?: SeriesBands,
): Element {
  const points = lines.flatMap((line) => line.points);
  const spans = lines.flatMap(({ of, points: own }) => {
    const band = bands?.of.get(of);
    if (!band) return [];
    return own.flatMap(({ week }) => {
      const [low, high] = [band.p10[week - 1], band.p90[week - 1]];
      return Number.isFinite(low) && Number.isFinite(high) ? [{ scenario: of, week, low, high }] : [];
    });
  });
  const axis = axisIn(series.unit, reading);
  const levels = [...points.map(({ value }) => value), ...spans.flatMap(({ low, high }) => [low, high])];
  const [bottom, top] = reachOf(levels, axis);
  const last = Math.max(...points.map((point) => point.week));
  const said = (value: number) => show(value, series.unit, reading).text;
  const says = (name: string, week: number, value: number) => {
    const band = bands?.of.get(name);
    const span = band
      ? `; 8 of 10 draws from ${said(band.p10[week - 1])} to ${said(band.p90[week - 1])}`
      : '';
    return `${lines.find(({ of }) => of === name)?.name ?? name}, week ${week}: ${said(value)}${span}`;
  };
  if (apart(lines)) {
    const span = (of: string, week: number) => spans.find((s) => s.scenario === of && s.week === week);
    return drawPanels(
      {
        lines: lines.map(({ name, of, points: own }) => ({
          name,
          colour: colours[names.indexOf(of)],
          points: own.map(({ week, value }) => ({ x: week, y: value, ...span(of, week) })),
        })),
        x: [1, last],
        y: [bottom, top],
        saidX: (week) => `week ${week}`,
        saidY: said,
        ticksY: (count) => axis.ticks(bottom, top, count),
        says: (name, { x, y }) => says(lines.find((line) => line.name === name)?.of ?? name, x, y),
      },
      width,
    );
  }
  const ends = lines.map((line) => line.points[line.points.length - 1]);
  const marked = points.filter((point) => point.week % 4 === 1 || point.week === last);
  return plot({
    ...frame(width, Math.min(300, Math.max(200, width * 0.4))),
    marginLeft: Math.max(54, roomFor([said(top)])),
    marginRight: roomFor(ends.map(({ value }) => saidLevel(value, series, reading))),
    marginTop: 12,
    marginBottom: 34,
    x: { domain: [1, last], label: null },
    y: { domain: [bottom, top], label: null },
    color: { type: 'ordinal', domain: names, range: colours },
    symbol: { domain: names, range: symbols },
    marks: [
      gridY({ stroke: GREYS.rule, strokeOpacity: 1, ticks: axis.ticks(bottom, top, 4) }),
      axisY({ ticks: axis.ticks(bottom, top, 4), tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      axisX({
        ticks: Math.min(last, Math.floor(width / 90)),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (week: number) => `week ${week}`,
      }),
      ruleY([0], { stroke: INK }),
      areaY(spans, {
        x: 'week',
        y1: 'low',
        y2: 'high',
        z: 'scenario',
        fill: { value: 'scenario', scale: 'color' },
        fillOpacity: 0.18,
      }),
      // Edges in each scenario's own colour, so that spans that overlap stay apart.
      ...(['low', 'high'] as const).map((y) =>
        lineY(spans, {
          x: 'week',
          y,
          z: 'scenario',
          stroke: { value: 'scenario', scale: 'color' },
          strokeWidth: 0.75,
          strokeDasharray: '3,2',
        }),
      ),
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
      hits(points, 'week', 'value', ({ scenario, week, value }) => says(scenario, week, value)),
      text(labelled(ends, (top - bottom) / 16), {
        x: 'week',
        y: 'value',
        dx: 8,
        textAnchor: 'start',
        fontWeight: 600,
        text: ({ value }: WeekPoint) => saidLevel(value, series, reading),
      }),
    ],
  });
}

/** End points whose labels would lie on each other are labelled once. */
function labelled(points: readonly WeekPoint[], gap: number): WeekPoint[] {
  const out: WeekPoint[] = [];
  for (const point of points)
    if (out.every((other) => Math.abs(other.value - point.value) > gap)) out.push(point);
  return out;
}

/** From 0, or below it where something is, to a round number above all. */
function reachOf(values: readonly number[], axis: AxisUnit): [number, number] {
  const lowest = Math.min(...values);
  return [lowest < 0 ? axis.end(lowest) : 0, axis.end(Math.max(...values))];
}

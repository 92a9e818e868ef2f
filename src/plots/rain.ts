/** Water through a winter, week by week; and every winter of a weather file beside the others. */

import { axisX, axisY, dot, gridY, lineY, plot, rectY, ruleX, ruleY, text } from '@observablehq/plot';
import type { ResultName } from '../model/quantities.ts';
import { resultIn } from '../study/rows.ts';
import type { Days } from '../whatif/winterDays.ts';
import type { Winters } from '../whatif/winters.ts';
import { type AxisUnit, axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, hits, leftMargin, overhang } from './frame.ts';
import { GREYS, INK, LOSS_LOOKS, PAPER, scenarioColour, scenarioSymbol } from './palette.ts';
import { capital, labelOf, type Reading, show, unitOf } from './reading.ts';
import { orNothing } from './verdict.ts';

const RAIN_FILL = GREYS.rule;

export interface WaterWeek {
  /** 1 for the first week of the winter. */
  readonly week: number;
  readonly rainMm: number;
  readonly drainageMm: number;
  /** At the end of the week. */
  readonly soilWaterMm: number;
  readonly snowWaterMm: number;
}

/** The weeks of the winter; a week of fewer than seven days is the last. */
export function waterWeeks({ series, count, winterDays }: Days): WaterWeek[] {
  const days = Math.min(count, winterDays);
  const sum = (values: Float64Array, from: number, to: number) =>
    values.subarray(from, to).reduce((a, v) => a + v, 0);
  return Array.from({ length: Math.ceil(days / 7) }, (_, week) => {
    const from = week * 7;
    const to = Math.min(days, from + 7);
    return {
      week: week + 1,
      rainMm: sum(series.dayRainMm, from, to),
      drainageMm: sum(series.dayDrainageMm, from, to),
      soilWaterMm: series.daySoilWaterMm[to - 1],
      snowWaterMm: series.daySnowWaterMm[to - 1],
    };
  });
}

/** "atlanticGrassland 2006/07" is the winter of a weather file: sentences and labels name the winter alone. */
const WINTER = /^.* (\d{4}(?:\/\d{2,4})?)$/;
const winterOf = (label: string) => WINTER.exec(label)?.[1] ?? label;
const sourceOf = (label: string) => (WINTER.test(label) ? `the winter ${winterOf(label)}` : label);

export function rainFinding(days: Days, reading: Reading): string {
  const weeks = waterWeeks(days);
  if (weeks.length === 0) return 'There is no weather for this winter.';
  const total = (of: (w: WaterWeek) => number) => weeks.reduce((sum, w) => sum + of(w), 0);
  const mm = (value: number) => show(value, 'mm', reading).text;
  const rain = total((w) => w.rainMm);
  const drainage = total((w) => w.drainageMm);
  const wettest = weeks.reduce((a, b) => (b.drainageMm > a.drainageMm ? b : a));
  const snow = weeks.filter((w) => w.snowWaterMm > 1).length;
  const drains =
    drainage > 0
      ? `${mm(drainage)} of it drains below the roots, most in week ${wettest.week}`
      : 'none of it drains below the roots';
  return `${mm(rain)} of rain and snow fall in ${sourceOf(days.label)}; ${drains}. ${snow === 0 ? 'Snow lies at the end of no week' : `Snow lies at the end of ${snow} of ${weeks.length} weeks`}.`;
}

export function rainFigure(days: Days, reading: Reading): Figure {
  const finding = rainFinding(days, reading);
  const weeks = waterWeeks(days);
  if (weeks.length === 0) return emptyFigure(finding);
  const mm = (value: number) => show(value, 'mm', reading).number;
  const unit = show(1, 'mm', reading).unit;
  return {
    finding,
    legend: [
      { label: 'rain and snow falling (up)', fill: RAIN_FILL },
      { label: 'draining below the roots (down)', fill: LOSS_LOOKS.leached.fill },
      { label: 'water held by the soil', fill: INK, symbol: 'circle' },
      { label: 'water lying as snow', fill: GREYS.quiet, symbol: 'diamond' },
    ],
    caption: 'By week of the winter. Water held and lying as it stands at the end of each week.',
    table: {
      caption: `Water by week, ${unit}`,
      head: ['week', 'rain and snow', 'drains', 'held by the soil', 'lying as snow'],
      rows: weeks.map((w) => [
        String(w.week),
        mm(w.rainMm),
        mm(w.drainageMm),
        mm(w.soilWaterMm),
        mm(w.snowWaterMm),
      ]),
    },
    draw: (width) => drawRain(weeks, reading, width),
  };
}

function drawRain(weeks: readonly WaterWeek[], reading: Reading, width: number): Element {
  const last = weeks.length;
  const said = (value: number) => show(Math.abs(value), 'mm', reading).text;
  const x = { domain: [0.5, last + 0.5], label: null };
  const axis = axisIn('mm', reading);
  const up = axis.end(Math.max(...weeks.map((w) => w.rainMm)));
  const down = axis.end(Math.max(0, ...weeks.map((w) => w.drainageMm)));
  const most = axis.end(Math.max(...weeks.flatMap((w) => [w.soilWaterMm, w.snowWaterMm])));
  const margins = {
    marginLeft: leftMargin([up, down, most].map(said)),
    marginRight: overhang(`week ${last}`),
  };
  const fluxes = drawFluxes(weeks, { x, margins, down, up, said, axis }, width);
  const marked = weeks.filter((w) => w.week % 4 === 1 || w.week === last);
  const stores = plot({
    ...frame(width, 150),
    ...margins,
    marginTop: 12,
    marginBottom: 30,
    x,
    y: { domain: [0, most], label: null },
    marks: [
      gridY({ stroke: GREYS.rule, ticks: axis.ticks(0, most, 3) }),
      axisY({ ticks: axis.ticks(0, most, 3), tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      axisX({
        ticks: Math.max(2, Math.min(last, Math.floor(width / 90))),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (week: number) => `week ${week}`,
      }),
      ruleY([0], { stroke: INK }),
      lineY(weeks, { x: 'week', y: 'soilWaterMm', stroke: INK, strokeWidth: 2 }),
      lineY(weeks, {
        x: 'week',
        y: 'snowWaterMm',
        stroke: GREYS.quiet,
        strokeWidth: 2,
        strokeDasharray: '4 3',
      }),
      dot(marked, { x: 'week', y: 'soilWaterMm', fill: INK, symbol: 'circle', r: 4, stroke: PAPER }),
      dot(marked, { x: 'week', y: 'snowWaterMm', fill: GREYS.quiet, symbol: 'diamond', r: 4, stroke: PAPER }),
      hits(weeks, 'week', 'snowWaterMm', (w) => `End of week ${w.week}: ${said(w.snowWaterMm)} lies as snow`),
      hits(
        weeks,
        'week',
        'soilWaterMm',
        (w) => `End of week ${w.week}: the soil holds ${said(w.soilWaterMm)}`,
      ),
    ],
  });
  const both = document.createElement('div');
  both.append(fluxes, stores);
  return both;
}

interface Fluxes {
  readonly x: { readonly domain: number[]; readonly label: null };
  readonly margins: { readonly marginLeft: number; readonly marginRight: number };
  readonly down: number;
  readonly up: number;
  readonly said: (value: number) => string;
  readonly axis: AxisUnit;
}

/** Rain up and drainage down, by week. */
function drawFluxes(
  weeks: readonly WaterWeek[],
  { x, margins, down, up, said, axis }: Fluxes,
  width: number,
) {
  const reach = [weeks.some((w) => w.drainageMm > 0) ? -down : 0, up] as [number, number];
  return plot({
    ...frame(width, 190),
    ...margins,
    marginTop: 8,
    marginBottom: 10,
    x: { ...x, axis: null },
    y: { domain: reach, label: null },
    marks: [
      gridY({ stroke: GREYS.rule, ticks: axis.ticks(...reach, 4) }),
      axisY({ ticks: axis.ticks(...reach, 4), tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      rectY(weeks, {
        x1: (w: WaterWeek) => w.week - 0.4,
        x2: (w: WaterWeek) => w.week + 0.4,
        y1: 0,
        y2: 'rainMm',
        fill: RAIN_FILL,
        stroke: GREYS.quiet,
        strokeWidth: 0.7,
        title: (w: WaterWeek) => `Week ${w.week}: ${said(w.rainMm)} of rain and snow`,
      }),
      rectY(weeks, {
        x1: (w: WaterWeek) => w.week - 0.4,
        x2: (w: WaterWeek) => w.week + 0.4,
        y1: 0,
        y2: (w: WaterWeek) => -w.drainageMm,
        fill: LOSS_LOOKS.leached.fill,
        stroke: INK,
        strokeWidth: 0.7,
        title: (w: WaterWeek) => `Week ${w.week}: ${said(w.drainageMm)} drains below the roots`,
      }),
      ruleY([0], { stroke: INK }),
    ],
  });
}

interface WinterPoint {
  readonly winter: string;
  readonly scenario: string;
  readonly rainMm: number;
  readonly value: number;
}

const columnsOf = ({ results }: Winters, measure: ResultName) => ({
  rainMm: results.rainMm,
  values: resultIn(results, measure),
});

export function wintersFinding(
  winters: Winters,
  names: readonly string[],
  measure: ResultName,
  reading: Reading,
): string {
  const { labels, driest, middle, wettest, scenarios } = winters;
  const { rainMm, values } = columnsOf(winters, measure);
  if (labels.length < 2)
    return 'The weather file holds one winter only; one winter says nothing about the next.';
  const rain = (k: number) => show(rainMm[k * scenarios], 'mm', reading).text;
  const unit = unitOf(measure);
  const scale = Math.max(...values.filter(Number.isFinite).map(Math.abs), 0);
  const said = names.flatMap((name, s) => {
    const [dry, wet] = [driest, wettest].map((k) => orNothing(values[k * scenarios + s], scale));
    if (!Number.isFinite(dry) || !Number.isFinite(wet)) return [];
    const all = labels.map((_, k) => orNothing(values[k * scenarios + s], scale)).filter(Number.isFinite);
    const [least, most] = [Math.min(...all), Math.max(...all)].map(
      (value) => show(value, unit, reading).text,
    );
    const between = least === most ? '' : `, ${least} to ${most} over all`;
    if (dry === 0 && wet === 0) return [`“${name}” next to none in either${between}`];
    const [a, b] = [dry, wet].map((value) => show(value, unit, reading).text);
    return [
      a === b ? `“${name}” ${a} in both${between}` : `“${name}” ${a} in the driest and ${b} in the wettest`,
    ];
  });
  return `${capital(labelOf(measure))} over ${labels.length} winters: ${said.join('; ') || 'no scenario has it'}. Driest ${winterOf(labels[driest])} (${rain(driest)}), middle ${winterOf(labels[middle])} (${rain(middle)}), wettest ${winterOf(labels[wettest])} (${rain(wettest)}).`;
}

/** `shown` lists the scenarios to draw by their place in the notebook. */
export function wintersFigure(
  winters: Winters,
  names: readonly string[],
  measure: ResultName,
  reading: Reading,
  shown: readonly number[] = names.map((_, k) => k),
): Figure {
  const finding = wintersFinding(winters, names, measure, reading);
  const { labels, scenarios, driest, wettest } = winters;
  const { rainMm, values } = columnsOf(winters, measure);
  const points = labels.flatMap((winter, k) =>
    shown.flatMap((s): WinterPoint[] => {
      const value = values[k * scenarios + s];
      return Number.isFinite(value)
        ? [{ winter, scenario: names[s], rainMm: rainMm[k * scenarios], value }]
        : [];
    }),
  );
  if (points.length === 0 || labels.length < 2) return emptyFigure(finding);
  const unit = unitOf(measure);
  const said = (value: number) => show(value, unit, reading).text;
  const top = Math.max(...points.map((p) => Math.abs(p.value)));
  return {
    finding,
    legend: shown.map((s) => ({ label: names[s], fill: scenarioColour(s), symbol: scenarioSymbol(s) })),
    caption: `Each mark is one winter: across, the rain that fell in it; up, ${labelOf(measure)}.`,
    table: {
      caption: `${capital(labelOf(measure))} by winter`,
      head: ['winter', 'rain and snow', ...shown.map((s) => names[s])],
      rows: labels.map((label, k) => [
        label,
        show(rainMm[k * scenarios], 'mm', reading).text,
        ...shown.map((s) => said(orNothing(values[k * scenarios + s], top))),
      ]),
    },
    draw: (width) =>
      drawWinters(
        points,
        names,
        [labels[driest], labels[wettest]],
        said,
        axisIn(unit, reading),
        reading,
        width,
      ),
  };
}

function drawWinters(
  points: readonly WinterPoint[],
  names: readonly string[],
  ends: readonly string[],
  said: (value: number) => string,
  axis: AxisUnit,
  reading: Reading,
  width: number,
): Element {
  const values = points.map((p) => p.value);
  const low = Math.min(0, ...values);
  const top = Math.max(...points.map((p) => p.value));
  const reach: [number, number] = [low < 0 ? axis.end(low) : 0, axis.end(top)];
  const fell = points.map((p) => p.rainMm);
  // Named over the drawing, where no mark lies.
  const marked = ends.flatMap((winter, k) => {
    const own = points.find((p) => p.winter === winter);
    if (!own) return [];
    const textAnchor: 'start' | 'end' = k === 0 ? 'start' : 'end';
    return [
      {
        rainMm: own.rainMm,
        words: `${k === 0 ? 'driest' : 'wettest'}${width < 520 ? '' : `, ${winterOf(winter)}`}`,
        textAnchor,
      },
    ];
  });
  return plot({
    ...frame(width, Math.min(320, Math.max(220, width * 0.45))),
    marginLeft: leftMargin(reach.map(said)),
    marginRight: overhang('1 000 mm'),
    marginTop: 20,
    marginBottom: 34,
    x: { label: null, nice: true, inset: 8 },
    y: { domain: reach, label: null },
    color: { type: 'ordinal', domain: names, range: names.map((_, k) => scenarioColour(k)) },
    symbol: { domain: names, range: names.map((_, k) => scenarioSymbol(k)) },
    marks: [
      gridY({ stroke: GREYS.rule, ticks: axis.ticks(...reach, 4) }),
      axisY({ ticks: axis.ticks(...reach, 4), tickSize: 0, fill: GREYS.quiet, tickFormat: said }),
      axisX({
        ticks: axisIn('mm', reading).ticks(
          Math.min(...fell),
          Math.max(...fell),
          Math.max(2, Math.floor(width / 130)),
        ),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (v: number) => show(v, 'mm', reading).text,
      }),
      ruleY([0], { stroke: INK }),
      dot(points, {
        x: 'rainMm',
        y: 'value',
        fill: { value: 'scenario', scale: 'color' },
        symbol: { value: 'scenario', scale: 'symbol' },
        r: 4.5,
        stroke: PAPER,
        title: (p: WinterPoint) =>
          `${p.scenario}, ${winterOf(p.winter)}, ${show(p.rainMm, 'mm', reading).text} of rain: ${said(p.value)}`,
      }),
      ruleX(marked, { x: 'rainMm', stroke: GREYS.rule, strokeDasharray: '3 3' }),
      ...marked.map(({ rainMm, words, textAnchor }) =>
        text([rainMm], {
          x: (v: number) => v,
          frameAnchor: 'top',
          lineAnchor: 'bottom',
          dy: -4,
          text: () => words,
          textAnchor,
          fill: GREYS.quiet,
        }),
      ),
    ],
  });
}

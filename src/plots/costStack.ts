/** What each way of wintering costs a year, line upon line, side by side on one scale. */

import { ticks } from 'd3-array';
import type { ResultName, Values } from '../model/quantities.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { emptyFigure, type LegendEntry, type Pattern, type PrintFigure } from './figure.ts';
import { roundUp } from './frame.ts';
import { GREYS, INK, PAPER } from './palette.ts';
import { capital, inWords, labelOf, moneyOf, type Reading, show } from './reading.ts';
import { HALO, patternText, picture, says, stroke, tag, textWidth, toSvg, words } from './svgText.ts';

export interface CostGroup {
  readonly id: string;
  readonly label: string;
  /** How the sentence names it. */
  readonly as: string;
  readonly lines: readonly ResultName[];
  readonly fill: string;
  readonly pattern: Pattern;
}

/** The lines of the yearly cost in the order they are stacked, few enough to tell apart. */
export const COST_GROUPS: readonly CostGroup[] = [
  { id: 'works', label: 'works: capital, repairs, insurance', as: 'the works', lines: ['capitalCharge', 'repairsCost', 'insuranceCost'], fill: '#8d99a6', pattern: 'solid' },
  { id: 'bedding', label: 'bedding', as: 'bedding', lines: ['beddingCost'], fill: '#e6cb8b', pattern: 'dots' },
  { id: 'feed', label: 'feed eaten', as: 'feed eaten', lines: ['feedCost'], fill: '#b9c98c', pattern: 'solid' },
  { id: 'waste', label: 'feed wasted', as: 'feed wasted', lines: ['feedWasteCost'], fill: '#dfe6c4', pattern: 'rising' },
  { id: 'machines', label: 'machines and contractor', as: 'machines', lines: ['machineryCost', 'contractorCost'], fill: '#d98e73', pattern: 'crossed' },
  { id: 'labour', label: 'own hours', as: 'own hours', lines: ['labourCost'], fill: '#8fc1d9', pattern: 'falling' },
  { id: 'ground', label: 'grass lost and reseeding', as: 'lost grass', lines: ['grassLostCost', 'reseedCost'], fill: '#7fae8a', pattern: 'upright' },
  { id: 'care', label: 'vet and hooves', as: 'vet and hooves', lines: ['vetCost', 'hoofCost'], fill: '#cfc9bb', pattern: 'dots' },
  { id: 'tax', label: 'value added tax not reclaimed', as: 'value added tax', lines: ['vatCost'], fill: '#a99bb5', pattern: 'rising' },
]; // biome-ignore format: a group a line

/** Every line of the yearly cost, in the order it is printed. */
export const COST_LINES: readonly ResultName[] = COST_GROUPS.flatMap(({ lines }) => lines);

export interface CostPart {
  readonly scenario: string;
  readonly group: string;
  readonly amount: number;
  readonly from: number;
  readonly to: number;
}

/** A group's sum; a line that does not apply adds nothing, a line whose price is missing makes it null. */
function sumOf(values: Values, { lines }: CostGroup): number | null {
  // The total knows what a single line cannot: whether its null is "does not apply" or "has no price".
  if (values.annualCost === null || values.annualCost === undefined) return null;
  return lines.reduce((sum, line) => sum + (values[line] ?? 0), 0);
}

/** Stacked parts of every scenario whose yearly cost is known. */
export function costParts(results: readonly ScenarioResult[]): CostPart[] {
  return results.flatMap(({ name, values }) => {
    let end = 0;
    return COST_GROUPS.flatMap((group) => {
      const amount = sumOf(values, group);
      if (amount === null || amount <= 0) return [];
      const from = end;
      end += amount;
      return [{ scenario: name, group: group.id, amount, from, to: end }];
    });
  });
}

const known = (value: number | null | undefined): value is number => typeof value === 'number';

/** "“Paddock” costs least a year, EUR 9 800; “Slats” most, EUR 15 300, above all for the works." */
export function costFinding(results: readonly ScenarioResult[], reading: Reading): string {
  const priced = results.filter(({ values }) => known(values.annualCost));
  const gaps = results.filter((r) => !priced.includes(r)).map((r) => `“${r.name}”`);
  const gap = gaps.length === 0 ? '' : ` A price is missing for ${inWords(gaps)}, so there is no sum.`;
  if (priced.length === 0) return `No yearly cost can be given.${gap}`;
  const money = (value: number) => show(value, 'money', reading).text;
  const order = [...priced].sort((a, b) => (a.values.annualCost as number) - (b.values.annualCost as number));
  const [least] = order;
  const most = order[order.length - 1];
  const cost = (r: ScenarioResult) => r.values.annualCost as number;
  if (order.length === 1) return `“${least.name}” costs ${money(cost(least))} a year.${gap}`;
  const apart = COST_GROUPS.map((group) => ({
    as: group.as,
    by: (sumOf(most.values, group) ?? 0) - (sumOf(least.values, group) ?? 0),
  })).sort((a, b) => b.by - a.by)[0];
  const why = apart.by > 0 ? `; the largest difference is ${apart.as}, ${money(apart.by)} more` : '';
  return `“${least.name}” costs least a year, ${money(cost(least))}; “${most.name}” most, ${money(cost(most))}${why}.${gap}`;
}

export function costStackFigure(results: readonly ScenarioResult[], reading: Reading): PrintFigure {
  const finding = costFinding(results, reading);
  const parts = costParts(results);
  if (parts.length === 0) return { ...emptyFigure(finding), markup: null };
  const groups = COST_GROUPS.filter(({ id }) => parts.some((part) => part.group === id));
  const legend: LegendEntry[] = groups.map(({ label, fill, pattern }) => ({ label, fill, pattern }));
  const ranged = results.some(({ bands }) => known(bands?.p10.annualCost));
  const number = (value: number | null | undefined) => show(value, 'money', reading).number;
  const row = (name: ResultName, label = capital(labelOf(name))) => [
    label,
    ...results.map(({ values }) => number(values[name])),
  ];
  const markup = (width: number, ids = 'wk-costs') =>
    drawCosts(results, parts, groups, reading, width, ids, finding);
  return {
    finding,
    legend,
    caption: `Money in ${moneyOf(reading)}, a year. Net, the mark under each bar, is what is left when the nutrients kept are counted as money.${ranged ? ' The thin line spans what 8 of 10 draws give for the whole.' : ''}`,
    table: {
      caption: `Yearly cost by line, ${moneyOf(reading)}`,
      head: ['', ...results.map(({ name }) => name)],
      rows: [
        ...COST_LINES.map((name) => row(name)),
        row('annualCost', 'Together'),
        ...(ranged
          ? [
              [
                'likely span',
                ...results.map(
                  ({ bands }) => `${number(bands?.p10.annualCost)} to ${number(bands?.p90.annualCost)}`,
                ),
              ],
            ]
          : []),
        row('nutrientValue', 'Worth of nutrients kept, taken off'),
        row('netCost', 'Net'),
        row('netCostPerHead', 'Net, a head'),
        [
          'Net, a head and day',
          ...results.map(({ values }) => show(values.netCostPerHeadDay, 'money', reading).number),
        ],
        [
          'Cost a kg of nitrogen kept',
          ...results.map(({ values }) => show(values.costPerNitrogenKeptKg, 'money', reading).number),
        ],
      ],
    },
    markup,
    draw: (width) => toSvg(markup(width)),
  };
}

const ROW = 62;
const BAR = 22;

function drawCosts(
  results: readonly ScenarioResult[],
  parts: readonly CostPart[],
  groups: readonly CostGroup[],
  reading: Reading,
  asked: number,
  ids: string,
  finding: string,
): string {
  const width = Math.max(240, asked);
  const most = roundUp(
    Math.max(...parts.map(({ to }) => to), ...results.map(({ bands }) => bands?.p90.annualCost ?? 0)),
  );
  const x = (amount: number) => 1 + ((width - 18) * amount) / most;
  const height = ROW * results.length + 24;
  const money = (value: number) => show(value, 'money', reading).text;
  const body: string[] = [
    tag('defs', {}, ...groups.map(({ id, fill, pattern }) => patternText(`${ids}-${id}`, pattern, fill))),
  ];
  const marks = ticks(0, most, Math.max(2, Math.min(6, Math.floor(width / 120))));
  for (const mark of marks) {
    body.push(stroke(x(mark), 0, x(mark), ROW * results.length, { stroke: GREYS.rule }));
    const anchor = mark === 0 ? 'start' : x(mark) > width - 30 ? 'end' : 'middle';
    body.push(
      words(anchor === 'start' ? 0 : anchor === 'end' ? width : x(mark), height - 6, money(mark), {
        fill: GREYS.quiet,
        'text-anchor': anchor,
        'font-size': 12,
      }),
    );
  }
  results.forEach(({ name, values, bands }, k) => {
    const top = ROW * k;
    body.push(
      words(1, top + 13, name, {
        'font-weight': 600,
        ...HALO,
      }),
    );
    if (!known(values.annualCost)) {
      body.push(words(1, top + 36, 'no sum: a price is missing', { fill: GREYS.quiet }));
      return;
    }
    const total = `${money(values.annualCost)} a year`;
    const beside = textWidth(name) + textWidth(total) + 20 < width;
    if (beside)
      body.push(
        words(width - 2, top + 13, total, {
          'text-anchor': 'end',
          ...HALO,
        }),
      );
    const y = top + 18;
    for (const part of parts.filter(({ scenario }) => scenario === name))
      body.push(
        tag(
          'rect',
          {
            x: x(part.from),
            y,
            width: Math.max(0.5, x(part.to) - x(part.from)),
            height: BAR,
            fill: `url(#${ids}-${part.group})`,
            stroke: PAPER,
            'stroke-width': 1,
          },
          says(
            `${name}, ${groups.find(({ id }) => id === part.group)?.label ?? part.group}: ${money(part.to - part.from)} a year`,
          ),
        ),
      );
    const [low, high] = [bands?.p10.annualCost, bands?.p90.annualCost];
    if (known(low) && known(high)) {
      const middle = y + BAR / 2;
      body.push(stroke(x(low), middle, x(high), middle, { stroke: PAPER, 'stroke-width': 5 }));
      body.push(stroke(x(low), middle, x(high), middle, { 'stroke-width': 2 }));
      for (const end of [low, high])
        body.push(stroke(x(end), middle - 5, x(end), middle + 5, { 'stroke-width': 2 }));
    }
    if (known(values.netCost)) {
      const at = x(Math.max(0, values.netCost));
      const label = `net ${money(values.netCost)}`;
      const toRight = at + textWidth(label) + 12 < width;
      body.push(tag('path', { d: `M${(at - 5).toFixed(1)},${y + BAR + 9} l5,-7 l5,7 z`, fill: INK }));
      body.push(
        words(toRight ? at + 9 : at - 9, y + BAR + 11, label, {
          'text-anchor': toRight ? 'start' : 'end',
          'font-size': 12,
          ...HALO,
        }),
      );
    }
  });
  body.push(stroke(x(0), 0, x(0), ROW * results.length));
  return picture(width, height, finding, ...body);
}

/** The rungs nitrogen climbs down, from what the animals dropped to what the first crop can use; rung compared with rung. */
import { axisX, axisY, dot, gridX, line, plot, text } from '@observablehq/plot';
import type { ResultName } from '../model/quantities.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { axisIn } from './axes.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, leftMargin } from './frame.ts';
import { GREYS, INK, looksOf, PAPER } from './palette.ts';
import { type Reading, show } from './reading.ts';

const RUNGS: readonly { readonly quantity: ResultName; readonly label: string; readonly as: string }[] = [
  { quantity: 'nitrogenInKg', label: 'dropped and in wasted feed', as: 'before it has gone anywhere' },
  { quantity: 'nitrogenOutOfHousingKg', label: 'left the shed or paddock', as: 'in the shed or paddock' },
  { quantity: 'nitrogenOutOfStoreKg', label: 'left the store or heap', as: 'in the store or heap' },
  { quantity: 'nitrogenIntoSoilKg', label: 'in the soil', as: 'at spreading' },
  {
    quantity: 'nitrogenKeptKg',
    label: 'there after drainage',
    as: 'in the ground, to the drainage and the air that follow',
  },
  { quantity: 'nitrogenAvailableKg', label: 'usable by the first crop', as: 'for the first crop' },
];

export interface RungPoint {
  readonly scenario: string;
  readonly rung: string;
  readonly kg: number;
}

export function ladderPoints(results: readonly ScenarioResult[]): RungPoint[] {
  return results.flatMap(({ name, values }) =>
    RUNGS.flatMap(({ quantity, label }) => {
      const kg = values[quantity];
      return kg === null || kg === undefined ? [] : [{ scenario: name, rung: label, kg }];
    }),
  );
}

/** For each scenario the step between two rungs where most goes missing (the last step is timing, not loss). */
export function ladderFinding(results: readonly ScenarioResult[], reading: Reading): string {
  const steps = results.flatMap(({ name, values }) => {
    let worst: { kg: number; as: string } | undefined;
    for (let k = 1; k < RUNGS.length - 1; k++) {
      const before = values[RUNGS[k - 1].quantity];
      const after = values[RUNGS[k].quantity];
      if (typeof before !== 'number' || typeof after !== 'number') continue;
      if (!worst || before - after > worst.kg) worst = { kg: before - after, as: RUNGS[k].as };
    }
    // What drains and what the ground gives off are one step of the ladder: their sum is told as both.
    return worst && worst.kg > 0
      ? [`“${name}” loses most ${worst.as} (${show(worst.kg, 'kg', reading).text})`]
      : [];
  });
  return steps.length === 0 ? 'No step loses nitrogen.' : `${steps.join('; ')}.`;
}

export function ladderFigure(results: readonly ScenarioResult[], reading: Reading): Figure {
  const points = ladderPoints(results);
  if (points.length === 0) return emptyFigure('The steps of nitrogen are not known for these scenarios.');
  const { names, colours, symbols } = looksOf(results, reading.order);
  const axis = axisIn('kg', reading);
  const most = axis.end(Math.max(...points.map((p) => p.kg)));
  return {
    finding: ladderFinding(results, reading),
    legend: names.map((label, k) => ({ label, fill: colours[k], symbol: symbols[k] })),
    caption:
      'Nitrogen still on the farm at each step, from top to bottom. Compare only points on the same line.',
    table: {
      caption: `Nitrogen at each step, ${show(1, 'kg', reading).unit}`,
      head: ['', ...names],
      rows: RUNGS.map(({ quantity, label }) => [
        label,
        ...results.map((r) => show(r.values[quantity], 'kg', reading).number),
      ]),
    },
    draw: (width) => {
      const narrow = width < 520;
      return plot({
        ...frame(width, (narrow ? 56 : 40) + 46 * RUNGS.length),
        marginLeft: narrow ? 8 : leftMargin(RUNGS.map(({ label }) => label)),
        marginRight: 26,
        marginTop: narrow ? 14 : 4,
        marginBottom: narrow ? 44 : 28,
        x: { domain: [0, most], label: null },
        y: {
          type: 'point',
          domain: RUNGS.map((rung) => rung.label),
          label: null,
          padding: 0.5,
          ...(narrow ? { axis: null } : {}),
        },
        color: { type: 'ordinal', domain: names, range: colours },
        symbol: { domain: names, range: symbols },
        marks: [
          gridX({ stroke: GREYS.rule, strokeOpacity: 1, ticks: axis.ticks(0, most, 5) }),
          axisX({
            ticks: axis.ticks(0, most, Math.max(2, Math.min(6, Math.floor(width / 110)))),
            tickSize: 0,
            fill: GREYS.quiet,
            tickFormat: (kg: number) => (kg === 0 ? '' : show(kg, 'kg', reading).text),
          }),
          ...(narrow ? [] : [axisY({ tickSize: 0 })]),
          line(points, {
            x: 'kg',
            y: 'rung',
            z: 'scenario',
            stroke: { value: 'scenario', scale: 'color' },
            strokeWidth: 2,
          }),
          // Over each row on a phone; under the last, where the lines come down across.
          ...(narrow
            ? RUNGS.map(({ label }, k) =>
                text([label], {
                  frameAnchor: 'left',
                  y: (rung: string) => rung,
                  text: (rung: string) => rung,
                  dx: 2,
                  dy: k === RUNGS.length - 1 ? 18 : -14,
                  textAnchor: 'start',
                  fill: INK,
                  stroke: PAPER,
                  strokeWidth: 4,
                }),
              )
            : []),
          dot(points, {
            x: 'kg',
            y: 'rung',
            fill: { value: 'scenario', scale: 'color' },
            symbol: { value: 'scenario', scale: 'symbol' },
            stroke: PAPER,
            r: 5.5,
            title: ({ scenario, rung, kg }) => `${scenario}, ${rung}: ${show(kg, 'kg', reading).text}`,
          }),
        ],
      });
    },
  };
}

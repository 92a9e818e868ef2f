/** Where each kilogram of an element went: a bar for each scenario on one scale, what is kept of the herd's own first. */
import { axisX, barX, plot, ruleX, text } from '@observablehq/plot';
import type { ResultName, Values } from '../model/quantities.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { axisIn } from './axes.ts';
import { emptyFigure, type Figure, type LegendEntry } from './figure.ts';
import { frame } from './frame.ts';
import { GREYS, INK, LOSS_LOOKS, looksOf, PAPER } from './palette.ts';
import { patternElement } from './pattern.ts';
import { capital, type Reading, show } from './reading.ts';

export const NUTRIENTS = ['nitrogen', 'phosphorus', 'potassium'] as const;
export type NutrientName = (typeof NUTRIENTS)[number];

interface Way {
  readonly quantity: ResultName;
  readonly label: string;
  /** How the sentence names it. */
  readonly as: string;
  readonly look: keyof typeof LOSS_LOOKS;
}

const WAYS: Readonly<Record<NutrientName, readonly Way[]>> = {
  nitrogen: [
    {
      quantity: 'nitrogenAmmoniaKg',
      label: 'to the air as ammonia',
      as: 'ammonia in the air',
      look: 'ammonia',
    },
    {
      quantity: 'nitrogenLeachedKg',
      label: 'leached below the roots',
      as: 'drainage below the roots',
      look: 'leached',
    },
    { quantity: 'nitrogenRunoffKg', label: 'run off over the ground', as: 'run-off', look: 'runoff' },
    {
      quantity: 'nitrogenNitrousKg',
      label: 'to the air as nitrous oxide',
      as: 'nitrous oxide',
      look: 'nitrous',
    },
    {
      quantity: 'nitrogenDinitrogenKg',
      label: 'to the air as plain nitrogen',
      as: 'plain nitrogen gas',
      look: 'dinitrogen',
    },
  ],
  phosphorus: [{ quantity: 'phosphorusLostKg', label: 'lost with water', as: 'water', look: 'lost' }],
  potassium: [{ quantity: 'potassiumLostKg', label: 'lost with water', as: 'water', look: 'lost' }],
};

export interface LedgerPart {
  readonly scenario: string;
  readonly quantity: ResultName;
  readonly label: string;
  readonly kg: number;
  /** Where it lies on the bar. */
  readonly from: number;
  readonly to: number;
}

/** What is there, bedding's with it, by how firmly it is held. */
const STANDING = [
  { quantity: 'nitrogenInCropKg', label: 'of what is there: in a crop or ready for it' },
  { quantity: 'nitrogenBoundKg', label: 'of what is there: bound in soil or compost' },
  { quantity: 'nitrogenAtRiskKg', label: 'of what is there: at risk of the next drainage' },
] as const;

const KEPT = 'kept';
const BROUGHT = { label: 'brought in with bedding', look: 'brought' } as const;

const at = (values: Values, name: ResultName) => values[name] ?? 0;
/** What the animals dropped, and what was in the feed they wasted. */
export const dropped = (values: Values, element: NutrientName) => at(values, `${element}InKg`);

/** The parts of every bar, kept first, in the order of the legend. */
export function ledgerParts(results: readonly ScenarioResult[], element: NutrientName): LedgerPart[] {
  return results.flatMap(({ name, values }) => {
    let end = 0;
    const ways = [
      { quantity: `${element}KeptKg` as const, label: KEPT },
      ...WAYS[element],
      { quantity: `${element}BroughtKg` as const, label: BROUGHT.label },
    ];
    return ways.map(({ quantity, label }) => {
      const kg = Math.max(0, at(values, quantity));
      const from = end;
      end += kg;
      return { scenario: name, quantity, label, kg, from, to: end };
    });
  });
}

/** "Deep bed keeps most nitrogen: 412 of 620 kg. In Paddock the largest loss is …" */
export function ledgerFinding(
  results: readonly ScenarioResult[],
  element: NutrientName,
  reading: Reading,
): string {
  const kept = (r: ScenarioResult) => at(r.values, `${element}KeptKg`);
  const order = [...results].sort((a, b) => kept(b) - kept(a));
  const [best] = order;
  const worst = order[order.length - 1];
  if (!best) return 'There is no scenario to show.';
  const share = (r: ScenarioResult) => {
    const all = dropped(r.values, element);
    if (!(all > 0)) return '–';
    // What loses anything does not keep all of it.
    const part = Math.min(kept(r), 0.99 * all) / all;
    return kept(r) < all && kept(r) > 0.99 * all
      ? 'nearly all'
      : show(kept(r) >= all ? 1 : part, 'fraction', reading).text;
  };
  const first = `“${best.name}” keeps ${show(kept(best), 'kg', reading).text} of ${element}, ${share(best)} of what the animals dropped`;
  if (order.length === 1) return `${first}.`;
  const losses = WAYS[element]
    .map((way) => ({ way, kg: at(worst.values, way.quantity) }))
    .sort((a, b) => b.kg - a.kg);
  const most =
    element === 'nitrogen'
      ? `; its largest loss is ${losses[0].way.as}, ${show(losses[0].kg, 'kg', reading).text}`
      : '';
  const least = show(kept(worst), 'kg', reading).text;
  const part = (r: ScenarioResult) => kept(r) / Math.max(dropped(r.values, element), Number.MIN_VALUE);
  // Least in weight and most in share would read as a contradiction: less was dropped.
  if (part(worst) >= part(best))
    return `${first}; “${worst.name}” keeps ${share(worst)}, but of less: ${least}${most}.`;
  return `${first}; “${worst.name}” keeps least, ${least} (${share(worst)})${most}.`;
}

export function ledgerFigure(
  results: readonly ScenarioResult[],
  element: NutrientName,
  reading: Reading,
): Figure {
  const parts = ledgerParts(results, element);
  const most = Math.max(0, ...parts.map((part) => part.to));
  if (most <= 0) return emptyFigure(`No ${element} comes in, so there is nothing to follow.`);
  const ways = WAYS[element].filter((way) => results.some((r) => at(r.values, way.quantity) > 0));
  const bedded = results.some((r) => at(r.values, `${element}BroughtKg`) > 0);
  const legend: LegendEntry[] = [...ways, ...(bedded ? [BROUGHT] : [])].map(({ label, look }) => ({
    label,
    ...LOSS_LOOKS[look],
  }));
  return {
    finding: ledgerFinding(results, element, reading),
    legend,
    caption: `${capital(element)} excreted and in wasted feed over the winter, and where it lies after the next drainage season. The solid part is kept; all losses are counted against it. What came in with bedding stands apart at the end of the bar. All bars on one scale.`,
    table: {
      caption: `Where the ${element} went, ${show(1, 'kg', reading).unit}`,
      head: ['', ...results.map((r) => r.name)],
      rows: [
        [
          'dropped by the animals and in wasted feed',
          ...results.map((r) => show(dropped(r.values, element), 'kg', reading).number),
        ],
        ['kept', ...results.map((r) => show(at(r.values, `${element}KeptKg`), 'kg', reading).number)],
        ...WAYS[element].map((way) => [
          way.label,
          ...results.map((r) => show(r.values[way.quantity], 'kg', reading).number),
        ]),
        ...(element === 'nitrogen' ? STANDING : []).map(({ quantity, label }) => [
          label,
          ...results.map((r) => show(r.values[quantity], 'kg', reading).number),
        ]),
        [BROUGHT.label, ...results.map((r) => show(r.values[`${element}BroughtKg`], 'kg', reading).number)],
      ],
    },
    draw: (width) => drawLedger(results, parts, element, reading, width, axisIn('kg', reading).end(most)),
  };
}

/** Every scenario takes the same height: its name, the bar, and amounts under the parts wide enough for one. */
function drawLedger(
  results: readonly ScenarioResult[],
  parts: readonly LedgerPart[],
  element: NutrientName,
  reading: Reading,
  width: number,
  most: number,
): Element {
  const { names, colours } = looksOf(results, reading.order);
  const perKg = (Math.max(240, width) - 27) / most;
  const id = (look: string) => `wk-${element}-${look}`;
  const ways = [...WAYS[element], { quantity: `${element}BroughtKg` as const, ...BROUGHT }];
  const looks = [...new Set(ways.map((way) => way.look))];
  const kindOf = (part: LedgerPart) => {
    const way = ways.find((w) => w.quantity === part.quantity);
    return way ? way.look : `kept ${names.indexOf(part.scenario)}`;
  };
  const amounts = parts.filter((part) => part.kg * perKg > 34);
  // All losses carry their unit or none does.
  const roomy = amounts.every((part) => part.label === 'kept' || part.kg * perKg > 56);
  const total = (name: string) => parts.findLast((part) => part.scenario === name)?.to ?? 0;
  return plot({
    ...frame(width, 30 + 78 * names.length),
    marginLeft: 1,
    marginRight: 26,
    marginTop: 2,
    marginBottom: 28,
    x: { domain: [0, most], label: null },
    y: { domain: names, axis: null, padding: 0 },
    color: {
      type: 'ordinal',
      domain: [...names.map((_, k) => `kept ${k}`), ...looks],
      range: [...colours, ...looks.map((look) => `url(#${id(look)})`)],
    },
    marks: [
      () => {
        const defs = document.createElementNS('http://www.w3.org/2000/svg', 'defs');
        for (const look of looks)
          defs.append(patternElement(id(look), LOSS_LOOKS[look].pattern, LOSS_LOOKS[look].fill));
        return defs;
      },
      axisX({
        ticks: axisIn('kg', reading).ticks(0, most, Math.max(2, Math.min(6, Math.floor(width / 110)))),
        tickSize: 0,
        fill: GREYS.quiet,
        tickFormat: (kg: number) => (kg === 0 ? '' : show(kg, 'kg', reading).text),
      }),
      barX(parts, {
        x1: 'from',
        x2: 'to',
        y: 'scenario',
        fill: { value: kindOf, scale: 'color' },
        stroke: PAPER,
        strokeWidth: 1,
        insetTop: 24,
        insetBottom: 22,
        title: ({ scenario, label, kg }: LedgerPart) =>
          `${scenario}, ${label}: ${show(kg, 'kg', reading).text}`,
      }),
      ruleX([0], { stroke: INK }),
      text(names, {
        x: 0,
        y: (name: string) => name,
        text: (name: string) => name,
        dy: -27,
        dx: 1,
        textAnchor: 'start',
        fontWeight: 600,
        fill: INK,
      }),
      text(names, {
        x: total,
        y: (name: string) => name,
        text: (name: string) => `${show(total(name), 'kg', reading).text} in`,
        dy: -27,
        textAnchor: 'end',
        fill: GREYS.quiet,
      }),
      ...[true, false].map((kept) =>
        text(
          amounts.filter((part) => (part.label === 'kept') === kept),
          {
            x: 'from',
            y: 'scenario',
            dx: 3,
            dy: 28,
            textAnchor: 'start',
            fontWeight: kept ? 700 : 400,
            fill: INK,
            text: ({ kg }: LedgerPart) =>
              `${show(kg, 'kg', reading)[kept || roomy ? 'text' : 'number']}${kept && kg * perKg > 96 ? ' kept' : ''}`,
          },
        ),
      ),
    ],
  });
}

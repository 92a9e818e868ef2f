/** What moves the present value: the stresses, and each uncertain number from its low to its high end. */

import { ticks } from 'd3-array';
import { levelWords, type StressRow } from '../model/money/stress.ts';
import { labelIn } from '../units/inWords.ts';
import type { Sensitivities } from '../whatif/oneAtATime.ts';
import { emptyFigure, type LegendEntry, type PrintFigure } from './figure.ts';
import { GREYS, INK, PAPER } from './palette.ts';
import { capital, moneyOf, type Reading, show } from './reading.ts';
import {
  HALO,
  patternText,
  picture,
  says,
  stroke,
  tag,
  textWidth,
  toSvg,
  twoLines,
  words,
} from './svgText.ts';

export interface TornadoBar {
  readonly label: string;
  /** What the ends stand for: "from 95 to 210 CAD/t", "+50 %". */
  readonly span: string;
  readonly kind: 'stress' | 'range';
  /** Present value at either end; a stress has one end, the other is the central value. */
  readonly from: number;
  readonly to: number;
  /** Which end belongs to the high value of a number with a range. */
  readonly highAt?: 'from' | 'to';
}

/** What the figure is about. */
export interface TornadoOf {
  readonly scenario: string;
  readonly baseline: string | null;
  readonly sensitivities: Sensitivities;
  readonly stress: readonly StressRow[];
}

/** "50 % dearer": the level of a stress in its unit. */
export const levelText = ({ level, unit }: Pick<StressRow, 'level' | 'unit'>) => levelWords(level, unit);

/** Bars, the one that moves most first. Stresses without a present value are left out. */
export function tornadoBars({ scenario, sensitivities, stress }: TornadoOf, reading: Reading): TornadoBar[] {
  const { central } = sensitivities;
  const stressed = stress.flatMap((row): TornadoBar[] => {
    const outcome = row.outcomes.find(({ name }) => name === scenario);
    const to = outcome?.gain ?? outcome?.netPresentValue ?? null;
    if (to === null || !Number.isFinite(to)) return [];
    // The stress run adds up in another order: what differs by rounding alone is unmoved.
    const unmoved = Math.abs(to - central) <= 1e-9 * Math.max(Math.abs(to), 1);
    // No bar for what the scenario does not have.
    if (unmoved && outcome?.lacks) return [];
    const end = unmoved ? central : to;
    return [{ label: row.label, span: levelText(row), kind: 'stress', from: central, to: end }];
  });
  const ranged = sensitivities.rows.map(({ label, unit, low, high, atLow, atHigh }): TornadoBar => {
    const end = (value: number) => rangeText(value, unit, reading);
    return {
      label: labelIn(label, reading.system),
      span: `${bare(end(low), end(high))} to ${end(high)}`,
      kind: 'range',
      from: Math.min(atLow, atHigh),
      to: Math.max(atLow, atHigh),
      highAt: atHigh > atLow ? 'to' : 'from',
    };
  });
  return [...stressed, ...ranged].sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from));
}

/** A number of the tables with its unit; yearly shares as percent. */
export function rangeText(value: number, unit: string, reading: Reading): string {
  if (unit === 'fraction/yr') return `${show(value, 'fraction', reading).text} a year`;
  return show(value, unit, reading).text;
}

/** The first of two texts without the unit both end in. */
function bare(first: string, second: string): string {
  const [unit] = / [^\d]*$/.exec(second) ?? [''];
  return unit !== '' && first.endsWith(unit) ? first.slice(0, -unit.length) : first;
}

/** "The present value moves most with the price of straw: from −594 000 to −440 000. It stays below 0 throughout." */
export function tornadoFinding(of: TornadoOf, bars: readonly TornadoBar[], reading: Reading): string {
  const { scenario, baseline, sensitivities } = of;
  if (!Number.isFinite(sensitivities.central) || bars.length === 0)
    return `No present value of “${scenario}” can be given: a price or a term is missing.`;
  const money = (value: number) => show(value, 'money', reading).text;
  const [top] = bars;
  const ends = bars.flatMap(({ from, to }) => [from, to]);
  const against = baseline === null ? '' : ` against “${baseline}”`;
  const stays = ends.every((end) => end < 0)
    ? 'No single change lifts it above 0.'
    : ends.every((end) => end > 0)
      ? 'No single change takes it below 0.'
      : `${bars.filter(({ from, to }) => from > 0 !== to > 0).length} of the changes shown carry it across 0.`;
  const [low, high] = [Math.min(top.from, top.to), Math.max(top.from, top.to)];
  return `The present value of “${scenario}”${against} is ${money(sensitivities.central)}; it moves most with ${top.label}, from ${money(low)} to ${money(high)}. ${baseline === null ? '' : stays}`.trim();
}

const LOOKS = {
  range: { fill: '#8fc1d9', pattern: 'solid' },
  stress: { fill: '#d98e73', pattern: 'crossed' },
} as const;

export function tornadoFigure(of: TornadoOf, reading: Reading): PrintFigure {
  const bars = tornadoBars(of, reading);
  const finding = tornadoFinding(of, bars, reading);
  if (!Number.isFinite(of.sensitivities.central) || bars.length === 0)
    return { ...emptyFigure(finding), markup: null };
  const legend: LegendEntry[] = [
    ...(bars.some(({ kind }) => kind === 'range')
      ? [{ label: 'a number from its low to its high end', ...LOOKS.range }]
      : []),
    ...(bars.some(({ kind }) => kind === 'stress') ? [{ label: 'a stress', ...LOOKS.stress }] : []),
  ];
  const number = (value: number) => show(value, 'money', reading).number;
  const markup = (width: number, ids = 'wk-tornado') => drawTornado(bars, of, reading, width, ids, finding);
  return {
    finding,
    legend,
    caption: `Present value${of.baseline === null ? '' : ` against “${of.baseline}”`}, one change at a time, all else as it is. Money in ${moneyOf(reading)}.`,
    table: {
      caption: `What moves the present value, ${moneyOf(reading)}`,
      head: ['', 'changed', 'low', 'high'],
      rows: bars.map(({ label, span, from, to }) => [
        capital(label),
        span,
        number(Math.min(from, to)),
        number(Math.max(from, to)),
      ]),
    },
    markup,
    draw: (width) => toSvg(markup(width)),
  };
}

const ROW = 40;

function drawTornado(
  bars: readonly TornadoBar[],
  { sensitivities }: TornadoOf,
  reading: Reading,
  asked: number,
  ids: string,
  finding: string,
): string {
  const width = Math.max(240, asked);
  const narrow = width < 560;
  const row = narrow ? 58 : ROW;
  const left = narrow ? 0 : Math.min(290, width * 0.42);
  const ends = bars.flatMap(({ from, to }) => [from, to]);
  const money = (value: number) => show(value, 'money', reading).text;
  const span = Math.max(...ends) - Math.min(...ends) || 1;
  // Room at either end of a bar for the amount it stands for.
  const label = Math.max(...ends.map((end) => textWidth(money(end), 12))) + 8;
  const room = label / Math.max(60, width - left - 2 * label);
  const [low, high] = [Math.min(...ends) - span * room, Math.max(...ends) + span * room];
  const x = (value: number) => left + ((width - left) * (value - low)) / (high - low);
  const bottom = row * bars.length;
  const body = [
    tag(
      'defs',
      {},
      ...(['range', 'stress'] as const).map((kind) =>
        patternText(`${ids}-${kind}`, LOOKS[kind].pattern, LOOKS[kind].fill),
      ),
    ),
  ];
  const marks = ticks(low, high, narrow ? 2 : 4).filter(
    (mark) => x(mark) >= left + 20 && x(mark) <= width - 24,
  );
  // Amounts along the axis stand apart: every mark has its line, not each its words.
  const every = marks.length > 1 ? Math.ceil(label / (x(marks[1]) - x(marks[0]))) : 1;
  marks.forEach((mark, k) => {
    body.push(
      stroke(x(mark), 0, x(mark), bottom, {
        stroke: mark === 0 ? INK : GREYS.rule,
        'stroke-width': mark === 0 ? 1.4 : 1,
      }),
    );
    if (k % every === 0)
      body.push(
        words(x(mark), bottom + 16, money(mark), {
          'font-size': 12,
          fill: GREYS.quiet,
          'text-anchor': 'middle',
        }),
      );
  });
  bars.forEach(({ label, span: changed, kind, from, to }, k) => {
    const top = row * k;
    const barTop = narrow ? top + 34 : top + 11;
    if (narrow) {
      body.push(
        words(1, top + 14, twoLines(capital(label), width - 4, 12)[0], {
          'font-size': 12,
          ...HALO,
        }),
      );
      body.push(
        words(1, top + 28, changed, {
          'font-size': 11,
          fill: GREYS.quiet,
          ...HALO,
        }),
      );
    } else {
      const said = twoLines(capital(label), left - 12, 12);
      said.forEach((text, n) => {
        body.push(words(0, top + (said.length === 1 ? 18 : 11) + 13 * n, text, { 'font-size': 12 }));
      });
      body.push(
        words(0, top + (said.length === 1 ? 31 : 36), changed, { 'font-size': 10.5, fill: GREYS.quiet }),
      );
    }
    const [a, b] = [Math.min(from, to), Math.max(from, to)];
    body.push(
      tag(
        'rect',
        {
          x: x(a),
          y: barTop,
          width: Math.max(1, x(b) - x(a)),
          height: 18,
          fill: `url(#${ids}-${kind})`,
          stroke: INK,
          'stroke-width': 0.6,
        },
        says(`${capital(label)}, ${changed}: ${money(from)} to ${money(to)}`),
      ),
    );
    const halo = { 'font-size': 12, stroke: PAPER, 'stroke-width': 3, 'paint-order': 'stroke' } as const;
    // A stress has one end: the other is where things stand.
    if (kind === 'range' || to < from)
      body.push(words(x(a) - 4, barTop + 13, money(a), { 'text-anchor': 'end', ...halo }));
    if (kind === 'range' || to > from) body.push(words(x(b) + 4, barTop + 13, money(b), halo));
    if (to === from) body.push(words(x(b) + 6, barTop + 13, 'no change', { ...halo, fill: GREYS.quiet }));
  });
  body.push(
    stroke(x(sensitivities.central), 0, x(sensitivities.central), bottom, {
      'stroke-width': 1.6,
      'stroke-dasharray': '4 3',
    }),
  );
  return picture(width, bottom + 22, finding, ...body);
}

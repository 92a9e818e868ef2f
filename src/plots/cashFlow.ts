/** What the works have earned or cost to date, year by year, against leaving things as they are. */
import { area, line, ticks } from 'd3';
import { runningWorth } from '../model/money/cashTerms.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import type { CashBand } from '../uncertainty/cashBands.ts';
import { formatWhole } from '../units/format.ts';
import { emptyFigure, type PrintFigure } from './figure.ts';
import { GREYS, looksOf } from './palette.ts';
import { inWords, moneyOf, type Reading, show } from './reading.ts';
import { fitted, HALO, picture, says, stroke, tag, textWidth, toSvg, words } from './svgText.ts';

export interface CashSeries {
  readonly scenario: string;
  readonly baseline: string | null;
  /** Discounted sum to date, years 0 … life. */
  readonly sums: readonly number[];
  readonly band: CashBand | null;
}

/** Reads the rate a scenario is discounted at. */
export type RateOf = (result: ScenarioResult) => number;

const rateOf: RateOf = ({ scenario }) => scenario.farm.money.interestRate;

/**
 * The running worth of every scenario that has a baseline; of each alone where none has one. `bands` are by the
 * scenario's name.
 */
export function cashSeries(
  results: readonly ScenarioResult[],
  bands: ReadonlyMap<string, CashBand> = new Map(),
  rate: RateOf = rateOf,
): CashSeries[] {
  const compared = results.filter(({ finance }) => finance.difference !== null);
  return (compared.length > 0 ? compared : results).flatMap((result) => {
    const { name, finance } = result;
    const flows = finance.difference?.flows ?? finance.years.map((year) => year.net);
    const sums = runningWorth(rate(result), flows);
    if (sums.length < 2 || !sums.every(Number.isFinite)) return [];
    const band = bands.get(name);
    return [
      {
        scenario: name,
        baseline: finance.difference?.baseline ?? null,
        sums,
        band: band && band.p10.length === sums.length ? band : null,
      },
    ];
  });
}

/** "“Deep bed” has paid itself back after 9 years and is EUR 12 000 ahead of “Paddock” after 20." */
export function cashFinding(
  results: readonly ScenarioResult[],
  series: readonly CashSeries[],
  reading: Reading,
): string {
  if (series.length === 0) return 'No cash flow can be drawn: a price or a term is missing.';
  const money = (value: number) => show(Math.abs(value), 'money', reading).text;
  const said = series.map(({ scenario, baseline, sums }) => {
    const end = sums[sums.length - 1];
    const years = sums.length - 1;
    if (baseline === null) return `“${scenario}” costs ${money(end)} in today’s money over ${years} years`;
    const payback =
      results.find(({ name }) => name === scenario)?.finance.difference?.paybackYears.value ?? null;
    const paid =
      payback === null ? '' : `${payback > 0 ? `, paid back after ${payback.toFixed(1)} years` : ''}`;
    return `“${scenario}” is ${money(end)} ${end >= 0 ? 'ahead of' : 'behind'} “${baseline}” after ${years} years${paid}`;
  });
  const missing = results
    .filter(({ name, finance }) => finance.difference !== null && !series.some((s) => s.scenario === name))
    .map(({ name }) => `“${name}”`);
  return `${said.join('; ')}.${missing.length > 0 ? ` A price or a term is missing for ${inWords(missing)}.` : ''}`;
}

export function cashFlowFigure(
  results: readonly ScenarioResult[],
  reading: Reading,
  bands?: ReadonlyMap<string, CashBand>,
  rate?: RateOf,
): PrintFigure {
  const series = cashSeries(results, bands, rate);
  const finding = cashFinding(results, series, reading);
  if (series.length === 0) return { ...emptyFigure(finding), markup: null };
  const { colours } = looksOf(
    series.map(({ scenario }) => ({ name: scenario })),
    reading.order ?? results.map(({ name }) => name),
  );
  const longest = Math.max(...series.map(({ sums }) => sums.length));
  const banded = series.find(({ band }) => band !== null)?.band?.count;
  const number = (value: number | undefined) =>
    value === undefined ? '' : show(value, 'money', reading).number;
  const markup = (width: number) => drawCash(series, colours, reading, width, finding);
  return {
    finding,
    legend: series.map(({ scenario }, k) => ({ label: scenario, fill: colours[k] })),
    caption: `${series[0].baseline === null ? 'Sum of' : 'Sum of the differences in'} cost, worth of nutrients, works and grant to date, each year discounted to today; before loans and tax. ${banded === undefined ? '' : `The shaded band spans what 8 of 10 of ${formatWhole(banded)} draws give, the dotted line is their middle. `}Money in ${moneyOf(reading)}.`,
    table: {
      caption: `Discounted sum to date, ${moneyOf(reading)}`,
      head: [
        'year',
        ...series.flatMap(({ scenario, band }) =>
          band ? [scenario, `${scenario}, low`, `${scenario}, middle`, `${scenario}, high`] : [scenario],
        ),
      ],
      rows: Array.from({ length: longest }, (_, year) => [
        String(year),
        ...series.flatMap(({ sums, band }) =>
          band
            ? [number(sums[year]), number(band.p10[year]), number(band.p50[year]), number(band.p90[year])]
            : [number(sums[year])],
        ),
      ]),
    },
    markup,
    draw: (width) => toSvg(markup(width)),
  };
}

const HEIGHT = 310;
const MARGIN = { top: 12, bottom: 38 } as const;
/** Below this names and amounts lie inside the drawing or in its legend. */
const NARROW = 520;

function drawCash(
  series: readonly CashSeries[],
  colours: readonly string[],
  reading: Reading,
  asked: number,
  finding: string,
): string {
  const width = Math.max(240, asked);
  const narrow = width < NARROW;
  const right = narrow
    ? 14
    : Math.min(190, 14 + Math.max(...series.map(({ scenario }) => textWidth(scenario))));
  const years = Math.max(...series.map(({ sums }) => sums.length)) - 1;
  const all = series.flatMap(({ sums, band }) => [...sums, ...(band ? [...band.p10, ...band.p90] : [])]);
  const [least, most] = [Math.min(0, ...all), Math.max(0, ...all)];
  const marks = ticks(least, most, 6);
  const [low, high] = [Math.min(least, marks[0] ?? 0), Math.max(most, marks[marks.length - 1] ?? 0)];
  const money = (value: number) => show(value, 'money', reading).text;
  const left = narrow ? 2 : 12 + Math.max(...marks.map((mark) => textWidth(money(mark), 12)));
  const x = (year: number) => left + ((width - right - left) * year) / Math.max(1, years);
  const y = (value: number) =>
    MARGIN.top + ((HEIGHT - MARGIN.top - MARGIN.bottom) * (high - value)) / Math.max(1e-9, high - low);
  const body: string[] = [];
  for (const mark of marks)
    body.push(
      stroke(left, y(mark), width - right, y(mark), {
        stroke: mark === 0 ? '#1d1b17' : GREYS.rule,
        'stroke-width': mark === 0 ? 1.4 : 1,
      }),
    );
  for (const year of ticks(0, years, Math.max(2, Math.min(10, Math.floor(width / 70)))).filter(
    Number.isInteger,
  )) {
    body.push(
      stroke(x(year), HEIGHT - MARGIN.bottom, x(year), HEIGHT - MARGIN.bottom + 5, { stroke: GREYS.quiet }),
    );
    body.push(
      words(x(year), HEIGHT - 20, year === 0 ? 'today' : `${year}`, {
        'text-anchor': year === 0 && narrow ? 'start' : 'middle',
        'font-size': 12,
        fill: GREYS.quiet,
      }),
    );
  }
  body.push(
    words(x(years / 2), HEIGHT - 4, 'years from now', {
      'text-anchor': 'middle',
      'font-size': 12,
      fill: GREYS.quiet,
    }),
  );
  series.forEach(({ band }, k) => {
    if (!band) return;
    const shape = area<number>()
      .x((_, year) => x(year))
      .y0((_, year) => y(band.p10[year]))
      .y1((_, year) => y(band.p90[year]))
      .digits(1);
    body.push(
      tag('path', {
        d: shape([...band.p10]) ?? '',
        fill: colours[k],
        'fill-opacity': 0.13,
        stroke: colours[k],
        'stroke-opacity': 0.5,
        'stroke-width': 0.8,
        'stroke-dasharray': '3 3',
      }),
    );
  });
  const path = line<number>()
    .x((_, year) => x(year))
    .y((value) => y(value))
    .digits(1);
  series.forEach(({ band }, k) => {
    if (!band) return;
    body.push(
      tag('path', {
        d: path([...band.p50]) ?? '',
        fill: 'none',
        stroke: colours[k],
        'stroke-width': 1.2,
        'stroke-dasharray': '1 3',
      }),
    );
  });
  series.forEach(({ sums }, k) => {
    body.push(
      tag('path', {
        d: path([...sums]) ?? '',
        fill: 'none',
        stroke: colours[k],
        'stroke-width': 2.4,
        'stroke-dasharray': DASHES[k % DASHES.length],
      }),
    );
  });
  series.forEach(({ scenario, sums, band }) => {
    sums.forEach((sum, year) => {
      const span = band ? `; 8 of 10 draws from ${money(band.p10[year])} to ${money(band.p90[year])}` : '';
      const when = year === 0 ? 'today' : `after ${year} ${year === 1 ? 'year' : 'years'}`;
      body.push(
        tag(
          'circle',
          { cx: x(year), cy: y(sum), r: 7, fill: GREYS.quiet, 'fill-opacity': 0 },
          says(`${scenario}, ${when}: ${money(sum)}${span}`),
        ),
      );
    });
  });
  for (const mark of marks)
    body.push(
      words(
        narrow ? left + 2 : left - 8,
        narrow ? y(mark) - 4 : y(mark) + 4,
        mark === 0 && series[0].baseline !== null ? 'even' : money(mark),
        {
          'font-size': 12,
          fill: GREYS.quiet,
          'text-anchor': narrow ? 'start' : 'end',
          ...HALO,
        },
      ),
    );
  if (!narrow) {
    const ends = series
      .map(({ scenario, sums }, k) => ({ scenario, k, at: y(sums[sums.length - 1]), x: x(sums.length - 1) }))
      .sort((a, b) => a.at - b.at);
    // Names keep a line's height apart, pushed down from the top and back up from the bottom.
    ends.forEach((end, k) => {
      if (k > 0) end.at = Math.max(end.at, ends[k - 1].at + 15);
    });
    for (let k = ends.length - 1, floor = HEIGHT - MARGIN.bottom; k >= 0; k--, floor -= 15)
      ends[k].at = Math.min(ends[k].at, floor);
    for (const end of ends)
      body.push(
        words(width - right + 6, end.at + 4, fitted(end.scenario, right - 8), {
          fill: colours[end.k],
          'font-weight': 600,
        }),
      );
  }
  return picture(width, HEIGHT, finding, ...body);
}

/** Lines are told apart without colour; the first is unbroken. */
const DASHES: readonly (string | undefined)[] = [
  undefined, '8 4', '2 3', '10 3 2 3', '5 2', '14 3', '2 7', '10 3 2 3 2 3',
]; // biome-ignore format: one short list

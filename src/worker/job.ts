/**
 * Questions that take longer than a frame, as plain data that crosses to a worker and back. A job is worked in
 * steps, so that whoever runs it can report how far it is, take up something else, or stop.
 */

import type { RowChanges } from '../model/bind.ts';
import { betterOf } from '../model/measures.ts';
import type { StressRow } from '../model/money/stress.ts';
import type { Bands, ResultName, WeekName } from '../model/quantities.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import { type Setting, withChanges } from '../study/rows.ts';
import { closestTwo, type Ranking, rank } from '../uncertainty/advice.ts';
import { type Doubt, doubtOf } from '../uncertainty/doubt.ts';
import { type DrawOptions, type Draws, draw } from '../uncertainty/monteCarlo.ts';
import { bandsOf, type Measure } from '../uncertainty/percentiles.ts';
import { type WeekBands, weekBands } from '../uncertainty/weekBands.ts';
import { type BreakEvens, breakEvens } from '../whatif/breakEven.ts';
import { type Need, needsOf } from '../whatif/needs.ts';
import { oneAtATime, type Sensitivities } from '../whatif/oneAtATime.ts';
import { type Overtakes, overtakeSteps } from '../whatif/overtake.ts';
import { stressSteps } from '../whatif/stressRun.ts';
import { type Grid, type Sweep, spanOf, stepsOf, sweep, sweepTwo } from '../whatif/sweep.ts';
import { type HerdMeaning, turnOf } from '../whatif/turn.ts';
import { runWinters, type Winters } from '../whatif/winters.ts';

interface Span {
  readonly over: string;
  /** Ends of the span; the input's own when absent. */
  readonly from?: number;
  readonly to?: number;
  /** What turning the herd means for the shed; built to match when absent. */
  readonly herd?: HerdMeaning;
}

export interface Requests {
  draws: {
    readonly kind: 'draws';
    readonly count: number;
    readonly seed: number;
    readonly keep: readonly ResultName[];
  };
  /** Draws from `from` on, for a worker that shares the work. */
  part: {
    readonly kind: 'part';
    readonly from: number;
    readonly count: number;
    readonly seed: number;
    readonly keep: readonly ResultName[];
  };
  sweep: Span & { readonly kind: 'sweep'; readonly steps: number; readonly names: readonly ResultName[] };
  grid: Span & {
    readonly kind: 'grid';
    readonly across: string;
    readonly steps: number;
    readonly names: readonly ResultName[];
  };
  flips: Span & {
    readonly kind: 'flips';
    readonly measure: ResultName;
    readonly first: number;
    readonly second: number;
  };
  winters: {
    readonly kind: 'winters';
    readonly winters: readonly PreparedWeather[];
    readonly names: readonly ResultName[];
  };
  rank: {
    readonly kind: 'rank';
    readonly measure: ResultName;
    /** The best two on average when absent. */
    readonly between?: readonly [number, number];
    readonly top: number;
    readonly count: number;
    readonly seed: number;
  };
  /** The nearest value of any number that puts another scenario first. */
  overtakes: {
    readonly kind: 'overtakes';
    readonly measures: readonly Measure[];
    /** What turning the herd means for the shed; built to match when absent. */
    readonly herd?: HerdMeaning;
  };
  /** What makes the answer doubtful: the numbers that move the lead of one scenario over another. */
  doubt: {
    readonly kind: 'doubt';
    readonly measures: readonly Measure[];
    readonly first: number;
    readonly second: number;
    readonly count: number;
    readonly seed: number;
  };
  /** Likely span of weekly series, by week. */
  weekBands: {
    readonly kind: 'weekBands';
    readonly tracks: readonly WeekName[];
    readonly count: number;
    readonly seed: number;
  };
  /** What moves the money case of one scenario: the stresses, and each number from its low to its high end. */
  money: {
    readonly kind: 'money';
    readonly scenario: number;
    readonly baseline?: number;
    /** What its works cost; the level at which they pay is looked for on either side. */
    readonly capital: number;
    readonly top: number;
  };
}

export interface Answers {
  draws: { readonly draws: Draws; readonly bands: readonly Bands[] };
  part: Draws;
  sweep: Sweep | null;
  grid: Grid | null;
  flips: BreakEvens | null;
  winters: Winters;
  rank: { readonly draws: Draws; readonly ranking: Ranking | null };
  overtakes: Overtakes | null;
  doubt: Doubt | null;
  weekBands: WeekBands;
  money: {
    readonly stress: readonly StressRow[];
    readonly sensitivities: Sensitivities;
    readonly needs: readonly Need[];
  };
}

export type Kind = keyof Requests;
export type Request = Requests[Kind];
export type Answer = Answers[Kind];

/** Cells down a grid: half of those across, since a heat map is read wider than high. */
const gridRows = (steps: number) => Math.max(2, Math.ceil(steps / 2));

/** Makes draws in steps: here, or with others. */
export type Drawing = (
  setting: Setting,
  options: DrawOptions & { readonly changes: RowChanges },
) => Generator<number, Draws>;

/**
 * Works a request in steps: yields the share done, 0 to 1, and returns the answer; null where an input of that
 * name does not exist. Throws on a quantity the model does not know.
 */
export function* work(
  base: Setting,
  request: Request,
  changes: RowChanges = new Map(),
  draws: Drawing = draw,
): Generator<number, Answer> {
  if (request.kind === 'part') {
    const { from, count, seed, keep } = request;
    return yield* draw(base, { from, count, seed, keep, changes });
  }
  if (request.kind === 'draws') {
    const { count, seed, keep } = request;
    const drawn = yield* draws(base, { count, seed, keep, changes });
    const bands: Bands[] = [];
    for (let scenario = 0; scenario < drawn.scenarios; scenario++) {
      bands.push(bandsOf(drawn, scenario));
      yield 1;
    }
    return { draws: drawn, bands };
  }
  if (request.kind === 'weekBands') {
    const { tracks, count, seed } = request;
    return yield* weekBands(base, { tracks, count, seed, changes });
  }
  if (request.kind === 'rank') {
    const { measure, top, count, seed } = request;
    const better = betterOf(measure);
    const drawing = draws(base, { count, seed, keep: [measure], changes });
    let step = drawing.next();
    for (; !step.done; step = drawing.next()) yield step.value / 2;
    const drawn = step.value;
    const [first, second] = request.between ?? closestTwo(drawn, measure, better);
    const ranking = rank(drawn, { measure, better, first, second, top });
    let next = ranking.next();
    for (; !next.done; next = ranking.next()) yield 0.5 + next.value / 2;
    return { draws: drawn, ranking: next.value };
  }
  if (request.kind === 'doubt') {
    const { measures, first, second, count, seed } = request;
    const drawing = draws(base, { count, seed, keep: measures.map(({ name }) => name), changes });
    let step = drawing.next();
    for (; !step.done; step = drawing.next()) yield step.value / 2;
    const doubting = doubtOf(step.value, measures, first, second);
    let next = doubting.next();
    for (; !next.done; next = doubting.next()) yield 0.5 + next.value / 2;
    return next.value;
  }
  const setting = withChanges(base, changes);
  yield 0;
  if (request.kind === 'overtakes') return yield* overtakeSteps(setting, request.measures, request.herd);
  if (request.kind === 'money') {
    const { scenario, baseline, capital, top } = request;
    const stress = yield* stressSteps(setting);
    return {
      stress,
      sensitivities: oneAtATime(setting, scenario, baseline, top),
      needs: baseline === undefined ? [] : needsOf(setting, scenario, baseline, capital),
    };
  }
  if (request.kind === 'winters') return runWinters(setting, request.winters, request.names);
  const turn = turnOf(setting, request.over, request.herd);
  if (!turn) return null;
  const span = spanOf(turn, request.from, request.to);
  if (request.kind === 'sweep')
    return sweep(setting, turn, stepsOf(turn, ...span, request.steps), request.names);
  if (request.kind === 'flips')
    return breakEvens(setting, turn, span, request.measure, request.first, request.second);
  const other = turnOf(setting, request.across, request.herd);
  if (!other) return null;
  return sweepTwo(
    setting,
    [turn, stepsOf(turn, ...span, request.steps)],
    [other, stepsOf(other, ...spanOf(other), gridRows(request.steps))],
    request.names,
  );
}

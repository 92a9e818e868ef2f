/**
 * The answer before the figures, gathered: which way, by how much against the next best, how surely, what would turn
 * it, what is most doubtful and what is missing. Numbers only; `answerWords.ts` says them.
 */
import type { Check } from '../model/checks/check.ts';
import { type Better, COMPARISONS } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Notebook } from '../notebook/read.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import type { Setting } from '../study/rows.ts';
import { measuresOf } from '../uncertainty/decide.ts';
import type { Doubt } from '../uncertainty/doubt.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import { type Measure, shareBest, shareBestWeighted, weightedScores } from '../uncertainty/percentiles.ts';
import { readsTheSame } from '../units/format.ts';
import type { Overtakes } from '../whatif/overtake.ts';
import { pricesFelt } from '../whatif/pricesFelt.ts';
import { type Reading, unitOf } from './reading.ts';

/** First in fewer draws than two of three, a lead decides little: our own line, said with the number beside it. */
const LITTLE = 2 / 3;

/** What is told of the two that compete, whatever is weighed: what stays, what it takes. */
const ASKED: readonly ResultName[] = ['netCost', 'nitrogenKeptKg', 'labourHours'];

/**
 * `alone`: one scenario. `unknown`: nobody has the measure. `single`: only one has it. `tie`: the best read the same.
 * `split`: the best guesses and the draws have different leaders. `little`: it leads, in few of the draws. `led`: it leads.
 */
export type AnswerState = 'alone' | 'unknown' | 'single' | 'tie' | 'split' | 'little' | 'led';

/** One measure of the two that compete. */
export interface Apart {
  readonly name: ResultName;
  readonly better: Better;
  readonly first: number;
  readonly second: number;
}

export interface Missing {
  /** Prices in use, and how many of them rest on memory or invention only. */
  readonly prices: number;
  readonly unsourced: number;
  /** What the notebook does not say, in words. */
  readonly unsaid: readonly string[];
}

export interface Answer {
  readonly state: AnswerState;
  /** The keeper has said what is weighed, and it is more than one thing. */
  readonly weighed: boolean;
  readonly measures: readonly Measure[];
  readonly names: readonly string[];
  /** Places in `names`; those that read the same come together, the first of them is `first`. */
  readonly first: number;
  readonly second: number | null;
  readonly tied: readonly number[];
  /** Leader of most draws where it is another. */
  readonly inDraws: number | null;
  /** The measure where there is one, of every scenario; null where a scenario has none. */
  readonly values: readonly (number | null)[];
  /** Share of the draws in which each is first; undefined until they are made. */
  readonly shares: readonly number[] | undefined;
  readonly drawn: number;
  /** First against second on each measure both have and that does not read the same. */
  readonly apart: readonly Apart[];
  readonly stops: readonly Check[];
  /** The best that no check stops, where one stops the first; null where every one is stopped. */
  readonly unstopped: number | null;
  /** Undefined until known. */
  readonly overtakes: Overtakes | null | undefined;
  readonly doubt: Doubt | null | undefined;
  readonly missing: Missing;
}

export interface AnswerOf {
  readonly results: readonly ScenarioResult[];
  readonly weights: Readonly<Record<string, number>>;
  readonly missing: Missing;
  readonly draws?: Draws;
  readonly overtakes?: Overtakes | null;
  readonly doubt?: Doubt | null;
}

export function answerOf(
  { results, weights, draws, overtakes, doubt, missing }: AnswerOf,
  reading: Reading,
): Answer {
  const measures = measuresOf(weights);
  const single = measures.length === 1 ? measures[0] : undefined;
  const values = results.map(({ values }) => (single ? (values[single.name] ?? null) : null));
  const scores = scoresOf(results, measures);
  const order = scores
    .map((score, scenario) => ({ score, scenario }))
    .filter(({ scenario }) => measures.some(({ name }) => results[scenario].values[name] != null))
    .sort((a, b) => b.score - a.score)
    .map(({ scenario }) => scenario);
  const first = order[0] ?? 0;
  const alike = (a: number, b: number) =>
    single
      ? readsTheSame(Number(values[a]), Number(values[b]), unitOf(single.name), reading)
      : scores[a] === scores[b];
  const tied = order.filter((scenario) => alike(scenario, first));
  const shares =
    draws && draws.scenarios === results.length && measures.every(({ name }) => draws.results[name])
      ? single
        ? shareBest(draws, single.name, single.better)
        : shareBestWeighted(draws, measures)
      : undefined;
  const most = shares ? shares.indexOf(Math.max(...shares)) : first;
  const second = order[1] ?? null;
  return {
    state: stateOf(results.length, order, tied, first, most, shares),
    weighed: single === undefined,
    measures,
    names: results.map(({ name }) => name),
    first,
    second,
    tied,
    inDraws: most === first ? null : most,
    values,
    shares,
    drawn: draws?.count ?? 0,
    apart: second === null ? [] : apartOf(results, measures, [first, second], reading),
    stops: stopsOf(results[first]),
    unstopped: order.find((scenario) => stopsOf(results[scenario]).length === 0) ?? null,
    overtakes,
    doubt,
    missing,
  };
}

const stopsOf = (result: ScenarioResult | undefined) =>
  result?.checks.filter(({ status }) => status === 'stop') ?? [];

/** One row of every scenario, scored as the draws are. */
function scoresOf(results: readonly ScenarioResult[], measures: readonly Measure[]): number[] {
  const columns = Object.fromEntries(
    measures.map(({ name }) => [
      name,
      Float64Array.from(results, ({ values }) => values[name] ?? Number.NaN),
    ]),
  );
  return [...weightedScores({ scenarios: results.length, results: columns }, measures)];
}

function stateOf(
  count: number,
  order: readonly number[],
  tied: readonly number[],
  first: number,
  most: number,
  shares: readonly number[] | undefined,
): AnswerState {
  if (order.length === 0) return 'unknown';
  if (count === 1) return 'alone';
  if (order.length === 1) return 'single';
  if (tied.length > 1) return 'tie';
  if (!shares) return 'led';
  if (most !== first) return 'split';
  return shares[first] < LITTLE ? 'little' : 'led';
}

function apartOf(
  results: readonly ScenarioResult[],
  measures: readonly Measure[],
  [first, second]: readonly [number, number],
  reading: Reading,
): Apart[] {
  const names = [...new Set([...measures.map(({ name }) => name), ...ASKED])];
  return names.flatMap((name) => {
    const better = COMPARISONS.find((c) => c.name === name)?.better;
    const [a, b] = [first, second].map((k) => results[k].values[name]);
    if (!better || a == null || b == null || readsTheSame(a, b, unitOf(name), reading)) return [];
    return [{ name, better, first: a, second: b }];
  });
}

/** What an answer rests on that nobody has looked up, and what the notebook leaves unsaid. */
export function missingOf(setting: Setting, notebook: Pick<Notebook, 'farm'>): Missing {
  const bases = pricesFelt(setting).map(({ coefficient }) => coefficient?.basis);
  const { place, soil, weather } = notebook.farm;
  return {
    prices: bases.length,
    unsourced: bases.filter((basis) => basis === 'invented' || basis === 'from memory').length,
    unsaid: [
      ...(place.country === undefined ? ['the country, so no local limit is checked'] : []),
      ...(soil.needs === undefined ? ['a soil test'] : []),
      ...(weather.file === undefined ? ['measured weather'] : []),
    ],
  };
}

/** Cases through the model: each measured output beside the model's centre and its draws, and a verdict. */

import { quantileSorted } from 'd3-array';
import { isValue, resultNamed } from '../model/dictionary.ts';
import { repeatScenarios, resultIn, runBlock } from '../study/rows.ts';
import { type Draws, drawAll } from '../uncertainty/monteCarlo.ts';
import { setTurn } from '../whatif/turn.ts';
import { type Case, keptFor, type Output, sameSource } from './case.ts';
import { sumOf } from './terms.ts';

export const VERDICTS = ['pass', 'near', 'fail'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** Measured by others and not fitted to; a rule or table; or a study that rows of the tables were taken from. */
export const CLASSES = ['independent', 'standard', 'calibration'] as const;
export type OutputClass = (typeof CLASSES)[number];

export interface Scored {
  readonly case: string;
  readonly title: string;
  /** Id in data/sources.csv. */
  readonly source: string;
  readonly output: string;
  readonly unit: string;
  readonly measured: number;
  readonly low: number;
  readonly high: number;
  readonly band: Output['band'];
  readonly known: Output['known'];
  readonly class: OutputClass;
  /** Rows of the tables taken from the same study. */
  readonly fittedBy: readonly string[];
  /** With every number at its best guess; null where the scenario has no such figure. */
  readonly model: number | null;
  readonly p10: number | null;
  readonly p90: number | null;
  readonly verdict: Verdict;
  /** Whether the measured value lies from P10 to P90 of the model. */
  readonly insideDraws: boolean;
  readonly likelyCause: string;
}

export interface DrawCount {
  readonly count: number;
  readonly seed: number;
}

/** A quarter of the band's width, or this share of the measured value, whichever is more, is near. */
const NEAR_SHARE = 0.2;
const NEAR_WIDTH = 0.25;
const ROUNDING = 1e-9;

export function verdictOf(model: number | null, value: number, low: number, high: number): Verdict {
  if (model === null) return 'fail';
  if (model >= low && model <= high) return 'pass';
  const beyond = model < low ? low - model : model - high;
  const close =
    beyond <= NEAR_WIDTH * (high - low) * (1 + ROUNDING) ||
    Math.abs(model - value) <= NEAR_SHARE * Math.abs(value) * (1 + ROUNDING);
  return close ? 'near' : 'fail';
}

/** Every output of a case, scored. The same draws stand behind all of them. */
export function scoreCase(one: Case, { count, seed }: DrawCount): Scored[] {
  const draws = drawAll(one.run, { count, seed, keep: keptFor(one.outputs) });
  const moves = movedBy(one);
  return one.outputs.map((output) => {
    const rows = [...new Set([...output.calibrates, ...moves(output)])].sort();
    const central = finite(centralOf(one, output));
    const spread = drawnOf(one, output, draws);
    const at = (p: number) =>
      spread.length * 2 < count ? null : (quantileSorted(spread as ArrayLike<number> as number[], p) ?? null);
    const [p10, p90] = [at(0.1), at(0.9)];
    const { value, low, high } = output;
    return {
      case: one.id,
      title: one.title,
      source: one.source,
      output: output.output,
      unit: output.unit,
      measured: value,
      low,
      high,
      band: output.band,
      known: output.known,
      class: rows.length > 0 ? 'calibration' : output.kind === 'standard' ? 'standard' : 'independent',
      fittedBy: rows,
      model: central,
      p10,
      p90,
      verdict: verdictOf(central, value, low, high),
      insideDraws: p10 !== null && p90 !== null && value >= p10 && value <= p90,
      likelyCause: output.likelyCause,
    };
  });
}

/**
 * The rows of the case's own source that an output hangs on: it moves when they are turned by a hundredth. By these it
 * was, or may have been, fitted to the study it is held against.
 */
function movedBy(one: Case): (output: Output) => string[] {
  const rows = sameSource(one);
  if (rows.length === 0) return () => [];
  const block = repeatScenarios(one.run, rows.length + 1, keptFor(one.outputs));
  rows.forEach(({ at, value }, k) => {
    setTurn(block, { at, herds: [] }, k + 1, value === 0 ? 0.01 : value * 1.01);
  });
  const made = runBlock(block, one.run.weather);
  const valueIn = (repeat: number) => (name: string, scenario: number) =>
    name === 'winterDays'
      ? (one.run.results[scenario].values.winterDays ?? Number.NaN)
      : made[resultNamed(name)][repeat * block.scenarios + scenario];
  return (output) => {
    const still = figure(output, valueIn(0));
    return rows
      .filter((_, k) => Math.abs(figure(output, valueIn(k + 1)) - still) > 1e-9 * Math.abs(still))
      .map(({ id }) => id);
  };
}

const finite = (value: number) => (Number.isFinite(value) ? value : null);

/** `read` gives a result of a scenario. */
function figure(output: Output, read: (name: string, scenario: number) => number): number {
  const of = (scenario: number) => {
    const value = (name: string) => read(name, scenario);
    const per = output.perTerms.length > 0 ? sumOf(output.perTerms, value) : 1;
    return (output.times * sumOf(output.ofTerms, value)) / per;
  };
  if (output.againstAt === undefined) return of(output.at);
  const [first, second] = [of(output.at), of(output.againstAt)];
  return output.against?.as === 'ratio' ? first / second : first - second;
}

const centralOf = ({ run }: Case, output: Output): number =>
  figure(
    output,
    (name, scenario) => (isValue(name) ? run.results[scenario].values[name] : null) ?? Number.NaN,
  );

/** The finite draws, sorted. The length of the winter is chosen and not drawn. */
function drawnOf({ run }: Case, output: Output, { results, scenarios, count }: Draws): Float64Array {
  const out = new Float64Array(count);
  for (let draw = 0; draw < count; draw++)
    out[draw] = figure(output, (name, scenario) =>
      name === 'winterDays'
        ? (run.results[scenario].values.winterDays ?? Number.NaN)
        : resultIn(results, resultNamed(name))[draw * scenarios + scenario],
    );
  return out.filter(Number.isFinite).sort();
}

export interface Tally {
  readonly outputs: number;
  readonly studies: number;
  readonly pass: number;
  readonly near: number;
  readonly fail: number;
  readonly insideDraws: number;
}

export function tally(rows: readonly Scored[], of: OutputClass): Tally {
  const counted = rows.filter((row) => row.class === of);
  const have = (verdict: Verdict) => counted.filter((row) => row.verdict === verdict).length;
  return {
    outputs: counted.length,
    studies: new Set(counted.map(({ source }) => source)).size,
    pass: have('pass'),
    near: have('near'),
    fail: have('fail'),
    insideDraws: counted.filter(({ insideDraws }) => insideDraws).length,
  };
}

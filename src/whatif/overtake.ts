/** What would turn the answer: of all numbers, the one whose nearest plausible value puts another scenario first. */
import { group } from 'd3-array';
import { INPUTS } from '../notebook/inputs.ts';
import { repeatScenarios, runBlock, type Setting } from '../study/rows.ts';
import { FORM } from '../tables/coefficient.ts';
import { type Uncertain, uncertainIn } from '../uncertainty/monteCarlo.ts';
import { type Measure, weightedScores } from '../uncertainty/percentiles.ts';
import { stepsBetween, WHOLE_UNITS } from './sweep.ts';
import { type HerdMeaning, setTurn, type Turn, turnOf } from './turn.ts';
import { turnLimits } from './turnLimits.ts';

export interface Overtake {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly now: number;
  /** First value found at which another scenario is first; whole where the number only comes whole. */
  readonly at: number;
  /** Scenario that is first there. */
  readonly by: number;
  /** Ends of the span that was looked over. */
  readonly low: number;
  readonly high: number;
  /** The span is the number's own range; else half to twice of where it stands. */
  readonly ranged: boolean;
  /** What is turned with it, in words. */
  readonly note?: string;
  /** Scenarios it is turned in and that feel it, where it stands otherwise in others. */
  readonly only?: readonly number[];
}

/** Points looked at between where a number stands and either end of its span. */
const STEPS = 3;
/** Points inside a bracket and how often it is narrowed: to 1/512 of a third of the way. */
const INSIDE = 9;
const ROUNDS = 3;
/** Whole numbers looked at towards an end; of more, evenly spaced ones. */
const MOST_WHOLE = 200;

interface Candidate extends Pick<Turn, 'at' | 'herds'> {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly now: number;
  readonly low: number;
  readonly high: number;
  readonly ranged: boolean;
  readonly note?: string;
  readonly only?: readonly number[];
}

interface Bracket {
  readonly candidate: Candidate;
  /** `first` leads at the near end and no longer at the far end. */
  readonly near: number;
  readonly far: number;
  readonly by: number;
}

export interface Overtakes {
  readonly first: number;
  /** Nearest: the smallest part of the way from where the number stands to the end of its span. Null: none. */
  readonly nearest: Overtake | null;
  /** Numbers turned. */
  readonly looked: number;
}

/**
 * Looks over every number with a range (to its ends), every input that can be turned and the herd (half to twice),
 * one at a time. Null when nobody is first as things stand.
 */
export function* overtakeSteps(
  setting: Setting,
  measures: readonly Measure[],
  herd?: HerdMeaning,
): Generator<number, Overtakes | null> {
  const [start] = leadersOf(setting, measures, []);
  if (start === null || setting.bound.length < 2) return null;
  const candidates = candidatesIn(setting, herd);
  const points = candidates.flatMap((candidate) =>
    [candidate.low, candidate.high].flatMap((end) =>
      end === candidate.now ? [] : [{ candidate, values: valuesTo(candidate, end) }],
    ),
  );
  const found = yield* leaders(
    setting,
    measures,
    points.map(({ candidate, values }) => values.map((value) => ({ candidate, value }))),
  );
  let at = 0;
  let brackets = points.flatMap(({ candidate, values }): Bracket[] => {
    const led = found.slice(at, at + values.length);
    at += values.length;
    return bracketIn(candidate, [candidate.now, ...values], [start, ...led], start);
  });
  const whole = brackets.filter(({ candidate }) => isWhole(candidate));
  brackets = brackets.filter(({ candidate }) => !isWhole(candidate));
  for (let round = 0; round < ROUNDS && brackets.length > 0; round++) {
    const inside = brackets.map(({ near, far }) => stepsBetween(near, far, INSIDE));
    const led = yield* leaders(
      setting,
      measures,
      brackets.map(({ candidate }, k) => inside[k].map((value) => ({ candidate, value }))),
    );
    brackets = brackets.map(
      (bracket, k) =>
        bracketIn(bracket.candidate, inside[k], led.slice(k * INSIDE, (k + 1) * INSIDE), start)[0] ?? bracket,
    );
  }
  const nearest = [...whole, ...brackets]
    .map((bracket) => ({ bracket, part: partOfTheWay(bracket) }))
    .sort((a, b) => a.part - b.part)[0]?.bracket;
  return {
    first: start,
    nearest: nearest ? overtakeOf(nearest, feltIn(setting, measures, nearest)) : null,
    looked: candidates.length,
  };
}

/** The same without stopping. */
export function overtakes(
  setting: Setting,
  measures: readonly Measure[],
  herd?: HerdMeaning,
): Overtakes | null {
  const steps = overtakeSteps(setting, measures, herd);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function overtakeOf({ candidate, far, by }: Bracket, felt: readonly number[]): Overtake {
  const { at: _, herds: __, only, ...said } = candidate;
  return { ...said, by, at: far, ...(only && felt.length > 0 ? { only: felt } : {}) };
}

const isWhole = ({ unit }: Candidate) => WHOLE_UNITS.has(unit);

/**
 * What is looked at between where a number stands and an end, nearest first: a few points to narrow between, or, of what
 * only comes whole, every one, since works built to match go by whole bays and two heads apart may differ either way.
 */
function valuesTo(candidate: Candidate, end: number): number[] {
  const { now } = candidate;
  if (!isWhole(candidate)) return stepsBetween(now, end, STEPS + 1).slice(1);
  const [from, to] =
    end > now ? [Math.floor(now) + 1, Math.floor(end)] : [Math.ceil(now) - 1, Math.ceil(end)];
  const apart = Math.max(1, Math.ceil(Math.abs(to - from) / MOST_WHOLE));
  const count = Math.floor(Math.abs(to - from) / apart) + 1;
  return Array.from({ length: count }, (_, k) => from + Math.sign(end - now) * k * apart);
}

const partOfTheWay = ({ candidate: { now, low, high }, far }: Bracket) =>
  Math.abs(far - now) / Math.abs((far > now ? high : low) - now);

/** The first change of the leader along rising distance; a value at which nobody leads is no change. */
function bracketIn(
  candidate: Candidate,
  values: readonly number[],
  led: readonly (number | null)[],
  start: number,
): Bracket[] {
  let near = values[0];
  for (let k = 0; k < values.length; k++) {
    const by = led[k];
    if (by === start) near = values[k];
    else if (by !== null && k > 0) return [{ candidate, near, far: values[k], by }];
  }
  return [];
}

interface Point {
  readonly candidate: Candidate;
  readonly value: number;
}

/** Points of one run: few enough to stop between. */
const CHUNK = 300;

/** Who is first at each point; null where several are or nobody has the measure. */
function* leaders(
  setting: Setting,
  measures: readonly Measure[],
  points: readonly (readonly Point[])[],
): Generator<number, (number | null)[]> {
  const flat = points.flat();
  const out: (number | null)[] = [];
  for (let from = 0; from < flat.length; from += CHUNK) {
    out.push(...leadersOf(setting, measures, flat.slice(from, from + CHUNK)));
    yield 0;
  }
  return out;
}

/** The same in one run; without points, as things stand. */
function leadersOf(
  setting: Setting,
  measures: readonly Measure[],
  flat: readonly Point[],
): (number | null)[] {
  const names = measures.map(({ name }) => name);
  const block = repeatScenarios(setting, Math.max(1, flat.length), names);
  flat.forEach(({ candidate, value }, repeat) => {
    setTurn(block, candidate, repeat, value);
  });
  const { scenarios } = block;
  const results = runBlock(block, setting.weather);
  const scores = weightedScores({ scenarios, results }, measures);
  const known = (row: number) => measures.some(({ name }) => Number.isFinite(results[name][row]));
  return Array.from({ length: block.repeats }, (_, repeat) => {
    const order = Array.from({ length: scenarios }, (__, scenario) => scenario)
      .filter((scenario) => known(repeat * scenarios + scenario))
      .sort((a, b) => scores[repeat * scenarios + b] - scores[repeat * scenarios + a]);
    if (order.length < 2) return order[0] ?? null;
    const [a, b] = order.map((scenario) => scores[repeat * scenarios + scenario]);
    return a > b ? order[0] : null;
  });
}

function candidatesIn(setting: Setting, herd?: HerdMeaning): Candidate[] {
  const ranged = uncertainIn(setting)
    // Which of two published forms holds is not a level that could be reached.
    .filter(({ unit }) => unit !== FORM)
    .map((each: Uncertain): Candidate => ({ ...each, now: each.central, herds: [], ranged: true }));
  const own = ownNumbers(setting).flatMap((name): Candidate[] => {
    const turn = turnOf(setting, name, herd);
    return turn ? standings(setting, turn).flatMap((each) => halfToTwice(setting, each)) : [];
  });
  return [...ranged, ...own];
}

type Standing = Turn & Pick<Candidate, 'only'>;

/** From half of where it stands to twice of it, as far as it can go. */
function halfToTwice(setting: Setting, { only, ...turn }: Standing): Candidate[] {
  const { name, label, unit, now, at, herds, note } = turn;
  if (!(now > 0)) return [];
  const limits = turnLimits(setting, turn);
  const [low, high] = [now / 2, now * 2].map((end) => (limits.holds(end) ? end : now));
  const said = name === 'headCount' ? 'the herd' : label;
  return [{ id: name, label: said, unit, now, low, high, at, herds, note, only, ranged: false }];
}

/**
 * Scenarios in which an input moves a measure at all: the shed's length stands in every scenario of a farm that gives it,
 * and is nothing to one without a shed. It is turned in all, and said of those that feel it.
 */
function feltIn(setting: Setting, measures: readonly Measure[], { candidate, far }: Bracket): number[] {
  const { only } = candidate;
  if (!only) return [];
  const names = measures.map(({ name }) => name);
  const block = repeatScenarios(setting, 2, names);
  setTurn(block, candidate, 1, far);
  const { scenarios } = block;
  const results = runBlock(block, setting.weather);
  return only.filter((k) => names.some((name) => results[name][k] !== results[name][scenarios + k]));
}

/**
 * An input that stands otherwise in some scenarios is as many numbers, each turned where it stands: a shed of 4 m and one
 * of 10 m are not both made 11 m deep.
 */
function standings({ bound }: Setting, turn: Turn): Standing[] {
  const groups = group(turn.at, ({ scenario, column }) => bound[scenario].bindings.get(column)?.value);
  if (groups.size < 2) return [turn];
  return [...groups].map(([now = Number.NaN, at]) => ({
    ...turn,
    now,
    at,
    only: at.map(({ scenario }) => scenario),
  }));
}

/** Names of what the notebook gives without a range and a keeper could see otherwise: inputs with a span, own prices. */
function ownNumbers({ bound }: Setting): string[] {
  const spanned = new Set(
    INPUTS.filter(
      ({ column, min, max }) => min !== undefined && max !== undefined && column !== 'herdFactor',
    ).map(({ column }) => column),
  );
  const names = bound.flatMap(({ bindings }) =>
    [...bindings.values()].flatMap(({ column, id, value, low, high, origin, unit }) => {
      if (!Number.isFinite(value) || low < high) return [];
      if (origin === 'input' && (spanned.has(column) || unit.startsWith('money/'))) return [column];
      return origin === 'override' ? [id] : [];
    }),
  );
  return [...new Set(['headCount', ...names])];
}

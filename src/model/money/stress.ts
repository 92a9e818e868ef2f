/** What a bad year or a bad decade does to the case, and how bad it must get before the choice flips. */
import { type CaseInput, type FinanceCase, financeCase } from './case.ts';
import { ON_TIME, type Timing } from './timing.ts';

type Column = CaseInput['column'];
/** Columns to turn and what to. */
export type Changes = ReadonlyMap<string, number>;
/**
 * Runs all scenarios, each with its own changes, and hands back their results in the same order, with columns
 * as they were run.
 */
export type StressRun = (changes: readonly Changes[]) => readonly CaseInput[];

/** How far a stress goes: the level shown in the table, and the furthest a break-even is looked for. */
export interface StressLevel {
  readonly central: number;
  readonly high: number;
}

export interface StressSpec {
  readonly id: string;
  readonly label: string;
  /** Row of the coefficient table with level and reach. */
  readonly level: string;
  /** Printed after the level times 100; `years` after the level itself. */
  readonly unit: string;
  /** From the results of a usual year. */
  readonly changes: (level: number, usual: CaseInput) => Changes;
  /** Why it cannot touch a scenario that has nothing of the kind; null where it has. */
  readonly lacks?: (usual: CaseInput) => string | null;
  /** What comes later than it should, in years. */
  readonly timing?: (level: number) => Timing;
}

const NOTHING = (): Changes => new Map();
/** Works as new: a given capital is that of all works, those that stand already with them. */
const worksOf = ({ values }: CaseInput) => values.capitalAll ?? values.capitalCost;

const FERTILISER = ['nitrogenPricePerKg', 'phosphorusPricePerKg', 'potassiumPricePerKg'];

/** The members of a repeated input this row has: `material` and `PricePerTonne` → material1PricePerTonne … */
function members(column: Column, family: string, field: string): string[] {
  const names: string[] = [];
  while (column(`${family}${names.length + 1}${field}`) !== undefined)
    names.push(`${family}${names.length + 1}${field}`);
  return names;
}

function changed(
  column: Column,
  names: readonly string[],
  to: (value: number) => number,
): [string, number][] {
  return names.flatMap((name): [string, number][] => {
    const value = column(name);
    return value !== undefined && Number.isFinite(value) ? [[name, to(value)]] : [];
  });
}

const none = (value: number | null | undefined) => value == null || !(Math.abs(value) > 0);
const noGrant = ({ values }: CaseInput) => (none(values.grantUsed) ? 'there is no grant' : null);
const noLoan = ({ column }: CaseInput) =>
  members(column, 'loan', 'Amount').every((name) => none(column(name))) ? 'nothing is borrowed' : null;

export const STRESSES: readonly StressSpec[] = [
  {
    id: 'income',
    label: 'income of the herd lower',
    level: 'stressIncomeFraction',
    unit: '%',
    changes: (level, { column }) =>
      new Map(changed(column, ['incomePerHead'], (income) => income * (1 - level))),
    lacks: ({ column }) => (none(column('incomePerHead')) ? 'no income is named' : null),
  },
  {
    id: 'works',
    label: 'works dearer',
    level: 'stressWorksFraction',
    unit: '%',
    changes: (level, usual) => {
      const works = worksOf(usual);
      return new Map(works == null ? [] : [['capitalGiven', works * (1 + level)]]);
    },
    lacks: (usual) => (worksOf(usual) === 0 ? 'nothing is built' : null),
  },
  {
    id: 'feed',
    label: 'feed dearer',
    level: 'stressFeedFraction',
    unit: '%',
    changes: (level, { column }) =>
      new Map(changed(column, members(column, 'feed', 'PricePerTonne'), (price) => price * (1 + level))),
  },
  {
    id: 'bedding',
    label: 'bedding dearer',
    level: 'stressBeddingFraction',
    unit: '%',
    changes: (level, { column }) =>
      new Map(changed(column, members(column, 'material', 'PricePerTonne'), (price) => price * (1 + level))),
    lacks: ({ values }) => (none(values.beddingTonnes) ? 'no bedding is strewn' : null),
  },
  {
    id: 'fertiliser',
    label: 'fertiliser cheaper, so nutrients kept are worth less',
    level: 'stressFertiliserFraction',
    unit: '%',
    changes: (level, { column }) => new Map(changed(column, FERTILISER, (price) => price * (1 - level))),
  },
  {
    id: 'rate',
    label: 'loans dearer, the rate for discounting unmoved',
    level: 'stressRateFraction',
    unit: 'points',
    changes: (level, { column }) =>
      new Map(changed(column, members(column, 'loan', 'Rate'), (rate) => rate + level)),
    lacks: noLoan,
  },
  {
    id: 'grant',
    label: 'grant refused',
    level: 'stressGrantFraction',
    unit: '% of it',
    changes: (level, { column }) => new Map(changed(column, ['grantAmount'], (grant) => grant * (1 - level))),
    lacks: noGrant,
  },
  {
    id: 'rain',
    label: 'wetter winter',
    level: 'stressRainFraction',
    unit: '%',
    changes: (level, { column }) =>
      new Map(changed(column, ['rainFactor'], (factor) => factor * (1 + level))),
  },
  {
    id: 'herd',
    label: 'fewer cattle with their income, same works',
    level: 'stressHerdFraction',
    unit: '%',
    // What is built stays built: the bill is not drawn smaller for a herd that shrank afterwards.
    changes: (level, usual) => {
      const works = worksOf(usual);
      return new Map([
        ...changed(usual.column, ['herdFactor'], (factor) => factor * (1 - level)),
        ...(works == null ? [] : [['capitalGiven', works] as [string, number]]),
      ]);
    },
  },
  {
    id: 'grantLate',
    label: 'grant paid later',
    level: 'stressGrantLateYears',
    unit: 'years',
    changes: NOTHING,
    lacks: noGrant,
    timing: (level) => ({ ...ON_TIME, grantLateYears: level }),
  },
  {
    id: 'delay',
    label: 'works paid for and used later, the winter as at the baseline until then',
    level: 'stressDelayYears',
    unit: 'years',
    changes: NOTHING,
    timing: (level) => ({ ...ON_TIME, delayYears: level }),
  },
];

/** "20 %", "3 points", "1 year": a level as it is said. */
export function levelWords(level: number, unit: string, digits = 1): string {
  if (unit !== 'years') return `${Number((level * 100).toFixed(digits))} ${unit}`;
  const years = Number(level.toFixed(digits));
  return `${years} ${years === 1 ? 'year' : 'years'}`;
}

export interface StressOutcome {
  readonly name: string;
  readonly netCost: number | null;
  readonly netCostChange: number | null;
  readonly netPresentValue: number | null;
  /** Present value against the baseline. */
  readonly gain: number | null;
  readonly debtServiceCover: number | null;
  /** Level at which the gain against the baseline is 0; null with the reason in `words`. */
  readonly breakEven: number | null;
  /** Why nothing of it can touch this scenario ("there is no grant"); null where something can. */
  readonly lacks: string | null;
  readonly words: string;
}

export interface StressRow {
  readonly id: string;
  readonly label: string;
  readonly level: number;
  readonly unit: string;
  readonly outcomes: readonly StressOutcome[];
}

/** Steps in which a flip is looked for before it is closed in on, and halvings once it is found. */
const STEPS = 8;
const HALVINGS = 24;

/**
 * One row for each stress, one outcome for each scenario. `usual` is what `run` gives without changes; `levels`
 * are the coefficient rows named by the specs, and a stress without its row is left out.
 */
export function stressTable(
  usual: readonly CaseInput[],
  run: StressRun,
  levels: ReadonlyMap<string, StressLevel>,
  baselineName?: string,
): StressRow[] {
  return STRESSES.flatMap((spec): StressRow[] => {
    const reach = levels.get(spec.level);
    if (!reach) return [];
    const known = new Map<number, { inputs: readonly CaseInput[]; cases: readonly FinanceCase[] }>();
    const at = (level: number) => {
      const before = known.get(level);
      if (before) return before;
      const inputs = run(usual.map((input) => spec.changes(level, input)));
      const result = { inputs, cases: financeCase(inputs, baselineName, spec.timing?.(level)) };
      known.set(level, result);
      return result;
    };
    const { inputs, cases } = at(reach.central);
    const outcomes = cases.map((one, k): StressOutcome => {
      const netCost = inputs[k].values.netCost ?? null;
      const before = usual[k].values.netCost ?? null;
      const turn = breakEven(spec, reach.high, (level) => at(level).cases[k]);
      const lacks = spec.lacks?.(usual[k]) ?? null;
      return {
        name: one.name,
        netCost,
        netCostChange: netCost === null || before === null ? null : netCost - before,
        netPresentValue: one.netPresentValue.value,
        gain: one.difference?.netPresentValue.value ?? null,
        debtServiceCover: one.debtServiceCover.value,
        ...turn,
        lacks,
        // What its baseline has may be touched all the same, and turn the two.
        ...(lacks !== null && turn.words === UNMOVED ? { words: lacks } : {}),
      };
    });
    return [{ id: spec.id, label: spec.label, level: reach.central, unit: spec.unit, outcomes }];
  });
}

function breakEven(
  spec: StressSpec,
  furthest: number,
  caseAt: (level: number) => FinanceCase,
): { breakEven: number | null; words: string } {
  const start = caseAt(0);
  const gain = (level: number) => caseAt(level).difference?.netPresentValue.value ?? Number.NaN;
  const atStart = gain(0);
  const print = (level: number) => levelWords(level, spec.unit, level < 0.1 || spec.unit === 'years' ? 1 : 0);
  if (!Number.isFinite(atStart))
    return { breakEven: null, words: start.differenceWhy || 'a price it needs is missing' };
  let low = 0;
  for (let step = 1; step <= STEPS; step++) {
    const high = (furthest * step) / STEPS;
    const there = gain(high);
    if (Number.isFinite(there) && there > 0 !== atStart > 0) {
      const level = halve(gain, low, high, atStart > 0);
      return {
        breakEven: level,
        words: `at ${print(level)} it is even with “${start.difference?.baseline}”`,
      };
    }
    low = high;
  }
  return {
    breakEven: null,
    words: unturned(atStart, gain(furthest), `“${start.difference?.baseline}”`, print(furthest)),
  };
}

/** A change this small beside the gain itself is none that a reader could find. */
const UNMOVED_SHARE = 1e-4;

const UNMOVED = 'does not hang on it';

/** What is said where no level turns the case: a stress that only makes a losing case worse could not. */
function unturned(atStart: number, atEnd: number, baseline: string, furthest: string): string {
  if (Math.abs(atEnd - atStart) <= UNMOVED_SHARE * Math.abs(atStart)) return UNMOVED;
  if (atStart > 0) return `stays ahead of ${baseline} up to ${furthest}`;
  return atEnd < atStart
    ? `is behind ${baseline} as it stands, and further with this`
    : `stays behind ${baseline} up to ${furthest}`;
}

function halve(gain: (level: number) => number, low: number, high: number, positiveAtLow: boolean): number {
  let a = low;
  let b = high;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (a + b) / 2;
    if (gain(middle) > 0 === positiveAtLow) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

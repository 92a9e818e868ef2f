/**
 * Turning an input: the one operation behind the slider, a sweep's step, a cell of a map, a flip and the command.
 * A turn is plain data, so that it can cross to a worker; what it does to the model's columns at a value is
 * `columnsAt`, and nothing else sets a turned column.
 */
import { group } from 'd3-array';
import type { Binding, RowChanges } from '../model/bind.ts';
import { INPUTS } from '../notebook/inputs.ts';
import type { Scenario } from '../notebook/schema.ts';
import { type Block, ofScenario, type Setting } from '../study/rows.ts';

/** What becomes of the works when the herd's size is turned: the shed stays, or is built to match. */
export const HERD_MEANINGS = ['built', 'stays'] as const;
export type HerdMeaning = (typeof HERD_MEANINGS)[number];
/** A larger herd in the smaller one's shed would make roofs look cheap. */
export const HERD_DEFAULT: HerdMeaning = 'built';
/** The meanings in the keeper's words. */
export const HERD_WORDS: Readonly<Record<HerdMeaning, string>> = {
  built: 'shed is built to match',
  stays: 'the shed stays',
};
/** What is turned with the herd, or held: said beside what is found. */
export const HERD_NOTES: Readonly<Record<HerdMeaning, string>> = {
  built: 'shed and yards are built to match the herd, the land stays as it is',
  stays: 'the shed stays as it is, however many stand in it',
};

/** An input that can be turned, as the keeper names it. */
export interface Turn {
  /** Name as typed: a column, the id of a coefficient or price, or `headCount` for the whole herd. */
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Where it stands now, in the first scenario that has it. */
  readonly now: number;
  /** What else is turned with it, or held, in words; said beside what is found. */
  readonly note?: string;
  /** The columns that stand at the keeper's value itself. */
  readonly at: readonly { readonly scenario: number; readonly column: string }[];
  /** The herds whose whole size is turned, and the works built to match them. */
  readonly herds: readonly Herd[];
}

interface Herd {
  readonly scenario: number;
  /** Head by group as they stand; empty where the herd is turned by a factor. */
  readonly heads: readonly number[];
  /** What `works` are built for, in the unit of the turn. */
  readonly now: number;
  /** Works that are built to match; where the shed stays, only what would be worked out anew from the herd. */
  readonly works: readonly Work[];
}

interface Work {
  /** Absent where only the checks look at it. */
  readonly column?: string;
  /** Where it stands in the scenario. */
  readonly path: string;
  readonly now: number;
  /** Works are built to so much: a length to the centimetre, bowls whole. */
  readonly to: number;
  /** Stands as it is, whatever the herd: an area the notebook leaves to be worked out from its own herd. */
  readonly stays?: true;
}

const inputOf = (name: string) => {
  const found = INPUTS.find(({ column }) => column === name);
  if (!found) throw new Error(`no input of the name ${name}`);
  return found;
};
/** What is built for so many animals; so that only a scenario with a bed or slats writes what belongs to one. */
const WORKS: readonly (Pick<Work, 'column' | 'path'> & {
  readonly of: (s: Scenario) => number;
  readonly housed?: boolean;
})[] = [
  { ...inputOf('shedLengthM'), housed: true },
  inputOf('slatsM2'),
  inputOf('openStoreM2'),
  inputOf('storeSurfaceGivenM2'),
  inputOf('openYardM2'),
  inputOf('hardStandingM2'),
  { ...inputOf('waterBowls'), housed: true },
  { ...inputOf('calvingPensM2'), housed: true },
  { path: 'shed.inletM2', of: (s) => s.shed.inletM2 ?? Number.NaN, housed: true },
  inputOf('capitalGiven'),
];

/** Finds what can be turned by name in this setting; undefined when no scenario has such a number. */
export function turnOf(
  setting: Setting,
  name: string,
  meaning: HerdMeaning = HERD_DEFAULT,
): Turn | undefined {
  if (name === 'headCount') return herdTurn(setting, meaning);
  const found = setting.bound.flatMap(({ bindings }, scenario) => {
    const own = bindings.get(name);
    const all = own ? [own] : [...bindings.values()].filter((b) => b.id === name);
    return all.filter((b) => Number.isFinite(b.value)).map((binding) => ({ scenario, binding }));
  });
  if (found.length === 0) return undefined;
  const { binding } = found[0];
  const span = INPUTS.find((i) => i.column === binding.column);
  const ranged = binding.low < binding.high;
  return {
    name,
    label: binding.label,
    unit: binding.unit,
    min: span?.min ?? (ranged ? binding.low : undefined),
    max: span?.max ?? (ranged ? binding.high : undefined),
    now: binding.value,
    at: found.map(({ scenario, binding: { column } }) => ({ scenario, column })),
    // The factor turns the same herd as its heads do, and means the same by it.
    ...(name === 'herdFactor'
      ? {
          note: HERD_NOTES[meaning],
          herds: found.map(({ scenario, binding: { value } }) => ({
            scenario,
            heads: [],
            now: value,
            works: worksOf(setting, scenario, meaning),
          })),
        }
      : { herds: [] }),
  };
}

function herdTurn(setting: Setting, meaning: HerdMeaning): Turn | undefined {
  const herds = setting.bound.flatMap(({ scenario: { farm }, bindings }, scenario): Herd[] => {
    // Read from the bindings, since the slider may have turned them already.
    const heads = farm.herd.map((_, k) => bindings.get(`group${k + 1}HeadCount`)?.value ?? 0);
    const now = heads.reduce((sum, n) => sum + n, 0);
    return now > 0 ? [{ scenario, heads, now, works: worksOf(setting, scenario, meaning) }] : [];
  });
  if (herds.length === 0) return undefined;
  return {
    name: 'headCount',
    label: 'head',
    unit: 'head',
    min: 1,
    max: Math.max(10, herds[0].now * 3),
    now: herds[0].now,
    note: HERD_NOTES[meaning],
    at: [],
    herds,
  };
}

function worksOf({ bound }: Setting, scenario: number, meaning: HerdMeaning): Work[] {
  const { bindings, scenario: written } = bound[scenario];
  if (meaning === 'stays') return slatsThatStay(bindings, written.farm.herd.length);
  const share = (column: string) => bindings.get(column)?.value ?? 0;
  const isHoused = share('bedShare') + share('slatsShare') > 0;
  return WORKS.flatMap(({ column, path, of, housed }) => {
    const now = column === undefined ? of(written) : (bindings.get(column)?.value ?? Number.NaN);
    const to = column === 'waterBowls' ? 1 : 100;
    return now > 0 && (isHoused || !housed) ? [{ column, path, now, to }] : [];
  });
}

/** Slats whose area nobody wrote: as many as the herd needs now. */
function slatsThatStay(bindings: ReadonlyMap<string, Binding>, groups: number): Work[] {
  const at = (column: string) => bindings.get(column)?.value ?? 0;
  if (!(at('slatsShare') > 0) || at('slatsM2') > 0) return [];
  let needed = 0;
  for (let k = 1; k <= groups; k++)
    needed += at(`group${k}HeadCount`) * at('herdFactor') * at(`group${k}SlatsM2`);
  const { column, path } = inputOf('slatsM2');
  return needed > 0 ? [{ column, path, now: Math.round(needed * 100) / 100, to: 100, stays: true }] : [];
}

/** Whole animals by group that sum to `total`, in proportion as near as whole animals allow. */
export function headByGroup(heads: readonly number[], total: number): number[] {
  const now = heads.reduce((sum, n) => sum + n, 0);
  if (!(now > 0)) return [...heads];
  const exact = heads.map((n) => (n * total) / now);
  const out = exact.map(Math.floor);
  const order = exact.map((value, k) => ({ k, rest: value - out[k] })).sort((a, b) => b.rest - a.rest);
  for (const { k } of order.slice(0, Math.round(total - out.reduce((sum, n) => sum + n, 0)))) out[k]++;
  return out;
}

/** The same between two whole herds, where a tie is looked for: so much of the one, so much of the other. */
function headsAt(heads: readonly number[], total: number): number[] {
  const below = headByGroup(heads, Math.floor(total));
  const part = total - Math.floor(total);
  if (part === 0) return below;
  const above = headByGroup(heads, Math.floor(total) + 1);
  return below.map((n, k) => n + part * (above[k] - n));
}

type Columns = Pick<Turn, 'at' | 'herds'>;

export interface TurnedColumn {
  readonly scenario: number;
  readonly column: string;
  readonly value: number;
}

/** What the turn sets at a value, in every scenario that has the input. */
export function columnsAt({ at, herds }: Columns, value: number): TurnedColumn[] {
  return [
    ...at.map((each) => ({ ...each, value })),
    ...herds.flatMap(({ scenario, heads, now, works }) => [
      ...headsAt(heads, value).map((n, k) => ({ scenario, column: `group${k + 1}HeadCount`, value: n })),
      ...works.flatMap((work) =>
        // At the herd as it is, what is worked out from it stays to be worked out.
        work.column === undefined || (work.stays && value === now)
          ? []
          : [{ scenario, column: work.column, value: workAt(work, value / now) }],
      ),
    ]),
  ];
}

/** Left exactly as it stands where the herd is: what was measured finer is not rounded. */
function workAt({ now, to, stays }: Work, ratio: number): number {
  return ratio === 1 || stays ? now : Math.round(now * ratio * to) / to;
}

/** The turn at a value as changes of rows: what a slider that is held does. */
export function changesAt(turn: Turn, value: number, scenarios: number): RowChanges {
  const byColumn = group(columnsAt(turn, value), ({ column }) => column);
  return new Map(
    [...byColumn].flatMap(([column, set]) =>
      set.length === scenarios && set.every((each) => each.value === set[0].value)
        ? [[column, set[0].value] as const]
        : set.map((each) => [ofScenario(column, each.scenario), each.value] as const),
    ),
  );
}

/** Sets the input for one repeat of a block. */
export function setTurn(block: Block, turn: Columns, repeat: number, value: number): void {
  const { columns, scenarios } = block;
  // A column that nothing asked for needs is not there, and turning it changes nothing.
  for (const { scenario, column, value: set } of columnsAt(turn, value))
    if (columns[column]) columns[column][repeat * scenarios + scenario] = set;
}

/** The turn in a setting of only these scenarios, in this order. */
export function turnIn({ at, herds, ...turn }: Turn, scenarios: readonly number[]): Turn {
  const kept = <T extends { readonly scenario: number }>(all: readonly T[]) =>
    scenarios.flatMap((from, scenario) =>
      all.filter((each) => each.scenario === from).map((each) => ({ ...each, scenario })),
    );
  return { ...turn, at: kept(at), herds: kept(herds) };
}

/** A turned number of the notebook: its path and what it becomes. */
export type Written = readonly [path: string, value: number];

/** The works built to match, as the notebook writes them: each a difference that can be read. */
export function worksWritten({ herds }: Turn, value: number): Written[] {
  return herds.flatMap(({ scenario, now, works }) =>
    works.flatMap((work): Written[] => {
      const next = workAt(work, value / now);
      return (work.stays ? value === now : next === work.now)
        ? []
        : [[`scenarios.${scenario}.${work.path}`, next]];
    }),
  );
}

/** Names that `turnOf` knows in this setting. */
export function turnNames({ bound }: Setting): string[] {
  const all = bound.flatMap(({ bindings }) => [...bindings.values()]);
  return [...new Set(['headCount', ...all.filter((b) => Number.isFinite(b.value)).map((b) => b.column)])];
}

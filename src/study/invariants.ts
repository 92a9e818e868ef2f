/**
 * What no evaluation may break, whatever a notebook holds: every figure finite, no share above the whole, nothing
 * below nothing, and what goes in comes out. All of it is looked at in tests and development, in a build that figures are finite.
 */
import { RESULTS } from '../model/dictionary.ts';
import type { Columns } from '../model/engine/columns.ts';
import { CATALOGUE, type ResultName, type Values, WEEKLY } from '../model/quantities.ts';
import { WEEKS } from '../model/series.ts';

/** Results that are not a number where they have no answer: no rate turns the sums to nothing, nothing pays back. */
const WITHOUT_ANSWER: ReadonlySet<string> = new Set<ResultName>([
  'fundingGap',
  'internalRateOfReturn',
  'paybackYears',
  'incomePerYear',
  'debtServiceCover',
  'costPerNitrogenKeptKg',
]);

/** What may fall below zero: money, temperatures, changes of a store. */
const SIGNED: ReadonlySet<string> = new Set<ResultName>([
  'soilWaterChangeMm',
  'conditionKgPerHead',
  'gainKg',
  'nitrogenRetainedKg',
  'phosphorusRetainedKg',
  'potassiumRetainedKg',
  'debtServiceCover',
  'internalRateOfReturn',
]);
const mayFall = (name: string, unit: string) => unit === '°C' || /^money/.test(unit) || SIGNED.has(name);

const SLACK = 1e-6;

interface Row {
  readonly row: number;
  readonly name: string;
  readonly values: Values;
  /** Columns the scenario was given no number for: a price nobody wrote, and all that hangs on it. */
  readonly missing: boolean;
}

/** Thrown where a figure must not be looked at as a right one. */
export class FigureFault extends Error {}

export function stopOn(broken: readonly string[]): void {
  if (broken.length > 0)
    throw new FigureFault(
      `${broken.slice(0, 3).join('; ')}${broken.length > 3 ? ` and ${broken.length - 3} more` : ''}`,
    );
}

/** What is broken in one scenario, in words; empty where nothing is. */
export function brokenIn(made: Columns, at: Row): string[] {
  const { name, values } = at;
  const out = endlessIn(made, at);
  for (const { name: result, unit } of RESULTS) {
    const shown = values[result];
    if (shown === null) continue;
    if (shown < -SLACK * Math.max(1, Math.abs(values.nitrogenInKg ?? 0)) && !mayFall(result, unit))
      out.push(`${name}: ${result} is ${shown} ${unit}`);
    if (unit === 'fraction' && shown > 1 + SLACK && !SIGNED.has(result))
      out.push(`${name}: ${result} is ${shown}, more than the whole`);
  }
  return [...out, ...gaps(name, values)];
}

/** Figures of one scenario that exist and are no number: looked for in a build as well. */
export function endlessIn(made: Columns, { row, name, missing }: Row): string[] {
  const out: string[] = [];
  for (const { name: result, when } of RESULTS) {
    const value = made[result][row];
    if (Number.isFinite(value) || (when !== undefined && !(made[when][row] > 0))) continue;
    if (!((missing || WITHOUT_ANSWER.has(result)) && Number.isNaN(value)))
      out.push(`${name}: ${result} is ${value}`);
  }
  for (const series of WEEKLY) {
    const { when } = CATALOGUE.entries.get(series)?.made ?? {};
    if (when !== undefined && !(made[when][row] > 0)) continue;
    const endless = made[series]
      .subarray(row * WEEKS, (row + 1) * WEEKS)
      .findIndex((v) => Math.abs(v) === Infinity);
    if (endless >= 0) out.push(`${name}: ${series} is endless in week ${endless + 1}`);
  }
  return out;
}

const NITROGEN_OUT: readonly ResultName[] = ['nitrogenLostKg', 'nitrogenKeptKg', 'nitrogenBroughtKg'];
const BALANCES: readonly (readonly [string, readonly ResultName[], readonly ResultName[]])[] = [
  ['nitrogen', ['nitrogenExcretedKg', 'nitrogenBeddingKg', 'heapNitrogenAddedKg'], NITROGEN_OUT],
  [
    'phosphorus',
    ['phosphorusExcretedKg', 'phosphorusBeddingKg', 'heapPhosphorusAddedKg'],
    ['phosphorusLostKg', 'phosphorusKeptKg', 'phosphorusBroughtKg'],
  ],
  [
    'potassium',
    ['potassiumExcretedKg', 'potassiumBeddingKg', 'heapPotassiumAddedKg'],
    ['potassiumLostKg', 'potassiumKeptKg', 'potassiumBroughtKg'],
  ],
];

function gaps(name: string, values: Values): string[] {
  const sum = (names: readonly ResultName[]) => names.reduce((all, each) => all + (values[each] ?? 0), 0);
  return BALANCES.flatMap(([element, into, out]) => {
    const [a, b] = [sum(into), sum(out)];
    return Math.abs(a - b) <= 1e-9 * Math.max(1, a)
      ? []
      : [`${name}: ${a} kg of ${element} go in, ${b} come out`];
  });
}

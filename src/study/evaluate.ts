/** A notebook's scenarios through the pipeline, read back as plain values: what page, command and plots get. */

import { type BoundScenario, bindScenario, type RowChanges, toTable } from '../model/bind.ts';
import type { Check } from '../model/checks/check.ts';
import { checkScenario } from '../model/checks/index.ts';
import { compute } from '../model/compute.ts';
import { RESULTS } from '../model/dictionary.ts';
import type { Columns } from '../model/engine/columns.ts';
import { type FinanceCase, financeCase } from '../model/money/case.ts';
import { ALWAYS, type Bands, type Tracks, type Values, WEEKLY } from '../model/quantities.ts';
import { WEEKS } from '../model/series.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import type { Override, Scenario } from '../notebook/schema.ts';
import type { System } from '../notebook/systems.ts';
import type { Tables } from '../tables/coefficient.ts';
import { baselineRows } from './baselines.ts';
import { brokenIn, endlessIn, stopOn } from './invariants.ts';
import { changesFor, type Setting } from './rows.ts';

export interface ScenarioResult {
  readonly name: string;
  readonly system: System;
  readonly scenario: Scenario;
  /** Every result and the winter's days; null where this scenario has no such quantity. */
  readonly values: Values;
  readonly checks: readonly Check[];
  /** Weekly series, `WEEKS` numbers each. */
  readonly tracks: Tracks;
  readonly finance: FinanceCase;
  readonly bands?: Bands;
}

export interface Evaluation {
  readonly currency: string;
  readonly year: number;
  readonly scenarios: readonly ScenarioResult[];
}

/** An evaluation with all that is needed to explain or repeat it. */
export interface Run extends Evaluation {
  readonly bound: readonly BoundScenario[];
  readonly weather: readonly PreparedWeather[];
  readonly weatherIndex: readonly number[];
  readonly tables: Tables;
  readonly results: readonly ScenarioResult[];
}

export interface Question {
  readonly scenarios: readonly Scenario[];
  readonly overrides: readonly Override[];
  /** The scenario that all are measured against, in place of what each names itself. */
  readonly baseline?: string | undefined;
}

/** Finds the winter a scenario stands in. */
export type WinterOf = (scenario: Scenario) => PreparedWeather;

/**
 * Evaluates the scenarios of a notebook. `changes` turns columns for every scenario without touching the
 * notebook: what a dragged slider does.
 */
export function evaluate(question: Question, tables: Tables, winterOf: WinterOf, changes?: RowChanges): Run {
  const { bound, weather, weatherIndex } = bindAll(question, tables, winterOf);
  return evaluateBound(bound, tables, weather, weatherIndex, changes);
}

export interface ScenarioNumbers {
  readonly name: string;
  readonly system: System;
  readonly values: Values;
}

/** The values alone, without checks, series and money case: for tables of many notebooks. */
export function numbersOf(question: Question, tables: Tables, winterOf: WinterOf): ScenarioNumbers[] {
  const setting = bindAll(question, tables, winterOf);
  const { bound } = setting;
  const { columns, rowValues } = workedOut(setting);
  lookAt(bound, columns, rowValues);
  return bound.map(({ scenario: { name, system } }, row) => ({ name, system, values: rowValues[row] }));
}

/** Every result and series, and the values of each row. */
function workedOut(
  { bound, weather, weatherIndex }: Setting,
  turned: readonly (ReadonlyMap<string, number> | undefined)[] = [],
) {
  const input = toTable(
    bound.map((b, k) => ({ bound: b, weatherIndex: weatherIndex[k], changes: turned[k] })),
  );
  const made = compute(ALWAYS, input, weather, (first) => baselineRows(bound, first.capitalCost));
  const columns = { ...input, ...made };
  return { columns, rowValues: bound.map((_, row) => valuesAt(columns, row)) };
}

/** Stops on what no evaluation may break, or tells who watches. */
function lookAt(bound: readonly BoundScenario[], columns: Columns, rowValues: readonly Values[]): void {
  const look = watch ? brokenIn : endlessIn;
  const broken = bound.flatMap((each, row) => look(columns, { row, values: rowValues[row], ...of(each) }));
  (watch ?? stopOn)(broken);
}

function bindAll(question: Question, tables: Tables, winterOf: WinterOf): Setting {
  const { baseline } = question;
  const scenarios =
    baseline === undefined
      ? question.scenarios
      : question.scenarios.map((s) => ({ ...s, finance: { ...s.finance, baseline } }));
  const bound = scenarios.map((scenario) => bindScenario(scenario, tables, question));
  const weather: PreparedWeather[] = [];
  const weatherIndex = scenarios.map((scenario) => {
    const winter = winterOf(scenario);
    const at = weather.indexOf(winter);
    return at >= 0 ? at : weather.push(winter) - 1;
  });
  return { bound, weather, weatherIndex };
}

/**
 * The same for scenarios already bound, for redrawing while an input is turned. `checked` gives results whose checks
 * stand meanwhile: limits are looked at again when the input is let go.
 */
export function evaluateBound(
  bound: readonly BoundScenario[],
  tables: Tables,
  weather: readonly PreparedWeather[],
  weatherIndex: readonly number[],
  changes?: RowChanges,
  checked?: readonly ScenarioResult[],
): Run {
  const turned = bound.map((_, k) => changes && changesFor(changes, k));
  const { columns, rowValues } = workedOut({ bound, weather, weatherIndex }, turned);
  // While an input is turned in a build, what stands still has been looked at.
  if (watch || !checked) lookAt(bound, columns, rowValues);
  const cases = financeCase(
    bound.map(({ scenario, bindings }, row) => ({
      name: scenario.name,
      values: rowValues[row],
      column: (name) => turned[row]?.get(name) ?? bindings.get(name)?.value,
      ...(scenario.finance.baseline === undefined ? {} : { baseline: scenario.finance.baseline }),
    })),
  );
  const results = bound.map(({ scenario, coefficients }, row): ScenarioResult => {
    const values = rowValues[row];
    const tracks = Object.fromEntries(
      WEEKLY.map((name) => [name, columns[name].subarray(row * WEEKS, (row + 1) * WEEKS)]),
    ) as Tracks;
    const checks = checked?.[row]?.checks ?? checkScenario({ scenario, values, tracks, coefficients });
    return {
      name: scenario.name,
      system: scenario.system,
      scenario,
      values,
      checks,
      tracks,
      finance: cases[row],
    };
  });
  const { currency, year } = bound[0].scenario.farm.money;
  return { currency, year, scenarios: results, results, bound, weather, weatherIndex, tables };
}

/**
 * Results with the spans of their draws; the checks of a rising bed look at its depth in the draws then. `checks: false`
 * leaves them as they are, for redrawing while an input is turned.
 */
export function withBands(
  results: readonly ScenarioResult[],
  bound: readonly BoundScenario[],
  bands: readonly (NonNullable<ScenarioResult['bands']> | undefined)[],
  { checks = true } = {},
): ScenarioResult[] {
  return results.map((result, k) => {
    const own = bands[k];
    if (!own) return result;
    const drawn = { ...result, bands: own };
    return checks
      ? { ...drawn, checks: checkScenario({ ...drawn, coefficients: bound[k].coefficients }) }
      : drawn;
  });
}

/** Called with what is broken in each evaluation, mostly nothing. */
type Watch = (broken: readonly string[]) => void;

/** In tests and development all that is broken stops the work; in a build, what is no number. */
let watch: Watch | undefined = import.meta.env?.DEV ? stopOn : undefined;

/**
 * Looks at every evaluation from now on; gives back what looked before.
 *
 * @internal for the fuzz
 */
export function watchEvaluations(next: Watch | undefined): Watch | undefined {
  const before = watch;
  watch = next;
  return before;
}

const of = ({ scenario, bindings }: BoundScenario) => ({
  name: scenario.name,
  missing: [...bindings.values()].some(({ origin }) => origin === 'missing'),
});

/** The results in one row, null where its scenario has no such quantity or a price was missing. */
export function valuesAt(made: Columns, row: number): Values {
  const out: { -readonly [Name in keyof Values]?: Values[Name] } = { winterDays: made.winterDays[row] };
  for (const { name, when } of RESULTS) {
    const value = made[name][row];
    out[name] = (when !== undefined && !(made[when][row] > 0)) || !Number.isFinite(value) ? null : value;
  }
  return out as Values;
}

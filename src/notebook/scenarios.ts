/** From a scenario as it is written to the strict one: system defaults beneath, the farm under its differences. */
import type { Problem } from '../units/problem.ts';
import { problemsOf, valueAt } from './issues.ts';
import { isPlain, mergeOver } from './merge.ts';
import { type Scenario, scenarioSchema } from './schema.ts';
import { SYSTEMS, type System } from './systems.ts';

export interface CompletedScenario {
  readonly scenario?: Scenario;
  readonly problems: readonly Problem[];
}

export interface ScenarioContext {
  readonly file: string;
  readonly index: number;
  /** The farm as it is written, and whether it is sound by itself. */
  readonly farm: unknown;
  readonly farmIsSound: boolean;
  readonly lineOf: (path: readonly (string | number)[]) => number;
}

/** Completes and checks one scenario. Problems of the farm itself are left to whoever checks the farm. */
export function toScenario(
  written: unknown,
  { file, index, farm, farmIsSound, lineOf }: ScenarioContext,
): CompletedScenario {
  const at = ['scenarios', index];
  if (!isPlain(written))
    return {
      problems: [
        {
          what: 'a scenario is a map of keys',
          file,
          line: lineOf(at),
          key: at.join('.'),
          found: Array.isArray(written) ? 'a list' : String(written),
          allowed: 'name, system, because and what differs from the farm',
        },
      ],
    };
  const known = typeof written.system === 'string' && Object.hasOwn(SYSTEMS, written.system);
  // An unknown system is one problem; any system's defaults keep it from looking like four.
  const { defaults } = SYSTEMS[known ? (written.system as System) : 'outwintered'];
  const whole = { ...(mergeOver(defaults, written) as object), farm: mergeOver(farm, written.farm) };
  const result = scenarioSchema.safeParse(whole);
  if (result.success) return { scenario: result.data, problems: [] };
  const own = result.error.issues.filter(
    ({ path }) =>
      path[0] !== 'farm' || farmIsSound || (path.length > 1 && valueAt(written, path) !== undefined),
  );
  return {
    problems: own.flatMap((issue) =>
      problemsOf(issue, { schema: scenarioSchema, data: whole, file, at, lineOf }),
    ),
  };
}

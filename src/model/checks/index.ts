/** All checks of a scenario: every limit the model knows, with its number, source and a sentence. */
import { AIR_RULES } from './air.ts';
import { BED_RULES } from './bedQuality.ts';
import { CAUTION_RULES } from './caution.ts';
import { type Check, type CheckInput, type CheckRule, MissingRow, type Verdict } from './check.ts';
import { type Context, contextOf } from './context.ts';
import { FEED_RULES } from './feed.ts';
import { FIT_RULES } from './fit.ts';
import { FITTING_RULES } from './fittings.ts';
import { LAND_RULES } from './land.ts';
import { lastingCheck } from './lasting.ts';
import { LOAD_RULES } from './loads.ts';
import { PADDOCK_RULES } from './paddock.ts';
import { ROOM_RULES } from './room.ts';
import { STORE_RULES } from './store.ts';
import { SUN_RULES } from './sunlight.ts';
import { WAY_RULES } from './ways.ts';

export const RULES: readonly CheckRule<Context>[] = [
  ...FIT_RULES,
  ...FITTING_RULES, ...ROOM_RULES,
  ...WAY_RULES, ...AIR_RULES, ...SUN_RULES, ...LOAD_RULES, ...BED_RULES, ...STORE_RULES, ...LAND_RULES, ...PADDOCK_RULES, ...FEED_RULES, ...CAUTION_RULES,
]; // biome-ignore format: the order they are shown in

/**
 * The checks that apply to a scenario, in the order they are shown. A row missing from the tables gives an open
 * check that names it. Never throws on input, and no number in a check is NaN.
 */
export function checkScenario(input: CheckInput): Check[] {
  const context = contextOf(input);
  const checks = RULES.flatMap((rule) => ask(rule, context));
  const lasting = lastingCheck(context, checks);
  return lasting ? [lasting, ...checks] : checks;
}

function ask(rule: CheckRule<Context>, context: Context): Check[] {
  try {
    const verdict = rule.run(context);
    return verdict ? [toCheck(rule, verdict)] : [];
  } catch (error) {
    if (!(error instanceof MissingRow)) throw error;
    const { id, theme } = rule;
    const words = `Not checked: the tables have no row ${error.row}. Put it back.`;
    return [
      {
        id,
        theme,
        status: 'look',
        value: null,
        limit: null,
        unit: '',
        source: 'own',
        basis: 'invented',
        words,
      },
    ];
  }
}

function toCheck({ id, theme }: CheckRule<Context>, { row, ...verdict }: Verdict): Check {
  const number = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null);
  const { week, ...rest } = verdict;
  return {
    id,
    theme,
    ...rest,
    value: number(verdict.value),
    limit: number(verdict.limit),
    source: row.source,
    basis: row.basis,
    ...(week === undefined ? {} : { week }),
  };
}

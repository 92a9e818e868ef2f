/** The one sentence over all weekly checks: how long the shed works before something fails. */
import { sayWeek } from './bedSeries.ts';
import type { Check } from './check.ts';
import type { Context } from './context.ts';
import { titleOf } from './titles.ts';

/** Null where there is no bed whose weeks could be counted. */
export function lastingCheck(c: Context, checks: readonly Check[]): Check | null {
  if (!c.bed) return null;
  const failing = checks
    .filter((check) => check.theme === 'fit' && check.status === 'stop' && check.week !== undefined)
    .sort((a, b) => (a.week ?? 0) - (b.week ?? 0));
  const shared = { id: 'weeksThatFit', theme: 'fit', limit: c.bed.weeks, unit: 'wk' } as const;
  const [first] = failing;
  if (!first?.week)
    return {
      ...shared,
      status: 'pass',
      value: c.bed.weeks,
      source: 'own',
      basis: 'derived',
      words: `Everything still fits in ${sayWeek(c.scenario, c.bed.weeks)}, the last week of the winter.`,
    };
  const good = first.week - 1;
  const also = failing.filter((check) => check.week === first.week).map((check) => titleOf(check.id));
  return {
    ...shared,
    status: 'stop',
    value: good,
    week: first.week,
    source: first.source,
    basis: first.basis,
    words:
      good === 0
        ? `The shed does not fit from the first week: ${also.join(', ')}.`
        : `The latest week before something fails is ${sayWeek(c.scenario, good)}; then: ${also.join(', ')}.`,
  };
}

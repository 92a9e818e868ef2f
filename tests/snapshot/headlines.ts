/** The figures of the shipped notebooks that people know: which of them moved, as the changelog has to say it. */
import { describe as descriptionOf } from '../../src/model/dictionary.ts';
import { COMPARISONS } from '../../src/model/measures.ts';
import { formatNumber } from '../../src/units/format.ts';
import type { Figures } from './figures.ts';

/** What scenarios are compared on, and how high the bed stands. */
export const HEADLINES: readonly string[] = [...COMPARISONS.map(({ name }) => name), 'packDepthM'];

/** From this share on a keeper who comes back sees another figure, and is told why. */
const MOVED_SHARE = 0.005;
/** One figure more than the page shows, or half a per cent would not be seen. */
const DIGITS = 4;

export interface Moved {
  readonly notebook: string;
  readonly scenario: string;
  readonly headline: string;
  readonly before: string;
  readonly after: string;
  /** Of the figure before; absent where one of the two is not there or is 0. */
  readonly percent?: number;
}

const below = (figures: Figures | undefined, ...path: readonly string[]): Figures | undefined =>
  path.reduce<Figures | undefined>(
    (at, name) => (typeof at === 'object' && at !== null ? at[name] : undefined),
    figures,
  );
const names = (figures: Figures | undefined): string[] =>
  typeof figures === 'object' && figures !== null ? Object.keys(figures) : [];

/** Headlines of the shipped notebooks that differ by half a per cent or more, or are there on one side alone. */
export function headlinesMoved(held: Figures, fresh: Figures): Moved[] {
  return names(below(held, 'notebooks')).flatMap((notebook) =>
    names(below(held, 'notebooks', notebook, 'scenarios')).flatMap((scenario) =>
      HEADLINES.flatMap((name): Moved[] => {
        const path = ['notebooks', notebook, 'scenarios', scenario, 'values', name];
        const [before, after] = [below(held, ...path) ?? null, below(fresh, ...path) ?? null];
        if (before === after) return [];
        const both = typeof before === 'number' && typeof after === 'number';
        const share = both && before !== 0 ? (after - before) / Math.abs(before) : undefined;
        if (share !== undefined && Math.abs(share) < MOVED_SHARE) return [];
        if (both && before === 0 && Math.abs(after) < SMALLEST) return [];
        const { label, unit } = descriptionOf(name) ?? { label: name, unit: '' };
        return [
          {
            notebook,
            scenario,
            headline: unit === 'money' ? label : `${label}, ${unit}`,
            before: shown(before, unit),
            after: shown(after, unit),
            ...(share === undefined ? {} : { percent: 100 * share }),
          },
        ];
      }),
    ),
  );
}

/** Beside 0 no share says how much; what is shown as 0 has not moved. */
const SMALLEST = 0.005;

const shown = (value: Figures, unit: string) =>
  typeof value === 'number' ? formatNumber(value, unit, { digits: DIGITS, plain: true }) : '–';

const change = ({ before, after }: Moved) => `${before} → ${after}`;

/** A line for the reader of a failed test. */
export const inWords = (moved: Moved): string =>
  `${moved.notebook}, ${moved.scenario}: ${moved.headline} ${change(moved)}${moved.percent === undefined ? '' : ` (${moved.percent > 0 ? '+' : '−'}${Math.abs(moved.percent).toFixed(1)} %)`}`;

/** A row for the changelog, to be pasted. */
export const changelogRow = (moved: Moved): string =>
  `| ${moved.notebook}, ${moved.scenario} | ${moved.headline} | ${change(moved)} |`;

/** Rows that "Unreleased" does not hold yet. */
export function unsaid(moved: readonly Moved[], changelog: string): string[] {
  const [, unreleased = ''] = /^## Unreleased\n([\s\S]*?)(?=^## |$(?![\s\S]))/m.exec(changelog) ?? [];
  return moved.map(changelogRow).filter((row) => !unreleased.includes(row));
}

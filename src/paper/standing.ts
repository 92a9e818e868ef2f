/** What the farm has already, how old it is, in what state, and when it is bought again: words for whoever lends. */
import { HADS } from '../model/money/owned.ts';
import { optionWords } from '../notebook/inputWords.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { sum } from './amounts.ts';
import type { Report } from './report.ts';

const years = (n: number) => `${n} ${n === 1 ? 'year' : 'years'}`;
/** Sums of cents that differ by less are the same. */
const NO_MONEY = 0.005;

export function standingWords({ values, scenario }: ScenarioResult, reading: Report['reading']): string {
  const have = scenario.finance.alreadyHave;
  const lines = (have?.lines ?? []).flatMap(({ what, share, ageYears, leftYears, condition }, k) => {
    const worth = values[`${HADS[k]}Capital`] ?? 0;
    if (worth === 0) return [];
    const part = share < 1 ? `${Math.round(share * 100)} % of ` : '';
    const left = leftYears === undefined ? '' : `, ${years(leftYears)} left`;
    return [
      {
        worth,
        words: `${part}${optionWords(what)} (${sum(worth, reading)} as new, ${years(ageYears)} old${left}${condition === undefined ? '' : `, “${condition}”`})`,
      },
    ];
  });
  const rest = (values.capitalOwned ?? 0) - lines.reduce((all, { worth }) => all + worth, 0);
  const said = [
    ...lines.map(({ words }) => words),
    ...(rest > NO_MONEY
      ? [
          `${lines.length === 0 ? 'works' : 'of the rest works'} of ${sum(rest, reading)} as new, ${years(have?.ageYears ?? 0)} old`,
        ]
      : []),
  ];
  return `What stands already and is not bought: ${said.join('; ')}. Each is bought again when its life is over.`;
}

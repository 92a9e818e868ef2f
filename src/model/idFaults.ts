/** Ids in a notebook that must be rows of the tables: own coefficients, own prices, quoted bill lines. */

import { nearest } from '../notebook/nearest.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Tables } from '../tables/coefficient.ts';
import type { Problem } from '../units/problem.ts';
import { quoteFaults } from './bill.ts';
import { RESULTS } from './dictionary.ts';

/** Every id that names nothing, with its line and the ids most like it; and weights of unknown results. */
export function unknownIds(notebook: Notebook, tables: Tables): Problem[] {
  const { file, lineOf } = notebook;
  const out: Problem[] = [];
  const check = (id: string, known: readonly string[], key: string, what: string) => {
    if (!known.includes(id))
      out.push({
        what,
        file,
        line: lineOf(key),
        key,
        found: id,
        allowed: `ids like ${nearest(id, known).join(', ')}`,
      });
  };
  const currencies = [...tables.prices.keys()];
  const noPrices = new Set<string>();
  const farms = [
    { farm: notebook.farm, at: 'farm' },
    ...notebook.scenarios.map(({ farm }, k) => ({ farm, at: `scenarios.${k}.farm` })),
  ];
  for (const { farm, at } of farms) {
    const { currency } = farm.money;
    if (currencies.includes(currency) || noPrices.has(currency)) continue;
    noPrices.add(currency);
    const key = `${at}.money.currency`;
    out.push({
      what: 'there is no table of prices in this currency',
      file,
      line: lineOf(key),
      key,
      found: currency,
      allowed: currencies.join(', '),
      todo: 'use one of these and put own prices in place, with a reason',
    });
  }
  const priceIds = [...new Set([...tables.prices.values()].flatMap((table) => [...table.keys()]))];
  const rowIds = [...tables.coefficients.keys(), ...priceIds];
  notebook.overrides.forEach(({ id }, k) =>
    check(id, rowIds, `coefficients.${k}.id`, 'no coefficient or price has this id'),
  );
  for (const id of Object.keys(notebook.farm.money.prices))
    check(id, priceIds, `farm.money.prices.${id}`, 'no price has this id');
  notebook.scenarios.forEach((scenario, k) => {
    for (const { at, words } of quoteFaults(scenario))
      out.push({ what: words, file, line: lineOf(`scenarios.${k}.${at}`), key: `scenarios.${k}.${at}` });
  });
  const results = RESULTS.map((r) => r.name);
  for (const name of Object.keys(notebook.decide.weights))
    check(name, results, `decide.weights.${name}`, 'no result has this name');
  return out;
}

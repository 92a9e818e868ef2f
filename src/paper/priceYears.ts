/** Of which year and market the prices of a case are, said once for all of them. */

import type { BillRow } from '../study/billRow.ts';
import type { Run } from '../study/evaluate.ts';
import type { Coefficient } from '../tables/coefficient.ts';

const indexNote = 'an index of all consumer prices, from which timber, fodder and wages may have gone apart';

/** How the prices of the bill that are of another year were brought to that of the notebook. */
export function indexWords({ year }: Pick<Run, 'year'>, bill: readonly BillRow[]): string {
  const by = bill.find(({ indexed }) => indexed)?.indexed?.by;
  const still = bill.filter(({ indexed }) => indexed === null).length;
  const moved =
    by === undefined ? '' : `Prices of other years were brought to ${year} by the ${by}, ${indexNote}.`;
  const kept =
    still === 0
      ? ''
      : `${still} ${still === 1 ? 'price is' : 'prices are'} not brought to ${year}: no index in the tables holds both years.`;
  return [moved, kept].filter((part) => part !== '').join(' ');
}

/** All prices of a scenario: own, of the country, of the currency, indexed or not, and how they hold the tax. */
export function priceWords(run: Run, index: number): string {
  const bindings = [...run.bound[index].bindings.values()];
  const rows = bindings.flatMap(({ origin, coefficient }): Coefficient[] =>
    origin === 'price' && coefficient ? [coefficient] : [],
  );
  const count = (holds: (row: Coefficient) => boolean) => rows.filter(holds).length;
  const country = rows.find((row) => row.country)?.country;
  const by = rows.find(({ indexed }) => indexed)?.indexed?.by;
  const ofCountry =
    country === undefined ? '' : `, ${count((row) => row.country !== undefined)} of them of ${country}`;
  const moved =
    by === undefined
      ? ''
      : ` ${count(({ indexed }) => indexed != null)} are of other years and brought to ${run.year} by the ${by}.`;
  const still = count(({ indexed }) => indexed === null);
  const kept =
    still === 0
      ? ''
      : ` ${still} are of other years and not brought to ${run.year}, since no index in the tables holds both years.`;
  return `${rows.length} from the tables in ${run.currency}${ofCountry}.${moved}${kept} ${count(({ vat }) => vat === 'without')} are without value added tax; the others do not say and are taken so. Prices of one market (works, forage, straw, fertiliser, machines) are drawn largely together.`;
}

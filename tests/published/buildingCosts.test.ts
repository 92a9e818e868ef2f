/**
 * The bill of each shipped shed beside published costs of its kind, by square metre and by head. The list is of Ireland,
 * without value added tax; true costs are said to be up to a fifth above it. The sheds stand elsewhere, so a gap is told,
 * not tuned away. What a listed house holds is our own reading (SCOPE); timber of coast bed and hill is from own wood.
 */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openNotebook, shippedTables } from '../../src/cli/open.ts';
import { billRows } from '../../src/study/moneyCase.ts';
import { EUR_PER, SCOPE } from '../reference/buildingCosts.ts';
import { figure, sum, tableRow } from './labels.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

interface Shed {
  readonly name: string;
  readonly bedded: boolean;
  readonly planM2: number;
  readonly head: number;
  /** EUR: the whole bill, and what a listed house holds of it. */
  readonly bill: number;
  readonly house: number;
}

const sheds: Shed[] = [];
for (const notebook of ['coast-lender-case', 'hill-farm-choice', 'atlantic-rain-and-herd']) {
  const { run } = await openNotebook(`${ROOT}/notebooks/${notebook}.md`);
  run.bound.forEach(({ scenario }, k) => {
    const rows = billRows(run, k);
    const planM2 = run.results[k].values.shedPlanM2 ?? 0;
    if (planM2 === 0 || scenario.name.includes('no grant')) return;
    const rate = EUR_PER[scenario.farm.money.currency];
    const cost = (of: typeof rows) => of.reduce((total, row) => total + row.amount!, 0) * rate;
    sheds.push({
      name: `${notebook}: ${scenario.name}`,
      bedded: scenario.placement.bedShare > 0,
      planM2,
      head: scenario.farm.herd.reduce((total, { head }) => total + head, 0),
      bill: cost(rows),
      house: cost(rows.filter(({ id }) => !SCOPE.some((left) => left === id))),
    });
  });
}
const { coefficients } = shippedTables();
const published = (id: string) => coefficients.get(id)?.central;

const rounded = (of: readonly Shed[]) =>
  of.map(({ name, planM2, head, bill, house }) => [
    name,
    Math.round(bill / planM2),
    Math.round(house / planM2),
    Math.round(bill / head),
    Math.round((planM2 / head) * 10) / 10,
  ]);

describe('bedded sheds beside the Irish list of 2025, 200.57 EUR a square metre of loose house (published)', () => {
  const bedded = sheds.filter((shed) => shed.bedded);
  // Shed; EUR a m²: the whole bill, and the house alone; EUR a head; m² a head.
  it(sum('print as'), () =>
    expect(rounded(bedded)).toEqual([
      ['coast-lender-case: Deep bed', 281, 224, 2745, 9.8],
      ['hill-farm-choice: Straw bed', 301, 251, 4455, 14.8],
      ['atlantic-rain-and-herd: Deep bed', 298, 242, 3152, 10.6],
    ]),
  );
  it(tableRow('is the list the paper sets beside a bill'), () => {
    expect(published('referenceLooseHousePricePerM2')).toBe(200.57);
    expect(published('referenceSlattedAreaPricePerM2')).toBe(277.72);
  });
  // From a fifth below the list to a fifth above what is said to be paid: the band of the case in data/cases.
  it.each(bedded)(figure('$name: the house alone is in the band of the list'), ({ house, planM2 }) => {
    expect(house / planM2).toBeGreaterThan(200.57 * 0.8);
    expect(house / planM2).toBeLessThan(200.57 * 1.2 * 1.2);
  });
});

describe(sum('slatted sheds beside a three-bay shed of 35,400 EUR for 24 to 27 cows (2023)'), () => {
  // Its plan is derived: three bays of 4.8 m, pens of 4.2 m and a passage of 4.4 m, so 124 m², 285 EUR a square metre.
  const THEIRS = 35_400 / (14.4 * 8.6);
  const slatted = sheds.filter((shed) => !shed.bedded);
  it('print as', () =>
    expect(rounded(slatted)).toEqual([
      ['coast-lender-case: Slats', 414, 385, 2564, 6.2],
      ['hill-farm-choice: Slats', 364, 339, 3695, 10.2],
      ['atlantic-rain-and-herd: Slats', 379, 352, 2481, 6.5],
    ]));
  it('is the shed the paper sets beside a bill, by the head of 27 to 24 cows', () => {
    const row = coefficients.get('referenceSlattedShedPricePerHead');
    expect(row?.low).toBeCloseTo(35_400 / 27, 0);
    expect(row?.high).toBeCloseTo(35_400 / 24, 0);
    expect(row?.central).toBeCloseTo((35_400 / 27 + 35_400 / 24) / 2, -1);
  });
  /*
   * The ground under the slats is dug with the tank and no longer levelled and filled as well: 5 to 8 EUR a square metre less.
   * Dearer than theirs, and said so: tanks of 2.7 and 3 m against 2.4, solid floor and calving pens beside the slats,
   * builder's hours without own labour, prices of 2024 against 2023. By the head it is dearer again since these herds
   * have 6 to 10 m² each, theirs 5: the gap by head is the gap by square metre times that of room.
   */
  it.each(slatted)('$name: dearer by the square metre, by less than a half', ({ house, planM2 }) => {
    expect(house / planM2 / THEIRS).toBeGreaterThan(1);
    expect(house / planM2 / THEIRS).toBeLessThan(1.5);
  });
});

/** What stands already, by line of the bill: against accounts kept in tests/reference/standing.ts. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openNotebook } from '../../src/cli/open.ts';
import { flowsAgainst, worthAgainst } from '../../src/model/money/cashTerms.ts';
import { moneyFaults } from '../../src/model/money/moneyFaults.ts';
import { HADS } from '../../src/model/money/owned.ts';
import { BILL_LINES } from '../../src/model/works/bill.ts';
import { BILL_GROUPS, BILL_IDS, HAD_NAMES, MOST_HAD } from '../../src/notebook/billIds.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import type { Scenario } from '../../src/notebook/schema.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { presentValue } from '../reference/finance.ts';
import { bookStanding } from '../reference/standing.ts';

let coast: Opened;
beforeAll(async () => {
  coast = await openNotebook('notebooks/coast-lender-case.md');
});

type Have = NonNullable<Scenario['finance']['alreadyHave']>;
type Line = Have['lines'][number];
const line = (what: Line['what'], ageYears: number, rest: Partial<Line> = {}): Line => ({
  what,
  ageYears,
  share: 1,
  ...rest,
});
/** The deep bed of the coast with this of its works standing already. */
function deepBed(have?: Partial<Have>, finance: Partial<Scenario['finance']> = {}) {
  const { notebook, tables, winters } = coast;
  const scenarios = notebook.scenarios.map((scenario) => ({
    ...scenario,
    finance: {
      ...scenario.finance,
      ...finance,
      ...(have && { alreadyHave: { share: 0, ageYears: 0, lines: [], ...have } }),
    },
  }));
  const run = evaluate({ scenarios, overrides: notebook.overrides }, tables, winters.winterOf);
  return { ...run.results[1], bound: run.bound[1] };
}
const GROUPS = Object.keys(BILL_GROUPS) as (keyof typeof BILL_GROUPS)[];

describe('names', () => {
  it('are those of the bill, and every line is in one group', () => {
    expect([...BILL_IDS]).toEqual(BILL_LINES.filter(({ onTop }) => !onTop).map(({ id }) => id));
    expect(Object.values(BILL_GROUPS).flat().sort()).toEqual([...BILL_IDS].sort());
    expect(HAD_NAMES.slice(0, GROUPS.length)).toEqual(GROUPS);
    expect(HADS).toHaveLength(MOST_HAD);
  });
});

describe('every group marked alike', () => {
  it.each([
    [0.5, 6],
    [1, 13],
    [0.25, 1],
  ])('is the short form to the cent: %f of it, %i years old', (share, ageYears) => {
    const short = deepBed({ share, ageYears });
    const marked = deepBed({ lines: GROUPS.map((what) => line(what, ageYears, { share })) });
    for (const name of ['capitalCost', 'capitalNonCash', 'capitalShortLived', 'capitalOwned', 'capitalCharge',
      'repairsCost', 'insuranceCost', 'netCost', 'netPresentValue'] as const) // biome-ignore format: one list
      expect(Math.abs((short.values[name] as number) - (marked.values[name] as number)), name).toBeLessThan(
        0.02,
      );
    short.finance.years.forEach(({ net }, year) => {
      expect(Math.abs(net - marked.finance.years[year].net)).toBeLessThan(0.02);
    });
  });
});

describe('lines and groups of their own age', () => {
  const LINES: readonly Line[] = [
    line('allShed', 12),
    line('roof', 2, { share: 0.5 }),
    line('feeders', 3, { leftYears: 1, condition: 'bent, but they hold hay' }),
    line('allWater', 30),
  ];

  it('are not bought, and each is bought again when it is worn out, as the account says', () => {
    const plain = deepBed();
    const marked = deepBed({ share: 0.1, ageYears: 4, lines: [...LINES] });
    const { engineerFraction, shortLifeYears } = Object.fromEntries(
      ['engineerFraction', 'shortLifeYears'].map((name) => [name, marked.bound.bindings.get(name)?.value]),
    ) as Record<string, number>;
    const years = marked.scenario.farm.money.horizonYears;
    const { inflation } = marked.scenario.farm.money;
    const things = BILL_LINES.filter(({ onTop }) => !onTop).map((spec) => {
      const price = plain.values[spec.cost] ?? 0;
      const full =
        spec.own || spec.works === 'outdoors' || spec.works === 'all'
          ? price
          : price * (1 + engineerFraction);
      const named = LINES.find(({ what }) => what === spec.id);
      const grouped = LINES.find(({ what }) =>
        (BILL_GROUPS as Record<string, readonly string[]>)[what]?.includes(spec.id),
      );
      const found = named ?? grouped ?? { share: 0.1, ageYears: 4, leftYears: undefined };
      return { spec, price, full, ...found };
    });
    // The engineer is not short-lived, though feeders are.
    const account = bookStanding(
      things.flatMap(({ spec, price, full, share, ageYears: age, leftYears: left }) => {
        const short = spec.shortLived ? price : 0;
        return [
          { price: short * share, lasts: Math.round(shortLifeYears), age, left },
          { price: (full - short) * share, lasts: years, age, left },
        ];
      }),
      years,
    );
    const owned = things.reduce((sum, { full, share }) => sum + full * share, 0);
    expect(Math.abs((marked.values.capitalOwned as number) - owned)).toBeLessThan(0.02);
    expect(
      Math.abs((plain.values.capitalCost as number) - owned - (marked.values.capitalCost as number)),
    ).toBeLessThan(0.03);
    // What is bought new flows as without the rest: that part comes from the account of new things.
    const fresh = bookStanding(
      things.map(({ spec, price, share }) => ({
        price: (spec.shortLived ? price : 0) * (1 - share), lasts: Math.round(shortLifeYears), age: 0,
      })),
      years,
    ); // biome-ignore format: one thing a line
    marked.finance.years.forEach(({ year, works }) => {
      const real = account[year] + fresh[year] - (year === 0 ? (marked.values.capitalCost as number) : 0);
      if (year < years) expect(Math.abs(works - real * (1 + inflation) ** year)).toBeLessThan(0.05);
    });
    const { repairsCost, insuranceCost } = plain.values;
    expect(marked.values.repairsCost).toBeCloseTo(repairsCost as number, 1);
    expect(marked.values.insuranceCost).toBeCloseTo(insuranceCost as number, 1);
    const bill = marked.values.costAlreadyHave as number;
    expect(Math.abs(bill + owned)).toBeLessThan(0.02);
  });

  it('in any mix, to a hundred-millionth of what is at stake', () => {
    const entry = fc.record({
      lasting: fc.double({ min: 0, max: 1e5, noNaN: true }),
      short: fc.double({ min: 1, max: 3e4, noNaN: true }),
      age: fc.integer({ min: 0, max: 45 }),
      left: fc.option(fc.integer({ min: 0, max: 45 }), { nil: undefined }),
    });
    const random = fc.tuple(
      fc.array(entry, { minLength: 1, maxLength: MOST_HAD }),
      entry,
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 1, max: 25 }),
      fc.constantFrom(0, 0.02, 0.06),
    );
    fc.assert(
      fc.property(random, ([entries, rest, years, every, inflation]) => {
        const all = [...entries, { ...rest, left: undefined }];
        const terms = {
          capitalCost: 0, capitalShortLived: 0, grantUsed: 0, operatingCost: 0, nutrientValue: 0, gainsPerYear: 0,
          grantYears: 0, lifeYears: years, shortLifeYears: every, inflation, interestRate: 0.05,
          capitalOwned: all.reduce((sum, { lasting, short }) => sum + lasting + short, 0),
          capitalOwnedShortLived: all.reduce((sum, { short }) => sum + short, 0),
          alreadyHaveYears: rest.age,
          ...Object.fromEntries(
            entries.flatMap(({ lasting, short, age, left }, k) => [
              [`${HADS[k]}Capital`, lasting + short],
              [`${HADS[k]}ShortLived`, short],
              [`${HADS[k]}AgeYears`, age],
              [`${HADS[k]}LeftYears`, left ?? Number.NaN],
            ]),
          ),
        }; // biome-ignore format: one list of terms
        const account = bookStanding(
          all.flatMap(({ lasting, short, age, left }) => [
            { price: lasting, lasts: years, age, left },
            { price: short, lasts: every, age, left },
          ]),
          years,
        ).map((flow, year) => flow * (1 + inflation) ** year);
        const scale = terms.capitalOwned * (1 + inflation) ** years * 10;
        flowsAgainst(terms).forEach((flow, year) => {
          expect(Math.abs(flow - account[year]) / scale).toBeLessThan(1e-8);
        });
        expect(Math.abs(worthAgainst(terms) - presentValue(0.05, account)) / scale).toBeLessThan(1e-8);
        // Against itself nothing is left of it.
        expect(Math.abs(worthAgainst(terms, terms)) / scale).toBeLessThan(1e-8);
      }),
    );
  });

  it('takes its part of a capital that is given', () => {
    const plain = deepBed();
    const lines = [line('allShed', 12)];
    const marked = deepBed({ lines });
    const given = deepBed({ lines }, { capital: 2 * (plain.values.capitalCost as number) });
    expect(given.values.capitalOwned).toBeCloseTo(2 * (marked.values.capitalOwned as number), 2);
    expect(given.values.had1Capital).toBeCloseTo(2 * (marked.values.had1Capital as number), 2);
  });

  it('says what is not among the works', () => {
    const { scenario, values, bound } = deepBed({ lines: [line('slats', 5), line('allShed', 5)] });
    const faults = moneyFaults(scenario, values, bound.bindings, []).filter(({ id }) => id === 'had');
    expect(faults.map(({ at }) => at)).toEqual(['finance.alreadyHave.lines.0']);
    expect(faults[0].words).toContain('nothing of the works is "slats"');
  });
});

describe('in a notebook', () => {
  const text = (have: string) =>
    coast.notebook.text.replace(/^( +)- name: As it is\n/m, `$&$1  finance: { alreadyHave: ${have} }\n`);
  it('is refused where it stands twice, or is no line', () => {
    const twice = readNotebook(
      text('{ lines: [{ what: roof, ageYears: 3 }, { what: roof, ageYears: 4 }] }'),
      'n.md',
    );
    expect(twice.problems.map(({ what, key }) => [what, key])).toEqual([
      ['this stands already twice', 'scenarios.0.finance.alreadyHave.lines.1.what'],
    ]);
    const unknown = readNotebook(text('{ lines: [{ what: rof, ageYears: 3 }] }'), 'n.md');
    expect(unknown.ok).toBe(false);
    expect(JSON.stringify(unknown.problems)).toContain('roof');
    expect(readNotebook(text('{ share: 0.5, ageYears: 6 }'), 'n.md').ok).toBe(true);
  });
});

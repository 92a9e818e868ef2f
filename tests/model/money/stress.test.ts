/** Stresses on invented scenarios through costs and finance. Own arithmetic, so regression checks. */
import { describe, expect, it } from 'vitest';
import type { CaseInput } from '../../../src/model/money/case.ts';
import { STRESSES, type StressRun, stressTable } from '../../../src/model/money/stress.ts';
import { type Row, runMoney, TABLES } from '../moneyRig.ts';

const COMMON: Row = { headCount: 20, winterDays: 180, lifeYears: 20, interestRate: 0.05, rainFactor: 1, herdFactor: 1, material1Share: 1, material1PricePerTonne: 100, loan1Amount: 0, loan1Rate: 0.05, loan1Years: 10, loan1GraceYears: 0, loan1Straight: 0 }; // biome-ignore format: one short list
const ROWS: readonly Row[] = [
  { ...COMMON, capitalCost: 4000, capitalCash: 4000, labourHours: 400, labourPricePerHour: 15, nutrientValue: 300 },
  { ...COMMON, capitalCost: 40_000, capitalCash: 40_000, labourHours: 200, labourPricePerHour: 15, beddingTonnes: 20, nutrientValue: 4500, loan1Amount: 20_000 },
]; // biome-ignore format: a row a line
const NAMES = ['outside', 'bed'];

const run: StressRun = (changes) =>
  runMoney(
    ['costs', 'finance', 'against'],
    ROWS.map((row, k) => ({ ...row, ...Object.fromEntries(changes[k]) })),
  ).map(
    ({ values }, k): CaseInput => ({
      name: NAMES[k],
      values: Object.fromEntries(
        Object.entries(values).map(([key, value]) => [key, Number.isFinite(value) ? value : null]),
      ),
      column: (column) => values[column],
    }),
  );
const usual = run([new Map(), new Map()]);
const rows = stressTable(usual, run, TABLES.coefficients, 'outside');
const of = (id: string) => rows.find((row) => row.id === id)!.outcomes;

describe('stress table', () => {
  it('has a row for each stress of the tables, and an outcome for each scenario', () => {
    expect(rows.map((row) => row.id)).toEqual(STRESSES.map((spec) => spec.id));
    expect(rows.map((row) => row.level)).toEqual([0.1, 0.2, 0.25, 0.5, 0.4, 0.03, 1, 0.2, 0.2, 1, 1]);
    for (const row of rows) expect(row.outcomes.map((o) => o.name)).toEqual(NAMES);
  });
  it('bedding half dearer costs 20 t × 50 more, only where there is bedding', () => {
    expect(of('bedding')[1].netCostChange).toBeCloseTo(1000, 9);
    expect(of('bedding')[0].netCostChange).toBeCloseTo(0, 9);
  });
  it('dearer loans move the cover and leave the hurdle where it is', () => {
    expect(of('rate').map((o) => o.netCostChange)).toEqual([0, 0]);
    expect(of('rate')[1].gain).toBeCloseTo(of('income')[1].gain!, 9);
    const cover = (id: string) => of(id)[1].debtServiceCover!;
    // Cash saved against the baseline is the same; the annuity of 20,000 over 10 years is 2,590.09 at 5 and 2,980.59 at 8 %.
    const saved = usual[0].values.operatingCashCost! - usual[1].values.operatingCashCost!;
    expect(cover('rate') / (saved / 2980.59)).toBeCloseTo(1, 5);
  });
  it('works a fifth dearer are given to the bill, and a refused grant is no grant', () => {
    const changes = (id: string, level: number) => [
      ...STRESSES.find((spec) => spec.id === id)!.changes(level, usual[1]),
    ];
    expect(changes('works', 0.2)).toEqual([['capitalGiven', 48_000]]);
    expect(changes('grant', 1)).toEqual([['grantAmount', 0]]);
  });
  it('says at which bedding price the choice flips, and the gain there is nothing', () => {
    const level = of('bedding')[1].breakEven!;
    expect(level).toBeGreaterThan(0);
    const there = run([new Map(), new Map([['material1PricePerTonne', 100 * (1 + level)]])]);
    expect(there[1].values.netPresentValue! - there[0].values.netPresentValue!).toBeCloseTo(0, 0);
    expect(of('bedding')[1].words).toContain('even with “outside”');
  });
  it('says what is not there instead of a change of nothing', () => {
    // Neither has income, loan or grant that could go wrong for the first; the second has a loan.
    const [outside, bed] = [0, 1].map((k) => (id: string) => of(id)[k].lacks);
    expect(bed('bedding')).toBeNull();
    expect(outside('bedding')).toBe('no bedding is strewn');
    expect(bed('rate')).toBeNull();
    expect(outside('rate')).toBe('nothing is borrowed');
    expect(bed('grant')).toBe('there is no grant');
    expect(of('grant')[1].words).toBe('there is no grant');
    expect(of('grantLate')[1].words).toBe('there is no grant');
    expect(of('income')[1].words).toBe('no income is named');
    // Where the baseline has what the scenario has not, the two are moved against each other, and that is said.
    const swapped = stressTable(usual, run, TABLES.coefficients, 'bed').find(({ id }) => id === 'bedding');
    expect(swapped?.outcomes[0].lacks).toBe('no bedding is strewn');
    expect(swapped?.outcomes[0].words).toContain('“bed”');
  });
  it('says when it does not flip, and which way it goes', () => {
    expect(of('rain')[1].breakEven).toBeNull();
    expect(of('rain')[1].words).toBe('does not hang on it');
    const words = (own: readonly (readonly [string, number])[], id: string) => {
      const other: StressRun = (changes) => {
        return run([changes[0], new Map([...own, ...changes[1]])]);
      };
      const table = stressTable(other([new Map(), new Map()]), other, TABLES.coefficients, 'outside');
      return table.find((row) => row.id === id)?.outcomes[1];
    };
    // A little bedding and no hours: ahead of the baseline whatever bedding costs.
    expect(
      words(
        [
          ['labourHours', 0],
          ['beddingTonnes', 1],
        ],
        'bedding',
      )?.words,
    ).toBe('stays ahead of “outside” up to 300 %');
    // Three times the hours: behind, and dearer bedding cannot mend that.
    expect(words([['labourHours', 600]], 'bedding')?.words).toBe(
      'is behind “outside” as it stands, and further with this',
    );
    expect(words([['labourHours', 600]], 'bedding')?.gain).toBeLessThan(0);
  });
  it('the baseline has no break-even and says why', () => expect(of('rate')[0].words).toContain('baseline'));
  it('a stress whose row is missing is left out', () =>
    expect(stressTable(usual, run, new Map(), 'outside')).toEqual([]));
  it('fewer cattle leave what is built as it was built', () => {
    const herd = STRESSES.find((spec) => spec.id === 'herd')!;
    expect([...herd.changes(0.2, usual[1])]).toEqual([
      ['herdFactor', 0.8],
      ['capitalGiven', 40_000],
    ]);
  });
  it('a year of delay takes the year’s gain away and leaves the loan to be paid', () => {
    const usualGain = of('income')[1].gain!;
    const saved = usual[0].values.netCost! - usual[1].values.netCost!;
    const charge = usual[0].values.capitalCharge! - usual[1].values.capitalCharge!;
    // What is saved a year without the capital charge, in the first year only.
    expect(of('delay')[1].gain!).toBeCloseTo(usualGain - (saved - charge) / 1.05, 6);
    expect(of('delay')[1].debtServiceCover).toBeCloseTo(0, 9);
    expect(of('delay')[0].netPresentValue).toBeCloseTo(of('income')[0].netPresentValue!, 9);
  });
  it('a grant a year late loses a year’s interest of it', () => {
    const withGrant: StressRun = (changes) =>
      run(changes).map((one, k) => ({ ...one, values: { ...one.values, grantUsed: k === 1 ? 5000 : 0 } }));
    const table = stressTable(withGrant([new Map(), new Map()]), withGrant, TABLES.coefficients, 'outside');
    const gain = (id: string) => table.find((row) => row.id === id)!.outcomes[1].gain!;
    expect(gain('income') - gain('grantLate')).toBeCloseTo(5000 - 5000 / 1.05, 6);
  });
});

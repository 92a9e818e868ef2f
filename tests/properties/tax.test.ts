/** Value added tax by kind of purchase: against sums over lists of purchases in tests/reference/tax.ts. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openNotebook } from '../../src/cli/open.ts';
import { purchaseOf } from '../../src/model/money/ownPrices.ts';
import { BILL_LINES } from '../../src/model/works/bill.ts';
import type { Scenario } from '../../src/notebook/schema.ts';
import { vatWords } from '../../src/paper/yearTables.ts';
import { evaluate, type ScenarioResult } from '../../src/study/evaluate.ts';
import { moneyBook } from '../../src/study/moneyBook.ts';
import { type Purchase, type Rates, taxOn, withoutTax } from '../reference/tax.ts';

type Vat = NonNullable<Scenario['farm']['money']['vat']>;
const RATES: Rates = { materials: 0.23, services: 0.135, feed: 0.05, machinery: 0.2, fuel: 0.09 };
const vat = (change: Partial<Vat> = {}): Vat => ({
  rates: RATES,
  reclaimed: false,
  pricesHoldIt: false,
  refundMonths: 2,
  ...change,
});

let coast: Opened;
beforeAll(async () => {
  coast = await openNotebook('notebooks/coast-lender-case.md');
});

/** The deep bed of the coast. */
function deepBed(tax?: Vat, country = 'CA', change: (one: Scenario) => Scenario = (one) => one) {
  const { notebook, tables, winters } = coast;
  const scenarios = notebook.scenarios.map((scenario) =>
    change({
      ...scenario,
      farm: {
        ...scenario.farm,
        place: { ...scenario.farm.place, country },
        money: { ...scenario.farm.money, ...(tax && { vat: tax }) },
      },
    }),
  );
  return evaluate({ scenarios, overrides: notebook.overrides }, tables, winters.winterOf).results[1];
}

/** Kinds as a builder's merchant would sort them, by name; the rest is material. */
const SERVICES = ['groundwork', 'erection'];
const EQUIPMENT = ['bowls', 'feeders', 'energiser', 'movableFence', 'troughs'];
const kindOf = (id: string): Purchase['kind'] =>
  SERVICES.includes(id)
    ? 'services'
    : EQUIPMENT.includes(id)
      ? 'machinery'
      : id === 'sawmill'
        ? 'fuel'
        : 'materials';
const worksOf = ({ values }: ScenarioResult): Purchase[] => [
  ...BILL_LINES.filter(({ own, onTop }) => !own && !onTop).map(({ id, cost }) => ({
    kind: kindOf(id),
    net: values[cost] ?? 0,
  })),
  { kind: 'services', net: values.costEngineer ?? 0 },
];
const winterOf = ({ values: v }: ScenarioResult): Purchase[] => [
  { kind: 'feed', net: (v.feedCost ?? 0) + (v.feedWasteCost ?? 0) + (v.beddingCost ?? 0) },
  { kind: 'fuel', net: v.machineryCost ?? 0 },
  {
    kind: 'services',
    net: (v.contractorCost ?? 0) + (v.reseedCost ?? 0) + (v.vetCost ?? 0) + (v.hoofCost ?? 0),
  },
  { kind: 'materials', net: v.repairsCost ?? 0 },
];

describe('tax that is a cost', () => {
  it('is the sum over all purchases at the rate of their kind', () => {
    const plain = deepBed();
    const taxed = deepBed(vat());
    expect(taxed.values.costVat).toBeCloseTo(taxOn(worksOf(plain), RATES), 1);
    expect((taxed.values.capitalCost as number) - (plain.values.capitalCost as number)).toBeCloseTo(
      taxOn(worksOf(plain), RATES),
      1,
    );
    expect(taxed.values.vatCost).toBeCloseTo(taxOn(winterOf(taxed), RATES), 6);
    expect(moneyBook(taxed).every(({ vatOut, vatBack }) => vatOut === 0 && vatBack === 0)).toBe(true);
    const short = BILL_LINES.filter(({ shortLived }) => shortLived).map(({ id, cost }) => ({
      kind: kindOf(id),
      net: plain.values[cost] ?? 0,
    }));
    const net = short.reduce((sum, one) => sum + one.net, 0);
    expect(taxed.values.capitalShortLived).toBeCloseTo(net + taxOn(short, RATES), 6);
  });

  it('with one rate on all works and one on the winter is what it was before there were kinds', () => {
    const plain = deepBed();
    const two = deepBed(vat({ rates: {}, worksFraction: 0.15, winterFraction: 0.1 }));
    const works = worksOf(plain).reduce((sum, { net }) => sum + net, 0);
    expect(two.values.costVat).toBe(Math.round(Math.round(works * 100) * 0.15) / 100);
    const winter = winterOf(two).reduce((sum, { net }) => sum + net, 0);
    expect(two.values.vatCost).toBeCloseTo(winter * 0.1, 9);
    // Only the works had a rate: the winter had none.
    const one = deepBed(vat({ rates: {}, worksFraction: 0.15 }));
    expect(one.values.vatCost).toBe(0);
  });
});

describe('tax that comes back', () => {
  it('goes out with each purchase and comes back as many months later, by kind', () => {
    const plain = deepBed();
    const back = deepBed(vat({ reclaimed: true, refundMonths: 3 }));
    expect(back.values.netCost).toBe(plain.values.netCost);
    expect(back.values.capitalCost).toBe(plain.values.capitalCost);
    const book = moneyBook(back);
    const sum = (year: number, line: 'vatOut' | 'vatBack') =>
      book.filter((month) => month.year === year).reduce((all, month) => all + month[line], 0);
    const { inflation } = back.scenario.farm.money;
    expect(sum(0, 'vatOut')).toBeCloseTo(-taxOn(worksOf(plain), RATES), 1);
    expect(sum(1, 'vatOut')).toBeCloseTo(-taxOn(winterOf(plain), RATES) * (1 + inflation), 4);
    book.forEach(({ vatBack }, k) => {
      expect(vatBack).toBeCloseTo(k < 3 ? 0 : -book[k - 3].vatOut, 6);
    });
  });

  it('moves in the month of what it is on', () => {
    const none = { materials: 0, services: 0, feed: 0, machinery: 0, fuel: 0 };
    const onFeed = moneyBook(deepBed(vat({ reclaimed: true, rates: { ...none, feed: 0.1 } })));
    for (const { feed, bedding, vatOut } of onFeed) expect(vatOut).toBeCloseTo((feed + bedding) * 0.1, 6);
    expect(new Set(onFeed.map(({ vatOut }) => Math.round(vatOut))).size).toBeGreaterThan(3);
    const onFuel = moneyBook(deepBed(vat({ reclaimed: true, rates: { ...none, fuel: 0.1 } })));
    const summer = onFuel.filter(({ name }) => name.endsWith('-07'));
    expect(summer.length).toBeGreaterThan(0);
    for (const { vatOut } of summer) expect(Math.abs(vatOut)).toBe(0);
  });

  it('on the works alone, as for a flat-rate farmer in some countries', () => {
    const one = deepBed(vat({ worksReclaimed: true }));
    expect(one.values.costVat).toBe(0);
    expect(one.values.vatCost).toBeCloseTo(taxOn(winterOf(one), RATES), 6);
    const book = moneyBook(one);
    const out = book.filter(({ year }) => year === 1).reduce((all, { vatOut }) => all + vatOut, 0);
    expect(out).toBe(0);
    expect(book.filter(({ year }) => year === 0).reduce((all, { vatOut }) => all + vatOut, 0)).toBeCloseTo(
      -taxOn(worksOf(one), RATES),
      1,
    );
    expect(vatWords(one)).toContain(
      'on the works, goes out with each purchase and comes back 2 months later',
    );
    expect(vatWords(one)).toContain('is not reclaimed: it stands in the costs.');
  });
});

describe('rates of the country', () => {
  it('stand where the keeper gives none, one of the keeper’s own before them', () => {
    const irish = deepBed(vat({ rates: {} }), 'IE').values;
    // Teagasc, Summary notes on VAT: feed 0, services and marked oil 13.5, materials and machinery 23.
    expect([irish.winterFeedVatRate, irish.worksServicesVatRate, irish.winterFuelVatRate, irish.worksMaterialsVatRate])
      .toEqual([0, 0.135, 0.135, 0.23]); // biome-ignore format: one comparison
    const own = deepBed(vat({ rates: { feed: 0.23 } }), 'IE').values;
    expect([own.winterFeedVatRate, own.worksMaterialsVatRate]).toEqual([0.23, 0.23]);
    const nowhere = deepBed(vat({ rates: {} }), 'XX').values;
    expect([nowhere.worksVatRate, nowhere.costVat, nowhere.vatCost]).toEqual([0, 0, 0]);
    expect(vatWords(deepBed(vat({ rates: {} }), 'IE'))).toContain('those of the table for the country');
  });
});

describe('own prices that hold the tax', () => {
  it('are brought down by the rate of their kind', () => {
    const change = (prices: Record<string, number>, straw: number) => (one: Scenario) => ({
      ...one,
      finance: { ...one.finance, quotes: [] },
      farm: {
        ...one.farm,
        materials: one.farm.materials.map((material) => ({ ...material, pricePerTonne: straw })),
        money: {
          ...one.farm.money,
          prices: Object.fromEntries(
            Object.entries(prices).map(([id, value]) => [id, { value, because: 'a quote of a test' }]),
          ),
        },
      },
    });
    const GROSS = {
      roofPricePerM2: 40,
      builderPricePerHour: 60,
      tractorPricePerHour: 30,
      nitrogenPricePerKg: 2,
    };
    const gross = deepBed(vat({ pricesHoldIt: true }), 'CA', change(GROSS, 200));
    const net = deepBed(vat(), 'CA', change(
      {
        roofPricePerM2: withoutTax(40, RATES.materials),
        builderPricePerHour: withoutTax(60, RATES.services),
        tractorPricePerHour: withoutTax(30, RATES.fuel),
        nitrogenPricePerKg: 2,
      },
      withoutTax(200, RATES.feed),
    )); // biome-ignore format: one call
    expect(Math.abs((gross.values.capitalCost as number) - (net.values.capitalCost as number))).toBeLessThan(
      0.03,
    );
    expect(gross.values.netCost).toBeCloseTo(net.values.netCost as number, 1);
    const asWritten = deepBed(vat(), 'CA', change(GROSS, 200));
    expect(gross.values.netCost as number).toBeLessThan((asWritten.values.netCost as number) - 100);
  });

  it('know what each price of the tables buys', () => {
    const ids = new Set(
      [...coast.tables.prices.values()].flatMap((rows) => [...rows.values()].map(({ name }) => name)),
    );
    const none = [...ids].filter((name) => purchaseOf(name) === undefined);
    // Worth of what is kept or lost, and own timber: nothing is bought there.
    expect(none.sort()).toMatchInlineSnapshot(`
      [
        "compostPricePerTonne",
        "grassPricePerTonne",
        "nitrogenPricePerKg",
        "organicMatterPricePerTonne",
        "ownTimberPricePerM3",
        "phosphorusPricePerKg",
        "potassiumPricePerKg",
      ]
    `);
  });
});

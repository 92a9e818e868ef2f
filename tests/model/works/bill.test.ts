/** Bill, quotes, faults and timber of an invented farm, bound through the real tables. Own arithmetic. */
import { describe, expect, it } from 'vitest';
import { bindScenario, toTable } from '../../../src/model/bind.ts';
import { moneyFaults } from '../../../src/model/money/moneyFaults.ts';
import {
  applyQuotes,
  BILL_LINES,
  type PriceBinding,
  QUOTABLE,
  quoteFaults,
  readBill,
} from '../../../src/model/works/bill.ts';
import { timberNotes } from '../../../src/model/works/timberNotes.ts';
import { type Scenario, scenarioSchema } from '../../../src/notebook/schema.ts';
import { SYSTEMS } from '../../../src/notebook/systems.ts';
import type { Tables } from '../../../src/tables/coefficient.ts';
import { TABLES } from '../moneyRig.ts';
import { columnsRead, namesIn, runParts } from '../parts.ts';

type Part = Record<string, unknown>;

function scenario(
  parts: { shed?: Part; finance?: Part; money?: Part; system?: keyof typeof SYSTEMS } = {},
): Scenario {
  const system = parts.system ?? 'deep-bedded';
  return scenarioSchema.parse({
    name: 'invented',
    system,
    because: 'a test',
    ...SYSTEMS[system].defaults,
    shed: { lengthM: 24, depthM: 9, ...parts.shed },
    bed: { mix: [{ material: 'barleyStraw', share: 1 }] },
    finance: parts.finance ?? {},
    farm: {
      place: { name: 'an invented farm', latitudeDeg: 57, longitudeDeg: 25 },
      winter: { start: '2025-10-20', end: '2026-04-20' },
      weather: {},
      soil: { texture: 'loam' },
      herd: [{ name: 'cows', class: 'sucklerCow', head: 24, weightKg: 600 }],
      feed: [{ feed: 'hay', share: 1 }],
      materials: [{ material: 'barleyStraw', tonnes: 40 }],
      land: { receivingHa: 20 },
      money: { currency: 'EUR', year: 2024, labourPerHour: 15, ...parts.money },
    },
  });
}

/** What other parts would have made. */
const BEFORE = {
  headCount: 24,
  slatsUsedM2: 66,
  storeNeededM3: 180,
  beddingKg: 45_500,
  mixShareSum: 1,
  packM3: 150,
  slatsShare: 1,
};

function bill(given: Scenario, tables: Tables = TABLES) {
  const bound = bindScenario(applyQuotes(given), tables);
  const columns = toTable([{ bound, weatherIndex: 0 }]);
  for (const [name, value] of Object.entries(BEFORE)) columns[name] ??= Float64Array.of(value);
  for (const name of columnsRead(['building'])) columns[name] ??= Float64Array.of(1);
  const out = runParts(['building'], columns, 1);
  const values: Record<string, number | null> = {};
  for (const name of [...namesIn(['building'], 1), ...Object.keys(BEFORE)]) {
    const value = (out[name] ?? columns[name])[0];
    values[name] = Number.isFinite(value) ? value : null;
  }
  return { bound, values, lines: readBill(values, bound.bindings, given.farm.money) };
}

const cents = (lines: readonly { amount: number | null }[]) =>
  lines.reduce((sum, line) => sum + Math.round((line.amount ?? Number.NaN) * 100), 0);

function without(id: string, currency = 'EUR'): Tables {
  const rows = new Map(TABLES.prices.get(currency)!);
  rows.delete(id);
  return { ...TABLES, prices: new Map([...TABLES.prices, [currency, rows]]) };
}

describe('bill', () => {
  it.each(['outwintered', 'slatted', 'deep-bedded'] as const)(
    'adds up to the capital to the cent: %s',
    (system) => {
      const { lines, values } = bill(scenario({ system }));
      expect(lines.length).toBeGreaterThan(5);
      expect(cents(lines)).toBe(Math.round(values.capitalCost! * 100));
    },
  );
  it.each(['EUR', 'CAD', 'GBP', 'SEK', 'USD'])('is in one currency, with year and source: %s', (currency) => {
    const { lines, values } = bill(scenario({ money: { currency } }));
    expect(new Set(lines.map((line) => line.currency))).toEqual(new Set([currency]));
    for (const line of lines) {
      expect(line.source, line.id).not.toBe('');
      expect(line.amount, line.id).toBeCloseTo(line.quantity * line.unitPrice!, 1);
    }
    expect(values.capitalCost).toBeGreaterThan(0);
  });
  it('shows own timber and hours as own lines', () => {
    const own = bill(scenario({ shed: { ownTimber: true } })).lines.filter((line) => line.own);
    expect(own.map((line) => line.id)).toEqual(['timberOwn', 'sawing']);
  });
  it('a capital given is the whole bill', () => {
    const { lines, values } = bill(scenario({ finance: { capital: 41_000.5 } }));
    expect(lines).toHaveLength(1);
    expect(lines[0].amount).toBe(41_000.5);
    expect(values.capitalCost).toBe(41_000.5);
  });
  it('every line has a name and columns of its own, and a price no quotable line shares', () => {
    for (const of of [
      (l: (typeof BILL_LINES)[number]) => l.id,
      (l: (typeof BILL_LINES)[number]) => l.quantity,
      (l: (typeof BILL_LINES)[number]) => l.cost,
    ])
      expect(new Set(BILL_LINES.map(of)).size).toBe(BILL_LINES.length);
    expect(new Set(QUOTABLE.map((line) => line.price)).size).toBe(QUOTABLE.length);
  });
});

describe('quotes', () => {
  const quotes = [{ line: 'roof', unitPrice: 31.5, because: 'offer of the invented roofer' }];
  it('replace the unit price of one line and nothing else', () => {
    const usual = bill(scenario());
    const quoted = bill(scenario({ finance: { quotes } }));
    const roof = quoted.lines.find((line) => line.id === 'roof')!;
    expect(roof).toMatchObject({
      unitPrice: 31.5,
      source: 'own quote',
      because: 'offer of the invented roofer',
      year: null,
    });
    expect(roof.amount).toBeCloseTo(262.7823 * 31.5, 1);
    expect(cents(quoted.lines)).toBe(Math.round(quoted.values.capitalCost! * 100));
    for (const line of usual.lines.filter((l) => !['roof', 'engineer'].includes(l.id)))
      expect(quoted.lines.find((l) => l.id === line.id)?.amount).toBe(line.amount);
  });
  it('reach a price that hangs on a choice', () => {
    const given = scenario({
      system: 'outwintered',
      finance: { quotes: [{ line: 'feeders', unitPrice: 99, because: 'used ones' }] },
    });
    expect(bill(given).lines.find((line) => line.id === 'feeders')?.unitPrice).toBe(99);
  });
  it('a quote for a line nobody knows is named', () => {
    const [fault] = quoteFaults(
      scenario({ finance: { quotes: [{ line: 'moat', unitPrice: 1, because: 'x' }] } }),
    );
    expect(fault.at).toBe('finance.quotes.0.line');
    expect(fault.words).toContain('no bill line is called "moat"');
  });
});

describe('faults', () => {
  const faults = (given: Scenario, tables?: Tables, extra: Record<string, number> = {}) => {
    const { bound, values, lines } = bill(given, tables);
    return moneyFaults(given, { ...values, ...extra }, bound.bindings, lines);
  };
  it('none in a plain scenario', () => expect(faults(scenario())).toEqual([]));
  it('a missing price is a marked line and no sum', () => {
    const tables = without('roofPricePerM2');
    const { lines, values } = bill(scenario(), tables);
    expect(lines.find((line) => line.id === 'roof')).toMatchObject({
      noPrice: true,
      amount: null,
      unitPrice: null,
    });
    expect(values.capitalCost).toBeNull();
    expect(faults(scenario(), tables).map((f) => f.words)).toEqual([
      'no price given for roof sheets and fixings in EUR: give a quote for line "roof"',
    ]);
  });
  it('a missing price of works not built is no fault', () =>
    expect(faults(scenario(), without('slatsPricePerM2'))).toEqual([]));
  it('a currency without any prices', () => {
    const given = scenario({ money: { currency: 'NOK' } });
    const { lines, values } = bill(given);
    expect(values.capitalCost).toBeNull();
    expect(lines.filter((line) => line.noPrice).length).toBeGreaterThan(10);
    expect(faults(given)[0].words).toContain('in NOK');
  });
  it('prices of another currency are never taken', () => {
    const mixed = new Map(TABLES.prices.get('EUR')!);
    mixed.set('roofPricePerM2', TABLES.prices.get('SEK')!.get('roofPricePerM2')!);
    const found = faults(scenario(), { ...TABLES, prices: new Map([['EUR', mixed]]) });
    expect(found.some((f) => f.id === 'currency' && f.words.includes('SEK'))).toBe(true);
  });
  it('a negative price', () => {
    const given = scenario();
    const { bound, values, lines } = bill(given);
    const bindings = new Map<string, PriceBinding>([
      ...bound.bindings,
      ['roofPricePerM2', { value: -1, origin: 'override' }],
    ]);
    expect(moneyFaults(given, values, bindings, lines)[0]).toMatchObject({
      id: 'negativePrice',
      at: 'roofPricePerM2',
    });
  });
  it('loans, grant and money that do not fit', () => {
    const loans = [{ name: 'bank', amount: 400_000, rate: 0.05, years: 5, graceYears: 5 }];
    const found = faults(scenario({ finance: { loans } }), undefined, {
      grantOverCost: 1234.5,
      fundingGap: 10,
    });
    expect(found.map((f) => f.id)).toEqual(['loan', 'grant', 'funding', 'funding']);
    expect(found[0].words).toContain('at least one year must be left to repay in');
    expect(found[1].words).toContain('1234.50 EUR more than the works cost');
  });
});

describe('timber', () => {
  it('a small shed needs no note', () => expect(timberNotes(scenario())).toEqual([]));
  it('a deep shed: rafter and ridge post too long, with splice, extra row and a shallower shed', () => {
    // 15 m: (7.5 + 0.6)/cos 12° = 8.28 m; ridge 4.2 + 7.5·tan 12° = 5.79 m.
    const notes = timberNotes(scenario({ shed: { depthM: 15, longestTimberM: 5.5 } }));
    expect(notes.map((note) => note.member)).toEqual(['post', 'rafter']);
    expect(notes[0].neededM).toBeCloseTo(5.794, 3);
    expect(notes[1].neededM).toBeCloseTo(8.281, 3);
    // 2 × (5.5·cos 12° − 0.6) = 9.56 m.
    expect(notes[1].alternatives.join(' ')).toMatch(
      /splice 2 pieces of 4\.14 m.*1 extra row.*at most 9\.56 m deep/,
    );
  });
  it('long bays', () => {
    const [note] = timberNotes(scenario({ shed: { bayM: 6.4 } }));
    expect(note.member).toBe('purlin');
    expect(note.alternatives[0]).toBe('bays of at most 6.00 m: 4 of them');
  });
});

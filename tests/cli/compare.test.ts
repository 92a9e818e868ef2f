import { describe, expect, it } from 'vitest';
import { NOTEBOOKS, winterkeep } from './run.ts';

interface Result {
  name: string;
  system: string;
  values: Record<string, number | null>;
  checks: {
    id: string;
    status: string;
    value: number | null;
    limit: number | null;
    unit: string;
    source: string;
    words: string;
  }[];
  p10: Record<string, number | null>;
  p50: Record<string, number | null>;
  p90: Record<string, number | null>;
}

/** Names that anyone reading the results may rely on. */
const NAMES = `headCount winterDays liveWeightKg nitrogenExcretedKg phosphorusExcretedKg potassiumExcretedKg
  nitrogenBeddingKg phosphorusBeddingKg potassiumBeddingKg nitrogenAmmoniaKg nitrogenNitrousKg nitrogenDinitrogenKg
  nitrogenLeachedKg nitrogenRunoffKg nitrogenKeptKg nitrogenAvailableKg phosphorusLostKg phosphorusKeptKg
  potassiumLostKg potassiumKeptKg carbonKeptKg beddingTonnes packDepthM packTonnes packM3 packMoisture
  packCarbonNitrogen compostTonnes compostM3 compostMoisture compostCarbonNitrogen slurryM3 storeNeededM3
  drainageMm wetDays grassLostTonnes feedTonnes labourHours capitalCost annualCost nutrientValue netCost
  netCostPerHead loanPayment netPresentValue internalRateOfReturn paybackYears debtServiceCover
  greenhouseGasTonnes`.split(/\s+/);

/** What each system cannot have, so that it is null and not 0. */
const ABSENT: Record<string, string[]> = {
  outwintered: [
    'slurryM3',
    'packM3',
    'packDepthM',
    'compostTonnes',
    'compostM3',
    'beddingTonnes',
    'storeNeededM3',
  ],
  slatted: ['packM3', 'packDepthM', 'compostTonnes', 'compostM3', 'grassLostTonnes'],
  'deep-bedded': ['slurryM3', 'storeNeededM3', 'grassLostTonnes'],
};

async function compare(
  file: string,
  ...options: string[]
): Promise<{ notebook: string; currency: string; scenarios: Result[] }> {
  const { code, out, error } = await winterkeep('compare', file, '--format', 'json', ...options);
  expect([code, error]).toEqual([0, '']);
  return JSON.parse(out);
}

describe.each(NOTEBOOKS)('compare %s', (file) => {
  it('gives every name, finite or null, and what a system lacks is null', async () => {
    const { scenarios, currency, notebook } = await compare(file);
    expect(notebook).toBe(file);
    expect(currency).toMatch(/^[A-Z]{3}$/);
    expect(new Set(scenarios.map((s) => s.system)).size).toBe(file.endsWith('own-chips.md') ? 2 : 3);
    for (const { values, system } of scenarios) {
      for (const name of NAMES)
        expect([name, values[name] === null || Number.isFinite(values[name])]).toEqual([name, true]);
      for (const name of ABSENT[system]) expect([system, name, values[name]]).toEqual([system, name, null]);
      const pastAbsent = NAMES.filter(
        (name) => !ABSENT[system].includes(name) && !/Return|payback|debt/.test(name),
      );
      const unasked = /^(packMoisture|packCarbonNitrogen|packTonnes|compost|grass|slurry|store|bedding)/;
      for (const name of pastAbsent.filter((n) => !unasked.test(n)))
        expect([system, name, values[name]]).not.toEqual([system, name, null]);
    }
  });

  it('accounts for every kilogram', async () => {
    for (const { values } of (await compare(file)).scenarios) {
      const sum = (names: string[]) => names.reduce((total, name) => total + (values[name] ?? 0), 0);
      const nitrogen = sum(['nitrogenExcretedKg', 'nitrogenBeddingKg']);
      const out = sum([
        'nitrogenAmmoniaKg',
        'nitrogenNitrousKg',
        'nitrogenDinitrogenKg',
        'nitrogenLeachedKg',
        'nitrogenRunoffKg',
        'nitrogenKeptKg',
        'nitrogenBroughtKg',
      ]);
      expect(Math.abs(nitrogen - out) / nitrogen).toBeLessThan(1e-9);
      for (const e of ['phosphorus', 'potassium']) {
        const inKg = sum([`${e}ExcretedKg`, `${e}BeddingKg`]);
        expect(Math.abs(inKg - sum([`${e}LostKg`, `${e}KeptKg`, `${e}BroughtKg`])) / inKg).toBeLessThan(1e-9);
      }
    }
  });

  it('lists its checks with value, limit, unit, source and words', async () => {
    for (const { checks, system } of (await compare(file)).scenarios) {
      expect(checks.length).toBeGreaterThanOrEqual(system === 'deep-bedded' ? 15 : 1);
      for (const { id, status, unit, source, words } of checks) {
        expect(['pass', 'look', 'stop']).toContain(status);
        for (const text of [id, source, words]) expect(text.length).toBeGreaterThan(1);
        expect(typeof unit).toBe('string');
        expect(words).not.toMatch(/NaN|undefined|Infinity/);
      }
    }
  });
});

describe('compare with draws', () => {
  const [file] = NOTEBOOKS;

  it('gives identical bytes twice, and others for another seed', async () => {
    const options = ['compare', file, '--format', 'json', '--draws', '400', '--seed', '7'];
    const first = await winterkeep(...options);
    expect((await winterkeep(...options)).out).toBe(first.out);
    expect((await winterkeep(...options.slice(0, -1), '8')).out).not.toBe(first.out);
  });

  it('keeps P10 ≤ P50 ≤ P90 everywhere', async () => {
    const { scenarios } = await compare(file, '--draws', '400', '--seed', '7');
    for (const { p10, p50, p90 } of scenarios)
      for (const name of Object.keys(p50)) {
        if (p50[name] === null) continue;
        expect([
          name,
          (p10[name] as number) <= (p50[name] as number),
          (p50[name] as number) <= (p90[name] as number),
        ]).toEqual([name, true, true]);
      }
  });

  it('says in the text in how many of 100 draws a difference holds', async () => {
    const { out } = await winterkeep('compare', file, '--draws', '200', '--seed', '7');
    expect(out).toMatch(/in (\d+|more than 99|fewer than 1) of 100 draws/);
    expect(out).toContain('P10 to P90');
  });
});

describe('compare as text and csv', () => {
  it('is aligned, has units, and never prints a missing number', async () => {
    const { out } = await winterkeep('compare', NOTEBOOKS[0]);
    expect(out).toContain('What stays');
    expect(out).toContain('What it takes');
    expect(out).toMatch(/nitrogen kept\s+\d[\d ]* kg/);
    expect(out).not.toMatch(/NaN|undefined|null/);
    expect(out).toContain('Slurry gas kills');
  });

  it('has a column for each scenario in CSV, absent fields empty', async () => {
    const { out } = await winterkeep('compare', NOTEBOOKS[0], '--format', 'csv');
    const lines = out.trim().split('\n');
    expect(lines[0]).toMatch(/^quantity,unit,/);
    const slurry = lines.find((line) => line.startsWith('slurryM3,')) as string;
    expect(slurry.split(',').length).toBe(lines[0].split(',').length);
    expect(slurry).toMatch(/^slurryM3,m³,,/);
  });
});

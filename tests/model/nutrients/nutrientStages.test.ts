/** What must hold of every nutrient stage: its declaration, empty farms, finite numbers, units of the rows. */
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/model/quantities.ts';
import { INPUT_FAMILIES, INPUTS } from '../../../src/notebook/inputs.ts';
import { type Row, run, TABLE_PROBLEMS, TABLES } from '../nutrientRig.ts';
import { columnsRead, familiesRead, isAmount, namesIn } from '../parts.ts';

const PARTS = [
  'herd', 'intake', 'excretion', 'placement', 'slurry', 'spreading', 'ledger', 'value', 'worth', 'kept',
]; // biome-ignore format: one list
const OWN_FILES = /coefficients\/(intake|excretion|slurry|spread|value|greenhouse)\.csv$/;

const madeBy = (parts: readonly string[]) =>
  namesIn(parts).flatMap((name) => CATALOGUE.entries.get(name) ?? []);

describe.each(PARTS)('part %s', (part) => {
  it('names sources that exist', () => {
    const named = madeBy([part]).flatMap(({ made }) => made.source ?? []);
    expect(named.filter((id) => !TABLES.sources.has(id))).toEqual([]);
  });

  it('makes zero of nothing, and never NaN', () => {
    for (const row of run([part], [{}, { slatsM2: Number.NaN, winterDays: 120, herdFactor: 1 }], 5))
      for (const [name, value] of Object.entries(row))
        if (isAmount(name)) expect(value, name).toBe(0);
        else expect(value, name).not.toBeNaN();
  });
});

describe('the whole line of stages', () => {
  const herd: Row = {
    herdFactor: 1,
    winterDays: 150,
    feed1Share: 0.7,
    feed2Share: 0.3,
    feed2CrudeProteinFraction: 0.038,
    feed2PhosphorusFraction: 0.0008,
    feed2PotassiumFraction: 0.014,
    feed2DigestibilityFraction: 0.45,
    feed2DryMatterFraction: 0.86,
    feed2CarbonFraction: 0.45,
    group1HeadCount: 18,
    group1WeightKg: 640,
    group1PregnantShare: 0.9,
    group1MilkKgPerDay: 4,
    group2HeadCount: 12,
    group2WeightKg: 180,
    group2GainKgPerDay: 0.6,
    group2IntakeFraction: 0.012,
    group2MilkDrunkKgPerDay: 6,
    receivingHa: 20,
    paddockHa: 2,
    rainMm: 300,
    openYardM2: 50,
    slatsM2: Number.NaN,
    nitrogenPricePerKg: 1.3,
  };
  const places: readonly Row[] = [
    { pastureShare: 1 },
    { slatsShare: 1 },
    { bedShare: 0.75, yardShare: 0.25, yardToPackShare: 1 },
    { slatsShare: 0.5, yardShare: 0.2, pastureShare: 0.3, yardToPackShare: 0 },
  ];
  const all = run(
    PARTS,
    places.map((place) => ({ ...herd, ...place })),
    -6,
  );

  it('gives finite numbers, none below zero', () => {
    for (const row of all)
      for (const [name, value] of Object.entries(row)) {
        expect(Number.isFinite(value), name).toBe(true);
        if (!isAmount(name)) continue;
        // Kept by paddock and soil stages is 0 here, so ladder and later-year rows only check those that stand alone.
        if (name !== 'conditionKgPerHead') expect(value, name).toBeGreaterThanOrEqual(0);
      }
  });

  it('leaves routes that no animal takes at zero', () => {
    madeBy(PARTS).forEach(({ name, width, made: { when } }) => {
      if (width > 1 || !isAmount(name)) return;
      if (when === 'slurryShare') expect([all[0][name], all[2][name]], name).toEqual([0, 0]);
      if (when === 'paddockShare') expect([all[1][name], all[2][name]], name).toEqual([0, 0]);
      if (when === 'packShare') expect([all[0][name], all[1][name], all[3][name]], name).toEqual([0, 0, 0]);
    });
  });

  it('does the same for a row alone and among others', () => {
    expect(run(PARTS, { ...herd, ...places[3] }, -6)[0]).toEqual(all[3]);
  });

  it('scales with the herd: twice the herd, twice the nutrients, and 0 for none', () => {
    const [one, two, none] = run(PARTS, [1, 2, 0].map((herdFactor) => ({ ...herd, ...places[3], herdFactor })));
    for (const name of ['headCount', 'nitrogenExcretedKg', 'waterExcretedKg', 'slurryNitrogenKg', 'storeAmmoniaKg', 'areaNeededHa', 'methaneKg']) {
      expect(two[name] / one[name], name).toBeCloseTo(2, 9);
      expect(none[name], name).toBe(0);
    }
  }); // biome-ignore format: one list
});

describe('the coefficient rows', () => {
  const rows = [...TABLES.coefficients.values()].filter((row) => OWN_FILES.test(row.at.file));

  it('pass the reading of tables', () => {
    expect(TABLE_PROBLEMS.filter(({ file }) => OWN_FILES.test(file))).toEqual([]);
    expect(rows.length).toBeGreaterThan(145);
  });

  it('hold every name a stage reads that is no input and no result', () => {
    const made = new Set(namesIn(PARTS));
    const inputs = new Set(INPUTS.map(({ column }) => column));
    const named = new Set([...TABLES.coefficients.values()].map(({ name }) => name));
    // Made by the weather, bedding, paddock, bed, compost and soil stages, or price rows.
    const elsewhere =
      /^(weatherIndex|rainMm|wetDays|winterTemperatureC|\w+MaterialKg|nitrogenBeddingKg|paddock\w+Kg|(spot|rest|dung)UptakeKg|\w+ReachedHa|(bed|pack)\w+(Kg|Fraction)|heap\w+Kg|compost\w*(Kg|Tonnes)|soil\w+Kg|humusCarbonKg|\w+PricePer(Kg|Tonne))$/;
    const missing = columnsRead(PARTS).filter(
      (name) => !made.has(name) && !inputs.has(name) && !named.has(name) && !elsewhere.test(name),
    );
    expect(missing).toEqual([]);
    const missingFields = Object.entries(familiesRead(PARTS)).flatMap(([family, fields]) => {
      const given = INPUT_FAMILIES.find((f) => f.family === family)?.fields ?? {};
      return fields
        .filter((field) => !(field in given) && !named.has(`${family}${field}`))
        .map((f) => family + f);
    });
    expect(missingFields).toEqual([]);
  });

  it('keep shares between 0 and 1', () => {
    const out = rows
      .filter(({ unit, low, high }) => unit === 'fraction' && (low < 0 || high > 1))
      .map(({ id }) => id);
    expect(out).toEqual([]);
  });

  it('end each name with the unit it has', () => {
    const wrong = rows.filter(({ name, unit }) => {
      if (unit === 'fraction') return !/Fraction$/.test(name);
      if (unit === '×') return !/Factor$/.test(name);
      if (unit === 'kg/ha') return !/KgPerHa$/.test(name);
      if (unit === '°C') return !/C$/.test(name);
      if (unit === '1/°C') return !/PerC$/.test(name);
      return false;
    });
    expect(wrong.map(({ id }) => id)).toEqual([]);
  });
});

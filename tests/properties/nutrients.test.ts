/** Over random herds, days and coefficients: what enters a nutrient stage leaves it, to 1e-9 of what entered. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Row, run, TABLES, total } from '../model/nutrientRig.ts';
import { columnsRead, isAmount } from '../model/parts.ts';

const num = (max: number, min = 0) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const unit = num(1);
const kilograms = num(5000);

/** A value in the range of a coefficient for each plain row that the parts read. */
function coefficients(parts: readonly string[]): fc.Arbitrary<Record<string, number>> {
  const rows = columnsRead(parts).flatMap((name) => TABLES.coefficients.get(name) ?? []);
  return fc.record(Object.fromEntries(rows.map(({ name, low, high }) => [name, num(high, low)])));
}

const balanced = (inKg: number, outKg: number) =>
  expect(Math.abs(inKg - outKg)).toBeLessThanOrEqual(1e-9 * Math.max(1, inKg));
const finite = (row: Row) => {
  for (const [name, value] of Object.entries(row)) expect(Number.isFinite(value), name).toBe(true);
};

const ELEMENTS = ['Nitrogen', 'Phosphorus', 'Potassium', 'Carbon', 'DryMatter', 'Water'] as const;
const lower = (name: string) => name[0].toLowerCase() + name.slice(1);
const placed = fc.record({
  winterDays: fc.integer({ min: 0, max: 300 }),
  bedShare: unit,
  slatsShare: unit,
  yardShare: unit,
  pastureShare: num(1, 0.001),
  yardToPackShare: fc.constantFrom(0, 1, 0.4),
  yardAmmoniaTanFraction: num(1),
  tanShare: unit,
  ...Object.fromEntries(
    ELEMENTS.flatMap((e) => ['Excreted', 'Wasted', 'Material'].map((k) => [`${lower(e)}${k}Kg`, kilograms])),
  ),
});

it('placement: excreted, wasted and bedding go to yard ammonia and three routes', () => {
  fc.assert(
    fc.property(placed, num(30, -30), (drawn, weekC) => {
      const given = drawn as unknown as Record<string, number>;
      const row: Record<string, number> = {
        ...given,
        tanExcretedKg: given.nitrogenExcretedKg * given.tanShare,
      };
      const [out] = run(['placement'], row, weekC);
      finite(out);
      for (const e of ELEMENTS) {
        const inKg = total(row, `${lower(e)}ExcretedKg`, `${lower(e)}WastedKg`, `${lower(e)}MaterialKg`);
        const routes = total(out, `paddock${e}InKg`, `slurry${e}InKg`, `pack${e}InKg`);
        balanced(inKg, routes + (e === 'Nitrogen' ? out.yardAmmoniaKg : 0));
      }
      balanced(
        row.tanExcretedKg,
        total(out, 'paddockTanInKg', 'slurryTanInKg', 'packTanInKg', 'yardAmmoniaKg'),
      );
      balanced(1, total(out, 'paddockShare', 'slurryShare', 'packShare'));
      for (const route of ['paddock', 'slurry', 'pack']) {
        expect(out[`${route}TanInKg`]).toBeGreaterThanOrEqual(-1e-9);
        expect(out[`${route}TanInKg`]).toBeLessThanOrEqual(out[`${route}NitrogenInKg`] + 1e-9);
      }
    }),
  );
});

const tank = fc.record({
  winterDays: fc.integer({ min: 0, max: 300 }),
  spreadDay: fc.integer({ min: 0, max: 364 }),
  pitStoreShare: fc.constantFrom(0, 1),
  slatsM2: num(400),
  storeDepthM: num(5, 0.5),
  timesStirred: num(30),
  weekC: num(25, -30),
  slurryShare: unit,
  slatsPart: unit,
  tanPart: unit,
  slurryNitrogenInKg: kilograms,
  slurryPhosphorusInKg: kilograms,
  slurryPotassiumInKg: kilograms,
  slurryDryMatterInKg: kilograms,
  slurryCarbonInKg: kilograms,
  slurryWaterInKg: kilograms,
  storeAmmoniaFactor: fc.oneof(fc.constant(0), num(1.6)),
  storeCoverBrokenFraction: fc.constantFrom(0, 1),
  storeNitrousFraction: num(0.02),
});

it('slurry: nitrogen, phosphorus and potassium leave as losses or in the slurry', () => {
  fc.assert(
    fc.property(tank, coefficients(['slurry']), (given, drawn) => {
      const tan = given.slurryNitrogenInKg * given.tanPart;
      const row: Row = { ...drawn, ...given, slurryTanInKg: tan, slatsTanKg: tan * given.slatsPart };
      const [out] = run(['slurry'], row, given.weekC);
      finite(out);
      expect(out.houseAmmoniaKg).toBeLessThanOrEqual(tan + 1e-9);
      expect(out.storeMethaneFraction).toBeLessThanOrEqual(1);
      if (given.storeAmmoniaFactor === 0 && given.storeCoverBrokenFraction === 0)
        expect(out.storeAmmoniaKg).toBe(0);
      balanced(given.slurryNitrogenInKg, total(out, 'houseAmmoniaKg', 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg', 'slurryNitrogenKg')); // biome-ignore format: one sum
      balanced(given.slurryPhosphorusInKg, total(out, 'slurryPhosphorusKg', 'slurryPhosphorusLostKg'));
      balanced(given.slurryPotassiumInKg, total(out, 'slurryPotassiumKg', 'slurryPotassiumLostKg'));
      expect(out.slurryTanKg).toBeGreaterThanOrEqual(-1e-9);
      expect(out.slurryTanKg).toBeLessThanOrEqual(out.slurryNitrogenKg + 1e-9);
    }),
  );
});

it('spread: nitrogen and TAN leave as ammonia or enter the soil', () => {
  fc.assert(
    fc.property(
      fc.record({ slurryNitrogenKg: kilograms, compostNitrogenKg: kilograms, a: unit, b: unit, spreadLossTechnique: num(0, -5), spreadIncorporationFactor: unit, incorporationHours: num(100), slurryM3: kilograms, slurryDryMatterKg: kilograms, spreadDay: num(400), weekC: num(30, -30) }),
      coefficients(['spreading']),
      (given, drawn) => {
        const row: Row = { ...drawn, ...given, slurryTanKg: given.slurryNitrogenKg * given.a, compostTanKg: given.compostNitrogenKg * given.b };
        const [out] = run(['spreading'], row, given.weekC);
        finite(out);
        balanced(given.slurryNitrogenKg + given.compostNitrogenKg, total(out, 'spreadAmmoniaKg', 'slurrySoilNitrogenKg', 'compostSoilNitrogenKg'));
        balanced(row.slurryTanKg + row.compostTanKg, total(out, 'spreadAmmoniaKg', 'slurrySoilTanKg', 'compostSoilTanKg'));
        expect(out.slurrySoilTanKg).toBeGreaterThanOrEqual(0);
      },
    ),
  ); // biome-ignore format: one property
});

const herd = fc.record({
  herdFactor: num(3),
  winterDays: fc.integer({ min: 0, max: 300 }),
  group1HeadCount: fc.integer({ min: 0, max: 60 }),
  group1WeightKg: num(900, 100),
  group1GainKgPerDay: num(1.5, -0.5),
  group1PregnantShare: unit,
  group1MilkKgPerDay: num(12),
  group1IntakeFraction: num(0.028, 0.005),
  group1AppetiteShare: fc.constantFrom(0, 1),
  group1CalvingDay: fc.integer({ min: -60, max: 300 }),
  group1FedKgPerDay: fc.constantFrom(0, 0, 9),
  group2HeadCount: fc.integer({ min: 0, max: 60 }),
  group2WeightKg: num(300, 40),
  group2GainKgPerDay: num(1.2),
  group2MilkDrunkKgPerDay: num(9),
  feed1Share: fc.constant(1),
  feed1CrudeProteinFraction: num(0.2, 0.02),
  feed1PhosphorusFraction: num(0.005, 0.0003),
  feed1PotassiumFraction: num(0.035, 0.005),
  feed1DigestibilityFraction: num(0.8, 0.35),
  feed1DryMatterFraction: num(0.9, 0.2),
  feedWasteFraction: num(0.5),
  slatsShare: unit,
  pastureShare: num(1, 0.01),
  bedShare: unit,
});
const LINE = ['herd', 'intake', 'excretion', 'placement', 'slurry', 'spreading'];

it('feed to field: random herds give finite numbers, no negative mass, and TAN within nitrogen', () => {
  fc.assert(
    fc.property(herd, coefficients(LINE), num(12, -25), (given, drawn, weekC) => {
      const [out] = run(LINE, { ...drawn, ...given }, weekC);
      finite(out);
      // A herd that loses weight gives back what it held.
      for (const [name, value] of Object.entries(out))
        if (
          name !== 'gainKg' &&
          name !== 'conditionKgPerHead' &&
          isAmount(name) &&
          !name.endsWith('RetainedKg')
        )
          expect(value, name).toBeGreaterThanOrEqual(-1e-9);
      expect(out.tanExcretedKg).toBeLessThanOrEqual(out.nitrogenExcretedKg + 1e-9);
      const wasted = out.nitrogenExcretedKg + out.nitrogenWastedKg;
      const losses = total(
        out,
        'yardAmmoniaKg',
        'houseAmmoniaKg',
        'storeAmmoniaKg',
        'storeNitrousKg',
        'storeDinitrogenKg',
      );
      balanced(wasted, losses + total(out, 'slurryNitrogenKg', 'paddockNitrogenInKg', 'packNitrogenInKg'));
    }),
  );
});

it('value: available and surplus sum to what could be available, and no area takes more than it needs', () => {
  const parts = fc.record({
    receivingHa: num(50), paddockHa: num(20), spotExcretaFraction: unit, spotAreaFraction: unit, slurrySoilNitrogenKg: kilograms, compostSoilNitrogenKg: kilograms,
    a: unit, b: unit, mineral: unit, compostMineralisedFraction: num(0.3), paddockNitrogenKeptKg: kilograms, c: unit, soilPhosphorusKeptKg: kilograms,
    slurryPhosphorusKg: kilograms, compostPhosphorusKg: kilograms, soilPotassiumKeptKg: kilograms, paddockPotassiumKeptKg: kilograms,
    compostPricePerTonne: fc.constantFrom(0, 25), compostTonnes: num(200), nitrogenPricePerKg: num(3),
  }); // biome-ignore format: one record
  fc.assert(
    fc.property(parts, coefficients(['value']), (p, drawn) => {
      const tan = p.slurrySoilNitrogenKg * p.a + p.compostSoilNitrogenKg * p.b;
      const organic = p.slurrySoilNitrogenKg + p.compostSoilNitrogenKg - tan;
      const released =
        p.slurrySoilNitrogenKg * (1 - p.a) * drawn.slurryMineralisedFraction +
        p.compostSoilNitrogenKg * (1 - p.b) * p.compostMineralisedFraction;
      // What soil leaves of it: any part of the mineral nitrogen, and all that is still organic.
      const mineral = (tan + released) * p.mineral;
      const kept = organic - released + mineral;
      const row: Row = {
        ...drawn,
        ...p,
        slurrySoilTanKg: p.slurrySoilNitrogenKg * p.a,
        compostSoilTanKg: p.compostSoilNitrogenKg * p.b,
        soilNitrogenKeptKg: kept,
        soilMineralKg: mineral,
        paddockNitrogenInCropKg: p.paddockNitrogenKeptKg * p.c,
        spotUptakeKg: p.paddockNitrogenKeptKg * p.c * p.a,
        restUptakeKg: p.paddockNitrogenKeptKg * p.c * (1 - p.a),
        paddockNitrogenBoundKg: p.paddockNitrogenKeptKg * (1 - p.c),
      };
      const [out] = run(['value'], row);
      finite(out);
      for (const [name, value] of Object.entries(out)) expect(value, name).toBeGreaterThanOrEqual(-1e-9);
      const keptAll = kept + p.paddockNitrogenKeptKg;
      expect(
        total(out, 'nitrogenAvailableKg', 'nitrogenSurplusKg', 'nitrogenAvailableSecondYearKg'),
      ).toBeLessThanOrEqual(keptAll * (1 + 1e-9) + 1e-9);
    }),
  );
});

it('ledger: a loss moved from one place to another changes no total', () => {
  const names = columnsRead(['ledger']).filter((name) => /AmmoniaKg$/.test(name));
  fc.assert(
    fc.property(
      fc.array(kilograms, { minLength: names.length, maxLength: names.length }),
      fc.nat(),
      (values, turn) => {
        const at = (shift: number) =>
          Object.fromEntries(names.map((name, k) => [name, values[(k + shift) % names.length]]));
        const [a, b] = run(['ledger'], [at(0), at(turn)]);
        balanced(a.nitrogenAmmoniaKg, b.nitrogenAmmoniaKg);
        balanced(
          a.nitrogenAmmoniaKg,
          values.reduce((sum, v) => sum + v, 0),
        );
      },
    ),
  );
});

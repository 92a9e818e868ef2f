/** Feed need and appetite, indoors and out, against feeding trials and worked sums. */
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { gestationMj, maintenanceMj } from '../../src/model/herd/energy.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { central, evenWeather, type Row, run, TABLES } from '../model/nutrientRig.ts';
import { columnsRead } from '../model/parts.ts';
import { figure, sum } from './labels.ts';

const PARTS = ['herd', 'intake'];
const CALF_KG = 40;

describe(sum('energy for a calf of 40 kg, cow of 650 kg, by the gestation equation (from memory)'), () => {
  const rest = maintenanceMj(650, 0.322);
  it.each([
    ['a year from conception to after birth', 283, 365, 0.093],
    ['the last 180 days', 180, 180, central('referenceGestationFraction')],
    ['the last 90 days', 90, 90, 0.31],
  ])('%s', (_, calvingDay, days, expected) => {
    expect(gestationMj(CALF_KG, calvingDay, days) / rest).toBeCloseTo(expected, 2);
  });

  it('counts nothing before conception and after birth', () => {
    expect(gestationMj(CALF_KG, -1, 180)).toBe(0);
    expect(gestationMj(CALF_KG, 600, 180)).toBe(0);
    expect(gestationMj(CALF_KG, 90, 180) * 2).toBeCloseTo(gestationMj(CALF_KG, 90, 90), 9);
  });
});

it(figure('an empty cow of 544 kg needs 8.5 Mcal, at the end of gestation 14 (Ohio, calf of 35 kg)'), () => {
  const empty = maintenanceMj(544, 0.322) / 4.184;
  const term = empty + gestationMj(35, 10, 10) / 4.184;
  expect(empty).toBeGreaterThan(8.3);
  expect(empty).toBeLessThan(8.8);
  expect(term).toBeGreaterThan(13);
  expect(term).toBeLessThan(14.5);
});

/** One cow of 650 kg on a ration of 58 %, 180 days of which 15 are wet. */
const COW: Row = {
  herdFactor: 1,
  winterDays: 180,
  rainFactor: 1,
  group1HeadCount: 1,
  group1WeightKg: 650,
  group1PregnantShare: 1,
  feed1Share: 1,
  feed1DigestibilityFraction: 0.58,
};
const winter = evenWeather(
  -3,
  Array.from({ length: 15 }, () => ({ dayC: 2, rainMm: 6 })),
);

describe(sum('650 kg cow, shed and field'), () => {
  const given: Row = {
    ...COW,
    coldNoneForm: 0,
    coldAirForm: 0,
    pregnancyEnergyForm: 0,
    pregnancyEnergyFraction: 0.17,
    group1IntakeFraction: 0.03,
    lowerCriticalDryC: 0,
    lowerCriticalWetC: 15,
    coldNeedDryPerC: 0.018,
    coldNeedWetPerC: 0.036,
    windChillC: 0,
    wetCoatFraction: 1,
    wetDays: 18,
    mudTimeFraction: 1,
    mudNeedFraction: 0.15,
    activityPastureFraction: 0.09,
  };
  const [warm] = run(PARTS, { ...given, coldNeedDryPerC: 0 }, -3, winter);
  const [shed, field] = run(PARTS, [given, { ...given, paddockShare: 1 }], -3, winter);
  it.each([
    ['shed, cold not counted', warm, 9.333],
    ['shed, same dry air', shed, 9.728],
    ['field', field, 10.876],
  ])('%s', (_, out, expected) => {
    // The dry days of the sum are 165 of 180; the shed stands dry on the others too, at 2 °C.
    expect(out.dryMatterEatenKg / 180).toBeCloseTo(expected, 2);
  });
  it('cold adds 8.85 % of maintenance in the field, 4.95 % in the shed', () => {
    expect(field.coldNeedFraction).toBeCloseTo(0.0885, 6);
    expect(shed.coldNeedFraction).toBeCloseTo(0.0495, 6);
  });
});

describe(figure('48 Hereford cows of 741 kg outdoors in Finland (Manninen 2005, published)'), () => {
  // Metabolizable energy is 0.82 of digestible energy, as in the US tables.
  const energyMj = (dryMatterKg: number, digestibility: number) => dryMatterKg * 18.45 * digestibility * 0.82;
  it.each([-8, -3, 2])(
    'need at 72 % digestibility is 90 to 112 MJ ME a day, round the 97 to 109 fed, in air of %f °C',
    (airC) => {
      const [out] = run(
      PARTS,
      { ...COW, group1WeightKg: 741, feed1DigestibilityFraction: 0.72, paddockShare: 1, pregnancyEnergyForm: 1, winterTemperatureC: airC },
      airC,
    ); // biome-ignore format: one row
      expect(energyMj(out.dryMatterNeedKg / 180, 0.72)).toBeGreaterThan(90);
      expect(energyMj(out.dryMatterNeedKg / 180, 0.72)).toBeLessThan(112);
    },
  );

  it('crossbred cows of 490 kg fed 73 to 92 MJ indoors (Manninen and Taponen 2004): need lies there or below', () => {
    const [out] = run(
      PARTS,
      { ...COW, group1WeightKg: 490, feed1DigestibilityFraction: 0.68, winterTemperatureC: 2 },
      2,
    );
    const mj = energyMj(out.dryMatterNeedKg / 180, 0.68);
    expect(mj).toBeGreaterThan(55);
    expect(mj).toBeLessThan(92);
  });
});

describe(figure('outdoors against a shed'), () => {
  const places = (more: Row) => [
    { ...COW, ...more },
    { ...COW, ...more, paddockShare: 1 },
  ];
  const open = {
    windChillC: central('windChillC', 'open'),
    wetCoatFraction: central('wetCoatFraction', 'open'),
  };

  it('to appetite a cow outdoors eats at most 7 % more (US intake table) and ends thinner', () => {
    const [shed, field] = run(
      PARTS,
      places({ ...open, group1AppetiteShare: 1, winterTemperatureC: -3, wetDays: 18 }),
      -3,
      winter,
    );
    expect(field.dryMatterEatenKg / shed.dryMatterEatenKg).toBeGreaterThan(0.93);
    expect(field.dryMatterEatenKg / shed.dryMatterEatenKg).toBeLessThanOrEqual(1.07);
    expect(field.conditionKgPerHead).toBeLessThan(shed.conditionKgPerHead - 5);
  });

  it('heifers at −28 °C in Canada ate 21 to 26 % more hay for the same gain (Webster 1970): need rises by 10 to 50 %', () => {
    const heifer = {
      ...COW,
      group1WeightKg: 300,
      group1GainKgPerDay: 0.4,
      group1PregnantShare: 0,
      winterDays: 90,
    };
    const [control, cold] = run(
      PARTS,
      [
        { ...heifer, coldNoneForm: 1 },
        { ...heifer, coldNoneForm: 0, winterTemperatureC: -28 },
      ],
      -28,
    );
    const more = cold.dryMatterNeedKg / control.dryMatterNeedKg;
    expect(more).toBeGreaterThan(1.1);
    expect(more).toBeLessThan(1.5);
  });
});

it(
  sum('eating 1.8 % at 65 % digestibility for 180 days puts some 165 kg on a dry cow: it does not vanish'),
  () => {
    const [out] = run(
      PARTS,
      { ...COW, feed1DigestibilityFraction: 0.65, group1AppetiteShare: 1, appetiteRisePerC: 0, group1IntakeFraction: 0.018, coldNoneForm: 1, pregnancyEnergyForm: 0, pregnancyEnergyFraction: 0.17, conditionMjPerKg: 26 },
      10,
    ); // biome-ignore format: one row
    // (11.7 − 7.87 kg) × 18.45 × 0.65 × 0.514 ÷ 26 MJ × 180 d.
    expect(out.conditionKgPerHead).toBeGreaterThan(155);
    expect(out.conditionKgPerHead).toBeLessThan(175);
    expect(out.conditionLostKg).toBe(0);
  },
);

const range = (name: string) => {
  const row = TABLES.coefficients.get(name);
  if (!row) throw new Error(name);
  return row.unit === 'form'
    ? fc.constantFrom(0, 1)
    : fc.double({ min: row.low, max: row.high, noNaN: true, noDefaultInfinity: true });
};
const plain = columnsRead(PARTS).filter((name) => TABLES.coefficients.has(name));
const drawn = fc.record({
  ...Object.fromEntries(plain.map((name) => [name, range(name)])),
  windChillC: range('windChillC.open'),
  wetCoatFraction: range('wetCoatFraction.open'),
  mudTimeFraction: range('mudTimeFraction.weekly'),
}) as fc.Arbitrary<Row>;
const air = fc.record({ meanC: fc.integer({ min: -20, max: 12 }), wet: fc.integer({ min: 0, max: 90 }) });

it(
  sum('need: the same draw never asks more feed indoors than outdoors for the same group and weather'),
  () => {
    fc.assert(
      fc.property(drawn, air, ({ ...row }, { meanC, wet }) => {
        const days = Array.from({ length: wet }, () => ({ dayC: Math.max(1.5, meanC), rainMm: 12 }));
        const given = { ...COW, ...row, winterTemperatureC: meanC, wetDays: wet };
        const [shed, field] = run(
          PARTS,
          [
            { ...given, windChillC: 0, wetCoatFraction: 0 },
            { ...given, paddockShare: 1 },
          ],
          meanC,
          evenWeather(meanC, days),
        );
        expect(shed.dryMatterNeedKg).toBeLessThanOrEqual(field.dryMatterNeedKg);
        if (field.needUnmetKg === 0)
          expect(shed.dryMatterEatenKg).toBeLessThanOrEqual(field.dryMatterEatenKg);
      }),
      { numRuns: 60 },
    );
  },
);

it(
  sum('colder, wetter and muddier weather never asks less feed, and outdoors more in the middle of the rows'),
  () => {
    const field = (meanC: number, wet: number, mud: number) => {
      const days = Array.from({ length: wet }, () => ({ dayC: 2, rainMm: 12 }));
      const row = { ...COW, paddockShare: 1, winterTemperatureC: meanC, wetDays: mud, mudTimeFraction: 0.4 };
      const exposed = { windChillC: 3, wetCoatFraction: 0.7 };
      return run(PARTS, { ...row, ...exposed }, meanC, evenWeather(meanC, days))[0].dryMatterNeedKg;
    };
    expect(field(-8, 30, 30)).toBeGreaterThan(field(0, 30, 30));
    expect(field(0, 60, 30)).toBeGreaterThan(field(0, 30, 30));
    expect(field(0, 30, 60)).toBeGreaterThan(field(0, 30, 30));
  },
);

describe(
  sum('draws of the shipped notebooks: need outdoors against a shed, beside the rows of exposure'),
  () => {
    const DRAWS = 300;
    it.each(['hill-farm-choice', 'atlantic-rain-and-herd', 'coast-lender-case'])('%s', async (name) => {
      const path = fileURLToPath(new URL(`../../notebooks/${name}.md`, import.meta.url));
      const { run: opened } = await openNotebook(path);
      const { results } = drawAll(opened, { count: DRAWS, seed: 7, keep: ['dryMatterNeedKg'] });
      const at = (system: string) => opened.bound.findIndex(({ scenario }) => scenario.system === system);
      const need = (system: string, draw: number) =>
        results.dryMatterNeedKg[draw * opened.bound.length + at(system)];
      const ratios = Array.from({ length: DRAWS }, (_, k) => need('outwintered', k) / need('deep-bedded', k));
      ratios.sort((a, b) => a - b);
      const open = TABLES.coefficients.get('referenceOutdoorWetNeedFactor');
      expect(ratios[0]).toBeGreaterThan(1);
      expect(ratios[DRAWS / 2]).toBeGreaterThan(open?.low ?? Number.NaN);
      expect(ratios[DRAWS / 2]).toBeLessThan(open?.high ?? Number.NaN);
      expect(ratios[0.95 * DRAWS]).toBeLessThan(
        TABLES.coefficients.get('referenceMudNeedFactor')?.high ?? Number.NaN,
      );
    });
  },
);

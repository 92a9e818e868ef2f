import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bindingOf, CONTRARY_EVIDENCE } from '../../src/bedmix/binding.ts';
import { cheapestMix } from '../../src/bedmix/leastCost.ts';
import type { MixLimits, MixMaterial, MixQuestion, MixWeek } from '../../src/bedmix/lines.ts';
import { beddingQuestion } from '../../src/bedmix/question.ts';
import { MATERIALS } from '../../src/notebook/schema.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { scenarioOf, weatherOf } from '../farm.ts';
import { central } from '../model/bedCase.ts';
import { tables } from '../shippedTables.ts';

/** 1000 kg of cattle manure, 81 % moist, 45.6 % C and 2.4 % N (NRAES-54 1992, Table A.1, from memory). */
const manure: MixWeek = {
  days: 7,
  waterKg: 810,
  dryMatterKg: 190,
  carbonKg: 190 * 0.456,
  availableCarbonKg: 190 * 0.456 * 0.6,
  nitrogenKg: 190 * 0.024,
  evaporatedKg: 0,
  liquidKg: 0,
};
const loose: MixLimits = {
  moistureMost: 0.65,
  dryMatterLossFraction: 0,
  fieldFraction: 0.55,
  carbonNitrogenLeast: null,
  availableCarbonNitrogenLeast: null,
  depth: null,
  handledKgPerDay: null,
};
const barley: MixMaterial = {
  material: 'barleyStraw',
  stockKg: 5000,
  moistureFraction: 0.12,
  carbonFraction: 0.45,
  nitrogenFraction: 0.006,
  availableCarbonFraction: 0.5,
  absorbencyKgPerKg: 2.13,
  costPerTonne: 100,
};
const sawdust: MixMaterial = {
  ...barley,
  material: 'softwoodSawdust',
  moistureFraction: 0.39,
  carbonFraction: 0.5,
  nitrogenFraction: 0.00113,
  availableCarbonFraction: 0.12,
  absorbencyKgPerKg: 1.37,
};
const ask = (parts: Partial<MixQuestion> = {}) =>
  cheapestMix({ materials: [barley, sawdust], weeks: [manure], limits: loose, ...parts });
const found = (parts: Partial<MixQuestion> = {}) => {
  const answer = ask(parts);
  if (answer.status !== 'found')
    throw new Error(`no mix: ${answer.frees.map(({ words }) => words).join('; ')}`);
  return answer;
};
const impossible = (parts: Partial<MixQuestion>) => {
  const answer = ask(parts);
  if (answer.status !== 'impossible') throw new Error('there is a mix');
  return answer.frees;
};

describe('the cheapest mix', () => {
  // Solved by hand from the two-material equations (derived): both limits bind at 125.08 and 360.42 kg.
  it('sits in the corner where moisture and C:N both bind, as solved by hand', () => {
    const answer = found({ limits: { ...loose, carbonNitrogenLeast: 45 } });
    expect(answer.weeks[0].kg[0]).toBeCloseTo(125.08, 1);
    expect(answer.weeks[0].kg[1]).toBeCloseTo(360.42, 1);
    expect(answer.cost).toBeCloseTo((125.08 + 360.42) * 0.1, 2);
    expect(answer.weeks[0].moisture).toBeCloseTo(0.65, 6);
    expect(answer.weeks[0].carbonNitrogen).toBeCloseTo(45, 5);
    expect([...answer.binding].sort()).toEqual(['carbonNitrogen', 'moisture']);
  });

  it('is one material when one limit binds, the one that meets it for least money', () => {
    // For 65 %: 301.9 kg of straw at 12 %, or 615.4 kg of sawdust at 39 %; straw wins until it costs 2.04 as much.
    expect(found().weeks[0].kg[0]).toBeCloseTo((1000 * 0.16) / 0.53, 4);
    expect(found().binding).toEqual(['moisture']);
    const dear = found({ materials: [{ ...barley, costPerTonne: 210 }, sawdust] });
    expect(dear.weeks[0].kg[0]).toBe(0);
    expect(dear.weeks[0].kg[1]).toBeCloseTo((1000 * 0.16) / 0.26, 4);
  });

  it('counts drying and rotting as the bed does', () => {
    // A 650 kg cow a day on 7 m²: 8.64 kg of straw at 14 % for 70 % moisture (worked by hand, derived).
    const day: MixWeek = { ...manure, waterKg: 35.28, dryMatterKg: 4.62, evaporatedKg: 14 };
    const limits = { ...loose, moistureMost: 0.7, dryMatterLossFraction: 0.2 };
    const answer = found({ materials: [{ ...barley, moistureFraction: 0.14 }], weeks: [day], limits });
    expect(answer.weeks[0].kg[0]).toBeCloseTo(8.64, 2);
  });

  it('shares the stock over the weeks and fills up with the dearer material', () => {
    const answer = found({
      weeks: [manure, manure, manure],
      materials: [
        { ...barley, stockKg: 600 },
        { ...sawdust, costPerTonne: 90 },
      ],
    });
    expect(answer.tonnes[0]).toBeCloseTo(0.6, 6);
    expect(answer.tonnes[1]).toBeGreaterThan(0);
    expect(answer.binding).toContain('stock.barleyStraw');
    for (const week of answer.weeks) expect(week.moisture).toBeLessThanOrEqual(0.65 + 1e-6);
  });

  it('lays bedding to soak up urine even where the bed is dry enough', () => {
    const answer = found({ limits: { ...loose, moistureMost: 0.9 }, weeks: [{ ...manure, liquidKg: 300 }] });
    expect(answer.weeks[0].kg[0]).toBeCloseTo(300 / (2.13 * 0.55), 4);
    expect(answer.binding).toEqual(['absorbency']);
  });

  it('lays nothing where nothing is needed', () => {
    expect(found({ limits: { ...loose, moistureMost: 0.9 } }).cost).toBe(0);
  });

  it('needs far more chips by available carbon than by total carbon', () => {
    const chips: MixMaterial = {
      ...sawdust,
      material: 'softwoodChips',
      moistureFraction: 0.3,
      carbonFraction: 0.5769,
      nitrogenFraction: 0.0009,
      availableCarbonFraction: 0.08,
    };
    const only = (limits: Partial<MixLimits>) =>
      found({ materials: [chips], limits: { ...loose, moistureMost: 0.95, ...limits } }).weeks[0].kg[0];
    // Worked by hand (derived): 130.3 kg give total C:N 30; 1111 kg the available C:N 16.71 of straw at 30.
    expect(only({ carbonNitrogenLeast: 30 })).toBeCloseTo(130.3, 0);
    expect(only({ availableCarbonNitrogenLeast: 16.71 }) / 1111).toBeCloseTo(1, 2);
  });
});

describe('a mix that cannot be', () => {
  it('says how much more of a material would do, and what else would give', () => {
    const frees = impossible({
      materials: [
        { ...barley, stockKg: 100 },
        { ...sawdust, stockKg: 100 },
      ],
    });
    const by = Object.fromEntries(frees.map((freed) => [freed.limit, freed]));
    expect(Object.keys(by).sort()).toEqual(['moisture', 'stock.barleyStraw', 'stock.softwoodSawdust']);
    // 160 kg to soak away: 0.26 × 100 by sawdust, the rest by straw at 0.53 a kg.
    expect(by['stock.barleyStraw'].needed).toBeCloseTo((160 - 26) / 0.53 / 1000, 5);
    expect(by['stock.softwoodSawdust'].needed).toBeCloseTo((160 - 53) / 0.26 / 1000, 5);
    expect(by.moisture.needed).toBeCloseTo((810 + 12 + 39) / 1200, 5);
    expect(by.moisture.words).toContain('71.8 %');
    for (const freed of frees) expect(freed.together).toBe(false);
  });

  it('names the day of work when that is what is short', () => {
    const frees = impossible({ limits: { ...loose, handledKgPerDay: 20 } });
    expect(frees.map(({ limit }) => limit).sort()).toEqual(['handling', 'moisture']);
    expect(frees.find(({ limit }) => limit === 'handling')?.needed).toBeCloseTo(160 / 0.53 / 7, 4);
  });

  it('names a C:N no material can reach', () => {
    const frees = impossible({ materials: [barley], limits: { ...loose, carbonNitrogenLeast: 90 } });
    expect(frees.map(({ limit }) => limit)).toEqual(['carbonNitrogen']);
    expect(frees[0].needed).toBeLessThan(75);
  });

  it('names several limits together when none is enough alone', () => {
    const frees = impossible({
      materials: [{ ...barley, stockKg: 10 }],
      limits: { ...loose, carbonNitrogenLeast: 90, handledKgPerDay: 1 },
    });
    expect(frees.length).toBeGreaterThan(1);
    expect(frees.every(({ together }) => together)).toBe(true);
  });

  it('has no mix of nothing', () => {
    expect(impossible({ materials: [] }).map(({ limit }) => limit)).toEqual(['moisture']);
  });
});

const material = fc.record({
  moistureFraction: fc.integer({ min: 5, max: 50 }).map((v) => v / 100),
  carbonFraction: fc.integer({ min: 40, max: 55 }).map((v) => v / 100),
  nitrogenFraction: fc.integer({ min: 5, max: 150 }).map((v) => v / 10_000),
  availableCarbonFraction: fc.integer({ min: 5, max: 60 }).map((v) => v / 100),
  absorbencyKgPerKg: fc.integer({ min: 5, max: 80 }).map((v) => v / 10),
  costPerTonne: fc.integer({ min: 0, max: 300 }),
  stockKg: fc.integer({ min: 50, max: 3000 }),
});

describe('any mix', () => {
  it('costs no more than any one material that meets every limit, and keeps every limit', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.array(material, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 60, max: 80 }),
        fc.integer({ min: 20, max: 40 }),
        fc.integer({ min: 0, max: 200 }),
        (items, moisture, ratio, liquidKg) => {
          const materials = items.map((item, k): MixMaterial => ({ ...item, material: `m${k}` }));
          const limits = { ...loose, moistureMost: moisture / 100, carbonNitrogenLeast: ratio };
          const weeks = [{ ...manure, liquidKg }];
          const answer = cheapestMix({ materials, weeks, limits });
          const waterPerDry = limits.moistureMost / (1 - limits.moistureMost);
          for (const m of materials) {
            // The least of this one material by hand, limit by limit.
            const by = [
              [810 - waterPerDry * 190, waterPerDry * (1 - m.moistureFraction) - m.moistureFraction],
              [liquidKg, m.absorbencyKgPerKg * 0.55],
              [
                ratio * manure.nitrogenKg - manure.carbonKg,
                (1 - m.moistureFraction) * (m.carbonFraction - ratio * m.nitrogenFraction),
              ],
            ].map(([short, perKg]) =>
              short <= 0 ? 0 : perKg > 0 ? short / perKg : Number.POSITIVE_INFINITY,
            );
            const kg = Math.max(...by);
            if (kg > m.stockKg) continue;
            compared++;
            expect(answer.status).toBe('found');
            if (answer.status === 'found')
              expect(answer.cost).toBeLessThanOrEqual((kg * m.costPerTonne) / 1000 + 1e-6);
          }
          if (answer.status !== 'found') {
            expect(answer.frees.length).toBeGreaterThan(0);
            return;
          }
          const [week] = answer.weeks;
          expect(week.moisture).toBeLessThanOrEqual(limits.moistureMost + 1e-6);
          expect(week.carbonNitrogen).toBeGreaterThanOrEqual(ratio - 1e-5);
          week.kg.forEach((kg, k) => {
            expect(kg).toBeGreaterThanOrEqual(0);
            expect(kg).toBeLessThanOrEqual(materials[k].stockKg + 1e-6);
          });
        },
      ),
      { numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(50);
  });
});

describe('what a bedding binds', () => {
  const rows = MATERIALS.map((name) => ({
    material: name as string,
    moistureFraction: central(`materialMoistureFraction.${name}`),
    carbonFraction: central(`materialCarbonFraction.${name}`),
    nitrogenFraction: central(`materialNitrogenFraction.${name}`),
    availableCarbonFraction: central(`materialAvailableCarbonFraction.${name}`),
    immobilisationKgPerKg: central(`materialImmobilisationKgPerKg.${name}`),
  }));
  const binds = new Map(
    bindingOf(rows, { yieldFraction: 0.35, carbonNitrogen: 8 }).map((b) => [b.material, b]),
  );

  it('is never more than total carbon suggests', () => {
    for (const b of binds.values())
      expect(b.byAvailableCarbonKgPerTonne).toBeLessThanOrEqual(b.byTotalCarbonKgPerTonne);
  });

  it('is a small part of what total C:N suggests for softwood chips, and a third or more for straw', () => {
    const share = (name: string) => {
      const b = binds.get(name);
      return b ? b.byAvailableCarbonKgPerTonne / b.byTotalCarbonKgPerTonne : Number.NaN;
    };
    expect(share('softwoodChips')).toBeLessThan(0.1);
    expect(share('barleyStraw')).toBeGreaterThan(0.33);
  });

  it('stands beside the evidence against it', () => {
    expect(CONTRARY_EVIDENCE).toContain('Hao, Chang and Larney (2004)');
    expect(CONTRARY_EVIDENCE).toMatch(/11\.8 %.*41\.6 %/);
  });
});

describe('the bedding question of a scenario', () => {
  const materials = [
    { material: 'barleyStraw', tonnes: 55, pricePerTonne: 90 },
    { material: 'softwoodChips', tonnes: 60, own: true, moistureFraction: 0.3, machineHoursPerTonne: 0.5 },
    { material: 'peat', tonnes: 5 },
  ];
  const run = evaluate(
    { scenarios: [scenarioOf('outwintered'), scenarioOf('deep-bedded', {}, { materials })], overrides: [] },
    tables,
    () => weatherOf(),
  );
  const question = beddingQuestion(run, 1);
  const values = run.results[1].values;

  it('is none where there is no bed', () => {
    expect(beddingQuestion(run, 0)).toBeNull();
  });

  it('asks about all that falls on the bed in the winter, and nothing of its bedding', () => {
    const dry = question?.weeks.reduce((sum, week) => sum + week.dryMatterKg, 0) ?? Number.NaN;
    const days = question?.weeks.reduce((sum, week) => sum + week.days, 0);
    expect(days).toBe(values.winterDays);
    expect(dry).toBeCloseTo((values.packDryMatterInKg ?? 0) - (values.dryMatterMaterialKg ?? 0), 6);
  });

  it('prices own hours at what labour is worth, and bought material as paid or as the table says', () => {
    const cost = new Map(question?.materials.map((m) => [m.material, m.costPerTonne]));
    expect(cost.get('barleyStraw')).toBe(90);
    expect(cost.get('softwoodChips')).toBe(0.5 * 15);
    expect(cost.get('peat')).toBe(tables.prices.get('EUR')?.get('materialPricePerTonne.peat')?.central);
    expect(question?.unpriced).toEqual([]);
  });

  it('takes overrides and own limits', () => {
    const own = beddingQuestion(run, 1, [{ id: 'mixMoistureMost', value: 0.6, because: 'a test' }], {
      handledKgPerDay: 250,
    });
    expect(own?.limits.moistureMost).toBe(0.6);
    expect(own?.limits.handledKgPerDay).toBe(250);
  });

  it('has an answer that keeps the bed within its limits all winter', () => {
    const answer = question && cheapestMix(question);
    if (answer?.status !== 'found') throw new Error('no mix');
    expect(answer.weeks).toHaveLength(question?.weeks.length ?? 0);
    for (const week of answer.weeks) {
      expect(week.moisture).toBeLessThanOrEqual((question?.limits.moistureMost ?? 0) + 1e-6);
      expect(week.availableCarbonNitrogen).toBeGreaterThanOrEqual(
        (question?.limits.availableCarbonNitrogenLeast ?? 99) - 1e-6,
      );
    }
    expect(answer.cost).toBeCloseTo(
      answer.tonnes.reduce((sum, tonnes, k) => sum + tonnes * (question?.materials[k].costPerTonne ?? 0), 0),
      6,
    );
  });
});

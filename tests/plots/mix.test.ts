import { describe, expect, it } from 'vitest';
import { cheapestMix } from '../../src/bedmix/leastCost.ts';
import type { MixMaterial, MixWeek } from '../../src/bedmix/lines.ts';
import { type BeddingQuestion, missingIn } from '../../src/bedmix/question.ts';
import {
  bindingWords,
  mixBeside,
  mixDecides,
  mixFigure,
  mixFinding,
  mixFrees,
  mixSpells,
  unpricedWords,
} from '../../src/plots/mix.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
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
const day: MixWeek = {
  ...manure,
  days: 1,
  waterKg: 810 / 7,
  dryMatterKg: 190 / 7,
  carbonKg: manure.carbonKg / 7,
  availableCarbonKg: manure.availableCarbonKg / 7,
  nitrogenKg: manure.nitrogenKg / 7,
};
const straw: MixMaterial = {
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
  ...straw,
  material: 'softwoodSawdust',
  own: true,
  moistureFraction: 0.39,
  carbonFraction: 0.5,
  nitrogenFraction: 0.00113,
  availableCarbonFraction: 0.12,
  absorbencyKgPerKg: 1.37,
};
const question = (parts: Partial<BeddingQuestion> = {}): BeddingQuestion => ({
  materials: [straw, sawdust],
  weeks: [manure, manure, day],
  limits: {
    moistureMost: 0.65,
    dryMatterLossFraction: 0,
    fieldFraction: 0.55,
    carbonNitrogenLeast: 45,
    availableCarbonNitrogenLeast: null,
    depth: null,
    handledKgPerDay: null,
  },
  binds: [
    { material: 'barleyStraw', byTotalCarbonKgPerTonne: 12, byAvailableCarbonKgPerTonne: 5.9 },
    { material: 'softwoodChips', byTotalCarbonKgPerTonne: 13.6, byAvailableCarbonKgPerTonne: 0.98 },
  ],
  unpriced: [],
  ...parts,
});
const figureOf = (asked: BeddingQuestion) => mixFigure(asked, cheapestMix(asked), 'Bed', reading);

describe('the bed as it is written, beside the cheapest', () => {
  const asked = (asWritten: readonly number[] | null, parts: Partial<BeddingQuestion> = {}) => {
    const whole = question({ asWritten, hoursPerTonne: [0, 2], chipMoistureMost: 0.3, ...parts });
    return { whole, answer: cheapestMix(whole), said: mixBeside(whole, cheapestMix(whole), 'Bed', reading) };
  };
  it('tells its kilograms and cost by the same sums, and each limit it does not keep', () => {
    // 20 kg of straw a day at 100 a tonne: 14 a week (own arithmetic); too little to dry 810 kg of water to 65 %.
    expect(asked([20, 0]).said).toEqual([
      'As the notebook has it, “Bed” takes 20 kg a day at EUR 14 a week by the same sums, and does not keep the limits of how wet the bed may be and C:N.',
    ]);
    const { answer } = asked(null);
    if (answer.status !== 'found') throw new Error('no mix');
    const days = 15;
    const { said } = asked(answer.tonnes.map((t) => (1000.1 * t) / days));
    expect(said[0]).toContain('keeps within the limits as well');
    expect(asked(null).said).toEqual([]);
  });
  it('says the own hours that are in the cost', () => {
    const { whole, answer } = asked(null);
    if (answer.status !== 'found') throw new Error('no mix');
    // Two hours a tonne of sawdust.
    const hours = ((7 / 15) * answer.tonnes[1] * 2).toPrecision(2);
    expect(mixFinding(whole, answer, 'Bed', reading)).toContain(`, ${Number(hours)} h of own work in it`);
    expect(mixFinding({ ...whole, hoursPerTonne: [0, 0] }, answer, 'Bed', reading)).not.toContain('own work');
  });
  it('says that chips are wetter than the check lets make a bed', () => {
    const chips = { ...sawdust, material: 'softwoodChips' };
    expect(asked(null, { materials: [straw, chips] }).said.join()).toContain(
      'at 39 % moisture; wetter than 30 % they do not make a bed',
    );
    expect(asked(null, { materials: [straw, { ...chips, moistureFraction: 0.25 }] }).said).toEqual([]);
    expect(asked(null).said).toEqual([]);
  });
});

describe('the cheapest mix in words', () => {
  // The corner solved by hand in tests/explore/mix.test.ts (derived): 125.08 kg of straw, 360.42 kg of sawdust a week.
  it('names the shares by weight and the cost of a week', () => {
    expect(figureOf(question()).finding).toMatch(
      /^Cheapest bed within the limits: 74 % own softwood sawdust, 26 % barley straw, EUR 48\.[56] a week\.$/,
    );
  });

  it('says what decides it, and what is used up', () => {
    expect(mixDecides(cheapestMix(question()))).toBe('Only how wet the bed may be and C:N decide it.');
    const short = question({
      materials: [
        { ...straw, stockKg: 150 },
        { ...sawdust, costPerTonne: 300 },
      ],
    });
    expect(mixDecides(cheapestMix(short))).toContain('all the barley straw within reach is used up.');
  });

  it('says so where no bedding is needed, no bed is there, or nothing has a price', () => {
    const easy = question({
      limits: { ...question().limits, moistureMost: 0.95, carbonNitrogenLeast: null },
    });
    expect(figureOf(easy).finding).toContain('without any bedding');
    expect(mixFinding(null, null, 'Paddock', reading)).toBe('“Paddock” has no bed to lay bedding on.');
    const none = question({ materials: [], unpriced: ['peat', 'hempShives'] });
    expect(figureOf(none).finding).toContain('no material within reach has a price');
    expect(unpricedWords(none)).toMatch(/: peat and hemp shives\. Give pricePerTonne/);
    expect(figureOf(none).draw).toBeNull();
  });

  it('names what stands in the way and what would free it', () => {
    const short = question({ materials: [{ ...straw, stockKg: 20 }] });
    const answer = cheapestMix(short);
    if (answer.status !== 'impossible') throw new Error('there is a mix');
    const finding = mixFinding(short, answer, 'Bed', reading);
    expect(finding).toMatch(
      /^No mix of what lies in reach keeps the bed of “Bed” within its limits all winter/,
    );
    expect(mixFrees(answer.frees)).toHaveLength(answer.frees.length);
    for (const words of mixFrees(answer.frees)) expect(words).toMatch(/^[A-Z].*\.$/);
  });

  it('sets what chips bind beside what their C:N suggests', () => {
    const told = bindingWords(question(), reading);
    expect(told?.sentence).toContain('softwood chips would bind 14 kg/t');
    expect(told?.sentence).toContain('0.98 kg/t');
    expect(told?.rows).toHaveLength(2);
  });
});

describe('the figure', () => {
  it('puts weeks together that are alike day by day, a short last one too', () => {
    const answer = cheapestMix(question());
    if (answer.status !== 'found') throw new Error('no mix');
    const spells = mixSpells(question(), answer);
    expect(spells.map(({ from, to, days }) => [from, to, days])).toEqual([[1, 3, 15]]);
    expect(spells[0].kgPerDay[0]).toBeCloseTo(125.08 / 7, 2);
  });

  it('parts weeks that are not', () => {
    const wet = { ...manure, waterKg: 1000 };
    const asked = question({ weeks: [manure, manure, wet] });
    const { head } = figureOf(asked).table;
    expect(head).toEqual(['', 'weeks 1 to 2', 'week 3']);
  });

  it('has a table whose cost and stock agree with the answer', () => {
    const { rows } = figureOf(question()).table;
    const row = (start: string) => rows.find(([heading]) => heading.startsWith(start))?.[1];
    expect(row('Cost')).toMatch(/^EUR 48\.[56]$/);
    expect(row('Moisture')).toBe('65 %');
    expect(row('C:N')).toBe('45.0');
    // 5000 kg less 15 days of 125.08 kg a week.
    expect(row('Barley straw left')).toBe('4.73');
  });

  it('draws bars as wide as their kilograms', () => {
    const figure = figureOf(question());
    const svg = figure.markup?.(600) ?? '';
    const widths = [...svg.matchAll(/<rect x="[\d.]+" y="22" width="([\d.]+)"/g)].map((m) => Number(m[1]));
    expect(widths).toHaveLength(2);
    expect(widths[1] / widths[0]).toBeCloseTo(360.42 / 125.08, 1);
    expect(svg).not.toContain('NaN');
  });
});

describe('a question', () => {
  it('that lacks a number says which', () => {
    expect(missingIn(question())).toEqual([]);
    expect(missingIn(question({ materials: [{ ...straw, carbonFraction: Number.NaN }] }))).toEqual([
      'carbonFraction of barleyStraw',
    ]);
  });
});

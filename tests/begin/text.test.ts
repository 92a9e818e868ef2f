import { describe, expect, it } from 'vitest';
import { STEPS } from '../../src/begin/answers.ts';
import { newNotebook } from '../../src/begin/begin.ts';
import { followsOf } from '../../src/begin/follows.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { formatQuantity } from '../../src/units/format.ts';
import { tables } from '../shippedTables.ts';
import { begun, setting, starts } from './setting.ts';

const made = (answers = {}, home = 'IE') => newNotebook(begun(answers, home), setting);
const WET_CLAY = {
  herd: [
    { class: 'sucklerCow', head: '22' },
    { class: 'bull', head: '1' },
  ],
  ground: { texture: 'clay', landHa: '30' },
};

describe('the text', () => {
  it('holds every answer, and marks each start as one', async () => {
    const { text } = await made({
      ...WET_CLAY,
      place: { name: 'Oak: "the" farm # 1' },
      money: { strawPerTonne: '180' },
    });
    expect(text).toContain('soil: { texture: clay }\n');
    expect(text).toContain(
      'land: { receivingHa: 30, crop: grassCut1, nitrateZone: true } # crop, nitrateZone: a start',
    );
    expect(text).toContain('labourPerHour: 17 # a start, put your own');
    expect(text).toContain('materialPricePerTonne.wheatStraw: { value: 180');
    const { notebook } = readNotebook(text, 'x.md');
    expect(notebook?.farm.place.name).toBe('Oak: "the" farm # 1');
    expect(notebook?.invented).toBe(false);
    // What a keeper typed never stands in the words, where it could be taken for something else.
    expect(text.slice(text.indexOf('\n# How'))).not.toContain('Oak');
    const { text: paid } = await made({
      ...WET_CLAY,
      money: { labourPerHour: '21', currency: 'EUR', interestRate: '4' },
    });
    expect(paid).toContain('money: { currency: EUR, year: 2024, labourPerHour: 21, interestRate: 0.04 }\n');
  });

  it('shows in each step what its own notebook gives, by the same model', async () => {
    const { text, run, plan } = await made({ ...WET_CLAY, money: { loan: '50000' } });
    const { notebook } = readNotebook(text, 'apart.md');
    if (!notebook || !run) throw new Error('no notebook');
    const { winterOf } = await setting.winters(notebook);
    const apart = evaluate(notebook, tables, winterOf).results;
    const shown = Array.from({ length: STEPS }, (_, step) =>
      followsOf(step, { text, run, plan, problems: [] }),
    );
    const value = (step: number, label: string) =>
      shown[step]?.rows.find((row) => row.label === label)?.values;
    expect(value(0, 'winter')).toEqual(['155 d']);
    expect(value(1, 'nitrogen excreted')).toEqual([formatQuantity(apart[0].values.nitrogenExcretedKg, 'kg')]);
    expect(value(4, 'bedding, as it lies')?.[1]).toBe(formatQuantity(apart[2].values.beddingTonnes, 't'));
    expect(value(5, 'yearly cost less value kept, EUR')).toEqual(
      apart.map(({ values }) => formatQuantity(values.netCost, 'money').replace('money ', '')),
    );
    for (const step of shown) expect(step?.rows.length).toBeGreaterThan(2);
  });

  it('buys the bedding the bed needs, and no more than lies there where tonnes are given', async () => {
    const need = (run: Awaited<ReturnType<typeof made>>['run']) => run?.results[2].values.beddingTonnes ?? 0;
    const bought = await made(WET_CLAY);
    const straw = readNotebook(bought.text, 'x.md').notebook?.farm.materials[0].tonnes ?? 0;
    expect(straw - need(bought.run)).toBeGreaterThanOrEqual(0);
    expect(straw - need(bought.run)).toBeLessThan(1.5);
    const mixed = await made({
      ...WET_CLAY,
      materials: [{ material: 'wheatStraw' }, { material: 'softwoodChips', tonnes: '12', own: 'yes' }],
    });
    const farm = readNotebook(mixed.text, 'x.md').notebook?.farm.materials;
    expect(farm?.[1]).toMatchObject({ material: 'softwoodChips', tonnes: 12, own: true });
    const all = (farm ?? []).reduce((sum, { tonnes }) => sum + tonnes, 0);
    expect(Math.abs(all - need(mixed.run))).toBeLessThan(need(mixed.run) * 0.1 + 1.5);
  });

  it('draws sheds that no check of room, slats, water or tank stops, in every country', async () => {
    const ids = [
      'shedHoldsAnimals',
      'lyingArea',
      'totalArea',
      'slattedArea',
      'slatsFit',
      'dryBedArea',
      'feedPlaces',
    ];
    const held = [
      ...ids,
      'passBehind',
      'waterPoints',
      'calvingPens',
      'slurryStore',
      'bedMoisture',
      'beddingStock',
    ];
    const herds = [
      [
        { class: 'sucklerCow', head: '22' },
        { class: 'bull', head: '1' },
      ],
      [
        { class: 'sucklerCow', head: '60', hornedShare: '1' },
        { class: 'heifer', head: '14' },
        { class: 'calf', head: '20' },
      ],
      [{ class: 'finisher', head: '80', weightKg: '600' }],
    ];
    for (const country of starts.keys()) {
      if (country === 'all') continue;
      for (const herd of herds) {
        const { run } = await made({ herd }, country);
        const stops = run?.results.flatMap(({ name, checks }) =>
          checks
            .filter(({ id, status }) => held.includes(id) && status === 'stop')
            .map(({ id, words }) => `${name} ${id}: ${words}`),
        );
        expect(stops, country).toEqual([]);
      }
    }
  }, 240_000);

  it('begins, with nothing answered, with three ways that no check stops but the law of the country', async () => {
    const law: Readonly<Record<string, readonly string[]>> = { SE: ['outdoorShelter', 'slattedCowsSweden'] };
    for (const country of starts.keys()) {
      if (country === 'all') continue;
      const { run } = await made({}, country);
      const stops = run?.results.flatMap(({ checks }) =>
        checks.filter(({ status }) => status === 'stop').map(({ id }) => id),
      );
      expect(stops, country).toEqual(law[country] ?? []);
    }
  }, 120_000);

  it('strews more only where the usual bedding would leave the bed too wet, and says so', async () => {
    const wet = await made({}, 'NO');
    const usual = wet.run?.results[2].values.beddingDailyKgPer100Kg ?? 0;
    const rate = Number(/rateKgPer100Kg: ([\d.]+) # more than usual/.exec(wet.text)?.[1]);
    expect(rate).toBeGreaterThan(0.86);
    expect(rate).toBeLessThanOrEqual(2);
    expect(usual).toBeCloseTo(rate, 9);
    expect((await made({}, 'IE')).text).not.toContain('rateKgPer100Kg');
  });

  it('leaves a standing shed its size and its cost', async () => {
    const { text, run } = await made({ ...WET_CLAY, there: { shed: 'bed', lengthM: '24', depthM: '9' } });
    const bed = run?.results[2];
    expect(bed?.scenario.shed).toMatchObject({ lengthM: 24, depthM: 9 });
    expect(bed?.values.capitalCost).toBe(0);
    expect(text.replace(/\s+/g, ' ')).toContain('The shed for the bed stood already');
    expect(text).not.toContain('capitalCost of Deep bed');
    expect(run?.results[1].values.capitalCost).toBeGreaterThan(0);
  });
});

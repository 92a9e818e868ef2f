import { describe, expect, it } from 'vitest';
import { differences, differencesFromFarm } from '../../src/notebook/differences.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { setInput } from '../../src/notebook/write.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const read = (text: string) => readNotebook(text, 'x.md').notebook as Notebook;
const bedWith = (path: string, value: Parameters<typeof setInput>[2]) =>
  read(setInput(SMALL, path, value)).scenarios[1];
const bed = read(SMALL).scenarios[1];

describe('differences in words', () => {
  it('are none between a scenario and itself, whatever it is called', () => {
    expect(differences(bed, bed)).toEqual([]);
    expect(differences(bed, { ...bed, name: 'Other', because: 'Another reason' })).toEqual([]);
  });

  it('say label, both sides and unit', () => {
    const says = (path: string, value: Parameters<typeof setInput>[2]) =>
      differences(bed, bedWith(path, value)).map((d) => d.words);
    expect(says('scenarios.1.bed.rateKgPer100Kg', 1.6)).toEqual([
      'bedding a day per 100 kg live weight: 1.3 kg against 1.6 kg',
    ]);
    expect(says('scenarios.1.farm.weather.rainFactor', 1.3)).toEqual([
      'rain against this weather: 1 × against 1.3 ×',
    ]);
    expect(says('scenarios.1.farm.herd.0.head', 20)).toEqual(['head of group 1: 16 head against 20 head']);
    expect(says('scenarios.1.compost.cover', 'open')).toEqual(['compost, cover: covered against open']);
    expect(says('scenarios.1.finance.loans', [{ name: 'bank', amount: 1000, rate: 0.05, years: 5 }])).toEqual(
      ['finance, loans: none against bank 1000'],
    );
    expect(says('scenarios.1.finance.capital', 90000)).toEqual([
      'capital given: none given against 90000 money',
    ]);
    expect(
      says('scenarios.1.bed.mix', [
        { material: 'barleyStraw', share: 0.5 },
        { material: 'softwoodChips', share: 0.5 },
      ]),
    ).toEqual(['bed, mix: barleyStraw 100 % against barleyStraw 50 %, softwoodChips 50 %']);
  });

  it('from the farm hold only what the scenario changes of it', () => {
    const { farm, scenarios } = read(setInput(SMALL, 'scenarios.1.farm.land.receivingHa', 12));
    expect(scenarios.map((s) => differencesFromFarm(farm, s).map((d) => d.words))).toEqual([
      [],
      ['ground for manure or compost: 20 ha against 12 ha'],
    ]);
  });

  it('between systems name the system by its label', () => {
    const [paddock] = read(SMALL).scenarios;
    expect(differences(paddock, bed).map((d) => d.words)).toContain(
      'system: out on pasture against deep bed that becomes compost',
    );
  });

  it('can be said of all shipped scenarios', () => {
    for (const { text } of shipped) {
      const { scenarios } = read(text);
      for (const a of scenarios)
        for (const b of scenarios) expect(differences(a, b).length > 0).toBe(a !== b);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { addScenario } from '../../src/notebook/scenarioEdits.ts';
import { SYSTEM_NAMES, type System } from '../../src/notebook/systems.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { newScenario } from '../../src/whatif/newScenario.ts';
import { winterOf } from '../farm.ts';
import { shipped } from '../notebook/shipped.ts';
import { SMALL } from '../notebook/small.ts';
import { tables } from '../shippedTables.ts';

const winter = winterOf(3);

function read(text: string) {
  const { notebook, problems } = readNotebook(text, 'n.md');
  expect(problems).toEqual([]);
  if (!notebook) throw new Error('cannot be read');
  return notebook;
}

/** The text with the scenario in it, and what the model makes of that one. */
function added(text: string, system: System, toHerd = true) {
  const notebook = read(text);
  const { scenario, said } = newScenario(
    { notebook, tables, winterOf: () => winter },
    system,
    'New one',
    toHerd,
  );
  const edited = addScenario({ text, file: 'n.md', read: readNotebook }, scenario);
  if ('refused' in edited) throw new Error(JSON.stringify(edited.refused));
  const next = read(edited.text);
  const result = evaluate(next, tables, () => winter).results.at(-1);
  if (!result) throw new Error('no result');
  return { result, said, scenario: next.scenarios[next.scenarios.length - 1] };
}

const ROOM = [
  'lyingArea',
  'totalArea',
  'slattedArea',
  'slatsFit',
  'dryBedArea',
  'feedPlaces',
  'shedHoldsAnimals',
];

describe('a new scenario', () => {
  it.each(shipped)('is sized to the herd of $file in each system', ({ text }) => {
    for (const system of SYSTEM_NAMES) {
      const { result, said, scenario } = added(text, system);
      expect(result.checks.filter(({ id, status }) => ROOM.includes(id) && status === 'stop')).toEqual([]);
      expect(result.values.netCost).not.toBeNaN();
      if (system === 'outwintered') expect(said).toContain('ha of pasture');
      else expect(said).toContain(`${scenario.shed.lengthM} × ${scenario.shed.depthM} m for`);
    }
  });

  it.each([1, 7, 60, 150])('keeps the limits of room for %i cows, and what the site asks for', (head) => {
    const text = SMALL.replace('head: 16', `head: ${head}`).replace(
      'bed: { mix',
      'shed: { lengthM: 24, depthM: 10, snowLoadKnPerM2: 3.5, frostDepthM: 1.4 }\n    bed: { mix',
    );
    for (const system of ['slatted', 'deep-bedded'] as const) {
      const { result, scenario } = added(text, system);
      expect(result.checks.filter(({ id, status }) => ROOM.includes(id) && status === 'stop')).toEqual([]);
      expect(scenario.shed).toMatchObject({ snowLoadKnPerM2: 3.5, frostDepthM: 1.4 });
      // By hand from the rows for horned cattle: 0.9 m of barrier a head; 8 m² of bed a cow, 1.23 m² per 100 kg of bull.
      expect(scenario.shed.lengthM).toBeGreaterThanOrEqual((head + 1) * 0.9);
      if (system === 'deep-bedded') {
        const bedM2 = scenario.shed.lengthM * (scenario.shed.depthM - scenario.shed.stanceDepthM);
        // The bull of 950 kg has no horns here: 1 m² per 100 kg.
        expect(bedM2 - scenario.shed.calvingPensM2).toBeGreaterThanOrEqual(head * 8 + 9.5 - 1e-9);
      }
      // In whole bays of 4.8 m.
      expect((scenario.shed.lengthM / 4.8) % 1).toBeCloseTo(0, 6);
    }
  });

  it('is left as it is drawn where that is asked for, and says so', () => {
    const { scenario, said } = added(SMALL.replace('head: 16', 'head: 60'), 'slatted', false);
    expect(scenario.shed.lengthM).toBe(19.2);
    expect(said).toContain('as drawn for 20 cows');
  });

  it('beds with the straw the farm has, and is refused in plain words where it has nothing', () => {
    expect(added(SMALL, 'deep-bedded').scenario.bed.mix).toEqual([{ material: 'barleyStraw', share: 1 }]);
    const bare = SMALL.replace(/ {2}materials:[\s\S]*?30 }\n/, '')
      .replace(/ {2}# the one we hope for[\s\S]*?share: 1 }\] }\n/, '')
      .replace(' of Deep bed', '');
    const notebook = read(bare);
    const { scenario } = newScenario(
      { notebook, tables, winterOf: () => winter },
      'deep-bedded',
      'Bed',
      true,
    );
    expect(addScenario({ text: bare, file: 'n.md', read: readNotebook }, scenario)).toMatchObject({
      refused: { what: 'the bed has no bedding' },
    });
  });
});

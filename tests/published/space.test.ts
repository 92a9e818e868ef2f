/** Space by class and weight as the rule sets print it; every figure also needs the local rule checked. */
import { describe, expect, it } from 'vitest';
import { type SpaceKind, spaceNeed } from '../../src/model/checks/spaceRules.ts';
import type { HerdGroup, Scenario } from '../../src/notebook/schema.ts';
import { coefficients } from '../model/checks/fixture.ts';
import { tableRow } from './labels.ts';

const row = (id: string) => {
  const found = coefficients.get(id);
  if (!found) throw new Error(`no row ${id}`);
  return found;
};
const group = (animal: HerdGroup['class'], weightKg: number): HerdGroup => ({
  name: animal, class: animal, weightKg, head: 1, gainKgPerDay: 0, pregnantShare: 0, milkKgPerDay: 0, hornedShare: 1,
}); // biome-ignore format: one record

type Row = [Scenario['farm']['spaceRules'], SpaceKind, HerdGroup['class'], number, number];
const check = (rows: Row[]) =>
  it.each(rows)('%s, %s, %s of %d kg: %d', (rules, kind, animal, weightKg, figure) => {
    expect(spaceNeed(rules, kind, group(animal, weightKg), row)?.perHead).toBeCloseTo(figure, 9);
  });

describe(tableRow('Swedish Board of Agriculture, measures after L104 (published)'), () => {
  check([
    ['sweden', 'lying', 'calf', 140, 1.5],
    ['sweden', 'total', 'weanling', 240, 2.9],
    ['sweden', 'lying', 'heifer', 400, 2.6],
    ['sweden', 'total', 'steer', 590, 4.4],
    ['sweden', 'slats', 'finisher', 650, 2.6],
    ['sweden', 'lying', 'sucklerCow', 700, 3.4],
    ['sweden', 'total', 'sucklerCow', 700, 4.8],
    ['sweden', 'feed', 'calf', 85, 0.3],
    ['sweden', 'feed', 'heifer', 600, 0.6],
    ['sweden', 'feed', 'sucklerCow', 640, 0.7],
    ['sweden', 'feed', 'bull', 900, 0.75],
  ]);
});

describe(tableRow('Irish department and Teagasc figures (published)'), () => {
  check([
    ['ireland', 'slats', 'sucklerCow', 620, 2.75],
    ['ireland', 'lying', 'sucklerCow', 620, 4.5],
    ['ireland', 'slats', 'steer', 400, 2.1],
    ['ireland', 'lying', 'weanling', 260, 2.7],
    ['ireland', 'feed', 'sucklerCow', 620, 0.65],
  ]);
});

describe(tableRow('Implementing Regulation (EU) 2020/464, annex I part I (published)'), () => {
  check([
    ['euOrganic', 'total', 'calf', 100, 1.5],
    ['euOrganic', 'total', 'weanling', 200, 2.5],
    ['euOrganic', 'total', 'heifer', 350, 4],
    ['euOrganic', 'total', 'steer', 480, 5],
    // At least 1 m² for each 100 kg: 650 kg make 6.5 m² (derived).
    ['euOrganic', 'total', 'sucklerCow', 650, 6.5],
    ['euOrganic', 'total', 'bull', 900, 10],
  ]);
});

describe(tableRow('horned herds (Swiss and German guidance, from memory; common practice)'), () => {
  check([
    ['commonPracticeHorned', 'lying', 'sucklerCow', 600, 8],
    ['commonPracticeHorned', 'feed', 'sucklerCow', 600, 0.9],
  ]);
});

import { expect, it } from 'vitest';
import { run } from '../nutrientRig.ts';

it('adds up groups at mid-winter weight', () => {
  const [out] = run(['herd'], {
    herdFactor: 0.5,
    winterDays: 100,
    group1HeadCount: 20,
    group1WeightKg: 650,
    group1LivestockUnits: 1,
    group2HeadCount: 10,
    group2WeightKg: 200,
    group2GainKgPerDay: 0.5,
    group2LivestockUnits: 0.4,
  });
  expect(out).toEqual({
    headCount: 15,
    liveWeightKg: 0.5 * (20 * 650 + 10 * 225),
    livestockUnits: 12,
    gainKg: 0.5 * 10 * 50,
  });
});

import { describe, expect, it } from 'vitest';
import { herdNeed, spaceNeed } from '../../../src/model/checks/spaceRules.ts';
import { ANIMAL_CLASSES, SPACE_RULES } from '../../../src/notebook/schema.ts';
import { checkOf, checksOf, coefficients, scenarioWith } from './fixture.ts';

const row = (id: string) => {
  const found = coefficients.get(id);
  if (!found) throw new Error(`no row ${id}`);
  return found;
};
const group = (of: Partial<ReturnType<typeof scenarioWith>['farm']['herd'][number]>) => ({
  ...scenarioWith().farm.herd[0],
  ...of,
});

describe('space rules', () => {
  it('have a row for every class and weight they name', () => {
    for (const rules of SPACE_RULES)
      for (const kind of ['lying', 'total', 'slats', 'feed'] as const)
        for (const animal of ANIMAL_CLASSES)
          for (const weightKg of [80, 140, 190, 320, 420, 550, 640, 820]) {
            const need = spaceNeed(rules, kind, group({ class: animal, weightKg }), row);
            if (need) expect(need.perHead, `${rules} ${kind} ${animal} ${weightKg}`).toBeGreaterThan(0);
          }
  });

  it('know no all-slatted figure for cows in Sweden', () => {
    expect(spaceNeed('sweden', 'slats', group({ class: 'sucklerCow' }), row)).toBeNull();
  });

  it('sum over the herd and tell what is left out', () => {
    const { herd } = scenarioWith().farm;
    // Board of Agriculture measures, L104 (published): 16 × 3.4 + 8 × 2.6 m².
    expect(herdNeed('sweden', 'lying', herd, row)?.total).toBeCloseTo(16 * 3.4 + 8 * 2.6, 9);
    expect(herdNeed('sweden', 'slats', herd, row)?.incomplete).toBe(true);
    expect(herdNeed('euOrganic', 'lying', herd, row)).toBeNull();
  });
});

describe('room to live', () => {
  it('stops slats that the herd asks for and the shed cannot hold, and says what it holds', () => {
    const of = (slatsUsedM2: number) =>
      checkOf('slatsFit', { system: 'slatted', shed: { lengthM: 10, depthM: 9 } }, 0.5, { slatsUsedM2 });
    expect(of(60).status).toBe('pass');
    // 10 × 9 m less 18 m² of pens hold 72 m².
    const stop = of(80);
    expect(stop).toMatchObject({ status: 'stop', limit: 80 });
    expect(stop.value).toBeCloseTo(72, 6);
  });

  it('stops at too small a bed and names the set and the local rule', () => {
    const check = checkOf('lyingArea', { shed: { lengthM: 12, depthM: 9 } });
    // 12 × (9 − 3) m² of bed less 18 m² of calving pens.
    expect(check).toMatchObject({ status: 'stop', value: 54 });
    expect(check.words).toContain('Check the local rule');
  });

  it('stops a horned herd without a second way out, and only looks at a polled one', () => {
    expect(checkOf('exits', { shed: { exits: 1 } }).status).toBe('stop');
    const polled = {
      herd: [{ name: 'cows', class: 'sucklerCow', head: 16, weightKg: 600 }],
      spaceRules: 'ireland',
    };
    expect(checkOf('exits', { shed: { exits: 1 }, farm: polled }).status).toBe('look');
  });

  it('wants room to pass behind a feeding animal', () => {
    expect(checkOf('passBehind', { shed: { stanceDepthM: 4.5 } }).status).toBe('pass');
    expect(checkOf('passBehind', { shed: { stanceDepthM: 3 } }).status).toBe('look');
    expect(checkOf('passBehind', { shed: { depthM: 4, stanceDepthM: 3 } }).status).toBe('stop');
  });

  it('counts feed places by class and weight', () => {
    // 16 × 0.90 m (horned-herd guidance, from memory) + 8 × 0.50 m (Sweden, young to 400 kg, published).
    expect(checkOf('feedPlaces').limit).toBeCloseTo(18.4, 9);
    expect(checkOf('feedPlaces', { shed: { lengthM: 15 } }).status).toBe('stop');
  });

  it('counts water, pens, hard ground and the loader', () => {
    expect(checkOf('waterPoints', { shed: { waterBowls: 0 } }).status).toBe('stop');
    expect(checkOf('waterPoints', { shed: { waterBowls: 3 } }).status).toBe('pass');
    expect(checkOf('calvingPens', { shed: { calvingPensM2: 0 } }).status).toBe('look');
    expect(checkOf('hardStanding', { shed: { stanceDepthM: 0, hardStandingM2: 0 } }).status).toBe('look');
    expect(checkOf('loaderTurns', { shed: { bayM: 2.5 } }).status).toBe('stop');
  });
});

describe('sheds that cannot be', () => {
  const deep = (patch: Parameters<typeof checksOf>[0]) =>
    checksOf(patch)
      .filter((c) => c.status === 'stop')
      .map((c) => c.id);

  it('stop when shallower than an animal', () => {
    expect(deep({ shed: { depthM: 1.5, stanceDepthM: 0 } })).toContain('shedHoldsAnimals');
  });

  it('stop when the stance leaves no bed', () => {
    const check = checkOf('shedHoldsAnimals', { shed: { depthM: 3, stanceDepthM: 3 } });
    expect(check.status).toBe('stop');
    expect(check.words).toContain('no area is left for a bed');
  });

  it('stop when the eave is lower than the withers', () => {
    expect(checkOf('shedHoldsAnimals', { shed: { eaveM: 1.2 } }).words).toContain('withers');
  });

  it('stop without materials', () => {
    expect(checkOf('beddingStock', { bed: { mix: [] } })).toMatchObject({ status: 'stop' });
  });

  it('stop beyond the polar circle, with no NaN', () => {
    for (const latitudeDeg of [69, 78, 90, -69]) {
      const check = checkOf('noonSunOnBed', {
        place: { latitudeDeg },
        farm: latitudeDeg < 0 ? { winter: { start: '2026-05-01', end: '2026-10-01' } } : {},
      });
      expect(check.status, String(latitudeDeg)).toBe('stop');
      expect(check.words).toContain('Polar night');
      expect(check.words).not.toContain('NaN');
    }
  });

  it('never give NaN for an empty herd, a flat or a steep roof', () => {
    for (const patch of [
      { farm: { herd: [{ name: 'none', class: 'sucklerCow', head: 0, weightKg: 600 }] } },
      { shed: { pitchDeg: 0 } },
      { shed: { pitchDeg: 70, rearEaveM: 9 } },
      { shed: { ridgeSlotM: 0, inletM2: 0 } },
    ])
      for (const check of checksOf(patch))
        expect(JSON.stringify(check), check.id).not.toMatch(/NaN|Infinity/);
  });

  it('shows a missing row as an open check', async () => {
    const { checkScenario } = await import('../../../src/model/checks/index.ts');
    const scenario = scenarioWith();
    const checks = checkScenario({ scenario, values: {}, tracks: {}, coefficients: new Map() });
    expect(checks.length).toBeGreaterThan(0);
    expect(checks.every((c) => c.status === 'look' && c.words.startsWith('Not checked'))).toBe(true);
  });
});

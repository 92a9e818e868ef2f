import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkScenario } from '../../src/model/checks/index.ts';
import { litStrip, sunAt, verticalShadowAngleDeg } from '../../src/model/works/sun.ts';
import { toMarkup } from '../../src/plots/drawing.ts';
import { sceneAt } from '../../src/plots/scene.ts';
import { sectionDrawing } from '../../src/plots/section.ts';
import { bedTrack, coefficients, type Patch, resultWith, scenarioWith } from '../model/checks/fixture.ts';

const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SETTINGS = { numRuns: 60, seed: 20251120 };

/** Week in which a check first stops; the week after the last where it never does. */
function weekOf(id: string, patch: Patch, cmPerDay: number): number {
  const scenario = scenarioWith(patch);
  const checks = checkScenario({
    scenario,
    values: {},
    tracks: { weekPackDepthM: bedTrack(scenario, cmPerDay) },
    coefficients,
  });
  const found = checks.find((check) => check.id === id);
  return found?.status === 'stop' && found.week ? found.week : 99;
}

describe('a shed', () => {
  it('with a taller roof never fails sooner', () => {
    fc.assert(
      fc.property(metres(2.2, 6), metres(0, 2), metres(0.1, 1.2), (eaveM, more, growth) => {
        for (const id of ['roofClearance', 'hornClearance', 'mountingClearance', 'weeksThatFit'])
          expect(weekOf(id, { shed: { eaveM: eaveM + more } }, growth), id).toBeGreaterThanOrEqual(
            weekOf(id, { shed: { eaveM } }, growth),
          );
      }),
      SETTINGS,
    );
  });

  it('with a higher wall or a faster bed never lasts the wrong way', () => {
    fc.assert(
      fc.property(
        metres(0.6, 3),
        metres(0, 1.5),
        metres(0.1, 1),
        metres(0, 0.5),
        (pushWallM, more, growth, faster) => {
          expect(
            weekOf('pushWallHeight', { shed: { pushWallM: pushWallM + more } }, growth),
          ).toBeGreaterThanOrEqual(weekOf('pushWallHeight', { shed: { pushWallM } }, growth));
          expect(weekOf('pushWallHeight', { shed: { pushWallM } }, growth + faster)).toBeLessThanOrEqual(
            weekOf('pushWallHeight', { shed: { pushWallM } }, growth),
          );
        },
      ),
      SETTINGS,
    );
  });

  it('with more of everything the herd needs never goes from pass to stop', () => {
    const rank = { stop: 0, look: 1, pass: 2 } as const;
    fc.assert(
      fc.property(metres(8, 40), metres(0, 20), fc.nat(4), (lengthM, more, bowls) => {
        const of = (patch: Patch) => new Map(resultWith(patch).checks.map((c) => [c.id, rank[c.status]]));
        const small = of({ shed: { lengthM, waterBowls: bowls } });
        const large = of({ shed: { lengthM: lengthM + more, waterBowls: bowls + 2 } });
        for (const id of ['lyingArea', 'dryBedArea', 'feedPlaces', 'waterPoints'])
          expect(large.get(id), id).toBeGreaterThanOrEqual(small.get(id) ?? 0);
      }),
      SETTINGS,
    );
  });

  it('of any shape draws without a NaN or says why not', () => {
    const shed = fc.record({
      lengthM: metres(1, 100),
      depthM: metres(0.5, 40),
      stanceDepthM: metres(0, 6),
      eaveM: metres(0.5, 8),
      rearEaveM: fc.option(metres(0.5, 10), { nil: undefined }),
      pitchDeg: metres(0, 70),
      overhangM: metres(0, 3),
      machineWidthM: metres(0.5, 4),
      ridgeSlotM: metres(0, 2),
      openSideAzimuthDeg: metres(0, 360),
    });
    fc.assert(
      fc.property(
        shed,
        metres(-90, 90),
        fc.integer({ min: 1, max: 30 }),
        metres(0, 2),
        (of, latitudeDeg, week, growth) => {
          const result = resultWith({ shed: of, place: { latitudeDeg } }, growth);
          for (const check of result.checks)
            expect(JSON.stringify(check), check.id).not.toMatch(
              /NaN|Infinity|:null,"limit":null,"unit":"","source":"own"/,
            );
          const scene = sceneAt({ ...result, coefficients }, week);
          if (typeof scene === 'string') expect(scene).not.toMatch(/NaN/);
          else expect(() => toMarkup(sectionDrawing(scene, 358, 'p'), 'p')).not.toThrow();
        },
      ),
      SETTINGS,
    );
  });
});

describe('the sun', () => {
  it('reaches less far in as it climbs, and never beyond the shed', () => {
    fc.assert(
      fc.property(
        metres(1, 80),
        metres(0, 9),
        metres(2.5, 6),
        metres(0, 2),
        (angle, more, eaveM, overhangM) => {
          const front = { eaveM, overhangM, bedM: 0.5, wallM: 0, depthM: 9 };
          const low = litStrip(front, angle)?.toM ?? 0;
          const high = litStrip(front, Math.min(89, angle + more))?.toM ?? 0;
          expect(high).toBeLessThanOrEqual(low + 1e-9);
          expect(low).toBeLessThanOrEqual(9);
        },
      ),
      SETTINGS,
    );
  });

  it('stands somewhere at any time and place', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4_000_000_000_000 }),
        metres(-90, 90),
        metres(-180, 180),
        (time, latitude, longitude) => {
          const sun = sunAt(time, latitude, longitude);
          expect(Math.abs(sun.altitudeDeg)).toBeLessThanOrEqual(91);
          expect(sun.azimuthDeg).toBeGreaterThanOrEqual(0);
          expect(sun.azimuthDeg).toBeLessThanOrEqual(360);
          const shadow = verticalShadowAngleDeg(sun, 180);
          if (shadow !== null) expect(shadow).toBeGreaterThanOrEqual(Math.min(sun.altitudeDeg, 89.9) - 1e-6);
        },
      ),
      SETTINGS,
    );
  });
});

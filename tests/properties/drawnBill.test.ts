/**
 * What the bill counts can be measured in the drawings: for random sheds on a bed, on slats and on both, lengths, areas
 * and counts are taken from the shapes of plan and section by the shoelace formula and plain distances, and held
 * against the lines of the bill. Sheds with two different eaves are left out: the bill knows one.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drawing, Point, Shape } from '../../src/plots/drawing.ts';
import { planDrawing, planScene } from '../../src/plots/plan.ts';
import { sceneAt } from '../../src/plots/scene.ts';
import { sectionDrawing } from '../../src/plots/section.ts';
import { coefficients, resultWith } from '../model/checks/fixture.ts';
import { runMoney } from '../model/moneyRig.ts';

const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SETTINGS = { numRuns: 120, seed: 20251121 };

const shapesOf = (drawing: Drawing, part: string) =>
  drawing.shapes.filter(
    (shape: Shape): shape is Shape & { points: readonly Point[] } => 'points' in shape && shape.part === part,
  );
/** Shoelace formula. */
const areaOf = (points: readonly Point[]) =>
  Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [nextX, nextY] = points[(k + 1) % points.length];
      return sum + x * nextY - nextX * y;
    }, 0),
  ) / 2;
const areas = (drawing: Drawing, part: string) =>
  shapesOf(drawing, part).reduce((sum, { points }) => sum + areaOf(points), 0);
const lengthOf = (points: readonly Point[]) =>
  points.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - points[k][0], y - points[k][1]), 0);
const lengths = (drawing: Drawing, part: string) =>
  shapesOf(drawing, part).reduce((sum, { points }) => sum + lengthOf(points), 0);
const spanX = (drawing: Drawing, part: string) => {
  const xs = shapesOf(drawing, part).flatMap(({ points }) => points.map(([x]) => x));
  return Math.max(...xs) - Math.min(...xs);
};

const WAYS = {
  'deep-bedded': { bedShare: 0.75, slatsShare: 0, yardShare: 0.25, pastureShare: 0 },
  slatted: { bedShare: 0, slatsShare: 1, yardShare: 0, pastureShare: 0 },
  both: { bedShare: 0.6, slatsShare: 0.4, yardShare: 0, pastureShare: 0 },
} as const;

const shed = fc.record({
  lengthM: metres(8, 60),
  depthM: metres(6, 16),
  stanceDepthM: metres(2.5, 5),
  eaveM: metres(3.6, 6),
  pitchDeg: metres(5, 30),
  overhangM: metres(0, 1.2),
  bayM: metres(3, 7),
  pushWallM: metres(0.8, 2.5),
  longestTimberM: metres(4, 9),
  calvingPensM2: fc.oneof(fc.constant(0), metres(9, 60)),
  feedRoadRoofed: fc.boolean(),
  exits: fc.constant(0),
  ridgeSlotM: fc.constant(0),
});

describe('the bill', () => {
  it.each(Object.keys(WAYS) as (keyof typeof WAYS)[])('is measured in plan and section: %s', (way) => {
    fc.assert(
      fc.property(shed, metres(0.1, 0.95), (of, filled) => {
        const placement = { ...WAYS[way], yardTo: 'pack' };
        const room =
          way === 'both'
            ? of.lengthM * of.stanceDepthM
            : Math.max(9, of.lengthM * of.depthM - of.calvingPensM2);
        const slatsM2 = way === 'deep-bedded' ? 0 : room * filled;
        fc.pre(way !== 'slatted' || slatsM2 + of.calvingPensM2 <= of.lengthM * of.depthM);
        const result = resultWith(
          { shed: of, slats: { areaM2: Math.max(slatsM2, 1e-9) }, rest: { placement } },
          0.2,
          { slatsUsedM2: slatsM2 },
        );
        const input = { ...result, coefficients };
        const [{ values: bill }] = runMoney(
          ['building'],
          [
            {
              headCount: 24, ...WAYS[way], shedLengthM: of.lengthM, shedDepthM: of.depthM, slatsUsedM2: slatsM2,
              stanceDepthM: of.stanceDepthM, eaveM: of.eaveM, pitchDeg: of.pitchDeg, overhangM: of.overhangM,
              bayM: of.bayM, pushWallM: of.pushWallM, longestTimberM: of.longestTimberM,
              calvingPensM2: of.calvingPensM2, feedRoadRoofedShare: of.feedRoadRoofed ? 1 : 0,
            }, // biome-ignore format: one list
          ],
          { system: way === 'slatted' ? 'slatted' : 'deep-bedded' },
        );
        const scene = planScene(input);
        if (typeof scene === 'string') throw new Error(scene);
        const plan = planDrawing(scene, 1248);
        const near = (billed: number, drawn: number, what: string) => {
          expect(Math.abs(billed - drawn), `${what}: billed ${billed}, drawn ${drawn}`).toBeLessThan(
            1e-6 * (1 + drawn),
          );
        };

        // The plan: floors, walls, partitions, barrier and posts.
        const road = areas(plan, 'feedRoad');
        const slats = areas(plan, 'slats');
        near(bill.billGroundworkM2, areas(plan, 'stance') + areas(plan, 'bed') + road, 'ground');
        near(bill.billBedFloorM2, way === 'slatted' ? 0 : areas(plan, 'bed'), 'bed');
        near(bill.billSlatsM2, slats, 'slats');
        near(bill.billSlabM2, areas(plan, 'stance') + road - slats, 'slab');
        near(bill.billRisingBarrierM + bill.billFeedBarrierM, lengths(plan, 'barrier'), 'barrier');
        const front = way === 'slatted' || areas(plan, 'pens') === 0 ? 0 : spanX(plan, 'pens');
        near(bill.billPenPartitionsM, lengths(plan, 'partition') + front, 'partitions');
        expect(bill.billPostFixingsCount).toBe(shapesOf(plan, 'post').length);
        const frames = new Set(shapesOf(plan, 'post').map(({ points }) => points[0][0].toFixed(6)));
        expect(bill.shedBaysCount).toBe(frames.size - 1);
        const depthOf = (part: string) => {
          const ys = shapesOf(plan, part).flatMap(({ points }) => points.map(([, y]) => y));
          return Math.max(...ys) - Math.min(...ys);
        };
        const behind = way === 'slatted' ? depthOf('slats') : depthOf('bed');
        const wall =
          way === 'slatted' ? bill.billPenWallM2 / bill.penWallHeightM : bill.billPushWallM2 / of.pushWallM;
        near(wall, lengths(plan, 'barrier') + 2 * behind, 'solid walls');

        // The section, which only a bed has: rows of posts, and the roof along its slope over the length with overhangs.
        if (way === 'slatted') return;
        const cut = sceneAt(input, 1);
        if (typeof cut === 'string') throw new Error(cut);
        const section = sectionDrawing(cut, 1248, 'p');
        // The rear row stands in the wall.
        expect(bill.billPostFixingsCount).toBe(frames.size * (shapesOf(section, 'post').length + 1));
        const slope = shapesOf(section, 'roof').reduce(
          (sum, { points }) => sum + lengthOf(points.slice(0, 2)),
          0,
        );
        near(bill.shedRaftersM, frames.size * slope, 'rafters');
        near(bill.billRoofM2, slope * (of.lengthM + 2 * of.overhangM), 'roof');
      }),
      SETTINGS,
    );
  });

  it('measures nothing where a shed is drawn 1 m longer', () => {
    // The test above can fail: the bill of one shed against the plan of another.
    const of = { lengthM: 24, depthM: 9 };
    const [{ values: bill }] = runMoney(
      ['building'],
      [{ headCount: 24, bedShare: 1, shedLengthM: 24, shedDepthM: 9 }],
    );
    const scene = planScene({ ...resultWith({ shed: { ...of, lengthM: 25 } }), coefficients });
    if (typeof scene === 'string') throw new Error(scene);
    expect(areas(planDrawing(scene, 1248), 'bed')).toBeGreaterThan(bill.billBedFloorM2 + 5);
  });
});

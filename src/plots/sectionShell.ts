/** What stands all year in the section: ground, bed, walls and roof. */
import { roofAtM } from '../model/checks/shape.ts';
import { box, type Point, type Shape } from './drawing.ts';
import { INK } from './palette.ts';
import type { Scene } from './scene.ts';
import { LOOK, metres, THICK, TROUGH_WIDTH } from './sectionLook.ts';

export function ground({ shed }: Scene, left: number, right: number, px: number): Shape[] {
  return [
    { kind: 'path', part: 'earth', points: box(left, -THICK.floor * 2, right, 0), closed: true, fill: LOOK.earth },
    { kind: 'path', part: 'floor', points: box(-TROUGH_WIDTH - 0.35, -THICK.floor, shed.depthM + THICK.wall, 0), closed: true, fill: LOOK.concrete },
    { kind: 'path', part: 'floorLine', points: [[left, 0], [right, 0]], stroke: INK, weightM: px },
  ]; // biome-ignore format: pairs
}

export function bed(scene: Scene, ids: string, px: number, size: number, narrow: boolean): Shape[] {
  const { shed, bedM, lowM, highM, startM } = scene;
  const from = shed.stanceDepthM;
  const to = shed.depthM;
  const shapes: Shape[] = [
    { kind: 'path', part: 'bed', points: box(from, 0, to, bedM), closed: true, fill: LOOK.bed },
    { kind: 'path', part: 'startingLayer', points: box(from, 0, to, startM), closed: true, fill: LOOK.layer },
    { kind: 'path', part: 'startingLayerLine', points: [[from, startM], [to, startM]], stroke: LOOK.bedEdge, weightM: px, dash: [4 * px, 3 * px] },
  ]; // biome-ignore format: one shape a line
  if (highM > lowM)
    shapes.push({
      kind: 'path',
      part: 'range',
      points: box(from, lowM, to, highM),
      closed: true,
      fill: `url(#${ids}-range)`,
      opacity: 0.45,
    });
  shapes.push({
    kind: 'path',
    part: 'bedTop',
    points: [
      [from, bedM],
      [to, bedM],
    ],
    stroke: LOOK.bedEdge,
    weightM: 2 * px,
  });
  if (from > 0)
    shapes.push({
      kind: 'path',
      part: 'bedBoards',
      points: box(from - THICK.board, 0, from, bedM),
      closed: true,
      fill: LOOK.timber,
    });
  if (startM > 0.05 && !narrow)
    shapes.push({
      kind: 'text',
      part: 'startingLayerText',
      at: [to - size * 0.6, startM / 2 - size * 0.3],
      text: `starting layer, ${metres(startM)} when laid`,
      sizeM: Math.min(size * 0.9, startM * 0.7),
      anchor: 'end',
      fill: INK,
    });
  return shapes;
}

export function walls({ shed, roof: shape, rows }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  return [
    {
      kind: 'path',
      part: 'boarding',
      points: box(d, shed.pushWallM, d + THICK.board, shape.rearM),
      closed: true,
      fill: LOOK.timber,
      opacity: 0.55,
    },
    {
      kind: 'path',
      part: 'pushWall',
      points: box(d, 0, d + THICK.wall, shed.pushWallM),
      closed: true,
      fill: LOOK.concrete,
      stroke: INK,
      weightM: px,
    },
    // The rear row stands in the wall; every other row stands where the bill counts it, in the bed too.
    ...rows
      .filter((y) => y < d - 1e-6)
      .map(
        (y): Shape => ({
          kind: 'path',
          part: 'post',
          points: box(y - THICK.post, 0, y, roofAtM(shape, d, y)),
          closed: true,
          fill: LOOK.timber,
          opacity: 0.55,
        }),
      ),
  ];
}

export function roof({ shed, roof: shape, lowestM, frontM }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  const o = shed.overhangM;
  const at = (x: number) => roofAtM(shape, d, x);
  const slab = (x0: number, x1: number): Point[] => [[x0, at(x0)], [x1, at(x1)], [x1, at(x1) + THICK.roof], [x0, at(x0) + THICK.roof]]; // biome-ignore format: corners
  const plate = (points: Point[]): Shape => ({
    kind: 'path',
    part: 'roof',
    points,
    closed: true,
    fill: LOOK.sheet,
  });
  const ridged = shape.ridgeXM > 0 && shape.ridgeXM < d;
  const half = Math.min(shed.ridgeSlotM / 2, ridged ? Math.min(shape.ridgeXM, d - shape.ridgeXM) : 0);
  return [
    ...(ridged ? [plate(slab(-frontM, shape.ridgeXM - half)), plate(slab(shape.ridgeXM + half, d + o))] : [plate(slab(-frontM, d + o))]),
    { kind: 'path', part: 'lowestMember', points: [[0, lowestM], [d, lowestM]], stroke: LOOK.timber, weightM: 2 * px, dash: [8 * px, 4 * px] },
  ]; // biome-ignore format: pairs
}

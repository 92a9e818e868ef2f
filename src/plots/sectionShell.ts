/** What stands all year in the section: ground, bed, walls and roof. */
import { roofAtM } from '../model/works/roof.ts';
import { box, type PathShape, type Point, type Shape } from './drawing.ts';
import { INK, PAPER } from './palette.ts';
import type { Scene } from './scene.ts';
import { LOOK, metres, THICK, TROUGH_WIDTH } from './sectionLook.ts';

/** How deep the drawing goes: under the floor, or under the tank. */
export const footM = ({ slats }: Scene) =>
  slats ? THICK.slats + slats.tankM + THICK.tank * 2 : THICK.floor * 2;

export function ground(scene: Scene, left: number, right: number, px: number): Shape[] {
  const { shed, roadM } = scene;
  const from = -Math.max(TROUGH_WIDTH + 0.35, roadM > 0 ? roadM + THICK.post : 0);
  return [
    { kind: 'path', part: 'earth', points: box(left, -footM(scene), right, 0), closed: true, fill: LOOK.earth },
    { kind: 'path', part: 'floor', points: box(from, -THICK.floor, shed.depthM + THICK.wall, 0), closed: true, fill: LOOK.concrete },
    { kind: 'path', part: 'floorLine', points: [[left, 0], [right, 0]], stroke: INK, weightM: px },
  ]; // biome-ignore format: pairs
}

/** Width of a slat and its gap as drawn, m. */
const SLAT = 0.165;

/** Slats over tank or channel, with the slurry of the winter in it. */
export function tank({ slats, rows }: Scene, ids: string, px: number): Shape[] {
  if (!slats) return [];
  const { fromM, toM, tankM, neededM, freeboardM } = slats;
  const top = -THICK.slats;
  const floor = top - tankM;
  const path = (part: string, points: Point[], fill: string, more: Partial<PathShape> = {}): Shape => ({ kind: 'path', part, points, closed: true, fill, ...more }); // biome-ignore format: one shape
  const shapes: Shape[] = [
    path('tankWalls', box(fromM - THICK.tank, floor - THICK.tank, toM + THICK.tank, 0), LOOK.concrete, { stroke: INK, weightM: px }),
    path('tank', box(fromM, floor, toM, top), PAPER),
  ]; // biome-ignore format: one shape a line
  if (neededM !== null && neededM > 0) {
    const full = Math.min(neededM, tankM);
    shapes.push(
      path('slurry', box(fromM, floor, toM, floor + full), LOOK.slurry, { opacity: 0.55 }),
      path('slurryMarks', box(fromM, floor, toM, floor + full), `url(#${ids}-slurry)`, { opacity: 0.5 }),
      { kind: 'path', part: 'slurryTop', points: [[fromM, floor + full], [toM, floor + full]], stroke: neededM > tankM - freeboardM ? LOOK.alarm : LOOK.slurryMark, weightM: 2 * px },
      { kind: 'path', part: 'freeboard', points: [[fromM, top - freeboardM], [toM, top - freeboardM]], stroke: INK, weightM: px, dash: [5 * px, 4 * px] },
    ); // biome-ignore format: one shape a line
  }
  // A post over the tank stands on a pier through it.
  for (const y of rows)
    if (y > fromM + THICK.post && y < toM - THICK.post)
      shapes.push(
        path('pier', box(y - THICK.post * 1.5, floor, y + THICK.post / 2, top), LOOK.concrete, {
          stroke: INK,
          weightM: px,
        }),
      );
  shapes.push(path('slats', box(fromM, top, toM, 0), LOOK.slats));
  for (let x = fromM + SLAT; x < toM - SLAT / 2; x += SLAT)
    shapes.push({ kind: 'path', part: 'slatGap', points: [[x, top], [x, 0]], stroke: PAPER, weightM: 0.035 }); // biome-ignore format: pairs
  return shapes;
}

/** The far end of the shed, seen beyond the cut: solid wall, and boards above it up to the roof. */
export function farEnd({ shed, roof: shape, wallM, rowFromM }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  const low = (x: number) => Math.max(wallM, roofAtM(shape, d, x));
  const ridge: Point[] = shape.ridgeXM > 0 && shape.ridgeXM < d ? [[shape.ridgeXM, low(shape.ridgeXM)]] : [];
  return [
    { kind: 'path', part: 'farWall', points: box(rowFromM, 0, d, wallM), closed: true, fill: LOOK.concrete, opacity: 0.28 },
    { kind: 'path', part: 'gable', points: [[0, wallM], [0, low(0)], ...ridge, [d, low(d)], [d, wallM]], closed: true, fill: LOOK.timber, opacity: 0.1 },
    { kind: 'path', part: 'gableFoot', points: [[0, wallM], [d, wallM]], stroke: LOOK.timber, weightM: px, opacity: 0.5 },
  ]; // biome-ignore format: one shape a line
}

export function bed(scene: Scene, ids: string, px: number, size: number, narrow: boolean): Shape[] {
  const { shed, bedM, lowM, highM, startM, laidM, solidM: from } = scene;
  if (!scene.bedded) return [];
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
      text: `starting layer, ${metres(laidM)} when laid`,
      sizeM: Math.min(size * 0.9, startM * 0.7),
      anchor: 'end',
      fill: INK,
    });
  return shapes;
}

export function walls({ shed, roof: shape, rows, wallM }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  return [
    {
      kind: 'path',
      part: 'boarding',
      points: box(d, Math.min(wallM, shape.rearM), d + THICK.board, shape.rearM),
      closed: true,
      fill: LOOK.timber,
      opacity: 0.55,
    },
    {
      kind: 'path',
      part: 'pushWall',
      points: box(d, 0, d + THICK.wall, wallM),
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

export function roof({ shed, roof: shape, lowestM, frontM, purlins }: Scene, px: number): Shape[] {
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
    ...purlins.map((x): Shape => ({ kind: 'path', part: 'purlin', points: [[x, at(x)], [x, at(x) + THICK.roof * 0.6]], stroke: PAPER, weightM: 0.06 })),
    { kind: 'path', part: 'lowestMember', points: [[0, lowestM], [d, lowestM]], stroke: LOOK.timber, weightM: 2 * px, dash: [8 * px, 4 * px] },
  ]; // biome-ignore format: pairs
}

/** Snow and wind as arrows with their numbers: for the engineer. */
export function loads(scene: Scene, px: number, size: number, narrow: boolean): Shape[] {
  const { shed, roof: shape, snowKnPerM2, windKnPerM2, wallM } = scene;
  const d = shed.depthM;
  const at = (x: number) => roofAtM(shape, d, x) + THICK.roof;
  const head = size * 0.32;
  const arrow = (part: string, [x0, y0]: Point, [x1, y1]: Point): Shape[] => {
    const down = x0 === x1;
    return [
      { kind: 'path', part, points: [[x0, y0], [x1, y1]], stroke: LOOK.load, weightM: 1.2 * px },
      { kind: 'path', part: `${part}Head`, points: down ? [[x1, y1], [x1 - head / 2, y1 + head], [x1 + head / 2, y1 + head]] : [[x1, y1], [x1 + head, y1 + head / 2], [x1 + head, y1 - head / 2]], closed: true, fill: LOOK.load },
    ];
  }; // biome-ignore format: pairs
  const say = (part: string, [x, y]: Point, text: string, anchor?: 'start' | 'end'): Shape => ({ kind: 'text', part, at: [x, y], text, sizeM: size * 0.9, fill: INK, halo: PAPER, ...(anchor ? { anchor } : {}) }); // biome-ignore format: one shape
  const from = Math.max(shape.ridgeXM < d ? shape.ridgeXM : 0, 0) + size * 1.2;
  const count = narrow ? 3 : 6;
  const xs = Array.from(
    { length: count },
    (_, k) => from + ((d + shed.overhangM - from) * (k + 0.5)) / count,
  );
  const long = size * 1.5;
  const right = d + Math.max(shed.overhangM, THICK.wall);
  const windY = [0.3, 0.6].map((share) => wallM + (shape.rearM - wallM) * share);
  return [
    ...(snowKnPerM2 > 0
      ? [
          ...xs.flatMap((x) => arrow('snow', [x, at(x) + size * 0.3 + long], [x, at(x) + size * 0.3])),
          say('snowText', [xs[count - 1] + size * 0.6, at(xs[count - 1]) + size * 1.5], narrow ? `snow ${snowKnPerM2.toFixed(1)}` : `snow ${snowKnPerM2.toFixed(2)} kN/m²`, 'start'),
        ]
      : []),
    ...(windKnPerM2 > 0
      ? [
          ...windY.flatMap((y) => arrow('wind', [right + size * 2.6, y], [right + size * 0.3, y])),
          say('windText', [right + size * 0.3, windY[1] + size * (narrow ? 0.5 : 1.6)], narrow ? `wind ${windKnPerM2.toFixed(1)}` : 'wind', 'start'),
          ...(narrow ? [] : [say('windText', [right + size * 0.3, windY[1] + size * 0.5], `${windKnPerM2.toFixed(2)} kN/m²`, 'start')]),
        ]
      : []),
  ]; // biome-ignore format: one shape a line
}

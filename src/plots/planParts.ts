/** The parts of the plan, each to scale; x along the shed, y from the open side inwards, in metres. */

import type { ShedFloor, WayOut } from '../model/works/geometry.ts';
import { box, type PathShape, type Point, type Shape } from './drawing.ts';
import { INK, PAPER } from './palette.ts';

export interface PlanScene {
  readonly lengthM: number;
  readonly depthM: number;
  readonly floor: ShedFloor;
  /** Frames along the shed and rows of posts from the barrier, m; none without a roof. */
  readonly frames: readonly number[];
  readonly rows: readonly number[];
  /** Width of the feed road under the roof, m. */
  readonly roadM: number;
  readonly overhangM: number;
  readonly bedded: boolean;
  /** Where bed or slats begin, and with them the solid walls of the ends, m. */
  readonly rowFromM: number;
  readonly exits: readonly WayOut[];
  /** Run of the ramps outside the ways out, m; 0 where nothing is to be climbed. */
  readonly rampM: number;
  /** Depth of tank or channel under the slats, m. */
  readonly tankM: number;
  readonly channel: boolean;
  readonly bowls: number;
  readonly openAzimuthDeg: number;
  /** Feed places the barrier has room for, and animals that want one. */
  readonly places: number;
  readonly head: number;
  readonly placeM: number;
  readonly animalM: number;
  readonly animalWideM: number;
  /** Free behind a feeding animal on the stance, and wanted, m. */
  readonly behindM: number;
  readonly wantedM: number;
  readonly rules: string;
}

export const LOOK = { bed: '#e6cb8b', stance: '#d3cdbf', trough: '#8a5a33', slats: '#a19b8f', way: '#124d2e', water: '#1f6f9f', pen: '#c9a75a', cow: '#7c3f1d', wall: '#4d5d63', alarm: '#9b1c1c' } as const; // biome-ignore format: one palette
const WALL = 0.15;

/** Animals at the barrier seen from above: as many as there are, as far as the barrier reaches. */
export function places(
  { places: count, head, placeM, animalM, animalWideM, lengthM }: PlanScene,
  px: number,
): Shape[] {
  const shapes: Shape[] = [];
  for (let k = 0; k < Math.min(count, head); k++) {
    const x = (k + 0.5) * placeM;
    const w = Math.min(animalWideM, placeM * 0.9) / 2;
    shapes.push(
      { kind: 'path', part: 'feedPlace', points: [[(k + 1) * placeM, -0.1], [(k + 1) * placeM, 0.35]], stroke: INK, weightM: px },
      { kind: 'path', part: 'cowHead', points: [[x - 0.1, 0.15], [x - 0.09, -0.3], [x, -0.42], [x + 0.09, -0.3], [x + 0.1, 0.15]], closed: true, smooth: true, fill: LOOK.cow },
      { kind: 'path', part: 'cowBody', points: [[x - w * 0.5, 0.1], [x - w, animalM * 0.25], [x - w * 0.9, animalM * 0.9], [x, animalM], [x + w * 0.9, animalM * 0.9], [x + w, animalM * 0.25], [x + w * 0.5, 0.1]], closed: true, smooth: true, fill: LOOK.cow },
    ); // biome-ignore format: pairs
  }
  shapes.push({ kind: 'path', part: 'barrier', points: [[0, 0], [lengthM, 0]], stroke: INK, weightM: 3 * px }); // biome-ignore format: pairs
  return shapes;
}

export function posts({ frames, rows }: PlanScene): Shape[] {
  return frames.flatMap((x) =>
    rows.map(
      (y): Shape => ({
        kind: 'path',
        part: 'post',
        points: box(x - 0.12, y - 0.12, x + 0.12, y + 0.12),
        closed: true,
        fill: LOOK.wall,
      }),
    ),
  );
}

/** Solid walls round bed or slats with their ways out, and gates at both ends of the solid floor. */
export function wallsAndExits(scene: PlanScene, px: number, size: number, narrow: boolean): Shape[] {
  const { lengthM: l, depthM: d, rowFromM, exits, floor } = scene;
  const line = (part: string, from: Point, to: Point, more: Partial<PathShape>): Shape => ({ kind: 'path', part, points: [from, to], ...more }); // biome-ignore format: one shape
  const gate = { stroke: LOOK.way, weightM: 3 * px, dash: [6 * px, 4 * px] };
  const sides = {
    near: { from: rowFromM, to: d, at: (along: number): Point => [0, along] },
    far: { from: rowFromM, to: d, at: (along: number): Point => [l, along] },
    rear: { from: 0, to: l, at: (along: number): Point => [along, d] },
  } as const;
  const walled = (Object.keys(sides) as (keyof typeof sides)[]).flatMap((wall): Shape[] => {
    const { from, to, at } = sides[wall];
    const gaps = exits.filter((exit) => exit.wall === wall).sort((one, two) => one.fromM - two.fromM);
    const starts = [from, ...gaps.map(({ toM }) => toM)];
    const ends = [...gaps.map(({ fromM }) => fromM), to];
    return [
      ...starts.map((start, k) => line('wall', at(start), at(ends[k]), { stroke: LOOK.wall, weightM: WALL })),
      ...gaps.map(({ fromM, toM }) => line('exit', at(fromM), at(toM), gate)),
    ];
  });
  const named = exits.find(({ wall }) => wall === 'near') ?? exits[0];
  const place: Point | undefined =
    named &&
    (named.wall === 'rear'
      ? [(named.fromM + named.toM) / 2, d - size * 1.4]
      : [size * 0.5, (named.fromM + named.toM) / 2 - size * 0.3]);
  return [
    ...walled,
    ...(floor.solidDepthM > 0
      ? [0, l].map((x) => line('gate', [x, 0], [x, floor.solidDepthM], gate))
      : []),
    ...(place
      ? [{ kind: 'text', part: 'exitText', at: place, text: narrow ? 'out' : `way out ${(named.toM - named.fromM).toFixed(2)} m`, sizeM: size * 0.9, anchor: named.wall === 'rear' ? 'middle' : 'start', fill: LOOK.way, halo: scene.bedded ? LOOK.bed : LOOK.slats } as const]
      : []),
  ]; // biome-ignore format: one shape a line
}

/** Ramps from the height of the bed down to the ground outside its ways out. */
export function ramps(
  { lengthM: l, depthM: d, exits, rampM }: PlanScene,
  size: number,
  narrow: boolean,
): Shape[] {
  if (rampM <= 0) return [];
  return exits.flatMap(({ wall, fromM, toM }, k): Shape[] => {
    const corners =
      wall === 'near' ? box(-rampM, fromM, 0, toM) : wall === 'far' ? box(l, fromM, l + rampM, toM) : box(fromM, d, toM, d + rampM); // biome-ignore format: three walls
    const middle = (fromM + toM) / 2;
    const [foot, top]: [Point, Point] =
      wall === 'near' ? [[-rampM, middle], [-rampM * 0.12, middle]] : wall === 'far' ? [[l + rampM, middle], [l + rampM * 0.12, middle]] : [[middle, d + rampM], [middle, d + rampM * 0.12]]; // biome-ignore format: three walls
    return [
      { kind: 'path', part: 'ramp', points: corners, closed: true, fill: LOOK.stance, stroke: LOOK.wall, weightM: 0.05, opacity: 0.75 },
      { kind: 'path', part: 'rampUp', points: [foot, top], stroke: LOOK.wall, weightM: 0.07 },
      ...(k === 0 && !narrow ? [{ kind: 'text', part: 'rampText', at: [(foot[0] + top[0]) / 2, wall === 'rear' ? d + rampM * 0.35 : middle + size * 0.4], text: `ramp ${rampM.toFixed(1)} m`, sizeM: size * 0.85, fill: INK, halo: PAPER } as const] : []),
    ]; // biome-ignore format: one shape a line
  });
}

/** The way of a low-ranking animal behind those that feed. */
export function wayBehind(
  { lengthM: l, animalM, behindM, wantedM, floor, depthM }: PlanScene,
  px: number,
  size: number,
  narrow: boolean,
): Shape[] {
  if (behindM <= 0.1) return [];
  const solid = floor.solidDepthM;
  const reach = solid > animalM + 0.1 ? solid : Math.min(depthM, animalM + 2);
  const y = (animalM + reach) / 2;
  const enough = behindM >= wantedM;
  const ink = enough ? LOOK.way : LOOK.alarm;
  const head = Math.min(size * 0.6, 0.4);
  return [
    { kind: 'path', part: 'wayBehind', points: [[l * 0.03, y], [l * 0.97, y]], stroke: ink, weightM: 2 * px, dash: [8 * px, 4 * px] },
    ...[l * 0.03, l * 0.97].map((x, k): Shape => {
      const back = k === 0 ? head : -head;
      return { kind: 'path', part: 'wayArrow', points: [[x, y], [x + back, y + head * 0.6], [x + back, y - head * 0.6]], closed: true, fill: ink };
    }),
    { kind: 'text', part: 'wayText', at: [l / 2, y + size * 0.35], text: `${behindM.toFixed(2)} m to pass behind${narrow || enough ? '' : `, ${wantedM.toFixed(2)} m wanted`}`, sizeM: size, fill: ink, halo: solid > animalM + 0.1 ? LOOK.stance : LOOK.bed },
  ]; // biome-ignore format: pairs
}

export function water({ lengthM: l, bowls, depthM, floor, bedded }: PlanScene, size: number): Shape[] {
  const y = bedded && floor.solidDepthM > 0 ? floor.solidDepthM : depthM - 0.35;
  const r = Math.max(0.22, size * 0.3);
  // On slats the bowls hang on the rear wall beside the pens.
  const long = bedded ? l : l - floor.pensLengthM;
  return Array.from({ length: bowls }, (_, k): Shape => {
    // Bowls stand as far apart as the shed allows, so that one animal cannot guard them all.
    const x = bowls === 1 ? long / 2 : r * 1.5 + ((long - 3 * r) * k) / (bowls - 1);
    return { kind: 'path', part: 'water', points: [[x - r, y], [x, y + r], [x + r, y], [x, y - r]], closed: true, smooth: true, fill: LOOK.water, stroke: PAPER, weightM: r / 6 };
  }); // biome-ignore format: a round of four points
}

/** A part of the floor with its area written in it. */
function area(
  part: string,
  points: Point[],
  m2: number,
  name: string,
  fill: string,
  size: number,
  upM = 0.5,
): Shape[] {
  const [[x0, y0], , [x1, y1]] = points;
  return [
    { kind: 'path', part, points, closed: true, fill, stroke: LOOK.wall, weightM: 0.08 },
    {
      kind: 'text',
      part: `${part}Text`,
      at: [(x0 + x1) / 2, y0 + (y1 - y0) * upM],
      text: `${name}${m2.toFixed(0)} m²`,
      sizeM: size,
      fill: INK,
      halo: fill,
    },
  ];
}

export function slats({ floor, tankM, channel }: PlanScene, size: number, narrow: boolean): Shape[] {
  const { slatsLengthM: long, slatsDepthM: deep, slatsFromM: y } = floor;
  if (long * deep <= 0) return [];
  const m2 = long * deep;
  const below = `${channel ? 'channel' : 'tank'} ${tankM.toFixed(2)} m deep below: ${(m2 * tankM).toFixed(0)} m³`;
  const shapes = area('slats', box(0, y, long, y + deep), m2, narrow ? '' : 'slats ', LOOK.slats, size, 0.62);
  const gaps: Shape[] = [];
  // Drawn wider apart than they lie, so that they stay lines on paper and phone.
  const step = Math.max(0.165, size * 0.42);
  for (let x = step; x < long - step / 2; x += step)
    gaps.push({ kind: 'path', part: 'slatGap', points: [[x, y + 0.1], [x, y + deep - 0.1]], stroke: LOOK.stance, weightM: step * 0.16, opacity: 0.7 }); // biome-ignore format: pairs
  const [floorShape, text] = shapes;
  return [
    floorShape,
    ...gaps,
    text,
    ...(narrow ? [] : [{ kind: 'text', part: 'tankText', at: [long / 2, y + deep * 0.62 - size * 1.3], text: below, sizeM: size * 0.9, fill: INK, halo: LOOK.slats } as const]),
  ]; // biome-ignore format: one shape a line
}

/** Pens at the far end of the rear wall, with the partitions between them. */
export function pens({ floor, lengthM: l, depthM: d }: PlanScene, size: number, narrow: boolean): Shape[] {
  const { pensM2, pensLengthM: long, pensDepthM: deep, pensCount } = floor;
  if (pensM2 <= 0) return [];
  return [
    ...area('pens', box(l - long, d - deep, l, d), pensM2, narrow ? '' : 'pens ', LOOK.pen, size),
    ...Array.from({ length: pensCount }, (_, k): Shape => {
      const x = l - long + (k * long) / pensCount;
      return { kind: 'path', part: 'partition', points: [[x, d - deep], [x, d]], stroke: LOOK.wall, weightM: 0.08 };
    }),
  ]; // biome-ignore format: pairs
}

/** Plan of the shed: bed, stance, feed places, the way behind a feeding animal, water and ways out, to scale. */
import type { CheckInput } from '../model/checks/check.ts';
import { contextOf } from '../model/checks/context.ts';
import { herdNeed, ruleName } from '../model/checks/spaceRules.ts';
import { frameLines, postRows, type ShedFloor } from '../model/works/geometry.ts';
import {
  box,
  type DimensionStyle,
  type Drawing,
  dimension,
  type Point,
  type Shape,
  toElement,
} from './drawing.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { INK, PAPER } from './palette.ts';

const LOOK = { bed: '#e6cb8b', stance: '#d3cdbf', trough: '#8a5a33', slats: '#8f8a80', way: '#124d2e', water: '#1f6f9f', pen: '#c9a75a', cow: '#7c3f1d', wall: '#4d5d63', alarm: '#9b1c1c' } as const; // biome-ignore format: one palette
const TROUGH = 0.8;
const WALL = 0.15;
const TEXT_PX = 12;
const NARROW_PX = 560;

export interface PlanScene {
  readonly lengthM: number;
  readonly depthM: number;
  readonly stanceM: number;
  readonly floor: ShedFloor;
  /** Frames along the shed and rows of posts from the barrier, m; none without a roof. */
  readonly frames: readonly number[];
  readonly rows: readonly number[];
  /** Width of the feed road under the roof, m. */
  readonly roadM: number;
  readonly exits: number;
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

/** The numbers of the plan, or a sentence that says why there is none. Throws MissingRow. */
export function planScene(input: CheckInput): PlanScene | string {
  const c = contextOf(input);
  const { shed } = c;
  if (!c.housed) return 'This scenario has no shed to draw.';
  const length = c.largest('standingLengthM');
  const width = c.largest('bodyWidthM');
  if (!length || !width || c.head === 0) return 'There are no animals in the shed.';
  if (shed.depthM < length.size)
    return `The shed (${shed.depthM} m deep) is shallower than an animal (${length.size} m): nothing to draw.`;
  const set = c.scenario.farm.spaceRules;
  const own = herdNeed(set, 'feed', c.herd, c.row);
  const need = own ?? herdNeed('sweden', 'feed', c.herd, c.row);
  const placeM = need ? need.total / c.head : width.size;
  const ranked = c.horned || set === 'commonPracticeHorned';
  const { floor, frame, roadM } = c.built();
  const stanceM = c.bedded ? floor.solidDepthM : shed.depthM;
  return {
    lengthM: shed.lengthM,
    depthM: shed.depthM,
    stanceM,
    floor,
    frames: frame.bays > 0 ? frameLines(shed.lengthM, frame.bays) : [],
    rows: frame.bays > 0 ? postRows(shed.depthM, frame.rows, roadM) : [],
    roadM,
    exits: shed.exits,
    bowls: shed.waterBowls,
    openAzimuthDeg: shed.openSideAzimuthDeg,
    places: Math.floor(shed.lengthM / placeM + 1e-9),
    head: c.head,
    placeM,
    animalM: length.size,
    animalWideM: width.size,
    behindM: (stanceM > 0 ? stanceM : shed.depthM) - length.size,
    wantedM: c.row(ranked ? 'commonPracticeHornedAlleyM' : 'commonPracticeStanceDepthM').low - length.size,
    rules: ruleName(own ? set : 'sweden', c.country),
  };
}

/** Plan with the open side below; x along the shed, y from the open side inwards, in metres. */
export function planDrawing(scene: PlanScene, widthPx: number): Drawing {
  const narrow = widthPx < NARROW_PX;
  const px = (scene.lengthM + 1) / Math.max(120, widthPx - TEXT_PX * (narrow ? 4 : 8));
  const size = TEXT_PX * px;
  const style: DimensionStyle = { ink: INK, halo: PAPER, sizeM: size, weightM: px };
  const { lengthM: l, depthM: d, stanceM } = scene;
  const shapes: Shape[] = [
    { kind: 'path', part: 'stance', points: box(0, 0, l, stanceM), closed: true, fill: LOOK.stance },
    { kind: 'path', part: 'bed', points: box(0, stanceM, l, d), closed: true, fill: LOOK.bed },
    ...(scene.roadM > 0 ? [{ kind: 'path' as const, part: 'feedRoad', points: box(0, -scene.roadM, l, 0), closed: true, fill: LOOK.stance, opacity: 0.5 }] : []),
    { kind: 'path', part: 'trough', points: box(0, -TROUGH, l, 0), closed: true, fill: LOOK.trough, opacity: 0.55 },
    ...slats(scene, size, narrow),
    ...pens(scene, size, narrow),
    ...places(scene, px),
    ...posts(scene),
    ...wallsAndExits(scene, px, size, narrow),
    ...wayBehind(scene, px, size, narrow),
    ...water(scene, size),
    { kind: 'text', part: 'bedText', at: [l * 0.3, stanceM + (d - stanceM) * 0.45], text: stanceM < d ? `bed ${(l * (d - stanceM)).toFixed(0)} m²` : '', sizeM: size, fill: INK, halo: LOOK.bed },
    ...dimension('length', [0, -TROUGH - size * 2.4], [l, -TROUGH - size * 2.4], `${l.toFixed(2)} m`, style),
    { kind: 'text', part: 'openText', at: [l / 2, -TROUGH - size * 1.1], text: narrow ? `open side, ${compass(scene.openAzimuthDeg)}` : `feed road and open side, facing ${compass(scene.openAzimuthDeg)}`, sizeM: size, fill: INK, halo: PAPER },
    ...dimension('depth', [l + size * 1.6, 0], [l + size * 1.6, d], `${d.toFixed(2)} m`, style),
  ]; // biome-ignore format: one shape a line
  return {
    left: -size * 1.6,
    right: l + size * 2.6,
    top: d + size * 1.6,
    bottom: -Math.max(TROUGH + size * 3.2, scene.roadM + size),
    hatches: [],
    shapes,
  };
}

function compass(azimuthDeg: number): string {
  const names = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
  return names[Math.round(azimuthDeg / 45) % 8];
}

/** Animals at the barrier seen from above: as many as there are, as far as the barrier reaches. */
function places(
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

function posts({ frames, rows }: PlanScene): Shape[] {
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

/** Walls on three sides with gaps for the ways out: the ends first, then along the rear wall. */
function wallsAndExits(
  { lengthM: l, depthM: d, stanceM, exits }: PlanScene,
  px: number,
  size: number,
  narrow: boolean,
): Shape[] {
  const wide = Math.min(3, Math.max(1, (d - stanceM) * 0.5));
  const wall = (from: Point, to: Point): Shape => ({
    kind: 'path',
    part: 'wall',
    points: [from, to],
    stroke: LOOK.wall,
    weightM: WALL,
  });
  const gap = (part: string, from: Point, to: Point): Shape => ({
    kind: 'path',
    part,
    points: [from, to],
    stroke: LOOK.way,
    weightM: 3 * px,
    dash: [6 * px, 4 * px],
  });
  const middle = stanceM < d ? stanceM + (d - stanceM) / 2 : d / 2;
  const shapes: Shape[] = [];
  [0, l].forEach((x, k) => {
    if (exits > k) {
      shapes.push(
        wall([x, 0], [x, middle - wide / 2]),
        wall([x, middle + wide / 2], [x, d]),
        gap('exit', [x, middle - wide / 2], [x, middle + wide / 2]),
      );
      shapes.push({
        kind: 'text',
        part: 'exitText',
        at: [x + (k === 0 ? 1 : -1) * size * 0.5, middle + wide / 2 + size * 0.3],
        text: narrow ? 'out' : 'way out',
        sizeM: size,
        anchor: k === 0 ? 'start' : 'end',
        fill: LOOK.way,
        halo: LOOK.bed,
      });
    } else shapes.push(wall([x, 0], [x, d]));
  });
  const rear = Math.max(0, exits - 2);
  let x = 0;
  for (let k = 0; k < rear; k++) {
    const at = (l * (k + 1)) / (rear + 1);
    const half = Math.min(1.5, l / (rear + 1) / 3);
    shapes.push(wall([x, d], [at - half, d]), gap('exit', [at - half, d], [at + half, d]));
    x = at + half;
  }
  shapes.push(wall([x, d], [l, d]));
  return shapes;
}

/** The way of a low-ranking animal behind those that feed. */
function wayBehind(
  { lengthM: l, animalM, behindM, wantedM, stanceM, depthM }: PlanScene,
  px: number,
  size: number,
  narrow: boolean,
): Shape[] {
  if (behindM <= 0.1) return [];
  const reach = stanceM > 0 ? stanceM : Math.min(depthM, animalM + 2);
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
    { kind: 'text', part: 'wayText', at: [l / 2, y + size * 0.35], text: `${behindM.toFixed(2)} m to pass behind${narrow || enough ? '' : `, ${wantedM.toFixed(2)} m wanted`}`, sizeM: size, fill: ink, halo: stanceM > 0 ? LOOK.stance : LOOK.bed },
  ]; // biome-ignore format: pairs
}

function water({ lengthM: l, bowls, stanceM, depthM }: PlanScene, size: number): Shape[] {
  const y = stanceM > 0 && stanceM < depthM ? stanceM : depthM - 0.35;
  const r = Math.max(0.22, size * 0.3);
  return Array.from({ length: bowls }, (_, k): Shape => {
    // Bowls stand as far apart as the shed allows, so that one animal cannot guard them all.
    const x = bowls === 1 ? l / 2 : r * 1.5 + ((l - 3 * r) * k) / (bowls - 1);
    return { kind: 'path', part: 'water', points: [[x - r, y], [x, y + r], [x + r, y], [x, y - r]], closed: true, smooth: true, fill: LOOK.water, stroke: PAPER, weightM: r / 6 };
  }); // biome-ignore format: a round of four points
}

/** A part of the floor with its area written in it. */
function area(part: string, points: Point[], m2: number, name: string, fill: string, size: number): Shape[] {
  const [[x0, y0], , [x1, y1]] = points;
  return [
    { kind: 'path', part, points, closed: true, fill, stroke: LOOK.wall, weightM: 0.08 },
    {
      kind: 'text',
      part: `${part}Text`,
      at: [(x0 + x1) / 2, (y0 + y1) / 2],
      text: `${name}${m2.toFixed(0)} m²`,
      sizeM: size,
      fill: INK,
      halo: fill,
    },
  ];
}

function slats({ floor }: PlanScene, size: number, narrow: boolean): Shape[] {
  const { slatsLengthM: long, slatsDepthM: deep, slatsFromM: y } = floor;
  if (long * deep <= 0) return [];
  return area('slats', box(0, y, long, y + deep), long * deep, narrow ? '' : 'slats ', LOOK.slats, size);
}

/** Pens at the far end of the rear wall, with the partitions between them. */
function pens({ floor, lengthM: l, depthM: d }: PlanScene, size: number, narrow: boolean): Shape[] {
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

/** What the plan shows in one sentence. */
function planFinding(scene: PlanScene): string {
  const { places: room, head, behindM, wantedM, exits, bowls, rules } = scene;
  const feed =
    room >= head ? `all ${head} animals can eat at once` : `${room} of ${head} animals can eat at once`;
  const pass = behindM >= wantedM ? 'enough' : `less than the ${wantedM.toFixed(2)} m wanted`;
  return `At the widths of ${rules}, ${feed}; ${Math.max(0, behindM).toFixed(2)} m is left on the stance to pass behind them, ${pass}; ${exits} ways out and ${bowls} water bowls.`;
}

export function planFigure(input: CheckInput): Figure {
  const scene = planScene(input);
  if (typeof scene === 'string') return emptyFigure(scene);
  const rows: [string, string][] = [
    ['Length × depth, m', `${scene.lengthM.toFixed(2)} × ${scene.depthM.toFixed(2)}`],
    ['Stance, m', scene.stanceM.toFixed(2)],
    ['Bed, m²', (scene.lengthM * (scene.depthM - scene.stanceM)).toFixed(0)],
    ['Feed place, m a head', scene.placeM.toFixed(2)],
    ['Feed places and animals', `${scene.places} and ${scene.head}`],
    ['To pass behind, m (wanted)', `${Math.max(0, scene.behindM).toFixed(2)} (${scene.wantedM.toFixed(2)})`],
    ['Ways out', String(scene.exits)],
    ['Water bowls', String(scene.bowls)],
    ['Slats, m²', (scene.floor.slatsLengthM * scene.floor.slatsDepthM).toFixed(0)],
    ['Calving and sick pens, m²', scene.floor.pensM2.toFixed(0)],
    ['Posts', String(scene.frames.length * scene.rows.length)],
  ];
  return {
    finding: planFinding(scene),
    table: { caption: 'The plan in numbers', head: ['', ''], rows },
    legend: [
      { label: 'bed', fill: LOOK.bed },
      { label: 'stance', fill: LOOK.stance },
      { label: 'trough', fill: LOOK.trough },
      { label: 'slats', fill: LOOK.slats },
      { label: 'way out, way behind', fill: LOOK.way },
      { label: 'water', fill: LOOK.water },
    ],
    caption:
      'Drawn to scale. Frames, posts, slats and pens stand as the bill counts them. Places of gates and water are a proposal; pens take their area from the bed, or from the row of slats; the law’s widths are to be checked locally.',
    draw: (width) => toElement(planDrawing(scene, width), planFinding(scene)),
  };
}

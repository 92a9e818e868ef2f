/**
 * The one geometry of a shed: what stands where. Bill, plan, section and checks all measure here and nowhere else.
 *
 * x runs along the open side, y from the barrier at the open side (0) to the rear wall (depth). The feed road lies
 * outside the barrier at y < 0; where it is roofed, the front slope of the roof runs on over it to a row of posts of its
 * own. A bed leaves the stance along the barrier; slats beside a bed lie in the stance, from x = 0 on. Without a bed,
 * slats and pens share a row along the rear wall, over the whole length, and what is left before it is solid floor.
 * Calving pens stand at the far end (x = length) of the bed's rear wall, or of the row of slats.
 *
 * Ways out go through the end walls of bed or slats where there is room for one beside the pens, the others through
 * the rear wall. Gates hang in them and at both ends of the solid floor.
 *
 * Quantities for a bill and lines for a drawing only; sections are an engineer's, never this program's.
 */

import { frontRise, type RoofShape, rearRise, roofAtM, roofShape } from './roof.ts';

/** All in metres and square metres; without a plan everything measures 0. */
export interface ShedShape {
  lengthM: number;
  /** From the barrier to the rear wall; the feed road is not part of it. */
  depthM: number;
  /** As wished; held inside the depth. */
  stanceDepthM: number;
  /** Above 0 where there is a bed. */
  bedShare: number;
  slatsM2: number;
  calvingPensM2: number;
  calvingPenSideM: number;
  /** Floor of one calving pen. */
  calvingPenM2: number;
  /** Width of the feed road under the roof; 0 where the road lies open. */
  feedRoadM: number;
  /** Ways out of bed or slats, and how wide one is where its wall is long enough. */
  exits: number;
  exitWidthM: number;
}

export interface ShedFloor {
  planM2: number;
  /** Solid floor along the barrier; in a shed of slats alone, what their row leaves. */
  solidDepthM: number;
  /** Concrete to walk, feed and calve on, without slats. */
  solidM2: number;
  /** The bed with the pens in it; 0 without a bed. */
  bedDepthM: number;
  bedM2: number;
  slatsLengthM: number;
  slatsDepthM: number;
  /** Nearest edge of the slats to the barrier. */
  slatsFromM: number;
  pensM2: number;
  pensLengthM: number;
  pensDepthM: number;
  pensCount: number;
  /** Fronts and sides of the pens; walls and feed barrier are not counted again. */
  partitionsM: number;
  /** Solid wall at the rear and at both ends of bed or slats, without the ways out. */
  wallsM: number;
  /** Ways out through those walls, all of them together, m. */
  exitsM: number;
  /** Gates in the ways out and at both ends of the solid floor. */
  gatesCount: number;
}

/** Fills `out` (reused, so that a loop over rows makes nothing). */
export function shedFloor(shape: Readonly<ShedShape>, out: ShedFloor): ShedFloor {
  const { lengthM, depthM } = shape;
  const bedded = shape.bedShare > 0;
  out.planM2 = lengthM * depthM;
  out.solidDepthM = out.solidM2 = out.bedDepthM = out.bedM2 = out.slatsLengthM = out.slatsDepthM = 0;
  out.slatsFromM = out.pensM2 = out.pensLengthM = out.pensDepthM = out.pensCount = 0;
  out.partitionsM = out.wallsM = out.exitsM = out.gatesCount = 0;
  if (!(out.planM2 > 0) || !(bedded || shape.slatsM2 > 0)) {
    out.planM2 = 0;
    return out;
  }
  if (bedded) {
    out.solidDepthM = Math.min(shape.stanceDepthM, depthM);
    out.bedDepthM = depthM - out.solidDepthM;
    out.bedM2 = lengthM * out.bedDepthM;
    if (shape.slatsM2 > 0 && out.solidDepthM > 0) {
      out.slatsDepthM = out.solidDepthM;
      out.slatsLengthM = Math.min(lengthM, shape.slatsM2 / out.solidDepthM);
    }
  }
  const rowM = bedded ? out.bedDepthM : Math.min(depthM, (shape.slatsM2 + shape.calvingPensM2) / lengthM);
  if (shape.calvingPensM2 > 0 && rowM > 0) {
    out.pensM2 = Math.min(shape.calvingPensM2, lengthM * rowM);
    out.pensDepthM = bedded ? Math.min(rowM, Math.max(shape.calvingPenSideM, out.pensM2 / lengthM)) : rowM;
    out.pensLengthM = out.pensM2 / out.pensDepthM;
    out.pensCount = Math.max(1, Math.floor(out.pensM2 / shape.calvingPenM2 + 1e-9));
    out.partitionsM = out.pensCount * out.pensDepthM + (bedded ? out.pensLengthM : 0);
  }
  if (!bedded) {
    out.solidDepthM = depthM - rowM;
    out.slatsDepthM = rowM;
    out.slatsFromM = out.solidDepthM;
    out.slatsLengthM = Math.min(lengthM - out.pensLengthM, shape.slatsM2 / rowM);
  }
  out.solidM2 =
    lengthM * (out.solidDepthM + shape.feedRoadM) -
    (bedded ? out.slatsLengthM * out.slatsDepthM : 0) +
    (bedded ? 0 : out.pensM2);
  const ends = endExits(shape, out, rowM);
  const rear = Math.max(0, shape.exits - ends);
  out.exitsM = rowM > 0 ? ends * shape.exitWidthM + rear * rearExitM(shape, out, rear) : 0;
  out.wallsM = lengthM + 2 * rowM - out.exitsM;
  out.gatesCount = (out.solidDepthM > 0 ? 2 : 0) + (rowM > 0 ? shape.exits : 0);
  return out;
}

/** Length of the end wall at the far end that no pen stands against, m. */
const farEndM = (shape: Readonly<ShedShape>, floor: Readonly<ShedFloor>, rowM: number) =>
  floor.pensM2 > 0 ? (shape.bedShare > 0 ? rowM - floor.pensDepthM : 0) : rowM;

/** Ways out through the end walls: one in each that is long enough, the near one first. */
function endExits(shape: Readonly<ShedShape>, floor: Readonly<ShedFloor>, rowM: number): number {
  const near = rowM >= shape.exitWidthM ? 1 : 0;
  const far = farEndM(shape, floor, rowM) >= shape.exitWidthM ? 1 : 0;
  return Math.min(shape.exits, near + far);
}

/** Rear wall beside the pens, m; all of it where pens take it all. */
const freeRearM = (shape: Readonly<ShedShape>, floor: Readonly<ShedFloor>) =>
  floor.pensLengthM < shape.lengthM - 1e-9 ? shape.lengthM - floor.pensLengthM : shape.lengthM;

/** Width of one of `count` ways out through the rear wall, m. */
const rearExitM = (shape: Readonly<ShedShape>, floor: Readonly<ShedFloor>, count: number) =>
  Math.min(shape.exitWidthM, (freeRearM(shape, floor) / (count + 1)) * (2 / 3));

/** A way out: the wall it goes through, and where on it from and to, m along x at the rear, along y at the ends. */
export interface WayOut {
  readonly wall: 'near' | 'far' | 'rear';
  readonly fromM: number;
  readonly toM: number;
}

/**
 * Where the ways out of a shed's floor are: what `exitsM` is the sum of. Each stands as near the middle of its wall as
 * the posts in that wall let it: `rows` across the shed, `frames` along it.
 */
export function waysOut(
  shape: Readonly<ShedShape>,
  floor: Readonly<ShedFloor>,
  rows: readonly number[],
  frames: readonly number[],
): WayOut[] {
  const rowM = shape.bedShare > 0 ? floor.bedDepthM : floor.slatsDepthM;
  if (!(rowM > 0)) return [];
  const rowFromM = shape.depthM - rowM;
  const ends = [
    { wall: 'near', longM: rowM },
    { wall: 'far', longM: farEndM(shape, floor, rowM) },
  ] as const;
  const out = ends
    .filter(({ longM }) => longM >= shape.exitWidthM)
    .slice(0, shape.exits)
    .map(({ wall, longM }) => {
      const span = [rowFromM, rowFromM + longM] as const;
      return { wall, ...clearOfPosts(rowFromM + longM / 2, shape.exitWidthM, span, rows) };
    });
  const rear = Math.max(0, shape.exits - out.length);
  const freeM = freeRearM(shape, floor);
  return [
    ...out,
    ...Array.from({ length: rear }, (_, k): WayOut => {
      const middle = ((k + 1) * freeM) / (rear + 1);
      const half = freeM / (rear + 1) / 2;
      const span = [middle - half, middle + half] as const;
      return { wall: 'rear', ...clearOfPosts(middle, rearExitM(shape, floor, rear), span, frames) };
    }),
  ];
}

/** Half a post and a little air, m. */
const POST_SIDE = 0.15;

/** An opening as near `middleM` as it can stand inside `span` with no post in it; in the middle where none can. */
function clearOfPosts(
  middleM: number,
  widthM: number,
  [fromM, toM]: readonly [number, number],
  posts: readonly number[],
): { fromM: number; toM: number } {
  const half = widthM / 2;
  const free = (at: number) =>
    at - half >= fromM - 1e-9 &&
    at + half <= toM + 1e-9 &&
    posts.every((post) => Math.abs(post - at) >= half + POST_SIDE - 1e-9);
  const tried = [middleM, ...posts.flatMap((post) => [post - half - POST_SIDE, post + half + POST_SIDE])];
  const at = tried.filter(free).sort((a, b) => Math.abs(a - middleM) - Math.abs(b - middleM))[0] ?? middleM;
  return { fromM: at - half, toM: at + half };
}

/** Water bowls that are built: those named, or one for every so many head where these are more. */
export const bowlsBuilt = (named: number, head: number, headPerBowl: number): number =>
  Math.max(named, Math.ceil(head / headPerBowl - 1e-9));

export interface FrameShape {
  lengthM: number;
  depthM: number;
  feedRoadM: number;
  eaveM: number;
  /** Not a number where both eaves are alike. */
  rearEaveM?: number | undefined;
  pitchDeg: number;
  overhangM: number;
  bayM: number;
  /** Widest span between rows of posts, m on plan. */
  postRowSpanM: number;
  /** Longest piece that can be had, m along the piece. */
  longestTimberM: number;
  purlinSpacingM: number;
  /** Height of solid walls at rear and ends, m; cladding begins above. */
  wallM: number;
}

export interface ShedFrame {
  /** Bays and the rows of posts between barrier and rear wall, both walls counted, spaced evenly. */
  bays: number;
  rows: number;
  /** With the row beyond a roofed feed road. */
  posts: number;
  /** Running metres of each: a post reaches from the floor to the roof over it. */
  postM: number;
  rafterM: number;
  purlins: number;
  purlinM: number;
  /** Along both slopes from edge to edge. */
  slopeM: number;
  roofM2: number;
  claddingM2: number;
  gutterM: number;
}

const roof = {} as RoofShape;
const hypotenuse = (rise: number) => Math.sqrt(1 + rise * rise);

/** Timber frame under a roof of one or two slopes, open at the front; all 0 without a plan. Fills `out`. */
export function shedFrame(shape: Readonly<FrameShape>, out: ShedFrame): ShedFrame {
  const { lengthM, depthM, overhangM, feedRoadM } = shape;
  out.bays = out.rows = out.posts = out.postM = out.rafterM = out.purlins = out.purlinM = out.slopeM = 0;
  out.roofM2 = out.claddingM2 = out.gutterM = 0;
  if (!(lengthM * depthM > 0)) return out;
  roofShape(shape, roof);
  const front = frontRise(roof, depthM);
  const rear = rearRise(roof, depthM);
  const roofLengthM = lengthM + 2 * overhangM;
  out.slopeM =
    (roof.ridgeXM + feedRoadM + overhangM) * hypotenuse(front) +
    (depthM - roof.ridgeXM + overhangM) * hypotenuse(rear);
  // A rafter piece must reach from one row of posts to the next.
  const steepest = hypotenuse(Math.max(Math.abs(front), Math.abs(rear)));
  const spanM = Math.min(shape.postRowSpanM, shape.longestTimberM / steepest);
  out.rows = Math.ceil(depthM / spanM - 1e-9) + 1;
  const frames = Math.ceil(lengthM / shape.bayM - 1e-9) + 1;
  out.bays = frames - 1;
  out.posts = frames * (out.rows + (feedRoadM > 0 ? 1 : 0));
  out.postM = feedRoadM > 0 ? Math.max(0, roofAtM(roof, depthM, -feedRoadM)) : 0;
  out.postM = frames * (out.postM + postsAcrossM(roof, depthM, out.rows));
  out.rafterM = frames * out.slopeM;
  out.purlins = Math.ceil(out.slopeM / shape.purlinSpacingM - 1e-9) + 1;
  out.purlinM = out.purlins * roofLengthM;
  out.roofM2 = out.slopeM * roofLengthM;
  out.claddingM2 =
    lengthM * Math.max(0, roof.rearM - shape.wallM) +
    2 * aboveM2(0, roof.ridgeXM, roof.frontM - shape.wallM, roof.ridgeM - shape.wallM) +
    2 * aboveM2(roof.ridgeXM, depthM, roof.ridgeM - shape.wallM, roof.rearM - shape.wallM);
  // Water runs off both edges of two slopes and off the lower edge of one.
  const single = roof.frontM !== roof.rearM && (roof.ridgeXM === 0 || roof.ridgeXM === depthM);
  out.gutterM = (single ? 1 : 2) * roofLengthM;
  return out;
}

/** Posts of one frame together, m: rows spread evenly across the depth, each as high as the roof over it. */
function postsAcrossM(of: RoofShape, depthM: number, rows: number): number {
  const apartM = depthM / (rows - 1);
  // Under one slope heights rise evenly, so that the first and the last tell their sum.
  const front = Math.min(rows, Math.floor(of.ridgeXM / apartM + 1e-9) + 1);
  const rear = rows - front;
  const underFront = roofAtM(of, depthM, 0) + roofAtM(of, depthM, (front - 1) * apartM);
  if (!(rear > 0)) return (front * underFront) / 2;
  const underRear = roofAtM(of, depthM, front * apartM) + roofAtM(of, depthM, (rows - 1) * apartM);
  return (front * underFront + rear * underRear) / 2;
}

/** Area under a straight edge from `fromM` to `toM` that lies above 0: a trapeze, or the triangle left of one. */
function aboveM2(fromM: number, toM: number, startM: number, endM: number): number {
  const wide = toM - fromM;
  if (startM >= 0 && endM >= 0) return (wide * (startM + endM)) / 2;
  if (startM <= 0 && endM <= 0) return 0;
  const high = Math.max(startM, endM);
  return (wide * high * high) / (2 * Math.abs(endM - startM));
}

/** Distances along the shed at which frames stand, m from the first. */
export function frameLines(lengthM: number, bays: number): number[] {
  return Array.from({ length: bays + 1 }, (_, k) => (bays > 0 ? (k * lengthM) / bays : 0));
}

/** Distances from the barrier at which rows of posts stand, m; the row beyond a roofed feed road below 0. */
export function postRows(depthM: number, rows: number, feedRoadM: number): number[] {
  const inside = Array.from({ length: rows }, (_, k) => (rows > 1 ? (k * depthM) / (rows - 1) : 0));
  return feedRoadM > 0 ? [-feedRoadM, ...inside] : inside;
}

/**
 * Distances from the barrier of points spaced evenly along the slope, the first at the front edge of the roof and the
 * last at its rear edge: where purlins lie.
 */
export function alongSlope(shape: Readonly<FrameShape>, count: number): number[] {
  const { depthM, overhangM, feedRoadM } = shape;
  const of = roofShape(shape);
  const [front, rear] = [hypotenuse(frontRise(of, depthM)), hypotenuse(rearRise(of, depthM))];
  const before = (of.ridgeXM + feedRoadM + overhangM) * front;
  const whole = before + (depthM - of.ridgeXM + overhangM) * rear;
  return Array.from({ length: count }, (_, k) => {
    const at = count > 1 ? (k * whole) / (count - 1) : 0;
    return at <= before ? at / front - feedRoadM - overhangM : of.ridgeXM + (at - before) / rear;
  });
}

/**
 * How much heavier sections get with the snow: bending strength of a section goes with the square of its
 * depth, so its area at one width goes with the square root of the load.
 */
export function timberLoadFactor(snowKnPerM2: number, referenceKnPerM2: number, deadKnPerM2: number): number {
  return Math.sqrt((snowKnPerM2 + deadKnPerM2) / (referenceKnPerM2 + deadKnPerM2));
}

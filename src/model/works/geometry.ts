/**
 * The one geometry of a shed: what stands where. Bill, plan, section and checks all measure here and nowhere else.
 *
 * x runs along the open side, y from the barrier at the open side (0) to the rear wall (depth). The feed road lies
 * outside the barrier at y < 0; where it is roofed, the front slope of the roof runs on over it to a row of posts of its
 * own. A bed leaves the stance along the barrier; slats beside a bed lie in the stance, from x = 0 on. Without a bed,
 * slats and pens share a row along the rear wall, over the whole length, and what is left before it is solid floor.
 * Calving pens stand at the far end (x = length) of the bed's rear wall, or of the row of slats.
 *
 * Quantities for a bill and lines for a drawing only; sections are an engineer's, never this program's.
 */

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
  /** Solid wall at the rear and at both ends of bed or slats. */
  wallsM: number;
}

/** Fills `out` (reused, so that a loop over rows makes nothing). */
export function shedFloor(shape: Readonly<ShedShape>, out: ShedFloor): ShedFloor {
  const { lengthM, depthM } = shape;
  const bedded = shape.bedShare > 0;
  out.planM2 = lengthM * depthM;
  out.solidDepthM = out.solidM2 = out.bedDepthM = out.bedM2 = out.slatsLengthM = out.slatsDepthM = 0;
  out.slatsFromM = out.pensM2 = out.pensLengthM = out.pensDepthM = out.pensCount = 0;
  out.partitionsM = out.wallsM = 0;
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
  out.wallsM = lengthM + 2 * rowM;
  return out;
}

export interface FrameShape {
  lengthM: number;
  depthM: number;
  feedRoadM: number;
  eaveM: number;
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
  /** Running metres of each. */
  postM: number;
  rafterM: number;
  purlinM: number;
  roofM2: number;
  claddingM2: number;
  gutterM: number;
}

/** Timber frame under an even duo-pitch roof, open at the front; all 0 without a plan. Fills `out`. */
export function shedFrame(shape: Readonly<FrameShape>, out: ShedFrame): ShedFrame {
  const { lengthM, depthM, eaveM, pitchDeg, overhangM, feedRoadM } = shape;
  out.bays = out.rows = out.posts = out.postM = out.rafterM = out.purlinM = 0;
  out.roofM2 = out.claddingM2 = out.gutterM = 0;
  if (!(lengthM * depthM > 0)) return out;
  const pitch = (pitchDeg * Math.PI) / 180;
  const roofLengthM = lengthM + 2 * overhangM;
  const slopeM = (depthM + feedRoadM + 2 * overhangM) / Math.cos(pitch);
  // A rafter piece must reach from one row of posts to the next.
  const spanM = Math.min(shape.postRowSpanM, shape.longestTimberM * Math.cos(pitch));
  const rows = Math.ceil(depthM / spanM - 1e-9) + 1;
  const frames = Math.ceil(lengthM / shape.bayM - 1e-9) + 1;
  out.bays = frames - 1;
  out.rows = rows;
  out.posts = frames * (rows + (feedRoadM > 0 ? 1 : 0));
  // The roof of a duo-pitch stands on average a quarter of the depth's rise above the eave.
  const roadPostM = feedRoadM > 0 ? Math.max(0, eaveM - feedRoadM * Math.tan(pitch)) : 0;
  out.postM = frames * (rows * (eaveM + (depthM / 4) * Math.tan(pitch)) + roadPostM);
  out.rafterM = frames * slopeM;
  out.purlinM = (Math.ceil(slopeM / shape.purlinSpacingM - 1e-9) + 1) * roofLengthM;
  out.roofM2 = slopeM * roofLengthM;
  const aboveWallM = Math.max(0, eaveM - shape.wallM);
  out.claddingM2 = (lengthM + 2 * depthM) * aboveWallM + (depthM * depthM * Math.tan(pitch)) / 2;
  out.gutterM = 2 * roofLengthM;
  return out;
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
 * How much heavier sections get with the snow: bending strength of a section goes with the square of its
 * depth, so its area at one width goes with the square root of the load.
 */
export function timberLoadFactor(snowKnPerM2: number, referenceKnPerM2: number, deadKnPerM2: number): number {
  return Math.sqrt((snowKnPerM2 + deadKnPerM2) / (referenceKnPerM2 + deadKnPerM2));
}

/**
 * A timber-framed shed with an even duo-pitch roof, open at the front: how many posts and how much timber and
 * sheeting it takes. Quantities for a bill only; sections are an engineer's, never this program's.
 */

export interface ShedShape {
  lengthM: number;
  /** Front to back. */
  depthM: number;
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
  planM2: number;
  bays: number;
  posts: number;
  /** Running metres of each. */
  postM: number;
  rafterM: number;
  purlinM: number;
  roofM2: number;
  claddingM2: number;
  gutterM: number;
}

/** Fills `out` (reused, so that a loop over rows allocates nothing); all 0 when the shed has no plan. */
export function shedFrame(shape: Readonly<ShedShape>, out: ShedFrame): ShedFrame {
  const { lengthM, depthM, eaveM, pitchDeg, overhangM } = shape;
  const planM2 = lengthM * depthM;
  out.planM2 = planM2;
  out.bays = out.posts = out.postM = out.rafterM = out.purlinM = 0;
  out.roofM2 = out.claddingM2 = out.gutterM = 0;
  if (planM2 === 0) return out;
  const pitch = (pitchDeg * Math.PI) / 180;
  const roofLengthM = lengthM + 2 * overhangM;
  const slopeM = (depthM + 2 * overhangM) / Math.cos(pitch);
  // A rafter piece must reach from one row of posts to the next.
  const spanM = Math.min(shape.postRowSpanM, shape.longestTimberM * Math.cos(pitch));
  const rows = Math.ceil(depthM / spanM - 1e-9) + 1;
  const frames = Math.ceil(lengthM / shape.bayM - 1e-9) + 1;
  out.bays = frames - 1;
  out.posts = frames * rows;
  // The roof of a duo-pitch stands on average a quarter of the depth's rise above the eave.
  out.postM = out.posts * (eaveM + (depthM / 4) * Math.tan(pitch));
  out.rafterM = frames * slopeM;
  out.purlinM = (Math.ceil(slopeM / shape.purlinSpacingM - 1e-9) + 1) * roofLengthM;
  out.roofM2 = slopeM * roofLengthM;
  const aboveWallM = Math.max(0, eaveM - shape.wallM);
  out.claddingM2 = (lengthM + 2 * depthM) * aboveWallM + (depthM * depthM * Math.tan(pitch)) / 2;
  out.gutterM = 2 * roofLengthM;
  return out;
}

/**
 * How much heavier sections get with the snow: bending strength of a section goes with the square of its
 * depth, so its area at one width goes with the square root of the load.
 */
export function timberLoadFactor(snowKnPerM2: number, referenceKnPerM2: number, deadKnPerM2: number): number {
  return Math.sqrt((snowKnPerM2 + deadKnPerM2) / (referenceKnPerM2 + deadKnPerM2));
}

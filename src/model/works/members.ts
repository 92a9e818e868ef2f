/**
 * The members of the shed's frame, piece by piece, from the geometry the bill is counted from: how many, how long, how
 * thick, how much timber. Quantities to saw and buy by; sections, joints and grades are an engineer's and a grader's.
 */
import { type FrameShape, postRows, type ShedFrame } from './geometry.ts';
import { frontRise, rearRise, roofAtM, roofShape } from './roof.ts';

export interface Member {
  readonly part: string;
  /** Null for what is a share of the rest. */
  readonly pieces: number | null;
  /** Length of one piece, m. */
  readonly lengthM: number | null;
  /** Section, m; null for what is a share of the rest. */
  readonly widthM: number | null;
  readonly thickM: number | null;
  readonly m3: number;
  /** Longer than the longest piece that can be had: joined, or had from elsewhere. */
  readonly tooLong: boolean;
}

/** Area of a section for the reference snow, and its width; m² and m. */
export interface Section {
  readonly areaM2: number;
  readonly widthM: number;
}

export interface Sections {
  readonly post: Section;
  readonly rafter: Section;
  readonly purlin: Section;
  /** How much heavier than for the reference snow. */
  readonly snowFactor: number;
  readonly bracingFraction: number;
  readonly wasteFraction: number;
}

/** Pieces of the frame; their volumes add up to the timber of the bill. */
export function frameMembers(shape: FrameShape, frame: ShedFrame, sections: Sections): Member[] {
  if (frame.bays === 0) return [];
  const frames = frame.bays + 1;
  const pieces = [
    ...alike('post', postLengths(shape, frame), frames, sections.post, sections, shape),
    ...alike('rafter', rafterLengths(shape, frame), frames, sections.rafter, sections, shape),
    ...alike('purlin', purlinLengths(shape, frame), frame.purlins, sections.purlin, sections, shape),
  ];
  const built = pieces.reduce((sum, { m3 }) => sum + m3, 0);
  const braced = built * (1 + sections.bracingFraction);
  const share = (part: string, m3: number): Member => ({ part, pieces: null, lengthM: null, widthM: null, thickM: null, m3, tooLong: false }); // biome-ignore format: one record
  return [
    ...pieces,
    share('bracing, plates and rails', braced - built),
    share('offcuts and pieces put aside', braced * sections.wasteFraction),
  ];
}

/** Pieces of one part, those of one length together, the longest first; `times` says how often each stands. */
function alike(
  part: string,
  lengths: readonly number[],
  times: number,
  { areaM2, widthM }: Section,
  { snowFactor }: Sections,
  { longestTimberM }: FrameShape,
): Member[] {
  const counts = new Map<string, { lengthM: number; pieces: number; wholeM: number }>();
  for (const lengthM of lengths) {
    const key = lengthM.toFixed(3);
    const group = counts.get(key) ?? { lengthM, pieces: 0, wholeM: 0 };
    group.pieces += times;
    group.wholeM += times * lengthM;
    counts.set(key, group);
  }
  const section = areaM2 * snowFactor;
  return [...counts.values()]
    .sort((a, b) => b.lengthM - a.lengthM)
    .map(({ lengthM, pieces, wholeM }) => ({
      part,
      pieces,
      lengthM,
      widthM,
      thickM: section / widthM,
      m3: wholeM * section,
      tooLong: lengthM > longestTimberM + 1e-9,
    }));
}

/** A post of each row, from the floor to the roof over it. */
function postLengths(shape: FrameShape, { rows }: ShedFrame): number[] {
  const roof = roofShape(shape);
  return postRows(shape.depthM, rows, shape.feedRoadM)
    .map((y) => Math.max(0, roofAtM(roof, shape.depthM, y)))
    .filter((lengthM) => lengthM > 0);
}

/** The pieces of one rafter: joined over rows of posts and at the ridge, overhangs with the piece beside them. */
function rafterLengths(shape: FrameShape, { rows }: ShedFrame): number[] {
  const { depthM, overhangM, feedRoadM } = shape;
  const roof = roofShape(shape);
  const inner = postRows(depthM, rows, feedRoadM).slice(1, -1);
  const ridge = roof.ridgeXM > 0 && roof.ridgeXM < depthM ? [roof.ridgeXM] : [];
  const joints = [...inner, ...ridge]
    .sort((a, b) => a - b)
    .filter((x, k, all) => k === 0 || x - all[k - 1] > 1e-6);
  const ends = [-feedRoadM - overhangM, ...joints, depthM + overhangM];
  return ends.slice(1).map((to, k) => {
    const rise = (to + ends[k]) / 2 <= roof.ridgeXM ? frontRise(roof, depthM) : rearRise(roof, depthM);
    return (to - ends[k]) * Math.hypot(1, rise);
  });
}

/** The pieces of one line of purlins: one for each bay, those at the ends with the overhang. */
function purlinLengths({ lengthM, overhangM }: FrameShape, { bays }: ShedFrame): number[] {
  const bayM = lengthM / bays;
  if (bays === 1) return [lengthM + 2 * overhangM];
  return [bayM + overhangM, ...Array<number>(bays - 2).fill(bayM), bayM + overhangM];
}

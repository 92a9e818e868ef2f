/** Side views of cattle of our own drawing, facing left, scaled so that withers or horn tips stand true. */
import type { PathShape, Point, Shape } from './drawing.ts';

export interface Beast {
  /** Height at the withers, m. */
  readonly withersM: number;
  /** Horn tips with the head raised, m; null without horns. */
  readonly hornTipM: number | null;
  readonly fill: string;
  readonly far: string;
  readonly horn: string;
}

export type Pose = 'standing' | 'feeding' | 'lying';

/** Outlines where the withers stand at 1. */
const TRUNK: readonly Point[] = [
  [0.66, 1.0], [0.82, 0.965], [1.02, 0.955], [1.25, 0.97], [1.44, 0.985], [1.58, 0.945], [1.655, 0.86], [1.67, 0.7],
  [1.645, 0.52], [1.6, 0.4], [1.625, 0.3], [1.595, 0.12], [1.615, 0.03], [1.6, 0], [1.505, 0], [1.51, 0.06],
  [1.525, 0.16], [1.515, 0.3], [1.47, 0.42], [1.39, 0.5], [1.32, 0.455], [1.26, 0.42], [1.18, 0.44], [0.98, 0.405],
  [0.78, 0.42], [0.69, 0.45], [0.655, 0.3], [0.645, 0.12], [0.66, 0.03], [0.65, 0], [0.55, 0], [0.555, 0.06],
  [0.57, 0.14], [0.55, 0.3], [0.53, 0.46], [0.47, 0.52], [0.42, 0.6],
]; // biome-ignore format: pairs
const HEAD_UP: readonly Point[] = [
  [0.4, 0.66], [0.34, 0.73], [0.27, 0.85], [0.2, 0.96], [0.12, 1.0], [0.02, 0.955], [-0.06, 0.87], [-0.125, 0.86],
  [-0.16, 0.92], [-0.13, 1.0], [-0.05, 1.11], [0.03, 1.22], [0.11, 1.29], [0.2, 1.275], [0.32, 1.19], [0.49, 1.08],
]; // biome-ignore format: pairs
const HEAD_DOWN: readonly Point[] = [
  [0.42, 0.56], [0.36, 0.5], [0.27, 0.47], [0.19, 0.42], [0.12, 0.3], [0.085, 0.225], [0.01, 0.215], [-0.03, 0.27],
  [-0.02, 0.38], [0.03, 0.53], [0.08, 0.66], [0.15, 0.74], [0.24, 0.79], [0.36, 0.87], [0.52, 0.97],
]; // biome-ignore format: pairs
const LYING: readonly Point[] = [
  [0.66, 0.61], [0.84, 0.59], [1.1, 0.6], [1.34, 0.6], [1.52, 0.53], [1.63, 0.36], [1.66, 0.16], [1.62, 0.02],
  [1.3, 0.0], [0.9, 0.0], [0.5, 0.0], [0.3, 0.01], [0.26, 0.06], [0.38, 0.12], [0.38, 0.2], [0.33, 0.28], [0.26, 0.4],
  [0.2, 0.5], [0.12, 0.53], [0.02, 0.485], [-0.06, 0.4], [-0.125, 0.39], [-0.16, 0.45], [-0.13, 0.53], [-0.05, 0.64],
  [0.03, 0.75], [0.11, 0.82], [0.2, 0.805], [0.32, 0.74], [0.49, 0.66],
]; // biome-ignore format: pairs
const FAR_LEGS: readonly (readonly Point[])[] = [
  [[0.74, 0.5], [0.73, 0.3], [0.725, 0.12], [0.74, 0.02], [0.735, 0], [0.64, 0], [0.65, 0.12], [0.64, 0.3], [0.63, 0.5]],
  [[1.5, 0.55], [1.48, 0.4], [1.5, 0.3], [1.47, 0.12], [1.485, 0.02], [1.475, 0], [1.385, 0], [1.4, 0.12], [1.4, 0.3], [1.35, 0.45], [1.36, 0.55]],
]; // biome-ignore format: pairs
const TAIL: readonly Point[] = [[1.63, 0.92], [1.69, 0.84], [1.7, 0.62], [1.685, 0.4]]; // biome-ignore format: pairs
const EARS: Readonly<Record<Pose, readonly Point[]>> = {
  standing: [[0.16, 1.23], [0.24, 1.26], [0.33, 1.22], [0.25, 1.18]],
  feeding: [[0.15, 0.68], [0.19, 0.76], [0.25, 0.78], [0.23, 0.7]],
  lying: [[0.16, 0.76], [0.24, 0.79], [0.33, 0.75], [0.25, 0.71]],
}; // biome-ignore format: pairs

/** Length of the standing beast from muzzle to tail where the withers stand at 1. */
export const BEAST_LENGTH = 1.86;
const MUZZLE = -0.16;
/** Chest behind the muzzle of the standing beast where the withers stand at 1. */
export const CHEST_AT = 0.42 - MUZZLE;

/** Shapes of one animal, its muzzle side at `x` and its feet on `floor`, in metres. */
export function beast(pose: Pose, x: number, floor: number, look: Beast): Shape[] {
  const scale = look.withersM;
  const put = ([px, py]: Point): Point => [x + (px - MUZZLE) * scale, floor + py * scale];
  const shape = (part: string, points: readonly Point[], rest: Partial<PathShape>): PathShape => ({
    kind: 'path', part, points: points.map(put), closed: true, smooth: true, ...rest,
  }); // biome-ignore format: one record
  const outline = pose === 'lying' ? LYING : [...TRUNK, ...(pose === 'standing' ? HEAD_UP : HEAD_DOWN)];
  const legs = pose === 'lying' ? [] : FAR_LEGS.map((leg) => shape('cowFar', leg, { fill: look.far }));
  const tail =
    pose === 'lying'
      ? []
      : [shape('cowTail', TAIL, { closed: false, stroke: look.fill, weightM: 0.045 * scale })];
  return [
    ...legs,
    ...tail,
    ...horns(pose, look).flatMap((points) => [
      shape('hornRim', points, { closed: false, stroke: look.far, weightM: 0.06 * scale }),
      shape('horn', points, { closed: false, stroke: look.horn, weightM: 0.042 * scale }),
    ]),
    shape(`cow-${pose}`, outline, { fill: look.fill }),
    shape('cowEar', EARS[pose], { fill: look.far }),
  ];
}

/** Horns grow from the poll; with the head raised their tips stand at the height given. */
function horns(pose: Pose, { hornTipM, withersM }: Beast): Point[][] {
  if (hornTipM === null) return [];
  if (pose === 'feeding') return [[[0.14, 0.72], [0.06, 0.77], [-0.02, 0.79], [-0.09, 0.76]]]; // biome-ignore format: pairs
  const poll = pose === 'standing' ? 1.27 : 0.8;
  const rise = Math.max(0.05, hornTipM / withersM - 1.27);
  return [
    [[0.1, poll], [0.01, poll + rise * 0.25], [-0.035, poll + rise * 0.62], [0.0, poll + rise]],
    [[0.12, poll], [0.17, poll + rise * 0.22], [0.18, poll + rise * 0.58], [0.135, poll + rise * 0.94]],
  ]; // biome-ignore format: pairs
}

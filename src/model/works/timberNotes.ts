/** Timber that is longer than what can be milled or bought, and what could be done about it. */
import type { Scenario } from '../../notebook/schema.ts';

export interface TimberNote {
  readonly member: 'post' | 'rafter' | 'purlin';
  readonly neededM: number;
  readonly longestM: number;
  /** What would make it fit, each a sentence. */
  readonly alternatives: readonly string[];
}

const metres = (length: number) => `${length.toFixed(2)} m`;

/**
 * Pieces of the bedded shed that would exceed `longestTimberM` if each were one piece: ridge posts, rafters
 * from eave edge to ridge, purlins over one bay. Lengths in metres; sections and joints are an engineer's.
 */
export function timberNotes({ shed }: Scenario): TimberNote[] {
  const { depthM, eaveM, pitchDeg, overhangM, bayM, longestTimberM: longest, lengthM } = shed;
  const pitch = (pitchDeg * Math.PI) / 180;
  const notes: TimberNote[] = [];
  const ridgeM = eaveM + (depthM / 2) * Math.tan(pitch);
  if (ridgeM > longest)
    notes.push({
      member: 'post',
      neededM: ridgeM,
      longestM: longest,
      alternatives: [
        'set the post on a concrete upstand and shorten it by as much',
        ...(eaveM < longest
          ? [
              `no posts under the ridge: two rows at the quarters of the depth instead, at most ${metres(eaveM + (depthM / 4) * Math.tan(pitch))} long`,
            ]
          : ['lower the eave, if the risen bed still leaves room under it']),
        'a spliced post only as an engineer draws it',
      ],
    });
  const rafterM = (depthM / 2 + overhangM) / Math.cos(pitch);
  if (rafterM > longest) {
    const pieces = Math.ceil(rafterM / longest - 1e-9);
    const shallower = 2 * (longest * Math.cos(pitch) - overhangM);
    notes.push({
      member: 'rafter',
      neededM: rafterM,
      longestM: longest,
      alternatives: [
        `splice ${pieces} pieces of ${metres(rafterM / pieces)}, each joint over a post and drawn by an engineer`,
        `${pieces - 1} extra ${pieces === 2 ? 'row' : 'rows'} of posts under each slope, so that no piece is longer than ${metres(rafterM / pieces)}`,
        ...(shallower > 0
          ? [
              `a shed at most ${metres(shallower)} deep, and ${metres((lengthM * depthM) / shallower)} long for the same floor`,
            ]
          : []),
      ],
    });
  }
  if (bayM > longest)
    notes.push({
      member: 'purlin',
      neededM: bayM,
      longestM: longest,
      alternatives: [
        `bays of at most ${metres(longest)}: ${Math.ceil(lengthM / longest)} of them`,
        'purlins lapped past each other over every frame',
      ],
    });
  return notes;
}

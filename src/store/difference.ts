/** What changed between two texts, small and reversible: what keeps undo and the journal from holding whole texts. */

export interface Splice {
  /** Place in the text before. */
  readonly at: number;
  readonly cut: string;
  readonly put: string;
}

/** Splices in the order of their places, none touching another. */
export type Difference = readonly Splice[];

/** Below this many letters one splice is taken, however much of it is alike. */
const SMALL = 200;

const PIECE = 4096;
const pieceFromEnd = (text: string, back: number) =>
  text.slice(text.length - back - PIECE, text.length - back);

export function difference(before: string, after: string): Difference {
  if (before === after) return [];
  const shortest = Math.min(before.length, after.length);
  // In long pieces first: a notebook may have two million letters, of which one has changed.
  let front = 0;
  while (
    front + PIECE <= shortest &&
    before.slice(front, front + PIECE) === after.slice(front, front + PIECE)
  )
    front += PIECE;
  while (front < shortest && before.charCodeAt(front) === after.charCodeAt(front)) front++;
  let back = 0;
  while (back + PIECE <= shortest - front && pieceFromEnd(before, back) === pieceFromEnd(after, back))
    back += PIECE;
  while (
    back < shortest - front &&
    before.charCodeAt(before.length - 1 - back) === after.charCodeAt(after.length - 1 - back)
  )
    back++;
  const cut = before.slice(front, before.length - back);
  const put = after.slice(front, after.length - back);
  return cut.length > SMALL && put.length > SMALL ? byLines(front, cut, put) : [{ at: front, cut, put }];
}

/** An edit of the same few words in many lines, as a rename is, becomes a splice a line. */
function byLines(from: number, before: string, after: string): Difference {
  const [olds, news] = [before.split('\n'), after.split('\n')];
  if (olds.length !== news.length) return [{ at: from, cut: before, put: after }];
  const splices: Splice[] = [];
  let at = from;
  olds.forEach((old, k) => {
    if (old !== news[k]) splices.push({ at, cut: old, put: news[k] });
    at += old.length + 1;
  });
  return splices;
}

/** @throws when the difference was made of another text. */
export function apply(text: string, splices: Difference): string {
  let at = 0;
  const parts: string[] = [];
  for (const { at: place, cut, put } of splices) {
    if (place < at || !text.startsWith(cut, place)) throw new Error('the step does not fit the text');
    parts.push(text.slice(at, place), put);
    at = place + cut.length;
  }
  return parts.length === 0 ? text : parts.join('') + text.slice(at);
}

export function reversed(splices: Difference): Difference {
  let shift = 0;
  return splices.map(({ at, cut, put }) => {
    const back = { at: at + shift, cut: put, put: cut };
    shift += put.length - cut.length;
    return back;
  });
}

/** Letters a difference holds. */
export const weightOf = (splices: Difference): number =>
  splices.reduce((sum, { cut, put }) => sum + cut.length + put.length, 0);

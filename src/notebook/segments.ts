/** Stretches of a text that can be put in another order: what stands between them stays where it is. */

export interface Segment {
  readonly from: number;
  readonly to: number;
}

/** The text with the segments, which stand one after the other, in the order given by their places. */
export function permuted(text: string, segments: readonly Segment[], order: readonly number[]): string {
  const [first, last] = [segments[0], segments[segments.length - 1]];
  let out = text.slice(0, first.from);
  segments.forEach((segment, k) => {
    const { from, to } = segments[order[k]];
    out += text.slice(from, to);
    const next = segments[k + 1];
    if (next) out += text.slice(segment.to, next.from);
  });
  return out + text.slice(last.to);
}

/** 0, 1, 2 … with the item at `from` standing at `to`. */
export function movedOrder(count: number, from: number, to: number): number[] {
  const order = Array.from({ length: count }, (_, k) => k);
  order.splice(to, 0, ...order.splice(from, 1));
  return order;
}

/** The text without a segment, and without the empty lines that parted it from the next or, as the last, from the one before. */
export function without(text: string, segments: readonly Segment[], index: number): string {
  const { from, to } = segments[index];
  const before = segments[index - 1];
  const after = segments[index + 1];
  if (after && text.slice(to, after.from).trim() === '') return text.slice(0, from) + text.slice(after.from);
  if (before && text.slice(before.to, from).trim() === '') return text.slice(0, before.to) + text.slice(to);
  return text.slice(0, from) + text.slice(to).replace(/^\r?\n/, '');
}

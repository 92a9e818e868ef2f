/** Seeded streams of uniform numbers, one for each name: the same seed and name give the same numbers anywhere. */
export type Stream = () => number;

/** Puts the next `count` numbers of a stream at the front of an array. */
export type Filler = (out: Float64Array, count: number) => void;

/**
 * A stream of numbers in (0, 1), many at a time, from its number `from` on: the small fast counting generator sfc32,
 * never 0 or 1.
 */
export function filler(seed: number, name: string, from = 0): Filler {
  let [stateA, stateB, stateC] = seedsOf(`${seed}:${name}`);
  let counter = 1;
  const fill: Filler = (out, count) => {
    // The state stays in local variables while the loop runs, which makes it several times as fast.
    let [a, b, c, n] = [stateA, stateB, stateC, counter];
    for (let k = 0; k < count; k++) {
      const sum = (a + b + n) | 0;
      n = (n + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = ((c << 21) | (c >>> 11)) + sum;
      out[k] = ((sum >>> 0) + 0.5) / 4_294_967_296;
    }
    [stateA, stateB, stateC, counter] = [a, b, c, n];
  };
  fill(new Float64Array(12), 12);
  const passed = new Float64Array(Math.min(from, PASSED_AT_ONCE));
  for (let left = from; left > 0; left -= PASSED_AT_ONCE) fill(passed, Math.min(left, PASSED_AT_ONCE));
  return fill;
}

const PASSED_AT_ONCE = 1024;

/** The numbers of `filler`, one at a time. */
export function stream(seed: number, name: string): Stream {
  const fill = filler(seed, name);
  const buffer = new Float64Array(16);
  let at = buffer.length;
  return () => {
    if (at === buffer.length) {
      fill(buffer, buffer.length);
      at = 0;
    }
    return buffer[at++];
  };
}

/** A stream of standard normal numbers by the polar form of Box and Muller. */
export function normals(uniform: Stream): Stream {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const out = spare;
      spare = undefined;
      return out;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square > 0 && square < 1) {
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = y * factor;
        return x * factor;
      }
    }
  };
}

/** Three 32-bit seeds from a text, by the multiply-xor hash FNV-1a with different starts. */
function seedsOf(text: string): [number, number, number] {
  const hash = (start: number): number => {
    let h = start;
    for (let k = 0; k < text.length; k++) h = Math.imul(h ^ text.charCodeAt(k), 16_777_619);
    h = Math.imul(h ^ (h >>> 16), 0x85eb_ca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2_ae35);
    return h ^ (h >>> 16);
  };
  return [hash(0x811c_9dc5), hash(0x9e37_79b9), hash(0x7f4a_7c15)];
}

/**
 * Seeded streams of uniform numbers, one for each name: the stream of a coefficient depends on the seed and its
 * id alone, so adding a coefficient or a scenario never moves another's draws.
 */
export type Stream = () => number;

/** A stream of numbers in (0, 1): the small fast counting generator sfc32, 2⁻³² apart, never 0 or 1. */
export function stream(seed: number, name: string): Stream {
  let [a, b, c] = seedsOf(`${seed}:${name}`);
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return ((sum >>> 0) + 0.5) / 4_294_967_296;
  };
  for (let k = 0; k < 12; k++) next();
  return next;
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

/**
 * Value at probability `u` of the triangular distribution with its mode at `central` and nothing outside
 * `low`…`high`. Chosen because the tables give a span and a best guess, and a fraction must stay a fraction.
 */
export function triangular(u: number, low: number, central: number, high: number): number {
  const width = high - low;
  if (!(width > 0)) return central;
  const left = (central - low) / width;
  return u < left
    ? low + Math.sqrt(u * width * (central - low))
    : high - Math.sqrt((1 - u) * width * (high - central));
}

/** Its distribution function, for checking draws against it. */
export function triangularShareBelow(x: number, low: number, central: number, high: number): number {
  if (x <= low) return 0;
  if (x >= high) return 1;
  return x < central
    ? (x - low) ** 2 / ((high - low) * (central - low))
    : 1 - (high - x) ** 2 / ((high - low) * (high - central));
}

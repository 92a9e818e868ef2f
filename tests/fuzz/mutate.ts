/** Ways to damage a notebook, a table or a weather file: bytes, tokens, values, inputs set by their place. */
import { CATALOGUE_OF_INPUTS, type Input } from '../../src/notebook/catalogue.ts';
import { setInput, type Value } from '../../src/notebook/write.ts';
import type { Chance } from './chance.ts';

const ODD_VALUES = [
  'null', '[]', '{}', '0', '-1', '1e999', '-1e300', '1e300', '5e-324', '1e-9', '.nan', '.inf', 'true', '""', '"x"',
  'constructor', '__proto__', 'toString', '[1, [2]]', '{ a: { b: 1 } }', '{ toString: 1 }', '2025-02-30',
  '9999-12-31', '0000-01-01', '1900-01-01', '|', '', '0x10', '1_000', '1/2', '99999999999999999999', '"\\u0000"',
  '"\\u202e"', '*a', '&a 1', '!!js/function x', '<<',
] as const; // biome-ignore format: one short list
const TOKENS = [
  '---', '```', '```flip\n', '```compare\nmeasure: netCost\n```', '`=netCost`', '`=netCost of `', '    ', '\t', '\r', ':', '- ', '[', '{', '}',
  ']', '"', "'", '#', '|', '>', '\u2028', '\u0000', '\uFEFF', '[a](javascript:x)', '<script>', '![x](http://a)', '[a]: b',
] as const; // biome-ignore format: one short list

export function damagedBytes(text: string, chance: Chance): Uint8Array {
  const bytes = new TextEncoder().encode(text);
  for (let k = 1 + chance.upTo(8); k > 0; k--) bytes[chance.upTo(bytes.length)] = chance.upTo(256);
  if (chance.maybe(0.1)) return bytes.subarray(0, chance.upTo(bytes.length));
  return bytes;
}

export function damagedTokens(text: string, chance: Chance): string {
  let out = text;
  for (let k = 1 + chance.upTo(3); k > 0; k--) {
    const lines = out.split('\n');
    const [a, b] = [chance.upTo(lines.length), chance.upTo(lines.length)];
    const how = chance.upTo(6);
    if (how === 0) lines.splice(a, 1);
    else if (how === 1) lines.splice(a, 0, lines[b]);
    else if (how === 2) [lines[a], lines[b]] = [lines[b], lines[a]];
    else if (how === 3) lines[a] = lines[a].repeat(1 + chance.upTo(4));
    else {
      const at = chance.upTo(lines[a].length + 1);
      lines[a] = lines[a].slice(0, at) + chance.one(TOKENS) + lines[a].slice(at + chance.upTo(3));
    }
    out = lines.join('\n');
  }
  return out;
}

/** Values written in the front matter: replaced by odd ones, or numbers moved by orders of size. */
export function damagedValues(text: string, chance: Chance): string {
  let out = text;
  for (let k = 1 + chance.upTo(3); k > 0; k--) {
    const front = out.slice(0, out.indexOf('\n---\n'));
    const places = [...front.matchAll(/(?<=: )[^,{}[\]\n]+/g)];
    if (places.length === 0) return out;
    const place = chance.one(places);
    const number = Number(place[0]);
    const by =
      Number.isFinite(number) && chance.maybe(0.8) ? String(moved(number, chance)) : chance.one(ODD_VALUES);
    out = out.slice(0, place.index) + by + out.slice(place.index + place[0].length);
  }
  return out;
}

const moved = (number: number, chance: Chance) =>
  chance.one([0, -number, number * 10, number / 10, number * 1000, number / 1e6, number * 1e6, number * chance.between(0.3, 3), 1, 1e9]); // biome-ignore format: one short list

/** Inputs set by their place: the ends of what the schema allows, and just inside and outside of them. */
export function damagedInputs(text: string, chance: Chance, rows: (pattern: string) => number): string {
  let out = text;
  for (let k = 1 + chance.upTo(4); k > 0; k--) {
    const input = chance.one(CATALOGUE_OF_INPUTS);
    const path = placeOf(input.pattern, chance, rows);
    try {
      out = setInput(out, path, valueFor(input, chance));
    } catch (error) {
      // A place that is not there cannot be set; anything else is a fault.
      if (!/^cannot|not there|no such|cannot be/i.test((error as Error).message)) throw error;
    }
  }
  return out;
}

function placeOf(pattern: string, chance: Chance, rows: (pattern: string) => number): (string | number)[] {
  const parts: (string | number)[] = [];
  for (const part of pattern.split('.'))
    parts.push(part === '*' ? chance.upTo(Math.max(1, rows(parts.join('.')))) : part);
  return parts;
}

function valueFor({ kind, options, limits, whole }: Input, chance: Chance): Value {
  if (kind === 'choice') return chance.one(options as readonly string[]);
  if (kind === 'several') return (options as readonly string[]).filter(() => chance.maybe(0.5));
  if (kind === 'yesNo') return chance.maybe(0.5);
  if (kind === 'date')
    return chance.one(['2025-11-01', '2026-03-01', '2026-10-30', '1900-01-01', '2100-12-31', '2024-02-29']);
  if (kind === 'text') return chance.one(['words', 'a: b', '# c', '-', '"', 'constructor', '\u0007']);
  const number = () => {
    const low = Math.max(-1e12, limits?.low ?? -1e12);
    const high = Math.min(1e12, limits?.high ?? 1e12);
    const value = chance.one([low, high, low + 1e-9, high * 0.999, chance.between(low, high), 1, chance.between(low, Math.min(high, low + 10)), chance.between(low, Math.min(high, 1000))]); // biome-ignore format: one short list
    return whole ? Math.round(value) : value;
  };
  return kind === 'numbers' ? Array.from({ length: 12 }, number) : number();
}

const CELLS = [
  '', '0', '-1', '1e9', '1e300', '1e999', 'NaN', 'x', '-999', '9999', '9999-12-31', '0001-01-01', '2025-02-30', '"', 'constructor', '=1+1', '1,5', '\u0000',
] as const; // biome-ignore format: one short list

/** A table by commas: cells, rows and letters. */
export function damagedCsv(text: string, chance: Chance): string {
  const lines = text.split('\n');
  for (let k = 1 + chance.upTo(4); k > 0; k--) {
    const a = chance.upTo(chance.maybe(0.05) ? 1 : lines.length);
    const how = chance.upTo(8);
    if (how === 0) lines.splice(a, 1);
    else if (how === 1) lines.splice(a, 0, chance.one(lines));
    else if (how === 2) lines[a] = lines[a].slice(0, chance.upTo(lines[a].length + 1));
    else {
      const cells = lines[a].split(',');
      const at = chance.upTo(cells.length);
      const number = Number(cells[at] ?? '');
      const isNumber = cells[at]?.trim() !== '' && Number.isFinite(number);
      cells[at] = isNumber && how < 6 ? String(moved(number, chance)) : chance.one(CELLS);
      lines[a] = cells.join(',');
    }
  }
  return lines.join('\n');
}

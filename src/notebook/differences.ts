/** What differs between two scenarios, or between a scenario and the farm it stands on, in words. */
import { INPUT_FAMILIES, INPUTS } from './inputs.ts';
import { isPlain } from './merge.ts';
import type { Farm, Scenario } from './schema.ts';
import { SYSTEMS } from './systems.ts';

export interface Difference {
  /** Dotted path from the scenario down. */
  readonly path: string;
  readonly label: string;
  readonly unit: string;
  readonly a: unknown;
  readonly b: unknown;
  /** "rain against this weather: 1 × against 1.3 ×". */
  readonly words: string;
}

/** What sets `b` apart from `a`; name and reason are left out. */
export function differences(a: Scenario, b: Scenario): Difference[] {
  const strip = ({ name, because, ...rest }: Scenario) => rest;
  return walk(strip(a), strip(b), []);
}

/** Where a scenario stands on other ground, weather, herd or prices than the notebook's farm. */
export function differencesFromFarm(farm: Farm, scenario: Scenario): Difference[] {
  return walk(farm, scenario.farm, ['farm']);
}

function walk(a: unknown, b: unknown, path: readonly (string | number)[]): Difference[] {
  if (JSON.stringify(a) === JSON.stringify(b)) return [];
  if (isPlain(a) && isPlain(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    return keys.flatMap((key) => walk(a[key], b[key], [...path, key]));
  }
  // Lists of one length differ item by item; otherwise each is said whole.
  if (
    Array.isArray(a) &&
    Array.isArray(b) &&
    a.length === b.length &&
    a.every((item, k) => sameThing(item, b[k]))
  )
    return a.flatMap((item, k) => walk(item, b[k], [...path, k]));
  const { label, unit } = describePath(path);
  const [left, right] = [say(a, unit, path), say(b, unit, path)];
  return [{ path: path.join('.'), label, unit, a, b, words: `${label}: ${left} against ${right}` }];
}

const titleOf = (item: unknown): string | undefined => {
  if (!isPlain(item)) return undefined;
  const title = item.material ?? item.feed ?? item.name;
  return typeof title === 'string' ? title : undefined;
};
const sameThing = (a: unknown, b: unknown) => titleOf(a) !== undefined && titleOf(a) === titleOf(b);

function say(value: unknown, unit: string, path: readonly (string | number)[]): string {
  if (value === undefined) return 'none given';
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(sayItem).join(', ');
  if (isPlain(value)) return sayItem(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (path.at(-1) === 'system' && typeof value === 'string' && Object.hasOwn(SYSTEMS, value))
    return SYSTEMS[value as keyof typeof SYSTEMS].label;
  return typeof value === 'number' && unit !== '' ? `${value} ${unit}` : String(value);
}

/** "oatStraw 50 %", "cows 16", or the keys of what has no name. */
function sayItem(item: unknown): string {
  if (!isPlain(item)) return String(item);
  const title = titleOf(item);
  const rest = Object.entries(item).filter(([, v]) => v !== title);
  if (title === undefined) return rest.map(([key, v]) => `${words(key)} ${String(v)}`).join(', ');
  if (typeof item.share === 'number') return `${title} ${Number((item.share * 100).toFixed(1))} %`;
  const size = item.head ?? item.tonnes ?? item.amount;
  return typeof size === 'number' ? `${title} ${size}${item.tonnes === undefined ? '' : ' t'}` : title;
}

/** What a path is called and measured in: as the model says it, or as the key says it. */
function describePath(path: readonly (string | number)[]): { label: string; unit: string } {
  const dotted = path.join('.');
  const input = INPUTS.find((i) => i.path === dotted);
  if (input) return input;
  const key = String(path.findLast((part) => typeof part === 'string') ?? '');
  for (const family of INPUT_FAMILIES) {
    const field =
      dotted.startsWith(`${family.path}.`) && Object.values(family.fields).find((f) => f.key === key);
    if (field)
      return { label: `${field.label} of ${family.family} ${Number(path.at(-2)) + 1}`, unit: field.unit };
  }
  const parents = path.filter((part) => typeof part === 'string').slice(-2);
  return { label: parents.map(words).join(', '), unit: unitOf(key) };
}

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/KgPerDay$/, 'kg/d'],
  [/PerTonne$/, 'money/t'],
  [/PerHour$/, 'money/h'],
  [/(Fraction|Share)$/, 'fraction'],
  [/KnPerM2$/, 'kN/m²'],
  [/M2$/, 'm²'],
  [/Mm$/, 'mm'],
  [/Kg$/, 'kg'],
  [/Ha$/, 'ha'],
  [/Deg$/, '°'],
  [/[a-z]C$/, '°C'],
  [/[a-z]M$/, 'm'],
  [/^tonnes$/, 't'],
];
const unitOf = (key: string) => UNITS.find(([ending]) => ending.test(key))?.[1] ?? '';

/** `machineHeightM` → "machine height". */
function words(key: string): string {
  const stem = UNITS.slice(4).reduce(
    (k, [ending]) =>
      k.length > 3 ? k.replace(ending, (m) => (/^[a-z]/.test(m) && m.length === 2 ? m[0] : '')) : k,
    key,
  );
  return (stem || key).replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
}

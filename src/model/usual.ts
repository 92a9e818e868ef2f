/** The span the tables give for an input: what is usual for this feed, this material, this kind of animal. */
import { INPUT_FAMILIES } from '../notebook/inputs.ts';
import type { Path } from '../notebook/path.ts';
import type { Farm } from '../notebook/schema.ts';
import type { Coefficient, Tables } from '../tables/coefficient.ts';
import { rowLimits } from './limits.ts';

export interface Usual {
  readonly low: number;
  readonly central: number;
  readonly high: number;
  readonly unit: string;
  /** Row of the tables it comes from. */
  readonly id: string;
  readonly basis: Coefficient['basis'];
  /** Whether the quantity can have such a value at all, and what it can, in words of the file. */
  readonly holds: (value: number) => boolean;
  readonly allowed: string;
}

/** Inputs that stand in no list and have a row of the tables under another name. */
const ROWS: Readonly<Record<string, string>> = {
  'spreading.windMPerS': 'spreadWindMPerS',
  'shed.stanceDepthM': 'commonPracticeStanceDepthM',
  'shed.barrierM': 'barrierThroatM',
  'shed.barrierLiftM': 'commonPracticeBarrierLiftM',
};

/** Lists of the notebook that hold items of a family of the model. */
const LISTS: Readonly<Record<string, string>> = {
  'farm.herd': 'group',
  'farm.feed': 'feed',
  'farm.materials': 'material',
};

/** Prices by their currency before coefficients: an id is in one of them. */
export const rowOf = (tables: Tables, currency: string, id: string): Coefficient | undefined =>
  tables.coefficients.get(id) ?? tables.prices.get(currency)?.get(id);

/** The span of a row, for a number that stands in its place. */
export function usualOfRow(row: Coefficient, times = 1): Usual | undefined {
  const { low, central, high, unit, id, basis } = row;
  if (![low, central, high].every(Number.isFinite)) return undefined;
  const { holds, words } = rowLimits(row);
  return {
    low: low * times,
    central: central * times,
    high: high * times,
    unit,
    id,
    basis,
    holds: (value) => holds(value / times),
    allowed: words,
  };
}

/** The span of what is usual at a place of a scenario, `farm` being its farm; undefined where the tables have none. */
export function usualAt(path: Path, farm: Farm, tables: Tables): Usual | undefined {
  const { currency } = farm.money;
  const single = ROWS[path.join('.')];
  if (single !== undefined) {
    const row = rowOf(tables, currency, single);
    return row && usualOfRow(row);
  }
  const [list, k, key] = [path.slice(0, -2).join('.'), Number(path.at(-2)), String(path.at(-1))];
  const spec = INPUT_FAMILIES.find(({ family }) => family === LISTS[list]);
  const item = (farm as unknown as Record<string, readonly Record<string, unknown>[]>)[String(path[1])]?.[k];
  if (!spec?.choice || !item) return undefined;
  const option = String(item[spec.choice.key]);
  if (list === 'farm.herd') return ofGroup(key, item, option, tables);
  const name = Object.entries(spec.fields).find(([, field]) => field.written === key)?.[0];
  const row = name && rowOf(tables, currency, `${spec.family}${name}.${option}`);
  return row ? usualOfRow(row) : undefined;
}

/** Weight of a grown cow, and what a beast of that weight eats. */
function ofGroup(
  key: string,
  group: Readonly<Record<string, unknown>>,
  option: string,
  { coefficients }: Tables,
): Usual | undefined {
  if (key === 'weightKg' && option === 'sucklerCow') {
    const row = coefficients.get('groupMatureWeightKg.sucklerCow');
    return row && usualOfRow(row);
  }
  const eaten = coefficients.get(`groupIntakeFraction.${option}`);
  const weight = Number(group.weightKg);
  return key === 'dryMatterKgPerDay' && eaten && weight > 0 ? usualOfRow(eaten, weight) : undefined;
}

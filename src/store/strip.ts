/**
 * The few inputs that change everything. Each is one number all scenarios share: as it stands, as columns of the
 * model while it is turned, and as an edit of the text once it is let go. An input on which the scenarios
 * disagree is not on the strip, since one slider could not say what it means.
 */
import type { RowChanges } from '../model/bind.ts';
import { INPUTS } from '../notebook/inputs.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import { setInput } from '../notebook/write.ts';
import type { Tables } from '../tables/coefficient.ts';

export interface Strip {
  readonly id: string;
  readonly label: string;
  /** Short, for the row of names on a phone. */
  readonly short: string;
  readonly unit: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

type Edit = readonly [path: string, value: string | number];

interface Knob extends Omit<Strip, 'value'> {
  readonly value: number;
  readonly columns: (value: number) => readonly (readonly [string, number])[];
  readonly edits: (value: number) => readonly Edit[];
}

const DAY_MS = 86_400_000;
const bedded = ({ placement }: Scenario) => placement.bedShare > 0;
const span = (column: string) => {
  const { min = 0, max = 1, step = 0.1 } = INPUTS.find((input) => input.column === column) ?? {};
  return { min, max, step };
};

/** The one value of all, or undefined when they differ or there is none. */
function shared<T>(values: readonly T[]): T | undefined {
  const written = values.map((value) => JSON.stringify(value));
  return written.every((text) => text === written[0]) ? values[0] : undefined;
}

function knobs({ farm, scenarios }: Notebook, tables: Tables): Knob[] {
  return [
    head(scenarios),
    winter(scenarios),
    rain(scenarios),
    bedding(scenarios),
    labour(scenarios),
    straw(farm, scenarios, tables),
  ].filter((knob) => knob !== undefined);
}

/** Whole animals by group that sum to `total`, in proportion as near as whole animals allow. */
export function headByGroup(heads: readonly number[], total: number): number[] {
  const now = heads.reduce((sum, n) => sum + n, 0);
  if (!(now > 0)) return [...heads];
  const exact = heads.map((n) => (n * total) / now);
  const out = exact.map(Math.floor);
  const order = exact.map((value, k) => ({ k, rest: value - out[k] })).sort((a, b) => b.rest - a.rest);
  for (const { k } of order.slice(0, Math.round(total - out.reduce((sum, n) => sum + n, 0)))) out[k]++;
  return out;
}

function head(scenarios: readonly Scenario[]): Knob | undefined {
  const heads = shared(scenarios.map((s) => s.farm.herd.map((group) => group.head)));
  const now = heads?.reduce((sum, n) => sum + n, 0) ?? 0;
  if (!heads || !(now > 0)) return undefined;
  return {
    id: 'head',
    label: 'Animals',
    short: 'Animals',
    unit: 'head',
    value: now,
    min: 1,
    max: Math.max(40, Math.ceil(now / 20) * 60),
    step: 1,
    columns: (value) => headByGroup(heads, value).map((n, k) => [`group${k + 1}HeadCount`, n]),
    edits: (value) => headByGroup(heads, value).map((n, k) => [`farm.herd.${k}.head`, n]),
  };
}

function winter(scenarios: readonly Scenario[]): Knob | undefined {
  const dates = shared(scenarios.map((s) => s.farm.winter));
  if (!dates) return undefined;
  const start = Date.parse(dates.start);
  return {
    id: 'winterDays',
    label: 'Winter',
    short: 'Winter',
    unit: 'days',
    value: Math.round((Date.parse(dates.end) - start) / DAY_MS),
    ...span('winterDays'),
    columns: (value) => [['winterDays', value]],
    edits: (value) => [['farm.winter.end', new Date(start + value * DAY_MS).toISOString().slice(0, 10)]],
  };
}

function rain(scenarios: readonly Scenario[]): Knob | undefined {
  const value = shared(scenarios.map((s) => s.farm.weather.rainFactor));
  if (value === undefined) return undefined;
  return {
    id: 'rainFactor',
    label: 'Rain',
    short: 'Rain',
    unit: '× this weather',
    value,
    ...span('rainFactor'),
    columns: (v) => [['rainFactor', v]],
    edits: (v) => [['farm.weather.rainFactor', v]],
  };
}

function bedding(scenarios: readonly Scenario[]): Knob | undefined {
  const value = shared(scenarios.filter(bedded).map((s) => s.bed.rateKgPer100Kg));
  if (value === undefined) return undefined;
  return {
    id: 'beddingRate',
    label: 'Bedding',
    short: 'Bedding',
    unit: 'kg/100 kg a day',
    value,
    ...span('beddingRateKgPer100Kg'),
    columns: (v) => [['beddingRateKgPer100Kg', v]],
    edits: (v) =>
      scenarios.flatMap((s, k) => (bedded(s) ? [[`scenarios.${k}.bed.rateKgPer100Kg`, v] as const] : [])),
  };
}

function labour(scenarios: readonly Scenario[]): Knob | undefined {
  const money = shared(
    scenarios.map((s) => ({ perHour: s.farm.money.labourPerHour, currency: s.farm.money.currency })),
  );
  if (!money) return undefined;
  return {
    id: 'labour',
    label: 'Own hour',
    short: 'Own hour',
    unit: `worth, ${money.currency}`,
    value: money.perHour,
    ...span('labourPricePerHour'),
    columns: (v) => [['labourPricePerHour', v]],
    edits: (v) => [['farm.money.labourPerHour', v]],
  };
}

/** Price of the first straw in the mix, where every bed has it at the same place of its mix. */
function straw(farm: Notebook['farm'], scenarios: readonly Scenario[], tables: Tables): Knob | undefined {
  const mixes = scenarios.filter(bedded).map((s) => s.bed.mix.map((part) => part.material));
  const material = mixes[0]?.find((name) => name.endsWith('Straw')) ?? mixes[0]?.[0];
  const place = material === undefined ? undefined : shared(mixes.map((mix) => mix.indexOf(material)));
  const index = farm.materials.findIndex((each) => each.material === material);
  const { currency } = farm.money;
  const value =
    shared(
      scenarios.map((s) => s.farm.materials.find((each) => each.material === material)?.pricePerTonne),
    ) ??
    farm.money.prices[`materialPricePerTonne.${material}`]?.value ??
    tables.prices.get(currency)?.get(`materialPricePerTonne.${material}`)?.central;
  if (place === undefined || place < 0 || index < 0 || value === undefined) return undefined;
  const isStraw = material?.endsWith('Straw');
  return {
    id: 'materialPrice',
    label: isStraw ? 'Straw' : 'Bedding price',
    short: isStraw ? 'Straw' : 'Its price',
    unit: `${currency} a tonne`,
    value,
    min: 0,
    max: Math.max(10, Math.ceil(value / 50) * 150),
    step: value > 200 ? 10 : 1,
    columns: (v) => [[`material${place + 1}PricePerTonne`, v]],
    edits: (v) => [[`farm.materials.${index}.pricePerTonne`, v]],
  };
}

/** The strip as it stands, with what is being turned at its turned value. */
export function stripOf(notebook: Notebook, tables: Tables, turned: ReadonlyMap<string, number>): Strip[] {
  return knobs(notebook, tables).map(({ id, label, short, unit, value, min, max, step }) => ({
    id,
    label,
    short,
    unit,
    value: turned.get(id) ?? value,
    min,
    max,
    step,
  }));
}

/** What turned inputs mean to the model. Columns no scenario reads are left out. */
export function changesOf(
  notebook: Notebook,
  tables: Tables,
  turned: ReadonlyMap<string, number>,
  known: (column: string) => boolean,
): RowChanges {
  if (turned.size === 0) return new Map();
  const all = knobs(notebook, tables);
  return new Map(
    [...turned]
      .flatMap(([id, value]) => all.find((knob) => knob.id === id)?.columns(value) ?? [])
      .filter(([column]) => known(column)),
  );
}

/** The text with an input let go of, and the words for undoing it. */
export function edited(
  text: string,
  notebook: Notebook,
  tables: Tables,
  id: string,
  value: number,
): { readonly text: string; readonly what: string } {
  const knob = knobs(notebook, tables).find((each) => each.id === id);
  if (!knob) return { text, what: '' };
  const next = knob.edits(value).reduce((so, [path, to]) => setInput(so, path, to), text);
  return { text: next, what: `${knob.label} to ${value} ${knob.unit}` };
}

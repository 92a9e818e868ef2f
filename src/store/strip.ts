/**
 * The few inputs that change everything. Each is one number all scenarios share: as it stands, as columns of the
 * model while it is turned (by the turn that sweeps and maps share), and as an edit of the text once it is let go (`stripEdit.ts`). An input on which the scenarios
 * disagree is not on the strip, since one slider could not say what it means.
 */

import type { RowChanges } from '../model/bind.ts';
import { INPUTS } from '../notebook/inputs.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import type { Setting } from '../study/rows.ts';
import type { Tables } from '../tables/coefficient.ts';
import { pricesFor } from '../tables/priceIndex.ts';
import { dayAfter, daysBetween } from '../units/days.ts';
import { changesAt, type HerdMeaning, headByGroup, turnOf } from '../whatif/turn.ts';

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
  /** What is turned, by the name every sweep knows it by. */
  readonly turns: string;
  readonly edits: (value: number) => readonly Edit[];
}

/** The notebook as it stands, its scenarios bound, and what turning the herd means for the shed. */
export interface StripOf {
  readonly notebook: Notebook;
  readonly tables: Tables;
  readonly setting: Setting;
  readonly herd: HerdMeaning;
}

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

export function knobs({ farm, scenarios }: Notebook, tables: Tables): Knob[] {
  return [
    head(scenarios),
    winter(scenarios),
    rain(scenarios),
    bedding(scenarios),
    labour(scenarios),
    straw(farm, scenarios, tables),
  ].filter((knob) => knob !== undefined);
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
    turns: 'headCount',
    edits: (value) => headByGroup(heads, value).map((n, k) => [`farm.herd.${k}.head`, n]),
  };
}

function winter(scenarios: readonly Scenario[]): Knob | undefined {
  const dates = shared(scenarios.map((s) => s.farm.winter));
  if (!dates) return undefined;
  return {
    id: 'winterDays',
    label: 'Winter',
    short: 'Winter',
    unit: 'days',
    value: daysBetween(dates.start, dates.end),
    ...span('winterDays'),
    turns: 'winterDays',
    edits: (value) => [['farm.winter.end', dayAfter(dates.start, value)]],
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
    turns: 'rainFactor',
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
    turns: 'beddingRateKgPer100Kg',
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
    turns: 'labourPricePerHour',
    edits: (v) => [['farm.money.labourPerHour', v]],
  };
}

/** Price of the first straw in the mix, where every bed has it at the same place of its mix. */
function straw(farm: Notebook['farm'], scenarios: readonly Scenario[], tables: Tables): Knob | undefined {
  const mixes = scenarios.filter(bedded).map((s) => s.bed.mix.map((part) => part.material));
  const material = mixes[0]?.find((name) => name.endsWith('Straw')) ?? mixes[0]?.[0];
  const place = material === undefined ? undefined : shared(mixes.map((mix) => mix.indexOf(material)));
  const index = farm.materials.findIndex((each) => each.material === material);
  const value =
    shared(
      scenarios.map((s) => s.farm.materials.find((each) => each.material === material)?.pricePerTonne),
    ) ??
    farm.money.prices[`materialPricePerTonne.${material}`]?.value ??
    pricesFor(tables, { ...farm.money, country: farm.place.country }).get(`materialPricePerTonne.${material}`)
      ?.central;
  if (place === undefined || place < 0 || index < 0 || value === undefined) return undefined;
  const isStraw = material?.endsWith('Straw');
  return {
    id: 'materialPrice',
    label: isStraw ? 'Straw' : 'Bedding price',
    short: isStraw ? 'Straw' : 'Its price',
    unit: `${farm.money.currency} a tonne`,
    value,
    min: 0,
    max: Math.max(10, Math.ceil(value / 50) * 150),
    step: value > 200 ? 10 : 1,
    turns: `material${place + 1}PricePerTonne`,
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

/** What turned inputs mean to the model. What no scenario has is left out. */
export function changesOf(
  { notebook, tables, setting, herd }: StripOf,
  turned: ReadonlyMap<string, number>,
): RowChanges {
  if (turned.size === 0) return new Map();
  const all = knobs(notebook, tables);
  return new Map(
    [...turned].flatMap(([id, value]) => {
      const knob = all.find((each) => each.id === id);
      const turn = knob && turnOf(setting, knob.turns, herd);
      return turn ? [...changesAt(turn, value, setting.bound.length)] : [];
    }),
  );
}

/**
 * The dictionary of quantities: every column by name, with label, unit, formula and source. It is read off the
 * declarations of the stages and the inputs, so it cannot disagree with what is computed.
 */
import { INPUT_FAMILIES, INPUTS } from '../notebook/inputs.ts';
import type { Route } from './stage.ts';
import { STAGES } from './stages.ts';

export interface Description {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly kind: 'result' | 'week' | 'day' | 'input';
  readonly formula?: string;
  readonly from?: readonly string[];
  readonly source?: readonly string[];
  readonly route?: Route;
  readonly stage?: string;
}

const byName = new Map<string, Description>();
for (const { column, label, unit } of INPUTS)
  byName.set(column, { name: column, label, unit, kind: 'input' });
for (const stage of STAGES) {
  for (const [kind, entries] of [
    ['result', stage.makes],
    ['week', stage.tracks ?? {}],
    ['day', stage.dailies ?? {}],
  ] as const)
    for (const [name, quantity] of Object.entries(entries))
      byName.set(name, { name, kind, stage: stage.name, ...quantity });
}

/** What a column is, or undefined for a name the model does not know (coefficients describe themselves). */
export function describe(name: string): Description | undefined {
  const known = byName.get(name);
  if (known) return known;
  for (const { family, fields } of INPUT_FAMILIES) {
    const match = new RegExp(`^${family}(\\d+)(\\w+)$`).exec(name);
    const field = match && fields[match[2]];
    if (field)
      return { name, label: `${field.label}, ${family} ${match[1]}`, unit: field.unit, kind: 'input' };
  }
  return undefined;
}

/** Every result the pipeline makes, in the order it is made. */
export const RESULTS: readonly Description[] = [...byName.values()].filter((d) => d.kind === 'result');

/** Columns that say how much of the excreta takes each route. */
export const ROUTE_SHARE: Readonly<Record<Route, string>> = {
  paddock: 'paddockShare',
  slurry: 'slurryShare',
  pack: 'packShare',
};

/**
 * The dictionary of quantities: every column by name, with label, unit, formula and source. It is read off the
 * declarations and the inputs, so it cannot disagree with what is computed.
 */
import { INPUT_FAMILIES, INPUTS } from '../notebook/inputs.ts';
import { BASELINE, CATALOGUE, type ResultName, type Values, type WeekName } from './quantities.ts';

export interface Description {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly kind: 'result' | 'week' | 'day' | 'input';
  readonly formula?: string;
  /** Columns it depends on directly, and families of columns by their pattern. */
  readonly from?: readonly string[];
  readonly source?: readonly string[];
  /** Column that must be above 0 for the quantity to exist in a scenario. */
  readonly when?: string;
  /** Part of the model it is declared in. */
  readonly part?: string;
}

const byName = new Map<string, Description>();
for (const { column, label, unit } of INPUTS)
  byName.set(column, { name: column, label, unit, kind: 'input' });
for (const { name, made, from, width, onDemand, part } of CATALOGUE.entries.values()) {
  const { label, unit, formula, source, when } = made;
  const kind = width === 1 ? 'result' : onDemand ? 'day' : 'week';
  // Which winter a row stands in is no number to show.
  const shown = from.filter((read) => !read.startsWith('@') && read !== 'weatherIndex');
  byName.set(name, { name, label, unit, kind, formula, from: shown, source, when, part });
}

/** What a column is, or undefined for a name the model does not know (coefficients describe themselves). */
export function describe(name: string): Description | undefined {
  const known = byName.get(name);
  if (known) return known;
  const baseline = BASELINE.exec(name);
  if (baseline) {
    const own = byName.get(`${baseline[1][0].toLowerCase()}${baseline[1].slice(1)}`);
    // Coefficients and prices describe themselves, in the baseline's own working.
    return {
      name,
      label: `${own?.label ?? baseline[1]}, of the baseline`,
      unit: own?.unit ?? '',
      kind: 'input',
    };
  }
  for (const { family, fields } of INPUT_FAMILIES) {
    const match = new RegExp(`^${family}(\\d+)(\\w+)$`).exec(name);
    const field = match && fields[match[2]];
    if (field)
      return { name, label: `${field.label}, ${family} ${match[1]}`, unit: field.unit, kind: 'input' };
  }
  return undefined;
}

/** Every result the model makes, in the order of declaration. */
export const RESULTS = [...byName.values()].filter(
  (d): d is Description & { readonly name: ResultName } => d.kind === 'result',
);

/** Whether a name from outside, of a notebook or a command, is that of a result. */
export const isResult = (name: string): name is ResultName => byName.get(name)?.kind === 'result';

/** Whether it is that of a weekly series. */
export const isWeekly = (name: string): name is WeekName => byName.get(name)?.kind === 'week';

/** The same for all that is told of a scenario: a result, or the winter's days. */
export const isValue = (name: string): name is keyof Values => name === 'winterDays' || isResult(name);

/** A name from outside as that of a result. Throws where it is none: whoever reads notebooks has looked before. */
export function resultNamed(name: string): ResultName {
  if (isResult(name)) return name;
  throw new Error(`no result is called ${name}`);
}

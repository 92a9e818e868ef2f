/**
 * The same declarations as bare loops: each step once over whole columns, with no chunks, windows or plan to look at.
 * What the engine adds to that is its own cost.
 */
import type { Step } from '../../src/model/engine/catalogue.ts';
import { familyOf } from '../../src/model/engine/columns.ts';
import { BASELINE, planFor, type QuantityName } from '../../src/model/quantities.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import type { Columns } from './rows.ts';

/** Of these names those a row tells by itself: what holds it against a baseline takes a second plan, not a loop. */
export const aloneOf = <Name extends QuantityName>(names: readonly Name[]): Name[] =>
  names.filter((name) => ![...planFor([name]).inputs].some((input) => BASELINE.test(input)));

/** A function that works out `names` for all rows and hands back their columns. */
export function loopsOf(
  names: readonly QuantityName[],
  columns: Columns,
  rows: number,
  weather: readonly PreparedWeather[],
): () => Columns {
  const { steps, targets } = planFor(names);
  const all: Columns = { ...columns };
  for (const { name, width } of steps.flatMap((step) => step.makes))
    all[name] = new Float64Array(rows * width);
  const read = (name: string): unknown => {
    if (name === '@weather') return weather;
    const of = familyOf(name);
    if (!of) return all[name];
    const items: Float64Array[] = [];
    while (all[`${of.family}${items.length + 1}${of.field}`])
      items.push(all[`${of.family}${items.length + 1}${of.field}`]);
    return items;
  };
  const wanted = new Set([...targets, ...steps.flatMap(({ reads }) => reads)]);
  const runs = steps.map((step) => loopOf(step, rows, read, all, wanted));
  return () => {
    for (const run of runs) run();
    return Object.fromEntries(targets.map((name) => [name, all[name]]));
  };
}

function loopOf(
  step: Step,
  rows: number,
  read: (name: string) => unknown,
  all: Columns,
  wanted: ReadonlySet<string>,
): () => void {
  if (step.quantity) {
    const { fill } = step.quantity;
    const given = step.reads.map(read) as unknown as readonly never[];
    const out = all[step.makes[0].name];
    return () => fill(rows, out, given);
  }
  const io = {
    count: rows,
    read: Object.fromEntries(step.reads.map((name) => [name, read(name)])),
    write: Object.fromEntries(step.makes.map(({ name }) => [name, all[name]])),
    wants: (name: string) => wanted.has(name),
    repeats: (i: number) => {
      if (i === 0) return false;
      for (const name of step.reads) {
        const column = all[name];
        const width = column ? column.length / rows : 0;
        for (let at = i * width; at < (i + 1) * width; at++)
          if (!Object.is(column[at], column[at - width])) return false;
      }
      for (const { name, width } of step.makes) all[name].copyWithin(i * width, (i - 1) * width, i * width);
      return true;
    },
  };
  return () => step.walk?.run(io as never);
}

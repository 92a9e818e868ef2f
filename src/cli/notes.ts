/** What is worth knowing about an opened notebook though nothing is wrong with it: a line each. */
import { isValue } from '../model/dictionary.ts';
import { lostNotes } from '../notebook/notePlaces.ts';
import { moneyCase } from '../study/moneyCase.ts';
import { formatProblem, type Problem } from '../units/problem.ts';
import type { Opened } from './open.ts';

/**
 * Keys that are read over, readers' notes whose place is gone, a depth of frost that is not written, how gaps in the
 * weather were filled, which winters were left out, and money that does not add up.
 */
export function notesOf(opened: Opened): string[] {
  const { notebook, winters, run } = opened;
  const { file, lineOf, scenarios } = notebook;
  const money = scenarios.flatMap(({ name }, k) =>
    moneyCase(run, k).faults.map(({ at, words }): Problem => {
      const place = at.startsWith('finance.') ? `scenarios.${k}.${at}` : `scenarios.${k}`;
      return { what: `${name}: ${words}`, file, line: lineOf(place), key: at };
    }),
  );
  return [
    ...notebook.notes,
    ...lostNotes(notebook, isValue),
    ...frostNote(opened),
    ...winters.notes,
    ...money,
  ].map(formatProblem);
}

/** Depth, m, that was reckoned with in older versions where a notebook gave none. */
const DEPTH_BEFORE_M = 0.6;

/** Said once, and only where a foundation goes another way than it went before: the pads reach so deep anyway. */
function frostNote({ notebook, run }: Opened): Problem[] {
  const padM = run.tables.coefficients.get('padDepthM')?.central ?? DEPTH_BEFORE_M;
  const deeper = notebook.scenarios.flatMap(({ shed }, k) => {
    const { frostDepthM, billPadConcreteM3 } = run.results[k].values;
    const moved = (frostDepthM ?? 0) > Math.max(padM, DEPTH_BEFORE_M);
    return shed.frostDepthM === undefined && moved && (billPadConcreteM3 ?? 0) > 0 ? [k] : [];
  });
  const [first] = deeper;
  if (first === undefined) return [];
  const depth = (run.results[first].values.frostDepthM as number).toFixed(2);
  const names = deeper.map((k) => `"${notebook.scenarios[k].name}"`).join(', ');
  return [
    {
      what: `no depth of frost is given for ${names}: foundations go ${depth} m deep there, by the winters of the weather in use; older versions took ${DEPTH_BEFORE_M} m`,
      file: notebook.file,
      line: notebook.lineOf(`scenarios.${first}.shed`),
      key: `scenarios.${first}.shed.frostDepthM`,
      todo: `write what the local code says; frostDepthM: ${DEPTH_BEFORE_M} in shed gives what stood before`,
    },
  ];
}

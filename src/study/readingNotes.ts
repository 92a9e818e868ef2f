/** What older versions read another way, and what was read over: said beside the notebook, on page and command. */
import type { Notebook } from '../notebook/read.ts';
import type { Problem } from '../units/problem.ts';
import type { Run } from './evaluate.ts';

export const readingNotes = (notebook: Notebook, run: Run): readonly Problem[] => [
  ...notebook.notes,
  ...frostNote(notebook, run),
];

/** Depth, m, that was reckoned with in older versions where a notebook gave none. */
const DEPTH_BEFORE_M = 0.6;

/** Said once, and only where a foundation goes another way than it went before: the pads reach so deep anyway. */
function frostNote(notebook: Notebook, run: Run): Problem[] {
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

/** Headline figures of another text than the open one, such as that of an earlier day, with their ranges from the worker. */
import { unknownIds } from '../model/idFaults.ts';
import type { ResultName } from '../model/quantities.ts';
import { evaluate, type Run, type ScenarioResult, withBands } from '../study/evaluate.ts';
import type { Problem } from '../units/problem.ts';
import type { Engine } from './engine.ts';

export interface Figures {
  readonly run: Run;
  readonly results: readonly ScenarioResult[];
}

/** Enough for a range to two figures; the page's own draws go on meanwhile. */
const DRAWS = 1000;
const SLOT = 'figures of another text';

/** The figures at once; `ranged` is told them again with their ranges, where there is a worker to draw them. */
export async function figuresOf(
  text: string,
  file: string,
  engine: Engine,
  keep: readonly ResultName[],
  ranged: (figures: Figures) => void,
): Promise<Figures | { readonly problems: readonly Problem[] }> {
  const { notebook, problems } = engine.read(text, file);
  if (!notebook) return { problems };
  const found = await engine.winters(notebook);
  const faults = [...unknownIds(notebook, engine.tables), ...found.problems];
  if (faults.length > 0) return { problems: faults };
  try {
    const run = evaluate(notebook, engine.tables, found.winterOf);
    const { count, seed } = notebook.draws;
    engine.explorer
      ?.ask({
        slot: SLOT,
        setting: run,
        request: { kind: 'draws', count: Math.min(DRAWS, count), seed, keep },
        // A keeper waits for it.
        urgent: true,
      })
      .then((answer) => {
        if (answer)
          ranged({ run, results: withBands(run.results, run.bound, answer.bands, { checks: false }) });
      })
      // The figures stand without ranges.
      .catch(() => {});
    return { run, results: run.scenarios };
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return { problems: [{ what: 'the figures of that text could not be computed', file, found: words }] };
  }
}

/** Draws away from the page, first a few so that ranges show soon, then all the notebook asks for. */
import { draw } from '../explore/draws.ts';
import { COMPARISONS } from '../explore/measures.ts';
import { RESULTS } from '../model/dictionary.ts';
import { evaluate } from '../model/evaluate.ts';
import { type Answer, type Ask, startEngine } from './engine.ts';

const { engine } = startEngine();
const FIRST = 200;
/** What a browser page can hold and a phone can wait for. */
const MOST = 10_000;
let latest = 0;

onmessage = async ({ data: { id, text, file } }: MessageEvent<Ask>) => {
  latest = id;
  const { notebook } = engine.read(text, file);
  if (!notebook) return;
  const { winterOf, problems } = await engine.winters(notebook);
  if (problems.length > 0) return;
  const run = evaluate(notebook, engine.tables, winterOf);
  const made = new Set(RESULTS.map(({ name }) => name));
  const keep = COMPARISONS.map(({ name }) => name).filter((name) => made.has(name));
  const { count, seed } = notebook.draws;
  for (const some of new Set([Math.min(FIRST, count), Math.min(MOST, count)])) {
    const steps = draw(run, { count: some, seed, keep });
    for (;;) {
      const step = steps.next();
      if (step.done) {
        postMessage({ id, draws: step.value } satisfies Answer);
        break;
      }
      // Lets a newer question in; this one is then given up.
      await new Promise((resume) => setTimeout(resume));
      if (latest !== id) return;
    }
  }
};

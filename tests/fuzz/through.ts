/** One case through all that a notebook goes through: read, weather, evaluate, check, draws, paper, write. */
import { paperReport } from '../../src/cli/paper.ts';
import { unknownIds } from '../../src/model/idFaults.ts';
import { notebookWinters } from '../../src/model/weather/notebookWinters.ts';
import { proseParts } from '../../src/notebook/markdown.ts';
import { type Notebook, type ReadResult, readNotebook } from '../../src/notebook/read.ts';
import { setInput } from '../../src/notebook/write.ts';
import { paperDocument } from '../../src/paper/document.ts';
import { evaluate, watchEvaluations } from '../../src/study/evaluate.ts';
import type { Tables } from '../../src/tables/coefficient.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { formatProblem, type Problem } from '../../src/units/problem.ts';

export interface Went {
  /** How far it came. */
  readonly to: 'refused' | 'evaluated' | 'paper';
  /** What must not be: empty where all is well. */
  readonly faults: readonly string[];
}

const FEW_DRAWS = 6;
const REFUSALS = /CommandError/;

/** A problem must be readable: one line, words, no stack, a line that is one. */
export function sayings(problems: readonly Problem[]): string[] {
  return problems.flatMap((problem) => {
    const said = formatProblem(problem);
    const line = problem.line ?? 1;
    const plain = !/RangeError|TypeError|undefined|\[object|call stack/.test(said.replace(/found [^;]*/, ''));
    return plain && said.length < 2000 && Number.isInteger(line) && line >= 1
      ? []
      : [`unreadable: ${said.slice(0, 300)}`];
  });
}

export async function through(
  source: string | Uint8Array,
  tables: Tables,
  weatherOf: (name: string) => string | undefined,
  { paper }: { readonly paper: boolean },
): Promise<Went> {
  const faults: string[] = [];
  const read = readNotebook(source, 'fuzz.md');
  faults.push(...sayings(read.problems), ...readFaults(read));
  if (!read.notebook) return { to: 'refused', faults };
  const { notebook } = read;
  for (const block of notebook.blocks) if (block.type === 'prose') faults.push(...proseFaults(block.text));
  const winters = await notebookWinters(
    notebook.scenarios,
    'fuzz.md',
    async (name) => notebook.weather.get(name) ?? weatherOf(name),
  );
  const problems = [...unknownIds(notebook, tables), ...winters.problems];
  faults.push(...sayings(problems));
  if (problems.length > 0 || !read.ok) return { to: 'refused', faults };
  const before = watchEvaluations((broken) => faults.push(...broken));
  try {
    const run = evaluate(notebook, tables, winters.winterOf);
    faults.push(
      ...run.results.flatMap(({ checks, name }) =>
        checks
          .filter(
            ({ value, limit, words }) =>
              (value !== null && !Number.isFinite(value)) ||
              (limit !== null && !Number.isFinite(limit)) ||
              /NaN|Infinity|undefined/.test(words),
          )
          .map(({ id, words }) => `${name}: check ${id}: ${words}`),
      ),
    );
    faults.push(...writeFaults(notebook));
    if (!paper) return { to: 'evaluated', faults };
    drawAll(run, { count: FEW_DRAWS, seed: 1, keep: ['nitrogenKeptKg', 'netCost'] });
    const document = paperDocument(
      await paperReport({ notebook, tables, winters, run }, { draws: FEW_DRAWS, seed: 1, day: '1 May 2026' }),
      'a4',
    );
    const odd = /\b(NaN|Infinity|undefined|∞)\b/.exec(
      document.replace(/<h1>.*?<\/h1>|<title>.*?<\/title>/g, ''),
    );
    if (odd) faults.push(`the paper says ${document.slice(Math.max(0, odd.index - 90), odd.index + 40)}`);
    if (/<script|src="?http|url\(\s*['"]?http/i.test(document))
      faults.push('the paper holds a script or an address');
    return { to: 'paper', faults };
  } catch (error) {
    if (!REFUSALS.test((error as Error).constructor.name)) throw error;
    return { to: 'evaluated', faults };
  } finally {
    watchEvaluations(before);
  }
}

function readFaults({ ok, notebook, problems }: ReadResult): string[] {
  if (ok !== (problems.length === 0)) return ['read says ok with problems, or not ok without'];
  return notebook || problems.length > 0 ? [] : ['refused without a reason'];
}

function proseFaults(text: string): string[] {
  const html = proseParts(text, () => '1').join('');
  return /<script|<img|<iframe|\son\w+=|href="\s*(javascript|data|vbscript):/i.test(html)
    ? [`prose lets through ${html.slice(0, 200)}`]
    : [];
}

/** An edit that changes nothing leaves the bytes; one that changes something leaves the rest. */
function writeFaults({ text, title }: Notebook): string[] {
  if (setInput(text, 'title', title) !== text) return ['writing the same title changed the text'];
  const other = setInput(text, 'title', 'Another title');
  const again = readNotebook(other, 'fuzz.md');
  return again.notebook?.title === 'Another title' && again.problems.length === 0
    ? []
    : ['a written title is not read back'];
}

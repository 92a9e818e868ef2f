/** What the store needs from this page: tables of the build, weather fetched when it is named, draws by a worker. */
import type { Draws } from '../explore/draws.ts';
import { CHOICE_OPTIONS } from '../notebook/choiceOptions.ts';
import { readNotebook } from '../notebook/read.ts';
import type { Engine } from '../store/open.ts';
import { loadTables } from '../tables/load.ts';
import type { Problem } from '../units/problem.ts';
import { dataFiles } from './data.ts';
import { wintersOf } from './winters.ts';

/** A moment of rest before drawing, so that typing and turning are not held up. */
const REST_MS = 200;

export interface Started {
  readonly engine: Engine;
  /** What is wrong with the tables: a fault of the build, shown rather than hidden. */
  readonly problems: readonly Problem[];
}

/** `draw` is left out inside the worker, which does the drawing itself. */
export function startEngine(draw?: Engine['draw']): Started {
  const { tables, problems } = loadTables(dataFiles, CHOICE_OPTIONS);
  return { engine: { tables, read: readNotebook, winters: wintersOf, ...(draw ? { draw } : {}) }, problems };
}

/** Draws in a worker that is begun when first needed. Answers to older questions are dropped. */
export function workerDraw(): NonNullable<Engine['draw']> {
  let worker: Worker | undefined;
  let asked = 0;
  return (_run, notebook, signal, onDraws) => {
    const id = ++asked;
    const rest = setTimeout(() => {
      worker ??= new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<Answer>) => {
        if (data.id === asked && !signal.aborted) onDraws(data.draws);
      };
      worker.postMessage({ id, text: notebook.text, file: notebook.file } satisfies Ask);
    }, REST_MS);
    signal.addEventListener('abort', () => clearTimeout(rest));
  };
}

export interface Ask {
  readonly id: number;
  readonly text: string;
  readonly file: string;
}

export interface Answer {
  readonly id: number;
  readonly draws: Draws;
}

/** Workers of `batch` and what they are given: answers come in the order of the files, however many work. */
import { Worker } from 'node:worker_threads';
import type { BatchAnswer, BatchAsk } from './batchWorker.ts';

/** Notebooks a worker takes at once: enough to be busy, few enough that all cores end together. */
export const TOGETHER = 16;
/** Parcels given out before the oldest has been written, for each worker: keeps the memory flat. */
const AHEAD = 2;

/**
 * A parcel is given out only when the one `AHEAD × workers` before it has been taken, so that slow writing holds the
 * computing back.
 */
export async function* answersOf(
  files: readonly string[],
  workers: number,
  keep: BatchAsk['keep'],
): AsyncGenerator<BatchAnswer> {
  const parcels = Math.ceil(files.length / TOGETHER);
  const done = new Map<number, BatchAnswer>();
  let wake: () => void = () => {};
  let failure: Error | undefined;
  let given = 0;
  let taken = 0;
  const idle: Worker[] = [];
  const crew = Array.from({ length: Math.min(workers, parcels) }, () => {
    const worker = new Worker(new URL('./batchStart.mjs', import.meta.url), { execArgv: [] });
    worker.on('message', (answer: BatchAnswer) => {
      done.set(answer.id, answer);
      idle.push(worker);
      wake();
    });
    worker.on('error', (error) => {
      failure = error;
      wake();
    });
    idle.push(worker);
    return worker;
  });
  try {
    while (taken < parcels) {
      while (idle.length > 0 && given < parcels && given < taken + AHEAD * workers) {
        const id = given++;
        const ask: BatchAsk = { id, files: files.slice(id * TOGETHER, (id + 1) * TOGETHER), keep };
        idle.pop()?.postMessage(ask);
      }
      const next = done.get(taken);
      if (next) {
        done.delete(taken++);
        yield next;
        continue;
      }
      await new Promise<void>((resolve) => {
        wake = resolve;
        if (failure || done.has(taken)) resolve();
      });
      if (failure) throw failure;
    }
  } finally {
    await Promise.all(crew.map((worker) => worker.terminate()));
  }
}

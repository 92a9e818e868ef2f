/** The far side of a port: takes settings and requests, works them in slices, answers, and stops when told. */

import type { Setting } from '../study/rows.ts';
import { draw } from '../uncertainty/monteCarlo.ts';
import { type Crew, openCrew } from './crew.ts';
import { work } from './job.ts';
import { keptDraws } from './keptDraws.ts';
import { type FromServer, type Port, SETTINGS_KEPT, type ToServer } from './protocol.ts';

/** How long a job may run before messages are looked at, ms. */
const SLICE_MS = 12;

type Ask = Extract<ToServer, { say: 'ask' }>;

/**
 * Answers what comes in by `port`: the urgent first, then the last asked; an older job goes on when the newer one
 * is done. So the cards are never kept waiting by a cell that was asked after them.
 */
export function serve(port: Port): void {
  const settings = new Map<number, Setting>();
  const waiting: Ask[] = [];
  const stopped = new Set<number>();
  let busy = false;
  let crew: Crew | undefined;
  const reply = (message: FromServer, transfer: Transferable[] = []) => port.postMessage(message, transfer);

  /** The most pressing of what waits; `than` is what it would interrupt. */
  const take = (than?: Ask): Ask | undefined => {
    const urgent = waiting.findLastIndex((job) => job.urgent);
    const at = urgent >= 0 || than?.urgent ? urgent : waiting.length - 1;
    return at < 0 ? undefined : waiting.splice(at, 1)[0];
  };
  const next = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (let job = take(); job; job = take()) await run(job);
    stopped.clear();
    busy = false;
  };
  const run = async (ask: Ask): Promise<void> => {
    const { version, setting, request, changes } = ask;
    const on = settings.get(setting);
    if (!on || stopped.has(version)) return;
    try {
      const share = crew?.share(setting, on);
      const job = work(on, request, changes, keptDraws(share?.draws ?? draw));
      let since = performance.now();
      for (let step = job.next(); ; step = job.next()) {
        if (step.done) {
          reply({ say: 'answer', version, answer: step.value }, buffersIn(step.value));
          return;
        }
        // Its own share is done: the others are waited for, and messages are handled meanwhile.
        const waits = share?.waits();
        if (!waits && performance.now() - since < SLICE_MS) continue;
        reply({ say: 'progress', version, done: step.value });
        await (waits ?? breath());
        // What was asked since is more pressing: a slider is being moved.
        for (let newer = take(ask); newer; newer = take(ask)) await run(newer);
        if (stopped.has(version)) {
          job.return(null);
          return;
        }
        since = performance.now();
      }
    } catch (error) {
      reply({ say: 'failed', version, words: error instanceof Error ? error.message : String(error) });
    }
  };
  port.addEventListener('message', ({ data }: MessageEvent<ToServer>) => {
    if (data.say === 'setting') {
      settings.set(data.setting, data.value);
      if (settings.size > SETTINGS_KEPT) settings.delete(settings.keys().next().value as number);
    } else if (data.say === 'stop') {
      stopped.add(data.version);
      crew?.wake();
    } else if (data.say === 'crew') {
      crew?.close();
      crew = data.ports.length > 0 ? openCrew(data.ports) : undefined;
    } else if (data.say === 'serve') {
      serve(data.port);
      data.port.start();
    } else {
      waiting.push(data);
      crew?.wake();
      void next();
    }
  });
}

/** Lets messages that have come in be handled. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** The large arrays of an answer, to be handed over rather than copied. */
function buffersIn(value: unknown, found = new Set<ArrayBuffer>()): ArrayBuffer[] {
  if (value instanceof Float64Array) {
    // A view of part of a buffer would take the rest with it.
    if (value.buffer instanceof ArrayBuffer && value.byteLength === value.buffer.byteLength)
      found.add(value.buffer);
  } else if (value !== null && typeof value === 'object')
    for (const part of Object.values(value)) buffersIn(part, found);
  return [...found];
}

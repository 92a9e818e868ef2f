import { type Explorer, type ExplorerPort, openExplorer } from '../worker/explorer.ts';

/** More would hold more memory than they save time. */
const MOST_WORKERS = 4;

/** One for each processor but the page's own. */
export const workersFor = (processors: number): number => Math.max(1, Math.min(MOST_WORKERS, processors - 1));

/** Starts the workers; their code is a file of the build, so the content security policy needs no exception. */
export function startExplorer(count = workersFor(navigator.hardwareConcurrency || 2)): Explorer {
  return openExplorer(afterPaint(() => crewOf(count)));
}

const startWorker = (name: string) =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name });

/** The first worker leads: the page speaks with it alone, and it shares long work with the others. */
function crewOf(count: number): Worker & ExplorerPort {
  const lead = startWorker('explorer');
  const others = Array.from({ length: count - 1 }, (_, k) => startWorker(`explorer ${k + 2}`));
  const ports = others.map((other) => {
    const { port1, port2 } = new MessageChannel();
    other.postMessage({ say: 'serve', port: port1 }, [port1]);
    // Without one of them the lead goes on alone.
    other.addEventListener('error', () => lead.postMessage({ say: 'crew', ports: [] }));
    return port2;
  });
  if (ports.length > 0) lead.postMessage({ say: 'crew', ports }, ports);
  const end = lead.terminate.bind(lead);
  lead.terminate = () => {
    for (const other of others) other.terminate();
    end();
  };
  return lead;
}

/**
 * A port whose far side is started by the first message, and not before the page has painted what it has: the worker's
 * code is not needed for the first cards, and is not to hold them up.
 */
function afterPaint(start: () => ExplorerPort & Worker): ExplorerPort {
  let far: Worker | undefined;
  let closed = false;
  const waiting: unknown[] = [];
  const listeners: ((event: MessageEvent) => void)[] = [];
  const begin = () => {
    if (closed) return;
    far = start();
    for (const listener of listeners) far.addEventListener('message', listener);
    for (const message of waiting.splice(0)) far.postMessage(message);
  };
  return {
    postMessage(message) {
      if (far) return far.postMessage(message);
      // A page out of sight has no frames; it starts at once.
      if (waiting.push(message) > 1) return;
      if (document.visibilityState === 'hidden') setTimeout(begin);
      else requestAnimationFrame(() => setTimeout(begin));
    },
    addEventListener(type, listener) {
      if (far) far.addEventListener(type, listener);
      else listeners.push(listener);
    },
    terminate() {
      closed = true;
      far?.terminate();
    },
  };
}

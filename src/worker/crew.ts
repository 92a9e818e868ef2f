/**
 * Long draws shared among workers. One leads: it takes the first share itself and asks the others, in the same words
 * that it is asked in, for the rest. Each number's stream is taken up where the share begins, so what comes together is
 * to the bit what one worker makes, however many there are.
 */
import type { Setting } from '../study/rows.ts';
import { type Draws, draw } from '../uncertainty/monteCarlo.ts';
import type { Drawing } from './job.ts';
import { type FromServer, SETTINGS_KEPT, type ToServer } from './protocol.ts';

/** Fewer draws are made before the others have begun. */
const WORTH_SHARING = 2_500;
export interface Share {
  readonly draws: Drawing;
  /** Stands while there is nothing to do but wait for others. */
  waits(): Promise<void> | undefined;
}

export interface Crew {
  /** For one job, whose setting has this number. */
  share(setting: number, value: Setting): Share;
  /** Something came in that a waiting job must look at. */
  wake(): void;
  /** The others are gone: what they have not done is done here. */
  close(): void;
}

type Options = Parameters<Drawing>[1];

interface Span {
  readonly from: number;
  readonly count: number;
}

/** What another was asked for. */
interface Part extends Span {
  state: 'asked' | Draws | 'failed';
}

interface Asked {
  readonly part: Part;
  /** It is no longer wanted. */
  readonly stop: () => void;
}

export function openCrew(ports: readonly MessagePort[]): Crew {
  const parts = new Map<number, Part>();
  /** Settings each one has been told. */
  const told = ports.map((): number[] => []);
  let version = 0;
  let open = true;
  let wakers: (() => void)[] = [];
  const wake = () => {
    const all = wakers;
    wakers = [];
    for (const each of all) each();
  };
  const send = (k: number, message: ToServer) => ports[k].postMessage(message);
  for (const port of ports) {
    port.onmessage = ({ data }: MessageEvent<FromServer>) => {
      const part = parts.get(data.version);
      if (!part || data.say === 'progress') return;
      part.state = data.say === 'answer' ? (data.answer as Draws) : 'failed';
      wake();
    };
  }
  const close = () => {
    open = false;
    for (const part of parts.values()) if (part.state === 'asked') part.state = 'failed';
    for (const port of ports) port.close();
    wake();
  };

  const ask = (
    k: number,
    setting: number,
    value: Setting,
    options: Options,
    { from, count }: Span,
  ): Asked => {
    if (!told[k].includes(setting)) {
      send(k, { say: 'setting', setting, value });
      told[k].push(setting);
      // As the other one lets go of them.
      if (told[k].length > SETTINGS_KEPT) told[k].shift();
    }
    const part: Part = { from, count, state: 'asked' };
    const mine = ++version;
    parts.set(mine, part);
    const { seed, keep, changes } = options;
    const request = { kind: 'part', from, count, seed, keep } as const;
    send(k, { say: 'ask', version: mine, setting, request, changes });
    const stop = () => {
      parts.delete(mine);
      if (part.state === 'asked') send(k, { say: 'stop', version: mine });
    };
    return { part, stop };
  };

  const share = (setting: number, value: Setting): Share => {
    const lead = { waiting: false };
    function* draws(on: Setting, options: Options): Generator<number, Draws> {
      if (options.count < WORTH_SHARING || !open) return yield* draw(on, options);
      const [own, ...others] = sharesOf(options.count, ports.length + 1);
      const asked = others.map((span, k) => ask(k, setting, value, options, span));
      try {
        return yield* together(on, options, own.count, asked, lead);
      } finally {
        lead.waiting = false;
        for (const { stop } of asked) stop();
      }
    }
    const waits = () => (lead.waiting ? new Promise<void>((resume) => wakers.push(resume)) : undefined);
    return { draws, waits };
  };
  return { share, wake, close };
}

/** The first `first` draws here, then what the others made of the rest, or would have. */
function* together(
  on: Setting,
  options: Options,
  first: number,
  asked: readonly Asked[],
  lead: { waiting: boolean },
): Generator<number, Draws> {
  const { count, keep } = options;
  const own = yield* within(draw(on, { ...options, count: first }), 0, first / count);
  const whole = { ...own, count, results: withRoom(own, count) };
  for (const { part } of asked) {
    const { from, count: here } = part;
    while (part.state === 'asked') {
      lead.waiting = true;
      yield from / count;
    }
    lead.waiting = false;
    const made =
      part.state === 'failed'
        ? yield* within(draw(on, { ...options, from, count: here }), from / count, here / count)
        : part.state;
    for (const name of keep) {
      const values = made.results[name];
      if (values) whole.results[name]?.set(values, from * own.scenarios);
    }
    yield (from + here) / count;
  }
  return whole;
}

/** Steps of a part as steps of the whole. */
function* within(drawing: Generator<number, Draws>, before: number, share: number): Generator<number, Draws> {
  let step = drawing.next();
  for (; !step.done; step = drawing.next()) yield before + share * step.value;
  return step.value;
}

/** As even as whole draws allow. */
function sharesOf(count: number, among: number): Span[] {
  const starts = Array.from({ length: among + 1 }, (_, k) => Math.round((count * k) / among));
  return starts.slice(0, -1).map((from, k) => ({ from, count: starts[k + 1] - from }));
}

/** The results with room behind them for the draws of others. */
function withRoom({ results, scenarios }: Draws, count: number): Draws['results'] {
  return Object.fromEntries(
    Object.entries(results).map(([name, values]) => {
      const whole = new Float64Array(count * scenarios);
      whole.set(values as Float64Array);
      return [name, whole];
    }),
  ) as Draws['results'];
}

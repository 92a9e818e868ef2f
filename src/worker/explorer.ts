/**
 * The near side of the worker. Every question belongs to a slot (a figure, the cards): asking again in a slot
 * stops what it asked before, and an answer that comes late is dropped.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals-core';
import type { RowChanges } from '../model/bind.ts';
import type { Setting } from '../study/rows.ts';
import type { Answers, Kind, Requests } from './job.ts';
import { type FromServer, type Port, SETTINGS_KEPT, type ToServer, WHILE_DRAGGING } from './protocol.ts';

export interface Progress {
  readonly slot: string;
  /** Share done, 0 to 1. */
  readonly done: number;
}

export interface Asking<K extends Kind> {
  readonly slot: string;
  readonly setting: Setting;
  readonly request: Requests[K] & { readonly kind: K };
  /** Inputs turned without writing them. */
  readonly changes?: RowChanges;
  /** Comes before everything that is not; for what is always in sight. */
  readonly urgent?: boolean;
}

export interface Explorer {
  /** What has run for longer than 200 ms and is not done. */
  readonly progress: ReadonlySignal<readonly Progress[]>;
  /** How many questions have no answer yet, however short a while they take. */
  readonly waiting: ReadonlySignal<number>;
  /** The answer, or undefined when it was stopped or asked anew. Rejects when the job failed. */
  ask<K extends Kind>(asking: Asking<K>): Promise<Answers[K] | undefined>;
  /** Few draws at once, then all of them, each handed to `deliver` unless something newer was asked meanwhile. */
  follow(asking: Asking<'draws'>, deliver: (answer: Answers['draws']) => void): Promise<void>;
  stop(slot: string): void;
  close(): void;
}

/** A port, and a worker where there is one, which can be ended. */
export type ExplorerPort = Port & { terminate?(): void; close?(): void; start?(): void };

/** Nothing is said of work that takes less. */
export const SHOWN_AFTER_MS = 200;

interface Running {
  readonly slot: string;
  readonly version: number;
  readonly since: number;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
}

export function openExplorer(port: ExplorerPort, now: () => number = () => performance.now()): Explorer {
  const running = new Map<string, Running>();
  const settings = new WeakMap<Setting['bound'], { id: number; weather: string }>();
  /** Settings the far side has. */
  const sent: number[] = [];
  const shown = signal<readonly Progress[]>([]);
  const waiting = signal(0);
  let version = 0;
  let lastSetting = 0;
  const send = (message: ToServer) => port.postMessage(message);

  const finish = (slot: string) => {
    running.delete(slot);
    waiting.value = running.size;
    if (shown.value.some((p) => p.slot === slot)) shown.value = shown.value.filter((p) => p.slot !== slot);
  };
  const stop = (slot: string) => {
    const before = running.get(slot);
    if (!before) return;
    send({ say: 'stop', version: before.version });
    finish(slot);
    before.resolve(undefined);
  };
  /** Sends a setting the first time it is met; the same bindings in the same winters are the same setting. */
  const settingOf = ({ bound, weather, weatherIndex }: Setting): number => {
    const key = `${weatherIndex.join(',')} ${weather.map((w) => `${w.label} ${w.start}`).join(';')}`;
    const before = settings.get(bound);
    if (before?.weather === key && sent.includes(before.id)) return before.id;
    const id = ++lastSetting;
    settings.set(bound, { id, weather: key });
    sent.push(id);
    // As the far side lets go of them.
    if (sent.length > SETTINGS_KEPT) sent.shift();
    send({ say: 'setting', setting: id, value: { bound, weather, weatherIndex } });
    return id;
  };
  const ask = <K extends Kind>({
    slot,
    setting,
    request,
    changes = new Map(),
    urgent = false,
  }: Asking<K>) => {
    stop(slot);
    const mine = ++version;
    return new Promise<Answers[K] | undefined>((resolve, reject) => {
      running.set(slot, {
        slot,
        version: mine,
        since: now(),
        resolve: resolve as (a: unknown) => void,
        reject,
      });
      waiting.value = running.size;
      send({ say: 'ask', version: mine, setting: settingOf(setting), request, changes, urgent });
    });
  };

  port.addEventListener('message', ({ data }: MessageEvent<FromServer>) => {
    const job = [...running.values()].find((r) => r.version === data.version);
    if (!job) return;
    if (data.say === 'progress') {
      if (now() - job.since < SHOWN_AFTER_MS) return;
      shown.value = [...shown.value.filter((p) => p.slot !== job.slot), { slot: job.slot, done: data.done }];
      return;
    }
    finish(job.slot);
    if (data.say === 'answer') job.resolve(data.answer);
    else job.reject(new Error(data.words));
  });
  port.start?.();

  return {
    progress: computed(() => shown.value),
    waiting: computed(() => waiting.value),
    ask,
    async follow(asking, deliver) {
      const { count } = asking.request;
      if (count > WHILE_DRAGGING) {
        const few = await ask({ ...asking, request: { ...asking.request, count: WHILE_DRAGGING } });
        if (!few) return;
        deliver(few);
      }
      const all = await ask(asking);
      if (all) deliver(all);
    },
    stop,
    close() {
      for (const slot of [...running.keys()]) stop(slot);
      if (port.terminate) port.terminate();
      else port.close?.();
    },
  };
}

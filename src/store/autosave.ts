/** Saves a moment after the last change, at once when the page is left, and tells other tabs. */
import type { Shelf } from './shelf.ts';

export interface Saved {
  readonly state: 'saved' | 'waiting' | 'failed';
  /** What the reader should know, if anything. */
  readonly words?: string;
}

export interface Autosave {
  /** Call at each change. */
  changed(title: string, text: string): void;
  /** Saves what is waiting, now. */
  flush(): Promise<void>;
  stop(): void;
}

/** A word between tabs: this notebook has a new revision. */
interface Word {
  readonly id: string;
  readonly revision: number;
}

export interface AutosaveOptions {
  readonly id: string;
  readonly revision: number;
  readonly onState: (saved: Saved) => void;
  /** Another tab has saved the same notebook. */
  readonly onOther: (revision: number) => void;
  readonly delayMs?: number;
  readonly channel?: BroadcastChannel;
}

export function autosave(shelf: Shelf, options: AutosaveOptions): Autosave {
  const { id, onState, onOther, delayMs = 400 } = options;
  const channel = options.channel ?? new BroadcastChannel('winterkeep');
  let seen = options.revision;
  let waiting: { title: string; text: string } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let saving: Promise<void> = Promise.resolve();

  const save = async () => {
    clearTimeout(timer);
    if (!waiting) return;
    const { title, text } = waiting;
    waiting = undefined;
    try {
      const { kept, aside } = await shelf.put(id, title, text, seen);
      seen = kept.revision;
      channel.postMessage({ id, revision: seen } satisfies Word);
      onState({
        state: waiting ? 'waiting' : 'saved',
        ...(aside
          ? { words: `Another tab had changed this notebook. Its text is kept as “${aside.title}”.` }
          : {}),
      });
    } catch (error) {
      waiting ??= { title, text };
      onState({
        state: 'failed',
        words: `Not saved in this browser (${error instanceof Error ? error.message : 'no storage'}). Save the notebook as a file.`,
      });
    }
  };
  const flush = () => {
    saving = saving.then(save);
    return saving;
  };
  channel.onmessage = ({ data }: MessageEvent<Word>) => {
    if (data.id === id && data.revision > seen) onOther(data.revision);
  };
  return {
    changed(title, text) {
      waiting = { title, text };
      onState({ state: 'waiting' });
      clearTimeout(timer);
      timer = setTimeout(flush, delayMs);
    },
    flush,
    stop() {
      void flush();
      channel.close();
    },
  };
}

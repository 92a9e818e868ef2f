/**
 * Saves while the keeper works: a change at once, or what has come together in a tenth of a second, pause or no pause.
 * Each goes into the journal as a small step, asked for before anything is computed; now and then all is folded into
 * the notebook. Steps need not wait for each other: the shelf takes them in the order they are asked for.
 */
import { checksum } from './checksum.ts';
import type { History } from './history.ts';
import { type Basis, type State, startEntry, stepEntry } from './journal.ts';
import { randomId, type Shelf, type Word } from './shelf.ts';

export interface Saved {
  readonly state: 'saved' | 'waiting' | 'failed';
  /** What the reader should know, if anything. */
  readonly words?: string;
}

export interface Autosave {
  /** Call at each change. */
  changed(title: string, history: History): void;
  /** Folds all into the notebook. */
  flush(): Promise<void>;
  /** For a page that is about to go: asks for what is not kept yet to be kept, without waiting for anything. */
  hurry(): void;
  /** Whether something is not kept yet. */
  readonly behind: boolean;
  /** Folds all, and says nothing any more; gives back what could not be kept. */
  stop(): Promise<State | undefined>;
}

/** As much of a channel between tabs as is used. */
export interface Channel {
  postMessage(word: Word): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<Word>) => void): void;
  removeEventListener(type: 'message', listener: (event: MessageEvent<Word>) => void): void;
}

export interface AutosaveOptions {
  readonly id: string;
  /** 0 for a notebook that is not on the shelf yet. */
  readonly revision: number;
  /** The notebook as it was opened. */
  readonly history: History;
  /** Name of the file it came from. */
  readonly file?: string;
  readonly channel: Channel;
  readonly onState: (saved: Saved) => void;
  /** Another tab has saved the same notebook. */
  readonly onOther: () => void;
  readonly delayMs?: number;
}

/** Steps in the journal before it is folded. */
const FOLD_AFTER = 200;
/** After a pause of this long the journal begins anew: what has become of it meanwhile does not matter then. */
const ANEW_MS = 30_000;
/** What could not be saved is tried again this much later, and at each change. */
const AGAIN_MS = 5000;
/** Steps on their way to a slow disk; more come together into one. */
const MOST_ON_THE_WAY = 4;
/** Own texts that are remembered, so that what is found on the shelf is not taken for somebody else's. */
const OWN_TEXTS = 8;

export function autosave(shelf: Shelf, options: AutosaveOptions): Autosave {
  return new Saving(shelf, options);
}

class Saving implements Autosave {
  readonly #tab = randomId();
  readonly #shelf: Shelf;
  readonly #options: AutosaveOptions;
  #basis: Basis;
  /** What the journal leads to; undefined where the next step has to begin it anew. */
  #journaled: History | undefined;
  #steps = 0;
  #place = 0;
  #waiting: State | undefined;
  #onTheWay = 0;
  #last: State | undefined;
  #lastAt = Number.NEGATIVE_INFINITY;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #stopped = false;

  constructor(shelf: Shelf, options: AutosaveOptions) {
    this.#shelf = shelf;
    this.#options = options;
    this.#basis = { revision: options.revision, from: [checksum(options.history.now.text)] };
    options.channel.addEventListener('message', this.#hear);
  }

  changed(title: string, history: History): void {
    this.#waiting = this.#last = { title, history };
    this.#say({ state: 'waiting' });
    this.#schedule();
  }

  flush(): Promise<void> {
    const state = this.#waiting ?? (this.#steps > 0 ? this.#last : undefined);
    return state ? this.#save(this.#fold, state) : Promise.resolve();
  }

  hurry(): void {
    if (this.#waiting) void this.#save(this.#step, this.#waiting);
  }

  get behind(): boolean {
    return this.#waiting !== undefined || this.#onTheWay > 0;
  }

  async stop(): Promise<State | undefined> {
    this.#stopped = true;
    this.#options.channel.removeEventListener('message', this.#hear);
    await this.flush();
    clearTimeout(this.#timer);
    return this.#waiting;
  }

  #hear = ({ data }: MessageEvent<Word>) => {
    if (data.id === this.#options.id && data.tab !== this.#tab) this.#options.onOther();
  };

  #say(saved: Saved): void {
    if (!this.#stopped) this.#options.onState(saved);
  }

  /** From now on the shelf may hold this text of ours. */
  #own(history: History): void {
    const from = [...this.#basis.from, checksum(history.now.text)].slice(-OWN_TEXTS);
    this.#basis = { ...this.#basis, from };
  }

  #fold = async (state: State): Promise<string | undefined> => {
    const { id, file } = this.#options;
    const folding = this.#shelf.put(id, state, this.#basis, { tab: this.#tab, file });
    // Steps asked for from now on come after the fold, which takes the journal away.
    this.#journaled = undefined;
    this.#steps = 0;
    this.#own(state.history);
    const { kept, aside } = await folding;
    this.#basis = { ...this.#basis, revision: Math.max(this.#basis.revision, kept.revision) };
    return aside
      ? `Another tab had changed this notebook. Its text is kept as “${aside.title}”, in the list of your notebooks.`
      : undefined;
  };

  #step = async (state: State): Promise<undefined> => {
    const { id, file } = this.#options;
    const now = Date.now();
    const before = now - this.#lastAt > ANEW_MS ? undefined : this.#journaled;
    const entry = before ? stepEntry(before, state, now) : startEntry(state, this.#basis, now, file);
    const appending = this.#shelf.append(id, this.#tab, this.#place++, entry);
    this.#journaled = state.history;
    this.#steps++;
    this.#own(state.history);
    await appending;
  };

  async #save(how: (state: State) => Promise<string | undefined>, state: State): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#waiting = undefined;
    this.#onTheWay++;
    let failed: unknown;
    let words: string | undefined;
    try {
      const saving = how(state);
      this.#lastAt = Date.now();
      words = await saving;
    } catch (error) {
      failed = error ?? new Error('no storage');
    }
    this.#onTheWay--;
    if (failed !== undefined) return this.#failed(failed);
    const { id, channel } = this.#options;
    if (!this.#stopped) channel.postMessage({ id, tab: this.#tab });
    this.#say({ state: this.behind ? 'waiting' : 'saved', ...(words ? { words } : {}) });
    if (this.#waiting) this.#schedule();
  }

  #failed(error: unknown): void {
    this.#waiting ??= this.#last;
    this.#journaled = undefined;
    this.#say({ state: 'failed', words: notSaved(error) });
    if (!this.#stopped && this.#timer === undefined) this.#timer = setTimeout(this.#next, AGAIN_MS);
  }

  #next = () => {
    this.#timer = undefined;
    if (!this.#waiting || this.#onTheWay >= MOST_ON_THE_WAY) return;
    void this.#save(this.#steps >= FOLD_AFTER ? this.#fold : this.#step, this.#waiting);
  };

  /** At once where it can be: what follows a change, reading and computing, may hold the page for long. */
  #schedule(): void {
    const { delayMs = 100 } = this.#options;
    const wait = this.#lastAt + delayMs - Date.now();
    if (this.#timer !== undefined && wait > 0) return;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (wait <= 0) this.#next();
    else this.#timer = setTimeout(this.#next, wait);
  }
}

function notSaved(error: unknown): string {
  const full = error instanceof Error && error.name === 'QuotaExceededError';
  const why = full ? 'its storage is full' : error instanceof Error ? error.message : 'no storage';
  return `Not kept in this browser: ${why}. Save the notebook as a file, or the change is lost when this page is closed.`;
}

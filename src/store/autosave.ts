/**
 * Saves while the keeper works: the first change at once, and from then on whatever has come together every quarter of
 * a second, pause or no pause. Each goes into the journal as a small step; now and then all is folded into the notebook.
 */
import { checksum } from './checksum.ts';
import type { History } from './history.ts';
import { type Basis, type Entry, type State, startEntry, stepEntry } from './journal.ts';
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
  /** Counts up when the journal has to begin anew, whatever a step on its way will say. */
  #begun = 0;
  #steps = 0;
  #place = 0;
  #waiting: State | undefined;
  #inFlight: State | undefined;
  #last: State | undefined;
  #lastAt = Number.NEGATIVE_INFINITY;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saving: Promise<void> = Promise.resolve();
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
    this.#saving = this.#saving.then(() =>
      this.#save(this.#fold, this.#waiting ?? (this.#steps > 0 ? this.#last : undefined)),
    );
    return this.#saving;
  }

  hurry(): void {
    const state = this.#waiting ?? this.#inFlight;
    if (!state) return;
    this.#beginAnew();
    this.#append(startEntry(state, this.#basis, Date.now(), this.#options.file)).catch(() => {});
  }

  get behind(): boolean {
    return (this.#waiting ?? this.#inFlight) !== undefined;
  }

  async stop(): Promise<State | undefined> {
    const folded = this.flush();
    this.#stopped = true;
    this.#options.channel.removeEventListener('message', this.#hear);
    await folded;
    clearTimeout(this.#timer);
    return this.#waiting;
  }

  #hear = ({ data }: MessageEvent<Word>) => {
    if (data.id === this.#options.id && data.tab !== this.#tab) this.#options.onOther();
  };

  #say(saved: Saved): void {
    if (!this.#stopped) this.#options.onState(saved);
  }

  #beginAnew(): void {
    this.#journaled = undefined;
    this.#begun++;
  }

  #append(entry: Entry): Promise<void> {
    return this.#shelf.append(this.#options.id, this.#tab, this.#place++, entry);
  }

  #fold = async (state: State): Promise<string | undefined> => {
    const { id, file } = this.#options;
    const { kept, aside } = await this.#shelf.put(id, state, this.#basis, { tab: this.#tab, file });
    this.#basis = { revision: kept.revision, from: [checksum(kept.text)] };
    this.#beginAnew();
    this.#steps = 0;
    return aside
      ? `Another tab had changed this notebook. Its text is kept as “${aside.title}”, in the list of your notebooks.`
      : undefined;
  };

  #step = async (state: State): Promise<string | undefined> => {
    // The first time it is put on the shelf whole, so that it stands in the list.
    if (this.#basis.revision === 0 || this.#steps >= FOLD_AFTER) return this.#fold(state);
    const now = Date.now();
    if (now - this.#lastAt > ANEW_MS) this.#beginAnew();
    const [before, mine] = [this.#journaled, this.#begun];
    await this.#append(
      before ? stepEntry(before, state, now) : startEntry(state, this.#basis, now, this.#options.file),
    );
    // Another tab may fold the journal, and what it then keeps is this tab's own.
    this.#basis = { ...this.#basis, from: [this.#basis.from[0], checksum(state.history.now.text)] };
    if (mine === this.#begun) this.#journaled = state.history;
    this.#steps++;
    return undefined;
  };

  async #save(how: (state: State) => Promise<string | undefined>, state: State | undefined): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (!state) return;
    this.#inFlight = state;
    this.#waiting = undefined;
    try {
      const saving = how(state);
      this.#lastAt = Date.now();
      const words = await saving;
      const { id, channel } = this.#options;
      channel.postMessage({ id, tab: this.#tab });
      this.#say({ state: this.#waiting ? 'waiting' : 'saved', ...(words ? { words } : {}) });
    } catch (error) {
      this.#waiting ??= state;
      this.#beginAnew();
      this.#say({ state: 'failed', words: notSaved(error) });
      if (!this.#stopped) this.#timer = setTimeout(this.#next, AGAIN_MS);
    } finally {
      this.#inFlight = undefined;
    }
    if (this.#waiting && this.#timer === undefined) this.#schedule();
  }

  #next = () => {
    this.#saving = this.#saving.then(() => this.#save(this.#step, this.#waiting));
  };

  #schedule(): void {
    if (this.#inFlight || this.#timer !== undefined) return;
    const { delayMs = 250 } = this.#options;
    this.#timer = setTimeout(this.#next, Math.max(0, this.#lastAt + delayMs - Date.now()));
  }
}

function notSaved(error: unknown): string {
  const full = error instanceof Error && error.name === 'QuotaExceededError';
  const why = full ? 'its storage is full' : error instanceof Error ? error.message : 'no storage';
  return `Not kept in this browser: ${why}. Save the notebook as a file, or the change is lost when this page is closed.`;
}

/** Keeps the open notebook in this browser: where it can, from the first change on, and says at once where it cannot. */
import build from 'virtual:ahead/build';
import { type Autosave, autosave, type Saved } from '../store/autosave.ts';
import { type Base, blocked } from '../store/base.ts';
import type { WholeEngine } from '../store/engine.ts';
import { type History, startHistory } from '../store/history.ts';
import type { State } from '../store/journal.ts';
import { findAhead, keepAhead, whenStill } from '../store/keptAhead.ts';
import type { OpenNotebook } from '../store/opening.ts';
import { lookAt, type Seen } from '../store/seen.ts';
import { historyOf, type Kept, memoryShelf, newId, openShelf, type Shelf } from '../store/shelf.ts';
import type { VersionEntry } from '../store/versions.ts';
import type { Ahead } from '../study/ahead.ts';
import { titleOf } from './titles.ts';

export interface KeeperTells {
  saved(saved: Saved): void;
  /** Another tab has changed the same notebook. */
  other(): void;
  /** The notebook has a place of its own from now on. */
  address(id: string): void;
  /** Left with changes that could not be kept. */
  lost(state: State): void;
}

export class Keeper {
  shelf: Shelf = memoryShelf();
  /** Why nothing can be kept; empty where it can. */
  blocked = '';
  /** The open notebook's place on the shelf; none for an example or a link that is not changed yet. */
  id: string | undefined;

  #channel: BroadcastChannel;
  #tells: KeeperTells;
  #save: Autosave | undefined;
  #first: { file: string; history: History; title: string } | undefined;
  #last: History | undefined;
  #state: Saved['state'] | undefined;
  #leaving = false;
  #onlyHere = false;
  #base: Base | undefined;
  #reading = false;
  #unfollow: (() => void) | undefined;

  constructor(tells: KeeperTells) {
    this.#tells = tells;
    this.#channel = new BroadcastChannel('winterkeep');
  }

  /** Finds out whether this browser keeps anything, before it is relied on. */
  async start(base: () => Base): Promise<void> {
    let why: string | undefined;
    let found: Base | undefined;
    try {
      found = base();
      why = await blocked(found);
    } catch (error) {
      why = error instanceof Error ? error.message : String(error);
    }
    if (found && why === undefined) {
      this.#base = found;
      this.shelf = openShelf({ base: found });
    } else this.blocked = why || 'no storage';
  }

  /** Remembers that this reader saw a version of a notebook; the one they saw before. */
  saw(id: string, text: string): Promise<Seen | undefined> {
    return this.#base ? lookAt(this.#base, id, text, Date.now()) : Promise.resolve(undefined);
  }

  /** What a kept text says, where this build has read it before. */
  async ahead({ id, text }: Kept): Promise<Ahead | undefined> {
    const of = { id, text, build };
    return this.#base && findAhead(this.#base, of).catch(() => undefined);
  }

  /** Reads the open notebook ahead for the next time, whenever it stands still. */
  follow(open: OpenNotebook, reader: () => Promise<WholeEngine>): void {
    this.#unfollow?.();
    this.#unfollow = whenStill(open, async (notebook) => {
      const { id } = this;
      if (id === undefined || !this.#base || this.#reading) return;
      const of = { id, text: notebook.text, build };
      try {
        if (await findAhead(this.#base, of)) return;
        const ahead = await (await reader()).ahead?.(notebook);
        if (ahead && this.id === id) await keepAhead(this.#base, of, ahead);
      } catch {
        // The next time it is read as any other text.
      }
    });
  }

  /** Somebody else's is open: what is tried on it is not kept. */
  get reading(): boolean {
    return this.#reading;
  }

  /** Takes up a notebook; `kept` where it is on the shelf already, `reading` where it is somebody else's. */
  begin(text: string, file: string, kept?: Kept, reading = false): History {
    this.#reading = reading;
    const history = kept ? historyOf(kept) : startHistory(text);
    this.#first = { file, history, title: titleOf(text) ?? file };
    this.#last = history;
    this.#state = undefined;
    this.id = kept?.id;
    if (kept) this.#keep(kept.id, kept.revision, history, kept.file);
    return history;
  }

  /** What is read becomes this reader's own as it stands, with what was tried. */
  makeMine(now: History): void {
    if (!this.#reading) return;
    this.#reading = false;
    this.#take(now);
  }

  /**
   * A change. Worked examples and links stay as they were: the first one makes a copy. While somebody else's is read,
   * only one that writes in it does.
   */
  note(now: History, writes = true): void {
    if (!this.#first || now === this.#last || now.now.text === this.#last?.now.text) return;
    if (this.#reading && !writes) return;
    this.#reading = false;
    this.#take(now);
  }

  #take(now: History): void {
    if (!this.#first) return;
    this.#last = now;
    const { file, history, title } = this.#first;
    if (!this.#save) {
      this.id = newId(file);
      this.#keep(this.id, 0, history);
      // An address that is being left is not this notebook's any more.
      if (!this.#leaving) this.#tells.address(this.id);
    }
    if (this.blocked !== '') this.#onlyHere = true;
    this.#save?.changed(titleOf(now.now.text) ?? title, now);
  }

  /** The text was saved as a file. */
  saved(): void {
    this.#onlyHere = false;
  }

  /** Whether closing the page would lose something that no waiting helps. */
  get atRisk(): boolean {
    return this.#onlyHere || (this.#state === 'failed' && this.#save?.behind === true);
  }

  hurry(): void {
    this.#save?.hurry();
  }

  flush(): void {
    void this.#save?.flush();
  }

  /** Days on which the open notebook stood otherwise, the newest first. */
  async versions(): Promise<readonly VersionEntry[]> {
    const { id } = this;
    if (id === undefined) return [];
    await this.#save?.flush();
    return this.shelf.versions(id).catch(() => []);
  }

  /** Leaves the notebook; `commit` brings in what is still being typed. */
  async leave(commit: () => void): Promise<void> {
    this.#leaving = true;
    commit();
    this.#leaving = false;
    this.#unfollow?.();
    const save = this.#save;
    this.#save = this.#first = this.#last = this.id = undefined;
    const lost = await save?.stop();
    if (lost) this.#tells.lost(lost);
  }

  close(): void {
    this.#channel.close();
  }

  #keep(id: string, revision: number, history: History, file?: string): void {
    this.#save = autosave(this.shelf, {
      id,
      revision,
      history,
      file,
      channel: this.#channel,
      onState: (saved) => {
        this.#state = saved.state;
        this.#tells.saved(saved);
      },
      onOther: () => this.#tells.other(),
    });
  }
}

/** Where kept things lie: names and values, changed in whole transactions. In the browser's database, or in memory. */
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';

export interface Transaction {
  get<T>(key: string): Promise<T | undefined>;
  /** Keys that begin so, in order. */
  keys(prefix: string): Promise<readonly string[]>;
  put(key: string, value: unknown): void;
  remove(key: string): void;
}

export interface Base {
  /** All of `work` or nothing, and nobody else in between, other tabs included. `work` awaits only the transaction. */
  run<T>(work: (transaction: Transaction) => Promise<T>): Promise<T>;
  /** One value under a key, asked for before this returns: the way for a page that is about to go. */
  put(key: string, value: unknown): Promise<void>;
}

/** Steps that come faster are handed to the system, which survives a killed browser; this often to the disk itself. */
const TO_DISK_MS = 400;

/** The browser's database. What is to survive a power cut is on the disk before it counts as done. */
export function browserBase(store: UseStore = createStore('winterkeep', 'notebooks')): Base {
  const name = 'notebooks';
  let database: IDBDatabase | undefined;
  const open = () =>
    store('readonly', (objects) => {
      const found = objects.transaction.db;
      database = found;
      found.addEventListener('close', () => {
        database = undefined;
      });
      return found;
    });
  let toDisk = Number.NEGATIVE_INFINITY;
  const write = (db: IDBDatabase, strict: boolean) => {
    if (strict) toDisk = Date.now();
    return db.transaction(name, 'readwrite', { durability: strict ? 'strict' : 'relaxed' });
  };
  const putIn = (db: IDBDatabase, key: string, value: unknown) => {
    const transaction = write(db, Date.now() - toDisk > TO_DISK_MS);
    transaction.objectStore(name).put(value, key);
    transaction.commit();
    return ended(transaction);
  };
  return {
    async run(work) {
      const transaction = write(database ?? (await open()), true);
      const objects = transaction.objectStore(name);
      const done = ended(transaction);
      try {
        const result = await work({
          get: (key) => promisifyRequest(objects.get(key)),
          keys: (prefix) =>
            promisifyRequest(objects.getAllKeys(IDBKeyRange.bound(prefix, `${prefix}\uffff`))) as Promise<
              string[]
            >,
          put: (key, value) => void objects.put(value, key),
          remove: (key) => void objects.delete(key),
        });
        await done;
        return result;
      } catch (error) {
        done.catch(() => {});
        if (transaction.error === null) tryAbort(transaction);
        throw transaction.error ?? error;
      }
    },
    put: (key, value) =>
      database ? putIn(database, key, value) : open().then((db) => putIn(db, key, value)),
  };
}

function ended(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    transaction.addEventListener('abort', () =>
      reject(transaction.error ?? new Error('the browser stopped the saving')),
    );
  });
}

function tryAbort(transaction: IDBTransaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already.
  }
}

/** For where there is no storage: a private window, a locked-down browser. Forgotten with the page. */
export function memoryBase(): Base {
  const all = new Map<string, unknown>();
  let last: Promise<unknown> = Promise.resolve();
  return {
    run(work) {
      const next = last.then(async () => {
        const changed = new Map(all);
        const result = await work({
          get: async <T>(key: string) => changed.get(key) as T | undefined,
          keys: async (prefix) => [...changed.keys()].filter((key) => key.startsWith(prefix)).sort(),
          put: (key, value) => void changed.set(key, value),
          remove: (key) => void changed.delete(key),
        });
        all.clear();
        for (const [key, value] of changed) all.set(key, value);
        return result;
      });
      last = next.catch(() => {});
      return next;
    },
    put(key, value) {
      const next = last.then(() => void all.set(key, value));
      last = next;
      return next;
    },
  };
}

/** Why nothing can be kept here; undefined where it can. */
export async function blocked(base: Base): Promise<string | undefined> {
  try {
    await base.run(async (transaction) => transaction.put('probe', 1));
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

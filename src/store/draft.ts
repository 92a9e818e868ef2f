/**
 * Answers on their way to a notebook, kept in this browser with every letter: written at once, so that a reload, a call
 * or a flat battery takes nothing.
 */
export interface Draft {
  readonly read: () => string | undefined;
  /** False where the browser keeps nothing: a private window, no room left. */
  readonly write: (text: string) => boolean;
  readonly clear: () => void;
}

export function openDraft(name: string, storage: () => Storage = () => localStorage): Draft {
  const tried = <T>(act: (store: Storage) => T): T | undefined => {
    try {
      return act(storage());
    } catch {
      return undefined;
    }
  };
  return {
    read: () => tried((store) => store.getItem(name)) ?? undefined,
    write: (text) =>
      tried((store) => {
        store.setItem(name, text);
        return true;
      }) ?? false,
    clear: () => void tried((store) => store.removeItem(name)),
  };
}

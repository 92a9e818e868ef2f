/** What elements that ask the explorer share: asking once for each question, keeping the last answer on show. */
import type { ReactiveControllerHost } from 'lit';
import type { RowChanges } from '../../model/bind.ts';
import type { Setting } from '../../study/rows.ts';
import type { Explorer } from '../../worker/explorer.ts';
import type { Answers, Kind, Requests } from '../../worker/job.ts';

export interface Answering<K extends Kind> {
  /** Its place among what is asked; for showing progress and stopping. */
  readonly slot: string;
  /** The last answer; undefined until there is one. */
  readonly answer: () => Answers[K] | undefined;
  /** The answer to what was asked last; undefined until it has come, whatever was answered before. */
  readonly fresh: () => Answers[K] | undefined;
  /** Why there is no answer, in words; undefined when nothing is wrong. */
  readonly fault: () => string | undefined;
  /** Asks unless just this has been asked; nothing without an explorer or a setting. */
  readonly ask: (
    explorer: Explorer | undefined,
    setting: Setting | undefined,
    request: (Requests[K] & { kind: K }) | undefined,
    changes?: RowChanges,
  ) => void;
}

let slots = 0;

/** `urgent` is for what is always in sight. Stops asking when the host leaves the document; asks again when it comes back. */
export function answering<K extends Kind>(
  host: ReactiveControllerHost,
  kind: K,
  { urgent = false } = {},
): Answering<K> {
  const slot = `${kind} ${++slots}`;
  let asked: { bound: unknown; changes: unknown; key: string } | undefined;
  let answer: Answers[K] | undefined;
  let answered: typeof asked;
  let fault: string | undefined;
  let by: Explorer | undefined;
  host.addController({
    hostDisconnected() {
      by?.stop(slot);
      asked = undefined;
    },
    hostConnected() {
      host.requestUpdate();
    },
  });
  return {
    slot,
    answer: () => answer,
    fresh: () => (asked !== undefined && answered === asked ? answer : undefined),
    fault: () => fault,
    ask(explorer, setting, request, changes) {
      if (!explorer || !setting || !request) return;
      const key = JSON.stringify(request, (name, value) =>
        name === 'winters' ? (value as { label: string }[]).map((w) => w.label) : value,
      );
      if (asked && asked.bound === setting.bound && asked.changes === changes && asked.key === key) return;
      const mine = { bound: setting.bound, changes, key };
      asked = mine;
      by = explorer;
      explorer
        .ask<K>({ slot, setting, request, changes, urgent })
        .then((found) => {
          if (found === undefined) return;
          answer = found;
          answered = mine;
          fault = undefined;
          host.requestUpdate();
        })
        .catch((error: Error) => {
          fault = error.message;
          host.requestUpdate();
        });
    },
  };
}

/** Places of the named scenarios in the notebook's order; all when none are named. */
export function placesOf(names: readonly string[], some: readonly string[] | undefined): number[] {
  return names.flatMap((name, k) => (!some || some.includes(name) ? [k] : []));
}

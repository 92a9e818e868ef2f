import type { RowChanges } from '../../model/bind.ts';
import type { Answerer } from '../../paper/gather.ts';
import type { Run } from '../../study/evaluate.ts';
import type { Explorer } from '../../worker/explorer.ts';

export type PaperSlots = { readonly [K in keyof Answerer]: string };

/** Has the worker answer what the paper asks. */
export function answerBy(
  explorer: Explorer,
  setting: Run,
  slots: PaperSlots,
  changes: RowChanges = new Map(),
): Answerer {
  return {
    draws: (asked) =>
      explorer.ask({ slot: slots.draws, setting, changes, request: { kind: 'draws', ...asked } }),
    moves: (asked) =>
      explorer.ask({ slot: slots.moves, setting, changes, request: { kind: 'money', ...asked } }),
  };
}

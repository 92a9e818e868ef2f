/** What the bar at the top says of an open notebook. */
import type { BarState } from '../elements/parts/wk-bar.ts';
import type { Saved } from '../store/autosave.ts';
import type { OpenNotebook } from '../store/opening.ts';
import { wordsIn } from '../units/inWords.ts';

const SAVED: Readonly<Record<Saved['state'], string>> = {
  saved: 'kept in this browser',
  waiting: 'keeping …',
  failed: 'not kept',
};

export function barState(
  { history }: OpenNotebook,
  {
    saved,
    reading,
    ...rest
  }: Omit<BarState, 'undo' | 'redo' | 'saved'> & {
    readonly saved: Saved | undefined;
    readonly reading: boolean;
  },
): BarState {
  const { past, now, future } = history.value;
  return {
    ...rest,
    undo: past.length === 0 ? null : wordsIn(`Undo: ${now.what}`, rest.system),
    redo: future.length === 0 ? null : wordsIn(`Redo: ${future[0].what}`, rest.system),
    saved: saved ? SAVED[saved.state] : reading ? 'only read: nothing is kept' : '',
  };
}

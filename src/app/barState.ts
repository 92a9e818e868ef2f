/** What the bar at the top says of an open notebook. */
import type { BarState } from '../elements/parts/wk-bar.ts';
import type { Saved } from '../store/autosave.ts';
import type { OpenNotebook } from '../store/open.ts';

const SAVED: Readonly<Record<Saved['state'], string>> = {
  saved: 'kept in this browser',
  waiting: 'keeping …',
  failed: 'not kept',
};

export function barState(
  { history }: OpenNotebook,
  { saved, ...rest }: Omit<BarState, 'undo' | 'redo' | 'saved'> & { readonly saved: Saved | undefined },
): BarState {
  const { past, now, future } = history.value;
  return {
    ...rest,
    undo: past.length === 0 ? null : `Undo: ${now.what}`,
    redo: future.length === 0 ? null : `Redo: ${future[0].what}`,
    saved: saved ? SAVED[saved.state] : '',
  };
}

/** Board or words: written into the text, so that a link or a file opens the way it was sent. */
import { setInput } from '../../notebook/write.ts';
import { ask } from '../parts/events.ts';

/** `board` is what it shows now. */
export function turnView(from: HTMLElement, board: boolean): void {
  ask(from, 'wk-edit', {
    make: ({ text }) => ({
      text: setInput(text, 'view', board ? 'notebook' : 'board'),
      what: board ? 'words and figures on show' : 'board on show',
    }),
    done: () => {},
  });
}

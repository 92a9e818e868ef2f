/** What the first cards are worked out with: one text that was read ahead, its winters, and numbers without their words. */
import numbers from 'virtual:ahead/tables';
import type { FirstEngine, WholeEngine } from '../store/engine.ts';
import { type Ahead, notebookAhead, wintersAhead } from '../study/ahead.ts';
import { numbersOf } from '../tables/packed.ts';
import { CLIMATES } from './climates.ts';
import { painted } from './painted.ts';

/** `whole` is asked once, after the cards are painted. */
export function firstEngine(ahead: Ahead, text: string, whole: () => Promise<WholeEngine>): FirstEngine {
  return {
    tables: numbersOf(numbers),
    // Another text waits for the engine that reads any.
    read: (asked, file) =>
      asked === text
        ? { ok: true, notebook: notebookAhead(ahead, text, file), problems: [] }
        : { ok: false, problems: [] },
    winters: async (notebook) => ({ winterOf: wintersAhead(ahead, notebook), problems: [] }),
    climates: CLIMATES,
    whole: () => painted().then(whole),
  };
}

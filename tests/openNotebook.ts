/** An open notebook with all that reads and writes its text at hand from the first moment. */
import type { Engine } from '../src/store/engine.ts';
import { type Keeping, type OpenNotebook, openWith } from '../src/store/opening.ts';
import { TEXTS } from '../src/store/texts.ts';

export type { Engine, OpenNotebook };

export const openNotebook = (text: string, file: string, engine: Engine, keeping?: Keeping): OpenNotebook =>
  openWith(text, file, { ...engine, texts: TEXTS }, keeping);

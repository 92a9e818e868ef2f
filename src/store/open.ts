/** An open notebook with all that reads and writes its text at hand from the first moment. */
import type { Engine } from './engine.ts';
import { type Keeping, type OpenNotebook, openWith } from './opening.ts';
import { TEXTS } from './texts.ts';

export type { Engine, FoundWinters } from './engine.ts';
export type { Keeping, OpenNotebook } from './opening.ts';

export const openNotebook = (text: string, file: string, engine: Engine, keeping?: Keeping): OpenNotebook =>
  openWith(text, file, { ...engine, texts: TEXTS }, keeping);

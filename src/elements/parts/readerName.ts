/** The name a reader signs notes with: asked once, kept in this browser. */
import { openDraft } from '../../store/draft.ts';

const NAME = openDraft('winterkeep reader');

export const readerName = (): string => NAME.read() ?? '';

export function keepReaderName(name: string): void {
  if (name !== '') NAME.write(name);
}

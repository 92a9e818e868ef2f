/** Starting with one's own farm: fetched when it is asked for, so that the list of notebooks shows at once. */
import '../elements/page/wk-begin.ts';
import { START_KINDS } from '../begin/kinds.ts';
import type { BeginSetting } from '../elements/page/wk-begin.ts';
import { openDraft } from '../store/draft.ts';
import type { Shelf } from '../store/shelf.ts';
import { readStarts, STARTS_FILE } from '../tables/starts.ts';
import { dataFiles } from './data.ts';
import type { Started } from './engine.ts';
import { titleOf } from './examples.ts';

/** Answers on their way; the home page asks whether there are any. */
export const ANSWERS = 'winterkeep begin';
const WEATHER = 'winterkeep begin weather';

export function beginSetting({ engine }: Started): BeginSetting {
  const { starts } = readStarts(dataFiles.get(STARTS_FILE) ?? '', engine.tables.sources, START_KINDS);
  const region = /-([A-Z]{2})\b/.exec(navigator.language)?.[1];
  return {
    tables: engine.tables,
    winters: engine.winters,
    keepWeather: (name, text) => engine.keepWeather?.(name, text) ?? name,
    starts,
    home: region ?? 'other',
    today: new Date().toISOString().slice(0, 10),
    draft: openDraft(ANSWERS),
    weatherDraft: openDraft(WEATHER),
  };
}

/** Puts the new notebook among those kept in this browser; gives the name it is kept under. */
export async function keepBegun(shelf: Shelf, text: string): Promise<string> {
  const id = `my-farm-${Date.now().toString(36)}`;
  await shelf.put(id, titleOf(text) ?? id, text, 0);
  return id;
}

/** Starting with one's own farm: fetched when it is asked for, so that the list of notebooks shows at once. */
import '../elements/page/wk-begin.ts';
import startsText from '../../data/starts.csv?raw';
import { START_KINDS } from '../begin/kinds.ts';
import type { BeginSetting } from '../elements/page/wk-begin.ts';
import { withWeather } from '../notebook/weatherBlock.ts';
import { openDraft } from '../store/draft.ts';
import type { Engine } from '../store/engine.ts';
import type { Shelf } from '../store/shelf.ts';
import { readStarts } from '../tables/starts.ts';
import { lastYears } from '../tables/weather.ts';
import { keepText } from './library.ts';

/** Answers on their way; the home page asks whether there are any. */
export const ANSWERS = 'winterkeep begin';
const WEATHER = 'winterkeep begin weather';

export interface Beginning {
  readonly setting: BeginSetting;
  /** Puts the new notebook, its weather in it, among those kept in this browser; gives the name it is kept under. */
  readonly keep: (shelf: Shelf, text: string) => Promise<string>;
  /** The same text as it is kept. */
  readonly whole: (text: string) => string;
}

export function beginning(engine: Engine): Beginning {
  const { starts } = readStarts(startsText, engine.tables.sources, START_KINDS);
  const region = /-([A-Z]{2})\b/.exec(navigator.language)?.[1];
  const own = new Map<string, string>();
  const whole = (text: string) => {
    const named = [...own].filter(([name]) => text.includes(name));
    return named.reduce((made, [name, days]) => withWeather(made, name, days), text);
  };
  return {
    setting: {
      tables: engine.tables,
      winters: (notebook) => engine.winters({ ...notebook, weather: new Map([...notebook.weather, ...own]) }),
      keepWeather(name, text) {
        const known = engine.ownName?.(name) ?? name;
        own.set(known, lastYears(text));
        return known;
      },
      starts,
      home: region ?? 'other',
      today: new Date().toISOString().slice(0, 10),
      draft: openDraft(ANSWERS),
      weatherDraft: openDraft(WEATHER),
    },
    whole,
    keep: (shelf, text) => keepText(shelf, 'my-farm.md', whole(text)),
  };
}

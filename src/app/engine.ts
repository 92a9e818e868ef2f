/** What the store needs from this page: tables of the build, weather fetched when it is named, a worker for draws. */
import { notebookWinters } from '../model/notebookWinters.ts';
import { CHOICE_OPTIONS } from '../notebook/choiceOptions.ts';
import { readNotebook } from '../notebook/read.ts';
import type { Engine } from '../store/open.ts';
import { loadTables } from '../tables/load.ts';
import type { Problem } from '../units/problem.ts';
import { dataFiles, loadWeatherFile } from './data.ts';
import { startExplorer } from './startExplorer.ts';

export interface Started {
  readonly engine: Engine;
  /** What is wrong with the tables: a fault of the build, shown rather than hidden. */
  readonly problems: readonly Problem[];
}

export function startEngine(): Started {
  const { tables, problems } = loadTables(dataFiles, CHOICE_OPTIONS);
  const texts = new Map<string, Promise<string | undefined>>();
  /** A page cannot look beside a file on disk, so it knows the shipped files only; each is fetched once. */
  const weatherText = (name: string) => {
    const known = texts.get(name) ?? loadWeatherFile(`data/weather/${name.replace(/^.*\//, '')}`);
    texts.set(name, known);
    return known;
  };
  return {
    engine: {
      tables,
      read: readNotebook,
      winters: ({ scenarios, file }) => notebookWinters(scenarios, file, weatherText),
      explorer: startExplorer(),
    },
    problems,
  };
}

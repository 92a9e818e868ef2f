/** What the store needs from this page: tables of the build, weather fetched when it is named, a worker for draws. */
import { notebookWinters } from '../model/weather/notebookWinters.ts';
import { CHOICE_OPTIONS } from '../notebook/choiceOptions.ts';
import { readNotebook } from '../notebook/read.ts';
import type { Engine } from '../store/open.ts';
import { loadTables } from '../tables/load.ts';
import type { Problem } from '../units/problem.ts';
import { dataFiles, loadWeatherFile, weatherFiles } from './data.ts';
import { startExplorer } from './startExplorer.ts';

export interface Started {
  readonly engine: Engine;
  /** What is wrong with the tables: a fault of the build, shown rather than hidden. */
  readonly problems: readonly Problem[];
}

export function startEngine(): Started {
  const { tables, problems } = loadTables(dataFiles, CHOICE_OPTIONS);
  const texts = new Map<string, Promise<string | undefined>>();
  /** A page cannot look beside a file on disk: it knows the shipped files, each fetched once, and what was dropped on it. */
  const weatherText = (name: string) => {
    const known = texts.get(name) ?? loadWeatherFile(`data/weather/${name.replace(/^.*\//, '')}`);
    texts.set(name, known);
    return known;
  };
  return {
    engine: {
      tables,
      read: readNotebook,
      winters: async ({ scenarios, file }) => {
        const { problems, ...winters } = await notebookWinters(scenarios, file, weatherText);
        return { ...winters, problems: problems.map(whereToDrop) };
      },
      keepWeather(name, text) {
        // A shipped name stays the shipped file's, or the notebook would mean something else on the next visit.
        const shipped = weatherFiles.some((path) => path.endsWith(`/${name}`));
        const own = shipped ? `own-${name}` : name;
        texts.set(own, Promise.resolve(text));
        return own;
      },
      explorer: startExplorer(),
    },
    problems,
  };
}

/** Beside the notebook is no place a page can look; what it can do is take the file. */
const whereToDrop = (problem: Problem): Problem =>
  problem.key === 'farm.weather.file'
    ? { ...problem, todo: 'give the page the file under “Use your own weather”, or name one that is shipped' }
    : problem;

/** What the store needs from this page: tables whole, weather fetched when it is named, who writes, a worker for draws. */
import numbers from 'virtual:ahead/tables';
import words from 'virtual:ahead/words';
import { notebookWinters } from '../model/weather/notebookWinters.ts';
import { readNotebook } from '../notebook/read.ts';
import type { WholeEngine } from '../store/engine.ts';
import { TEXTS } from '../store/texts.ts';
import { tablesOf } from '../tables/packed.ts';
import type { Climate } from '../tables/weatherJoin.ts';
import type { Problem } from '../units/problem.ts';
import { loadWeatherFile, weatherFiles } from './data.ts';
import { startExplorer } from './startExplorer.ts';

/** The climates that are shipped, and about where they lie: data/weather/README.md. */
const CLIMATES: readonly Climate[] = [
  { file: 'balticHills.csv', label: 'hills inland of the Baltic', latitudeDeg: 57.8 },
  { file: 'maritimeCoast.csv', label: 'a maritime coast of eastern Canada', latitudeDeg: 45.6 },
  { file: 'atlanticGrassland.csv', label: 'wet grassland near the Atlantic', latitudeDeg: 53.4 },
];

export interface Started {
  readonly engine: WholeEngine;
}

export function startEngine(): Started {
  const texts = new Map<string, Promise<string | undefined>>();
  /** A page cannot look beside a file on disk: it knows the shipped files, each fetched once, and what is in the text. */
  const weatherText = (name: string) => {
    const known = texts.get(name) ?? loadWeatherFile(`data/weather/${name.replace(/^.*\//, '')}`);
    texts.set(name, known);
    return known;
  };
  return {
    engine: {
      tables: tablesOf(numbers, words),
      texts: TEXTS,
      read: readNotebook,
      winters: async ({ scenarios, file, weather }) => {
        const { problems, ...winters } = await notebookWinters(
          scenarios,
          file,
          async (name) => weather.get(name) ?? weatherText(name),
        );
        return { ...winters, problems: problems.map(whereToDrop) };
      },
      // A shipped name stays the shipped file's, or the notebook would mean something else without its days.
      ownName: (name) => (weatherFiles.some((path) => path.endsWith(`/${name}`)) ? `own-${name}` : name),
      climates: CLIMATES,
      climateText: weatherText,
      explorer: startExplorer(),
    },
  };
}

/** Beside the notebook is no place a page can look; what it can do is take the file. */
const whereToDrop = (problem: Problem): Problem =>
  problem.key === 'farm.weather.file'
    ? { ...problem, todo: 'give the page the file under “Use your own weather”, or name one that is shipped' }
    : problem;

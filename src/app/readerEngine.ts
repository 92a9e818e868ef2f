/** What reads and writes any text: the tables' numbers without their words, weather fetched when it is named, no draws. */
import numbers from 'virtual:ahead/tables';
import { notebookWinters } from '../model/weather/notebookWinters.ts';
import { type Notebook, readNotebook } from '../notebook/read.ts';
import type { WholeEngine } from '../store/engine.ts';
import { TEXTS } from '../store/texts.ts';
import { packAhead } from '../study/packAhead.ts';
import { numbersOf } from '../tables/packed.ts';
import type { Problem } from '../units/problem.ts';
import { CLIMATES } from './climates.ts';
import { loadWeatherFile, weatherFiles } from './data.ts';

const texts = new Map<string, Promise<string | undefined>>();
/** A page cannot look beside a file on disk: it knows the shipped files, each fetched once, and what is in the text. */
const weatherText = (name: string) => {
  const known = texts.get(name) ?? loadWeatherFile(name.replace(/^.*\//, ''));
  texts.set(name, known);
  return known;
};

const wintersOf = ({ scenarios, file, weather }: Notebook) =>
  notebookWinters(scenarios, file, async (name) => weather.get(name) ?? weatherText(name));

export const readerEngine = (): WholeEngine => ({
  tables: numbersOf(numbers),
  texts: TEXTS,
  read: readNotebook,
  winters: async (notebook) => {
    const { problems, ...winters } = await wintersOf(notebook);
    return { ...winters, problems: problems.map(whereToDrop) };
  },
  async ahead(notebook) {
    const { winterOf, seriesOf, problems } = await wintersOf(notebook);
    return problems.length > 0 ? undefined : packAhead(notebook, winterOf, seriesOf);
  },
  // A shipped name stays the shipped file's, or the notebook would mean something else without its days.
  ownName: (name) => (weatherFiles.includes(name) ? `own-${name}` : name),
  climates: CLIMATES,
  climateText: weatherText,
});

/** Beside the notebook is no place a page can look; what it can do is take the file. */
const whereToDrop = (problem: Problem): Problem =>
  problem.key === 'farm.weather.file'
    ? { ...problem, todo: 'give the page the file under “Use your own weather”, or name one that is shipped' }
    : problem;

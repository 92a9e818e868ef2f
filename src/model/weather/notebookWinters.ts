/** The weather a notebook's scenarios name, read once a file, as the winters the pipeline walks. */
import type { Scenario } from '../../notebook/schema.ts';
import { readWeather, type WeatherFile } from '../../tables/weather.ts';
import type { WeatherSeries } from '../../tables/weatherSeries.ts';
import type { Problem } from '../../units/problem.ts';
import type { PreparedWeather } from './prepared.ts';
import {
  MADE_UP_YEARS,
  prepareNormals,
  prepareWinter,
  prepareWinters,
  winterNotes,
  winterProblems,
} from './prepareWeather.ts';

export interface NotebookWinters {
  /** The one winter a scenario stands in: the year it names, else the last whole one of its file. */
  readonly winterOf: (scenario: Scenario) => PreparedWeather;
  /** Every whole winter of its file, oldest first; made-up years where it has normals only. */
  readonly wintersOf: (scenario: Scenario) => readonly PreparedWeather[];
  /** The daily file it names; undefined where it has normals only. */
  readonly seriesOf: (scenario: Scenario) => WeatherSeries | undefined;
  readonly problems: readonly Problem[];
  /** Worth knowing, though nothing is wrong. */
  readonly notes: readonly Problem[];
}

/**
 * `readText` finds a weather file by the name in the notebook, or gives undefined. Faults of the files are
 * `problems`; then `winterOf` must not be called.
 */
export async function notebookWinters(
  scenarios: readonly Scenario[],
  notebookFile: string,
  readText: (name: string) => Promise<string | undefined>,
): Promise<NotebookWinters> {
  const problems: Problem[] = [];
  const notes: Problem[] = [];
  const series = new Map<string, WeatherSeries>();
  const names = new Set(scenarios.flatMap(({ farm }) => farm.weather.file ?? []));
  for (const name of names) {
    const text = await readText(name);
    if (text === undefined) {
      problems.push({
        what: 'the weather file is not there',
        file: notebookFile,
        key: 'farm.weather.file',
        found: name,
        todo: 'put the file beside the notebook, or name one that is shipped',
      });
      continue;
    }
    const read = readOnce(name, text);
    problems.push(...read.problems);
    notes.push(...read.notes);
    if (!read.series) continue;
    series.set(name, read.series);
    const users = scenarios.filter(({ farm }) => farm.weather.file === name);
    const found = users.flatMap((scenario) => winterProblems(read.series as WeatherSeries, scenario, name));
    problems.push(...onceEach(found));
    notes.push(
      ...onceEach(users.flatMap((scenario) => winterNotes(read.series as WeatherSeries, scenario, name))),
    );
  }

  const seriesOf = ({ farm }: Scenario) =>
    farm.weather.file === undefined ? undefined : series.get(farm.weather.file);
  // Scenarios on the same farm share their winters, so that the pipeline can tell that rows are alike.
  const wintersOf = remember(yearless, (scenario: Scenario): readonly PreparedWeather[] => {
    const read = seriesOf(scenario);
    return read ? prepareWinters(read, scenario) : prepareNormals(scenario, MADE_UP_YEARS);
  });
  const winterOf = remember(yearly, (scenario: Scenario): PreparedWeather => {
    const read = seriesOf(scenario);
    const winter = read ? preparedOnce(read, scenario) : prepareNormals(scenario, 1)[0];
    if (!winter) throw new Error('no winter: the problems of the weather were not heeded');
    return winter;
  });
  return { winterOf, wintersOf, seriesOf, problems, notes };
}

const yearless = ({ farm: { place, winter, weather } }: Scenario) =>
  JSON.stringify([weather.file, weather.monthly, weather.seed, winter.start, winter.end, place.latitudeDeg]);
const yearly = (scenario: Scenario) => `${scenario.farm.weather.year} ${yearless(scenario)}`;

function remember<V>(
  keyOf: (scenario: Scenario) => string,
  make: (scenario: Scenario) => V,
): (scenario: Scenario) => V {
  const made = new Map<string, V>();
  return (scenario) => {
    const key = keyOf(scenario);
    const before = made.get(key);
    if (before !== undefined) return before;
    const value = make(scenario);
    made.set(key, value);
    return value;
  };
}

/**
 * Files read before, for commands that open thousands of notebooks with the same weather; by text first, since a text
 * that is the same string is found without going through its letters.
 */
const readBefore = new Map<string, Map<string, WeatherFile>>();
const MOST_FILES_KEPT = 8;

function readOnce(name: string, text: string): WeatherFile {
  const names = readBefore.get(text) ?? new Map<string, WeatherFile>();
  const read = names.get(name) ?? readWeather(name, text);
  if (!readBefore.has(text) && readBefore.size >= MOST_FILES_KEPT)
    readBefore.delete(readBefore.keys().next().value as string);
  readBefore.set(text, names.set(name, read));
  return read;
}

const preparedBefore = new WeakMap<WeatherSeries, Map<string, PreparedWeather | undefined>>();

function preparedOnce(series: WeatherSeries, scenario: Scenario): PreparedWeather | undefined {
  const winters = preparedBefore.get(series) ?? new Map<string, PreparedWeather | undefined>();
  preparedBefore.set(series, winters);
  const key = yearly(scenario);
  if (!winters.has(key)) winters.set(key, prepareWinter(series, scenario, scenario.farm.weather.year));
  return winters.get(key);
}

function onceEach(problems: readonly Problem[]): Problem[] {
  return [...new Map(problems.map((p) => [JSON.stringify(p), p])).values()];
}

// What the build reads ahead of the page: the same inputs, and the same results before anything else has come.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSound, shippedTables } from '../../src/cli/open.ts';
import { examplesOf, packedTables, readExample } from '../../src/cli/readAhead.ts';
import { findRoot } from '../../src/cli/readData.ts';
import { prepareNormals } from '../../src/model/weather/prepareWeather.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { type Ahead, notebookAhead, wintersAhead } from '../../src/study/ahead.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { packAhead } from '../../src/study/packAhead.ts';
import { numbersOf } from '../../src/tables/packed.ts';
import { readWeather } from '../../src/tables/weather.ts';

const folder = join(findRoot(), 'notebooks');
const paths = readdirSync(folder)
  .filter((file) => file.endsWith('.md'))
  .map((file) => join(folder, file));
/** As it crosses to the page. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));

describe.each(paths.map((path) => [basename(path), path]))('%s, read ahead', (file, path) => {
  it('says what its text says', async () => {
    const { text, ahead } = await readExample(path);
    const notebook = notebookAhead(sent(ahead as Ahead), text, file);
    const read = readNotebook(text, file).notebook;
    const { blocks: _, weather: __, notes: ___, readerNotes: ____, lineOf: _____, ...rest } = notebook;
    expect(read).toMatchObject(rest);
    expect(rest.scenarios).toEqual(read?.scenarios);
    expect(rest.overrides).toEqual(read?.overrides);
  });

  it('gives the results of the whole reading: values, series, checks and money, with numbers alone', async () => {
    const { text, ahead } = await readExample(path);
    const first = notebookAhead(sent(ahead as Ahead), text, file);
    const numbers = numbersOf(sent(packedTables().numbers));
    const early = evaluate(first, numbers, wintersAhead(sent(ahead as Ahead), first));
    const { notebook, winters } = await readSound(path);
    const late = evaluate(notebook, shippedTables(), winters.winterOf);
    expect(early.scenarios).toEqual(late.scenarios);
    expect(early.scenarios.length).toBeGreaterThan(1);
    expect(early.weather).toEqual(late.weather);
  });
});

describe('what cannot be read ahead', () => {
  const [path] = paths;
  const opened = readSound(path);
  const series = async (change: (line: string) => string) => {
    const { notebook } = await opened;
    const name = notebook.farm.weather.file ?? '';
    const text = readFileSync(join(findRoot(), 'data', 'weather', name), 'utf8');
    const [header, ...rows] = text.trimEnd().split('\n');
    return readWeather(name, [header, ...rows.map(change)].join('\n')).series ?? undefined;
  };

  it('is weather that is no daily file', async () => {
    const { notebook } = await opened;
    const monthly = {
      rainMm: Array(12).fill(60),
      temperatureC: Array(12).fill(5),
      rangeC: Array(12).fill(8),
      wetDays: Array(12).fill(12),
    };
    const { farm } = notebook.scenarios[0];
    const made = prepareNormals({ farm: { ...farm, weather: { ...farm.weather, monthly } } }, 1)[0];
    expect(
      packAhead(
        notebook,
        () => made,
        () => undefined,
      ),
    ).toBeUndefined();
  });

  it('is a day in hundredths; in tenths it can', async () => {
    const { notebook, winters } = await opened;
    const fine = await series((row) => row);
    const finer = await series((row) => row.replace(/^([^,]+),[^,]+/, '$1,0.25'));
    expect(packAhead(notebook, winters.winterOf, () => fine)).toBeDefined();
    expect(packAhead(notebook, winters.winterOf, () => finer)).toBeUndefined();
  });
});

describe('the list of examples', () => {
  it('has each with its title and place', async () => {
    const list = await examplesOf(paths);
    expect(list.map(({ file }) => file)).toEqual(paths.map((path) => basename(path)));
    for (const { title, note } of list) expect([title, note].every((words) => words.length > 5)).toBe(true);
  });
});

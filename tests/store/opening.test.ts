// A notebook opened with what was read ahead, and what happens as the rest comes.
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSound, shippedTables } from '../../src/cli/open.ts';
import { packedTables, readExample } from '../../src/cli/readAhead.ts';
import { findRoot } from '../../src/cli/readData.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import type { FirstEngine, WholeEngine } from '../../src/store/engine.ts';
import { openWith } from '../../src/store/opening.ts';
import { TEXTS } from '../../src/store/texts.ts';
import { type Ahead, notebookAhead, wintersAhead } from '../../src/study/ahead.ts';
import { numbersOf } from '../../src/tables/packed.ts';
import type { Explorer } from '../../src/worker/explorer.ts';

const path = join(findRoot(), 'notebooks', 'hill-farm-choice.md');
let text: string;
let ahead: Ahead;
let sound: Awaited<ReturnType<typeof readSound>>;

beforeAll(async () => {
  const example = await readExample(path);
  [text, ahead] = [example.text, example.ahead as Ahead];
  sound = await readSound(path);
});

const settled = () => new Promise((resolve) => setTimeout(resolve));

/** The page's first engine, and the rest of it held back until `bring` or `lose` is called. */
function held(explorer?: Explorer) {
  const asked = { times: 0, draws: 0 };
  let bring = () => {};
  let lose: (why: Error) => void = () => {};
  const whole: WholeEngine = {
    tables: shippedTables(),
    texts: TEXTS,
    read: readNotebook,
    winters: async () => sound.winters,
    ...(explorer ? { explorer } : {}),
  };
  const first: FirstEngine = {
    tables: numbersOf(packedTables().numbers),
    read: (other, file) =>
      other === text
        ? { ok: true, notebook: notebookAhead(ahead, text, file), problems: [] }
        : { ok: false, problems: [] },
    winters: async (notebook) => ({ winterOf: wintersAhead(ahead, notebook), problems: [] }),
    whole: () => {
      asked.times++;
      return new Promise((resolve, reject) => {
        bring = () => resolve(whole);
        lose = reject;
      });
    },
  };
  return { first, asked, bring: () => bring(), lose: (why: Error) => lose(why) };
}

describe('a notebook that was read ahead', () => {
  it('has its figures before the rest is asked for, and the same after', async () => {
    const { first, asked, bring } = held();
    const open = openWith(text, path, first);
    expect(asked.times).toBe(0);
    await settled();
    expect(asked.times).toBe(1);
    const before = open.results.value;
    expect(before.length).toBe(3);
    expect(open.notebook.value?.blocks).toEqual([]);
    expect(open.tables.sources.size).toBe(0);
    bring();
    await settled();
    expect(open.results.value).toEqual(before);
    expect(open.notebook.value?.blocks.length).toBeGreaterThan(10);
    expect(open.tables.sources.size).toBeGreaterThan(10);
    expect(asked.times).toBe(1);
    open.close();
  });

  it('follows a slider at once and writes what was let go as soon as it can', async () => {
    const { first, bring } = held();
    const open = openWith(text, path, first);
    await settled();
    const was = open.results.value[0].values.nitrogenKeptKg;
    open.preview('head', 20);
    expect(open.results.value[0].values.nitrogenKeptKg).not.toBe(was);
    open.commit('head', 20);
    expect(open.text.value).toBe(text);
    bring();
    await settled();
    await settled();
    expect(open.text.value).not.toBe(text);
    expect(open.history.value.now.what).toContain('Animals to 20');
    expect(open.problems.value).toEqual([]);
    open.close();
  });

  it('leaves a slider where it is held when the rest comes', async () => {
    const { first, bring } = held();
    const open = openWith(text, path, first);
    await settled();
    open.preview('head', 20);
    bring();
    await settled();
    expect(open.strip.value.find(({ id }) => id === 'head')?.value).toBe(20);
    open.close();
  });

  it('keeps an edited text and shows the figures of the one before until it can be read', async () => {
    const { first, bring } = held();
    const open = openWith(text, path, first);
    await settled();
    open.edit(text.replace('labourPerHour: 14', 'labourPerHour: 21'), 'dearer hours');
    await settled();
    expect(open.notebook.value?.farm.money.labourPerHour).toBe(14);
    expect(open.problems.value).toEqual([]);
    bring();
    await settled();
    expect(open.notebook.value?.farm.money.labourPerHour).toBe(21);
    open.close();
  });

  it('draws once, when all is there', async () => {
    const settings: unknown[] = [];
    const explorer = {
      follow: async ({ setting }: { setting: unknown }) => void settings.push(setting),
      stop: () => {},
    } as unknown as Explorer;
    const { first, bring } = held(explorer);
    const open = openWith(text, path, first);
    await settled();
    expect(settings).toEqual([]);
    bring();
    await settled();
    expect(settings).toEqual([open.run.value]);
    open.close();
  });

  it('says so where the rest cannot be fetched, and keeps its figures', async () => {
    const { first, lose } = held();
    const open = openWith(text, path, first);
    await settled();
    lose(new Error('Failed to fetch'));
    await settled();
    expect(open.problems.value.map(({ found }) => found)).toEqual(['Failed to fetch']);
    expect(open.results.value.length).toBe(3);
    open.close();
  });
});

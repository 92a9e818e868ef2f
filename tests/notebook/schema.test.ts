import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type FrontMatter, findFrontMatter } from '../../src/notebook/frontMatter.ts';
import { frontSchema } from '../../src/notebook/frontSchema.ts';
import { INPUTS } from '../../src/notebook/inputs.ts';
import { notebookJsonSchema, notebookJsonSchemaText } from '../../src/notebook/jsonSchema.ts';
import { type Migration, migrate } from '../../src/notebook/migrate.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { farmSchema, scenarioSchema } from '../../src/notebook/schema.ts';
import { allowedWords, schemaAt } from '../../src/notebook/schemaAt.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

interface Json {
  readonly properties: Record<string, Json>;
  readonly required?: readonly string[];
  readonly items: Json;
  readonly enum?: readonly string[];
  readonly description?: string;
  readonly additionalProperties?: boolean;
}

describe('shared/notebook.schema.json', () => {
  it('is the one the definition gives: run `npm run generate` when it is not', () => {
    expect(readFileSync(new URL('../../shared/notebook.schema.json', import.meta.url), 'utf8')).toBe(
      notebookJsonSchemaText(),
    );
  });

  it('asks of a scenario only its name, system and reason, and knows every key it may have', () => {
    const scenario = (notebookJsonSchema() as unknown as Json).properties.scenarios.items;
    expect(scenario.required).toEqual(['name', 'system', 'because']);
    expect(Object.keys(scenario.properties).sort()).toEqual(Object.keys(scenarioSchema.shape).sort());
    expect(Object.keys(scenario.properties.farm.properties)).toEqual(Object.keys(farmSchema.shape));
    expect(scenario.properties.farm.required).toBeUndefined();
    expect(scenario.properties.shed.properties.stanceDepthM.description).toContain('feed stance');
    expect(scenario.additionalProperties).toBe(false);
  });

  it.each(shipped)('accepts $file as it is written', ({ text }) => {
    expect(
      frontSchema.safeParse(parse((findFrontMatter(text, '') as FrontMatter).source)).error?.issues,
    ).toBeUndefined();
  });
});

describe('what is allowed, in words', () => {
  it.each([
    ['placement.bedShare', 'a number from 0 to 1'],
    ['farm.land.receivingHa', 'a number above 0, at most 1000000000'],
    ['farm.herd.0.head', 'a number from 0 to 100000'],
    ['farm.soil.texture', 'one of sand, loamySand, sandyLoam, loam, siltLoam, siltyClayLoam, clay'],
    ['farm.winter.start', 'a date as year-month-day, such as 2025-11-01'],
    ['farm.weather.monthly.rainMm', 'a list of 12'],
    ['farm.herd', 'a list of 1 to 12'],
    ['compost.turns', 'a whole number from 0 to 30'],
    ['farm.money.currency', 'three capital letters, such as EUR'],
    ['shed.ownTimber', 'true or false'],
    ['name', 'words on one line, at most 60 letters'],
  ])('%s: %s', (path, words) => {
    const schema = schemaAt(scenarioSchema, path.split('.'));
    expect(schema && allowedWords(schema)).toBe(words);
  });

  it('has a schema at the path of every input of the model', () => {
    expect(INPUTS.filter(({ path }) => schemaAt(scenarioSchema, path.split('.')) === undefined)).toEqual([]);
  });
});

describe('older formats', () => {
  /** A format that never was: it called the farm's ground `fields`. */
  const fromZero: Migration = ({ fields, ...front }) => ({
    ...front,
    farm: { ...(front.farm as object), land: fields },
  });
  const old = SMALL.replace('winterkeep: 1', 'winterkeep: 0')
    .replace('  land: { receivingHa: 20 }\n', '')
    .replace('farm:', 'fields: { receivingHa: 20 }\nfarm:');

  it('are lifted version by version before they are checked, the text left as it is', () => {
    const { notebook, problems } = readNotebook(old, 'old.md', { 0: fromZero });
    expect(problems).toEqual([]);
    expect(notebook?.version).toBe(0);
    expect(notebook?.farm).toEqual((readNotebook(SMALL, 'x.md').notebook as Notebook).farm);
    expect(notebook?.text).toBe(old);
  });

  it('say what is wrong with them where it is written', () => {
    const { problems } = readNotebook(old.replace('head: 16', 'head: -1'), 'old.md', { 0: fromZero });
    expect(problems).toMatchObject([{ key: 'farm.herd.0.head', line: 12 }]);
  });

  it('without a way to today are refused', () => {
    expect(readNotebook(old, 'old.md').problems).toMatchObject([
      { key: 'winterkeep', found: '0', allowed: '1' },
    ]);
    expect(
      readNotebook(old.replace('winterkeep: 0', 'winterkeep: -1'), 'old.md', { 0: fromZero }).problems,
    ).toMatchObject([{ key: 'winterkeep', allowed: '0 to 1' }]);
  });

  it('leave a text of today alone', () => {
    expect(migrate({ winterkeep: 1, title: 'x' }, { 0: fromZero })).toEqual({ winterkeep: 1, title: 'x' });
  });

  it('with a key that is retired are read over it, and say where it stands', () => {
    const old = SMALL.replace('latitudeDeg: 57', 'elevationM: 240, latitudeDeg: 57');
    expect(old).not.toBe(SMALL);
    const { ok, notebook } = readNotebook(old, 'old.md');
    expect(ok).toBe(true);
    expect(notebook?.farm).toEqual(readNotebook(SMALL, 'x.md').notebook?.farm);
    expect(notebook?.text).toBe(old);
    const line = old.split('\n').findIndex((l) => l.includes('elevationM')) + 1;
    expect(notebook?.notes).toMatchObject([{ key: 'farm.place.elevationM', line, file: 'old.md' }]);
    expect(notebook?.notes[0].todo).toContain('taken out');
  });

  it('with a heap that is covered are read as one under a fleece, and say so', () => {
    const old = SMALL.replace(/^ {4}bed: .*$/m, (bed) => `${bed}\n    compost: { cover: covered, turns: 3 }`);
    expect(old).not.toBe(SMALL);
    const { ok, notebook } = readNotebook(old, 'old.md');
    expect(ok).toBe(true);
    expect(notebook?.scenarios[1].compost).toMatchObject({ cover: 'fleece', turns: 3 });
    const line = old.split('\n').findIndex((l) => l.includes('covered')) + 1;
    expect(notebook?.notes).toMatchObject([{ key: 'scenarios.1.compost.cover', line, file: 'old.md' }]);
    expect(notebook?.notes[0].todo).toContain('sheet');
    const priced = readNotebook(
      SMALL.replace(
        '    currency: EUR',
        '    prices: { heapCoverPricePerM2: { value: 2, because: quote } }\n    currency: EUR',
      ),
      'old.md',
    );
    expect(priced.notebook?.farm.money.prices).toEqual({
      'heapCoverPricePerM2.fleece': { value: 2, because: 'quote' },
    });
    expect(priced.notebook?.notes).toHaveLength(1);
  });

  it('with a price level in each scenario are read with one for all, and say so', () => {
    const first = SMALL.indexOf('  - name: ');
    const end = SMALL.indexOf('\n', first);
    const old = `${SMALL.slice(0, end)}\n    finance: { inflation: 0.02, lifeYears: 15, incomePerYear: 3200 }${SMALL.slice(end)}`;
    const { ok, notebook } = readNotebook(old, 'old.md');
    expect(ok).toBe(true);
    const head = notebook?.farm.herd.reduce((sum, group) => sum + group.head, 0) ?? 0;
    expect(notebook?.farm.money).toMatchObject({
      inflation: 0.02,
      horizonYears: 15,
      incomePerHead: 3200 / head,
    });
    for (const { farm } of notebook?.scenarios ?? []) expect(farm.money.inflation).toBe(0.02);
    expect(notebook?.notes.map((note) => note.key)).toEqual([
      'scenarios.0.finance.inflation',
      'scenarios.0.finance.lifeYears',
      'scenarios.0.finance.incomePerYear',
    ]);
    const other = readNotebook(
      old.replace('    labourPerHour:', '    inflation: 0.03\n    labourPerHour:'),
      'old.md',
    );
    expect(other.notebook?.farm.money.inflation).toBe(0.03);
    expect(other.notebook?.notes[0].what).toContain('0.02 of this one is not used');
  });

  it('that replace a row which is gone are read over it, and say what took its place', () => {
    const own = 'coefficients:\n  - { id: coldIntakePerC, value: 0.02, because: measured }\nscenarios:';
    const { ok, notebook } = readNotebook(SMALL.replace(/^scenarios:$/m, own), 'old.md');
    expect(ok).toBe(true);
    expect(notebook?.overrides).toEqual([]);
    expect(notebook?.notes).toMatchObject([
      { key: 'coefficients.0.id', what: expect.stringContaining('used no more') },
    ]);
  });

  it('are refused another price level in a scenario, and a loan longer than the years counted', () => {
    const first = SMALL.indexOf('  - name: ');
    const end = SMALL.indexOf('\n', first);
    const with_ = (words: string) => `${SMALL.slice(0, end)}\n${words}${SMALL.slice(end)}`;
    expect(readNotebook(with_('    farm: { money: { inflation: 0.04 } }'), 'x.md').problems).toMatchObject([
      { key: 'scenarios.0.farm.money.inflation', found: '0.04' },
    ]);
    expect(
      readNotebook(
        with_('    finance: { loans: [{ name: long, amount: 1000, rate: 0.05, years: 25 }] }'),
        'x.md',
      ).problems,
    ).toMatchObject([{ key: 'scenarios.0.finance.loans.0.years', found: '25 years' }]);
  });

  it('are not read over the same key elsewhere', () => {
    const { problems } = readNotebook(SMALL.replace(/^farm:$/m, 'farm:\n  elevationM: 240'), 'old.md');
    expect(problems.map((p) => p.key)).toContain('farm.elevationM');
  });
});

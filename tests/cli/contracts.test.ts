import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { GENERATED } from '../../src/cli/contracts.ts';
import { NOTEBOOKS, winterkeep } from './run.ts';

const read = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');

it.each(Object.keys(GENERATED))('%s is what the sources say (else run `npm run generate`)', (path) => {
  expect(read(path)).toBe(GENERATED[path]());
});

describe('shared/results.schema.json', () => {
  interface Printed {
    currency?: string;
    scenarios: {
      values: Record<string, unknown>;
      p10: Record<string, unknown>;
      checks: Record<string, unknown>[];
    }[];
  }
  const schema = JSON.parse(read('shared/results.schema.json'));
  const holds = new Ajv2020({ strict: true, strictTypes: true, allErrors: true }).compile(schema);
  const printed = new Map<string, Printed>();
  beforeAll(async () => {
    for (const file of NOTEBOOKS)
      printed.set(
        file,
        JSON.parse((await winterkeep('compare', file, '--format', 'json', '--draws', '20')).out),
      );
  }, 60_000);
  const valid = (body: unknown) => (holds(body) ? [] : holds.errors);

  it.each(NOTEBOOKS)('holds what compare prints of %s', (file) => {
    expect(valid(printed.get(file))).toEqual([]);
    // Without draws there are no spans.
    const { scenarios, ...rest } = printed.get(file) as Printed;
    expect(valid({ ...rest, scenarios: scenarios.map(({ p10: _, ...s }) => s) })).toEqual([]);
  });

  it.each<[string, (body: Printed) => void]>([
    ['a quantity that is missing', ({ scenarios: [s] }) => delete s.values.netCost],
    ['a span that is missing', ({ scenarios: [s] }) => delete s.p10.netCost],
    ['a quantity nobody knows', ({ scenarios: [s] }) => Object.assign(s.values, { netcost: 1 })],
    [
      'one quantity under another’s name',
      ({ scenarios: [s] }) => {
        delete s.values.netCost;
        s.values.netcost = 1;
      },
    ],
    ['text for a number', ({ scenarios: [s] }) => Object.assign(s.values, { netCost: '1' })],
    ['a status nobody knows', ({ scenarios: [s] }) => Object.assign(s.checks[0], { status: 'fine' })],
    ['a check without words', ({ scenarios: [s] }) => delete s.checks[0].words],
    ['no currency', (body) => delete body.currency],
    ['no scenario', ({ scenarios }) => scenarios.splice(0)],
  ])('refuses %s', (_, spoil) => {
    const body = structuredClone(printed.get(NOTEBOOKS[0])) as Printed;
    spoil(body);
    expect(valid(body)).not.toEqual([]);
  });
});

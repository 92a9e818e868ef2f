import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { evaluateBound } from '../../src/study/evaluate.ts';
import { pricesFelt } from '../../src/whatif/pricesFelt.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const NOTEBOOKS = ['hill-farm-choice', 'coast-lender-case', 'atlantic-rain-and-herd'];

describe.each(NOTEBOOKS)('prices in use in %s', (name) => {
  it('are those that move the money when they are doubled, and no others', async () => {
    const { run } = await openNotebook(`${ROOT}/notebooks/${name}.md`);
    const felt = new Set(pricesFelt(run).map(({ id }) => id));
    const money = (of: typeof run) =>
      of.results.map(({ values }) => [values.capitalCost, values.netCost, values.nutrientValue]);
    const still = money(run);
    const prices = new Map<string, string[]>();
    for (const { bindings } of run.bound)
      for (const { id, origin, value, column } of bindings.values())
        if (origin === 'price' && value > 0) prices.set(id, [...(prices.get(id) ?? []), column]);
    expect(felt.size).toBeGreaterThan(20);
    expect(felt.size).toBeLessThan(prices.size);
    for (const [id, columns] of prices) {
      const doubled = new Map(
        columns.flatMap((column) =>
          run.bound.flatMap(({ bindings }, scenario) => {
            const own = bindings.get(column);
            return own?.id === id ? [[`${column}@${scenario}`, own.value * 2] as const] : [];
          }),
        ),
      );
      const turned = evaluateBound(run.bound, run.tables, run.weather, run.weatherIndex, doubled);
      if (felt.has(id)) expect(money(turned), id).not.toEqual(still);
      else
        money(turned).forEach((row, k) => {
          row.forEach((value, j) => {
            expect(value ?? 0, id).toBeCloseTo(still[k][j] ?? 0, 6);
          });
        });
    }
  });
});

import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { tables } from '../shippedTables.ts';
import { recalled, sum } from './labels.ts';

/**
 * common practice, no source: most of the value of winter dung dropped on dormant ground is gone by the time grass
 * grows when the winter is wet and the load high. Here: the invented Atlantic herd on two hectares instead of nine,
 * fed in one place, with half as much rain again. "Value" is what fertiliser of the same N, P and K would cost.
 */
describe('outwintering, wet and crowded', async () => {
  const { notebook, winters, run } = await openNotebook('notebooks/atlantic-rain-and-herd.md');
  const [first] = notebook.scenarios;
  const crowd = (areaHa: number, moved: 'fixed' | 'daily', rainFactor: number) => {
    const { farm } = first;
    const scenario = {
      ...first,
      paddock: { areaHa, moved },
      farm: { ...farm, weather: { ...farm.weather, rainFactor } },
    };
    return evaluate({ scenarios: [scenario], overrides: [] }, tables, winters.winterOf).results[0].values;
  };
  const price = (id: string) => run.bound[0].bindings.get(id)?.value ?? Number.NaN;
  const shareOfValue = (values: Readonly<Record<string, number | null>>) => {
    const dropped = ['nitrogen', 'phosphorus', 'potassium'].reduce(
      (sum, e) => sum + (values[`${e}ExcretedKg`] ?? 0) * price(`${e}PricePerKg`),
      0,
    );
    return (values.nutrientValue ?? 0) / dropped;
  };

  it(sum('starts from a scenario out on pasture'), () => expect(first.system).toBe('outwintered'));

  it(recalled('leaves less than half of the value to the first crop'), () => {
    const share = shareOfValue(crowd(2, 'fixed', 1.5));
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(0.5);
  });

  it(sum('leaves more where the load is spread thin and the winter dry'), () => {
    expect(shareOfValue(crowd(30, 'daily', 0.5))).toBeGreaterThan(2 * shareOfValue(crowd(2, 'fixed', 1.5)));
  });
});

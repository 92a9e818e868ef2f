/** Draws that are kept for the next question: the same to the bit, made once, and not while an input is turned. */
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import type { ResultName } from '../../src/model/quantities.ts';
import { draw } from '../../src/uncertainty/monteCarlo.ts';
import type { Drawing } from '../../src/worker/job.ts';
import { keptDraws } from '../../src/worker/keptDraws.ts';

const NONE = new Map<string, number>();
const { run } = await openNotebook('notebooks/hill-farm-choice.md');

/** Draws, and every list of results that had to be made for them. */
function counted() {
  const made: (readonly ResultName[])[] = [];
  const counting: Drawing = function* (setting, options) {
    made.push(options.keep);
    return yield* draw(setting, options);
  };
  const drawing = keptDraws(counting);
  const ask = (keep: readonly ResultName[], count = 200, changes = NONE) => {
    const steps = drawing(run, { count, seed: 3, keep, changes });
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value as unknown as ReturnType<typeof fresh>;
  };
  return { made, ask };
}

function fresh(keep: readonly ResultName[], count = 200) {
  const steps = draw(run, { count, seed: 3, keep });
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

describe('draws that are kept', () => {
  it('are what fresh ones are, with the numbers they hang on, and only what is missing is made', () => {
    const { made, ask } = counted();
    const first = ask(['netCost', 'labourHours']);
    expect(first).toEqual(fresh(['netCost', 'labourHours']));
    // As if it were handed over to the page.
    first.results.netCost.fill(0);
    expect(ask(['netCost', 'nitrogenKeptKg'])).toEqual(fresh(['netCost', 'nitrogenKeptKg']));
    expect(ask(['labourHours'])).toEqual(fresh(['labourHours']));
    expect(made).toEqual([['netCost', 'labourHours'], ['nitrogenKeptKg']]);
  });

  it('are made anew for another number of draws, and for an input that is turned', () => {
    const { made, ask } = counted();
    expect(ask(['compostTonnes'], 100)).toEqual(fresh(['compostTonnes'], 100));
    expect(ask(['compostTonnes'], 150)).toEqual(fresh(['compostTonnes'], 150));
    const turned = new Map([['labourPricePerHour', 99]]);
    const dearer = ask(['labourHours', 'netCost'], 150, turned);
    expect(dearer.results.netCost).not.toEqual(fresh(['netCost'], 150).results.netCost);
    expect(ask(['netCost'], 150)).toEqual(fresh(['netCost'], 150));
    expect(made).toEqual([['compostTonnes'], ['compostTonnes'], ['labourHours', 'netCost'], ['netCost']]);
  });
});

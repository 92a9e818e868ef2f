/** What moves the present value of a scenario: every number with a range at its low and at its high end. */
import type { ResultName } from '../model/quantities.ts';
import { type Block, repeatScenarios, runBlock, type Setting } from '../study/rows.ts';
import { type Uncertain, uncertainIn } from '../uncertainty/monteCarlo.ts';
import { setTurn } from './turn.ts';

export interface Sensitivity {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** Present value, against the baseline when there is one, with this number alone at its low or high end. */
  readonly atLow: number;
  readonly atHigh: number;
}

export interface Sensitivities {
  /** With every number at its central value; NaN where a price is missing. */
  readonly central: number;
  /** Widest first. */
  readonly rows: readonly Sensitivity[];
}

/** A block of the best guesses (repeat 0) and of each number alone at its low (2k + 1) and its high end (2k + 2). */
export function turnedToEnds<Name extends ResultName>(
  setting: Setting,
  uncertain: readonly Uncertain[],
  names: readonly Name[],
): Block<Name> {
  const block = repeatScenarios(setting, 2 * uncertain.length + 1, names);
  uncertain.forEach(({ at, low, high }, k) => {
    setTurn(block, { at, herds: [] }, 2 * k + 1, low);
    setTurn(block, { at, herds: [] }, 2 * k + 2, high);
  });
  return block;
}

/** The `top` numbers that move the present value of `scenario` most, one at a time. */
export function oneAtATime(
  setting: Setting,
  scenario: number,
  baseline: number | undefined,
  top: number,
): Sensitivities {
  const uncertain = uncertainIn(setting).filter(({ at }) =>
    at.some((a) => a.scenario === scenario || a.scenario === baseline),
  );
  const block = turnedToEnds(setting, uncertain, ['netPresentValue']);
  const { netPresentValue } = runBlock(block, setting.weather);
  // Both are counted over the same years at the same rate, so the worth of the difference is that of the worths.
  const worth = (repeat: number) => {
    const of = (s: number) => netPresentValue[repeat * block.scenarios + s];
    return baseline === undefined ? of(scenario) : of(scenario) - of(baseline);
  };
  const rows = uncertain
    .map(
      ({ id, label, unit, low, high }, k): Sensitivity => ({
        id,
        label,
        unit,
        low,
        high,
        atLow: worth(2 * k + 1),
        atHigh: worth(2 * k + 2),
      }),
    )
    .filter(({ atLow, atHigh }) => Number.isFinite(atLow) && Number.isFinite(atHigh) && atLow !== atHigh)
    .sort((a, b) => Math.abs(b.atHigh - b.atLow) - Math.abs(a.atHigh - a.atLow));
  return { central: worth(0), rows: rows.slice(0, top) };
}

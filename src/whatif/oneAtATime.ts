/** What moves the present value of a scenario: every number with a range at its low and at its high end. */
import { CASH_INPUTS, CASH_RESULTS, type CashTerms, worthAgainst } from '../model/money/cashTerms.ts';
import { repeatScenarios, runBlock, type Setting } from '../study/rows.ts';
import { uncertainIn } from '../uncertainty/monteCarlo.ts';
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
  const block = repeatScenarios(setting, 2 * uncertain.length + 1, [...CASH_RESULTS]);
  const { scenarios, columns } = block;
  uncertain.forEach(({ at, low, high }, k) => {
    setTurn(block, { at, herds: [] }, 2 * k + 1, low);
    setTurn(block, { at, herds: [] }, 2 * k + 2, high);
  });
  const results = runBlock(block, setting.weather);
  const termsAt = (repeat: number, s: number): CashTerms => {
    const row = repeat * scenarios + s;
    // Inputs are read as they stand in the row, since one of them may be the number turned.
    const input = (name: string) =>
      columns[name]?.[row] ??
      turned(repeat, s, name) ??
      setting.bound[s].bindings.get(name)?.value ??
      Number.NaN;
    return Object.fromEntries([
      ...CASH_RESULTS.map((name) => [name, results[name][row]]),
      ...CASH_INPUTS.map((name) => [name, input(name)]),
    ]) as CashTerms;
  };
  /** The life of short-lived works enters only the flows, so that its column may not be in the block. */
  const turned = (repeat: number, s: number, name: string): number | undefined => {
    if (repeat === 0) return undefined;
    const { at, low, high } = uncertain[Math.floor((repeat - 1) / 2)];
    return at.some((a) => a.scenario === s && a.column === name)
      ? repeat % 2 === 1
        ? low
        : high
      : undefined;
  };
  const worth = (repeat: number) =>
    worthAgainst(termsAt(repeat, scenario), baseline === undefined ? undefined : termsAt(repeat, baseline));
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

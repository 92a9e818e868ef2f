/** The days of one winter for one scenario: rain, snow, soil water and drainage. */
import { toTable } from '../model/bind.ts';
import { compute } from '../model/compute.ts';
import { DAILY, type DayName } from '../model/quantities.ts';
import { DAYS } from '../model/series.ts';
import type { Setting } from '../study/rows.ts';

export interface Days {
  /** First day, ISO. */
  readonly start: string;
  /** What the weather is called. */
  readonly label: string;
  /** Days with weather, from the first winter day on. */
  readonly count: number;
  readonly winterDays: number;
  /** By name, `count` numbers each. */
  readonly series: Readonly<Record<DayName, Float64Array>>;
}

/** Works out the daily series of one scenario. */
export function daysOf(setting: Setting, scenario: number): Days {
  const index = setting.weatherIndex[scenario];
  const winter = setting.weather[index];
  const columns = toTable([{ bound: setting.bound[scenario], weatherIndex: index }]);
  const daily = compute(DAILY, columns, setting.weather);
  const count = Math.min(winter.days, DAYS);
  return {
    start: winter.start,
    label: winter.label,
    count,
    winterDays: setting.bound[scenario].bindings.get('winterDays')?.value ?? 0,
    series: Object.fromEntries(DAILY.map((name) => [name, daily[name].slice(0, count)])) as Days['series'],
  };
}

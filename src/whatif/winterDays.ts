/** The days of one winter for one scenario: rain, snow, soil water and drainage. */
import { toTable } from '../model/bind.ts';
import { runPipeline } from '../model/pipeline.ts';
import { DAYS } from '../model/stage.ts';
import { STAGES } from '../model/stages.ts';
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
  readonly series: Readonly<Record<string, Float64Array>>;
}

/** Runs the stages that make daily series for one scenario. */
export function daysOf(setting: Setting, scenario: number): Days {
  const index = setting.weatherIndex[scenario];
  const winter = setting.weather[index];
  const last = STAGES.findLastIndex((stage) => Object.keys(stage.dailies ?? {}).length > 0);
  const result = runPipeline(
    toTable([{ bound: setting.bound[scenario], weatherIndex: index }]),
    { weather: setting.weather, keep: ['rainMm'], daily: true },
    STAGES.slice(0, last + 1),
  );
  const count = Math.min(winter.days, DAYS);
  return {
    start: winter.start,
    label: winter.label,
    count,
    winterDays: setting.bound[scenario].bindings.get('winterDays')?.value ?? 0,
    series: Object.fromEntries(
      Object.entries(result.daily).map(([name, values]) => [name, values.slice(0, count)]),
    ),
  };
}

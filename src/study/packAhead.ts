/** Reads a notebook ahead: see `ahead.ts`. */
import type { PreparedWeather } from '../model/weather/prepared.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import type { WeatherDay, WeatherSeries } from '../tables/weatherSeries.ts';
import { dateOf, dayNumber } from '../units/days.ts';
import {
  type Ahead,
  type AheadFront,
  type AheadWinter,
  FRONT,
  notebookAhead,
  wintersAhead,
} from './ahead.ts';
import type { WinterOf } from './evaluate.ts';

/**
 * Undefined where a winter is not one of a daily file in tenths with the mean halfway between the extremes: such a
 * notebook is read when it is opened. `seriesOf` finds the daily file a scenario names.
 */
export function packAhead(
  notebook: Notebook,
  winterOf: WinterOf,
  seriesOf: (scenario: Scenario) => WeatherSeries | undefined,
): Ahead | undefined {
  const front = Object.fromEntries(FRONT.map((key) => [key, notebook[key]])) as unknown as AheadFront;
  const { scenarios } = notebook;
  const known: PreparedWeather[] = [];
  const winters: AheadWinter[] = [];
  const winterIndex: number[] = [];
  for (const scenario of scenarios) {
    const prepared = winterOf(scenario);
    let at = known.indexOf(prepared);
    if (at < 0) {
      const series = seriesOf(scenario);
      const winter = series && winterIn(series, prepared, scenario.farm.place.latitudeDeg);
      if (!winter) return undefined;
      at = known.push(prepared) - 1;
      winters.push(winter);
    }
    winterIndex.push(at);
  }
  const ahead = { front, winters, winterIndex };
  return isSame(ahead, notebook, known) ? ahead : undefined;
}

function winterIn(
  { days }: WeatherSeries,
  { label, start, days: count, frost }: PreparedWeather,
  latitudeDeg: number,
): AheadWinter | undefined {
  const byDate = new Map(days.map((day) => [day.date, day]));
  const from = dayNumber(start);
  const chosen = Array.from({ length: count }, (_, d) => byDate.get(dateOf(from + d)));
  if (!frost || chosen.includes(undefined)) return undefined;
  const tenths = (key: 'rainMm' | 'minC' | 'maxC') =>
    (chosen as WeatherDay[]).map((day) => Math.round(day[key] * 10));
  return {
    label,
    start,
    latitudeDeg,
    rain: tenths('rainMm'),
    min: tenths('minC'),
    max: tenths('maxC'),
    frost,
  };
}

/** Whether what is opened again is what was packed, to the bit. */
function isSame(ahead: Ahead, { text, file }: Notebook, known: readonly PreparedWeather[]): boolean {
  const opened = notebookAhead(ahead, text, file);
  const winterOf = wintersAhead(ahead, opened);
  return opened.scenarios.every((scenario, k) => {
    const [was, is] = [known[ahead.winterIndex[k]], winterOf(scenario)];
    return (['rainMm', 'temperatureC', 'hargreavesTermMm'] as const).every(
      (key) => was[key].length === is[key].length && was[key].every((value, d) => value === is[key][d]),
    );
  });
}

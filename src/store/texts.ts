/** What an edit of an open notebook does to its text. */
import { unknownIds } from '../model/idFaults.ts';
import { plainName, withWeather } from '../notebook/weatherBlock.ts';
import { removeOverride, setInput, setOverride } from '../notebook/write.ts';
import { lastYears, readWeather, writeWeather } from '../tables/weather.ts';
import { joinedName, joinRain } from '../tables/weatherJoin.ts';
import type { Texts } from './engine.ts';
import { edited } from './stripEdit.ts';

export const TEXTS: Texts = {
  unknown: unknownIds,
  turned: edited,
  overridden: (text, id, value, because) =>
    value === null ? removeOverride(text, id) : setOverride(text, { id, value, because }),
  withWeather(text, name, days) {
    // A year that was asked of the other file may not be in this one: its last whole winter is taken.
    const anyYear = setInput(text, 'farm.weather.year', undefined);
    return withWeather(setInput(anyYear, 'farm.weather.file', name), name, lastYears(days));
  },
  rainIn(name, rain, climate, climateText) {
    const { series } = climateText === undefined ? { series: null } : readWeather(climate.file, climateText);
    return series
      ? { name: joinedName(name, climate), text: writeWeather({ days: joinRain(rain, series) }) }
      : undefined;
  },
  plainName,
};

/** Weather, paddock and soil stages on rows of central coefficients, with whatever a test turns. */
import { readDataFiles } from '../../src/cli/readData.ts';
import { DAYS, WEEKS } from '../../src/model/series.ts';
import { hargreavesTermMm } from '../../src/model/weather/evapotranspiration.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { extraterrestrialRadiationMj } from '../../src/model/weather/radiation.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import type { Coefficient } from '../../src/tables/coefficient.ts';
import { loadTables } from '../../src/tables/load.ts';
import { columnsRead, namesIn, runParts } from './parts.ts';

const loaded = loadTables(readDataFiles(), CHOICE_OPTIONS);

/** Problems the loader has with the three files of these stages. */
export const problems = loaded.problems.filter(({ file }) =>
  /coefficients\/(weather|soil|paddock)\.csv$/.test(file),
);
export const coefficients: ReadonlyMap<string, Coefficient> = loaded.tables.coefficients;

export const PICKS: Readonly<Record<string, string>> = {
  texture: 'loam',
  moved: 'weekly',
  way: 'turned',
  crop: 'grassCut1',
  exposure: 'open',
};

/** Inputs and results of other stages at plain values: 20 cows, 180 days, 320 kg N/ha. */
export const INPUTS: Readonly<Record<string, number>> = {
  packShare: 1, slurryShare: 1, weatherIndex: 0, winterDays: 180, rainFactor: 1, latitudeDeg: 57, rootDepthMm: 600, paddockHa: 2, livestockUnits: 20,
  paddockShare: 1, paddockTanInKg: 384, paddockNitrogenInKg: 640, paddockPhosphorusInKg: 88, paddockPotassiumInKg: 790,
  paddockCarbonInKg: 9000, paddockDryMatterInKg: 20_000, paddockNitrogenUsedKg: 0, receivingHa: 10, spreadDay: 165, slurryNitrogenKg: 464, slurrySoilNitrogenKg: 336,
  slurrySoilTanKg: 105, slurryNitrogenReleasedKg: 28,
  compostNitrogenReleasedKg: 0, compostNitrogenKg: 0, compostSoilNitrogenKg: 0, compostSoilTanKg: 0, slurryPhosphorusKg: 88,
  compostPhosphorusKg: 0, slurryPotassiumKg: 790, compostPotassiumKg: 0, slurryCarbonKg: 7000, compostCarbonKg: 0,
  compostM3: 0,
}; // biome-ignore format: one list

export type Turn = Readonly<Record<string, number>>;

/** One row for each turn, through the given stages; tracks and days too. */
export function runRows(
  parts: readonly string[],
  weather: readonly PreparedWeather[],
  turns: readonly Turn[],
  picks: Turn | Readonly<Record<string, string>> = {},
  daily = true,
) {
  const made = namesIn(parts, 1);
  const columns: Record<string, Float64Array> = {};
  for (const name of columnsRead(parts))
    columns[name] = Float64Array.from(
      turns,
      (turn) => turn[name] ?? INPUTS[name] ?? central(name, { ...PICKS, ...picks }),
    );
  const out = runParts(parts, columns, turns.length, weather, daily);
  const series = (width: number) =>
    Object.fromEntries(namesIn(parts, width).map((name) => [name, out[name]]));
  return {
    rows: turns.map((_, k) => Object.fromEntries(made.map((name) => [name, out[name][k]]))),
    tracks: series(WEEKS),
    daily: daily ? series(DAYS) : {},
  };
}

/** Central value of a row, of the picked option where the name has options. */
export function central(name: string, picks: Readonly<Record<string, number | string>> = PICKS): number {
  const plain = coefficients.get(name);
  if (plain) return plain.central;
  for (const option of Object.values(picks)) {
    const row = coefficients.get(`${name}.${option}`);
    if (row) return row.central;
  }
  throw new Error(`no coefficient: ${name}`);
}

/** Weather from plain numbers: rain, and mean with a range of temperature, from the first of November on. */
export function weatherOf(
  rainMm: readonly number[],
  meanC: readonly number[],
  rangeC = 8,
  latitudeDeg = 57,
  start = '2010-11-01',
): PreparedWeather {
  const first = Date.parse(start);
  const term = meanC.map((mean, d) => {
    const date = new Date(first + d * 86_400_000);
    const dayOfYear = Math.floor((date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 0)) / 86_400_000);
    return hargreavesTermMm(
      mean - rangeC / 2,
      mean + rangeC / 2,
      extraterrestrialRadiationMj(latitudeDeg, dayOfYear),
    );
  });
  return {
    label: 'made up', start, days: rainMm.length, rainMm: Float64Array.from(rainMm), temperatureC: Float64Array.from(meanC),
    hargreavesTermMm: Float64Array.from(term),
  }; // biome-ignore format: one value
}

/** A smooth year from November: warmest in July, with rain every `every` days. */
export function smoothYear(
  meanC: number,
  swingC: number,
  rainMm: number,
  every = 2,
  days = 365,
): PreparedWeather {
  const rain = Array.from({ length: days }, (_, d) => (d % every === 0 ? rainMm * every : 0));
  const mean = Array.from(
    { length: days },
    (_, d) => meanC - swingC * Math.cos((2 * Math.PI * (d - 75)) / 365),
  );
  return weatherOf(rain, mean);
}

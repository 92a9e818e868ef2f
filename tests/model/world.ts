/** Shared by tests that run the whole model: the shipped tables, a made-up farm and made-up weather. */
import { readDataFiles } from '../../src/cli/readData.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { type Scenario, scenarioSchema } from '../../src/notebook/schema.ts';
import { SYSTEMS, type System } from '../../src/notebook/systems.ts';
import { loadTables } from '../../src/tables/load.ts';

export const { tables } = loadTables(readDataFiles(), CHOICE_OPTIONS);

export const FARM = {
  place: { name: 'a made-up farm', latitudeDeg: 57.8, longitudeDeg: 26.5 },
  winter: { start: '2025-11-01', end: '2026-04-30' },
  weather: { file: 'made-up.csv' },
  soil: { texture: 'loam' },
  herd: [{ name: 'cows', class: 'sucklerCow', head: 16, weightKg: 620, pregnantShare: 1, hornedShare: 1 }],
  feed: [{ feed: 'hay', share: 1 }],
  materials: [{ material: 'barleyStraw', tonnes: 30, pricePerTonne: 90 }],
  land: { receivingHa: 20 },
  money: { currency: 'EUR', year: 2025, labourPerHour: 15 },
};

/** A strict scenario of one system, with its defaults; `own` are its keys, `farm` replaces parts of the farm. */
export function scenarioOf(
  system: System,
  own: Record<string, unknown> = {},
  farm: Record<string, unknown> = {},
): Scenario {
  return scenarioSchema.parse({
    ...SYSTEMS[system].defaults,
    name: system,
    system,
    because: 'a test',
    ...(system === 'deep-bedded'
      ? { bed: { mix: [{ material: 'barleyStraw', share: 1 }] }, shed: { lengthM: 18, depthM: 10 } }
      : {}),
    ...own,
    farm: { ...FARM, ...farm },
  });
}

/** A year with a cold spell in its middle and rain every third day. */
export function weatherOf({ meanC = 5, swingC = 11, rainEveryThirdDayMm = 5 } = {}): PreparedWeather {
  const days = 365;
  const rainMm = new Float64Array(days);
  const temperatureC = new Float64Array(days);
  const hargreavesTermMm = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    temperatureC[day] = meanC - swingC * Math.cos(((day - 80) * 2 * Math.PI) / 365);
    rainMm[day] = day % 3 === 0 ? rainEveryThirdDayMm : 0;
    hargreavesTermMm[day] =
      Math.max(0, temperatureC[day] + 17.8) *
      Math.sqrt(7) *
      (6 + 5 * Math.cos(((day - 232) * 2 * Math.PI) / 365));
  }
  return { label: 'made-up', start: '2025-11-01', days, rainMm, temperatureC, hargreavesTermMm };
}

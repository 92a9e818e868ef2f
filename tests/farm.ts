/**
 * The invented farms of the tests and their weather, by builders; needs no files, so that a browser has them too.
 * Two forms of one thing: `scenarioOf` for a scenario without a notebook, `farm` for a notebook of three systems.
 * Apart stay `notebook/small.ts`, whose lines and comments are what is tested, `model/checks/shedCase.ts`, a shed
 * measured to its last post, and `browser/fixtures/evaluation.ts`, round results that no model gave.
 */
import { bindScenario } from '../src/model/bind.ts';
import { DAYS } from '../src/model/series.ts';
import type { PreparedWeather } from '../src/model/weather/prepared.ts';
import { CHOICE_OPTIONS } from '../src/notebook/choiceOptions.ts';
import { readNotebook } from '../src/notebook/read.ts';
import { type Scenario, scenarioSchema } from '../src/notebook/schema.ts';
import { SYSTEMS, type System } from '../src/notebook/systems.ts';
import { evaluateBound, type Run } from '../src/study/evaluate.ts';
import type { Tables } from '../src/tables/coefficient.ts';
import { loadTables } from '../src/tables/load.ts';
import { stream } from '../src/uncertainty/random.ts';

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

export const NOTEBOOK = `---
winterkeep: 1
title: Test hill
invented: true
farm:
  place: { name: Test hill, latitudeDeg: 57, longitudeDeg: 26 }
  winter: { start: 2025-11-01, end: 2026-05-01 }
  weather: { file: test.csv }
  soil: { texture: sandyLoam }
  herd:
    - { name: cows, class: sucklerCow, head: 14, weightKg: 620, pregnantShare: 0.9, hornedShare: 1 }
    - { name: heifers, class: heifer, head: 4, weightKg: 380, gainKgPerDay: 0.4 }
  feed:
    - { feed: haylage, share: 0.8 }
    - { feed: hay, share: 0.2 }
  materials:
    - { material: barleyStraw, tonnes: 60 }
    - { material: softwoodChips, tonnes: 80, own: true, machineHoursPerTonne: 0.4, pricePerTonne: 5 }
  land: { receivingHa: 14 }
  money: { currency: EUR, year: 2024, labourPerHour: 12 }
scenarios:
  - { name: Paddock, system: outwintered, because: what is done now, paddock: { areaHa: 3 } }
  - { name: Slats, system: slatted, because: what the neighbour has, spreading: { technique: trailingHose } }
  - name: Deep bed
    system: deep-bedded
    because: there is wood
    bed: { mix: [{ material: barleyStraw, share: 0.6 }, { material: softwoodChips, share: 0.4 }] }
---
`;

/** A made-up winter: cold in the middle, rain on a third of the days; another seed, another winter. */
export function winterOf(seed: number, rain = 1): PreparedWeather {
  const next = stream(seed, 'winter');
  const days = DAYS - 1;
  const temperatureC = Float64Array.from(
    { length: days },
    (_, d) => 6 - 11 * Math.cos(((d - 80) / 365) * 2 * Math.PI) + 6 * (next() - 0.5),
  );
  const rainMm = Float64Array.from({ length: days }, () =>
    next() < 0.35 ? -5.5 * Math.log(next()) * rain : 0,
  );
  const hargreavesTermMm = Float64Array.from({ length: days }, (_, d) =>
    Math.max(0, 900 - 800 * Math.cos(((d - 50) / 365) * 2 * Math.PI)),
  );
  return { label: `winter ${seed}`, start: '2025-11-01', days, rainMm, temperatureC, hargreavesTermMm };
}

export function tablesOf(files: ReadonlyMap<string, string>): Tables {
  return loadTables(files, CHOICE_OPTIONS).tables;
}

export function farm(files: ReadonlyMap<string, string>): Run {
  const { notebook, problems } = readNotebook(NOTEBOOK, 'test.md');
  if (!notebook) throw new Error(JSON.stringify(problems, null, 2));
  const tables = tablesOf(files);
  const bound = notebook.scenarios.map((scenario) => bindScenario(scenario, tables, notebook));
  return evaluateBound(bound, tables, [winterOf(3)], [0, 0, 0]);
}

/** A small invented deep-bedded scenario with a made-up bed, for tests of checks, drawings and plans; needs no files. */

import type { Check, ShedResult } from '../../../src/model/checks/check.ts';
import { checkScenario } from '../../../src/model/checks/index.ts';
import { WEEKS } from '../../../src/model/series.ts';
import { type Scenario, scenarioSchema } from '../../../src/notebook/schema.ts';
import { SYSTEMS, type System } from '../../../src/notebook/systems.ts';
import type { Coefficient } from '../../../src/tables/coefficient.ts';

type Part = Record<string, unknown>;

const FARM = {
  place: { name: 'an invented farm', country: 'SE', latitudeDeg: 57, longitudeDeg: 15 },
  winter: { start: '2025-10-20', end: '2026-04-27' },
  weather: {},
  soil: { texture: 'sandyLoam' },
  herd: [
    { name: 'cows', class: 'sucklerCow', head: 16, weightKg: 600, hornedShare: 1, pregnantShare: 0.9 },
    { name: 'young stock', class: 'heifer', head: 8, weightKg: 320, gainKgPerDay: 0.5, hornedShare: 1 },
  ],
  feed: [{ feed: 'hay', share: 1 }],
  materials: [
    { material: 'barleyStraw', tonnes: 30, moistureFraction: 0.14, pricePerTonne: 90 },
    { material: 'softwoodChips', tonnes: 20, own: true, moistureFraction: 0.28 },
  ],
  land: { receivingHa: 20 },
  money: { currency: 'EUR', year: 2024, labourPerHour: 15 },
};

export interface Patch {
  readonly system?: System;
  readonly shed?: Part;
  readonly bed?: Part;
  readonly slats?: Part;
  readonly place?: Part;
  readonly farm?: Part;
  readonly rest?: Part;
}

/** The scenario with parts of it changed; schema defaults filled in. */
export function scenarioWith(patch: Patch = {}): Scenario {
  const system = patch.system ?? 'deep-bedded';
  return scenarioSchema.parse({
    name: 'invented shed',
    system,
    because: 'a test',
    ...SYSTEMS[system].defaults,
    farm: { ...FARM, place: { ...FARM.place, ...patch.place }, ...patch.farm },
    shed: { lengthM: 24, depthM: 12, calvingPensM2: 18, hardStandingM2: 30, ...patch.shed },
    bed: {
      mix: [
        { material: 'barleyStraw', share: 0.7 },
        { material: 'softwoodChips', share: 0.3 },
      ],
      ...patch.bed,
    },
    slats: { areaM2: 60, ...patch.slats },
    ...patch.rest,
  });
}

/** A bed that grows evenly by `cmPerDay` from its starting layer; NaN after the winter. */
export function bedTrack(scenario: Scenario, cmPerDay = 0.5): Float64Array {
  const days = Math.round(
    (Date.parse(scenario.farm.winter.end) - Date.parse(scenario.farm.winter.start)) / 86_400_000,
  );
  return Float64Array.from({ length: WEEKS }, (_, week) =>
    week * 7 < days
      ? scenario.bed.startDepthM + (Math.min((week + 1) * 7, days) * cmPerDay) / 100
      : Number.NaN,
  );
}

const VALUES: Readonly<Record<string, number>> = {
  winterDays: 189, headCount: 24, packMoisture: 0.7, packFreeAirSpace: 0.33, packCarbonNitrogen: 27,
  packAvailableCarbonNitrogen: 15, beddingTonnes: 26, beddingM3: 330, packTonnes: 110, packM3: 150, packDepthM: 1.24,
  feedTonnes: 60, areaForNitrogenHa: 6, areaForPhosphorusHa: 9, areaNeededHa: 9, nitrogenLoadKgPerHa: 120, rainMm: 320,
  slatsUsedM2: 60, storeNeededM3: 190, compostPeakClass: 2, compostDays: 160, compostTonnes: 55, compostM3: 85,
  labourHours: 220,
}; // biome-ignore format: numbers in the order of the stages

export type Changes = Readonly<Record<string, number | null>>;

export type ShedCase = ShedResult & { readonly checks: readonly Check[] };

/** The scenario with a made-up bed and results, judged by the tables given. */
export function resultFrom(
  coefficients: ReadonlyMap<string, Coefficient>,
  patch: Patch = {},
  cmPerDay = 0.5,
  values: Changes = {},
): ShedCase {
  const scenario = scenarioWith(patch);
  const tracks = {
    weekPackDepthM: bedTrack(scenario, cmPerDay),
    weekPackMoisture: bedTrack(scenario).map((d) => (Number.isNaN(d) ? d : 0.66 + d / 30)),
  };
  const all = {
    ...VALUES,
    packDepthM: scenario.placement.bedShare > 0 ? 0.3 + 1.89 * cmPerDay * 0.5 : null,
    ...values,
  };
  const checks = checkScenario({ scenario, values: all, tracks, coefficients });
  return { name: scenario.name, scenario, values: all, tracks, checks };
}

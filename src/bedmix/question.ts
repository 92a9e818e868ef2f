/** The bedding question of one scenario: what falls on its bed each week, what the keeper has, what each costs. */

import { absorbencyAtMoisture } from '../model/bed/absorbency.ts';
import type { ResultName, Values } from '../model/quantities.ts';
import type { Override, Scenario } from '../notebook/schema.ts';
import type { Run } from '../study/evaluate.ts';
import { pricesFor } from '../tables/priceIndex.ts';
import { type Binding, bindingOf } from './binding.ts';
import type { MixLimits, MixMaterial, MixQuestion, MixWeek } from './lines.ts';

export interface BeddingQuestion extends MixQuestion {
  readonly binds: readonly Binding[];
  /** Materials left out because neither the keeper nor the price table says what they cost. */
  readonly unpriced: readonly string[];
  /** Own hours a tonne takes, in the order of the materials; they are in its cost. */
  readonly hoursPerTonne?: readonly number[];
  /** The bed as the notebook has it, kg a day in the order of the materials; null where it strews what has no price here. */
  readonly asWritten?: readonly number[] | null;
  /** Wettest chips that still make a bed, by the check on them. */
  readonly chipMoistureMost?: number;
}

/**
 * The question for scenario number `index` of a run, or null where it has no bed. Own material costs the hours
 * it takes at what labour is worth, and cash if the keeper names any; bought material costs its price and the
 * hours the keeper names. `limits` replaces limits of the tables.
 */
export function beddingQuestion(
  run: Run,
  index: number,
  overrides: readonly Override[] = [],
  limits: Partial<MixLimits> = {},
): BeddingQuestion | null {
  const { scenario, values } = run.results[index];
  const { farm } = scenario;
  const { bindings, coefficients } = run.bound[index];
  const row = (id: string): number =>
    overrides.findLast((override) => override.id === id)?.value ??
    bindings.get(id)?.value ??
    coefficients.get(id)?.central ??
    Number.NaN;
  const days = values.winterDays ?? 0;
  if (values.packDryMatterInKg === null || !(days > 0)) return null;

  const priceOf = (id: string): number | undefined =>
    overrides.findLast((override) => override.id === id)?.value ??
    farm.money.prices[id]?.value ??
    pricesFor(run.tables, { ...farm.money, country: farm.place.country }).get(id)?.central;
  const unpriced: string[] = [];
  const known = farm.materials.map((item) => {
    const of = (field: string) => row(`material${field}.${item.material}`);
    const moistureFraction = item.moistureFraction ?? of('MoistureFraction');
    const cash = item.pricePerTonne ?? (item.own ? 0 : priceOf(`materialPricePerTonne.${item.material}`));
    if (cash === undefined) unpriced.push(item.material);
    const hours = item.machineHoursPerTonne ?? (item.own ? of('HoursPerTonne') : 0);
    return {
      material: item.material,
      hoursPerTonne: hours,
      stockKg: item.tonnes * 1000,
      moistureFraction,
      carbonFraction: of('CarbonFraction'),
      nitrogenFraction: of('NitrogenFraction'),
      availableCarbonFraction: of('AvailableCarbonFraction'),
      immobilisationKgPerKg: of('ImmobilisationKgPerKg'),
      absorbencyKgPerKg: absorbencyAtMoisture(
        of('AbsorbencyKgPerKg'),
        row('absorbencyTestMoistureFraction'),
        moistureFraction,
      ),
      own: item.own,
      costPerTonne: (cash ?? Number.NaN) + hours * farm.money.labourPerHour,
    } satisfies MixMaterial & { immobilisationKgPerKg: number; hoursPerTonne: number };
  });

  const whole = Math.floor(days / 7);
  const weeks = Array.from({ length: whole }, () => weekly(values, days, 7, row));
  if (days > whole * 7) weeks.push(weekly(values, days, days - whole * 7, row));
  const materials = known.filter(({ costPerTonne }) => Number.isFinite(costPerTonne));
  return {
    materials,
    hoursPerTonne: materials.map(({ hoursPerTonne }) => hoursPerTonne),
    asWritten: asWritten(scenario, materials, (1000 * (values.beddingTonnes ?? 0)) / days),
    chipMoistureMost: row('chipMoistureFraction'),
    weeks,
    limits: {
      moistureMost: row('mixMoistureMost'),
      dryMatterLossFraction: (values.bedDryMatterLostKg ?? 0) / values.packDryMatterInKg,
      fieldFraction: row('absorbencyFieldFraction'),
      carbonNitrogenLeast: row('mixCarbonNitrogenLeast'),
      availableCarbonNitrogenLeast: row('mixAvailableCarbonNitrogenLeast'),
      depth: {
        mostM: scenario.shed.pushWallM - row('wallFreeboardM'),
        dryKgPerM: row('packDryDensityKgPerM3') * (values.bedM2 ?? 0),
      },
      handledKgPerDay: null,
      ...limits,
    },
    binds: bindingOf(known, {
      yieldFraction: row('microbeYieldFraction'),
      carbonNitrogen: row('microbeCarbonNitrogen'),
    }),
    unpriced,
  };
}

/** The scenario's own mix; a material of it that is listed twice is taken from the first. Null where one has no price. */
function asWritten(
  { bed }: Scenario,
  materials: readonly MixMaterial[],
  kgPerDay: number,
): readonly number[] | null {
  const out = materials.map(() => 0);
  for (const { material, share } of bed.mix) {
    const at = materials.findIndex((each) => each.material === material);
    if (at < 0 && share > 0) return null;
    if (at >= 0) out[at] += share * kgPerDay;
  }
  return out;
}

/** What a question lacks a number for, in the tables' names; an empty list means it can be asked. */
export function missingIn({ materials, weeks, limits }: MixQuestion): string[] {
  const gaps = (of: object, where: string) =>
    Object.entries(of).flatMap(([name, value]) =>
      typeof value === 'number' && !Number.isFinite(value) ? [`${name}${where}`] : [],
    );
  return [
    ...materials.flatMap((material) => gaps(material, ` of ${material.material}`)),
    ...gaps(limits, ''),
    ...gaps(limits.depth ?? {}, ' of the bed'),
    ...new Set(weeks.flatMap((week) => gaps(week, ' of a week'))),
  ];
}

/**
 * `inWeek` even days of the winter: excreta and wasted feed on the bed, without the scenario's own bedding. Rotting and
 * drying are those of the scenario's bed as it is bedded now.
 */
function weekly(values: Values, winterDays: number, inWeek: number, row: (id: string) => number): MixWeek {
  const part = (name: ResultName, less: ResultName) =>
    (((values[name] ?? 0) - (values[less] ?? 0)) / winterDays) * inWeek;
  const waterKg = part('packWaterInKg', 'waterMaterialKg');
  const dryMatterKg = part('packDryMatterInKg', 'dryMatterMaterialKg');
  const carbonKg = part('packCarbonInKg', 'carbonMaterialKg');
  return {
    days: inWeek,
    waterKg,
    dryMatterKg,
    carbonKg,
    availableCarbonKg: carbonKg * row('excretaAvailableCarbonFraction'),
    nitrogenKg: part('packNitrogenInKg', 'nitrogenMaterialKg'),
    evaporatedKg: (((values.packWaterInKg ?? 0) - (values.packWaterKg ?? 0)) / winterDays) * inWeek,
    liquidKg: (waterKg + dryMatterKg) * row('urineShareFraction'),
  };
}

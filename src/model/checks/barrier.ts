/** When the feed barrier and its trough must be lifted so that a growing bed does not swallow them. */
import type { Scenario } from '../../notebook/schema.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import { type BedSeries, weekStart } from './bedSeries.ts';

export interface BarrierRaise {
  /** Week of the winter, from 1, before whose end it must be done. */
  readonly week: number;
  /** ISO day on which that week begins. */
  readonly day: string;
  /** This lift, m. */
  readonly byM: number;
  /** All lifts up to and with this one, m. */
  readonly totalM: number;
}

export interface BarrierRows {
  readonly throat: Coefficient;
  readonly step: Coefficient;
}

/**
 * Level animals stand on at the barrier, week by week, m above the floor: the stance where it is scraped, the
 * bed itself where there is none.
 */
export function feetLevels(scenario: Scenario, bed: BedSeries): readonly number[] {
  return scenario.shed.stanceDepthM > 0 ? bed.depthM.map(() => 0) : bed.depthM;
}

/** Level animals stand on when the winter begins; the barrier's height is given above it. */
export function feetStart(scenario: Scenario): number {
  return scenario.shed.stanceDepthM > 0 ? 0 : scenario.bed.startDepthM;
}

/**
 * The lifts of a winter: barrier and trough together, a step at a time (several where a week outgrows one), when
 * the sill would sink below its lowest useful height. Empty where animals eat from a scraped stance.
 */
export function barrierRaises(scenario: Scenario, bed: BedSeries, rows: BarrierRows): BarrierRaise[] {
  const feet = feetLevels(scenario, bed);
  const sill = feetStart(scenario) + scenario.shed.barrierM;
  const raises: BarrierRaise[] = [];
  let totalM = 0;
  for (let week = 1; week <= feet.length; week++) {
    const short = rows.throat.low - (sill + totalM - feet[week - 1]);
    if (short <= 1e-9) continue;
    const byM = Math.ceil(short / rows.step.central - 1e-9) * rows.step.central;
    totalM += byM;
    raises.push({ week, day: weekStart(scenario, week), byM, totalM });
  }
  return raises;
}

/** How far the barrier stands above its place in the autumn, at the end of week `week` (from 1), m. */
export function barrierLiftAt(raises: readonly BarrierRaise[], week: number): number {
  return raises.filter((raise) => raise.week <= week).at(-1)?.totalM ?? 0;
}

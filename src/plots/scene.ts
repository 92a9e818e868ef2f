/** The numbers of the shed in one week of the winter, from which its section and plan are drawn. */

import {
  type BarrierRaise,
  barrierLiftAt,
  barrierRaises,
  feetLevels,
  feetStart,
} from '../model/checks/barrier.ts';
import { bedSeries, weekStart } from '../model/checks/bedSeries.ts';
import type { CheckInput } from '../model/checks/check.ts';
import { contextOf, lowestRoofM } from '../model/checks/context.ts';
import { animalReachM, machineNeedM, type Reach } from '../model/checks/reach.ts';
import { eaveEdgeM, type RoofShape, roofShape } from '../model/checks/shape.ts';
import { postRows } from '../model/works/geometry.ts';
import {
  litStrip,
  type Strip,
  type SunPosition,
  solarNoonMs,
  sunAt,
  verticalShadowAngleDeg,
} from '../model/works/sun.ts';
import type { Scenario } from '../notebook/schema.ts';
import { dayAfter } from '../units/days.ts';

export interface Scene {
  readonly shed: Scenario['shed'];
  /** From 1. */
  readonly week: number;
  readonly weeks: number;
  /** ISO day in the middle of the week. */
  readonly day: string;
  /** Top of the bed above the floor at the end of the week, and its range, m. */
  readonly bedM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly startM: number;
  /** What the animals stand on at the barrier, m above the floor. */
  readonly feetM: number;
  readonly liftM: number;
  readonly raises: readonly BarrierRaise[];
  /** Sill of the barrier and floor of the trough above the shed's floor: in the autumn and now, m. */
  readonly sillStartM: number;
  readonly sillM: number;
  readonly troughM: number;
  readonly roof: RoofShape;
  /** Where posts stand from the barrier inwards, m; below 0 beyond a roofed feed road. */
  readonly rows: readonly number[];
  /** Where the roof ends in front of the barrier, m: its overhang, and a feed road under it. */
  readonly frontM: number;
  readonly edgeM: number;
  readonly lowestM: number;
  /** Between bed and lowest roof member, m. */
  readonly freeM: number;
  readonly withersM: number;
  readonly standingM: number;
  readonly bodyM: number;
  readonly hornTipM: number | null;
  readonly animal: Reach;
  readonly machine: Reach;
  readonly sun: SunPosition;
  readonly shadowDeg: number | null;
  readonly lit: Strip | null;
}

/**
 * The scene at the end of week `week` (from 1, held inside the winter), or a sentence that says why there is
 * nothing to draw. Throws MissingRow where the tables lack a row.
 */
export function sceneAt(input: CheckInput, week: number): Scene | string {
  const c = contextOf(input);
  const bed = bedSeries(input);
  if (!c.bedded || !bed) return 'This scenario has no bed to draw.';
  if (!c.roofed) return 'The bed lies open: there is no shed to cut across.';
  const length = c.largest('standingLengthM');
  const withers = c.largest('withersHeightM');
  const animal = animalReachM(c);
  if (!length || !withers || !animal) return 'There are no animals in the shed.';
  const { shed, scenario } = c;
  if (shed.depthM < length.size)
    return `The shed (${shed.depthM} m deep) is shallower than an animal (${length.size} m): nothing to draw.`;
  if (shed.stanceDepthM >= shed.depthM)
    return `The feed stance (${shed.stanceDepthM} m) leaves no depth for a bed.`;
  if (shed.eaveM < withers.size)
    return `The eave (${shed.eaveM} m) is lower than the withers (${withers.size} m): nothing to draw.`;

  const at = Math.max(0, Math.min(bed.weeks - 1, Math.round(week) - 1));
  const feet = feetLevels(scenario, bed);
  const raises =
    scenario.feeder === 'barrier'
      ? barrierRaises(scenario, bed, { throat: c.row('barrierThroatM'), step: c.row('barrierRaiseStepM') })
      : [];
  const liftM = barrierLiftAt(raises, at + 1);
  const sillStartM = feetStart(scenario) + shed.barrierM;
  const day = dayAfter(weekStart(scenario, at + 1), 3);
  const { latitudeDeg, longitudeDeg, horizonDeg } = scenario.farm.place;
  const sun = sunAt(solarNoonMs(day, latitudeDeg, longitudeDeg), latitudeDeg, longitudeDeg);
  const shadowDeg =
    sun.altitudeDeg > horizonDeg ? verticalShadowAngleDeg(sun, shed.openSideAzimuthDeg) : null;
  const bedM = bed.depthM[at];
  const { frame, roadM } = c.built();
  const frontM = shed.overhangM + roadM;
  const edgeM = eaveEdgeM(shed, roadM);
  const horned = c.largest('hornReachM', (group) => group.hornedShare > 0);
  return {
    shed,
    week: at + 1,
    weeks: bed.weeks,
    day,
    bedM,
    lowM: bed.lowM[at],
    highM: bed.highM[at],
    startM: Math.min(bed.startM, bedM),
    feetM: feet[at],
    liftM,
    raises,
    sillStartM,
    sillM: sillStartM + liftM,
    troughM: feetStart(scenario) + c.row('troughFloorM').central + liftM,
    roof: roofShape(shed),
    rows: postRows(shed.depthM, frame.rows, roadM),
    frontM,
    edgeM,
    lowestM: lowestRoofM(shed),
    freeM: lowestRoofM(shed) - bedM,
    withersM: withers.size,
    standingM: length.size,
    bodyM: c.largest('bodyWidthM')?.size ?? 0,
    hornTipM: horned?.size ?? null,
    animal,
    machine: machineNeedM(c),
    sun,
    shadowDeg,
    lit: litStrip(
      {
        eaveM: edgeM,
        overhangM: frontM,
        bedM,
        wallM: 0,
        depthM: shed.depthM,
        bedFromM: shed.stanceDepthM,
      },
      shadowDeg,
    ),
  };
}

/** The numbers of the shed in one week of the winter, from which its section and plan are drawn. */

import {
  type BarrierRaise,
  barrierLiftAt,
  barrierRaises,
  feetLevels,
  feetStart,
} from '../model/checks/barrier.ts';
import { type BedSeries, bedSeries, weekStart } from '../model/checks/bedSeries.ts';
import type { CheckInput } from '../model/checks/check.ts';
import { type Context, contextOf, lowestRoofM } from '../model/checks/context.ts';
import { snowOnRoofKnPerM2, windAtRidgeKnPerM2 } from '../model/checks/loads.ts';
import { animalReachM, machineNeedM, type Reach } from '../model/checks/reach.ts';
import { alongSlope, type ShedFloor } from '../model/works/geometry.ts';
import { eaveEdgeM, type RoofShape, roofShape } from '../model/works/roof.ts';
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

/** Slats where the cut goes through them, and what lies under them; metres. */
export interface SlatCut {
  readonly fromM: number;
  readonly toM: number;
  /** Depth of the tank, or of the channel where slurry goes to an outside store. */
  readonly tankM: number;
  readonly channel: boolean;
  /** How high the slurry of the winter would stand; null in a channel or where it is not known. */
  readonly neededM: number | null;
  readonly freeboardM: number;
}

export interface Scene {
  readonly shed: Scenario['shed'];
  readonly bedded: boolean;
  readonly slats: SlatCut | null;
  /** Solid floor from the barrier to bed or slats, m. */
  readonly solidM: number;
  /** Height of the solid walls, m. */
  readonly wallM: number;
  /** Where bed or slats begin, and with them the solid walls of the ends, m. */
  readonly rowFromM: number;
  /** Width of the feed road under the roof, m; 0 where it lies open. */
  readonly roadM: number;
  /** Where purlins lie, m from the barrier. */
  readonly purlins: readonly number[];
  /** For the engineer: snow on the roof and the peak of the wind, kN/m². */
  readonly snowKnPerM2: number;
  readonly windKnPerM2: number;
  /** From 1. */
  readonly week: number;
  readonly weeks: number;
  /** ISO day in the middle of the week. */
  readonly day: string;
  /** Top of the bed above the floor at the end of the week, and its range, m. */
  readonly bedM: number;
  readonly lowM: number;
  readonly highM: number;
  /** The starting layer as it stands, and as it was laid, m. */
  readonly startM: number;
  readonly laidM: number;
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
  const bed = c.bedded ? bedSeries(input) : null;
  const { floor, frame, frameShape, roadM, rows } = c.built();
  const cut = slatCut(c, floor);
  if (!bed && !cut) return 'This scenario has no bed and no slats to draw.';
  if (!c.roofed) return 'The bed lies open: there is no shed to cut across.';
  const length = c.largest('standingLengthM');
  const withers = c.largest('withersHeightM');
  const animal = animalReachM(c);
  if (!length || !withers || !animal) return 'There are no animals in the shed.';
  const { shed, scenario } = c;
  const fault = notDrawn(shed, length.size, withers.size, bed !== null);
  if (fault !== undefined) return fault;

  const level = levelAt(c, bed, week);
  const { latitudeDeg, longitudeDeg, horizonDeg } = scenario.farm.place;
  const sun = sunAt(solarNoonMs(level.day, latitudeDeg, longitudeDeg), latitudeDeg, longitudeDeg);
  const shadowDeg =
    sun.altitudeDeg > horizonDeg ? verticalShadowAngleDeg(sun, shed.openSideAzimuthDeg) : null;
  const frontM = shed.overhangM + roadM;
  const edgeM = eaveEdgeM(shed, roadM);
  const horned = c.largest('hornReachM', (group) => group.hornedShare > 0);
  const solidM = floor.solidDepthM;
  return {
    shed,
    bedded: bed !== null,
    slats: cut,
    solidM,
    wallM: bed ? shed.pushWallM : c.row('penWallHeightM').central,
    rowFromM: bed || !cut ? solidM : cut.fromM,
    roadM,
    purlins: alongSlope(frameShape, frame.purlins),
    snowKnPerM2: snowOnRoofKnPerM2(c),
    windKnPerM2: windAtRidgeKnPerM2(c),
    ...level,
    roof: roofShape(shed),
    rows,
    frontM,
    edgeM,
    lowestM: lowestRoofM(shed),
    freeM: lowestRoofM(shed) - level.bedM,
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
        bedM: level.bedM,
        wallM: 0,
        depthM: shed.depthM,
        bedFromM: solidM,
      },
      shadowDeg,
    ),
  };
}

/** Why a shed of these measures is not drawn. */
function notDrawn(
  shed: Scenario['shed'],
  lengthM: number,
  withersM: number,
  bedded: boolean,
): string | undefined {
  if (shed.depthM < lengthM)
    return `The shed (${shed.depthM} m deep) is shallower than an animal (${lengthM} m): nothing to draw.`;
  if (bedded && shed.stanceDepthM >= shed.depthM)
    return `The feed stance (${shed.stanceDepthM} m) leaves no depth for a bed.`;
  if (shed.eaveM < withersM)
    return `The eave (${shed.eaveM} m) is lower than the withers (${withersM} m): nothing to draw.`;
  return undefined;
}

/** The slats as they are cut: the cut goes through the near end of the shed, where slats begin. */
function slatCut(c: Context, { slatsLengthM, slatsDepthM, slatsFromM }: ShedFloor): SlatCut | null {
  const areaM2 = slatsLengthM * slatsDepthM;
  if (!(areaM2 > 0)) return null;
  const { slats } = c.scenario;
  const channel = slats.store !== 'underSlats';
  const needed = c.value('storeNeededM3');
  return {
    fromM: slatsFromM,
    toM: slatsFromM + slatsDepthM,
    tankM: channel ? c.row('channelDepthM').central : slats.tankDepthM,
    channel,
    neededM: channel || needed === null ? null : needed / areaM2,
    freeboardM: c.row('irelandCoveredFreeboardM').central,
  };
}

type Level = Pick<Scene, 'week' | 'weeks' | 'day' | 'bedM' | 'lowM' | 'highM' | 'startM' | 'laidM' | 'feetM' | 'liftM' | 'raises' | 'sillStartM' | 'sillM' | 'troughM'>; // biome-ignore format: one list

/** What rises with the bed; without one everything stays on the floor. */
function levelAt(c: Context, bed: BedSeries | null, week: number): Level {
  const { scenario, shed } = c;
  const { start, end } = scenario.farm.winter;
  const weeks = bed?.weeks ?? Math.max(1, Math.ceil((Date.parse(end) - Date.parse(start)) / 604_800_000));
  const at = Math.max(0, Math.min(weeks - 1, Math.round(week) - 1));
  const raises =
    bed && scenario.feeder === 'barrier'
      ? barrierRaises(scenario, bed, { throat: c.row('barrierThroatM'), step: c.row('barrierRaiseStepM') })
      : [];
  const liftM = barrierLiftAt(raises, at + 1);
  const feetM = bed ? feetStart(scenario) : 0;
  const sillStartM = feetM + shed.barrierM;
  return {
    week: at + 1,
    weeks,
    day: dayAfter(weekStart(scenario, at + 1), 3),
    bedM: bed?.depthM[at] ?? 0,
    lowM: bed?.lowM[at] ?? 0,
    highM: bed?.highM[at] ?? 0,
    startM: bed ? Math.min(bed.startM, bed.depthM[at]) : 0,
    laidM: bed?.startM ?? 0,
    feetM: bed ? feetLevels(scenario, bed)[at] : 0,
    liftM,
    raises,
    sillStartM,
    sillM: sillStartM + liftM,
    troughM: feetM + c.row('troughFloorM').central + liftM,
  };
}

/** The cross-section of a shed's roof: two slopes of one pitch that meet where the eaves' heights allow. */
import type { Scenario } from '../../notebook/schema.ts';

export interface RoofShape {
  /** Ridge from the open side, m. */
  readonly ridgeXM: number;
  readonly ridgeM: number;
  readonly frontM: number;
  readonly rearM: number;
  /** Length of the longer rafter between wall lines, m. */
  readonly rafterM: number;
}

/**
 * Underside of the roof over the two wall lines and the ridge. Without a rear eave both sides are alike; a rear
 * eave too low or too high for the pitch gives one slope from wall to wall.
 */
export function roofShape(shed: Scenario['shed']): RoofShape {
  const { depthM, eaveM } = shed;
  const rearM = shed.rearEaveM ?? eaveM;
  const slope = Math.tan((shed.pitchDeg * Math.PI) / 180);
  const meets = slope > 0 ? depthM / 2 + (rearM - eaveM) / (2 * slope) : rearM > eaveM ? depthM : 0;
  const ridgeXM = Math.min(depthM, Math.max(0, meets));
  const single = ridgeXM === 0 || ridgeXM === depthM;
  const ridgeM = single ? Math.max(eaveM, rearM) : eaveM + ridgeXM * slope;
  const front = Math.hypot(ridgeXM, ridgeM - eaveM);
  const rear = Math.hypot(depthM - ridgeXM, ridgeM - rearM);
  return { ridgeXM, ridgeM, frontM: eaveM, rearM, rafterM: Math.max(front, rear) };
}

/** Height of the roof's underside at `xM` from the open side, m; the slopes run on beyond the walls. */
export function roofAtM(roof: RoofShape, depthM: number, xM: number): number {
  const front = roof.ridgeXM > 0 ? (roof.ridgeM - roof.frontM) / roof.ridgeXM : 0;
  const rear = roof.ridgeXM < depthM ? (roof.rearM - roof.ridgeM) / (depthM - roof.ridgeXM) : 0;
  if (roof.ridgeXM === 0) return roof.frontM + rear * xM;
  if (roof.ridgeXM === depthM) return roof.frontM + front * xM;
  return xM <= roof.ridgeXM ? roof.frontM + front * xM : roof.ridgeM + rear * (xM - roof.ridgeXM);
}

/**
 * Lower edge of the roof at the open side above the floor, m: what the sun has to pass under. The roof ends beyond
 * its overhang and, where the feed road (`roadM` wide) lies under it, beyond that.
 */
export function eaveEdgeM(shed: Scenario['shed'], roadM: number): number {
  return roofAtM(roofShape(shed), shed.depthM, -shed.overhangM - roadM);
}

/** The cross-section of a shed's roof: two slopes of one pitch that meet where the eaves' heights allow. */

/** What a roof is drawn from; metres and degrees. */
export interface RoofMeasures {
  readonly depthM: number;
  readonly eaveM: number;
  /** Not given or not a number where both eaves are alike. */
  readonly rearEaveM?: number | undefined;
  readonly pitchDeg: number;
}

export interface RoofShape {
  /** Ridge from the open side, m. */
  ridgeXM: number;
  ridgeM: number;
  frontM: number;
  rearM: number;
  /** Length of the longer rafter between wall lines, m. */
  rafterM: number;
}

/**
 * Underside of the roof over the two wall lines and the ridge. Without a rear eave both sides are alike; a rear
 * eave too low or too high for the pitch gives one slope from wall to wall. Fills `out`.
 */
export function roofShape(
  { depthM, eaveM, rearEaveM, pitchDeg }: RoofMeasures,
  out: RoofShape = {} as RoofShape,
): RoofShape {
  const rearM = rearEaveM === undefined || Number.isNaN(rearEaveM) ? eaveM : rearEaveM;
  const slope = Math.tan((pitchDeg * Math.PI) / 180);
  const meets = slope > 0 ? depthM / 2 + (rearM - eaveM) / (2 * slope) : rearM > eaveM ? depthM : 0;
  out.ridgeXM = Math.min(depthM, Math.max(0, meets));
  const single = out.ridgeXM === 0 || out.ridgeXM === depthM;
  out.ridgeM = single ? Math.max(eaveM, rearM) : eaveM + out.ridgeXM * slope;
  out.frontM = eaveM;
  out.rearM = rearM;
  const front = Math.hypot(out.ridgeXM, out.ridgeM - eaveM);
  const rear = Math.hypot(depthM - out.ridgeXM, out.ridgeM - rearM);
  out.rafterM = Math.max(front, rear);
  return out;
}

/** Rise of the roof a metre inwards, before and behind the ridge; one slope has the same on both sides. */
export const frontRise = (roof: RoofShape, depthM: number): number =>
  roof.ridgeXM > 0 ? (roof.ridgeM - roof.frontM) / roof.ridgeXM : rearRise(roof, depthM);
export const rearRise = (roof: RoofShape, depthM: number): number =>
  roof.ridgeXM < depthM
    ? (roof.rearM - roof.ridgeM) / (depthM - roof.ridgeXM)
    : (roof.ridgeM - roof.frontM) / roof.ridgeXM;

/** Height of the roof's underside at `xM` from the open side, m; the slopes run on beyond the walls. */
export function roofAtM(roof: RoofShape, depthM: number, xM: number): number {
  return xM <= roof.ridgeXM
    ? roof.ridgeM - (roof.ridgeXM - xM) * frontRise(roof, depthM)
    : roof.ridgeM + rearRise(roof, depthM) * (xM - roof.ridgeXM);
}

/**
 * Lower edge of the roof at the open side above the floor, m: what the sun has to pass under. The roof ends beyond
 * its overhang and, where the feed road (`roadM` wide) lies under it, beyond that.
 */
export function eaveEdgeM(shed: RoofMeasures & { readonly overhangM: number }, roadM: number): number {
  return roofAtM(roofShape(shed), shed.depthM, -shed.overhangM - roadM);
}

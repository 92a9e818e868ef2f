/** What bedding and a loader press against a wall: numbers for the engineer, never a design. */

export interface WallForce {
  /** Pressure at the foot of the wall, kN per m². */
  readonly baseKnPerM2: number;
  /** Push on a metre of wall, kN per m. */
  readonly thrustKnPerM: number;
  /** Bending at the foot of a metre of wall, kNm per m. */
  readonly momentKnmPerM: number;
}

export interface PushedBed {
  readonly heightM: number;
  /** Share of the vertical pressure that acts sideways. */
  readonly earthPressure: number;
  readonly weightKnPerM3: number;
  /** Machine or animals on top, kN per m². */
  readonly surchargeKnPerM2: number;
}

/** Earth pressure with a surcharge: p(z) = K·(γ·z + q), summed over the height (Rankine). */
export function pushWallForce(bed: PushedBed): WallForce {
  const h = Math.max(0, bed.heightM);
  const bulk = bed.earthPressure * bed.weightKnPerM3;
  const top = bed.earthPressure * bed.surchargeKnPerM2;
  return {
    baseKnPerM2: bulk * h + top,
    thrustKnPerM: (bulk * h ** 2) / 2 + top * h,
    momentKnmPerM: (bulk * h ** 3) / 6 + (top * h ** 2) / 2,
  };
}

/** Stored manure as a fluid that weighs `loadKnPerM2PerM` per metre of depth: p = g·h (NRCS standard 313). */
export function storedManureForce(depthM: number, loadKnPerM2PerM: number): WallForce {
  return pushWallForce({
    heightM: depthM,
    earthPressure: 1,
    weightKnPerM3: loadKnPerM2PerM,
    surchargeKnPerM2: 0,
  });
}

/** Sun above the atmosphere and at the ground by day and latitude: FAO-56 (Allen and others 1998), chapter 3. */
const SOLAR_CONSTANT_MJ_PER_M2_MIN = 0.082;
const MINUTES_PER_DAY = 1440;
/** Turns MJ/m²/d into mm of water evaporated a day: 1/2.45, as FAO-56 rounds it. */
export const MM_PER_MJ = 0.408;

export interface SunAngles {
  readonly latitudeRad: number;
  readonly declinationRad: number;
  /** Half of the daylight as an angle: 0 in polar night, π in polar day. */
  readonly sunsetAngleRad: number;
}

/** Declination and sunset hour angle, clamped to 0 in polar night and π in polar day; FAO-56 eq. 24 and 25. */
export function sunAngles(latitudeDeg: number, dayOfYear: number): SunAngles {
  const latitudeRad = (latitudeDeg * Math.PI) / 180;
  const declinationRad = 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
  // Beyond the polar circles the product leaves −1…1: the sun does not set, or does not rise.
  const x = Math.max(-1, Math.min(1, -Math.tan(latitudeRad) * Math.tan(declinationRad)));
  return { latitudeRad, declinationRad, sunsetAngleRad: Math.acos(x) };
}

/** Inverse relative distance of earth and sun; FAO-56 eq. 23. */
export function earthSunFactor(dayOfYear: number): number {
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
}

/** Extraterrestrial radiation Ra, MJ/m²/d, never below 0; FAO-56 eq. 21. South is negative. */
export function extraterrestrialRadiationMj(latitudeDeg: number, dayOfYear: number): number {
  const { latitudeRad, declinationRad: delta, sunsetAngleRad: ws } = sunAngles(latitudeDeg, dayOfYear);
  const angle =
    ws * Math.sin(latitudeRad) * Math.sin(delta) + Math.cos(latitudeRad) * Math.cos(delta) * Math.sin(ws);
  return Math.max(
    0,
    (MINUTES_PER_DAY / Math.PI) * SOLAR_CONSTANT_MJ_PER_M2_MIN * earthSunFactor(dayOfYear) * angle,
  );
}

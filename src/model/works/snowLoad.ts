/** Snow on a roof as a number for the engineer; never a design. */

/**
 * Shape coefficient for snow on a roof slope, no unit (EN 1991-1-3 table 5.2). Where guards or a parapet hold
 * the snow the coefficient does not fall below its flat value.
 */
export function snowShape(pitchDeg: number, held = false): number {
  const flat = 0.8;
  const pitch = Math.abs(pitchDeg);
  if (held || pitch <= 30) return flat;
  return pitch >= 60 ? 0 : (flat * (60 - pitch)) / 30;
}

/**
 * Characteristic snow on the roof, kN per m² of plan: s = μ·Ce·Ct·sk (EN 1991-1-3 equation 5.1).
 * `groundKnPerM2` is the local map's value; exposure 0.8 windswept, 1 normal, 1.2 sheltered.
 */
export function roofSnowKnPerM2(groundKnPerM2: number, pitchDeg: number, exposure = 1, thermal = 1): number {
  return snowShape(pitchDeg) * exposure * thermal * Math.max(0, groundKnPerM2);
}

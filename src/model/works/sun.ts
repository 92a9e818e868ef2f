/**
 * Where the sun stands and how far it reaches under a roof. Positions come from `suncalc` (Meeus' series,
 * refraction included); the geometry of eave, bed and wall is our own. Nothing here fails in polar night.
 */

import { getPosition, getTimes } from 'suncalc';
import { dayOf, midnightMs } from '../../units/days.ts';

export interface SunPosition {
  /** Apparent height over a flat horizon, degrees; negative at night. */
  readonly altitudeDeg: number;
  /** Clockwise from north, degrees. */
  readonly azimuthDeg: number;
}

export interface OpenFront {
  /** Edge of the roof above the floor, m. */
  readonly eaveM: number;
  /** Roof beyond the open line, m. */
  readonly overhangM: number;
  /** Top of the bed above the floor, m. */
  readonly bedM: number;
  /** Solid wall or trough along the open side, above the floor, m. */
  readonly wallM: number;
  /** How far the bed reaches from the open side, m. */
  readonly depthM: number;
  /** Where the bed begins behind the open side, m. */
  readonly bedFromM?: number;
}

/** A strip in metres from the open side. */
export interface Strip {
  readonly fromM: number;
  readonly toM: number;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const radians = (deg: number) => (deg * Math.PI) / 180;
const degrees = (rad: number) => (rad * 180) / Math.PI;

/** The sun at an instant (UTC milliseconds). East longitudes are positive. */
export function sunAt(timeMs: number, latitudeDeg: number, longitudeDeg: number): SunPosition {
  const { altitude, azimuth } = getPosition(new Date(timeMs), latitudeDeg, longitudeDeg);
  return { altitudeDeg: altitude, azimuthDeg: azimuth };
}

/** When the sun stands highest on an ISO day, UTC milliseconds; it may stand below the horizon. */
export function solarNoonMs(isoDay: string, latitudeDeg: number, longitudeDeg: number): number {
  // Clock noon of the place falls inside the right solar day at every longitude.
  const nearNoon = midnightMs(isoDay) + (0.5 - longitudeDeg / 360) * DAY_MS;
  return getTimes(new Date(nearNoon), latitudeDeg, longitudeDeg).solarNoon.getTime();
}

/**
 * Angle of the sun in the plane square to the open side, degrees: what an eave sees. Null when the sun is down
 * or behind the shed.
 */
export function verticalShadowAngleDeg(sun: SunPosition, openSideAzimuthDeg: number): number | null {
  const facing = Math.cos(radians(sun.azimuthDeg - openSideAzimuthDeg));
  if (sun.altitudeDeg <= 0 || facing <= 1e-9) return null;
  return degrees(Math.atan(Math.tan(radians(sun.altitudeDeg)) / facing));
}

/** The part of the bed the sun reaches at that angle; null when none of it is lit. */
export function litStrip(front: OpenFront, shadowAngleDeg: number | null): Strip | null {
  if (shadowAngleDeg === null || front.eaveM <= front.bedM) return null;
  const slope = Math.tan(radians(shadowAngleDeg));
  const inner = (front.eaveM - front.bedM) / slope - front.overhangM;
  const shade = Math.max(0, (front.wallM - front.bedM) / slope);
  const fromM = Math.max(shade, front.bedFromM ?? 0);
  const toM = Math.min(front.depthM, inner);
  return toM > fromM ? { fromM, toM } : null;
}

export interface SunHours {
  /** Open sky above the horizon line. */
  readonly sky: number;
  /** On the open side's half of the sky, where it can shine in. */
  readonly front: number;
}

/**
 * Mean hours a day of possible direct sun in each month of `year`, January first: clear sky, `horizonDeg` of hill
 * or forest all round. Six days a month, every quarter of an hour.
 */
export function sunHoursByMonth(
  year: number,
  latitudeDeg: number,
  longitudeDeg: number,
  openSideAzimuthDeg: number,
  horizonDeg: number,
): SunHours[] {
  const sampleDays = [3, 8, 13, 18, 23, 28];
  const stepHours = 0.25;
  return Array.from({ length: 12 }, (_, month) => {
    let sky = 0;
    let front = 0;
    for (const day of sampleDays) {
      const midnight = midnightMs(dayOf(year, month, day)) - (longitudeDeg / 360) * DAY_MS;
      for (let hour = stepHours / 2; hour < 24; hour += stepHours) {
        const sun = sunAt(midnight + hour * HOUR_MS, latitudeDeg, longitudeDeg);
        if (sun.altitudeDeg <= Math.max(0, horizonDeg)) continue;
        sky += stepHours;
        if (verticalShadowAngleDeg(sun, openSideAzimuthDeg) !== null) front += stepHours;
      }
    }
    return { sky: sky / sampleDays.length, front: front / sampleDays.length };
  });
}

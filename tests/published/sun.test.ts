/**
 * Position of the sun and its strip on the bed. Oracle: another library, a port of NREL's solar position
 * algorithm. Rows marked derived were worked out from NOAA's general solar position calculations or from plain
 * geometry and are regression tests.
 */

import { getSpa } from 'nrel-spa';
import { describe, expect, it } from 'vitest';
import {
  litStrip,
  solarNoonMs,
  sunAt,
  sunHoursByMonth,
  verticalShadowAngleDeg,
} from '../../src/model/works/sun.ts';
import { dayLengthHours } from '../reference/dayLength.ts';
import { figure, sum } from './labels.ts';

/** Refraction at an apparent altitude, degrees (Bennett 1982, pressure 1010 hPa, 10 °C; from memory). */
const refraction = (apparentDeg: number) =>
  1 / Math.tan(((apparentDeg + 7.31 / (apparentDeg + 4.4)) * Math.PI) / 180) / 60;
const trueAltitude = (apparentDeg: number) => apparentDeg - refraction(apparentDeg);

describe(sum('the sun at 60° N, 15° E in 2025'), () => {
  // Source: NOAA general solar position calculations, long form. Basis: derived (worked out, regression).
  const rows: [string, number, number | null][] = [
    ['2025-12-21T11:00Z', 6.56, 180.4],
    ['2025-12-21T09:00Z', 3.13, 153.1],
    ['2025-12-21T13:00Z', 2.92, 207.7],
    ['2025-03-20T11:00Z', 30.02, 177.9],
    ['2025-03-20T08:00Z', 19.98, 129.1],
    ['2025-06-21T11:00Z', 53.44, null],
    ['2025-02-01T11:00Z', 12.99, null],
  ];
  for (const [time, altitude, azimuth] of rows)
    it(`${time}: true altitude ${altitude}°`, () => {
      const sun = sunAt(Date.parse(time), 60, 15);
      expect(Math.abs(trueAltitude(sun.altitudeDeg) - altitude)).toBeLessThanOrEqual(0.05);
      if (azimuth !== null) expect(Math.abs(sun.azimuthDeg - azimuth)).toBeLessThanOrEqual(0.06);
    });
});

describe(figure('against NREL’s solar position algorithm'), () => {
  // Source: Reda and Andreas, Solar position algorithm for solar radiation applications (2004), as ported in the library `nrel-spa`. Basis: published method.
  it('agrees to 0.03° in altitude and 0.05° in azimuth over a year, pole to pole', () => {
    for (const latitude of [-66, -35, 0, 40, 57, 64, 69])
      for (let day = 0; day < 365; day += 13)
        for (const hour of [7, 10, 12, 15]) {
          const time = Date.UTC(2026, 0, 1 + day, hour);
          const own = sunAt(time, latitude, 15);
          const other = getSpa(new Date(time), latitude, 15, 0, { pressure: 0, elevation: 0 });
          const altitude = 90 - other.zenith;
          // Below the horizon refraction means nothing; near the zenith azimuth does.
          if (altitude < 1) continue;
          expect(
            Math.abs(trueAltitude(own.altitudeDeg) - altitude),
            `${latitude} ${new Date(time).toISOString()}`,
          ).toBeLessThanOrEqual(0.03);
          const turn = Math.abs(((own.azimuthDeg - other.azimuth + 540) % 360) - 180);
          expect(turn * Math.cos((altitude * Math.PI) / 180)).toBeLessThanOrEqual(0.05);
        }
  });
});

describe(sum('noon and day length'), () => {
  // Noon altitude is 90° − latitude + declination. Basis: derived.
  it.each([
    ['2025-12-21', 57, 9.56],
    ['2025-03-20', 57, 33.0],
    ['2025-12-21', 65, 1.56],
  ])('%s at %d° N: %d°', (day, latitude, altitude) => {
    const sun = sunAt(solarNoonMs(day, latitude, 15), latitude, 15);
    expect(Math.abs(trueAltitude(sun.altitudeDeg) - altitude)).toBeLessThanOrEqual(0.06);
    expect(Math.abs(sun.azimuthDeg - 180)).toBeLessThanOrEqual(0.05);
  });

  // Source: NOAA, sunrise at a zenith of 90.833°. Basis: derived.
  it.each([
    ['2025-12-21', 57, 6.71],
    ['2025-12-21', 60, 5.87],
    ['2025-12-21', 65, 3.58],
    ['2025-03-20', 57, 12.21],
    ['2025-03-20', 60, 12.23],
    ['2025-03-20', 65, 12.27],
  ])('%s at %d° N lasts %d h', (day, latitude, hours) => {
    expect(Math.abs(dayLengthHours(day, latitude, 15) - hours)).toBeLessThanOrEqual(0.03);
  });

  it('is 0 in polar night and 24 in midnight sun, at any longitude', () => {
    for (const longitude of [-170, 0, 25, 179]) {
      expect(dayLengthHours('2025-12-21', 70, longitude)).toBe(0);
      expect(dayLengthHours('2025-06-21', 70, longitude)).toBe(24);
      expect(sunAt(solarNoonMs('2025-06-21', 45, longitude), 45, longitude).altitudeDeg).toBeGreaterThan(68);
    }
  });
});

describe(sum('sun under an eave'), () => {
  // Eave 3.6 m, bed 0.8 m, overhang 0.6 m. Basis: derived (geometry).
  it.each([
    [6.56, 23.7],
    [9.56, 16.0],
    [30, 4.25],
    [33, 3.71],
    [53.4, 1.48],
  ])('at %d° square to the wall it reaches %d m in', (angle, reach) => {
    const strip = litStrip({ eaveM: 3.6, overhangM: 0.6, bedM: 0.8, wallM: 0, depthM: 100 }, angle);
    expect(Math.abs((strip?.toM ?? 0) - reach)).toBeLessThanOrEqual(0.05);
    expect(strip?.fromM).toBe(0);
  });

  it('at 20° high and 35° off square the eave sees 23.96° and it reaches 5.70 m', () => {
    const angle = verticalShadowAngleDeg({ altitudeDeg: 20, azimuthDeg: 215 }, 180);
    expect(angle).toBeCloseTo(23.96, 2);
    expect(
      litStrip({ eaveM: 3.6, overhangM: 0.6, bedM: 0.8, wallM: 0, depthM: 100 }, angle)?.toM,
    ).toBeCloseTo(5.7, 2);
  });

  it('leaves a dark strip behind a wall, ends at the shed’s depth and can be empty', () => {
    const strip = litStrip({ eaveM: 3.6, overhangM: 0.6, bedM: 0.8, wallM: 1.8, depthM: 6 }, 45);
    expect(strip?.fromM).toBeCloseTo(1, 9);
    expect(strip?.toM).toBeCloseTo(2.2, 9);
    expect(litStrip({ eaveM: 3.6, overhangM: 0.6, bedM: 0.8, wallM: 0, depthM: 6 }, 10)?.toM).toBe(6);
    expect(litStrip({ eaveM: 2, overhangM: 3, bedM: 0.8, wallM: 0, depthM: 6 }, 45)).toBeNull();
    expect(litStrip({ eaveM: 0.7, overhangM: 0, bedM: 0.8, wallM: 0, depthM: 6 }, 45)).toBeNull();
  });

  it('sees no sun from behind or at night', () => {
    expect(verticalShadowAngleDeg({ altitudeDeg: 20, azimuthDeg: 0 }, 180)).toBeNull();
    expect(verticalShadowAngleDeg({ altitudeDeg: 20, azimuthDeg: 270 }, 180)).toBeNull();
    expect(verticalShadowAngleDeg({ altitudeDeg: -1, azimuthDeg: 180 }, 180)).toBeNull();
  });
});

describe(sum('hours of possible sun by month'), () => {
  it('follow the day’s length over a flat horizon and fall with a hill', () => {
    const open = sunHoursByMonth(2025, 57, 15, 180, 0);
    const hill = sunHoursByMonth(2025, 57, 15, 180, 12);
    // Mid-month day length from the same library's rising and setting times; the sampling is a quarter hour.
    for (const month of [0, 2, 5, 11]) {
      const day = `2025-${String(month + 1).padStart(2, '0')}-15`;
      expect(Math.abs(open[month].sky - dayLengthHours(day, 57, 15))).toBeLessThanOrEqual(0.35);
      expect(hill[month].sky).toBeLessThan(open[month].sky);
      expect(open[month].front).toBeLessThanOrEqual(open[month].sky);
    }
    expect(hill[11].sky).toBe(0);
  });

  it('are 0 in polar night and 24 in midnight sun', () => {
    const months = sunHoursByMonth(2025, 75, 15, 180, 0);
    expect(months[11]).toEqual({ sky: 0, front: 0 });
    expect(months[5].sky).toBeCloseTo(24, 9);
    // The sun stands due east where cos(hour angle) = tan 23.4° / tan 75°: 11.1 h on the south side (derived).
    expect(Math.abs(months[5].front - 11.1)).toBeLessThanOrEqual(0.3);
  });
});

/** FAO-56 Penman–Monteith with the radiation it needs: the standard that the model's Hargreaves is held against. */
import { MM_PER_MJ, sunAngles } from '../../src/model/weather/radiation.ts';

/** Daylight hours N, 0…24; FAO-56 eq. 34. */
export function daylightHours(latitudeDeg: number, dayOfYear: number): number {
  return (24 / Math.PI) * sunAngles(latitudeDeg, dayOfYear).sunsetAngleRad;
}

/** Solar radiation at the ground from hours of sunshine, MJ/m²/d; FAO-56 eq. 35. 0 in polar night. */
export function radiationFromSunshineMj(
  sunshineHours: number,
  daylight: number,
  extraterrestrialMj: number,
): number {
  return daylight > 0 ? (0.25 + 0.5 * (sunshineHours / daylight)) * extraterrestrialMj : 0;
}

/** Solar radiation from the day's temperature range, MJ/m²/d; FAO-56 eq. 50. `kRs` 0.16 inland, 0.19 at the coast. */
export function radiationFromTemperatureMj(
  minC: number,
  maxC: number,
  extraterrestrialMj: number,
  kRs: number,
): number {
  return kRs * Math.sqrt(Math.max(0, maxC - minC)) * extraterrestrialMj;
}

/** Clear-sky radiation, MJ/m²/d; FAO-56 eq. 37. */
export function clearSkyRadiationMj(elevationM: number, extraterrestrialMj: number): number {
  return (0.75 + 2e-5 * elevationM) * extraterrestrialMj;
}

/** Saturation vapour pressure, kPa; FAO-56 eq. 11. */
export function saturationVapourPressureKpa(temperatureC: number): number {
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));
}

/** Actual vapour pressure from the day's extremes of relative humidity (percent), kPa; FAO-56 eq. 17. */
export function vapourPressureFromHumidityKpa(
  minC: number,
  maxC: number,
  humidityMaxPercent: number,
  humidityMinPercent: number,
): number {
  return (
    (saturationVapourPressureKpa(minC) * humidityMaxPercent +
      saturationVapourPressureKpa(maxC) * humidityMinPercent) /
    200
  );
}

/** Air pressure by elevation, kPa; FAO-56 eq. 7. */
export function airPressureKpa(elevationM: number): number {
  return 101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;
}

/** Wind at 2 m from wind measured `heightM` above grass, same unit; FAO-56 eq. 47. */
export function windAt2M(windSpeed: number, heightM: number): number {
  return (windSpeed * 4.87) / Math.log(67.8 * heightM - 5.42);
}

export interface PenmanMonteithDay {
  readonly minC: number;
  readonly maxC: number;
  readonly vapourPressureKpa: number;
  readonly windMPerS: number;
  readonly elevationM: number;
  /** At the ground, MJ/m²/d. */
  readonly solarMj: number;
  readonly extraterrestrialMj: number;
  /** Into the soil, MJ/m²/d; 0 for a day. */
  readonly soilHeatMj?: number;
  /** Mean temperature where it is not the half-sum of the extremes. */
  readonly meanC?: number;
}

/** Net shortwave radiation of grass, albedo 0.23, MJ/m²/d; FAO-56 eq. 38. */
export function netShortwaveMj(solarMj: number): number {
  return (1 - 0.23) * solarMj;
}

/** Net longwave radiation lost, MJ/m²/d; FAO-56 eq. 39. 0 where there is no clear-sky radiation to compare with. */
export function netLongwaveMj({
  minC,
  maxC,
  vapourPressureKpa,
  elevationM,
  solarMj,
  extraterrestrialMj,
}: PenmanMonteithDay): number {
  const clear = clearSkyRadiationMj(elevationM, extraterrestrialMj);
  if (!(clear > 0)) return 0;
  const kelvin = ((maxC + 273.16) ** 4 + (minC + 273.16) ** 4) / 2;
  return (
    4.903e-9 *
    kelvin *
    (0.34 - 0.14 * Math.sqrt(vapourPressureKpa)) *
    (1.35 * Math.min(1, solarMj / clear) - 0.35)
  );
}

/** Reference evapotranspiration ET0, mm/d, by Penman–Monteith; FAO-56 eq. 6. */
export function penmanMonteithMm(day: PenmanMonteithDay): number {
  const { minC, maxC, vapourPressureKpa, windMPerS, elevationM, solarMj, soilHeatMj = 0 } = day;
  const meanC = day.meanC ?? (minC + maxC) / 2;
  const slope = (4098 * saturationVapourPressureKpa(meanC)) / (meanC + 237.3) ** 2;
  const gamma = 0.665e-3 * airPressureKpa(elevationM);
  const deficit =
    (saturationVapourPressureKpa(minC) + saturationVapourPressureKpa(maxC)) / 2 - vapourPressureKpa;
  const netMj = netShortwaveMj(solarMj) - netLongwaveMj(day);
  return (
    (MM_PER_MJ * slope * (netMj - soilHeatMj) + gamma * (900 / (meanC + 273)) * windMPerS * deficit) /
    (slope + gamma * (1 + 0.34 * windMPerS))
  );
}

/** Heat given off by cattle (CIGR, Climatization of animal houses, 4th report, 2002). Watt per animal. */

export interface GrowingAnimal {
  readonly weightKg: number;
  readonly gainKgPerDay: number;
  /** Metabolisable energy of the feed, MJ per kg dry matter. */
  readonly feedMjPerKg: number;
}

/** Total heat of a cow at 20 °C, W. `pregnantDays` is the day of pregnancy, 0 when open. */
export function cowHeatW(weightKg: number, milkKgPerDay: number, pregnantDays: number): number {
  return 5.6 * weightKg ** 0.75 + 22 * milkKgPerDay + 1.6e-5 * pregnantDays ** 3;
}

/** Total heat of a growing animal at 20 °C, W. Gains are held below the pole of the published equation. */
export function growingHeatW({ weightKg, gainKgPerDay, feedMjPerKg }: GrowingAnimal): number {
  const gain = Math.max(0, gainKgPerDay);
  const growth = (gain * (23 / feedMjPerKg - 1) * (57.27 + 0.302 * weightKg)) / (1 - 0.171 * gain);
  return 7.64 * weightKg ** 0.69 + growth;
}

/** Total heat at `temperatureC` of an animal that gives `heatW` at 20 °C. */
export function heatAtW(heatW: number, temperatureC: number): number {
  return (heatW * (1000 + 4 * (20 - temperatureC))) / 1000;
}

/** Part of `heatW` (at 20 °C) that warms the air of the house at `temperatureC`, W; the rest leaves as vapour. */
export function sensibleHeatW(heatW: number, temperatureC: number): number {
  const perUnit = 0.71 * heatAtW(1000, temperatureC) - 0.408e-3 * temperatureC ** 4;
  return (heatW * Math.max(0, perUnit)) / 1000;
}

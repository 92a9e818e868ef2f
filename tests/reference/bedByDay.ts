/**
 * The bed by days and by the plainest means, to hold the walk by weeks against: every curve worked out, the surface
 * sought by halving, fifty damped rounds a day, matter and heat stepped forward a day at a time.
 */
export interface DailyBed {
  readonly days: number;
  readonly areaM2: number;
  readonly airC: (day: number) => number;
  /** A day's matter, kg. */
  readonly degradableKg: number;
  readonly resistantKg: number;
  readonly waterKg: number;
  readonly tanKg: number;
  readonly rows: Readonly<Record<string, number>>;
}

const decay = (t: number) => Math.max(0, 1.066 ** (t - 20) - 1.21 ** (t - 60));
const vapour = (t: number) => 0.6108 * Math.exp((17.27 * t) / (t + 237.3));

export function bedByDay({
  days,
  areaM2,
  airC,
  degradableKg,
  resistantKg,
  waterKg,
  tanKg,
  rows: r,
}: DailyBed) {
  const diffusion = (1.73 * r.bedTopAirFraction ** (10 / 3)) / r.bedTopPoreFraction ** 2;
  const perKelvin = 0.0864 * (5.7 + 3.8 * r.bedWindMPerS);
  const wind = 2.6 * (1 + 0.54 * r.bedWindMPerS) * r.bedWetRestFraction;
  const lambda = 0.0864 * r.bedConductivityWPerMC;
  let [degradable, resistant, water, lost, evaporated, ammonia] = [0, 0, 0, 0, 0, 0];
  let top = airC(0) + r.bedAirWarmerC;
  let core = top;
  let warmest = Number.NEGATIVE_INFINITY;
  for (let day = 0; day < days; day++) {
    const [rots, dry] = [
      degradable + degradableKg / 2,
      degradable + resistant + (degradableKg + resistantKg) / 2,
    ];
    const wet = water + waterKg / 2;
    const depth = dry / r.packDryDensityKgPerM3 / areaM2;
    const wetness = 1 / (Math.exp(7.0622 - (17.684 * wet) / (wet + dry)) + 1);
    const k20 = r.packDecayAt20CPerDay * wetness;
    const solids = (r.packDryDensityKgPerM3 * rots) / dry;
    const air = airC(day) + r.bedAirWarmerC;
    let [surface, z, nextTop, nextCore] = [air, depth, top, core];
    const slows = (thick: number) =>
      1 / (1 + (4 * r.bedHeatCapacityMjPerM3C * thick * thick) / (Math.PI ** 2 * lambda));
    for (let round = 0; round < 50; round++) {
      const asks = r.bedOxygenKgPerKg * k20 * decay(nextTop) * solids;
      z = Math.min(depth, Math.sqrt((2 * diffusion * 0.285) / asks));
      const inTop = r.bedHeatMjPerKgOxygen * asks * z;
      const inCore =
        r.bedHeatMjPerKgOxygen * r.bedAirlessHeatFraction * r.bedAirlessRateFraction *
        r.bedOxygenKgPerKg * k20 * decay(nextCore) * solids * (depth - z); // biome-ignore format: one product
      let [low, high] = [-60, 80];
      for (let halving = 0; halving < 60; halving++) {
        surface = (low + high) / 2;
        const dries = wind * Math.max(0, vapour(surface) - r.bedHumidityFraction * vapour(air));
        if (inTop + inCore + r.bedStockHeatMjPerM2Day > perKelvin * (surface - air) + 2.45 * dries)
          low = surface;
        else high = surface;
      }
      const toTop = surface + ((0.75 * inTop) / 2 + inCore / 2) * (z / lambda);
      const toCore = surface + (inCore * z + (inTop * z) / 2 + (inCore * (depth - z)) / 2) / lambda;
      nextTop += 0.5 * (top + slows(z) * (Math.min(r.bedHottestC, toTop) - top) - nextTop);
      nextCore += 0.5 * (core + slows(depth) * (Math.min(r.bedHottestC, toCore) - core) - nextCore);
    }
    [top, core] = [nextTop, nextCore];
    warmest = Math.max(warmest, core);
    const byWarmth =
      k20 * ((z / depth) * decay(top) + (1 - z / depth) * r.bedAirlessRateFraction * decay(core));
    const k = (1 - r.packDecayEvenForm) * byWarmth + r.packDecayEvenForm * r.packDecayEvenPerDay * wetness;
    const rotted = Math.min(rots, k * rots);
    degradable += degradableKg - rotted;
    resistant += resistantKg;
    lost += rotted;
    const dries = areaM2 * wind * Math.max(0, vapour(surface) - r.bedHumidityFraction * vapour(air));
    water += waterKg + r.rottingWaterKgPerKg * rotted;
    const left = ((degradable + resistant) * r.bedDriestMoistureFraction) / (1 - r.bedDriestMoistureFraction);
    const taken = Math.min(dries, Math.max(0, water - left));
    water -= taken;
    evaporated += taken;
    ammonia +=
      tanKg *
      Math.min(
        1,
        r.bedAmmoniaTanFraction * Math.exp(r.bedAmmoniaSlopePerC * (surface - r.bedAmmoniaReferenceC)),
      );
  }
  return { lost, evaporated, ammonia, warmest, water, dry: degradable + resistant };
}

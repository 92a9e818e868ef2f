/** Weather, water and field nitrogen against numbers that stand elsewhere. Source and basis stand beside each row. */
import { describe, expect, it } from 'vitest';
import {
  burnsFraction,
  burnsHalfDepthCm,
  scotterFraction,
  scotterMixedFraction,
} from '../../src/model/field/burns.ts';
import { layerDepthMm, soilMassKgPerHa } from '../../src/model/field/humus.ts';
import { treadingLossFraction } from '../../src/model/field/treading.ts';
import { washedFraction } from '../../src/model/field/washOff.ts';
import { DAYS } from '../../src/model/series.ts';
import { temperatureFactor } from '../../src/model/slurry/ammonia.ts';
import { retentionMm, runoffMm } from '../../src/model/weather/curveNumber.ts';
import { hargreavesTermMm } from '../../src/model/weather/evapotranspiration.ts';
import {
  earthSunFactor,
  extraterrestrialRadiationMj,
  MM_PER_MJ,
  sunAngles,
} from '../../src/model/weather/radiation.ts';
import { central, runRows } from '../model/fieldRig.ts';
import {
  airPressureKpa, clearSkyRadiationMj, daylightHours, netLongwaveMj, netShortwaveMj, penmanMonteithMm, radiationFromSunshineMj,
  radiationFromTemperatureMj, saturationVapourPressureKpa, vapourPressureFromHumidityKpa, windAt2M,
} from '../reference/penmanMonteith.ts'; // biome-ignore format: one list
import { figure, recalled, sum, tableRow } from './labels.ts';

interface Row {
  readonly what: string;
  readonly got: () => number;
  readonly expected: number;
  readonly within: number;
  readonly source: string;
  readonly basis: 'published' | 'from memory' | 'derived' | 'common practice';
}

const row = (
  what: string,
  got: () => number,
  expected: number,
  within: number,
  source: string,
  basis: Row['basis'],
): Row => ({ what, got, expected, within, source, basis });
const labelOf = (basis: Row['basis']) =>
  basis === 'derived' ? sum : basis === 'published' ? figure : recalled;
/** What our own reference computes proves nothing of the product, whoever printed the figure. */
const ofReference = (...given: Parameters<typeof row>): Row => ({
  ...row(...given),
  source: `${given[4]}; our reference in tests/reference`,
  basis: 'derived',
});
const check = (rows: readonly Row[]) => {
  for (const { what, got, expected, within, source, basis } of rows)
    it(labelOf(basis)(`${what}: ${expected} ± ${within} (${source}; ${basis})`), () => {
      expect(Math.abs(got() - expected)).toBeLessThanOrEqual(within);
    });
};

const uccleRa = extraterrestrialRadiationMj(50.8, 187);
const uccleRs = radiationFromSunshineMj(9.25, daylightHours(50.8, 187), uccleRa);
const uccle = {
  minC: 12.3, maxC: 21.5, vapourPressureKpa: vapourPressureFromHumidityKpa(12.3, 21.5, 84, 63), windMPerS: windAt2M(10 / 3.6, 10),
  elevationM: 100, solarMj: uccleRs, extraterrestrialMj: uccleRa,
}; // biome-ignore format: one day
const bangkokRa = extraterrestrialRadiationMj(13.73, 105);
const bangkokRs = radiationFromSunshineMj(8.5, daylightHours(13.73, 105), bangkokRa);
const bangkok = {
  minC: 25.6,
  maxC: 34.8,
  vapourPressureKpa: 2.85,
  windMPerS: 2,
  elevationM: 2,
  solarMj: bangkokRs,
  extraterrestrialMj: bangkokRa,
  soilHeatMj: 0.14,
};
const lyonRa = extraterrestrialRadiationMj(45.72, 196);
const lyon = {
  minC: 14.8,
  maxC: 26.6,
  vapourPressureKpa: saturationVapourPressureKpa(14.8),
  windMPerS: 2,
  elevationM: 200,
  solarMj: radiationFromTemperatureMj(14.8, 26.6, lyonRa, 0.16),
  extraterrestrialMj: lyonRa,
};
const rioRa = extraterrestrialRadiationMj(-22.9, 135);

describe('radiation and evapotranspiration', () => {
  // biome-ignore format: one row a line
  check([
    ofReference('daylight, 20° S, 3 September, h', () => daylightHours(-20, 246), 11.6656, 0.001, 'documentation of the NCAR Command Language, daylight_fao56', 'published'),
    row('extraterrestrial radiation, same day, MJ', () => extraterrestrialRadiationMj(-20, 246), 32.194, 0.0006, 'documentation of the NCAR Command Language, radext_fao56, after FAO-56 example 8', 'published'),
    row('the same as water, mm', () => extraterrestrialRadiationMj(-20, 246) * MM_PER_MJ, 13.135, 0.0006, 'documentation of the NCAR Command Language, radext_fao56, after FAO-56 example 8', 'published'),
    row('earth-sun factor, same day', () => earthSunFactor(246), 0.985, 0.0005, 'FAO-56 example 8', 'from memory'),
    row('declination, same day, rad', () => sunAngles(0, 246).declinationRad, 0.12, 0.0005, 'FAO-56 example 8', 'from memory'),
    row('sunset angle, same day, rad', () => sunAngles(-20, 246).sunsetAngleRad, 1.527, 0.0005, 'FAO-56 example 8', 'from memory'),
    row('Ra, Rio de Janeiro in May, MJ', () => rioRa, 25.111, 0.01, 'documentation of the NCAR Command Language, radsol2_fao56, after FAO-56 example 10', 'published'),
    ofReference('Rs from 220/31 h of sun, MJ', () => radiationFromSunshineMj(220 / 31, daylightHours(-22.9, 135), rioRa), 14.456, 0.01, 'documentation of the NCAR Command Language, radsol2_fao56, after FAO-56 example 10', 'published'),
    ofReference('Rs as water, mm', () => radiationFromSunshineMj(220 / 31, daylightHours(-22.9, 135), rioRa) * MM_PER_MJ, 5.898, 0.01, 'documentation of the NCAR Command Language, radsol2_fao56, after FAO-56 example 10', 'published'),
    ofReference('clear sky, MJ', () => clearSkyRadiationMj(0, rioRa), 18.833, 0.01, 'documentation of the NCAR Command Language, radsol2_fao56, after FAO-56 example 10', 'published'),
    ofReference('daylight, Rio de Janeiro in May, h', () => daylightHours(-22.9, 135), 10.895, 0.01, 'own working of FAO-56 example 10', 'derived'),
    row('Ra, Lyon in July, mm', () => lyonRa * MM_PER_MJ, 16.5463, 0.01, 'documentation of the NCAR Command Language, radext_fao56, after FAO-56 example 20', 'published'),
    row('Hargreaves, Lyon in July, mm', () => 0.0023 * hargreavesTermMm(14.8, 26.6, lyonRa), 5.0, 0.05, 'documentation of the NCAR Command Language, refevt_hargreaves_fao56, after FAO-56 example 20', 'published'),
    ofReference('Rs from temperature, Lyon, MJ', () => lyon.solarMj, 22.29, 0.02, 'FAO-56 example 20', 'published'),
    ofReference('air pressure at 200 m, kPa', () => airPressureKpa(200), 98.96, 0.01, 'FAO-56 example 20', 'published'),
    ofReference('vapour pressure, Lyon, kPa', () => lyon.vapourPressureKpa, 1.684, 0.001, 'FAO-56 example 20', 'from memory'),
    ofReference('net shortwave, Lyon, MJ', () => netShortwaveMj(lyon.solarMj), 17.16, 0.02, 'FAO-56 example 20', 'from memory'),
    ofReference('net longwave, Lyon, MJ', () => netLongwaveMj(lyon), 3.68, 0.02, 'FAO-56 example 20', 'from memory'),
    ofReference('Penman-Monteith, Lyon, mm', () => penmanMonteithMm(lyon), 4.56, 0.02, 'FAO-56 example 20', 'from memory'),
    ofReference('wind at 2 m, Uccle, m/s', () => uccle.windMPerS, 2.078, 0.002, 'FAO-56 example 18', 'from memory'),
    row('Ra, Uccle on 6 July, MJ', () => uccleRa, 41.09, 0.02, 'FAO-56 example 18', 'from memory'),
    ofReference('daylight, Uccle, h', () => daylightHours(50.8, 187), 16.1, 0.02, 'FAO-56 example 18', 'from memory'),
    row('Rs, Uccle, MJ', () => uccleRs, 22.07, 0.02, 'FAO-56 example 18', 'from memory'),
    ofReference('net radiation, Uccle, MJ', () => netShortwaveMj(uccleRs) - netLongwaveMj(uccle), 13.28, 0.02, 'FAO-56 example 18', 'from memory'),
    ofReference('Penman-Monteith, Uccle, mm', () => penmanMonteithMm(uccle), 3.88, 0.02, 'FAO-56 example 18', 'from memory'),
    row('Ra, Bangkok in April, MJ', () => bangkokRa, 38.06, 0.02, 'FAO-56 example 17', 'from memory'),
    row('Rs, Bangkok, MJ', () => bangkokRs, 22.65, 0.02, 'FAO-56 example 17', 'from memory'),
    ofReference('net radiation, Bangkok, MJ', () => netShortwaveMj(bangkokRs) - netLongwaveMj(bangkok), 14.33, 0.02, 'FAO-56 example 17', 'from memory'),
    ofReference('Penman-Monteith, Bangkok, mm', () => penmanMonteithMm(bangkok), 5.72, 0.02, 'FAO-56 example 17', 'from memory'),
    row('Hargreaves, 57° N in mid-December, 3 and −2 °C, mm', () => 0.0023 * hargreavesTermMm(-2, 3, extraterrestrialRadiationMj(57, 349)), 0.14, 0.01, 'own arithmetic', 'derived'),
    row('the same on 21 March, 6 and −2 °C, mm', () => 0.0023 * hargreavesTermMm(-2, 6, extraterrestrialRadiationMj(57, 80)), 1.07, 0.01, 'own arithmetic', 'derived'),
    row('the same on 15 April, 11 and 1 °C, mm', () => 0.0023 * hargreavesTermMm(1, 11, extraterrestrialRadiationMj(57, 105)), 2.03, 0.01, 'own arithmetic', 'derived'),
  ]);

  it.each([349, 352, 355])(sum('gives zeros, not an error, in the polar night at 68° N, day %i'), (day) => {
    expect(extraterrestrialRadiationMj(68, day)).toBe(0);
    expect(daylightHours(68, day)).toBe(0);
    expect(sunAngles(68, day).sunsetAngleRad).toBe(0);
    expect(radiationFromSunshineMj(0, 0, 0)).toBe(0);
  });
});

describe('leaching of nitrate', () => {
  const source = 'Burns 1975 against Scotter, White and Dyson 1993, own arithmetic';
  // biome-ignore format: one row a line
  check([
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value of the example, not a logarithm
    row('Burns, 25 cm of drainage, 35 %, 60 cm', () => burnsFraction(25, 35, 60), 0.4342, 1e-3, source, 'derived'),
    row('continuous form, same', () => scotterFraction(25, 0.35, 60), 0.4317, 1e-3, source, 'derived'),
    row('Burns, 15 %', () => burnsFraction(25, 15, 60), 0.6984, 1e-3, source, 'derived'),
    row('continuous form, 15 %', () => scotterFraction(25, 0.15, 60), 0.6977, 1e-3, source, 'derived'),
    row('Burns, 10 cm of drainage', () => burnsFraction(10, 35, 60), 0.1269, 1e-3, source, 'derived'),
    row('continuous form, 10 cm of drainage', () => scotterFraction(10, 0.35, 60), 0.1225, 1e-3, source, 'derived'),
    row('Burns, 40 cm of drainage', () => burnsFraction(40, 35, 60), 0.5929, 1e-3, source, 'derived'),
    row('Burns, to 30 cm', () => burnsFraction(25, 35, 30), 0.659, 1e-3, source, 'derived'),
    row('Burns, to 90 cm', () => burnsFraction(25, 35, 90), 0.2861, 1e-3, source, 'derived'),
    row('depth that half has passed, cm', () => burnsHalfDepthCm(25, 35), 49.9, 0.1, source, 'derived'),
    row('mixed into nothing is the surface', () => scotterMixedFraction(25, 0.35, 60, 0) - scotterFraction(25, 0.35, 60), 0, 1e-12, 'mean of the continuous form', 'derived'),
    row('mixed into 20 cm, by a sum over 2,000 layers', () => scotterMixedFraction(25, 0.35, 60, 20), Array.from({ length: 2000 }, (_, k) => scotterFraction(25, 0.35, 60 - (k + 0.5) / 100)).reduce( (a, b) => a + b, ) / 2000, 1e-6, 'mean of the continuous form', 'derived'),
  ]);

  it.each([
    [10, 15, 30], [25, 15, 60], [40, 35, 90], [60, 25, 60],
  ])(sum('agrees with the continuous form within 5 %% at %i cm, %i %%, %i cm (form of Scotter, White and Dyson 1993)'), (drainage, capacity, depth) => {
    const burns = burnsFraction(drainage, capacity, depth);
    expect(Math.abs(burns / scotterFraction(drainage, capacity / 100, depth) - 1)).toBeLessThan(0.05);
  }); // biome-ignore format: four rows
});

describe(sum('snow and bucket, six worked days (own arithmetic after FAO-56 chapter 8)'), () => {
  const days = [[12, 4, 0.5], [8, -2, 0.1], [0, -5, 0], [5, 2, 0.3], [20, 5, 0.6], [0, 3, 0.4]]; // biome-ignore format: rows
  const weather = {
    label: 'six days', start: '2010-11-01', days: 6, rainMm: Float64Array.from(days, ([p]) => p),
    temperatureC: Float64Array.from(days, ([, t]) => t), hargreavesTermMm: Float64Array.from(days, ([, , e]) => e),
  }; // biome-ignore format: one value
  const turn = {
    winterDays: 6, rootDepthMm: 1000, fieldCapacityM3PerM3: 0.18, wiltingPointM3PerM3: 0.06, startSoilWaterFraction: 0.875,
    hargreavesFactor: 1, grassCropFactor: 1, snowEvaporationFraction: 1, drainageRatePerDay: 1, curveNumber: 0,
    curveNumberFrozen: 0, snowThresholdC: 0, meltThresholdC: 0, meltFactorMmPerCDay: 3.5, readilyAvailableFraction: 0.5,
  }; // biome-ignore format: one row
  const { rows, daily } = runRows(['winter', 'soilWater'], [weather], [turn]);
  const series = (name: string) => [...daily[name].subarray(0, 6)];
  const close = (got: readonly number[], expected: readonly number[]) =>
    got.forEach((x, k) => {
      expect(x).toBeCloseTo(expected[k], 6);
    });

  it('drains 0, 0, 0, 8.1, 20.4, 0 mm', () => close(series('dayDrainageMm'), [0, 0, 0, 8.1, 20.4, 0]));
  it('has 0, 8, 8, 1, 0, 0 mm of water in the snow', () =>
    close(series('daySnowWaterMm'), [0, 8, 8, 1, 0, 0]));
  it('ends with 179.6 mm in the soil', () => expect(series('daySoilWaterMm')[5]).toBeCloseTo(179.6, 6));
  it('balances 45 mm in, 1.9 mm evaporated, 28.5 mm drained, 14.6 mm gained', () => {
    close(
      [rows[0].rainMm, rows[0].evapotranspirationMm, rows[0].drainageWinterMm, rows[0].soilWaterChangeMm],
      [45, 1.9, 28.5, 14.6],
    );
  });
  it('leaves days the weather does not have empty', () =>
    expect(Number.isNaN(daily.dayDrainageMm[DAYS - 1])).toBe(true));
});

describe(tableRow('washed off the paddock, Salomon and others 2015 (published)'), () => {
  it('9.0 of 500 kg N and 1.4 of 50 kg P', () => {
    expect(central('runoffNitrogenFraction')).toBeCloseTo(9.0 / 500, 9);
    expect(central('runoffPhosphorusFraction')).toBeCloseTo(1.4 / 50, 9);
  });
});

describe('run-off, ammonia in the cold, treading', () => {
  const salomon = 'Salomon and others 2015';
  // biome-ignore format: one row a line
  check([
    row('curve number 80, retention, mm', () => retentionMm(80), 63.5, 1e-9, 'US Soil Conservation Service, S = 25400/CN − 254', 'from memory'),
    row('curve number 80, 50 mm, run-off, mm', () => runoffMm(50, 63.5), 13.8, 0.05, 'own arithmetic from the same equation', 'derived'),
    row('nitrogen washed off 500 kg at the reference run-off, kg', () => 500 * washedFraction(50, central('runoffNitrogenFraction'), 50), 9.0, 0.1, salomon, 'published'),
    row('phosphorus washed off 50 kg at the reference run-off, kg', () => 50 * washedFraction(50, central('runoffPhosphorusFraction'), 50), 1.4, 0.03, salomon, 'published'),
    row('factor for ten degrees', () => temperatureFactor(20, central('ammoniaSlopePerC'), 10), 1.739, 0.001, 'Lithuanian test bench 2013', 'derived'),
    row('0.14 at −5 °C', () => 0.14 * temperatureFactor(-5, 0.0553, 10), 0.061, 5e-4, 'EMEP/EEA 2019 scaled by the bench slope', 'derived'),
    row('0.14 at 0 °C', () => 0.14 * temperatureFactor(0, 0.0553, 10), 0.08, 7e-4, 'EMEP/EEA 2019 scaled by the bench slope', 'derived'),
    row('0.14 at 5 °C', () => 0.14 * temperatureFactor(5, 0.0553, 10), 0.106, 5e-4, 'EMEP/EEA 2019 scaled by the bench slope', 'derived'),
    row('one poaching of loam, 100 wet cow-days/ha, spring growth lost', () => treadingLossFraction(100, central('treadingRatePerHundredCowDays')), 0.3, 0.1, 'Teagasc 2009: 20 to 40 %; the row was set to it', 'derived'),
    row('10 t/ha at 0.60 t/m³, layer, mm', () => layerDepthMm(10 / 0.6, 1), 1.67, 0.005, 'own arithmetic', 'derived'),
    row('soil of 25 cm at 1.3 t/m³, t/ha', () => soilMassKgPerHa(250, 1.3) / 1000, 3250, 1e-9, 'own arithmetic', 'derived'),
  ]);
});

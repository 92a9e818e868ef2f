/** What must hold of water and nitrogen whatever the weather, the soil and the coefficients. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAYS, WEEKS } from '../../src/model/series.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { TEXTURES } from '../../src/notebook/schema.ts';
import { coefficients, INPUTS, runRows, weatherOf } from '../model/fieldRig.ts';
import { columnsRead, isAmount, namesIn } from '../model/parts.ts';

const PARTS = ['winter', 'soilWater', 'paddock', 'soil'];
const RUNS = { numRuns: 150 };

/** A year of any climate, poles included: seasons, cold snaps, dry spells and cloudbursts. */
const anyWeather: fc.Arbitrary<PreparedWeather> = fc
  .record({
    mean: fc.double({ min: -25, max: 25, noNaN: true }),
    swing: fc.double({ min: 0, max: 20, noNaN: true }),
    latitude: fc.integer({ min: -90, max: 90 }),
    days: fc.constantFrom(365, 366, 300),
    rain: fc.array(
      fc.oneof(
        fc.constant(0),
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.double({ min: 8, max: 90, noNaN: true }),
      ),
      { minLength: 20, maxLength: 60 },
    ),
    noise: fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 5, maxLength: 30 }),
  })
  .map(({ mean, swing, latitude, days, rain, noise }) =>
    weatherOf(
      Array.from({ length: days }, (_, d) => rain[d % rain.length]),
      Array.from(
        { length: days },
        (_, d) => mean - swing * Math.cos((2 * Math.PI * (d - 75)) / 365) + noise[d % noise.length],
      ),
      8,
      latitude,
    ),
  );

/** Every coefficient anywhere in its range, and inputs anywhere a slider goes. */
const names = columnsRead(PARTS).filter((name) => coefficients.has(name));
const anyTurn = fc
  .record({
    draws: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: names.length,
      maxLength: names.length,
    }),
    winterDays: fc.integer({ min: 1, max: 290 }),
    rainFactor: fc.double({ min: 0, max: 2.5, noNaN: true }),
    rootDepthMm: fc.integer({ min: 100, max: 2000 }),
    latitudeDeg: fc.integer({ min: -90, max: 90 }),
    spreadDay: fc.integer({ min: 0, max: 366 }),
    paddockHa: fc.double({ min: 0.1, max: 100, noNaN: true }),
    receivingHa: fc.double({ min: 0.1, max: 100, noNaN: true }),
    tan: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ draws, tan, ...inputs }) => {
    const turn: Record<string, number> = {
      ...inputs,
      paddockTanInKg: tan * 640,
      slurrySoilTanKg: tan * 336,
      slurryNitrogenReleasedKg: 0.2 * (1 - tan) * 336,
    };
    names.forEach((name, k) => {
      const { low, high } = coefficients.get(name) as { low: number; high: number };
      turn[name] = low + draws[k] * (high - low);
    });
    return turn;
  });
const anySoil = fc.record({
  texture: fc.constantFrom(...TEXTURES),
  moved: fc.constantFrom('fixed', 'monthly', 'weekly', 'daily'),
});

const near = (a: number, b: number, scale: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(scale)));

describe('water', () => {
  it('balances over the winter: rain = run-off + evapotranspiration + drainage + gain of soil and snow', () => {
    fc.assert(
      fc.property(anyWeather, anyTurn, anySoil, (weather, turn, picks) => {
        const [row] = runRows(['winter', 'soilWater'], [weather], [turn], picks).rows;
        near(
          row.rainMm,
          row.runoffMm + row.evapotranspirationMm + row.drainageWinterMm + row.soilWaterChangeMm,
          row.rainMm,
        );
      }),
      RUNS,
    );
  });

  it('balances day by day, and the soil stays between empty and what drains', () => {
    fc.assert(
      fc.property(anyWeather, anyTurn, anySoil, (weather, turn, picks) => {
        const { daily, tracks, rows } = runRows(['winter', 'soilWater'], [weather], [turn], picks);
        let drained = 0;
        for (let d = 0; d < weather.days; d++) {
          expect(daily.daySoilWaterMm[d]).toBeGreaterThanOrEqual(-1e-9);
          expect(daily.daySnowWaterMm[d]).toBeGreaterThanOrEqual(0);
          expect(daily.dayEvapotranspirationMm[d]).toBeGreaterThanOrEqual(0);
          drained += daily.dayDrainageMm[d];
        }
        const weekly = tracks.weekDrainageMm.reduce((sum, mm) => sum + (Number.isNaN(mm) ? 0 : mm), 0);
        near(weekly, drained, drained);
        expect(rows[0].wetDays + rows[0].frozenDays).toBeLessThanOrEqual(turn.winterDays);
        expect(Number.isNaN(daily.daySoilWaterMm[DAYS - 1])).toBe(weather.days < DAYS);
      }),
      RUNS,
    );
  });

  it('drains and runs off no less in any week when there is more rain', () => {
    fc.assert(
      fc.property(
        anyWeather,
        anyTurn,
        anySoil,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (weather, turn, picks, more) => {
          const { rows, tracks } = runRows(
            ['winter', 'soilWater'],
            [weather],
            [turn, { ...turn, rainFactor: turn.rainFactor + more }],
            picks,
          );
          for (const name of ['weekDrainageMm', 'weekRunoffMm', 'weekTroddenRunoffMm'])
            for (let w = 0; w < WEEKS; w++) {
              const [less, greater] = [tracks[name][w], tracks[name][WEEKS + w]];
              if (less >= 0) expect(greater).toBeGreaterThanOrEqual(less - 1e-9);
            }
          expect(rows[1].drainageMm).toBeGreaterThanOrEqual(rows[0].drainageMm - 1e-9);
          expect(rows[1].growthDay).toBe(rows[0].growthDay);
          expect(rows[1].frozenDays).toBe(rows[0].frozenDays);
        },
      ),
      RUNS,
    );
  });
});

describe('nitrogen, phosphorus and potassium in the field', () => {
  it('balance on the paddock and in the soil, and no part is negative', () => {
    fc.assert(
      fc.property(anyWeather, anyTurn, anySoil, (weather, turn, picks) => {
        const [r] = runRows(PARTS, [weather], [turn], picks).rows;
        near(
          r.paddockAmmoniaKg +
            r.paddockNitrousKg +
            r.paddockDinitrogenKg +
            r.paddockRunoffKg +
            r.paddockLeachedKg +
            r.paddockOrganicLeachedKg +
            r.paddockNitrogenKeptKg,
          INPUTS.paddockNitrogenInKg,
          640,
        );
        near(r.paddockPhosphorusLostKg + r.paddockPhosphorusKeptKg, INPUTS.paddockPhosphorusInKg, 88);
        near(r.paddockPotassiumLostKg + r.paddockPotassiumKeptKg, INPUTS.paddockPotassiumInKg, 790);
        near(
          r.soilNitrousKg +
            r.soilDinitrogenKg +
            r.soilLeachedKg +
            r.soilOrganicLeachedKg +
            r.soilNitrogenKeptKg,
          INPUTS.slurrySoilNitrogenKg,
          336,
        );
        for (const [name, value] of Object.entries(r))
          if (name !== 'soilWaterChangeMm' && name !== 'winterTemperatureC')
            expect([name, value >= -1e-9]).toEqual([name, true]);
        // Three ways through the working, one sum: in herbage, bound, and mineral at the end.
        near(
          r.paddockNitrogenInCropKg + r.paddockNitrogenBoundKg + r.paddockNitrogenAtRiskKg,
          r.paddockNitrogenKeptKg,
          640,
        );
        expect(r.soilMineralKg).toBeLessThanOrEqual(r.soilNitrogenKeptKg + 1e-9);
        expect(r.reseedHa).toBeLessThanOrEqual(turn.paddockHa * (1 + 1e-12));
      }),
      RUNS,
    );
  });

  it('leach and wash off no less when there is more rain, while ammonia stays', () => {
    fc.assert(
      fc.property(
        anyWeather,
        anyTurn,
        anySoil,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (weather, turn, picks, more) => {
          const [less, greater] = runRows(
            PARTS,
            [weather],
            [turn, { ...turn, rainFactor: turn.rainFactor + more }],
            picks,
          ).rows;
          for (const name of ['paddockRunoffKg', 'paddockPhosphorusLostKg', 'soilLeachedKg'])
            expect([name, greater[name] >= less[name] - 1e-9]).toEqual([name, true]);
          expect(greater.paddockAmmoniaKg).toBe(less.paddockAmmoniaKg);
        },
      ),
      RUNS,
    );
  });

  /** Without frost: snow keeps ground from being wet, and run-off over frozen ground leaves less to leach. */
  const thawed = anyWeather.map((weather) => ({
    ...weather,
    temperatureC: weather.temperatureC.map((each) => Math.max(3, each)),
  }));

  it('leave the paddock no less by water and wet ground together when there is more rain, where nothing freezes', () => {
    fc.assert(
      fc.property(
        thawed,
        anyTurn,
        anySoil,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (weather, turn, picks, more) => {
          const [less, greater] = runRows(
            PARTS,
            [weather],
            [turn, { ...turn, rainFactor: turn.rainFactor + more }],
            picks,
          ).rows.map(
            (r) => r.paddockLeachedKg + r.paddockRunoffKg + r.paddockDinitrogenKg + r.paddockNitrousKg,
          );
          // The depth of old and new nitrate is a mean: it may differ in the sixth place.
          expect(greater).toBeGreaterThanOrEqual(less - 1e-6 * 640);
        },
      ),
      RUNS,
    );
  });

  it('leach from the paddock no less when there is more rain, where run-off and nitrogen gas take no share of it', () => {
    fc.assert(
      fc.property(
        thawed,
        anyTurn,
        anySoil,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (weather, turn, picks, more) => {
          const alone = {
            ...turn,
            runoffNitrogenFraction: 0,
            urineDinitrogenWetFraction: turn.urineDinitrogenDrainedFraction,
            urineCoDenitrificationFraction: turn.urineDinitrogenDrainedFraction,
          };
          const [less, greater] = runRows(
            PARTS,
            [weather],
            [alone, { ...alone, rainFactor: turn.rainFactor + more }],
            picks,
          ).rows;
          expect(greater.paddockLeachedKg).toBeGreaterThanOrEqual(less.paddockLeachedKg - 1e-3 * 640);
        },
      ),
      RUNS,
    );
  });

  it('are all nothing where there are no animals', () => {
    fc.assert(
      fc.property(anyWeather, anyTurn, (weather, turn) => {
        const nothing = Object.fromEntries(
          Object.keys(INPUTS)
            .filter((name) => /Kg$|M3$|livestockUnits/.test(name))
            .map((name) => [name, 0]),
        );
        const [r] = runRows(PARTS, [weather], [{ ...turn, ...nothing }]).rows;
        for (const name of namesIn(['paddock', 'soil'], 1).filter(
          (made) => isAmount(made) && !/(Mm|Days)$/.test(made),
        ))
          expect([name, r[name] === 0]).toEqual([name, true]);
      }),
      RUNS,
    );
  });
});

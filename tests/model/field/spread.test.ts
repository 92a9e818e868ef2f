import { describe, expect, it } from 'vitest';
import { TECHNIQUES } from '../../../src/notebook/schema.ts';
import { central, run } from '../nutrientRig.ts';

const LOAD = { slurryNitrogenKg: 300, slurryTanKg: 150, compostNitrogenKg: 400, compostTanKg: 20 };

describe('spread', () => {
  it('lets technique act on slurry only and incorporation on both', () => {
    const [plain, shoe, ploughed] = run(
      ['spreading'],
      [LOAD, { ...LOAD, spreadTechniqueFactor: 0.5 }, { ...LOAD, spreadIncorporationFactor: 0.15 }],
    );
    expect(shoe.slurrySpreadAmmoniaKg / plain.slurrySpreadAmmoniaKg).toBeCloseTo(0.5, 12);
    expect(shoe.compostSpreadAmmoniaKg).toBe(plain.compostSpreadAmmoniaKg);
    expect(ploughed.spreadAmmoniaKg / plain.spreadAmmoniaKg).toBeCloseTo(0.15, 12);
  });

  it('loses less with each technique that puts slurry deeper', () => {
    const lost = TECHNIQUES.map(
      (t) =>
        run(['spreading'], { ...LOAD, spreadTechniqueFactor: central('spreadTechniqueFactor', t) })[0]
          .slurrySpreadAmmoniaKg,
    );
    expect(lost).toEqual([...lost].sort((a, b) => b - a));
    expect(new Set(lost).size).toBe(TECHNIQUES.length);
  });

  it('loses no more TAN than there is', () => {
    const [out] = run(['spreading'], {
      ...LOAD,
      slurrySpreadAmmoniaFraction: 0.8,
      spreadTechniqueFactor: 1.5,
    });
    expect(out.slurrySpreadAmmoniaKg).toBe(150);
    expect(out.slurrySoilTanKg).toBe(0);
  });

  it('asks for no ground where no limit is set', () => {
    const [out] = run(['spreading'], { ...LOAD, nitrogenCapKgPerHa: 0, phosphorusCapKgPerHa: 0 });
    expect(out.areaNeededHa).toBe(0);
  });
});

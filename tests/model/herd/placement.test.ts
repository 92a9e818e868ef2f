import { describe, expect, it } from 'vitest';
import { run, total } from '../nutrientRig.ts';

const HERD = {
  winterDays: 150,
  nitrogenExcretedKg: 600,
  tanExcretedKg: 300,
  phosphorusExcretedKg: 90,
  potassiumExcretedKg: 700,
  nitrogenWastedKg: 30,
  phosphorusWastedKg: 4,
  potassiumWastedKg: 30,
  nitrogenMaterialKg: 80,
  phosphorusMaterialKg: 14,
  potassiumMaterialKg: 250,
};
const DAY = { bedShare: 0.5, slatsShare: 0.1, yardShare: 0.25, pastureShare: 0.15 };

describe('placement', () => {
  it('sends scrapings where they go', () => {
    const [toPack, toSlurry] = run(
      ['placement'],
      [
        { ...HERD, ...DAY, yardToPackShare: 1 },
        { ...HERD, ...DAY, yardToPackShare: 0 },
      ],
    );
    expect([toPack.paddockShare, toPack.slurryShare, toPack.packShare]).toEqual([0.15, 0.1, 0.75]);
    expect([toSlurry.paddockShare, toSlurry.slurryShare, toSlurry.packShare]).toEqual([0.15, 0.35, 0.5]);
    expect(toPack.slurryTanInKg).toBeCloseTo(30, 12);
    expect(toSlurry.slatsTanKg).toBeCloseTo(30, 12);
  });

  it('counts the ammonia of the yard once, out of nitrogen and TAN of where the scrapings go', () => {
    const [out] = run(['placement'], {
      ...HERD,
      ...DAY,
      yardToPackShare: 1,
      yardAmmoniaTanFraction: 0.4,
      ammoniaReferenceC: 10,
    });
    expect(out.yardAmmoniaKg).toBeCloseTo(300 * 0.25 * 0.4, 9);
    expect(out.packTanInKg).toBeCloseTo(300 * 0.75 - 30, 9);
    expect(out.packNitrogenInKg).toBeCloseTo(630 * 0.75 - 30 + 80, 9);
  });

  it('never loses more TAN than lies on the yard', () => {
    const [out] = run(
      ['placement'],
      { ...HERD, yardShare: 1, yardToPackShare: 1, yardAmmoniaTanFraction: 0.9 },
      30,
    );
    expect(out.yardAmmoniaKg).toBe(300);
    expect(out.packTanInKg).toBe(0);
  });

  it('keeps a day of 24 hours when a sweep moves one share alone', () => {
    const [out] = run(['placement'], { ...HERD, slatsShare: 1, pastureShare: 1 });
    expect([out.paddockShare, out.slurryShare]).toEqual([0.5, 0.5]);
    expect(total(out, 'paddockNitrogenInKg', 'slurryNitrogenInKg', 'packNitrogenInKg')).toBeCloseTo(710, 9);
  });

  it('leaves bedding out of every route but the bed', () => {
    const [out] = run(['placement'], { ...HERD, ...DAY, yardToPackShare: 1 });
    expect(out.paddockPhosphorusInKg).toBeCloseTo(94 * 0.15, 9);
    expect(out.packPhosphorusInKg).toBeCloseTo(94 * 0.75 + 14, 9);
    expect(out.packNitrogenWastedKg).toBeCloseTo(22.5, 9);
  });
});

import { describe, expect, it } from 'vitest';
import { run } from '../nutrientRig.ts';

const FIELD = {
  receivingHa: 10,
  areaNeededHa: 10,
  phosphorusNeeded: 1,
  potassiumNeeded: 1,
  laterYearsForm: 1,
  slurrySecondYearFraction: 0,
  compostSecondYearFraction: 0,
  dungSecondYearFraction: 0,
  paddockHa: 2,
  spotExcretaFraction: 0.4,
  spotAreaFraction: 0.25,
  spotReachedHa: 0.4,
  restReachedHa: 1.2,
  cropNitrogenNeedKgPerHa: 100,
  pastureNitrogenNeedKgPerHa: 80,
  nitrogenPricePerKg: 1,
  phosphorusPricePerKg: 2,
  potassiumPricePerKg: 1,
};
const SLURRY = {
  slurrySoilNitrogenKg: 300,
  slurrySoilTanKg: 100,
  soilMineralKg: 100,
  slurryMineralisedFraction: 0.15,
};

describe('value', () => {
  it('counts the mineral nitrogen left, which holds the organic share released', () => {
    const [out] = run(['value', 'worth'], { ...FIELD, ...SLURRY });
    // Mineral nitrogen left holds what was released of the 200 kg organic: 30 kg before gases and drainage.
    expect(out.slurryNitrogenReleasedKg).toBeCloseTo(30, 9);
    expect(out.nitrogenAvailableKg).toBeCloseTo(100, 9);
    expect(out.nitrogenSurplusKg).toBeCloseTo(0, 9);
    expect(out.nutrientValue).toBeCloseTo(100, 9);
  });

  it('caps what is available by the need of the ground it lies on, and names the rest', () => {
    const [spread, dung] = run(
      ['value', 'worth'],
      [
        { ...FIELD, ...SLURRY, receivingHa: 0.5 },
        { ...FIELD, paddockNitrogenInCropKg: 185, spotUptakeKg: 64, restUptakeKg: 111, dungUptakeKg: 10 },
      ],
    );
    expect(spread.nitrogenAvailableKg).toBe(50);
    expect(spread.nitrogenSurplusKg).toBeCloseTo(50, 9);
    // At 80 kg/ha: 64 kg on 0.4 ha of spots that can use 32, 111 kg on 1.2 ha of the rest that can use 96; 10 of dung.
    expect(dung.nitrogenAvailableKg).toBeCloseTo(32 + 96 + 10, 9);
    expect(dung.nitrogenSurplusKg).toBeCloseTo(47, 9);
    expect(dung.nutrientValue).toBeCloseTo(138, 9);
  });

  it('shares phosphorus kept between slurry and compost', () => {
    const [out] = run(['value', 'worth'], {
      ...FIELD, soilPhosphorusKeptKg: 40, slurryPhosphorusKg: 10, compostPhosphorusKg: 30, slurryPhosphorusFirstYearFraction: 0.5,
      compostPhosphorusFirstYearFraction: 0.6, cropPhosphorusNeedKgPerHa: 100,
    }); // biome-ignore format: one row
    expect(out.phosphorusAvailableKg).toBeCloseTo(10 * 0.5 + 30 * 0.6, 9);
  });

  it("puts the farm's own compost price in place of the compost's nutrients, and only of those", () => {
    const compost = {
      ...FIELD, compostSoilNitrogenKg: 400, compostSoilTanKg: 20, soilMineralKg: 15, soilNitrogenKeptKg: 390, compostTonnes: 50,
      soilPhosphorusKeptKg: 50, compostPhosphorusKg: 50, soilPotassiumKeptKg: 300, compostPotassiumKg: 300,
      paddockNitrogenInCropKg: 20, spotUptakeKg: 8, restUptakeKg: 12, compostPricePerTonne: 30,
    }; // biome-ignore format: one row
    const [own, none, missing] = run(
      ['value', 'worth'],
      [compost, { ...compost, compostPricePerTonne: 0 }, { ...compost, compostPricePerTonne: Number.NaN }],
    );
    expect(own.nutrientValue).toBeCloseTo(50 * 30 + 20, 9);
    expect(none.nutrientValue).toBeCloseTo(
      none.nitrogenAvailableKg + 2 * none.phosphorusAvailableKg + none.potassiumAvailableKg,
      9,
    );
    expect(none.compostValue).toBe(0);
    expect(missing.nutrientValue).toBe(none.nutrientValue);
  });

  it('halves what is released from year to year, or takes the table, and never more than is left', () => {
    const [decay, table, most] = run(
      ['value', 'worth'],
      [
        { ...FIELD, ...SLURRY, laterYearsFactor: 0.5, laterYearsForm: 0 },
        { ...FIELD, ...SLURRY, laterYearsFactor: 0.5, laterYearsForm: 1, slurrySecondYearFraction: 0.05 },
        {
          ...FIELD,
          ...SLURRY,
          laterYearsForm: 1,
          slurryMineralisedFraction: 0.9,
          slurrySecondYearFraction: 0.5,
        },
      ],
    );
    // 170 kg of 200 are left: 0.15 × 0.5 of them, and half of that again; or 0.05 of the 300 kg.
    expect(decay.nitrogenAvailableSecondYearKg).toBeCloseTo(170 * 0.075, 9);
    expect(decay.nitrogenAvailableThirdYearKg).toBeCloseTo((170 * 0.075) / 2, 9);
    expect(table.nitrogenAvailableSecondYearKg).toBeCloseTo(15, 9);
    expect(most.nitrogenAvailableSecondYearKg).toBeCloseTo(20, 9);
  });

  it('counts only the ground that is spread', () => {
    const [out] = run(['value', 'worth'], { ...FIELD, ...SLURRY, areaNeededHa: 0.6 });
    expect(out.groundSpreadHa).toBe(0.6);
    expect(out.nitrogenAvailableKg).toBe(60);
  });

  it('pays for phosphorus and potassium only where the soil needs them', () => {
    const row = {
      ...FIELD, soilPhosphorusKeptKg: 40, slurryPhosphorusKg: 40, slurryPhosphorusFirstYearFraction: 0.5, soilPotassiumKeptKg: 100,
      slurryPotassiumKg: 100, potassiumFirstYearFraction: 1, cropPhosphorusNeedKgPerHa: 100, cropPotassiumNeedKgPerHa: 100,
      untestedPhosphorusNeedFraction: 0.8, untestedPotassiumNeedFraction: 0.775,
    }; // biome-ignore format: one row
    const [short, rich, untested] = run(
      ['value', 'worth'],
      [row, { ...row, phosphorusNeeded: 0, potassiumNeeded: 0 }, { ...row, phosphorusNeeded: Number.NaN, potassiumNeeded: Number.NaN }],
    ); // biome-ignore format: one row
    expect(short.nutrientValue).toBeCloseTo(20 * 2 + 100, 8);
    expect(rich.nutrientValue).toBe(0);
    expect(rich.phosphorusAvailableKg).toBe(20);
    expect(untested.nutrientValue).toBeCloseTo(20 * 2 * 0.8 + 100 * 0.775, 9);
  });

  it('credits later years at their discounted worth, and organic matter at its price', () => {
    const [out] = run(['value', 'worth'], {
      ...FIELD, ...SLURRY, slurrySecondYearFraction: 0.06, laterYearsForm: 1, laterYearsFactor: 0.5, interestRate: 0.05,
      humusCarbonKg: 2000, organicMatterPricePerTonne: 10,
    }); // biome-ignore format: one row
    // 6 % of 300 kg in the second year, half of it in the third.
    expect(out.nitrogenLaterValue).toBeCloseTo(18 / 1.05 + 9 / 1.05 ** 2, 9);
    expect(out.organicMatterValue).toBe(20);
  });
});

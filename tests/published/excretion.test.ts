/** Intake and excretion against ASAE D384.2, NRCS tables and cold-weather feeding rules. */
import { describe, expect, it } from 'vitest';
import { central, evenWeather, run } from '../model/nutrientRig.ts';
import {
  type FedAnimal,
  nitrogenExcretedKg,
  nitrogenRetainedKg,
  phosphorusExcretedKg,
  phosphorusRetainedKg,
} from '../reference/asabe.ts';
import { figure, recalled, sum, tableRow } from './labels.ts';
import { MISS } from './labelTexts.ts';

const POUND_KG = 0.45359237;
const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

/** Reference steer of D384.2 (inputs read in Erickson and others 2003). */
const STEER: FedAnimal = { startKg: 338, endKg: 554, days: 153, dryMatterKgPerDay: 8.84 };
const steerEaten = 8.84 * 153;

describe('ASAE D384.2 reference steer, 338 to 554 kg in 153 d', () => {
  const steer = (retained: Record<string, number> = {}) =>
    run(['herd', 'excretion'], {
      herdFactor: 1,
      winterDays: 153,
      group1HeadCount: 1,
      group1WeightKg: 338,
      group1GainKgPerDay: 216 / 153,
      dryMatterEatenKg: steerEaten,
      nitrogenEatenKg: (steerEaten * 0.133) / 6.25,
      phosphorusEatenKg: steerEaten * 0.0031,
      digestibility: 0.79,
      ...retained,
    })[0];
  const asPrinted = steer({
    gainNitrogenKgPerKg: nitrogenRetainedKg(STEER) / 216,
    gainPhosphorusKgPerKg: phosphorusRetainedKg(STEER) / 216,
  });

  it(recalled('with its own retention excretes the 25 kg N and 3.3 kg P of table 1 (from memory)'), () => {
    expect(Math.abs(asPrinted.nitrogenExcretedKg - 25)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(asPrinted.phosphorusExcretedKg - 3.3)).toBeLessThanOrEqual(0.1);
  });

  it(
    recalled('with the retention of our tables lies within a tenth for N, a fifth for P (from memory)'),
    () => {
      const ours = steer();
      expect(Math.abs(ours.nitrogenExcretedKg / 25 - 1)).toBeLessThan(0.1);
      // Our row keeps more phosphorus a kilogram of gain than the standard does, so less of it comes out.
      expect(Math.abs(ours.phosphorusExcretedKg / 3.3 - 1)).toBeLessThan(0.2);
    },
  );

  it(sum('agrees with the equations of section 4 worked independently'), () => {
    expect(asPrinted.nitrogenExcretedKg).toBeCloseTo(nitrogenExcretedKg(STEER, 0.133), 9);
    expect(asPrinted.phosphorusExcretedKg).toBeCloseTo(phosphorusExcretedKg(STEER, 0.0031), 9);
  });
});

describe('6,366 yearlings of 353 kg in six feedlots that gained 183 kg in 123 d (Kissinger and others 2005)', () => {
  // 25.6 kg N and 4.1 kg P were excreted a head, 11.5 % and 16.9 % of what was fed stayed in the animal: so much was fed.
  const [head] = run(['herd', 'excretion'], {
    herdFactor: 1,
    winterDays: 123,
    group1HeadCount: 1,
    group1WeightKg: 353,
    group1GainKgPerDay: 183 / 123,
    dryMatterEatenKg: 1000,
    nitrogenEatenKg: 25.6 / (1 - 0.115),
    phosphorusEatenKg: 4.1 / (1 - 0.169),
    digestibility: 0.79,
  });
  // Within the rounding of what is printed. Our rows of gain stay at what European norms hold, which keeps more.
  it.fails(figure(`excreted nitrogen 25.6 kg a head, ${MISS}`), () => {
    expect(Math.abs(head.nitrogenExcretedKg - 25.6)).toBeLessThanOrEqual(0.05);
  });
  it.fails(figure(`excreted phosphorus 4.1 kg a head, ${MISS}`), () => {
    expect(Math.abs(head.phosphorusExcretedKg - 4.1)).toBeLessThanOrEqual(0.05);
  });
});

describe(tableRow('beef cow of ASAE D384.2 table 1 (from memory), printed in pounds too'), () => {
  // The metric table was rounded on its own: solids 6.6 against 15 lb.
  it.each([
    ['wet manure', 125, 'referenceAsabeBeefCowManureKgPerDay'],
    ['total solids', 15, 'referenceAsabeBeefCowDryMatterKgPerDay'],
    ['nitrogen', 0.42, 'referenceAsabeBeefCowNitrogenKgPerDay'],
    ['phosphorus', 0.097, 'referenceAsabeBeefCowPhosphorusKgPerDay'],
    ['potassium', 0.3, 'referenceAsabeBeefCowPotassiumKgPerDay'],
  ])('%s, %f lb a day', (_, pounds, id) => {
    expect(Math.abs(central(id) / (pounds * POUND_KG) - 1)).toBeLessThan(0.05);
  });
});

describe('dry cow by balance against the table cow: sources disagree, the order of magnitude must not', () => {
  // The tables are of cows that eat their fill.
  const [cow] = run(['herd', 'intake', 'excretion'], {
    herdFactor: 1,
    winterDays: 180,
    group1HeadCount: 1,
    group1WeightKg: 544,
    group1PregnantShare: 1,
    group1AppetiteShare: 1,
    feed1Share: 1,
  });
  // Range: half to twice D384.2 (from memory), which the balance is known to miss: K low and P high in the table.
  it.each([
    ['nitrogen', cow.nitrogenExcretedKg / 180, 'referenceAsabeBeefCowNitrogenKgPerDay'],
    ['phosphorus', cow.phosphorusExcretedKg / 180, 'referenceAsabeBeefCowPhosphorusKgPerDay'],
    ['potassium', cow.potassiumExcretedKg / 180, 'referenceAsabeBeefCowPotassiumKgPerDay'],
    ['dry matter', cow.dryMatterExcretedKg / 180, 'referenceAsabeBeefCowDryMatterKgPerDay'],
    ['volatile solids', cow.volatileSolidsKg / 180, 'referenceAsabeBeefCowVolatileSolidsKgPerDay'],
    [
      'wet manure',
      (cow.dryMatterExcretedKg + cow.waterExcretedKg) / 180,
      'referenceAsabeBeefCowManureKgPerDay',
    ],
  ])(recalled('%s'), (_, found, id) => {
    expect(found / central(id)).toBeGreaterThan(0.5);
    expect(found / central(id)).toBeLessThan(2);
  });

  const wet = (more: Record<string, number>) => {
    const [out] = run(['herd', 'intake', 'excretion'], {
      herdFactor: 1,
      winterDays: 180,
      group1HeadCount: 1,
      group1WeightKg: 650,
      group1PregnantShare: 1,
      feed1Share: 1,
      ...more,
    });
    const litres = (out.excretaM3 / 180) * 1000;
    return { litres, dryMatter: out.dryMatterExcretedKg / (out.excretaM3 * 1000) };
  };
  const silage = {
    feed1DigestibilityFraction: central('feedDigestibilityFraction', 'grassSilage'),
    feed1PotassiumFraction: central('feedPotassiumFraction', 'grassSilage'),
    feed1CrudeProteinFraction: central('feedCrudeProteinFraction', 'grassSilage'),
  };

  it(
    figure('volume of a 650 kg cow lies at the 32 to 45 L/d of English and 41 of Irish tables, not at 57'),
    () => {
      for (const ration of [{}, silage]) {
        const { litres } = wet({ ...ration, group1AppetiteShare: 1 });
        expect(litres).toBeGreaterThan(32);
        expect(litres).toBeLessThan(50);
      }
    },
  );

  it(
    figure('fed to need it is less, about the 34 kg of a 567 kg over-wintered cow in Michigan (published)'),
    () => {
      const { litres } = wet({ group1WeightKg: 567 });
      expect(litres / 34).toBeGreaterThan(0.75);
      expect(litres / 34).toBeLessThan(1.25);
      expect(litres).toBeLessThan(wet({ group1WeightKg: 567, group1AppetiteShare: 1 }).litres);
    },
  );

  it(
    recalled(
      'holds 8 to 14 % dry matter before rain and wash water: 12 % in D384.2 (from memory), 8 to 10 in tanks',
    ),
    () => {
      for (const ration of [{}, silage])
        for (const group1AppetiteShare of [0, 1]) {
          const { dryMatter } = wet({ ...ration, group1AppetiteShare });
          expect(dryMatter).toBeGreaterThan(0.08);
          expect(dryMatter).toBeLessThan(0.14);
        }
    },
  );

  it(
    figure(
      'urine share of nitrogen on forage lies near the 0.47 to 0.59 measured (growing steers, published)',
    ),
    () => {
      const tanShare = cow.tanExcretedKg / cow.nitrogenExcretedKg / central('urineTanFraction');
      expect(tanShare).toBeGreaterThan(0.42);
      expect(tanShare).toBeLessThan(0.64);
    },
  );
});

describe(sum('TAN share by diet, 11 kg dry matter and 7 g nitrogen kept a day'), () => {
  it.each([
    [0.08, 0.36],
    [0.105, 0.51],
    [0.14, 0.62],
  ])('crude protein %f', (protein, expected) => {
    const [out] = run(['herd', 'excretion'], {
      herdFactor: 1,
      winterDays: 180,
      group1HeadCount: 1,
      group1WeightKg: 650,
      group1PregnantShare: 1,
      calfNitrogenKg: 0.007 * 180,
      dryMatterEatenKg: 11 * 180,
      nitrogenEatenKg: (11 * 180 * protein) / 6.25,
      digestibility: 0.58,
    });
    expect(out.tanExcretedKg / out.nitrogenExcretedKg).toBeCloseTo(expected, 2);
  });
});

describe(sum('twenty dry cows for 180 days'), () => {
  const [herd] = run(['herd', 'intake', 'excretion'], {
    herdFactor: 1,
    winterDays: 180,
    group1HeadCount: 20,
    group1WeightKg: 650,
    group1PregnantShare: 1,
    group1FedKgPerDay: 11,
    feed1Share: 1,
    feed1CrudeProteinFraction: 0.105,
    feed1PhosphorusFraction: 0.0024,
    feed1PotassiumFraction: 0.02,
    feed1DigestibilityFraction: 0.58,
    calfNitrogenKg: 0.007 * 180,
    calfPhosphorusKg: 0.0019 * 180,
    calfPotassiumKg: 0.0005 * 180,
  });
  it.each([
    ['nitrogenExcretedKg', 640.08],
    ['phosphorusExcretedKg', 88.2],
    ['potassiumExcretedKg', 790.2],
  ] as const)('%s', (name, expected) => {
    expect(herd[name]).toBeCloseTo(expected, 6);
  });
  it('urine share of nitrogen 0.536', () => {
    expect(herd.tanExcretedKg / 0.95 / herd.nitrogenExcretedKg).toBeCloseTo(0.536, 3);
  });
  it('dry matter of excreta within 5 % of 5.22 kg a cow and day, 12 L of urine at 5 %', () => {
    expect(herd.dryMatterExcretedKg / 3600 / 5.22).toBeGreaterThan(0.95);
    expect(herd.dryMatterExcretedKg / 3600 / 5.22).toBeLessThan(1.05);
  });
});

/** Cold counted by coat, without a limit. */
const FORMS = { coldNoneForm: 0, coldAirForm: 0, coldNeedLimitFraction: 9, windChillC: 0 };

describe(figure('need in the cold (published: North Dakota and Oklahoma State University Extension)'), () => {
  it.each([
    ['12.7 lb TDN, effective 4 °F, critical 18 °F', 4, 18, 0.018, 12.7, 14.48, 0.02],
    ['16 lb hay, effective 4 °F, critical 32 °F', 4, 32, 0.018, 16, 20.5, 0.05],
    ['wet coat, 59 °F, 2 % a degree Fahrenheit: 110 % more', 4, 59, 0.036, 1, 2.1, 0.005],
  ])('%s', (_, effectiveF, criticalF, perC, ration, expected, tolerance) => {
    const critical = celsius(criticalF);
    const rows = { lowerCriticalDryC: critical, lowerCriticalWetC: critical };
    const [out] = run(
      ['intake'],
      { ...FORMS, ...rows, herdFactor: 1, winterDays: 100, coldNeedDryPerC: perC, coldNeedWetPerC: perC },
      celsius(effectiveF),
    );
    expect(Math.abs((1 + out.coldNeedFraction) * ration - expected)).toBeLessThanOrEqual(tolerance);
  });
});

describe(sum('rain on the coat and wind'), () => {
  const out = {
    ...FORMS,
    winterDays: 100,
    herdFactor: 1,
    rainFactor: 1,
    paddockShare: 1,
    wetCoatFraction: 1,
    windChillC: 0,
  };
  const sleet = evenWeather(
    -3,
    Array.from({ length: 20 }, () => ({ dayC: 2, rainMm: 6 })),
  );
  const rows = [out, { ...out, windChillC: 4 }, { ...out, wetCoatFraction: 0 }, { ...out, paddockShare: 0 }];
  const [open, windy, roofed, indoors] = run(['intake'], rows, -3, sleet);

  it('a wet coat counts from its own lower critical temperature, on the days it is wet', () => {
    expect(open.wetCoatDays).toBe(20);
    expect(open.coldWetC).toBeCloseTo((20 * (central('lowerCriticalWetC') - 2)) / 100, 9);
    expect([roofed.wetCoatDays, roofed.coldWetC, indoors.coldWetC]).toEqual([0, 0, 0]);
  });

  it('wind takes off as many degrees as it chills', () => {
    expect(windy.coldWetC - open.coldWetC).toBeCloseTo((20 * 4) / 100, 9);
    expect(windy.coldNeedFraction).toBeGreaterThan(open.coldNeedFraction);
  });

  it('indoors, or under a roof without wind, air alone counts', () => {
    expect(indoors.coldDryC).toBe(roofed.coldDryC);
    expect(indoors.coldNeedFraction).toBeLessThan(open.coldNeedFraction);
  });
});

describe(sum('hay put out for a 600 kg cow at 2 % of live weight, 180 d, 88 % dry matter'), () => {
  it.each([
    ['cone', 0.035, 2543.6],
    ['ring', 0.061, 2614.0],
    ['open ring', 0.205, 3087.5],
  ])('%s', (_, waste, expected) => {
    const [out] = run(['intake'], {
      herdFactor: 1,
      winterDays: 180,
      group1HeadCount: 1,
      group1WeightKg: 600,
      group1FedKgPerDay: 12,
      feed1Share: 1,
      feed1DryMatterFraction: 0.88,
      feedWasteFraction: waste,
    });
    expect(out.dryMatterEatenKg).toBeCloseTo(2160, 6);
    expect(out.feedTonnes * 1000).toBeCloseTo(expected, 1);
  });
});

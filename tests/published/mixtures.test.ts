/**
 * Recipes, absorbency, immobilisation and available carbon against published and derived figures. `published`
 * rows are oracles; `derived` rows were worked out by hand from published inputs and only guard against change.
 */
import { describe, expect, it } from 'vitest';
import { absorbencyAtMoisture } from '../../src/model/bed/absorbency.ts';
import { degradableByLignin, immobilisedPerKg } from '../../src/model/bed/immobilisation.ts';
import {
  mixAvailableCarbonNitrogen,
  mixCarbonNitrogen,
  mixMoisture,
  type Part,
  type Stuff,
  secondForAvailableCarbonNitrogen,
  secondForCarbonNitrogen,
  secondForMoisture,
  twoForMoistureAndCarbonNitrogen,
  waterToAdd,
} from '../../src/model/bed/mixture.ts';
import { central } from '../model/bedCase.ts';
import { type Check, check } from './packCheck.ts';

const stuff = (moisture: number, carbon: number, nitrogen: number, available?: number): Stuff => ({
  moistureFraction: moisture,
  carbonFraction: carbon,
  nitrogenFraction: nitrogen,
  ...(available === undefined ? {} : { availableCarbonFraction: available }),
});
const kg = (massKg: number | null, of: Stuff): Part => ({ ...of, massKg: massKg ?? Number.NaN });

const grass = stuff(0.77, 0.45, 0.024);
const leaves = stuff(0.35, 0.5, 0.0075);
const layer = stuff(0.7, 0.6, 0.06);
const layerSawdust = stuff(0.35, 0.55, 0.0011);
const manure = stuff(0.81, 0.456, 0.024, 0.6);
const wheat = stuff(0.12, 0.508, 0.004, 0.5);
const straw = stuff(0.14, 0.45, 0.006);
const handbookStraw = stuff(0.12, 0.56, 0.007);
const barley = stuff(0.12, 0.45, 0.006);
const sawdust = stuff(0.39, 0.5, 0.00113);
const softChips = stuff(0.3, 0.5769, 0.0009, 0.08);
const hardSawdust = stuff(0.3, 0.504, 0.0009, 0.4);

const CORNELL = 'Cornell composting, moisture and C:N calculation (Richard 1996), grass clippings and leaves';
const NRAES = 'NRAES-54 (1992) chapter 3 sample calculation, layer manure and sawdust; inputs recalled';
const TABLE_A1 = 'worked from NRAES-54 (1992) Table A.1 cattle manure and straw';
const MIX = 'worked from the two-material equations of NRAES-54 (1992)';
const SOAK = 'worked from the soak value at 10 % moisture (MWPS bedding table)';
const IMMOBILISED = 'stoichiometry with yield 0.35 and microbial C:N 8';
const LIGNIN = 'line of Chandler et al. 1980 at the lignin of the material';

const both = (carbonNitrogen: number) =>
  twoForMoistureAndCarbonNitrogen(kg(1000, manure), barley, sawdust, 0.65, carbonNitrogen) ?? [
    Number.NaN,
    Number.NaN,
  ];
const availableOfStraw = mixAvailableCarbonNitrogen([
  kg(1000, manure),
  kg(secondForCarbonNitrogen(kg(1000, manure), wheat, 30), wheat),
]);
const microbes = { yieldFraction: 0.35, carbonNitrogen: 8 };
const lignin = (fraction: number) =>
  degradableByLignin(fraction, central('ligninBoundIntercept'), central('ligninBoundSlope'));

const CHECKS: readonly Check[] = [
  [
    'leaves for 60 % moisture, kg',
    CORNELL,
    'published',
    () => secondForMoisture(kg(10, grass), leaves, 0.6),
    6.8,
    0.05,
  ],
  [
    'moisture of 10 g that dry to 2.3 g',
    CORNELL,
    'published',
    () => mixMoisture([kg(2.3, stuff(0, 0, 0)), kg(7.7, stuff(1, 0, 0))]),
    0.77,
    1e-9,
  ],
  [
    'leaves for C:N 30, kg',
    CORNELL,
    'published',
    () => secondForCarbonNitrogen(kg(10, grass), leaves, 30),
    3.5,
    0.05,
  ],
  [
    'leaves for C:N 30, all digits',
    CORNELL,
    'derived',
    () => secondForCarbonNitrogen(kg(10, grass), leaves, 30),
    3.474,
    0.0005,
  ],
  [
    'moisture of that mix',
    CORNELL,
    'derived',
    () => mixMoisture([kg(10, grass), kg(secondForCarbonNitrogen(kg(10, grass), leaves, 30), leaves)]),
    0.6617,
    5e-5,
  ],
  [
    'C:N of the 60 % mix',
    CORNELL,
    'published',
    () => mixCarbonNitrogen([kg(10, grass), kg(6.8, leaves)]),
    37,
    0.5,
  ],
  [
    'C:N of the 60 % mix, all digits',
    CORNELL,
    'derived',
    () => mixCarbonNitrogen([kg(10, grass), kg(6.8, leaves)]),
    36.73,
    0.005,
  ],
  [
    'sawdust for 60 % moisture, kg',
    NRAES,
    'from memory',
    () => secondForMoisture(kg(1, layer), layerSawdust, 0.6),
    0.4,
    0.0005,
  ],
  [
    'C:N of that mix',
    NRAES,
    'derived',
    () => mixCarbonNitrogen([kg(1, layer), kg(0.4, layerSawdust)]),
    17.66,
    0.005,
  ],
  [
    'sawdust for C:N 25, kg',
    NRAES,
    'from memory',
    () => secondForCarbonNitrogen(kg(1, layer), layerSawdust, 25),
    0.795,
    0.0005,
  ],
  [
    'moisture of that mix',
    NRAES,
    'derived',
    () =>
      mixMoisture([kg(1, layer), kg(secondForCarbonNitrogen(kg(1, layer), layerSawdust, 25), layerSawdust)]),
    0.545,
    0.0005,
  ],
  [
    'wheat straw for C:N 30, kg per t manure',
    TABLE_A1,
    'derived',
    () => secondForCarbonNitrogen(kg(1000, manure), wheat, 30),
    146.9,
    0.05,
  ],
  [
    'moisture of that mix',
    TABLE_A1,
    'derived',
    () => mixMoisture([kg(1000, manure), kg(146.9, wheat)]),
    0.7216,
    5e-5,
  ],
  [
    'wheat straw for 65 % moisture',
    TABLE_A1,
    'derived',
    () => secondForMoisture(kg(1000, manure), wheat, 0.65),
    301.9,
    0.05,
  ],
  [
    'C:N of that mix',
    TABLE_A1,
    'derived',
    () => mixCarbonNitrogen([kg(1000, manure), kg(301.9, wheat)]),
    39.41,
    0.01,
  ],
  [
    'wheat straw for 60 % moisture',
    TABLE_A1,
    'derived',
    () => secondForMoisture(kg(1000, manure), wheat, 0.6),
    437.5,
    0.05,
  ],
  [
    'C:N of that mix',
    TABLE_A1,
    'derived',
    () => mixCarbonNitrogen([kg(1000, manure), kg(437.5, wheat)]),
    46.27,
    0.01,
  ],
  [
    'straw of 45 % C and 0.6 % N for C:N 30',
    TABLE_A1,
    'derived',
    () => secondForCarbonNitrogen(kg(1000, manure), straw, 30),
    216,
    0.05,
  ],
  [
    'handbook straw for C:N 30',
    TABLE_A1,
    'derived',
    () => secondForCarbonNitrogen(kg(1000, manure), handbookStraw, 30),
    162.9,
    0.05,
  ],
  [
    'moisture of that mix',
    TABLE_A1,
    'derived',
    () =>
      mixMoisture([
        kg(1000, manure),
        kg(secondForCarbonNitrogen(kg(1000, manure), handbookStraw, 30), handbookStraw),
      ]),
    0.7134,
    1e-4,
  ],
  ['barley straw for 65 % and C:N 45', MIX, 'derived', () => both(45)[0], 125.08, 0.005],
  ['sawdust for 65 % and C:N 45', MIX, 'derived', () => both(45)[1], 360.42, 0.005],
  ['barley straw for 65 % and C:N 50', MIX, 'derived', () => both(50)[0], 59.89, 0.005],
  ['sawdust for 65 % and C:N 50', MIX, 'derived', () => both(50)[1], 493.3, 0.005],
  ['available C:N of manure and wheat straw at C:N 30', MIX, 'derived', () => availableOfStraw, 16.71, 0.005],
  [
    'softwood chips for C:N 30',
    MIX,
    'derived',
    () => secondForCarbonNitrogen(kg(1000, manure), softChips, 30),
    130.3,
    0.05,
  ],
  [
    'available C:N of that mix',
    MIX,
    'derived',
    () => mixAvailableCarbonNitrogen([kg(1000, manure), kg(130.3, softChips)]),
    12.11,
    0.005,
  ],
  [
    'softwood chips to equal straw in available C:N',
    MIX,
    'derived',
    () => secondForAvailableCarbonNitrogen(kg(1000, manure), softChips, availableOfStraw),
    1111,
    1,
  ],
  [
    'hardwood sawdust to equal straw in available C:N',
    MIX,
    'derived',
    () => secondForAvailableCarbonNitrogen(kg(1000, manure), hardSawdust, availableOfStraw),
    185.3,
    0.1,
  ],
  ['wheat straw at 12 %', SOAK, 'derived', () => absorbencyAtMoisture(2.2, 0.1, 0.12), 2.13, 0.005],
  ['wheat straw at 20 %', SOAK, 'derived', () => absorbencyAtMoisture(2.2, 0.1, 0.2), 1.84, 0.005],
  ['wheat straw at 30 %', SOAK, 'derived', () => absorbencyAtMoisture(2.2, 0.1, 0.3), 1.49, 0.005],
  ['pine chips at 20 %', SOAK, 'derived', () => absorbencyAtMoisture(3, 0.1, 0.2), 2.56, 0.005],
  ['pine chips at 30 %', SOAK, 'derived', () => absorbencyAtMoisture(3, 0.1, 0.3), 2.11, 0.005],
  ['pine chips at 50 %', SOAK, 'derived', () => absorbencyAtMoisture(3, 0.1, 0.5), 1.22, 0.005],
  ['hardwood chips at 20 %', SOAK, 'derived', () => absorbencyAtMoisture(1.5, 0.1, 0.2), 1.22, 0.005],
  ['hardwood chips at 30 %', SOAK, 'derived', () => absorbencyAtMoisture(1.5, 0.1, 0.3), 0.94, 0.005],
  ['hardwood chips at 45 %', SOAK, 'derived', () => absorbencyAtMoisture(1.5, 0.1, 0.45), 0.53, 0.005],
  ['sawdust at 12 %', SOAK, 'derived', () => absorbencyAtMoisture(2.5, 0.1, 0.12), 2.42, 0.005],
  ['sawdust at 39 %', SOAK, 'derived', () => absorbencyAtMoisture(2.5, 0.1, 0.39), 1.37, 0.005],
  ['sawdust at 50 %', SOAK, 'derived', () => absorbencyAtMoisture(2.5, 0.1, 0.5), 0.94, 0.005],
  [
    'barley straw binds near the 6.7 kg/t of EMEP/EEA 3.B (value recalled)',
    IMMOBILISED,
    'from memory',
    () => 1000 * immobilisedPerKg(0.45, 0.006, 0.5, microbes),
    6.7,
    0.2,
  ],
  [
    'barley straw binds, kg/t',
    IMMOBILISED,
    'derived',
    () => 1000 * immobilisedPerKg(0.45, 0.006, 0.5, microbes),
    6.84,
    0.005,
  ],
  [
    'softwood chips bind, kg/t',
    IMMOBILISED,
    'derived',
    () => 1000 * immobilisedPerKg(0.5, 0.0009, 0.08, microbes),
    1.68,
    0.005,
  ],
  [
    'softwood sawdust binds, kg/t',
    IMMOBILISED,
    'derived',
    () => 1000 * immobilisedPerKg(0.5, 0.00113, 0.12, microbes),
    2.49,
    0.005,
  ],
  [
    'hardwood sawdust binds, kg/t',
    IMMOBILISED,
    'derived',
    () => 1000 * immobilisedPerKg(0.5, 0.001, 0.4, microbes),
    8.35,
    0.005,
  ],
  ['lignin 17 %', LIGNIN, 'from memory', () => lignin(0.17), 0.354, 5e-4],
  ['lignin 21 %', LIGNIN, 'from memory', () => lignin(0.21), 0.242, 5e-4],
  ['lignin 22 %', LIGNIN, 'from memory', () => lignin(0.22), 0.214, 5e-4],
  ['lignin 28 %', LIGNIN, 'from memory', () => lignin(0.28), 0.046, 5e-4],
];

describe('recipes, soaking and binding', () => {
  it.each(CHECKS)('%s (%s; %s)', check);
});

describe('a circulated mistake', () => {
  // A published recipe page mass-averages C:N of poultry litter (7.5) and wheat straw (130) for a target of 30
  // and prints 90 % litter; even done as meant the average gives 0.816. Nitrogen must weight the average.
  const share = (litter: Stuff, wheatStraw: Stuff) => {
    const second = secondForCarbonNitrogen(kg(1, litter), wheatStraw, 30) ?? Number.NaN;
    return 1 / (1 + second);
  };
  const litterOf = (nitrogen: number, moisture: number) => stuff(moisture, 7.5 * nitrogen, nitrogen);
  const strawOf = (nitrogen: number, moisture: number) => stuff(moisture, 130 * nitrogen, nitrogen);

  it('is not repeated: the litter share is far from 0.816 and from 0.90', () => {
    const shares = [
      share(litterOf(0.04, 0.25), strawOf(0.0035, 0.12)),
      share(litterOf(0.05, 0.3), strawOf(0.004, 0.1)),
    ];
    for (const litter of shares) {
      expect(litter).toBeLessThan(0.6);
      expect(Math.abs(litter - 0.816)).toBeGreaterThan(0.2);
      expect(Math.abs(litter - 0.898)).toBeGreaterThan(0.2);
    }
  });

  it('would be right only for equal nitrogen and moisture', () => {
    expect(share(stuff(0.2, 0.075, 0.01), stuff(0.2, 1.3, 0.01))).toBeCloseTo(0.8163, 4);
  });
});

describe('a recipe that cannot be', () => {
  it('has no answer rather than a negative one', () => {
    expect(secondForMoisture(kg(10, grass), leaves, 0.9)).toBeNull();
    expect(secondForCarbonNitrogen(kg(10, grass), leaves, 90)).toBeNull();
    expect(twoForMoistureAndCarbonNitrogen(kg(1000, manure), barley, sawdust, 0.65, 20)).toBeNull();
  });

  it('needs water when too dry, and less than none when too wet', () => {
    const mix = [kg(100, straw)];
    const water = waterToAdd(mix, 0.6);
    expect(mixMoisture([...mix, kg(water, stuff(1, 0, 0))])).toBeCloseTo(0.6, 12);
    expect(waterToAdd([kg(100, manure)], 0.6)).toBeLessThan(0);
  });
});

/**
 * Recipes, absorbency, immobilisation and available carbon against published and derived figures. The recipes of
 * others are laid as a bedding mix, so that the blend they print is the blend the bedding stage makes.
 */
import { describe, expect, it } from 'vitest';
import { absorbencyAtMoisture } from '../../src/model/bed/absorbency.ts';
import { degradableByLignin, immobilisedPerKg } from '../../src/model/bed/immobilisation.ts';
import { central, runCase } from '../model/bedCase.ts';
import { figure, sum } from './labels.ts';
import { type Check, eachCheck } from './packCheck.ts';

interface Stuff {
  readonly MoistureFraction: number;
  readonly CarbonFraction: number;
  readonly NitrogenFraction: number;
  readonly AvailableCarbonFraction: number;
}
const stuff = (moisture: number, carbon: number, nitrogen: number, available = 1): Stuff => ({
  MoistureFraction: moisture,
  CarbonFraction: carbon,
  NitrogenFraction: nitrogen,
  AvailableCarbonFraction: available,
});

/** Moisture, C:N and available C:N of a heap of these, kg each as it lies. */
function blend(...parts: readonly (readonly [kg: number, of: Stuff])[]) {
  const all = parts.reduce((kg, part) => kg + part[0], 0);
  const { values } = runCase(['bedding'], {
    columns: { winterDays: 100, liveWeightKg: 1000, bedShare: 1, beddingRateKgPer100Kg: 1 },
    // The name only fills what a recipe does not say.
    mix: parts.map(([kg, of]) => ({ material: 'barleyStraw', share: kg / all, fields: { ...of } })),
  });
  return {
    moisture: values.waterMaterialKg / (values.waterMaterialKg + values.dryMatterMaterialKg),
    carbonNitrogen: values.carbonMaterialKg / values.nitrogenMaterialKg,
    available: values.availableCarbonMaterialKg / values.nitrogenMaterialKg,
  };
}

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

const microbes = { yieldFraction: 0.35, carbonNitrogen: 8 };
const lignin = (fraction: number) =>
  degradableByLignin(fraction, central('ligninBoundIntercept'), central('ligninBoundSlope'));

// biome-ignore format: one recipe a line
const CHECKS: readonly Check[] = [
  ['10 kg of grass and 6.8 of leaves: moisture', CORNELL, 'published', () => blend([10, grass], [6.8, leaves]).moisture, 0.6, 0.001],
  ['10 kg of grass and 3.5 of leaves: C:N', CORNELL, 'published', () => blend([10, grass], [3.5, leaves]).carbonNitrogen, 30, 0.1],
  ['10 kg of grass and 6.8 of leaves: C:N', CORNELL, 'published', () => blend([10, grass], [6.8, leaves]).carbonNitrogen, 37, 0.5],
  ['10 kg of grass and 3.474 of leaves: C:N', CORNELL, 'derived', () => blend([10, grass], [3.474, leaves]).carbonNitrogen, 30, 0.002],
  ['10 kg of grass and 3.474 of leaves: moisture', CORNELL, 'derived', () => blend([10, grass], [3.474, leaves]).moisture, 0.6617, 5e-5],
  ['10 kg of grass and 6.8 of leaves: C:N, all digits', CORNELL, 'derived', () => blend([10, grass], [6.8, leaves]).carbonNitrogen, 36.73, 0.005],
  ['1 of layer manure and 0.4 of sawdust: moisture', NRAES, 'from memory', () => blend([1, layer], [0.4, layerSawdust]).moisture, 0.6, 0.0005],
  ['1 of layer manure and 0.4 of sawdust: C:N', NRAES, 'derived', () => blend([1, layer], [0.4, layerSawdust]).carbonNitrogen, 17.66, 0.005],
  ['1 of layer manure and 0.795 of sawdust: C:N', NRAES, 'from memory', () => blend([1, layer], [0.795, layerSawdust]).carbonNitrogen, 25, 0.01],
  ['1 of layer manure and 0.795 of sawdust: moisture', NRAES, 'derived', () => blend([1, layer], [0.795, layerSawdust]).moisture, 0.545, 0.0005],
  ['146.9 kg of wheat straw per t manure: C:N', TABLE_A1, 'derived', () => blend([1000, manure], [146.9, wheat]).carbonNitrogen, 30, 0.01],
  ['146.9 kg of wheat straw per t manure: moisture', TABLE_A1, 'derived', () => blend([1000, manure], [146.9, wheat]).moisture, 0.7216, 5e-5],
  ['301.9 kg of wheat straw per t manure: moisture', TABLE_A1, 'derived', () => blend([1000, manure], [301.9, wheat]).moisture, 0.65, 5e-5],
  ['301.9 kg of wheat straw per t manure: C:N', TABLE_A1, 'derived', () => blend([1000, manure], [301.9, wheat]).carbonNitrogen, 39.41, 0.01],
  ['437.5 kg of wheat straw per t manure: moisture', TABLE_A1, 'derived', () => blend([1000, manure], [437.5, wheat]).moisture, 0.6, 5e-5],
  ['437.5 kg of wheat straw per t manure: C:N', TABLE_A1, 'derived', () => blend([1000, manure], [437.5, wheat]).carbonNitrogen, 46.27, 0.01],
  ['216 kg of straw of 45 % C and 0.6 % N per t manure: C:N', TABLE_A1, 'derived', () => blend([1000, manure], [216, straw]).carbonNitrogen, 30, 0.01],
  ['162.9 kg of handbook straw per t manure: C:N', TABLE_A1, 'derived', () => blend([1000, manure], [162.9, handbookStraw]).carbonNitrogen, 30, 0.01],
  ['162.9 kg of handbook straw per t manure: moisture', TABLE_A1, 'derived', () => blend([1000, manure], [162.9, handbookStraw]).moisture, 0.7134, 1e-4],
  ['125.08 kg of barley straw and 360.42 of sawdust per t: moisture', MIX, 'derived', () => blend([1000, manure], [125.08, barley], [360.42, sawdust]).moisture, 0.65, 5e-5],
  ['125.08 kg of barley straw and 360.42 of sawdust per t: C:N', MIX, 'derived', () => blend([1000, manure], [125.08, barley], [360.42, sawdust]).carbonNitrogen, 45, 0.01],
  ['59.89 kg of barley straw and 493.3 of sawdust per t: moisture', MIX, 'derived', () => blend([1000, manure], [59.89, barley], [493.3, sawdust]).moisture, 0.65, 5e-5],
  ['59.89 kg of barley straw and 493.3 of sawdust per t: C:N', MIX, 'derived', () => blend([1000, manure], [59.89, barley], [493.3, sawdust]).carbonNitrogen, 50, 0.01],
  ['146.9 kg of wheat straw per t manure: available C:N', MIX, 'derived', () => blend([1000, manure], [146.9, wheat]).available, 16.71, 0.005],
  ['130.3 kg of softwood chips per t manure: C:N', MIX, 'derived', () => blend([1000, manure], [130.3, softChips]).carbonNitrogen, 30, 0.01],
  ['130.3 kg of softwood chips per t manure: available C:N', MIX, 'derived', () => blend([1000, manure], [130.3, softChips]).available, 12.11, 0.005],
  ['1111 kg of softwood chips equal that straw in available C:N', MIX, 'derived', () => blend([1000, manure], [1111, softChips]).available, 16.71, 0.01],
  ['185.3 kg of hardwood sawdust equal that straw in available C:N', MIX, 'derived', () => blend([1000, manure], [185.3, hardSawdust]).available, 16.71, 0.01],
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
  ['barley straw binds near the 6.7 kg/t of EMEP/EEA 3.B (value recalled)', IMMOBILISED, 'from memory', () => 1000 * immobilisedPerKg(0.45, 0.006, 0.5, microbes), 6.7, 0.2],
  ['barley straw binds, kg/t', IMMOBILISED, 'derived', () => 1000 * immobilisedPerKg(0.45, 0.006, 0.5, microbes), 6.84, 0.005],
  ['softwood chips bind, kg/t', IMMOBILISED, 'derived', () => 1000 * immobilisedPerKg(0.5, 0.0009, 0.08, microbes), 1.68, 0.005],
  ['softwood sawdust binds, kg/t', IMMOBILISED, 'derived', () => 1000 * immobilisedPerKg(0.5, 0.00113, 0.12, microbes), 2.49, 0.005],
  ['hardwood sawdust binds, kg/t', IMMOBILISED, 'derived', () => 1000 * immobilisedPerKg(0.5, 0.001, 0.4, microbes), 8.35, 0.005],
  ['lignin 17 %', LIGNIN, 'from memory', () => lignin(0.17), 0.354, 5e-4],
  ['lignin 21 %', LIGNIN, 'from memory', () => lignin(0.21), 0.242, 5e-4],
  ['lignin 22 %', LIGNIN, 'from memory', () => lignin(0.22), 0.214, 5e-4],
  ['lignin 28 %', LIGNIN, 'from memory', () => lignin(0.28), 0.046, 5e-4],
];

describe('recipes, soaking and binding', () => eachCheck(CHECKS));

describe('a circulated mistake', () => {
  // A published recipe page mass-averages C:N of poultry litter (7.5) and wheat straw (130) for a target of 30 and
  // prints 90 % litter; even done as meant the average gives 81.6 %. Nitrogen must weight the average.
  const litterOf = (nitrogen: number, moisture: number) => stuff(moisture, 7.5 * nitrogen, nitrogen);
  const strawOf = (nitrogen: number, moisture: number) => stuff(moisture, 130 * nitrogen, nitrogen);

  it.each([
    [81.6, litterOf(0.04, 0.25), strawOf(0.0035, 0.12)],
    [81.6, litterOf(0.05, 0.3), strawOf(0.004, 0.1)],
    [90, litterOf(0.04, 0.25), strawOf(0.0035, 0.12)],
  ])(
    figure('is not repeated: %f % of litter stay far below the C:N of 30 it was to have'),
    (litter, a, b) => {
      expect(blend([litter, a], [100 - litter, b]).carbonNitrogen).toBeLessThan(15);
    },
  );

  it(sum('would be right only for equal nitrogen and moisture'), () => {
    expect(blend([81.633, litterOf(0.01, 0.2)], [18.367, strawOf(0.01, 0.2)]).carbonNitrogen).toBeCloseTo(
      30,
      2,
    );
  });
});

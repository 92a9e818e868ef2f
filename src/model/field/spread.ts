/** Slurry and compost on the field → ammonia by technique and incorporation, what enters the soil, area needed. */
import { quantity } from '../engine/quantity.ts';
import { WEEKS } from '../series.ts';
import { temperatureFactor, weighed } from '../slurry/ammonia.ts';
import {
  logistic,
  shifted,
  TWO_POOL_CENTRE,
  TWO_POOL_MOST_PERCENT,
  twoPoolLoss,
  workedInFactor,
} from './spreadLoss.ts';

const intoSoil = (manure: string, matter: string, when: string) =>
  quantity(`${manure} ${matter} into the soil`, 'kg', `${matter} in ${manure} − ammonia at spreading`, {
    when,
  });

const workedIn = (manure: string, when: string) =>
  quantity(
    `ammonia of spread ${manure} worked in, against left on the surface`,
    'fraction',
    'part of the loss that is gone when it is worked in + rest × what it still loses; in the second form the factor of the guidance',
    { source: ['hafner2025', 'unece2014'], when },
  );

/** Where the fits to the open data set are centred. */
const ONE_LINE_CENTRE = { dryMatterPercent: 6, temperatureC: 10, windMPerS: 3 } as const;
/** Ten to the power of `x`: an exponential costs a third of a power. */
const tenTo = (x: number) => Math.exp(x * Math.LN10);

/** Weeks before and after that of spreading, whose mean is the temperature of its month. */
const AROUND = 2;

/** Mean of the weeks around `middle` that the weather knows; past the end of the year it starts again. */
function meanAround(temperatureC: Float64Array, i: number, middle: number): number {
  let sum = 0;
  let known = 0;
  for (let k = -AROUND; k <= AROUND; k++) {
    const celsius = temperatureC[i * WEEKS + ((middle + k + WEEKS) % WEEKS)];
    if (Number.isNaN(celsius)) continue;
    sum += celsius;
    known++;
  }
  return known > 0 ? sum / known : 0;
}

/** Dry matter against the centre of the two-pool regression, %; held where the regression ends. */
function dryFromCentre(percent: number): number {
  return Math.min(percent, TWO_POOL_MOST_PERCENT) - TWO_POOL_CENTRE.dryMatterPercent;
}

export const spreading = {
  spreadTemperatureC: quantity(
    'temperature at spreading',
    '°C',
    'mean of the five weeks around the middle of the month of spreading, in this weather',
  ).of(['weekTemperatureC', 'spreadDay'], (i, temperature, day) =>
    meanAround(temperature, i, Math.max(0, Math.floor(day[i] / 7))),
  ),
  spreadWindUsedMPerS: quantity(
    'wind over the spreading ground',
    'm/s',
    'the wind given for the day of spreading; or else that of a middling field',
  ).of(['spreadWindGivenMPerS', 'spreadWindMPerS'], (i, given, usual) =>
    // Not given stands as NaN.
    Math.max(0, given[i] >= 0 ? given[i] : usual[i]),
  ),
  slurryDryMatterPercent: quantity(
    'dry matter of slurry as it is spread',
    '%',
    'dry matter in slurry leaving the store ÷ (slurry × density)',
    { when: 'slurryShare' },
  ).of(['slurryDryMatterKg', 'slurryM3', 'slurryDensityKgPerM3'], (i, dry, volume, density) => {
    const mass = volume[i] * density[i];
    return mass > 0 ? Math.min(100, (100 * dry[i]) / mass) : 0;
  }),
  spreadOneLineFraction: quantity(
    'TAN lost in 72 h from slurry left on the surface, one-line fit',
    'fraction',
    'logistic of: intercept + slope × (temperature − 10 °C) + slope × (wind − 3 m/s) + slope × (dry matter − 6 %, up to the most the fit holds for) + technique',
    { source: ['hafner2025'], when: 'slurryShare' },
  ).of(
    [
      'spreadTemperatureC', 'spreadWindUsedMPerS', 'slurryDryMatterPercent', 'spreadDryMatterMostFraction',
      'spreadLossIntercept', 'spreadLossPerC', 'spreadLossPerMs', 'spreadLossPerDryMatterPercent', 'spreadLossTechnique',
    ], // biome-ignore format: one list
    (i, temperature, wind, dry, most, intercept, perC, perMs, perDry, technique) =>
      logistic(
        intercept[i] +
          perC[i] * (temperature[i] - ONE_LINE_CENTRE.temperatureC) +
          perMs[i] * (wind[i] - ONE_LINE_CENTRE.windMPerS) +
          perDry[i] * (Math.min(dry[i], 100 * most[i]) - ONE_LINE_CENTRE.dryMatterPercent) +
          technique[i],
      ),
  ),
  spreadFastFraction: quantity(
    'TAN of slurry at once on the surface, two-pool regression',
    'fraction',
    'logistic of: intercept + slope × (dry matter − 6 %, up to 10 %) + technique',
    { source: ['hafner2019'], when: 'slurryShare' },
  ).of(
    ['slurryDryMatterPercent', 'twoPoolFast', 'twoPoolFastPerDryMatterPercent', 'twoPoolFastTechnique'],
    (i, dry, intercept, perDry, technique) =>
      logistic(intercept[i] + perDry[i] * dryFromCentre(dry[i]) + technique[i]),
  ),
  spreadRatePerHour: quantity(
    'rate at which ammonia leaves the surface, two-pool regression',
    '1/h',
    '10 to the power of: intercept + technique + slope × (dry matter − 6 %) + slope × (pH − 7.5) + slope × (temperature − 13 °C) + slope × (√wind − √2.7)',
    { source: ['hafner2019'], when: 'slurryShare' },
  ).of(
    [
      'slurryDryMatterPercent', 'slurryPh', 'spreadTemperatureC', 'spreadWindUsedMPerS', 'twoPoolRate',
      'twoPoolRateTechnique', 'twoPoolRatePerDryMatterPercent', 'twoPoolRatePerPh', 'twoPoolRatePerC',
      'twoPoolRatePerRootMs',
    ], // biome-ignore format: one list
    (i, dry, ph, temperature, wind, intercept, technique, perDry, perPh, perC, perRoot) =>
      tenTo(
        intercept[i] +
          technique[i] +
          perDry[i] * dryFromCentre(dry[i]) +
          perPh[i] * (ph[i] - TWO_POOL_CENTRE.ph) +
          perC[i] * (temperature[i] - TWO_POOL_CENTRE.temperatureC) +
          perRoot[i] * (Math.sqrt(wind[i]) - Math.sqrt(TWO_POOL_CENTRE.windMPerS)),
      ),
  ),
  spreadTwoPoolFraction: quantity(
    'TAN lost from slurry left on the surface, two-pool regression',
    'fraction',
    'what a fast and a slow pool give off in 168 h: the fast one gives off and soaks in, the slow one gives off and binds',
    { source: ['hafner2019'], when: 'slurryShare' },
  ).of(
    [
      'spreadFastFraction', 'spreadRatePerHour', 'twoPoolSoakRate', 'twoPoolSlowRate', 'twoPoolSlowPerPh', 'slurryPh',
      'twoPoolSlowTechnique', 'twoPoolBoundRate',
    ], // biome-ignore format: one list
    (i, fast, rate, soak, slow, perPh, ph, technique, bound) =>
      twoPoolLoss(
        fast[i],
        rate[i],
        tenTo(soak[i]),
        tenTo(slow[i] + perPh[i] * (ph[i] - TWO_POOL_CENTRE.ph) + technique[i]),
        tenTo(bound[i]),
      ),
  ),
  spreadSurfaceFraction: quantity(
    'TAN lost from slurry left on the surface',
    'fraction',
    'one-line fit, or in the second form the two-pool regression, moved by what the day does beyond temperature and wind',
    { source: ['hafner2025', 'hafner2019'], when: 'slurryShare' },
  ).of(
    ['spreadOneLineFraction', 'spreadTwoPoolFraction', 'spreadTwoPoolForm', 'spreadDayEffect'],
    (i, line, pools, form, effect) => shifted(weighed(form[i], line[i], pools[i]), effect[i]),
  ),
  slurryWorkedInFactor: workedIn('slurry', 'slurryShare').of(
    [
      'incorporationHours', 'slurryLossHalfHours', 'slurryBuriedFactor', 'incorporationForm', 'spreadIncorporationFactor',
    ], // biome-ignore format: one list
    (i, hours, half, buried, form, table) =>
      weighed(form[i], workedInFactor(hours[i], half[i], buried[i]), table[i]),
  ),
  compostWorkedInFactor: workedIn('compost or litter', 'packShare').of(
    [
      'incorporationHours', 'solidLossHalfHours', 'solidBuriedFactor', 'incorporationForm', 'spreadIncorporationFactor',
    ], // biome-ignore format: one list
    (i, hours, half, buried, form, table) =>
      weighed(form[i], workedInFactor(hours[i], half[i], buried[i]), table[i]),
  ),
  slurrySpreadAmmoniaKg: quantity(
    'ammonia from spread slurry (N)',
    'kg',
    'TAN in slurry × share lost on the surface × factor of working in, at most all of it',
    { source: ['hafner2025', 'hafner2019', 'unece2014'], when: 'slurryShare' },
  ).of(
    ['slurryTanKg', 'spreadSurfaceFraction', 'slurryWorkedInFactor'],
    (i, tan, lost, factor) => tan[i] * Math.min(1, lost[i] * factor[i]),
  ),
  compostSpreadAmmoniaKg: quantity(
    'ammonia from spread compost or litter (N)',
    'kg',
    'TAN in compost × share lost on the surface at 10 °C × e^(slope × (temperature − 10 °C)), not below the least, × factor of working in, at most all of it',
    { source: ['hafner2025', 'unece2014'], when: 'packShare' },
  ).of(
    [
      'compostTanKg', 'spreadTemperatureC', 'solidSpreadFraction', 'solidSpreadPerC', 'solidSpreadLeastFraction',
      'compostWorkedInFactor',
    ], // biome-ignore format: one list
    (i, tan, temperature, lost, perC, least, factor) => {
      const surface = lost[i] * temperatureFactor(temperature[i], perC[i], ONE_LINE_CENTRE.temperatureC);
      return tan[i] * Math.min(1, Math.min(1, Math.max(least[i], surface)) * factor[i]);
    },
  ),
  spreadAmmoniaKg: quantity(
    'ammonia at spreading (N)',
    'kg',
    'ammonia from spread slurry + from spread compost',
  ).sum(['slurrySpreadAmmoniaKg', 'compostSpreadAmmoniaKg']),
  slurrySoilNitrogenKg: intoSoil('slurry', 'nitrogen', 'slurryShare').minus('slurryNitrogenKg', [
    'slurrySpreadAmmoniaKg',
  ]),
  slurrySoilTanKg: intoSoil('slurry', 'TAN', 'slurryShare').minus('slurryTanKg', ['slurrySpreadAmmoniaKg']),
  compostSoilNitrogenKg: intoSoil('compost', 'nitrogen', 'packShare').minus('compostNitrogenKg', [
    'compostSpreadAmmoniaKg',
  ]),
  compostSoilTanKg: intoSoil('compost', 'TAN', 'packShare').minus('compostTanKg', ['compostSpreadAmmoniaKg']),
  areaForNitrogenHa: quantity(
    'ground needed under the nitrogen limit',
    'ha',
    '(nitrogen in slurry + in compost, as spread) ÷ nitrogen limit a hectare; losses in house and store count, those at spreading do not: check the local rule',
    { source: ['euNitrates1991'] },
  ).of(['slurryNitrogenKg', 'compostNitrogenKg', 'nitrogenCapKgPerHa'], (i, slurry, compost, cap) =>
    cap[i] > 0 ? (slurry[i] + compost[i]) / cap[i] : 0,
  ),
  areaForPhosphorusHa: quantity(
    'ground needed under the phosphorus limit',
    'ha',
    '(phosphorus in slurry + in compost) ÷ phosphorus limit a hectare: check the local rule',
    { source: ['sjvfs200462'] },
  ).of(['slurryPhosphorusKg', 'compostPhosphorusKg', 'phosphorusCapKgPerHa'], (i, slurry, compost, cap) =>
    cap[i] > 0 ? (slurry[i] + compost[i]) / cap[i] : 0,
  ),
  areaNeededHa: quantity(
    'ground needed for spreading',
    'ha',
    'the larger of the ground needed under the nitrogen and the phosphorus limit',
  ).of(['areaForNitrogenHa', 'areaForPhosphorusHa'], (i, nitrogen, phosphorus) =>
    Math.max(nitrogen[i], phosphorus[i]),
  ),
};

/** What is kept in money: fertiliser that need not be bought, of this year and the next, and organic matter. */
import { quantity } from '../engine/quantity.ts';

/** What of a nutrient is worth paying for: what the soil test says; where there is none, a share of the tables. */
const wanted = <const Matter extends 'phosphorus' | 'potassium'>(matter: Matter, field: Capitalize<Matter>) =>
  quantity(
    `part of the ${matter} used that is worth its price`,
    'fraction',
    `1 where the soil test finds ${matter} short, 0 where it has enough; without a test the share of the tables`,
    { source: ['teagascSoil2015'] },
  ).of(
    [`${matter}Needed`, `untested${field}NeedFraction`] as const,
    // Without a test stands as NaN.
    (i, tested, untested) => (tested[i] >= 0 ? tested[i] : untested[i]),
  );

/** A fertiliser price on what the crops use; the compost's part of it goes where the compost has its own price. */
const worthOf = (matter: string, field: string) =>
  quantity(
    `worth of the ${matter} kept`,
    'money',
    `${matter} for the first crop × fertiliser price × part the soil needs; without the compost's part where the farm gives its own price for compost`,
  ).of(
    [
      `${matter}PricePerKg`, `paddock${field}UsedKg`, `ground${field}UsedKg`, `compost${field}Fraction`,
      'compostPricePerTonne', `${matter}WantedFraction`,
    ] as const, // biome-ignore format: one list
    (i, price, pasture, ground, ofCompost, own, part) =>
      // No own price stands as 0, or NaN where the tables have no row.
      price[i] * part[i] * (pasture[i] + ground[i] * (1 - ofCompost[i] * (own[i] > 0 ? 1 : 0))),
  );

export const worth = {
  phosphorusWantedFraction: wanted('phosphorus', 'Phosphorus'),
  potassiumWantedFraction: wanted('potassium', 'Potassium'),
  compostValue: quantity(
    "worth of the compost at the farm's own price",
    'money',
    "compost × the farm's own price a tonne; 0 where no price is given",
    { when: 'packShare' },
  ).of(['compostTonnes', 'compostPricePerTonne'], (i, tonnes, price) =>
    price[i] > 0 ? tonnes[i] * price[i] : 0,
  ),
  nitrogenValue: quantity(
    'worth of the nitrogen kept',
    'money',
    "nitrogen for the first crop × fertiliser price; without the compost's part where the farm gives its own price for compost",
  ).of(
    [
      'nitrogenPricePerKg', 'paddockNitrogenUsedKg', 'groundNitrogenUsedKg', 'compostNitrogenFraction',
      'compostPricePerTonne',
    ], // biome-ignore format: one list
    (i, price, pasture, ground, ofCompost, own) =>
      price[i] * (pasture[i] + ground[i] * (1 - ofCompost[i] * (own[i] > 0 ? 1 : 0))),
  ),
  compostOrganicFraction: quantity(
    'part of compost in the organic nitrogen spread',
    'fraction',
    'organic nitrogen of compost ÷ organic nitrogen of slurry and compost',
    { when: 'packShare' },
  ).of(['compostOrganicNitrogenKg', 'slurryOrganicNitrogenKg'], (i, compost, slurry) =>
    compost[i] > 0 ? compost[i] / (compost[i] + slurry[i]) : 0,
  ),
  nitrogenLaterValue: quantity(
    'worth of the nitrogen of the second and third year',
    'money',
    "nitrogen released in the second year ÷ (1 + interest rate) + in the third ÷ (1 + interest rate)², × fertiliser price; without the compost's part where the farm gives its own price for compost",
  ).of(
    [
      'nitrogenPricePerKg', 'groundNitrogenSecondYearKg', 'paddockNitrogenSecondYearKg', 'laterYearsFactor', 'interestRate',
      'compostOrganicFraction', 'compostPricePerTonne',
    ], // biome-ignore format: one list
    (i, price, ground, paddock, third, rate, ofCompost, own) => {
      const second = paddock[i] + ground[i] * (1 - ofCompost[i] * (own[i] > 0 ? 1 : 0));
      const later = 1 / (1 + rate[i]);
      return price[i] * second * (later + third[i] * later * later);
    },
  ),
  organicMatterValue: quantity(
    'worth of the organic matter',
    'money',
    'stable carbon × its price a tonne; 0 unless the farm prices it',
  ).of(['humusCarbonKg', 'organicMatterPricePerTonne'], (i, carbon, price) =>
    price[i] > 0 ? (carbon[i] / 1000) * price[i] : 0,
  ),
  phosphorusValue: worthOf('phosphorus', 'Phosphorus'),
  potassiumValue: worthOf('potassium', 'Potassium'),
  nutrientValue: quantity(
    'worth of the nutrients kept',
    'money',
    "nitrogen, phosphorus and potassium for the first crop × fertiliser prices, as far as the soil needs them, + nitrogen of later years at its discounted worth + organic matter where it has a price; where the farm gives its own price for compost, that price stands in place of the compost's nutrients",
  ).sum([
    'compostValue', 'nitrogenValue', 'phosphorusValue', 'potassiumValue', 'nitrogenLaterValue', 'organicMatterValue',
  ]), // biome-ignore format: one list
};

/** What is kept → what the crops of the next years can use, capped by their need. */
import { quantity } from '../engine/quantity.ts';
import { lesserOverGround } from './lesser.ts';

const CAP =
  'on spreading ground at most the need of the crop × area, on the paddock at most the need of pasture × the ground reached (by urine for nitrogen and potassium), apart for the spots where animals gather and for the rest';
const IN_BALANCE =
  'what could be available in the first year − what the crops need; in the balance, worth nothing';

const kg = (label: string, formula: string, source?: readonly string[]) =>
  quantity(label, 'kg', formula, { source });
const routeKg = (label: string, formula: string, when: string) => quantity(label, 'kg', formula, { when });

/** What is organic in it: the whole less what is mineral. */
const organic = (label: string, whole: string, mineral: string, when?: string) =>
  quantity(label, 'kg', 'nitrogen − mineral nitrogen, not below 0', { when }).of(
    [whole, mineral],
    (i, all, free) => Math.max(0, all[i] - free[i]),
  );

/** What of the organic nitrogen that was spread turns mineral in the first year. */
const released = (manure: 'slurry' | 'compost', when: string) =>
  routeKg(
    `organic nitrogen of ${manure} released in the first year`,
    `organic nitrogen of ${manure} into the soil × share released in the first year`,
    when,
  ).product([`${manure}OrganicNitrogenKg`, `${manure}MineralisedFraction`]);

/** What is left of organic nitrogen after the first year gives in the second as it gave before, times the decay. */
function nextYearKg(organicKg: number, releasedKg: number, mineralised: number, decay: number): number {
  return Math.max(0, organicKg - releasedKg) * Math.min(1, mineralised * decay);
}

const VARIED = 'soil differs from spot to spot, so some go short where others have more than they use';

const onGround = (matter: string, field: string) =>
  kg(
    `${matter} the crop on spreading ground uses`,
    `the lesser of what could be available and the need of the crop × ground that is spread; ${VARIED}`,
    ['morton2000', 'schmidt2002'],
  ).of(
    [`ground${field}UsableKg`, `crop${field}NeedKgPerHa`, 'groundSpreadHa', 'soilTestCvFraction'] as const,
    (i, usable, need, area, cv) => lesserOverGround(usable[i], need[i] * area[i], cv[i]),
  );

/**
 * What pasture can use of what fell on it, kg: at most its need on the ground that was reached, apart for the spots
 * where animals gather and for the rest, since grass between cannot use what lies elsewhere.
 */
function usedOnPaddock(
  fallen: number,
  needKgPerHa: number,
  spotShare: number,
  spotHa: number,
  restHa: number,
  cv: number,
): number {
  return (
    lesserOverGround(fallen * spotShare, needKgPerHa * spotHa, cv) +
    lesserOverGround(fallen * (1 - spotShare), needKgPerHa * restHa, cv)
  );
}

const usedByPasture = (matter: string) =>
  routeKg(
    `${matter} the pasture uses`,
    `the lesser of what could be available and the need of pasture × the ground reached, apart for the spots where animals gather and for the rest; ${VARIED}`,
    'paddockShare',
  );

const byReach = (matter: string, field: string) =>
  usedByPasture(matter).of(
    [
      `paddock${field}UsableKg`, `pasture${field}NeedKgPerHa`, 'spotExcretaFraction', 'spotReachedHa', 'restReachedHa',
      'soilTestCvFraction',
    ] as const, // biome-ignore format: one list
    (i, usable, need, spot, spotHa, restHa, cv) =>
      usedOnPaddock(usable[i], need[i], spot[i], spotHa[i], restHa[i], cv[i]),
  );

const surplus = (field: string) =>
  [
    `ground${field}UsableKg`,
    `paddock${field}UsableKg`,
    `ground${field}UsedKg`,
    `paddock${field}UsedKg`,
  ] as const;

/** `a` as a share of `whole`; 0 of nothing. */
function part(a: number, whole: number): number {
  return whole > 0 ? a / whole : 0;
}

export const value = {
  slurryOrganicNitrogenKg: organic(
    'organic nitrogen of slurry into the soil',
    'slurrySoilNitrogenKg',
    'slurrySoilTanKg',
    'slurryShare',
  ),
  compostOrganicNitrogenKg: organic(
    'organic nitrogen of compost into the soil',
    'compostSoilNitrogenKg',
    'compostSoilTanKg',
    'packShare',
  ),
  slurryNitrogenReleasedKg: released('slurry', 'slurryShare'),
  compostNitrogenReleasedKg: released('compost', 'packShare'),
  groundNitrogenUsableKg: kg(
    'nitrogen a first crop could find on spreading ground',
    'mineral nitrogen left after drainage, with what the organic nitrogen of slurry and compost released in the first year',
  ).same('soilMineralKg'),
  paddockNitrogenUsableKg: routeKg(
    'nitrogen pasture finds on the paddock',
    'what herbage takes from urine and dung',
    'paddockShare',
  ).same('paddockNitrogenInCropKg'),
  compostSpreadPhosphorusFraction: quantity(
    'part of compost in the phosphorus spread',
    'fraction',
    'phosphorus in compost ÷ (in slurry + in compost)',
    { when: 'packShare' },
  ).of(['compostPhosphorusKg', 'slurryPhosphorusKg'], (i, compost, slurry) =>
    part(compost[i], slurry[i] + compost[i]),
  ),
  compostPhosphorusUsableKg: routeKg(
    'phosphorus of compost a first crop could find',
    'phosphorus kept in the soil × part of compost in it × share a crop can use in the first year',
    'packShare',
  ).product([
    'soilPhosphorusKeptKg',
    'compostSpreadPhosphorusFraction',
    'compostPhosphorusFirstYearFraction',
  ]),
  groundPhosphorusUsableKg: kg(
    'phosphorus a first crop could find on spreading ground',
    'that of compost + phosphorus kept in the soil × part of slurry in it × share a crop can use in the first year',
  ).of(
    [
      'compostPhosphorusUsableKg', 'soilPhosphorusKeptKg', 'compostSpreadPhosphorusFraction',
      'slurryPhosphorusFirstYearFraction',
    ], // biome-ignore format: one list
    (i, compost, kept, ofCompost, usable) => compost[i] + kept[i] * (1 - ofCompost[i]) * usable[i],
  ),
  paddockPhosphorusUsableKg: routeKg(
    'phosphorus pasture could find on the paddock',
    'phosphorus kept on the paddock × share a crop can use in the first year',
    'paddockShare',
  ).product(['paddockPhosphorusKeptKg', 'dungPhosphorusFirstYearFraction']),
  groundPotassiumUsableKg: kg(
    'potassium a first crop could find on spreading ground',
    'potassium kept in the soil × share a crop can use in the first year',
  ).product(['soilPotassiumKeptKg', 'potassiumFirstYearFraction']),
  paddockPotassiumUsableKg: routeKg(
    'potassium pasture could find on the paddock',
    'potassium kept on the paddock × share a crop can use in the first year',
    'paddockShare',
  ).product(['paddockPotassiumKeptKg', 'potassiumFirstYearFraction']),

  groundSpreadHa: quantity(
    'ground that is spread',
    'ha',
    'ground needed for spreading, at most the ground that can take it',
  ).of(['areaNeededHa', 'receivingHa'], (i, need, have) => Math.min(need[i], have[i])),
  groundNitrogenUsedKg: kg(
    'nitrogen the crop on spreading ground uses',
    'what could be available, at most the need of the crop × ground that is spread',
  ).of(['groundNitrogenUsableKg', 'cropNitrogenNeedKgPerHa', 'groundSpreadHa'], (i, usable, need, area) =>
    Math.min(usable[i], need[i] * area[i]),
  ),
  groundPhosphorusUsedKg: onGround('phosphorus', 'Phosphorus'),
  groundPotassiumUsedKg: onGround('potassium', 'Potassium'),
  paddockNitrogenUsedKg: routeKg(
    'nitrogen the pasture uses',
    'what herbage takes from urine, at most the need of pasture × the ground urine reaches, apart for the spots where animals gather and for the rest; and what it takes from dung',
    'paddockShare',
  ).of(
    [
      'spotUptakeKg', 'restUptakeKg', 'dungUptakeKg', 'pastureNitrogenNeedKgPerHa', 'spotReachedHa', 'restReachedHa',
    ], // biome-ignore format: one list
    (i, spot, rest, dung, need, spotHa, restHa) =>
      Math.min(spot[i], need[i] * spotHa[i]) + Math.min(rest[i], need[i] * restHa[i]) + dung[i],
  ),
  paddockPhosphorusUsedKg: usedByPasture('phosphorus').of(
    [
      'paddockPhosphorusUsableKg', 'pasturePhosphorusNeedKgPerHa', 'spotExcretaFraction', 'paddockHa', 'spotAreaFraction',
      'soilTestCvFraction',
    ], // biome-ignore format: one list
    (i, usable, need, spot, area, spotArea, cv) =>
      usedOnPaddock(usable[i], need[i], spot[i], area[i] * spotArea[i], area[i] * (1 - spotArea[i]), cv[i]),
  ),
  paddockPotassiumUsedKg: byReach('potassium', 'Potassium'),

  nitrogenAvailableKg: kg(
    'nitrogen for the first crop',
    `mineral nitrogen left after drainage + share of the organic nitrogen of slurry, compost and dung released in the first year; ${CAP}`,
    ['rb209', 'eghball2000'],
  ).sum(['groundNitrogenUsedKg', 'paddockNitrogenUsedKg']),
  phosphorusAvailableKg: kg(
    'phosphorus for the first crop',
    `phosphorus kept × share a crop can use in the first year, by kind of manure; ${CAP}`,
    ['rb209', 'eghball2001'],
  ).sum(['groundPhosphorusUsedKg', 'paddockPhosphorusUsedKg']),
  potassiumAvailableKg: kg(
    'potassium for the first crop',
    `potassium kept × share a crop can use in the first year; ${CAP}`,
    ['rb209'],
  ).sum(['groundPotassiumUsedKg', 'paddockPotassiumUsedKg']),
  nitrogenSurplusKg: kg('nitrogen more than the ground can use', IN_BALANCE).of(
    surplus('Nitrogen'),
    (i, ground, paddock, crop, pasture) => ground[i] + paddock[i] - crop[i] - pasture[i],
  ),
  phosphorusSurplusKg: kg('phosphorus more than the ground can use in a year', `${IN_BALANCE} here`).of(
    surplus('Phosphorus'),
    (i, ground, paddock, crop, pasture) => ground[i] + paddock[i] - crop[i] - pasture[i],
  ),
  potassiumSurplusKg: kg('potassium more than the ground can use in a year', `${IN_BALANCE} here`).of(
    surplus('Potassium'),
    (i, ground, paddock, crop, pasture) => ground[i] + paddock[i] - crop[i] - pasture[i],
  ),

  groundNitrogenSecondYearKg: kg(
    'nitrogen of slurry and compost released in the second year',
    'organic nitrogen left after the first year × share released in the first year × decay; in the second form nitrogen into the soil × share of it released in the second year, at most the organic nitrogen that is left',
    ['rb209', 'eghball2001', 'schoenau2015'],
  ).of(
    [
      'slurryOrganicNitrogenKg', 'compostOrganicNitrogenKg', 'slurryNitrogenReleasedKg', 'compostNitrogenReleasedKg',
      'slurryMineralisedFraction', 'compostMineralisedFraction', 'laterYearsFactor', 'laterYearsForm',
      'slurrySoilNitrogenKg', 'compostSoilNitrogenKg', 'slurrySecondYearFraction', 'compostSecondYearFraction',
    ], // biome-ignore format: one list
    (
      i,
      slurry,
      compost,
      slurryGone,
      compostGone,
      ofSlurry,
      ofCompost,
      decay,
      form,
      slurryAll,
      compostAll,
      slurryTable,
      compostTable,
    ) => {
      const left = slurry[i] + compost[i] - slurryGone[i] - compostGone[i];
      const decayed =
        nextYearKg(slurry[i], slurryGone[i], ofSlurry[i], decay[i]) +
        nextYearKg(compost[i], compostGone[i], ofCompost[i], decay[i]);
      const table = Math.min(left, slurryAll[i] * slurryTable[i] + compostAll[i] * compostTable[i]);
      return decayed + form[i] * (table - decayed);
    },
  ),
  paddockNitrogenSecondYearKg: routeKg(
    'nitrogen of dung and urine released in the second year',
    'nitrogen of the paddock bound in soil, roots and dung × share of dung released in the first year × decay; in the second form × share released in the second year',
    'paddockShare',
  ).of(
    [
      'paddockNitrogenBoundKg', 'dungMineralisedFraction', 'laterYearsFactor', 'laterYearsForm', 'dungSecondYearFraction',
    ], // biome-ignore format: one list
    (i, bound, mineralised, decay, form, second) =>
      bound[i] * Math.min(1, (1 - form[i]) * mineralised[i] * decay[i] + form[i] * second[i]),
  ),
  nitrogenAvailableSecondYearKg: kg(
    'nitrogen released in the second year',
    'what slurry and compost on spreading ground + dung on the paddock release in the second year',
    ['eghball2001', 'schoenau2015'],
  ).sum(['groundNitrogenSecondYearKg', 'paddockNitrogenSecondYearKg']),
  nitrogenAvailableThirdYearKg: kg(
    'nitrogen released in the third year',
    'nitrogen released in the second year × decay',
  ).product(['nitrogenAvailableSecondYearKg', 'laterYearsFactor']),

  compostNitrogenFraction: quantity(
    'part of compost in what a first crop could find of nitrogen',
    'fraction',
    '(TAN of compost into the soil + organic nitrogen of compost released) ÷ the same of slurry and compost',
    { when: 'packShare' },
  ).of(
    ['compostSoilTanKg', 'compostNitrogenReleasedKg', 'slurrySoilTanKg', 'slurryNitrogenReleasedKg'],
    (i, compostTan, compostReleased, slurryTan, slurryReleased) => {
      const compost = compostTan[i] + compostReleased[i];
      return part(compost, compost + slurryTan[i] + slurryReleased[i]);
    },
  ),
  compostPhosphorusFraction: quantity(
    'part of compost in what a first crop could find of phosphorus',
    'fraction',
    'phosphorus of compost ÷ phosphorus a first crop could find on spreading ground',
    { when: 'packShare' },
  ).ratio('compostPhosphorusUsableKg', 'groundPhosphorusUsableKg'),
  compostPotassiumFraction: quantity(
    'part of compost in the potassium spread',
    'fraction',
    'potassium in compost ÷ (in slurry + in compost)',
    { when: 'packShare' },
  ).of(['compostPotassiumKg', 'slurryPotassiumKg'], (i, compost, slurry) =>
    part(compost[i], slurry[i] + compost[i]),
  ),
};

/** What is kept → what the crops of the next years can use, capped by their need, and its worth. */
import { defineStage } from '../stage.ts';

const ORGANIC = [
  'slurrySoilNitrogenKg', 'slurrySoilTanKg', 'compostSoilNitrogenKg', 'compostSoilTanKg', 'soilNitrogenKeptKg',
  'soilMineralKg', 'slurryMineralisedFraction', 'compostMineralisedFraction',
] as const; // biome-ignore format: one list
const PADDOCK = ['paddockNitrogenKeptKg', 'paddockMineralKg', 'dungMineralisedFraction'] as const;
const GROUND = ['receivingHa', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'] as const;
const REACHED = ['receivingHa', 'spotExcretaFraction', 'spotReachedHa', 'restReachedHa'] as const;
const PHOSPHORUS = [
  'soilPhosphorusKeptKg', 'slurryPhosphorusKg', 'compostPhosphorusKg', 'paddockPhosphorusKeptKg',
  'slurryPhosphorusFirstYearFraction', 'compostPhosphorusFirstYearFraction', 'dungPhosphorusFirstYearFraction',
  'cropPhosphorusNeedKgPerHa', 'pasturePhosphorusNeedKgPerHa', ...GROUND,
] as const; // biome-ignore format: one list
const POTASSIUM = [
  'soilPotassiumKeptKg', 'paddockPotassiumKeptKg', 'potassiumFirstYearFraction', 'cropPotassiumNeedKgPerHa',
  'pasturePotassiumNeedKgPerHa', ...REACHED,
] as const; // biome-ignore format: one list
const NITROGEN = [
  ...ORGANIC,
  ...PADDOCK,
  'cropNitrogenNeedKgPerHa',
  'pastureNitrogenNeedKgPerHa',
  ...REACHED,
] as const;
const LATER = [
  'slurrySoilNitrogenKg', 'compostSoilNitrogenKg', 'soilNitrogenKeptKg', 'soilMineralKg', 'paddockNitrogenKeptKg',
  'paddockMineralKg', 'slurrySecondYearFraction', 'compostSecondYearFraction', 'dungSecondYearFraction',
] as const; // biome-ignore format: one list

const CAP =
  'on spreading ground at most the need of the crop × area, on the paddock at most the need of pasture × the ground reached (by urine for nitrogen and potassium), apart for the spots where animals gather and for the rest';

export const valueStage = defineStage({
  name: 'value',
  about:
    'First-crop availability by element, what is too much for the ground, later years, and worth in money.',
  reads: [
    'receivingHa', 'paddockHa', 'slurrySoilNitrogenKg', 'slurrySoilTanKg', 'compostSoilNitrogenKg', 'compostSoilTanKg',
    'slurryPhosphorusKg', 'compostPhosphorusKg', 'slurryPotassiumKg', 'compostPotassiumKg', 'soilNitrogenKeptKg',
    'soilMineralKg', 'soilPhosphorusKeptKg', 'soilPotassiumKeptKg', 'paddockNitrogenKeptKg', 'paddockMineralKg',
    'paddockPhosphorusKeptKg', 'paddockPotassiumKeptKg', 'compostTonnes', 'slurryMineralisedFraction',
    'compostMineralisedFraction', 'dungMineralisedFraction', 'slurrySecondYearFraction', 'compostSecondYearFraction',
    'dungSecondYearFraction', 'thirdYearFactor', 'slurryPhosphorusFirstYearFraction', 'compostPhosphorusFirstYearFraction',
    'dungPhosphorusFirstYearFraction', 'potassiumFirstYearFraction', 'cropNitrogenNeedKgPerHa', 'cropPhosphorusNeedKgPerHa',
    'cropPotassiumNeedKgPerHa', 'pastureNitrogenNeedKgPerHa', 'pasturePhosphorusNeedKgPerHa', 'pasturePotassiumNeedKgPerHa',
    'spotExcretaFraction', 'spotAreaFraction', 'spotReachedHa', 'restReachedHa', 'nitrogenPricePerKg', 'phosphorusPricePerKg', 'potassiumPricePerKg', 'compostPricePerTonne',
  ], // biome-ignore format: one list
  makes: {
    nitrogenAvailableKg: {
      label: 'nitrogen for the first crop',
      unit: 'kg',
      formula: `mineral nitrogen left after drainage + share of the organic nitrogen of slurry, compost and dung released in the first year; ${CAP}`,
      from: NITROGEN,
      source: ['rb209', 'eghball2000'],
    },
    phosphorusAvailableKg: {
      label: 'phosphorus for the first crop',
      unit: 'kg',
      formula: `phosphorus kept × share a crop can use in the first year, by kind of manure; ${CAP}`,
      from: PHOSPHORUS,
      source: ['rb209', 'eghball2001'],
    },
    potassiumAvailableKg: {
      label: 'potassium for the first crop',
      unit: 'kg',
      formula: `potassium kept × share a crop can use in the first year; ${CAP}`,
      from: POTASSIUM,
      source: ['rb209'],
    },
    nitrogenSurplusKg: {
      label: 'nitrogen more than the ground can use',
      unit: 'kg',
      formula:
        'what could be available in the first year − what the crops need; in the balance, worth nothing',
      from: NITROGEN,
    },
    phosphorusSurplusKg: {
      label: 'phosphorus more than the ground can use in a year',
      unit: 'kg',
      formula:
        'what could be available in the first year − what the crops need; in the balance, worth nothing here',
      from: PHOSPHORUS,
    },
    potassiumSurplusKg: {
      label: 'potassium more than the ground can use in a year',
      unit: 'kg',
      formula:
        'what could be available in the first year − what the crops need; in the balance, worth nothing here',
      from: POTASSIUM,
    },
    nitrogenAvailableSecondYearKg: {
      label: 'nitrogen released in the second year',
      unit: 'kg',
      formula:
        'nitrogen that entered the soil with slurry, compost and dung × share released in the second year, at most the organic nitrogen that is left',
      from: [...LATER, 'slurryMineralisedFraction', 'compostMineralisedFraction', 'dungMineralisedFraction'],
      source: ['eghball2001', 'schoenau2015'],
    },
    nitrogenAvailableThirdYearKg: {
      label: 'nitrogen released in the third year',
      unit: 'kg',
      formula: 'nitrogen released in the second year × share of it in the year after',
      from: ['nitrogenAvailableSecondYearKg', 'thirdYearFactor'],
    },
    compostValue: {
      label: "worth of the compost at the farm's own price",
      unit: 'money',
      formula: "compost × the farm's own price a tonne; 0 where no price is given",
      from: ['compostTonnes', 'compostPricePerTonne'],
      route: 'pack',
    },
    nutrientValue: {
      label: 'worth of the nutrients kept',
      unit: 'money',
      formula:
        "nitrogen, phosphorus and potassium for the first crop × fertiliser prices; where the farm gives its own price for compost, that price stands in place of the compost's nutrients",
      from: [
        'nitrogenAvailableKg', 'phosphorusAvailableKg', 'potassiumAvailableKg', 'nitrogenPricePerKg', 'phosphorusPricePerKg',
        'potassiumPricePerKg', 'compostValue', 'compostPotassiumKg', 'slurryPotassiumKg',
      ], // biome-ignore format: one list
    },
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const spreadHa = read.receivingHa[i];
      const paddockHa = read.paddockHa[i];
      const spotLoad = read.spotExcretaFraction[i];
      const spotArea = read.spotAreaFraction[i];

      // Organic nitrogen by kind as spread; what the soil stage kept bounds it, so nothing is released twice.
      const slurryOrganic = Math.max(0, read.slurrySoilNitrogenKg[i] - read.slurrySoilTanKg[i]);
      const compostOrganic = Math.max(0, read.compostSoilNitrogenKg[i] - read.compostSoilTanKg[i]);
      const organic = slurryOrganic + compostOrganic;
      const organicKept = Math.max(0, read.soilNitrogenKeptKg[i] - read.soilMineralKg[i]);
      const held = organic > organicKept ? organicKept / organic : 1;
      const fromSlurry = slurryOrganic * held * read.slurryMineralisedFraction[i];
      const fromCompost = compostOrganic * held * read.compostMineralisedFraction[i];
      const tan = read.slurrySoilTanKg[i] + read.compostSoilTanKg[i];
      const compostTanPart = part(read.compostSoilTanKg[i], tan);
      const nitrogen = read.soilMineralKg[i] + fromSlurry + fromCompost;
      const compostNitrogenPart = part(read.soilMineralKg[i] * compostTanPart + fromCompost, nitrogen);

      const dungOrganic = Math.max(0, read.paddockNitrogenKeptKg[i] - read.paddockMineralKg[i]);
      const fromDung = dungOrganic * read.dungMineralisedFraction[i];
      const paddockNitrogen = read.paddockMineralKg[i] + fromDung;

      const compostPhosphorus = read.compostPhosphorusKg[i];
      const compostShare = part(compostPhosphorus, read.slurryPhosphorusKg[i] + compostPhosphorus);
      const phosphorusOfCompost =
        read.soilPhosphorusKeptKg[i] * compostShare * read.compostPhosphorusFirstYearFraction[i];
      const phosphorus =
        phosphorusOfCompost +
        read.soilPhosphorusKeptKg[i] * (1 - compostShare) * read.slurryPhosphorusFirstYearFraction[i];
      const paddockPhosphorus = read.paddockPhosphorusKeptKg[i] * read.dungPhosphorusFirstYearFraction[i];

      const potassium = read.soilPotassiumKeptKg[i] * read.potassiumFirstYearFraction[i];
      const compostPotassiumPart = part(
        read.compostPotassiumKg[i],
        read.slurryPotassiumKg[i] + read.compostPotassiumKg[i],
      );
      const paddockPotassium = read.paddockPotassiumKeptKg[i] * read.potassiumFirstYearFraction[i];

      const nitrogenSpread = Math.min(nitrogen, read.cropNitrogenNeedKgPerHa[i] * spreadHa);
      const nitrogenDung = usedOnPaddock(
        paddockNitrogen,
        read.pastureNitrogenNeedKgPerHa[i],
        spotLoad,
        read.spotReachedHa[i],
        read.restReachedHa[i],
      );
      const phosphorusSpread = Math.min(phosphorus, read.cropPhosphorusNeedKgPerHa[i] * spreadHa);
      const phosphorusDung = usedOnPaddock(
        paddockPhosphorus,
        read.pasturePhosphorusNeedKgPerHa[i],
        spotLoad,
        paddockHa * spotArea,
        paddockHa * (1 - spotArea),
      );
      const potassiumSpread = Math.min(potassium, read.cropPotassiumNeedKgPerHa[i] * spreadHa);
      const potassiumDung = usedOnPaddock(
        paddockPotassium,
        read.pasturePotassiumNeedKgPerHa[i],
        spotLoad,
        read.spotReachedHa[i],
        read.restReachedHa[i],
      );

      write.nitrogenAvailableKg[i] = nitrogenSpread + nitrogenDung;
      write.phosphorusAvailableKg[i] = phosphorusSpread + phosphorusDung;
      write.potassiumAvailableKg[i] = potassiumSpread + potassiumDung;
      write.nitrogenSurplusKg[i] = nitrogen + paddockNitrogen - nitrogenSpread - nitrogenDung;
      write.phosphorusSurplusKg[i] = phosphorus + paddockPhosphorus - phosphorusSpread - phosphorusDung;
      write.potassiumSurplusKg[i] = potassium + paddockPotassium - potassiumSpread - potassiumDung;

      const second =
        Math.min(
          read.slurrySoilNitrogenKg[i] * read.slurrySecondYearFraction[i] +
            read.compostSoilNitrogenKg[i] * read.compostSecondYearFraction[i],
          Math.min(organic, organicKept) - fromSlurry - fromCompost,
        ) + Math.min(read.paddockNitrogenKeptKg[i] * read.dungSecondYearFraction[i], dungOrganic - fromDung);
      write.nitrogenAvailableSecondYearKg[i] = second;
      write.nitrogenAvailableThirdYearKg[i] = second * read.thirdYearFactor[i];

      // No own price stands as 0, or NaN where the tables have no row.
      const own = read.compostPricePerTonne[i] > 0;
      const replaced = own ? 1 : 0;
      const compostValue = own ? read.compostTonnes[i] * read.compostPricePerTonne[i] : 0;
      write.compostValue[i] = compostValue;
      write.nutrientValue[i] =
        compostValue +
        read.nitrogenPricePerKg[i] * (nitrogenDung + nitrogenSpread * (1 - compostNitrogenPart * replaced)) +
        read.phosphorusPricePerKg[i] *
          (phosphorusDung + phosphorusSpread * (1 - part(phosphorusOfCompost, phosphorus) * replaced)) +
        read.potassiumPricePerKg[i] *
          (potassiumDung + potassiumSpread * (1 - compostPotassiumPart * replaced));
    }
  },
});

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
): number {
  return (
    Math.min(fallen * spotShare, needKgPerHa * spotHa) +
    Math.min(fallen * (1 - spotShare), needKgPerHa * restHa)
  );
}

/** `a` as a share of `whole`; 0 of nothing. */
function part(a: number, whole: number): number {
  return whole > 0 ? a / whole : 0;
}

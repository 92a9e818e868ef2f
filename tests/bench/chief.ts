/** The results the bench keeps: what a comparison of scenarios shows first, and what is often absent. */
export const CHIEF = [
  'headCount', 'nitrogenExcretedKg', 'nitrogenAmmoniaKg', 'nitrogenNitrousKg', 'nitrogenDinitrogenKg',
  'nitrogenLeachedKg', 'nitrogenRunoffKg', 'nitrogenKeptKg', 'nitrogenAvailableKg', 'phosphorusKeptKg',
  'potassiumKeptKg', 'beddingTonnes', 'packDepthM', 'packMoisture', 'compostTonnes', 'slurryM3', 'storeNeededM3',
  'grassLostTonnes', 'labourHours', 'capitalCost', 'annualCost', 'nutrientValue', 'netCost', 'netCostPerHead',
  'netPresentValue', 'greenhouseGasTonnes', 'fundingGap', 'internalRateOfReturn', 'paybackYears', 'debtServiceCover',
  'costPerNitrogenKeptKg',
] as const; // biome-ignore format: one list

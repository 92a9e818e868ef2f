/** What scenarios are compared on, in the order a keeper asks: what stays, what it takes. */
import type { ResultName } from './quantities.ts';

/** Which way a quantity is better. */
export type Better = 'more' | 'less';

export type Question = 'stays' | 'takes';

export interface Comparison {
  readonly name: ResultName;
  readonly question: Question;
  /** Which way is better; absent where neither is. */
  readonly better?: Better;
  /** Short words for a card's row. */
  readonly short: string;
  /** For sentences: "keeps 140 kg more nitrogen", "costs 300 EUR less". */
  readonly verb: string;
  readonly noun: string;
}

const row = (
  name: ResultName,
  question: Question,
  better: Better | undefined,
  short: string,
  verb: string,
  noun: string,
): Comparison => ({
  name,
  question,
  ...(better ? { better } : {}),
  short,
  verb,
  noun,
});

export const COMPARISONS: readonly Comparison[] = [
  row('nitrogenKeptKg', 'stays', 'more', 'nitrogen kept', 'keeps', 'nitrogen'),
  row('nitrogenAvailableKg', 'stays', 'more', 'for the first crop', 'gives', 'nitrogen to the first crop'),
  row('nitrogenInCropKg', 'stays', undefined, 'of what is there: in a crop', 'has', 'nitrogen in a crop'),
  row('nitrogenBoundKg', 'stays', undefined, 'bound in soil or compost', 'has', 'nitrogen bound'),
  row('nitrogenAtRiskKg', 'stays', 'less', 'still at risk of drainage', 'has', 'nitrogen still at risk'),
  row('phosphorusKeptKg', 'stays', 'more', 'phosphorus kept', 'keeps', 'phosphorus'),
  row('potassiumKeptKg', 'stays', 'more', 'potassium kept', 'keeps', 'potassium'),
  row('carbonKeptKg', 'stays', 'more', 'carbon to the soil', 'returns', 'carbon to the soil'),
  row(
    'nitrogenBroughtKg',
    'stays',
    undefined,
    'nitrogen brought in with bedding',
    'brings in',
    'nitrogen with bedding',
  ),
  row('nitrogenLostKg', 'stays', 'less', 'nitrogen lost, all paths', 'loses', 'nitrogen'),
  row('compostTonnes', 'stays', undefined, 'compost', 'makes', 'compost'),
  row('compostM3', 'stays', undefined, 'compost, volume', 'makes', 'compost'),
  row('slurryM3', 'stays', undefined, 'slurry', 'makes', 'slurry'),
  row('nitrogenAmmoniaKg', 'stays', 'less', 'lost to the air as ammonia', 'loses', 'nitrogen as ammonia'),
  row('nitrogenLeachedKg', 'stays', 'less', 'washed out below the roots', 'loses', 'nitrogen to drainage'),
  row('greenhouseGasTonnes', 'stays', 'less', 'greenhouse gas', 'gives off', 'greenhouse gas'),
  row('labourHours', 'takes', 'less', 'hours of work', 'takes', 'work'),
  row('capitalCost', 'takes', 'less', 'to build', 'costs', 'to build'),
  row('annualCost', 'takes', 'less', 'cost a year', 'costs', 'a year'),
  row('nutrientValue', 'takes', 'more', 'worth of nutrients kept', 'keeps', 'worth of nutrients'),
  row('netCost', 'takes', 'less', 'net cost a year', 'costs', 'net a year'),
  row('netCostPerHead', 'takes', 'less', 'net cost a head', 'costs', 'net a head'),
  row('feedTonnes', 'takes', 'less', 'feed put out', 'puts out', 'feed'),
  row('conditionKgPerHead', 'takes', undefined, 'condition gained or lost', 'puts on', 'condition a head'),
  row('beddingTonnes', 'takes', undefined, 'bedding', 'uses', 'bedding'),
  row('grassLostTonnes', 'takes', 'less', 'grass lost', 'loses', 'grass (dry matter)'),
];

/** Which way a quantity is better, where it is one the scenarios are compared on. */
export function betterOf(name: string): Better | undefined {
  return COMPARISONS.find((c) => c.name === name)?.better;
}

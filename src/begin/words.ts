/** How options are said to a keeper. */
import type { ANIMAL_CLASSES } from '../notebook/schema.ts';

/** `siltyClayLoam` as "silty clay loam". */
export const spoken = (option: string): string =>
  option.replace(/([A-Z]|\d+)/g, (part) => ` ${part.toLowerCase()}`).trim();

export const CLASS_WORDS: Readonly<Record<(typeof ANIMAL_CLASSES)[number], string>> = {
  sucklerCow: 'suckler cows',
  bull: 'bulls',
  heifer: 'heifers',
  steer: 'steers',
  weanling: 'weanlings',
  calf: 'calves',
  finisher: 'finishing cattle',
};

/** The same of one animal. */
export const ONE_WORDS: typeof CLASS_WORDS = {
  sucklerCow: 'suckler cow',
  bull: 'bull',
  heifer: 'heifer',
  steer: 'steer',
  weanling: 'weanling',
  calf: 'calf',
  finisher: 'finishing animal',
};

/** A country as it stands in a sentence: "in the United States". */
export const countryInSentence = (label: string): string =>
  /^(United|Netherlands)/.test(label) ? `the ${label}` : label;

const SAID: Readonly<Record<string, string>> = {
  grassCut1: 'grass, one cut',
  grassCut2: 'grass, two cuts',
  fixed: 'stay in one place',
  monthly: 'moved once a month',
  weekly: 'moved once a week',
  daily: 'moved every day',
  open: 'open to the wind',
  windbreak: 'behind a windbreak or wood',
  atlanticGrassland: 'wet Atlantic grassland',
  balticHills: 'hills inland of the Baltic',
  maritimeCoast: 'cold, wet east coast',
  siltyClayLoam: 'silty clay loam (heavy)',
  clay: 'clay (heavy)',
  us: 'pounds, acres, feet',
  metric: 'kilograms, hectares, metres',
};

export const said = (option: string): string =>
  SAID[option] ??
  (Object.hasOwn(CLASS_WORDS, option) ? CLASS_WORDS[option as keyof typeof CLASS_WORDS] : spoken(option));

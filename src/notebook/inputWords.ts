/**
 * What an input is called on the page, its unit and the subject it stands under. Most follow from its key, whose end is
 * its unit; only what a key does not say in plain words stands here.
 */
import { INPUT_FAMILIES, INPUTS } from './inputs.ts';

export const SUBJECTS = [
  'place and winter',
  'herd',
  'feed',
  'ground',
  'where they stand',
  'shed',
  'bed and materials',
  'slats and slurry',
  'compost',
  'spreading',
  'money',
  'loan and grant',
  'own numbers',
  'notebook',
] as const;
export type Subject = (typeof SUBJECTS)[number];

/** The first of these a pattern begins with, scenario and farm in front left out. */
const SUBJECT_OF: readonly (readonly [string, Subject])[] = [
  ['money.prices', 'own numbers'],
  ['finance.quotes', 'own numbers'],
  ['coefficients', 'own numbers'],
  ['place', 'place and winter'],
  ['winter', 'place and winter'],
  ['weather', 'place and winter'],
  ['soil', 'ground'],
  ['land', 'ground'],
  ['paddock', 'ground'],
  ['herd', 'herd'],
  ['feeder', 'feed'],
  ['feed', 'feed'],
  ['materials', 'bed and materials'],
  ['bed', 'bed and materials'],
  ['placement', 'where they stand'],
  ['exposure', 'where they stand'],
  ['system', 'where they stand'],
  ['spaceRules', 'shed'],
  ['shed', 'shed'],
  ['slats', 'slats and slurry'],
  ['compost', 'compost'],
  ['spreading', 'spreading'],
  ['money', 'money'],
  ['finance', 'loan and grant'],
];

/** A pattern without what only says whose it is. */
const bare = (pattern: string) => pattern.replace(/^scenarios\.\*\./, '').replace(/^farm\./, '');

export function subjectOf(pattern: string): Subject {
  const at = bare(pattern);
  return SUBJECT_OF.find(([start]) => at === start || at.startsWith(`${start}.`))?.[1] ?? 'notebook';
}

const LABELS: Readonly<Record<string, string>> = {
  'place.name': 'name of the place',
  'place.country': 'country, two letters',
  'place.horizonDeg': 'hill or forest towards the noon sun',
  'winter.start': 'first day of winter',
  'winter.end': 'last day of winter',
  'weather.year': 'winter of the weather file, by the year it starts in',
  'weather.seed': 'seed of made-up days',
  'weather.monthly.rainMm': 'rain of a month, January to December',
  'weather.monthly.temperatureC': 'mean temperature, January to December',
  'weather.monthly.rangeC': 'range from night to day, January to December',
  'weather.monthly.wetDays': 'wet days of a month, January to December',
  'soil.needs': 'what a soil test finds short',
  'land.crop': 'crop that gets the manure',
  'land.nitrateZone': 'in a nitrate zone',
  'herd.*.class': 'kind of animal',
  'herd.*.fedTo': 'fed to',
  'herd.*.calvingDate': 'calving',
  'herd.*.dryMatterKgPerDay': 'dry matter eaten a head, where known',
  'feed.*.pricePerTonne': 'price as fed',
  'materials.*.tonnes': 'on hand or within reach',
  'materials.*.own': 'own material',
  'materials.*.moistureFraction': 'moisture',
  'materials.*.pricePerTonne': 'price',
  'materials.*.machineHoursPerTonne': 'own machine hours',
  'money.currency': 'currency, three letters',
  'money.year': 'year of the prices',
  'money.prices': 'own prices',
  'money.vat.reclaimed': 'registered, so value added tax comes back',
  'money.vat.worksReclaimed': 'value added tax on the works comes back',
  'money.vat.pricesHoldIt': 'own prices hold value added tax',
  'money.prices.*.value': 'own price',
  'money.labourPerHour': 'worth of an own hour',
  exposure: 'shelter',
  system: 'way of wintering',
  because: 'why this scenario is here',
  'paddock.moved': 'paddock moved',
  'placement.yardTo': 'yard scrapings go to',
  'slats.house': 'walls of the slatted house',
  'slats.store': 'cover of the store',
  'slats.emptiedClean': 'store emptied clean in autumn',
  'spreading.implement': 'worked in with',
  'spreading.incorporation': 'worked in',
  'spreading.month': 'month of spreading',
  'bed.mix': 'bedding mix',
  'bed.cleanOut': 'day of the clean-out',
  'compost.way': 'heap',
  'compost.cover': 'cover of the heap',
  'compost.compacted': 'pressed down by the loader',
  'compost.amendments': 'mixed into the heap',
  'compost.amendments.*.tonnes': 'mixed in',
  'finance.capital': 'cost of all works, where known',
  'finance.baseline': 'held against',
  'finance.quotes': 'quotes for lines of the bill',
  'finance.loans': 'loans',
  'finance.alreadyHave.share': 'part of all other works that stands already',
  'finance.alreadyHave.ageYears': 'how old that is',
  'finance.alreadyHave.lines': 'lines of the bill that stand already',
  'finance.alreadyHave.lines.*.what': 'what stands already',
  'finance.alreadyHave.lines.*.share': 'part of it that stands',
  'finance.alreadyHave.lines.*.ageYears': 'how old it is',
  'finance.alreadyHave.lines.*.leftYears': 'years it still has, where looked at',
  'finance.loans.*.kind': 'paid back in',
  'finance.loans.*.rate': 'rate a year',
  'finance.loans.*.amount': 'amount',
  'shed.roofed': 'roof over the bed',
  'shed.feedRoadRoofed': 'roof over the feed road',
  'shed.rearEaveM': 'eave at the rear',
  'shed.openSideAzimuthDeg': 'open side looks to (180: south)',
  'shed.barrierM': 'throat of the feed barrier',
  'shed.barrierLiftM': 'barrier can be raised by',
  'shed.machineTurnM': 'machine turning diameter',
  'shed.bowlLiftM': 'bowls can be raised by',
  'shed.exits': 'ways out of the bed',
  'shed.ridgeSlotM': 'slot at the ridge',
  'shed.inletM2': 'opening for air',
  'shed.ownTimber': 'timber from own wood',
  'shed.basicWindMPerS': 'basic wind speed',
  spaceRules: 'space rules',
  herd: 'groups of the herd',
  feed: 'feeds',
  materials: 'materials on hand or within reach',
  coefficients: 'own numbers in place of the tables',
  'coefficients.*.value': 'own number',
  'coefficients.*.low': 'at least',
  'coefficients.*.high': 'at most',
  'coefficients.*.because': 'where it comes from',
  'money.prices.*.low': 'at least',
  'money.prices.*.high': 'at most',
  'money.prices.*.because': 'where it comes from',
  'finance.quotes.*.unitPrice': 'quoted price',
  'finance.quotes.*.because': 'where it comes from',
  by: 'who asks, for whoever gets a link',
  invented: 'the farm is invented',
  units: 'units shown',
  'draws.count': 'number of draws',
  'draws.seed': 'seed of the draws',
  'decide.weights': 'what you weigh',
  'decide.weights.*': 'weight',
};

/** What is said of an input on the page, where the words of the file's own contract speak of how it is written. */
const NOTES: Readonly<Record<string, string>> = {
  'place.country': 'for local rules to check',
  'weather.year': 'the last whole winter of the file when left open',
  'soil.needs': 'tick nothing where the soil has enough of both',
  'herd.*.fedTo': 'when not said, cows and bulls what they need, growing animals what they will eat',
  'herd.*.dryMatterKgPerDay': 'need or appetite does not count then',
  'feed.*.share': 'the other feeds take up the rest',
  'bed.mix.*.share': 'the other materials take up the rest',
  'decide.weights.*': 'how much it counts beside the others',
  'money.vat.worksFraction': 'counts for each kind that has no own rate below',
  'money.vat.winterFraction':
    'counts for each kind that has no own rate below; none where only the works have one rate',
  'money.vat.rates.materials':
    'building materials, and what repairs take; the rate of the table for the country where nothing stands here or above',
  'money.vat.rates.services':
    'builder, engineer, contractor, vet; the rate of the table for the country where nothing stands here or above',
  'money.vat.rates.feed':
    'feed and straw; the rate of the table for the country where nothing stands here or above',
  'money.vat.rates.machinery':
    'equipment: bowls, feeders, energiser, troughs; the rate of the table for the country where nothing stands here or above',
  'money.vat.rates.fuel':
    'fuel and running of own machines; the rate of the table for the country where nothing stands here or above',
};

export const noteOf = (pattern: string, said: string | undefined): string | undefined =>
  NOTES[bare(pattern)] ?? said;

/** Ends of keys that are units, longest first. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/DryMatterKgPerDay$|^dryMatterKgPerDay$/, 'kg DM/d'],
  [/KgPerDay$/, 'kg/d'],
  [/KgPer100Kg$/, 'kg'],
  [/LitresPerDay$/, 'L/d'],
  [/MPerS$/, 'm/s'],
  [/KnPerM2$/, 'kN/m²'],
  [/HoursPerTonne$/, 'h/t'],
  [/PerTonne$/, 'money/t'],
  [/PerHour$/, 'money/h'],
  [/PerHead$/, 'money/head'],
  [/ServicePerYear$/, 'money'],
  [/PerWeek$/, 'times a week'],
  [/M2$/, 'm²'],
  [/Mm$/, 'mm'],
  [/Deg$/, '°'],
  [/Ha$/, 'ha'],
  [/Kg$/, 'kg'],
  [/(Days|^days)$/, 'd'],
  [/Months$/, 'months'],
  [/([Yy]ears)$/, 'yr'],
  [/Factor$/, '×'],
  [/^tonnes$/, 't'],
  [/^head$/, 'head'],
  [/^(timesStirred)$/, 'times'],
  [/(Share|Fraction|Rate)$|^(share|rate|inflation)$/, 'fraction'],
  [/^(capital|grant|ownMoney|amount|unitPrice)$/, 'money'],
  [/[a-z]M$/, 'm'],
  [/[a-z]C$/, '°C'],
];

/** The unit a key ends in; empty for what is counted or has none. */
export function unitOf(pattern: string): string {
  if (/\.gains\.\*\.(low|high)$/.test(pattern)) return 'money';
  if (/\.vat\.rates\.\w+$/.test(pattern)) return 'fraction';
  const key = pattern.split('.').at(-1) as string;
  return UNITS.find(([end]) => end.test(key))?.[1] ?? '';
}

/** Ends that are no words of a name. */
const UNIT_ENDS =
  /(KgPerDay|KgPer100Kg|LitresPerDay|MPerS|KnPerM2|PerTonne|PerHour|PerHead|PerWeek|M2|Mm|Deg|Ha|Kg|Share|Fraction|Days|(?<=[a-z])M|(?<=[a-z])C)$/;

const modelLabels = new Map<string, string>([
  ...INPUTS.filter(({ column }) => column !== 'spreadDay').map(({ path, label }) => [path, label] as const),
  ...INPUT_FAMILIES.flatMap(({ path, fields }) =>
    Object.values(fields).map(({ key, label }) => [`${path}.*.${key}`, label] as const),
  ),
]);

/** What the place is called: words of its own, those of the model, or those its key spells. */
export function labelOf(pattern: string): string {
  const at = bare(pattern);
  const key = at.split('.').at(-1) as string;
  const known = LABELS[at] ?? modelLabels.get(at) ?? modelLabels.get(`farm.${at}`);
  return known ?? spelt(key.replace(UNIT_ENDS, ''));
}

/** Patterns with words of their own here, for the test that none is left over. */
export const LABELLED = [...Object.keys(LABELS), ...Object.keys(NOTES)];

const WORDS: Readonly<Record<string, string>> = {
  true: 'yes',
  false: 'no',
  grassCut1: 'grass, one cut',
  grassCut2: 'grass, two cuts',
  within4h: 'within 4 hours',
  within12h: 'within 12 hours',
  within24h: 'within 24 hours',
  openSided: 'open on a side',
  closed: 'closed, with vents',
  underSlats: 'under the slats',
  commonPracticeHorned: 'common practice, room for horns',
  euOrganic: 'EU organic',
  unitedKingdom: 'United Kingdom',
  sweden: 'Sweden',
  ireland: 'Ireland',
  straightLine: 'equal parts',
  annuity: 'equal payments',
  outwintered: 'out on pasture',
  slatted: 'slatted shed over slurry',
  'deep-bedded': 'deep bed that becomes compost',
  us: 'United States',
  pack: 'the bed',
  slurry: 'the slurry',
  need: 'what they need',
  appetite: 'what they will eat',
  static: 'left alone',
  none: 'none',
  allShed: 'the whole shed: frame, roof, slab, yard, gates',
  allBed: 'all of the deep bed: floor, walls, barrier, stores',
  allSlats: 'all of the slats: slats, pen walls, barrier',
  allStores: 'all tanks and slurry stores',
  allFences: 'all fences, energiser and windbreak',
  allWater: 'all water: bowls, troughs, pipe, tank',
  allFeeding: 'all feeders',
};

/** An option as words: `siltyClayLoam` is "silty clay loam". */
export const optionWords = (option: string): string => WORDS[option] ?? spelt(option);

const spelt = (name: string) =>
  name.replace(/([a-z0-9])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/** What is asked, step by step: label, what can be answered, and the start that stands where nothing is. */
import {
  ANIMAL_CLASSES,
  CROPS,
  EXPOSURES,
  FED_TO,
  FEEDS,
  MATERIALS,
  PADDOCK_MOVES,
  TEXTURES,
} from '../notebook/schema.ts';
import type { ListName, SectionName } from './answers.ts';
import { CLIMATES, CURRENCIES } from './kinds.ts';
import type { Span } from './typed.ts';
import { said, spoken } from './words.ts';

interface Asked {
  readonly label: string;
  /** Key in the table of starts; in a list it is followed by the option of `by`. Absent: the answer may stay out. */
  readonly start?: string;
  /** What no answer means, where it is not a start of the table. */
  readonly otherwise?: string;
}
export type Field = Asked &
  (
    | ({ readonly kind: 'number' } & Span)
    | { readonly kind: 'choice'; readonly options: readonly (readonly [string, string])[] }
    | { readonly kind: 'text'; readonly most: number }
    | { readonly kind: 'date' }
  );
type Fields = Readonly<Record<string, Field>>;

const words = (options: readonly string[], say = said) => options.map((o) => [o, say(o)] as const);
const choice = (
  label: string,
  options: readonly (readonly [string, string])[],
  more: Omit<Asked, 'label'> = {},
): Field => ({
  kind: 'choice',
  label,
  options,
  ...more,
});
const number = (
  label: string,
  unit: string,
  min: number,
  max: number,
  more: Omit<Asked, 'label'> & { whole?: boolean } = {},
): Field => ({
  kind: 'number',
  label,
  unit,
  min,
  max,
  ...more,
});
const YES_NO = [
  ['yes', 'yes'],
  ['no', 'no'],
] as const;

/** Countries are options of the table, not of the code, so the page fills them in. */
export const FIELDS: Readonly<Record<SectionName, Fields>> = {
  place: {
    country: choice('Country', []),
    name: { kind: 'text', label: 'Name of the place', most: 80 },
    climate: choice('Most like the winter of', words(CLIMATES), { start: 'climate' }),
    rain: choice(
      'And against that, it is',
      [
        ['0.6', 'much drier'],
        ['0.8', 'drier'],
        ['1.25', 'wetter'],
        ['1.5', 'much wetter'],
      ],
      { otherwise: 'as wet' },
    ),
    winterStart: { kind: 'date', label: 'First day of winter feeding', start: 'winterStart' },
    winterEnd: { kind: 'date', label: 'Turned out to grass', start: 'winterEnd' },
    latitudeDeg: number('Latitude', '°', -66, 70, { start: 'latitudeDeg' }),
    longitudeDeg: number('Longitude', '°', -180, 180, { start: 'longitudeDeg' }),
    units: choice('Units', words(['metric', 'us']), { start: 'units' }),
    weatherFile: { kind: 'text', label: 'Own weather file', most: 120 },
  },
  feeding: {
    measure: choice('Amounts are', [['kg', 'kg dry matter a head and day']], {
      otherwise: '% of the dry matter',
    }),
    fedTo: choice(
      'Fed to',
      [
        [FED_TO[0], 'what they need'],
        [FED_TO[1], 'what they will eat'],
      ],
      { otherwise: 'as usual for each kind' },
    ),
  },
  ground: {
    texture: choice('Soil', words(TEXTURES), { start: 'texture' }),
    landHa: number('Land that can take manure', 'ha', 0.1, 5000),
    paddockHa: number('Wintering paddock', 'ha', 0.1, 5000),
    paddockMoved: choice('Out there, feeding places', words(PADDOCK_MOVES), { start: 'paddockMoved' }),
    exposure: choice('Shelter out there', words(EXPOSURES.filter((e) => e !== 'shed')), {
      start: 'exposure',
    }),
    crop: choice('What grows on the land', words(CROPS), { start: 'crop' }),
    nitrateZone: choice('In a nitrate zone', YES_NO, { start: 'nitrateZone' }),
  },
  there: {
    shed: choice(
      'A shed that stands',
      [
        ['slats', 'a shed with slats and tank'],
        ['bed', 'a shed that can take a bed'],
      ],
      { otherwise: 'no shed' },
    ),
    lengthM: number('Its length', 'm', 5, 300),
    depthM: number('Its depth', 'm', 4, 60),
    ownTimber: choice('Timber from own wood', YES_NO, { otherwise: 'no' }),
    longestTimberM: number('Longest timber to be had', 'm', 2, 20, { start: 'longestTimberM' }),
    snowLoadKnPerM2: number('Snow on the ground, by the local map', 'kN/m²', 0, 20, {
      start: 'snowLoadKnPerM2',
    }),
    frostDepthM: number('Depth of frost, by the local code; from the weather where empty', 'm', 0, 5),
  },
  money: {
    currency: choice(
      'Currency',
      words(CURRENCIES, (c) => c),
      { start: 'currency' },
    ),
    labourPerHour: number('Worth of an own hour', 'money/h', 0, 1e4, { start: 'labourPerHour' }),
    strawPerTonne: number('Straw here, delivered', 'money/t', 0, 1e5),
    interestRate: number('Interest on own money', 'fraction', 0, 0.5, { start: 'interestRate' }),
    grant: number('Grant hoped for', 'money', 0, 1e8),
    ownMoney: number('Own money for a shed', 'money', 0, 1e8),
    loan: number('Loan wanted', 'money', 0, 1e8),
    loanRate: number('Interest of the loan', 'fraction', 0, 0.5, { start: 'loanRate' }),
    loanYears: number('Years of the loan', 'yr', 1, 40, { start: 'loanYears', whole: true }),
  },
};

export const ROW_FIELDS: Readonly<Record<ListName, Fields>> = {
  herd: {
    class: choice('Kind', words(ANIMAL_CLASSES)),
    head: number('Head', 'head', 0, 1000, { start: 'head', whole: true }),
    weightKg: number('Weight each', 'kg', 30, 1500, { start: 'weightKg' }),
    hornedShare: choice(
      'Horns',
      [
        ['0.5', 'half of them'],
        ['1', 'all'],
      ],
      { otherwise: 'none' },
    ),
    pregnantShare: number('In calf', 'fraction', 0, 1, { start: 'pregnantShare' }),
    calvingDate: { kind: 'date', label: 'Calving about' },
    gainKgPerDay: number('Gain a day', 'kg/d', -1, 2.5, { start: 'gainKgPerDay' }),
  },
  feed: {
    feed: choice('Feed', words(FEEDS, spoken)),
    amount: number('Amount', 'fraction', 0, 1),
  },
  materials: {
    material: choice('Material', words(MATERIALS, spoken)),
    tonnes: number('Within reach', 't', 0, 1e4),
    own: choice('Whose', [['yes', 'our own']], { otherwise: 'bought' }),
  },
};

/** Kinds that calve, and kinds that grow: what is asked of each. */
export const CALVES: readonly string[] = ['sucklerCow', 'heifer'];
export const GROWS: readonly string[] = ['heifer', 'steer', 'weanling', 'calf', 'finisher'];

/** Feed in kilograms of dry matter a head and day, when the keeper weighs it so. */
export const FEED_KG: Field = number('Amount', 'kg', 0, 30);

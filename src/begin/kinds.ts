/** Every start a new notebook takes from `data/starts.csv`, and what each may be. */
import {
  ANIMAL_CLASSES,
  CROPS,
  EXPOSURES,
  FEEDS,
  PADDOCK_MOVES,
  SPACE_RULES,
  TECHNIQUES,
  TEXTURES,
} from '../notebook/schema.ts';
import type { StartKind } from '../tables/starts.ts';

/** The three shipped climates: their files stand in `data/weather`. */
export const CLIMATES = ['atlanticGrassland', 'balticHills', 'maritimeCoast'] as const;
/** Currencies that have tables of prices. */
export const CURRENCIES = ['EUR', 'GBP', 'CAD', 'USD', 'SEK'] as const;
export const STRAWS = ['wheatStraw', 'barleyStraw', 'oatStraw'] as const;

const number = (unit: string, min: number, max: number): StartKind => ({ kind: 'number', unit, min, max });
const choice = (options: readonly string[]): StartKind => ({ kind: 'choice', options });
const each = (name: string, options: readonly string[], kind: StartKind) =>
  Object.fromEntries(options.map((option) => [`${name}.${option}`, kind]));

export const START_KINDS: Readonly<Record<string, StartKind>> = {
  label: { kind: 'words' },
  units: choice(['metric', 'us']),
  latitudeDeg: number('°', -90, 90),
  longitudeDeg: number('°', -180, 180),
  climate: choice(CLIMATES),
  winterStart: { kind: 'monthDay' },
  winterEnd: { kind: 'monthDay' },
  ...each('head', ANIMAL_CLASSES, number('head', 0, 1000)),
  ...each('weightKg', ANIMAL_CLASSES, number('kg', 30, 1500)),
  ...each('gainKgPerDay', ANIMAL_CLASSES, number('kg/d', -1, 2.5)),
  ...each('pregnantShare', ANIMAL_CLASSES, number('fraction', 0, 1)),
  ...each('feedShare', FEEDS, number('fraction', 0, 1)),
  texture: choice(TEXTURES),
  exposure: choice(EXPOSURES),
  paddockMoved: choice(PADDOCK_MOVES),
  crop: choice(CROPS),
  nitrateZone: choice(['yes', 'no']),
  landHaPerHead: number('ha/head', 0.01, 100),
  paddockHaPerHead: number('ha/head', 0.01, 100),
  strawMaterial: choice(STRAWS),
  currency: choice(CURRENCIES),
  ...each('labourPerHour', CURRENCIES, number('money/h', 0, 1e4)),
  interestRate: number('fraction', 0, 1),
  loanRate: number('fraction', 0, 1),
  loanYears: number('yr', 1, 60),
  priceYear: number('year', 1990, 2100),
  spaceRules: choice(SPACE_RULES),
  snowLoadKnPerM2: number('kN/m²', 0, 20),
  basicWindMPerS: number('m/s', 0, 80),
  longestTimberM: number('m', 0.5, 50),
  eaveBedM: number('m', 2, 20),
  eaveSlatsM: number('m', 2, 20),
  pitchDeg: number('°', 0, 70),
  bayM: number('m', 0.5, 50),
  pushWallM: number('m', 0.1, 5),
  barrierLiftM: number('m', 0, 5),
  bowlLiftM: number('m', 0, 5),
  stanceDepthM: number('m', 0, 10),
  stanceDepthHornedM: number('m', 0, 10),
  startDepthM: number('m', 0, 1),
  bedRowMostM: number('m', 3, 50),
  bedRowLeastM: number('m', 3, 50),
  slatsRowLeastM: number('m', 2.5, 50),
  slatsRowMostM: number('m', 3, 50),
  tankDepthM: number('m', 0.5, 6),
  tankMostM: number('m', 0.5, 6),
  exits: number('exits', 1, 20),
  compostTurns: number('turns', 0, 30),
  slurryMonth: number('month', 1, 12),
  compostMonth: number('month', 1, 12),
  slurryTechnique: choice(TECHNIQUES),
};

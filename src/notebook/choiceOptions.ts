/** Every option of every choice a row of the tables can hang on, as the tables need them to refuse a stray one. */
import { COUNTRIES } from './countries.ts';
import type { CHOICES } from './inputs.ts';
import {
  ANIMAL_CLASSES,
  COMPOST_WAYS,
  CROPS,
  EXPOSURES,
  FEEDERS,
  FEEDS,
  HEAP_COVERS,
  HOUSE_WALLS,
  IMPLEMENTS,
  INCORPORATIONS,
  MATERIALS,
  PADDOCK_MOVES,
  STORE_COVERS,
  TECHNIQUES,
  TEXTURES,
} from './schema.ts';
import { SYSTEM_NAMES } from './systems.ts';

/** Choices of a scenario (the keys of `CHOICES`), and the families herd, feed and bedding. */
export const CHOICE_OPTIONS = {
  system: SYSTEM_NAMES,
  texture: TEXTURES,
  crop: CROPS,
  feeder: FEEDERS,
  exposure: EXPOSURES,
  moved: PADDOCK_MOVES,
  house: HOUSE_WALLS,
  store: STORE_COVERS,
  technique: TECHNIQUES,
  incorporation: INCORPORATIONS,
  implement: IMPLEMENTS,
  way: COMPOST_WAYS,
  cover: HEAP_COVERS,
  country: [...COUNTRIES, 'other'],
  class: ANIMAL_CLASSES,
  feed: FEEDS,
  material: MATERIALS,
} as const satisfies Record<keyof typeof CHOICES, readonly string[]>;

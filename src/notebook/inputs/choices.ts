/** What a scenario chooses by name, and with it rows of the tables. */
import { COUNTRIES } from '../countries.ts';
import type { Scenario } from '../schema.ts';

/** The choices a coefficient's rows can hang on: dimension → the option this scenario picks. */
export const CHOICES: Readonly<Record<string, (s: Scenario) => string>> = {
  system: (s) => s.system,
  texture: (s) => s.farm.soil.texture,
  crop: (s) => s.farm.land.crop,
  feeder: (s) => s.feeder,
  exposure: (s) => s.exposure,
  moved: (s) => s.paddock.moved,
  store: (s) => s.slats.store,
  technique: (s) => s.spreading.technique,
  house: (s) => s.slats.house,
  implement: (s) => s.spreading.implement,
  incorporation: (s) => s.spreading.incorporation,
  way: (s) => s.compost.way,
  cover: (s) => s.compost.cover,
  country: ({ farm: { place } }) => COUNTRIES.find((known) => known === place.country) ?? 'other',
};

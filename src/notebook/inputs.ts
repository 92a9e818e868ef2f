/**
 * Which numbers of a strict scenario become columns of the model, under which name, and which choices pick a
 * row of the coefficient tables. The one place where the shape of a notebook meets the names of the model.
 */
import { BED_INPUTS } from './inputs/bed.ts';
import type { InputColumn } from './inputs/column.ts';
import { FARM_INPUTS } from './inputs/farm.ts';
import { MONEY_INPUTS } from './inputs/money.ts';
import { PLACE_INPUTS } from './inputs/place.ts';
import { SHED_INPUTS } from './inputs/shed.ts';
import { SLURRY_INPUTS } from './inputs/slurry.ts';

export { CHOICES } from './inputs/choices.ts';
export { INPUT_FAMILIES } from './inputs/families.ts';

/** Paths that every slider, sweep and lender may turn; a number at the path unless `of` says otherwise. */
export const INPUTS: readonly InputColumn[] = [
  ...FARM_INPUTS,
  ...PLACE_INPUTS,
  ...SHED_INPUTS,
  ...SLURRY_INPUTS,
  ...BED_INPUTS,
  ...MONEY_INPUTS,
];

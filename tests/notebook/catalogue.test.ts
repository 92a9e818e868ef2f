import { describe, expect, it } from 'vitest';
import {
  CATALOGUE_OF_INPUTS,
  CATALOGUE_OF_LISTS,
  inputAt,
  listAt,
  NOT_EDITABLE,
  notEditable,
  patternOf,
  SUBJECTS,
} from '../../src/notebook/catalogue.ts';
import { INPUT_FAMILIES, INPUTS } from '../../src/notebook/inputs.ts';
import { LABELLED, optionWords } from '../../src/notebook/inputWords.ts';
import { notebookJsonSchema } from '../../src/notebook/jsonSchema.ts';

interface Json {
  readonly properties?: Record<string, Json>;
  readonly items?: Json;
  readonly additionalProperties?: boolean | Json;
  readonly oneOf?: readonly Json[];
  readonly anyOf?: readonly Json[];
  readonly enum?: readonly string[];
}

/** Places a value can stand, read off the generated contract and not off the definition the catalogue is made from. */
function places(json: Json, at: string): string[] {
  const below = (key: string) => (at === '' ? key : `${at}.${key}`);
  if (json.oneOf ?? json.anyOf) return [at];
  if (json.properties)
    return Object.entries(json.properties).flatMap(([key, value]) => places(value, below(key)));
  if (typeof json.additionalProperties === 'object') return places(json.additionalProperties, below('*'));
  if (json.items?.properties ?? json.items?.oneOf ?? json.items?.anyOf)
    return places(json.items as Json, below('*'));
  return [at];
}

const PLACES = places(notebookJsonSchema() as unknown as Json, '');
const patterns = CATALOGUE_OF_INPUTS.map(({ pattern }) => pattern);

/** Counted, or numbers that name a year, a month or a seed. */
const WITHOUT_UNIT =
  /^(waterBowls|exits|turns|count|seed|year|month)$|^(farm\.money\.prices|coefficients)\.|^scenarios\.\*\.farm\.money\.prices\.|^decide\.|\.paidIn\./;

describe('the catalogue of inputs', () => {
  it('has every place the contract knows, or says why not', () => {
    expect(PLACES.length).toBeGreaterThan(150);
    const missing = PLACES.filter((place) => !patterns.includes(place) && notEditable(place) === undefined);
    expect(missing).toEqual([]);
  });

  it('has none the contract does not know, and gives no reason for one that is not there', () => {
    expect(patterns.filter((pattern) => !PLACES.includes(pattern))).toEqual([]);
    const idle = Object.keys(NOT_EDITABLE).filter((place) => !PLACES.includes(place));
    expect(idle).toEqual([]);
    expect(Object.keys(NOT_EDITABLE).filter((place) => patterns.includes(place))).toEqual([]);
  });

  it('says a unit for every number but counts', () => {
    const bare = CATALOGUE_OF_INPUTS.filter(
      ({ kind, unit, key, pattern }) =>
        (kind === 'number' || kind === 'numbers') &&
        unit === '' &&
        !WITHOUT_UNIT.test(key) &&
        !WITHOUT_UNIT.test(pattern),
    );
    expect(bare.map(({ pattern }) => pattern)).toEqual([]);
  });

  it('says the unit the model says', () => {
    const columns = [
      ...INPUTS.map(({ path, unit }) => [path, unit] as const),
      ...INPUT_FAMILIES.flatMap(({ path, fields }) =>
        Object.values(fields)
          .filter(({ key, written }) => key === written)
          .map(({ key, unit }) => [`${path}.*.${key}`, unit] as const),
      ),
    ];
    const other = columns.flatMap(([path, unit]) => {
      const input = CATALOGUE_OF_INPUTS.find(
        ({ pattern }) => pattern === path || pattern === `scenarios.*.${path}`,
      );
      // A day of spreading is worked out from a month, years from months, and yes or no counts as 1 or 0.
      if (
        input?.kind !== 'number' ||
        input.key === 'month' ||
        input.unit === 'months' ||
        unit === 'times' ||
        unit === 'turns' ||
        unit === 'bowls' ||
        unit === 'exits'
      )
        return [];
      return input.unit === unit || (unit === 'money' && input.unit.startsWith('money'))
        ? []
        : [`${path}: ${input.unit}, the model ${unit}`];
    });
    expect(other).toEqual([]);
  });

  it('calls everything in plain words, each of its list by another name', () => {
    expect(CATALOGUE_OF_INPUTS.filter(({ label }) => /[a-z][A-Z]|[_*]/.test(label) || label === '')).toEqual(
      [],
    );
    const heads = CATALOGUE_OF_INPUTS.map(({ pattern, label, subject }) =>
      [subject, pattern.split('.').slice(0, -1).join('.'), label].join(' | '),
    );
    expect(heads.filter((head, k) => heads.indexOf(head) < k)).toEqual([]);
    const options = CATALOGUE_OF_INPUTS.flatMap(({ options: all }) => all ?? []);
    expect(options.map(optionWords).filter((words) => /[a-z][A-Z]/.test(words))).toEqual([]);
    expect(CATALOGUE_OF_INPUTS.filter(({ subject }) => !SUBJECTS.includes(subject))).toEqual([]);
  });

  it('keeps no words for what is not there', () => {
    const all = [...patterns, ...CATALOGUE_OF_LISTS.map(({ pattern }) => pattern)].map((pattern) =>
      pattern.replace(/^scenarios\.\*\./, '').replace(/^farm\./, ''),
    );
    expect(LABELLED.filter((place) => !all.includes(place))).toEqual([]);
  });

  it('finds an input and a list by its place, names of rows with dots in them too', () => {
    expect(inputAt(['farm', 'herd', 3, 'weightKg'])?.label).toBe('weight');
    expect(
      inputAt(['scenarios', 0, 'farm', 'money', 'prices', 'materialPricePerTonne.reed', 'value'])?.key,
    ).toBe('value');
    expect(patternOf(['decide', 'weights', 'netCost'])).toBe('decide.weights.*');
    expect(listAt(['scenarios', 2, 'bed', 'mix'])?.most).toBe(6);
    expect(listAt(['farm', 'herd'])).toMatchObject({ least: 1, most: 12 });
    expect(inputAt(['scenarios', 0, 'name'])).toBeUndefined();
    expect(inputAt(['farm', 'nobody'])).toBeUndefined();
  });
});

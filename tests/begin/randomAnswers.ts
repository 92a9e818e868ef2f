/** Answers as people give them: sound, empty, in other units, and nonsense. */
import fc from 'fast-check';
import { type Answers, LISTS, MOST_ROWS, type Row, SECTIONS } from '../../src/begin/answers.ts';
import { FIELDS, type Field, ROW_FIELDS } from '../../src/begin/fields.ts';
import { CLIMATES } from '../../src/begin/kinds.ts';
import { shownNumber } from '../../src/begin/typed.ts';
import { starts } from './setting.ts';

const NONSENSE = fc.oneof(
  fc.string({ maxLength: 12, unit: 'grapheme' }),
  fc.constantFrom(
    '-3',
    '1e9',
    '12,5',
    '1,200',
    '4 %',
    '30 ac',
    '1 400 lb',
    'about 20',
    '0',
    '#',
    '"',
    ': x',
    '---',
  ),
);
const date = fc
  .date({ min: new Date('2024-01-01'), max: new Date('2028-12-31'), noInvalidDate: true })
  .map((day) => day.toISOString().slice(0, 10));

/** What somebody who read the label may answer. */
function sound(field: Field): fc.Arbitrary<string> {
  if (field.kind === 'choice') return fc.constantFrom(...field.options.map(([option]) => option), '');
  if (field.kind === 'date') return date;
  if (field.kind === 'text') return fc.string({ maxLength: 30 });
  const { min, max, unit } = field;
  // Nearer the small end, as farms are.
  return fc.double({ min: 0, max: 1, noNaN: true }).map((x) => {
    const value = min + (max - min) * x ** 3;
    return shownNumber(field.whole ? Math.round(value) : value, unit, 'metric');
  });
}

const answer = (field: Field, wild: boolean) =>
  wild
    ? fc.oneof(
        { weight: 4, arbitrary: sound(field) },
        { weight: 3, arbitrary: fc.constant('') },
        { weight: 2, arbitrary: NONSENSE },
      )
    : fc.oneof({ weight: 3, arbitrary: sound(field) }, { weight: 1, arbitrary: fc.constant('') });

function row(fields: Readonly<Record<string, Field>>, wild: boolean): fc.Arbitrary<Row> {
  return fc.record(
    Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, answer(field, wild)])),
    {
      requiredKeys: [],
    },
  ) as fc.Arbitrary<Row>;
}

export function randomAnswers(wild: boolean): fc.Arbitrary<Answers> {
  const sections = Object.fromEntries(
    SECTIONS.map((section) => [
      section,
      section === 'place'
        ? fc.record({
            ...Object.fromEntries(
              Object.entries(FIELDS.place).map(([key, field]) => [key, answer(field, wild)]),
            ),
            country: fc.constantFrom('', ...[...starts.keys()].filter((c) => c !== 'all')),
            climate: fc.constantFrom('', ...CLIMATES),
            weatherFile: fc.constant(''),
            ...(wild
              ? {}
              : { winterStart: fc.constant(''), winterEnd: fc.constant(''), latitudeDeg: fc.constant('') }),
          })
        : row(FIELDS[section], wild),
    ]),
  );
  const lists = Object.fromEntries(
    LISTS.map((list) => [
      list,
      fc.array(row(ROW_FIELDS[list], wild), {
        minLength: list === 'herd' ? 1 : 0,
        maxLength: MOST_ROWS[list],
      }),
    ]),
  );
  return fc.record({ step: fc.nat(5), ...sections, ...lists }) as unknown as fc.Arbitrary<Answers>;
}

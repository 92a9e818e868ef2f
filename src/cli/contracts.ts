/** The contracts with the outside that are read off the code, as texts for `shared/`. */
import { RESULTS } from '../model/dictionary.ts';
import { notebookJsonSchemaText } from '../notebook/jsonSchema.ts';
import { csvLines } from '../tables/csvLines.ts';
import { thirdPartyText } from './thirdParty.ts';

/** Every quantity the model makes: the dictionary as CSV. */
function quantitiesCsv(): string {
  const rows = RESULTS.map(({ name, label, unit, part, when, formula, from, source }) => [
    name, label, unit, part, when, formula, from?.join(' '), source?.join(' '),
  ]); // biome-ignore format: one list
  return csvLines([['name', 'label', 'unit', 'part', 'when', 'formula', 'from', 'source'], ...rows]);
}

/** What `compare --format json` prints, as JSON Schema. Names of quantities stand once, what holds them refers to them. */
function resultsSchema(): string {
  const of = (name: string) => ({ $ref: `#/$defs/${name}` });
  const object = (properties: object, optional: readonly string[] = []) => ({
    type: 'object',
    required: Object.keys(properties).filter((name) => !optional.includes(name)),
    properties,
  });
  const text = { type: 'string' };
  const spanned = ['p10', 'p50', 'p90'];
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'winterkeep results',
    description:
      'Printed by `winterkeep compare FILE --format json`. Absent quantities are null. Money is in `currency`.',
    ...object({
      notebook: text,
      currency: { type: 'string', pattern: '^[A-Z]{3}$' },
      scenarios: { type: 'array', minItems: 1, items: of('scenario') },
    }),
    $defs: {
      number: { type: ['number', 'null'] },
      quantity: {
        description: '`shared/quantities.csv` says what each is.',
        enum: ['winterDays', ...RESULTS.map(({ name }) => name)],
      },
      values: {
        type: 'object',
        minProperties: RESULTS.length + 1,
        propertyNames: of('quantity'),
        additionalProperties: of('number'),
      },
      check: object(
        {
          id: text,
          status: { enum: ['pass', 'look', 'stop'] },
          value: of('number'),
          limit: of('number'),
          unit: text,
          source: text,
          words: text,
          week: {
            type: 'integer',
            description: 'Week of the winter, from 1, in which a limit is first passed',
          },
        },
        ['week'],
      ),
      scenario: object(
        {
          name: text,
          system: text,
          values: of('values'),
          checks: { type: 'array', items: of('check') },
          ...Object.fromEntries(spanned.map((name) => [name, of('values')])),
        },
        spanned,
      ),
    },
  };
  return `${packed(JSON.stringify(schema, null, 2))}\n`;
}

/** Several words to a line: hundreds of names are read, if at all, as a list and not as a tower. */
function packed(json: string): string {
  return json.replace(/(?:\n +"\w+",?){2,}/g, (words) => {
    const [indent] = /\n +/.exec(words) as RegExpExecArray;
    const lines = [''];
    for (const word of words.trim().split(/\s+/)) {
      const last = lines[lines.length - 1];
      if (last !== '' && indent.length + last.length + word.length > 110) lines.push(word);
      else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
    }
    return lines.map((line) => indent + line).join('');
  });
}

/** Generated files by path; a test refuses them when they are stale. */
export const GENERATED: Readonly<Record<string, () => string>> = {
  'shared/notebook.schema.json': notebookJsonSchemaText,
  'shared/results.schema.json': resultsSchema,
  'shared/quantities.csv': quantitiesCsv,
  'THIRD-PARTY.md': thirdPartyText,
};

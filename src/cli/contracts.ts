/** The contracts with the outside that are read off the code, as texts for `shared/`. */
import { RESULTS } from '../model/dictionary.ts';
import { notebookJsonSchemaText } from '../notebook/jsonSchema.ts';
import { csvField } from './csv.ts';

/** Every quantity the model makes: the dictionary as CSV. */
function quantitiesCsv(): string {
  const rows = RESULTS.map(({ name, label, unit, part, when, formula, from, source }) =>
    [name, label, unit, part, when, formula, from?.join(' '), source?.join(' ')].map(csvField).join(','),
  );
  return `${['name,label,unit,part,when,formula,from,source', ...rows].join('\n')}\n`;
}

const nullableNumber = { type: ['number', 'null'] };
const values = { type: 'object', additionalProperties: nullableNumber };

/** What `compare --format json` prints, as JSON Schema. */
function resultsSchema(): string {
  const names = ['winterDays', ...RESULTS.map((r) => r.name)];
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'winterkeep results',
    description:
      'Printed by `winterkeep compare FILE --format json`. Absent quantities are null. Money is in `currency`.',
    type: 'object',
    required: ['notebook', 'currency', 'scenarios'],
    properties: {
      notebook: { type: 'string' },
      currency: { type: 'string', pattern: '^[A-Z]{3}$' },
      scenarios: {
        type: 'array',
        minItems: 1,
        items: {
          type: 'object',
          required: ['name', 'system', 'values', 'checks'],
          properties: {
            name: { type: 'string' },
            system: { type: 'string' },
            values: {
              type: 'object',
              additionalProperties: false,
              required: names,
              properties: Object.fromEntries(names.map((name) => [name, nullableNumber])),
            },
            checks: {
              type: 'array',
              items: {
                type: 'object',
                required: ['id', 'status', 'value', 'limit', 'unit', 'source', 'words'],
                properties: {
                  id: { type: 'string' },
                  status: { enum: ['pass', 'look', 'stop'] },
                  value: nullableNumber,
                  limit: nullableNumber,
                  unit: { type: 'string' },
                  source: { type: 'string' },
                  words: { type: 'string' },
                  week: {
                    type: 'integer',
                    description: 'Week of the winter, from 1, in which a limit is first passed',
                  },
                },
              },
            },
            p10: values,
            p50: values,
            p90: values,
          },
        },
      },
    },
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}

/** Generated files by path; a test refuses them when they are stale. */
export const GENERATED: Readonly<Record<string, () => string>> = {
  'shared/notebook.schema.json': notebookJsonSchemaText,
  'shared/results.schema.json': resultsSchema,
  'shared/quantities.csv': quantitiesCsv,
};

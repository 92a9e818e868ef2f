/** The front matter for editors that complete and check YAML: made from the same definition that reads it. */
import { z } from 'zod';
import { frontSchema } from './frontSchema.ts';

/** JSON Schema (2020-12) of the front matter as it is written, before defaults are filled. */
export function notebookJsonSchema(): Record<string, unknown> {
  return {
    title: 'Front matter of a winterkeep notebook',
    description:
      'Units stand at the end of each key; shares and fractions run from 0 to 1. Generated, not written by hand.',
    ...z.toJSONSchema(frontSchema, { io: 'input', target: 'draft-2020-12', unrepresentable: 'throw' }),
  };
}

/** The text of `shared/notebook.schema.json`. */
export const notebookJsonSchemaText = (): string => `${JSON.stringify(notebookJsonSchema(), null, 2)}\n`;

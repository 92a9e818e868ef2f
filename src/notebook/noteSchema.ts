/** Notes that readers put on a notebook: what they stand on, who wrote them and when. They travel in its front matter. */
import { z } from 'zod';
import { CELL_KINDS } from './cells.ts';

/** More would fill the front matter with other people's words. */
export const MOST_NOTES = 200;
export const MOST_NOTE_LETTERS = 1000;
/** Opening words a note on a paragraph knows it by. */
export const MOST_BEGIN = 120;
export const MOST_NAME = 60;

/** Letters, digits and hyphens: a name that any program carries through unchanged. */
export const ID_FORM = /^[A-Za-z0-9-]{4,40}$/;
export const idSchema = z.string().max(40).regex(ID_FORM);

const line = z
  .string()
  .min(1)
  .max(MOST_NAME)
  .regex(/^(?!\s*$)\P{Cc}+$/u);

/** What the page puts round the text by itself, which a note can stand on all the same. */
export const PAGE_SECTIONS = [
  'answer',
  'cards',
  'ledger',
  'compare',
  'checks',
  'cautions',
  'sources',
] as const;
export type PageSection = (typeof PAGE_SECTIONS)[number];

/** Who asks or writes: one line. */
export const nameSchema = line;

const noteTargetSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('number').describe('A result of a scenario'),
    quantity: z.string().min(1).max(80),
    scenario: z.string().min(1).max(60),
  }),
  z.strictObject({
    kind: z.literal('figure').describe('A cell of the text'),
    cell: z.enum(CELL_KINDS),
    nth: z
      .number()
      .int()
      .min(1)
      .max(1000)
      .default(1)
      .describe('Which of the cells of that kind, from the top'),
  }),
  z.strictObject({
    kind: z.literal('words').describe('A paragraph'),
    begin: z.string().min(1).max(MOST_BEGIN).describe('The words it begins with, as they are written'),
  }),
  z.strictObject({
    kind: z.literal('page').describe('What the page puts round the text'),
    section: z.enum(PAGE_SECTIONS),
  }),
  z.strictObject({
    kind: z.literal('note').describe('Another note, which this one answers'),
    id: idSchema,
  }),
]);

export const noteSchema = z.strictObject({
  id: idSchema.describe('Stays with the note wherever it goes'),
  on: noteTargetSchema.describe('What it stands on'),
  by: line.describe('Who wrote it'),
  when: z.iso.datetime().describe('When it was written or last changed: of two texts the newer one counts'),
  text: z
    .string()
    .max(MOST_NOTE_LETTERS)
    .describe('Empty once it is taken out, so that it stays out where copies are put together'),
});

export type Note = z.output<typeof noteSchema>;
export type NoteTarget = z.output<typeof noteTargetSchema>;

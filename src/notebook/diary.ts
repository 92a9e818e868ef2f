/** What a keeper writes down through the winter: loads, readings, and the scenario they belong to. */
import { z } from 'zod';
import { MATERIALS } from './schema.ts';

const common = {
  date: z.iso.date(),
  scenario: z
    .string()
    .min(1)
    .optional()
    .describe('Which scenario was carried out; the first with a bed when absent'),
  note: z.string().min(1).max(2000).optional(),
};

export const diaryEntrySchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...common,
    kind: z.literal('load').describe('Bedding put on the bed'),
    material: z.enum(MATERIALS),
    tonnes: z.number().positive().max(1000),
    moistureFraction: z.number().min(0).max(1).optional(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('depth').describe('Top of the bed above the floor'),
    depthM: z.number().min(0).max(4),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('temperature').describe('A thermometer pushed into the bed'),
    temperatureC: z.number().min(-40).max(90),
    atDepthM: z.number().min(0).max(4).default(0.2),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('moisture').describe('A sample of the bed, dried and weighed'),
    moistureFraction: z.number().min(0).max(1),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('head').describe('Animals in the shed from this day on'),
    head: z.number().min(0),
  }),
  z.strictObject({ ...common, kind: z.literal('note'), note: z.string().min(1).max(2000) }),
]);

export type DiaryEntry = z.output<typeof diaryEntrySchema>;

/** What a published study measured, as written beside a case's notebook: read strictly, every fault with its line. */
import { z } from 'zod';
import type { Problem } from '../units/problem.ts';
import { decodeNotebook } from './decode.ts';
import { problemsOf } from './issues.ts';
import { readYaml } from './yamlText.ts';

const words = z.string().min(1);

const measurement = z.strictObject({
  output: words.describe('What was measured, in plain words'),
  scenario: words.describe('Scenario of the case’s notebook it is held against'),
  of: words.describe('Results of the model, added, taken off or multiplied: a + b * c - d'),
  per: words.optional().describe('What it is divided by, written the same way'),
  times: z.number().default(1).describe('Conversion of units'),
  against: z
    .strictObject({ scenario: words, as: z.enum(['ratio', 'difference']) })
    .optional()
    .describe('A second scenario: the figure is the first over it, or the first less it'),
  unit: words,
  value: z.number(),
  low: z.number(),
  high: z.number(),
  band: z.enum(['source', 'ours']).describe('Whether low and high are the source’s own spread'),
  known: z.enum(['read', 'quoted', 'from memory']),
  kind: z.enum(['trial', 'survey', 'standard']).describe('A standard is a rule or table and no measurement'),
  calibrates: z
    .array(words)
    .default([])
    .describe('Rows of the tables that were taken from the same study under another source'),
  likelyCause: words.describe('Where to look first when the model is off'),
});

const measurements = z.strictObject({
  source: words.describe('A row of data/sources.csv'),
  sameStudy: z
    .array(words)
    .default([])
    .describe('Other rows of data/sources.csv that stand on the same measurements'),
  place: words,
  address: words.optional().describe('Where the copy that was read stands'),
  setup: words.describe('What the study did, and what of the notebook is invented'),
  measured: z.array(measurement).min(1).max(40),
});

export type Measurement = z.output<typeof measurement>;
export type Measurements = z.output<typeof measurements> & {
  readonly file: string;
  /** 1-based line of the deepest written part of a path. */
  readonly lineOf: (path: string) => number;
};

/** The measurements of one case, or every fault of the file. Never throws. */
export function readMeasurements(
  source: string | Uint8Array,
  file: string,
): { readonly measurements?: Measurements; readonly problems: readonly Problem[] } {
  const decoded = decodeNotebook(source, file);
  if ('problem' in decoded) return { problems: [decoded.problem] };
  const { data, problems, lineOf } = readYaml(decoded.text, 1, file);
  if (problems.length > 0) return { problems };
  const result = measurements.safeParse(data);
  if (!result.success)
    return {
      problems: result.error.issues.flatMap((issue) =>
        problemsOf(issue, { schema: measurements, data, file, at: [], lineOf }),
      ),
    };
  const outOfOrder = result.data.measured.flatMap(({ low, value, high }, k): Problem[] =>
    low <= value && value <= high && low < high
      ? []
      : [
          {
            what: 'the band does not hold the value',
            file,
            line: lineOf(['measured', k, 'low']),
            key: `measured.${k}.low`,
            found: `${low}, ${value}, ${high}`,
            allowed: 'low ≤ value ≤ high, low below high',
            todo: 'write the spread of the source, or one of ours and band: ours',
          },
        ],
  );
  return outOfOrder.length > 0
    ? { problems: outOfOrder }
    : { measurements: { ...result.data, file, lineOf }, problems: [] };
}

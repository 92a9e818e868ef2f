/** A case: a notebook set up as a published study was, and what the study measured. */

import { isResult, RESULTS } from '../model/dictionary.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Measurement, Measurements } from '../notebook/measurements.ts';
import { nearest } from '../notebook/nearest.ts';
import type { Run } from '../study/evaluate.ts';
import type { Problem } from '../units/problem.ts';
import { namesIn, type Term, termsOf } from './terms.ts';

/** Rows whose source is nobody's measurement: sharing it says nothing. */
const NO_STUDY: ReadonlySet<string> = new Set(['own', 'commonPractice', 'handbook', 'feedTables']);

/** One measured output, with what it is held against in the model. */
export interface Output extends Measurement {
  readonly ofTerms: readonly Term[];
  readonly perTerms: readonly Term[];
  readonly at: number;
  readonly againstAt?: number;
}

export interface Case {
  /** File name without its ending. */
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** Its source and others that stand on the same measurements. */
  readonly study: ReadonlySet<string>;
  readonly run: Run;
  readonly outputs: readonly Output[];
}

/** The length of the winter is asked for in the notebook and stands among the results. */
const DAYS = 'winterDays';
const KNOWN: readonly string[] = [DAYS, ...RESULTS.map(({ name }) => name)];

/** Results that the draws must keep for these outputs. */
export const keptFor = (outputs: readonly Output[]): ResultName[] => [
  ...new Set(outputs.flatMap(({ ofTerms, perTerms }) => namesIn([...ofTerms, ...perTerms])).filter(isResult)),
];

/** Joins measurements to the evaluated notebook of the same case; whatever does not fit is a problem with its line. */
export function caseOf(
  id: string,
  title: string,
  written: Measurements,
  run: Run,
): { readonly case?: Case; readonly problems: readonly Problem[] } {
  const { file, lineOf } = written;
  const names = run.results.map(({ name }) => name);
  const problems: Problem[] = [];
  const complain = (key: string, what: string, rest: Partial<Problem>) =>
    problems.push({ what, file, line: lineOf(key), key, ...rest });
  const known = (source: string, key: string) => {
    if (!run.tables.sources.has(source))
      complain(key, 'no source of this id', {
        found: source,
        allowed: `nearest ${nearest(source, [...run.tables.sources.keys()]).join(', ')}`,
        todo: 'add its row to data/sources.csv',
      });
  };
  known(written.source, 'source');
  for (const source of written.sameStudy) known(source, 'sameStudy');
  const scenarioAt = (name: string, key: string): number => {
    const at = names.indexOf(name);
    if (at < 0)
      complain(key, 'no scenario of this name in the notebook of the case', {
        found: name,
        allowed: names.join(', '),
      });
    return at;
  };
  const terms = (text: string, key: string): readonly Term[] => {
    const found = termsOf(text);
    if (!found)
      complain(key, 'not a sum of results', { found: text, allowed: 'names joined by +, - or *: a + b * c' });
    for (const name of namesIn(found ?? []))
      if (!KNOWN.includes(name))
        complain(key, 'no result of this name', {
          found: name,
          allowed: `nearest ${nearest(name, KNOWN).join(', ')}`,
          todo: 'shared/quantities.csv lists them',
        });
    return found ?? [];
  };
  const outputs = written.measured.map((measured, k): Output => {
    const key = `measured.${k}`;
    for (const row of measured.calibrates)
      if (!run.tables.coefficients.has(row))
        complain(`${key}.calibrates`, 'no row of this id in the tables', {
          found: row,
          todo: 'name the row that took its place, or take it out',
        });
    return {
      ...measured,
      ofTerms: terms(measured.of, `${key}.of`),
      perTerms: measured.per === undefined ? [] : terms(measured.per, `${key}.per`),
      at: scenarioAt(measured.scenario, `${key}.scenario`),
      ...(measured.against && {
        againstAt: scenarioAt(measured.against.scenario, `${key}.against.scenario`),
      }),
    };
  });
  return problems.length > 0
    ? { problems }
    : {
        case: {
          id,
          title,
          source: written.source,
          study: new Set([written.source, ...written.sameStudy].filter((source) => !NO_STUDY.has(source))),
          run,
          outputs,
        },
        problems: [],
      };
}

/** A row of the tables that a scenario of the case stands on, of the same study. */
export interface SameSource {
  readonly id: string;
  readonly at: readonly { readonly scenario: number; readonly column: string }[];
  readonly value: number;
}

/** Rows of the case's own study among the numbers that enter its scenarios. */
export function sameSource({ study, run }: Case): SameSource[] {
  const found = new Map<string, { value: number; at: { scenario: number; column: string }[] }>();
  run.bound.forEach(({ bindings }, scenario) => {
    for (const { column, id, value, coefficient, origin } of bindings.values()) {
      if (!coefficient || !study.has(coefficient.source) || origin === 'override') continue;
      const entry = found.get(id) ?? { value, at: [] };
      entry.at.push({ scenario, column });
      found.set(id, entry);
    }
  });
  return [...found].map(([id, entry]) => ({ id, ...entry }));
}

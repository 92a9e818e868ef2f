/**
 * What each check of this folder is: its title carries one of three labels, and importing this file refuses a test
 * that carries none or two. A basis that is weaker than "published" (from memory, common practice) stands in the title.
 */
import { beforeEach, expect } from 'vitest';

const FIGURE = 'result against a published figure';
const ROW = 'table row against its source';
const SUM = 'hand-worked sum (regression)';

/** A result of product code against what others printed, measured, hold as common practice, or compute by a library. */
export const figure = (title: string): string => `${title} [${FIGURE}]`;

/** A coefficient or price of the tables against what its source says; the model is not run. */
export const tableRow = (title: string): string => `${title} [${ROW}]`;

/** A result of product code against our own arithmetic or plain logic: guards against change, proves nothing new. */
export const sum = (title: string): string => `${title} [${SUM}]`;

beforeEach(() => {
  const name = expect.getState().currentTestName ?? '';
  const said = [FIGURE, ROW, SUM].filter((label) => name.includes(`[${label}]`));
  expect(said, `labels of "${name}"; exactly one of labels.ts is needed`).toHaveLength(1);
});

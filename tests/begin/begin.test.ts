import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newNotebook } from '../../src/begin/begin.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { randomAnswers } from './randomAnswers.ts';
import { begun, setting } from './setting.ts';

/** Figures every scenario has; a number that is none there is a fault. */
const ALWAYS = [
  'netCost',
  'labourHours',
  'nitrogenKeptKg',
  'nitrogenExcretedKg',
  'feedTonnes',
  'capitalCost',
] as const;

describe('a new notebook', () => {
  for (const wild of [false, true])
    it(`reads without a problem and gives finite figures, whatever was answered${wild ? ', nonsense and all' : ''}`, async () => {
      await fc.assert(
        fc.asyncProperty(randomAnswers(wild), async (answers) => {
          const { problems, run, text } = await newNotebook(begun(answers, 'other'), setting);
          expect(problems).toEqual([]);
          expect(readNotebook(text, 'again.md').problems).toEqual([]);
          expect(run?.results.map(({ name }) => name)).toEqual(['Paddock', 'Slats', 'Deep bed']);
          for (const { name, values } of run?.results ?? [])
            for (const figure of ALWAYS)
              expect(values[figure], `${figure} of ${name}`).toSatisfy(Number.isFinite);
        }),
        { numRuns: 30 },
      );
    }, 300_000);
});

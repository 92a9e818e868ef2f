/**
 * Every output of the cases in data/cases, a figure a test: whole farms set up as a study was, through the whole model at
 * best guesses. What does not lie in the study's band is a known miss and stands in misses.json, which is made anew by
 * `npx tsx tests/published/makeMisses.ts`; a miss that comes to pass fails here until it is taken off. No band is widened.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Scored } from '../../src/calibrate/score.ts';
import { figure, fitted, recalled } from './labels.ts';
import { MISS } from './labelTexts.ts';
import { keyOf, scoredCases } from './scoredCases.ts';

const rows = await scoredCases();
const misses: readonly string[] = JSON.parse(readFileSync(new URL('./misses.json', import.meta.url), 'utf8'));

const labelOf = ({ class: of, known }: Scored) =>
  of === 'calibration' ? fitted : known === 'from memory' ? recalled : figure;

describe('cases of studies', () => {
  for (const row of rows) {
    const { title, output, unit, measured, low, high, band, source, model } = row;
    const missed = misses.includes(keyOf(row));
    const words = `${title}: ${output} ${measured} ${unit}, ${low} to ${high} (${source}; band: ${band})`;
    (missed ? it.fails : it)(labelOf(row)(missed ? `${words}, ${MISS}` : words), () => {
      expect(model).not.toBeNull();
      expect(model).toBeGreaterThanOrEqual(low);
      expect(model).toBeLessThanOrEqual(high);
    });
  }

  it(fitted('misses that are listed are outputs that are there, each once'), () => {
    const keys = rows.map(keyOf);
    expect(misses.filter((miss, k) => !keys.includes(miss) || misses.indexOf(miss) !== k)).toEqual([]);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

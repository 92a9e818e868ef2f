// Numbers kept to compare with: each is read by a test, and the exchange rates are those of the converted prices.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shippedTables } from '../../src/cli/open.ts';

const { coefficients, prices } = shippedTables();
const readers = execFileSync(
  'git',
  ['ls-files', '-co', '--exclude-standard', 'tests/**/*.ts', 'src/**/*.ts'],
  {
    encoding: 'utf8',
  },
)
  .split('\n')
  .filter((file) => file !== '')
  .map((file) => readFileSync(file, 'utf8'))
  .join('\n');
const RATE = /the EUR row at (reference[A-Z][a-z]{2}PerEur)/;

describe('the table of reference numbers', () => {
  it('holds nothing that neither a test nor the program reads', () => {
    const converted = [...prices.values()].flatMap((table) => [...table.values()]).map(({ where }) => where);
    const idle = [...coefficients.values()]
      .filter(({ at }) => at.file === 'data/coefficients/reference.csv')
      .filter(({ id }) => !readers.includes(id) && !converted.some((where) => where.includes(id)));
    expect(idle.map(({ id }) => id)).toEqual([]);
  });

  it('converts the prices that say they are converted', () => {
    const euro = prices.get('EUR');
    let seen = 0;
    for (const table of prices.values())
      for (const row of table.values()) {
        const rate = RATE.exec(row.where)?.[1];
        if (rate === undefined) continue;
        seen++;
        const factor = coefficients.get(rate)?.central ?? Number.NaN;
        for (const end of ['low', 'central', 'high'] as const) {
          const own = (euro?.get(row.id)?.[end] ?? Number.NaN) * factor;
          // Rounded to three figures that count.
          expect(Math.abs(row[end] - own), `${row.currency} ${row.id} ${end}`).toBeLessThanOrEqual(
            0.0055 * own,
          );
        }
      }
    expect(seen).toBeGreaterThan(50);
  });
});

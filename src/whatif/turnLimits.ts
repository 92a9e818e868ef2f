/** How far an input can be turned at all. */
import { inputLimits, type Limits, rowLimits } from '../model/limits.ts';
import type { Setting } from '../study/rows.ts';
import type { Turn } from './turn.ts';

/** Values the input can stand at at all: as a notebook would be held to. */
export function turnLimits({ bound }: Setting, { name, at }: Turn): Limits {
  if (name === 'winterDays') return { holds: (d) => d >= 1 && d <= 366, words: 'a number from 1 to 366' };
  if (name === 'headCount') return { holds: (h) => h >= 0 && h <= 1e5, words: 'a number from 0 to 100000' };
  if (name === 'herdFactor') return { holds: (f) => f >= 0 && f <= 1e4, words: 'a number from 0 to 10000' };
  const binding = at[0] && bound[at[0].scenario].bindings.get(at[0].column);
  const row = binding?.coefficient ?? { low: 0, high: Number.POSITIVE_INFINITY, unit: binding?.unit ?? '' };
  return (binding?.origin === 'input' ? inputLimits(binding.id) : undefined) ?? rowLimits(row);
}

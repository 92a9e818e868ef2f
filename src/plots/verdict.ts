/** How scenarios are set against each other in sentences: "costs less net a year", "keeps more nitrogen". */
import { COMPARISONS } from '../explore/measures.ts';
import type { Turn } from '../explore/sweep.ts';
import { labelOf, type Reading, show } from './reading.ts';

export interface Verdict {
  /** What the better one does; where neither side is better, what the one with more does. */
  readonly wins: string;
  /** Whether having more of the measure is what `wins` says. */
  readonly byMore: boolean;
}

export function verdictOf(measure: string): Verdict {
  const known = COMPARISONS.find((c) => c.name === measure);
  const byMore = known?.better !== 'less';
  if (!known) return { wins: `has more ${labelOf(measure)}`, byMore: true };
  return { wins: `${known.verb} ${byMore ? 'more' : 'less'} ${known.noun}`, byMore };
}

/** Things that only come whole: no herd has 11.4 head. */
const WHOLE = new Set(['head', 'bowls', 'turns', 'd', 'yr']);

/** A value of a turned input in words; for things that come whole, the first whole one at or above it. */
export function saidTurn({ unit, label, name }: Turn, value: number, reading: Reading): string {
  const at = WHOLE.has(unit) ? Math.ceil(value) : value;
  if (name === 'headCount') return `${show(at, unit, reading).number} head`;
  const shown = show(at, unit === '×' ? '' : unit, reading).text;
  return `${shown}${unit === '×' ? ' ×' : ''} ${label}`;
}

/** The value alone, for axes and tables. */
export function saidValue({ unit }: Turn, value: number, reading: Reading): string {
  return unit === '×' ? `${show(value, '', reading).text}×` : show(value, unit, reading).text;
}

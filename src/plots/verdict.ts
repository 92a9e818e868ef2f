/** How scenarios are set against each other in sentences: "costs less net a year", "keeps more nitrogen". */

import { COMPARISONS } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import { formatRange } from '../units/format.ts';
import { WHOLE_UNITS } from '../whatif/sweep.ts';
import type { Turn } from '../whatif/turn.ts';
import { labelOf, type Reading, show } from './reading.ts';

export interface Verdict {
  /** What the better one does; where neither side is better, what the one with more does. */
  readonly wins: string;
  /** Whether having more of the measure is what `wins` says. */
  readonly byMore: boolean;
}

export function verdictOf(measure: ResultName): Verdict {
  const known = COMPARISONS.find((c) => c.name === measure);
  const byMore = known?.better !== 'less';
  if (!known) return { wins: `has more ${labelOf(measure)}`, byMore: true };
  return { wins: `${known.verb} ${byMore ? 'more' : 'less'} ${known.noun}`, byMore };
}

/**
 * A value of a turned input in words: "11 head", "1.2× (rain against this weather)". For things that come whole,
 * the first whole one at or above it: below 11.4 head is below 12.
 */
export function saidTurn(turn: Turn, value: number, reading: Reading): string {
  const said = saidValue(turn, WHOLE_UNITS.has(turn.unit) ? Math.ceil(value) : value, reading);
  return turn.name === 'headCount' ? said : `${said} (${turn.label})`;
}

/** The value alone, for axes and tables. */
export function saidValue({ unit }: Turn, value: number, reading: Reading): string {
  return unit === '×' ? `${show(value, '', reading).text}×` : show(value, unit, reading).text;
}

/** "1 to 54 head", "0× to 2.5×". */
export function saidSpan(turn: Turn, from: number, to: number, reading: Reading): string {
  const { unit } = turn;
  if (from !== to && (unit.startsWith('money') || unit.startsWith(reading.currency)))
    return formatRange(from, to, unit, { system: reading.system, currency: reading.currency });
  const first =
    unit === '×' || unit === 'fraction' ? saidValue(turn, from, reading) : show(from, unit, reading).number;
  return from === to ? saidValue(turn, to, reading) : `${first} to ${saidValue(turn, to, reading)}`;
}

/** A value that is nothing beside the others of its figure is said as nothing. */
export function orNothing(value: number, scale: number): number {
  return Math.abs(value) < scale / 1000 ? 0 : value;
}

/** What is turned or held with the input, as a sentence to follow a finding; empty where it is turned alone. */
export function noteOf(...turns: readonly Turn[]): string {
  return turns.flatMap(({ note }) => (note ? [` (Here ${note}.)`] : [])).join('');
}

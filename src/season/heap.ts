/** The windrow after the clean-out: its turns, how warm it should be, when it is ready. */

import type { ShedResult } from '../model/checks/check.ts';
import { say } from '../model/checks/say.ts';
import { dayAfter } from '../units/days.ts';
import type { RowOf } from './stacks.ts';

interface Turn {
  readonly number: number;
  /** ISO day. */
  readonly day: string;
  readonly words: string;
}

export interface Heap {
  readonly made: string;
  readonly turns: readonly Turn[];
  /** Expected at its warmest, °C. */
  readonly peakC: { readonly low: number; readonly high: number } | null;
  /** ISO day. */
  readonly ready: string;
  readonly words: string;
}

/** Rows of the temperature classes, coldest first: class 0 to 3 of the model. */
const CLASSES = ['heapColdC', 'heapWarmC', 'heapCompostingC', 'heapSanitisingC'];

/** The heap made on `made` (ISO day); null where the bed is spread as it is. */
export function heapOf({ scenario, values }: ShedResult, made: string, row: RowOf): Heap | null {
  const { way, turns } = scenario.compost;
  if (way === 'none') return null;
  const peak = row(CLASSES[Math.round(values.compostPeakClass ?? -1)] ?? '');
  const fire = row('heapFireC');
  const gap = row('turnIntervalDays');
  const days = values.compostDays ?? 0;
  const warmth = peak
    ? `Expect ${say(peak.low)} to ${say(peak.high)} °C inside at its warmest`
    : 'Probe its warmth';
  const count = way === 'turned' && gap ? turns : 0;
  return {
    made,
    turns: Array.from({ length: count }, (_, k) => ({
      number: k + 1,
      day: dayAfter(made, (gap?.central ?? 0) * (k + 1)),
      words: `${warmth}; turn the outside in when the middle cools. ${fire ? `Above ${say(fire.low)} °C spread it out and keep water by.` : ''}`,
    })),
    peakC: peak ? { low: peak.low, high: peak.high } : null,
    ready: dayAfter(made, days),
    words: `${say(values.compostTonnes ?? null, 0)} t, ${say(values.compostM3 ?? null, 0)} m³. ${values.compostPeakClass === 3 ? 'Hot long enough to kill most weed seeds.' : 'Not hot enough to count on killing weed seeds.'}`,
  };
}

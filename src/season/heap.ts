/** The windrow after the clean-out: its turns, how warm it should be, when it is ready. */

import type { ShedResult } from '../model/checks/check.ts';
import { say } from '../model/checks/say.ts';
import { dayAfter, daysBetween } from '../units/days.ts';
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
  /** Expected at its warmest, °C: from the mean of the heap to its middle. */
  readonly peakC: { readonly low: number; readonly high: number } | null;
  /** ISO day it is ready; null where it is not ready when it is spread. */
  readonly ready: string | null;
  /** ISO day it is spread from: when it is ready, or when it has lain as long as planned. */
  readonly spreadFrom: string;
  readonly words: string;
}

/** The heap made on `made` (ISO day); null where the bed is spread as it is. */
export function heapOf({ scenario, values, tracks }: ShedResult, made: string, row: RowOf): Heap | null {
  const { way, turns } = scenario.compost;
  if (way === 'none') return null;
  const fire = row('heapFireC');
  const gap = row('turnIntervalDays');
  const above = row('heapCoreAboveMeanC')?.central ?? 0;
  const lies = Math.round(values.compostDays ?? 0);
  const readyAfter = values.compostReadyDays ?? 0;
  const ready = readyAfter > 0 ? dayAfter(made, Math.round(readyAfter)) : null;
  const spreadFrom = dayAfter(made, lies);
  const count = way === 'turned' && gap ? turns : 0;
  const everyDays = Math.min(gap?.central ?? 0, lies / (count + 1));
  const track = tracks.weekHeapTemperatureC;
  const { start } = scenario.farm.winter;
  const warmth = (day: string) => {
    // What stands in the week before the turning is what the probe finds.
    const meanC = track?.[Math.floor((daysBetween(start, day) - 1) / 7)];
    return meanC !== undefined && Number.isFinite(meanC)
      ? `Expect about ${say(meanC, 0)} °C inside, ${say(meanC + above, 0)} °C in the middle`
      : 'Probe its warmth';
  };
  const peak = values.heapPeakC ?? null;
  return {
    made,
    turns: Array.from({ length: count }, (_, k) => {
      const day = dayAfter(made, Math.round(everyDays * (k + 1)));
      return {
        number: k + 1,
        day,
        words: `${warmth(day)}; turn the outside in when the middle cools. ${fire ? `Above ${say(fire.low)} °C spread it out and keep water by.` : ''}`,
      };
    }),
    peakC: peak === null ? null : { low: peak, high: peak + above },
    ready,
    spreadFrom,
    words: `${say(values.compostTonnes ?? null, 0)} t, ${say(values.compostM3 ?? null, 0)} m³. ${readyWords(ready, values)} ${values.compostPeakClass === 3 ? 'Likely hot long enough to kill most weed seeds; only a thermometer proves it.' : 'Not hot enough to count on killing weed seeds.'}`,
  };
}

/** Whether it is finished, and what it lacks where it is not. */
function readyWords(ready: string | null, values: ShedResult['values']): string {
  if (ready !== null) return 'Stable and cool.';
  return (values.compostStableDays ?? 0) > 0
    ? `Cool by then, but C:N ${say(values.compostCarbonNitrogen ?? null, 0)} is above that of finished compost: it may bind nitrogen at first.`
    : 'Not finished by then: it will still rot and warm; let it lie longer or turn it more.';
}

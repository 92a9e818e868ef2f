/** Where a figure does not lie in the middle of its own draws, which, and why: a sentence beside the figures. */
import type { Bands, ResultName, Values } from '../model/quantities.ts';
import { inWords, labelOf, type Reading, show, unitOf } from './reading.ts';

/** A result of a scenario as it stands on the screen, and what its draws gave. */
export interface Drawn {
  readonly name: string;
  readonly values: Partial<Values>;
  readonly bands?: Bands | null;
}

/** Of a bell, P35 and P65 lie this part of the way from P10 to P90 away from the middle. */
const FAR = 0.15;

/** What of the draws is cut off on one side, so that their middle lies off the figure that all best guesses give. */
const CAPPED: Readonly<Partial<Record<ResultName, string>>> = Object.fromEntries(
  (['nutrientValue', 'nitrogenAvailableKg', 'phosphorusAvailableKg', 'potassiumAvailableKg'] as const).map(
    (name) => [name, 'what the ground needs caps it, so a low need takes more off than a high one adds'],
  ),
);
const LOPSIDED = 'what it rests on may miss by more on one side than on the other';

/** Middle of the draws where the figure lies farther from it than P35 or P65 of a bell would; else null. */
export function middleApart(value: unknown, name: ResultName, bands?: Bands | null): number | null {
  const [low, middle, high] = [bands?.p10[name], bands?.p50[name], bands?.p90[name]];
  if (typeof value !== 'number' || typeof low !== 'number' || typeof middle !== 'number') return null;
  if (typeof high !== 'number' || !(high > low)) return null;
  return Math.abs(value - middle) > FAR * (high - low) ? middle : null;
}

/** One sentence for each of `names` whose figure lies off its middle in any scenario. */
export function offMiddleWords(
  results: readonly Drawn[],
  names: readonly ResultName[],
  reading: Reading,
): string[] {
  return names.flatMap((name) => {
    const off = results.flatMap((result) => {
      const value = result.values[name];
      const middle = middleApart(value, name, result.bands);
      if (middle === null) return [];
      const side = (value as number) > middle ? 'above' : 'below';
      return [`${side} ${show(middle, unitOf(name), reading).text} in “${result.name}”`];
    });
    if (off.length === 0) return [];
    return [
      `The ${labelOf(name)} lies off the middle of its draws, ${inWords(off)}: ${CAPPED[name] ?? LOPSIDED}.`,
    ];
  });
}

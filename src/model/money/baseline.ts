/** Which scenario each one is measured against. */
import type { Values } from '../quantities.ts';

export interface Candidate {
  readonly name: string;
  /** Name of the scenario this one names as its baseline. */
  readonly baseline?: string | undefined;
  /** Results, of which the capital is read. */
  readonly values: Partial<Pick<Values, 'capitalCost'>>;
}

/** The scenario each is measured against, by name: the one it names, else `name`, else that of least capital. */
export function baselineNames(inputs: readonly Candidate[], name?: string): (string | undefined)[] {
  const capitalOf = ({ values }: Candidate) => values.capitalCost ?? Number.POSITIVE_INFINITY;
  const least = inputs.reduce<Candidate | undefined>(
    (best, one) => (best === undefined || capitalOf(one) < capitalOf(best) ? one : best),
    undefined,
  );
  return inputs.map(({ baseline }) => baseline ?? name ?? least?.name);
}

/**
 * Index of the baseline of each scenario: its own where it is the baseline itself, −1 where no scenario has the name
 * that is asked for.
 */
export function baselineOf(inputs: readonly Candidate[], name?: string): number[] {
  return baselineNames(inputs, name).map((wanted) => inputs.findIndex((other) => other.name === wanted));
}

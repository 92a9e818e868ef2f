/** When things happen that a bad time puts off: the first winter in the works, and the grant. */

export interface Timing {
  /** Years in which the works are paid for and not yet used. */
  readonly delayYears: number;
  /** Years the grant comes later than the notebook says. */
  readonly grantLateYears: number;
}

export const ON_TIME: Timing = { delayYears: 0, grantLateYears: 0 };

/** Part of a year (1, 2, …) that goes by before the works are used. */
export const delayedPart = (year: number, { delayYears }: Timing): number =>
  Math.min(1, Math.max(0, delayYears - (year - 1)));

/** Part of a sum due after `due` years that is paid in `year`; what falls between two years is shared by both. */
export function paidPart(year: number, due: number): number {
  const whole = Math.floor(due);
  if (year === whole) return 1 - (due - whole);
  return year === whole + 1 ? due - whole : 0;
}

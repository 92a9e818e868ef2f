/** Variance share and worth of measuring of one number, from its draws. */
import { gainIn } from '../../src/uncertainty/valueOfInformation.ts';
import { groupsAlong, varianceShareIn } from '../../src/uncertainty/varianceShares.ts';

export const varianceShare = (x: Float64Array, y: Float64Array): number => varianceShareIn(groupsAlong(x), y);

/** Never below 0. */
export const worthOfMeasuring = (x: Float64Array, benefits: readonly Float64Array[]): number =>
  Math.max(0, gainIn(groupsAlong(x), benefits));

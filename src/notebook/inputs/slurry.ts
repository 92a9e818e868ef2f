/** Store of slurry, its surface and how it is handled, and the day it is spread. */
import type { InputColumn } from './column.ts';

export const SLURRY_INPUTS: readonly InputColumn[] = [
  {
    column: 'pitStoreShare',
    label: 'slurry kept under the slats',
    unit: 'fraction',
    path: 'slats.store',
    of: (s) => (s.slats.store === 'underSlats' ? 1 : 0),
  },
  {
    column: 'storeDepthM',
    label: 'depth of an outside store',
    unit: 'm',
    path: 'slats.storeDepthM',
    of: (s) => s.slats.storeDepthM,
    min: 1,
    max: 6,
    step: 0.1,
  },
  {
    column: 'storeSurfaceGivenM2',
    label: 'surface of an outside store',
    unit: 'm²',
    path: 'slats.storeSurfaceM2',
    of: (s) => s.slats.storeSurfaceM2 ?? Number.NaN,
    min: 10,
    max: 1000,
    step: 5,
  },
  {
    column: 'timesStirred',
    label: 'times an outside store is stirred',
    unit: 'times',
    path: 'slats.timesStirred',
    of: (s) => s.slats.timesStirred,
    min: 0,
    max: 26,
    step: 1,
  },
  {
    column: 'emptiedCleanShare',
    label: 'store emptied clean in autumn',
    unit: 'fraction',
    path: 'slats.emptiedClean',
    of: (s) => (s.slats.emptiedClean ? 1 : 0),
  },
  {
    column: 'spreadWindGivenMPerS',
    label: 'wind at spreading',
    unit: 'm/s',
    path: 'spreading.windMPerS',
    of: (s) => s.spreading.windMPerS ?? Number.NaN,
    min: 0,
    max: 8,
    step: 0.5,
  },
];

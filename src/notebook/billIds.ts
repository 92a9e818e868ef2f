/** Lines of the bill of quantities by the name a notebook gives them, in the order they are printed, and groups of them. */

export const BILL_IDS = [
  'groundwork', 'padConcrete', 'postFixings', 'timberBought', 'timberOwn', 'sawing', 'sawmill', 'erection', 'erectionOwn',
  'roof', 'cladding', 'gutters', 'waterTank', 'slab', 'yard', 'bedFloor', 'pushWall', 'risingBarrier', 'penWall', 'slats',
  'tank', 'outsideStore', 'storeCover', 'feedBarrier', 'penPartitions', 'gates', 'exitBoards', 'exitRamps', 'bowls',
  'beddingStore', 'compostPad', 'heapCover', 'feeders', 'fence', 'movableFence', 'energiser', 'waterPipe', 'troughs',
  'windbreak', 'beddedPlaces', 'slattedPlaces',
] as const; // biome-ignore format: one list
export type BillId = (typeof BILL_IDS)[number];

/** Groups a keeper may mark at one stroke. A line marked by its own name counts by that, not by its group. */
export const BILL_GROUPS = {
  allShed: [
    'groundwork', 'padConcrete', 'postFixings', 'timberBought', 'timberOwn', 'sawing', 'sawmill', 'erection', 'erectionOwn',
    'roof', 'cladding', 'gutters', 'slab', 'yard', 'penPartitions', 'gates',
  ],
  allBed: [
    'bedFloor', 'pushWall', 'risingBarrier', 'exitBoards', 'exitRamps', 'beddingStore', 'compostPad', 'heapCover',
    'beddedPlaces',
  ],
  allSlats: ['penWall', 'slats', 'feedBarrier', 'slattedPlaces'],
  allStores: ['tank', 'outsideStore', 'storeCover'],
  allFences: ['fence', 'movableFence', 'energiser', 'windbreak'],
  allWater: ['waterTank', 'bowls', 'waterPipe', 'troughs'],
  allFeeding: ['feeders'],
} as const satisfies Record<string, readonly BillId[]>; // biome-ignore format: one list
export type BillGroup = keyof typeof BILL_GROUPS;

/** What may be marked as standing already: groups, then lines. Its place, from 1, is its number in the model. */
export const HAD_NAMES = [
  'allShed', 'allBed', 'allSlats', 'allStores', 'allFences', 'allWater', 'allFeeding',
  ...BILL_IDS,
] as const satisfies readonly (BillGroup | BillId)[]; // biome-ignore format: one list

/** As many entries as a scenario may mark. */
export const MOST_HAD = 8;

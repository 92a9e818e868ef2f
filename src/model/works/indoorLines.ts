/** Lines of the bill for what stands in the sheds: bed, slats and stores, barriers, gates and feeders. */
import { line, pieces } from './billLine.ts';
import { bowlsBuilt } from './geometry.ts';

export const INDOOR_LINES = [
  line(
    'bedFloor',
    'M2',
    'compacted floor under the bed',
    'm²',
    {
      price: 'bedFloorPricePerM2',
      works: 'deep bed',
      formula: 'length times depth without the stance',
      when: 'packShare',
    },
    (counted) => counted.same('shedBedM2'),
  ),
  line(
    'pushWall',
    'M2',
    'push walls',
    'm²',
    {
      price: 'pushWallPricePerM2',
      works: 'deep bed',
      formula: 'rear and both ends of the bed without the ways out, times the height of the wall',
      when: 'packShare',
    },
    (counted) =>
      counted.of(['shedWallsM', 'pushWallM', 'bedShare'], (i, walls, height, bed) =>
        bed[i] > 0 ? walls[i] * height[i] : 0,
      ),
  ),
  line(
    'risingBarrier',
    'M',
    'feed barrier that can be raised',
    'm',
    {
      price: 'risingBarrierPricePerM',
      works: 'deep bed',
      formula: 'length of the shed where feed is given at a barrier over a bed',
      when: 'packShare',
    },
    (counted) =>
      counted.of(['builtLengthM', 'barrierUsedShare', 'bedShare'], (i, length, used, bed) =>
        bed[i] > 0 ? length[i] * used[i] : 0,
      ),
  ),
  line(
    'penWall',
    'M2',
    'pen walls',
    'm²',
    {
      price: 'penWallPricePerM2',
      works: 'slats',
      formula:
        'rear and both ends of the row of slats without the ways out, times the height of the wall, where there is no bed',
      when: 'slurryShare',
    },
    (counted) =>
      counted.of(['shedWallsM', 'penWallHeightM', 'bedShare'], (i, walls, height, bed) =>
        bed[i] > 0 ? 0 : walls[i] * height[i],
      ),
  ),
  line(
    'slats',
    'M2',
    'slats',
    'm²',
    { price: 'slatsPricePerM2', works: 'slats', formula: 'slatted area', when: 'slurryShare' },
    (counted) =>
      counted.of(['slatsUsedM2', 'slatsShare'], (i, slats, share) =>
        slats[i] > 0 ? (share[i] > 0 ? 1 : 0) * slats[i] : 0,
      ),
  ),
  line(
    'tank',
    'M3',
    'tank or channel under the slats',
    'm³',
    {
      price: 'tankPricePerM3',
      works: 'slats',
      formula:
        'slatted area times tank depth, or times the depth of a channel where slurry goes to an outside store',
      when: 'slurryShare',
    },
    (counted) =>
      counted.of(
        ['billSlatsM2', 'tankDepthM', 'channelDepthM', 'tankUsedShare'],
        (i, slats, tank, channel, used) => slats[i] * (used[i] * tank[i] + (1 - used[i]) * channel[i]),
      ),
  ),
  line(
    'outsideStore',
    'M3',
    'outside slurry store',
    'm³',
    {
      price: 'outsideStorePricePerM3',
      works: 'slats',
      formula: 'store needed beyond what fits under the slats below the freeboard',
      when: 'slurryShare',
    },
    (counted) =>
      counted.of(
        [
          'storeNeededM3', 'billSlatsM2', 'tankDepthM', 'irelandCoveredFreeboardM', 'tankUsedShare', 'slatsShare',
        ], // biome-ignore format: one list
        (i, needed, slats, tank, freeboard, used, share) => {
          const underSlatsM3 = slats[i] * Math.max(0, tank[i] - freeboard[i]) * used[i];
          return (share[i] > 0 ? 1 : 0) * Math.max(0, needed[i] - underSlatsM3);
        },
      ),
  ),
  line(
    'storeCover',
    'M2',
    'cover of the outside store',
    'm²',
    {
      price: 'storeCoverPricePerM2',
      works: 'slats',
      formula: 'open area of the store, at the price of its kind of cover',
      when: 'slurryShare',
      choice: 'store',
      shortLived: true,
    },
    (counted) =>
      counted.of(['openStoreM2', 'slatsShare'], (i, open, share) => (share[i] > 0 ? 1 : 0) * open[i]),
  ),
  line(
    'feedBarrier',
    'M',
    'feed barrier, fixed',
    'm',
    {
      price: 'feedBarrierPricePerM',
      works: 'slats',
      formula: 'length of the shed where feed is given at a barrier and there is no bed',
      when: 'slurryShare',
    },
    (counted) =>
      counted.of(['builtLengthM', 'barrierUsedShare', 'bedShare'], (i, length, used, bed) =>
        bed[i] > 0 ? 0 : length[i] * used[i],
      ),
  ),
  line(
    'penPartitions',
    'M',
    'partitions of calving pens',
    'm',
    {
      price: 'penPartitionPricePerM',
      works: 'shed',
      formula: 'a side for each pen, and their fronts where a bed lies before them',
    },
    (counted) => counted.same('shedPenPartitionsM'),
  ),
  line(
    'gates',
    'Count',
    'gates: ends of the solid floor, ways out',
    'gates',
    {
      price: 'gatePriceEach',
      works: 'shed',
      formula: 'two at the ends of the solid floor, and one in each way out',
    },
    (counted) => counted.same('shedGatesCount'),
  ),
  line(
    'exitBoards',
    'M2',
    'boards that hold the bed in ways out',
    'm²',
    {
      price: 'exitBoardPricePerM2',
      works: 'deep bed',
      formula: 'ways out through the push wall times its height',
      when: 'packShare',
    },
    (counted) =>
      counted.of(['shedExitsM', 'pushWallM', 'bedShare'], (i, exits, height, bed) =>
        bed[i] > 0 ? exits[i] * height[i] : 0,
      ),
  ),
  line(
    'exitRamps',
    'M3',
    'ramps of hardcore outside ways out',
    'm³',
    {
      price: 'exitRampPricePerM3',
      works: 'deep bed',
      formula:
        'ways out times half the run of the ramp times its height: that of the bed at the end, at most that of the wall',
      when: 'packShare',
    },
    (counted) =>
      counted.of(
        ['shedExitsM', 'packDepthM', 'pushWallM', 'exitRampRatio', 'bedShare'],
        (i, exits, bed, wall, ratio, share) => {
          const high = Math.min(bed[i], wall[i]);
          return share[i] > 0 && high > 0 ? (exits[i] * ratio[i] * high * high) / 2 : 0;
        },
      ),
  ),
  line(
    'bowls',
    'Count',
    'water bowls, frost-free',
    'bowls',
    {
      price: 'waterBowlPriceEach',
      taxed: 'machinery',
      works: 'shed',
      formula: 'where there is a shed, bowls named in the notebook, at least one for every so many head',
      shortLived: true,
    },
    (counted) =>
      counted.of(
        ['shedPlanM2', 'waterBowls', 'headCount', 'commonPracticeAnimalsPerBowl'],
        (i, plan, named, head, perBowl) => (plan[i] > 0 ? bowlsBuilt(named[i], head[i], perBowl[i]) : 0),
      ),
  ),
  line(
    'beddingStore',
    'M2',
    'store for straw or chips',
    'm²',
    {
      price: 'beddingStorePricePerM2',
      works: 'deep bed',
      formula: 'bedding kept under a roof at once times the floor a kilogram of it takes, straw in bales',
      when: 'packShare',
    },
    (counted) =>
      counted.of(
        ['beddingKg', 'mixStoreM2PerKg', 'beddingStoredShare', 'bedShare'],
        (i, kilos, floor, stored, bed) => (bed[i] > 0 ? 1 : 0) * kilos[i] * floor[i] * stored[i],
      ),
  ),
  line(
    'compostPad',
    'M2',
    'compost pad',
    'm²',
    {
      price: 'compostPadPricePerM2',
      works: 'deep bed',
      formula: 'volume of the pack times the ground a cubic metre of windrow and its turning take',
      when: 'packShare',
    },
    (counted) =>
      counted.of(
        ['packM3', 'compostPadM2PerM3', 'bedShare'],
        (i, pack, pad, bed) => (bed[i] > 0 ? 1 : 0) * pack[i] * pad[i],
      ),
  ),
  line(
    'heapCover',
    'M2',
    'covers for the heap',
    'm²',
    {
      price: 'heapCoverPricePerM2',
      works: 'deep bed',
      formula: 'volume of the pack times cover a cubic metre, where it is composted',
      choice: 'cover',
      when: 'packShare',
      shortLived: true,
    },
    (counted) =>
      counted.of(
        ['packM3', 'heapCoverM2PerM3', 'compostPadM2PerM3', 'bedShare'],
        (i, pack, cover, pad, bed) => (pad[i] > 0 ? (bed[i] > 0 ? 1 : 0) * pack[i] * cover[i] : 0),
      ),
  ),
  line(
    'feeders',
    'Count',
    'feeders',
    'feeders',
    {
      price: 'feederPriceEach',
      taxed: 'machinery',
      works: 'all',
      formula: 'head times feeders a head, rounded up',
      choice: 'feeder',
      shortLived: true,
    },
    (counted) =>
      counted.of(['headCount', 'feedersPerHead'], (i, head, perHead) => pieces(head[i] * perHead[i])),
  ),
] as const;

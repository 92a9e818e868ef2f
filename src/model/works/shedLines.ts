/** Lines of the bill for frame, roof and ground of the sheds. */
import { line } from './billLine.ts';

export const SHED_LINES = [
  line(
    'groundwork',
    'M2',
    'stripping, levelling and hardcore',
    'm²',
    {
      price: 'groundworkPricePerM2',
      taxed: 'services',
      works: 'shed',
      formula:
        'plan of the shed without the slats, whose ground is dug for the tank or channel and priced with it',
    },
    (counted) =>
      counted.of(['shedPlanM2', 'billSlatsM2'], (i, plan, slats) => Math.max(0, plan[i] - slats[i])),
  ),
  line(
    'padConcrete',
    'M3',
    'concrete pads under posts',
    'm³',
    {
      price: 'padConcretePricePerM3',
      works: 'shed',
      formula: 'posts times the concrete of a pad, and of a stub on it where frost goes deeper than the pad',
    },
    (counted) =>
      counted.of(
        ['shedPostsCount', 'padConcreteM3PerPost', 'padStubM2', 'padDepthM', 'frostDepthM'],
        (i, posts, pad, stub, deep, frost) => posts[i] * (pad[i] + stub[i] * Math.max(0, frost[i] - deep[i])),
      ),
  ),
  line(
    'postFixings',
    'Count',
    'post shoes and bolts',
    'posts',
    { price: 'postFixingPriceEach', works: 'shed', formula: 'frames (bays + 1) times rows of posts' },
    (counted) => counted.same('shedPostsCount'),
  ),
  line(
    'timberBought',
    'M3',
    'timber, bought',
    'm³',
    {
      price: 'timberPricePerM3',
      works: 'shed',
      formula:
        'posts, rafters and purlins with bracing and waste, heavier with snow, for the share that is bought',
    },
    (counted) => counted.minus('shedTimberM3', ['billTimberOwnM3']),
  ),
  line(
    'timberOwn',
    'M3',
    'timber, own trees',
    'm³',
    {
      price: 'ownTimberPricePerM3',
      works: 'shed',
      formula: 'the same timber for the share from own wood, at what the trees would have sold for',
      own: true,
    },
    (counted) => counted.product(['shedTimberM3', 'ownTimberShare']),
  ),
  line(
    'sawing',
    'Hours',
    'sawing own timber, own hours',
    'h',
    {
      price: 'labourPricePerHour',
      works: 'shed',
      formula: 'own timber times the hours a cubic metre takes',
      own: true,
    },
    (counted) => counted.product(['billTimberOwnM3', 'sawingHoursPerM3']),
  ),
  line(
    'sawmill',
    'Hours',
    'sawmill fuel, blades and wear',
    'h',
    { price: 'sawmillPricePerHour', taxed: 'fuel', works: 'shed', formula: 'hours of sawing' },
    (counted) => counted.same('billSawingHours'),
  ),
  line(
    'erection',
    'Hours',
    'erecting frame, roof and walls, builder',
    'h',
    {
      price: 'builderPricePerHour',
      taxed: 'services',
      works: 'shed',
      formula: 'plan under a roof times the hours a square metre takes, less what is done by own hands',
    },
    (counted) =>
      counted.of(
        ['roofedPlanM2', 'erectionHoursPerM2', 'ownBuildShare'],
        (i, plan, perM2, own) => plan[i] * perM2[i] * (1 - own[i]),
      ),
  ),
  line(
    'erectionOwn',
    'Hours',
    'erecting, own hours',
    'h',
    {
      price: 'labourPricePerHour',
      works: 'shed',
      formula: 'the same hours for the share done by own hands',
      own: true,
    },
    (counted) => counted.product(['roofedPlanM2', 'erectionHoursPerM2', 'ownBuildShare']),
  ),
  line(
    'roof',
    'M2',
    'roof sheets and fixings',
    'm²',
    {
      price: 'roofPricePerM2',
      works: 'shed',
      formula: 'length and depth with overhangs, over the cosine of the pitch',
    },
    (counted) => counted.same('shedRoofM2'),
  ),
  line(
    'cladding',
    'M2',
    'cladding above the walls',
    'm²',
    {
      price: 'claddingPricePerM2',
      works: 'shed',
      formula: 'rear and both gables from the top of the wall to the roof; the front is open',
    },
    (counted) => counted.same('shedCladdingM2'),
  ),
  line(
    'gutters',
    'M',
    'gutters and downpipes',
    'm',
    { price: 'gutterPricePerM', works: 'shed', formula: 'both eaves with overhangs', shortLived: true },
    (counted) => counted.same('shedGuttersM'),
  ),
  line(
    'waterTank',
    'M3',
    'tank for roof water',
    'm³',
    {
      price: 'waterTankPricePerM3',
      works: 'shed',
      formula: 'plan under a roof times the tank a square metre of roof is given',
    },
    (counted) => counted.product(['roofedPlanM2', 'roofTankM3PerM2']),
  ),
  line(
    'slab',
    'M2',
    'concrete slab: stance, solid floor, roofed feed road',
    'm²',
    {
      price: 'slabPricePerM2',
      works: 'shed',
      formula: 'stance of a bedded shed without slats in it, or what a row of slats and its pens leave solid',
    },
    (counted) => counted.same('shedSolidM2'),
  ),
  line(
    'yard',
    'M2',
    'hard standing and yard',
    'm²',
    {
      price: 'yardPricePerM2',
      works: 'all',
      formula: 'hard standing, and the fouled yard that drains to a store',
    },
    (counted) =>
      counted.of(
        ['hardStandingM2', 'openYardM2', 'slatsShare'],
        (i, standing, open, slats) => standing[i] + (slats[i] > 0 ? 1 : 0) * open[i],
      ),
  ),
] as const;

/** Shed and yard geometry → bill of quantities: each line a quantity and a cost, their sum the capital. */

import { type Quantity, quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { vat } from '../money/vat.ts';
import { cents } from './billLine.ts';
import { BILL_LINES, type BillColumn, type BillRowSpec, isEngineered } from './billLines.ts';
import {
  type FrameShape,
  type ShedFloor,
  type ShedFrame,
  type ShedShape,
  shedFloor,
  shedFrame,
  timberLoadFactor,
} from './geometry.ts';
import { standing } from './standing.ts';

const OWN = { source: ['own'] };

/** What the lines of the bill are counted from. */
const measures = {
  builtLengthM: quantity(
    'length of the shed built',
    'm',
    'length of the shed, where there is a bed or slats',
    OWN,
  ).of(['shedLengthM', 'shedDepthM', 'bedShare', 'billSlatsM2'], (i, length, depth, bed, slats) =>
    (bed[i] > 0 || slats[i] > 0) && depth[i] > 0 ? length[i] : 0,
  ),
  builtDepthM: quantity(
    'depth of the shed built',
    'm',
    'from the barrier to the rear wall, where there is a bed or slats; the feed road lies outside',
    OWN,
  ).of(['shedDepthM', 'builtLengthM'], (i, depth, length) => (length[i] > 0 ? depth[i] : 0)),
  roofedRoadM: quantity(
    'feed road under the roof',
    'm',
    'width of a road with feed on one side, where the keeper has it under the roof of the shed',
    OWN,
  ).product(['commonPracticeFeedRoadOneSideM', 'feedRoadRoofedShare', 'roofedShare']),
  roofedPlanM2: quantity(
    'plan of the shed under a roof',
    'm²',
    'length times depth, with the feed road where it is roofed',
    OWN,
  ).of(
    ['builtLengthM', 'builtDepthM', 'roofedRoadM', 'roofedShare'],
    (i, length, depth, road, roofed) => length[i] * (depth[i] + road[i]) * roofed[i],
  ),
  shedPlanM2: quantity(
    'plan of the shed',
    'm²',
    'length times depth, with the feed road where it is roofed',
    OWN,
  ).of(
    ['builtLengthM', 'builtDepthM', 'roofedRoadM'],
    (i, length, depth, road) => length[i] * (depth[i] + road[i]),
  ),
  solidWallM: quantity(
    'height of the solid walls',
    'm',
    'push walls where there is a bed, or else the walls of pens',
    OWN,
  ).of(['pushWallM', 'penWallHeightM', 'bedShare'], (i, push, pen, bed) => (bed[i] > 0 ? push[i] : pen[i])),
  mixStoreM2PerKg: quantity(
    'floor of the store a kilogram of the mix takes',
    'm²/kg',
    'sum over the materials of share ÷ (density × height of the stack): bales for what comes in bales, loose for the rest',
    { when: 'packShare' },
  ).of(
    [
      'mixShareSum', 'material*Share', 'material*LooseDensityKgPerM3', 'material*BaledFraction', 'baleDensityKgPerM3',
      'stackHeightM', 'looseStackHeightM',
    ], // biome-ignore format: one list
    (i, sum, shares, loose, baled, bale, high, looseHigh) => {
      let area = 0;
      for (let m = 0; m < shares.length; m++)
        if (shares[m][i] > 0)
          area +=
            (shares[m][i] / sum[i]) *
            (baled[m][i] / (bale[i] * high[i]) + (1 - baled[m][i]) / (loose[m][i] * looseHigh[i]));
      return area;
    },
  ),
  snowTimberFactor: quantity(
    'timber for the snow, over that for the reference load',
    '×',
    'square root of snow and roof over reference snow and roof',
    OWN,
  ).of(['snowLoadKnPerM2', 'referenceSnowLoadKnPerM2', 'roofDeadLoadKnPerM2'], (i, snow, reference, roof) =>
    timberLoadFactor(snow[i], reference[i], roof[i]),
  ),
  shedTimberM3: quantity(
    'timber of the shed',
    'm³',
    'running metres of posts, rafters and purlins times their sections, with bracing and waste, heavier with snow',
    OWN,
  ).of(
    [
      'shedPostsM', 'shedRaftersM', 'shedPurlinsM', 'postSectionM2', 'rafterSectionM2', 'purlinSectionM2',
      'timberBracingFraction', 'timberWasteFraction', 'snowTimberFactor',
    ], // biome-ignore format: one list
    (i, posts, rafters, purlins, post, rafter, purlin, bracing, waste, snow) =>
      (posts[i] * post[i] + rafters[i] * rafter[i] + purlins[i] * purlin[i]) *
      (1 + bracing[i]) *
      (1 + waste[i]) *
      snow[i],
  ),
  paddockSideM: quantity('side of the paddock', 'm', 'side of a square of the paddock area', {
    when: 'paddockShare',
    source: ['own'],
  }).of(['paddockHa'], (i, hectares) => Math.sqrt(hectares[i] * 10_000)),
};

const framed = <const Reads extends string>(
  label: string,
  unit: string,
  formula: string,
  from: readonly Reads[],
) => ({ label, unit, formula, ...OWN, from });

/** The floor: what stands where between barrier and rear wall. */
const FLOOR = [
  'builtLengthM',
  'builtDepthM',
  'stanceDepthM',
  'bedShare',
  'billSlatsM2',
  'calvingPensM2',
] as const;

const floors = walk({
  name: 'shed floor',
  about: 'Bed, slats, pens and solid floor of the shed as plan and section draw them',
  reads: [...FLOOR, 'calvingPenSideM', 'swedenCalvingPenM2', 'roofedRoadM', 'waysOutCount', 'exitWidthM'],
  makes: {
    shedBedM2: framed(
      'floor under the bed',
      'm²',
      'length times depth without the stance, pens in it counted',
      ['builtLengthM', 'builtDepthM', 'stanceDepthM', 'bedShare'],
    ),
    shedSolidM2: framed(
      'solid floor of the shed',
      'm²',
      'stance without slats, or what a row of slats leaves; feed road where it is roofed',
      [...FLOOR, 'roofedRoadM'],
    ),
    shedWallsM: framed(
      'solid walls of the shed',
      'm',
      'rear, and both ends of bed or slats, without the ways out',
      [...FLOOR, 'calvingPenSideM', 'waysOutCount', 'exitWidthM'],
    ),
    shedExitsM: framed(
      'ways out through solid walls',
      'm',
      'ways out times the width of one, narrower where the wall is short',
      [...FLOOR, 'calvingPenSideM', 'waysOutCount', 'exitWidthM'],
    ),
    shedGatesCount: framed(
      'gates of the shed',
      'gates',
      'both ends of the solid floor, and one in each way out',
      [...FLOOR, 'waysOutCount'],
    ),
    shedPenPartitionsM: framed(
      'partitions of calving pens',
      'm',
      'a side for each pen, and their fronts where a bed lies before them',
      [...FLOOR, 'calvingPenSideM', 'swedenCalvingPenM2'],
    ),
  },
  run({ count, read: r, write: w }) {
    const shape = {} as ShedShape;
    const floor = {} as ShedFloor;
    for (let i = 0; i < count; i++) {
      shape.lengthM = r.builtLengthM[i];
      shape.depthM = r.builtDepthM[i];
      shape.stanceDepthM = r.stanceDepthM[i];
      shape.bedShare = r.bedShare[i];
      shape.slatsM2 = r.billSlatsM2[i];
      shape.calvingPensM2 = r.calvingPensM2[i];
      shape.calvingPenSideM = r.calvingPenSideM[i];
      shape.calvingPenM2 = r.swedenCalvingPenM2[i];
      shape.feedRoadM = r.roofedRoadM[i];
      shape.exits = r.waysOutCount[i];
      shape.exitWidthM = r.exitWidthM[i];
      shedFloor(shape, floor);
      w.shedBedM2[i] = floor.bedM2;
      w.shedSolidM2[i] = floor.solidM2;
      w.shedWallsM[i] = floor.wallsM;
      w.shedPenPartitionsM[i] = floor.partitionsM;
      w.shedExitsM[i] = floor.exitsM;
      w.shedGatesCount[i] = floor.gatesCount;
    }
  },
});

const GROUND = ['builtLengthM', 'builtDepthM'] as const;
const PLAN = [...GROUND, 'roofedRoadM', 'roofedShare'] as const;
const ROOF = [...PLAN, 'eaveM', 'rearEaveM', 'pitchDeg'] as const;

const frames = walk({
  name: 'shed frame',
  about: 'Timber frame and roof of the shed; an open bed has neither',
  // biome-ignore format: one list
  reads: [
    ...PLAN, 'eaveM', 'rearEaveM', 'pitchDeg', 'overhangM', 'bayM', 'postRowSpanM', 'longestTimberM', 'purlinSpacingM', 'solidWallM',
  ],
  makes: {
    shedBaysCount: framed('bays', 'bays', 'length over the width of a bay, rounded up', [...GROUND, 'bayM']),
    shedPostsCount: framed(
      'posts of the shed',
      'posts',
      'frames (bays + 1) times rows of posts; from row to row a rafter must reach',
      [...ROOF, 'bayM', 'postRowSpanM', 'longestTimberM'],
    ),
    shedPostsM: framed('posts, running metres', 'm', 'each post from the floor to the roof over it', [
      ...ROOF,
      'bayM',
      'postRowSpanM',
      'longestTimberM',
    ]),
    shedRaftersM: framed('rafters, running metres', 'm', 'frames times the slope with overhangs', [
      ...ROOF,
      'bayM',
      'overhangM',
    ]),
    shedPurlinsM: framed(
      'purlins, running metres',
      'm',
      'slope over the spacing, rounded up, and one more, times the length with overhangs',
      [...ROOF, 'overhangM', 'purlinSpacingM'],
    ),
    shedRoofM2: framed('roof of the shed', 'm²', 'slope with overhangs, times the length with overhangs', [
      ...ROOF,
      'overhangM',
    ]),
    shedCladdingM2: framed(
      'walls of the shed above the solid ones',
      'm²',
      'rear and both gables from the top of the wall to the roof; the front is open',
      [...GROUND, 'roofedShare', 'eaveM', 'rearEaveM', 'pitchDeg', 'solidWallM'],
    ),
    shedGuttersM: framed('eaves of the shed', 'm', 'the eaves water runs to, with overhangs', [
      ...GROUND,
      'roofedShare',
      'eaveM',
      'rearEaveM',
      'pitchDeg',
      'overhangM',
    ]),
  },
  run({ count, read: r, write: w }) {
    const shape = {} as FrameShape;
    const frame = {} as ShedFrame;
    for (let i = 0; i < count; i++) {
      shape.lengthM = r.builtLengthM[i];
      shape.depthM = r.builtDepthM[i];
      shape.feedRoadM = r.roofedRoadM[i];
      shape.eaveM = r.eaveM[i];
      shape.rearEaveM = r.rearEaveM[i];
      shape.pitchDeg = r.pitchDeg[i];
      shape.overhangM = r.overhangM[i];
      shape.bayM = r.bayM[i];
      shape.postRowSpanM = r.postRowSpanM[i];
      shape.longestTimberM = r.longestTimberM[i];
      shape.purlinSpacingM = r.purlinSpacingM[i];
      shape.wallM = r.solidWallM[i];
      shedFrame(shape, frame);
      const roofed = r.roofedShare[i];
      w.shedBaysCount[i] = frame.bays;
      w.shedPostsCount[i] = frame.posts * roofed;
      w.shedPostsM[i] = frame.postM * roofed;
      w.shedRaftersM[i] = frame.rafterM * roofed;
      w.shedPurlinsM[i] = frame.purlinM * roofed;
      w.shedRoofM2[i] = frame.roofM2 * roofed;
      w.shedCladdingM2[i] = frame.claddingM2 * roofed;
      w.shedGuttersM[i] = frame.gutterM * roofed;
    }
  },
});

const lines = Object.assign({}, ...BILL_LINES.map(({ makes }) => makes)) as Record<BillColumn, Quantity>;

const money = (label: string, formula: string) => quantity(label, 'money', formula);
const costsOf = (some: typeof BILL_LINES) => some.map(({ cost }) => cost);
const CASH = BILL_LINES.filter(({ own, onTop }) => !own && !onTop);
/** Cash lines of one kind of purchase. */
const linesOf = (kind: NonNullable<BillRowSpec['taxed']>, words: string) =>
  money(`${words} among the cash lines`, 'sum of those lines of the bill').sum(
    costsOf(CASH.filter(({ taxed }) => taxed === kind)),
  );

const capital = {
  capitalLinesBuildings: money(
    'cash lines of sheds and stores',
    'sum of those lines of the bill; the engineer comes on top',
  ).sum(costsOf(BILL_LINES.filter(isEngineered))),
  capitalLinesCash: money(
    'cash lines of the bill',
    'sum of the lines paid in cash; the engineer comes on top',
  ).sum(costsOf(CASH)),
  capitalLinesServices: linesOf('services', 'services'),
  capitalLinesMachinery: linesOf('machinery', 'equipment'),
  capitalLinesFuel: linesOf('fuel', 'fuel'),
  capitalLinesOwn: money('own lines of the bill', 'sum of the lines of own timber and own hours').sum(
    costsOf(BILL_LINES.filter(({ own }) => own)),
  ),
  capitalLinesShortLived: money('short-lived lines of the bill', 'sum of the short-lived lines').sum(
    costsOf(BILL_LINES.filter(({ shortLived }) => shortLived)),
  ),
  capitalLinesShortMachinery: money('equipment among the short-lived lines', 'sum of those lines').sum(
    costsOf(BILL_LINES.filter(({ shortLived, taxed }) => shortLived && taxed === 'machinery')),
  ),
  capitalLinesAll: money(
    'works after the bill, those that stand already with them',
    'sum of the lines of the bill: in cash, in own timber and hours, the engineer and tax that is not reclaimed; nothing for the unforeseen',
  ).of(['capitalLinesCash', 'capitalLinesOwn', 'costEngineer', 'costVat'], (i, cash, own, engineer, tax) =>
    cents(cash[i] + own[i] + engineer[i] + tax[i]),
  ),
  capitalLines: money('works after the bill', 'sum of all lines, less what the farm has already').of(
    ['capitalLinesAll', 'costAlreadyHave'],
    (i, all, have) => cents(all[i] + have[i]),
  ),
  capitalAll: money(
    'works as new, those that stand already with them',
    'the capital given in the notebook, or else the sum of the lines of the bill',
  ).of(['capitalGiven', 'capitalLinesAll'], (i, given, all) =>
    Number.isFinite(given[i]) ? (given[i] >= 0 ? given[i] : Number.NaN) : all[i],
  ),
  capitalCost: money(
    'capital',
    'the capital given in the notebook, or else the sum of the lines of the bill; less what the farm has already',
  ).of(['capitalGiven', 'capitalLines', 'alreadyHavePart'], (i, given, all, have) =>
    Number.isFinite(given[i]) ? (given[i] >= 0 ? given[i] * (1 - have[i]) : Number.NaN) : all[i],
  ),
  capitalNonCash: money(
    'capital paid in own timber and hours',
    'lines of own timber and own hours that do not stand already; none when the capital is given',
  ).of(['capitalGiven', 'capitalLinesOwn', 'capitalOwnedOwn'], (i, given, own, have) =>
    Number.isFinite(given[i]) ? 0 : have[i] > 0 ? cents(own[i] - have[i]) : own[i],
  ),
  capitalCash: money('capital paid in cash', 'capital less own timber and hours').minus('capitalCost', [
    'capitalNonCash',
  ]),
  capitalAllShortLived: money(
    'works as new that are bought again before the buildings are worn out',
    'short-lived lines with tax that is not reclaimed; the same share of a given capital',
  ).of(
    [
      'capitalGiven', 'capitalLinesAll', 'capitalLinesShortLived', 'capitalLinesShortMachinery', 'worksMaterialsVatRate',
      'worksMachineryVatRate', 'vatKeptWorks',
    ], // biome-ignore format: one list
    (i, given, all, lines, machinery, onMaterials, onMachinery, kept) => {
      const short =
        (lines[i] - machinery[i]) * (1 + onMaterials[i] * kept[i]) +
        machinery[i] * (1 + onMachinery[i] * kept[i]);
      return Number.isFinite(given[i]) ? given[i] * (all[i] === 0 ? 0 : short / all[i]) : short;
    },
  ),
  capitalShortLived: money(
    'works bought again before the buildings are worn out',
    'short-lived works less what stands already',
  ).minus('capitalAllShortLived', ['capitalOwnedShortLived']),
  capitalOwned: money(
    'works that stand already, as new',
    'all works times the part that stands already',
  ).product(['capitalAll', 'alreadyHavePart']),
};

/** What must be built for each way of wintering, line by line, and what it costs. */
export const building = [measures, floors, frames, lines, vat, capital, standing] as const;

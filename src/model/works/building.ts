/** Shed and yard geometry → bill of quantities: each line a quantity and a cost, their sum the capital. */

import { type Quantity, quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { cents } from './billLine.ts';
import { BILL_LINES, type BillColumn } from './billLines.ts';
import { type ShedFrame, type ShedShape, shedFrame, timberLoadFactor } from './shedFrame.ts';

const INDOORS = { when: 'packShare', source: ['own'] };
const ON_SLATS = { when: 'slurryShare', source: ['own'] };
const OWN = { source: ['own'] };

/** What the lines of the bill are counted from. */
const measures = {
  beddedShedLengthM: quantity(
    'length of the bedded shed',
    'm',
    'length of the shed, where there is a bed',
    INDOORS,
  ).of(['shedLengthM', 'bedShare'], (i, length, bed) => (bed[i] > 0 ? 1 : 0) * length[i]),
  beddedShedDepthM: quantity(
    'depth of the bedded shed',
    'm',
    'depth of the shed, where there is a bed',
    INDOORS,
  ).of(['shedDepthM', 'bedShare'], (i, depth, bed) => (bed[i] > 0 ? 1 : 0) * depth[i]),
  roofedPlanM2: quantity(
    'plan of the sheds under a roof',
    'm²',
    'length times depth of the bedded shed where it has a roof, and of the slatted one',
    OWN,
  ).of(
    ['beddedShedLengthM', 'beddedShedDepthM', 'roofedShare', 'slattedPensLengthM', 'slattedShedDepthM'],
    (i, length, depth, roofed, pens, slatted) => length[i] * depth[i] * roofed[i] + pens[i] * slatted[i],
  ),
  bedFloorDepthM: quantity(
    'depth of the bed from stance to rear wall',
    'm',
    'depth of the bedded shed without the stance',
    INDOORS,
  ).of(['beddedShedDepthM', 'stanceDepthM'], (i, depth, stance) => depth[i] - Math.min(stance[i], depth[i])),
  slattedPensLengthM: quantity(
    'length of the slatted pens',
    'm',
    'slatted area over the depth of a pen',
    ON_SLATS,
  ).of(['billSlatsM2', 'slattedPenDepthM'], (i, slats, depth) => slats[i] / depth[i]),
  slattedShedDepthM: quantity(
    'depth of the slatted shed',
    'm',
    'depth of a pen and of the feed passage, where there are slats',
    ON_SLATS,
  ).of(['billSlatsM2', 'slattedPenDepthM', 'commonPracticeFeedRoadOneSideM'], (i, slats, pen, passage) =>
    slats[i] > 0 ? pen[i] + passage[i] : 0,
  ),
  shedPlanM2: quantity(
    'plan of the sheds',
    'm²',
    'length times depth of the bedded shed and of the slatted one',
    OWN,
  ).of(
    ['beddedShedLengthM', 'beddedShedDepthM', 'slattedPensLengthM', 'slattedShedDepthM'],
    (i, length, depth, pens, slatted) => length[i] * depth[i] + pens[i] * slatted[i],
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
    'timber of the sheds',
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

// biome-ignore format: one list
const GROUND = ['beddedShedLengthM', 'beddedShedDepthM', 'slattedPensLengthM', 'slattedShedDepthM'] as const;
const PLAN = [...GROUND, 'roofedShare'] as const;

const frames = walk({
  name: 'shed frames',
  about: 'Timber frame and roof of the bedded and the slatted shed together; an open bed has neither',
  // biome-ignore format: one list
  reads: [
    ...PLAN, 'eaveM', 'pitchDeg', 'overhangM', 'bayM', 'postRowSpanM', 'longestTimberM', 'purlinSpacingM',
    'pushWallM', 'penWallHeightM',
  ],
  makes: {
    shedBaysCount: framed('bays', 'bays', 'length over the width of a bay, rounded up', [...GROUND, 'bayM']),
    shedPostsCount: framed(
      'posts of the sheds',
      'posts',
      'frames (bays + 1) times rows of posts; from row to row a rafter must reach',
      [...PLAN, 'bayM', 'postRowSpanM', 'longestTimberM', 'pitchDeg'],
    ),
    shedPostsM: framed(
      'posts, running metres',
      'm',
      'posts times eave and a quarter of what the roof rises over the depth',
      [...PLAN, 'bayM', 'postRowSpanM', 'longestTimberM', 'pitchDeg', 'eaveM'],
    ),
    shedRaftersM: framed('rafters, running metres', 'm', 'frames times the slope with overhangs', [
      ...PLAN,
      'bayM',
      'pitchDeg',
      'overhangM',
    ]),
    shedPurlinsM: framed(
      'purlins, running metres',
      'm',
      'slope over the spacing, rounded up, and one more, times the length with overhangs',
      [...PLAN, 'pitchDeg', 'overhangM', 'purlinSpacingM'],
    ),
    shedRoofM2: framed(
      'roof of the sheds',
      'm²',
      'length and depth with overhangs, over the cosine of the pitch',
      [...PLAN, 'pitchDeg', 'overhangM'],
    ),
    shedCladdingM2: framed(
      'walls of the sheds above the solid ones',
      'm²',
      'rear and both gables from the top of the wall to the roof; the front is open',
      [...PLAN, 'eaveM', 'pitchDeg', 'pushWallM', 'penWallHeightM'],
    ),
    shedGuttersM: framed('eaves of the sheds', 'm', 'both eaves with overhangs', [...PLAN, 'overhangM']),
  },
  run({ count, read: r, write: w }) {
    const shape = {} as ShedShape;
    const bedded = {} as ShedFrame;
    const slatted = {} as ShedFrame;
    for (let i = 0; i < count; i++) {
      shape.eaveM = r.eaveM[i];
      shape.pitchDeg = r.pitchDeg[i];
      shape.overhangM = r.overhangM[i];
      shape.bayM = r.bayM[i];
      shape.postRowSpanM = r.postRowSpanM[i];
      shape.longestTimberM = r.longestTimberM[i];
      shape.purlinSpacingM = r.purlinSpacingM[i];
      shape.lengthM = r.beddedShedLengthM[i];
      shape.depthM = r.beddedShedDepthM[i];
      shape.wallM = r.pushWallM[i];
      shedFrame(shape, bedded);
      shape.lengthM = r.slattedPensLengthM[i];
      shape.depthM = r.slattedShedDepthM[i];
      shape.wallM = r.penWallHeightM[i];
      shedFrame(shape, slatted);

      const roofed = r.roofedShare[i];
      w.shedBaysCount[i] = bedded.bays + slatted.bays;
      w.shedPostsCount[i] = bedded.posts * roofed + slatted.posts;
      w.shedPostsM[i] = bedded.postM * roofed + slatted.postM;
      w.shedRaftersM[i] = bedded.rafterM * roofed + slatted.rafterM;
      w.shedPurlinsM[i] = bedded.purlinM * roofed + slatted.purlinM;
      w.shedRoofM2[i] = bedded.roofM2 * roofed + slatted.roofM2;
      w.shedCladdingM2[i] = bedded.claddingM2 * roofed + slatted.claddingM2;
      w.shedGuttersM[i] = bedded.gutterM * roofed + slatted.gutterM;
    }
  },
});

const lines = Object.assign({}, ...BILL_LINES.map(({ makes }) => makes)) as Record<BillColumn, Quantity>;

const money = (label: string, formula: string) => quantity(label, 'money', formula);
const costsOf = (some: typeof BILL_LINES) => some.map(({ cost }) => cost);
const CASH = BILL_LINES.filter(({ own, onTop }) => !own && !onTop);
const BUILDINGS = CASH.filter(({ works }) => works !== 'outdoors' && works !== 'all');

const capital = {
  capitalLinesBuildings: money(
    'cash lines of sheds and stores',
    'sum of those lines of the bill; the engineer comes on top',
  ).sum(costsOf(BUILDINGS)),
  capitalLinesCash: money(
    'cash lines of the bill',
    'sum of the lines paid in cash; the engineer comes on top',
  ).sum(costsOf(CASH)),
  capitalLinesOwn: money('own lines of the bill', 'sum of the lines of own timber and own hours').sum(
    costsOf(BILL_LINES.filter(({ own }) => own)),
  ),
  capitalLinesShortLived: money('short-lived lines of the bill', 'sum of the short-lived lines').sum(
    costsOf(BILL_LINES.filter(({ shortLived }) => shortLived)),
  ),
  capitalLines: money(
    'works after the bill',
    'sum of the lines of the bill: in cash, in own timber and hours, and the engineer; nothing for the unforeseen',
  ).of(['capitalLinesCash', 'capitalLinesOwn', 'costEngineer'], (i, cash, own, engineer) =>
    cents(cash[i] + own[i] + engineer[i]),
  ),
  capitalCost: money(
    'capital',
    'the capital given in the notebook, or else the sum of the lines of the bill',
  ).of(['capitalGiven', 'capitalLines'], (i, given, all) =>
    Number.isFinite(given[i]) ? (given[i] >= 0 ? given[i] : Number.NaN) : all[i],
  ),
  capitalNonCash: money(
    'capital paid in own timber and hours',
    'lines of own timber and own hours; none when the capital is given',
  ).of(['capitalGiven', 'capitalLinesOwn'], (i, given, own) => (Number.isFinite(given[i]) ? 0 : own[i])),
  capitalCash: money('capital paid in cash', 'capital less own timber and hours').minus('capitalCost', [
    'capitalNonCash',
  ]),
  capitalShortLived: money(
    'works bought again before the buildings are worn out',
    'short-lived lines; the same share of a given capital',
  ).of(['capitalGiven', 'capitalLines', 'capitalLinesShortLived'], (i, given, all, short) =>
    Number.isFinite(given[i]) ? given[i] * (all[i] === 0 ? 0 : short[i] / all[i]) : short[i],
  ),
};

/** What must be built for each way of wintering, line by line, and what it costs. */
export const building = [measures, frames, lines, capital] as const;

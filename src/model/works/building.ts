/** Shed and yard geometry → bill of quantities: each line a quantity and a cost, their sum the capital. */

import { defineStage, type Quantity } from '../stage.ts';
import { BILL_LINES, type BillSpec } from './billLines.ts';
import { type ShedFrame, type ShedShape, shedFrame, timberLoadFactor } from './shedFrame.ts';

// biome-ignore format: one list of names
const READS = [
  'headCount', 'bedShare', 'slatsShare', 'pastureShare', 'paddockHa', 'slatsUsedM2', 'tankDepthM',
  'openStoreM2', 'openYardM2', 'storeNeededM3', 'beddingM3', 'packM3', 'shedLengthM', 'shedDepthM',
  'stanceDepthM', 'eaveM', 'pitchDeg', 'overhangM', 'bayM', 'pushWallM', 'hardStandingM2', 'waterBowls',
  'longestTimberM', 'ownTimberShare', 'snowLoadKnPerM2', 'capitalGiven', 'postRowSpanM', 'postSectionM2',
  'rafterSectionM2', 'purlinSectionM2', 'purlinSpacingM', 'timberBracingFraction', 'timberWasteFraction',
  'referenceSnowLoadKnPerM2', 'roofDeadLoadKnPerM2', 'padConcreteM3PerPost', 'sawingHoursPerM3',
  'erectionHoursPerM2', 'ownBuildShare', 'gatesPerBay', 'roofTankM3PerM2', 'slattedPenDepthM',
  'commonPracticeFeedRoadOneSideM', 'penWallHeightM', 'irelandCoveredFreeboardM', 'tankUsedShare',
  'channelDepthM', 'feedersPerHead', 'barrierUsedShare', 'commonPracticeAnimalsPerBowl', 'headPerTrough',
  'beddingStoredShare', 'beddingStackM', 'compostPadM2PerM3', 'heapCoverM2PerM3', 'movableFenceLengths',
  'windbreakMPerHead',
] as const;

const PRICES = [...new Set(BILL_LINES.map((line) => line.price))];
const CASH = BILL_LINES.filter((line) => !line.own && !line.onTop);
const BUILDINGS = CASH.filter((line) => line.works !== 'outdoors' && line.works !== 'all');
const IN_CASH: ReadonlySet<BillSpec> = new Set(CASH);
const IN_BUILDINGS: ReadonlySet<BillSpec> = new Set(BUILDINGS);
const under = (onTop: BillSpec['onTop']) => (onTop === 'buildings' ? BUILDINGS : CASH);

/** The lines on top come last: they are shares of those above. */
const IN_ORDER = [...BILL_LINES.filter((line) => !line.onTop), ...BILL_LINES.filter((line) => line.onTop)];

const money = (label: string, formula: string, from: readonly string[]): Quantity => ({
  label,
  unit: 'money',
  formula,
  from,
});

const makes: Record<string, Quantity> = {};
for (const line of BILL_LINES) {
  const { label, unit, formula, route } = line;
  const from = line.onTop ? under(line.onTop).map((cash) => cash.cost) : line.from;
  makes[line.quantity] = {
    label: `${label}, quantity`,
    unit,
    formula,
    from,
    source: ['own'],
    ...(route ? { route } : {}),
  };
  makes[line.cost] = {
    ...money(label, 'quantity times price, to the cent', [line.quantity, line.price]),
    ...(route ? { route } : {}),
  };
}
makes.capitalLines = money(
  'works after the bill',
  'sum of the lines of the bill',
  BILL_LINES.map((line) => line.cost),
);
makes.capitalCost = money(
  'capital',
  'the capital given in the notebook, or else the sum of the lines of the bill',
  ['capitalGiven', 'capitalLines'],
);
makes.capitalNonCash = money(
  'capital paid in own timber and hours',
  'lines of own timber and own hours; none when the capital is given',
  ['capitalGiven', ...BILL_LINES.filter((line) => line.own).map((line) => line.cost)],
);
makes.capitalCash = money('capital paid in cash', 'capital less own timber and hours', [
  'capitalCost',
  'capitalNonCash',
]);
makes.capitalShortLived = money(
  'works bought again before the buildings are worn out',
  'short-lived lines; the same share of a given capital',
  ['capitalCost', ...BILL_LINES.filter((line) => line.shortLived).map((line) => line.cost)],
);

/** Money is kept to the cent, so that printed lines add up to the printed sum. */
const cents = (amount: number) => Math.round(amount * 100) / 100;
/** Whole pieces; the slack keeps 12.000000001 from becoming 13. */
const pieces = (number: number) => Math.ceil(number - 1e-9);

export const buildingStage = defineStage({
  name: 'building',
  about: 'What must be built for each way of wintering, line by line, and what it costs',
  reads: [...READS, ...PRICES] as readonly string[],
  makes,
  run({ count, read, write }) {
    const r = read as { readonly [K in (typeof READS)[number]]: Float64Array };
    const shape = {} as ShedShape;
    const bedded = {} as ShedFrame;
    const slatted = {} as ShedFrame;
    for (let i = 0; i < count; i++) {
      const hasBed = r.bedShare[i] > 0 ? 1 : 0;
      const hasSlats = r.slatsShare[i] > 0 ? 1 : 0;
      const isOut = r.pastureShare[i] > 0 ? 1 : 0;
      const head = r.headCount[i];
      const slatsKnown = r.slatsUsedM2[i] > 0;
      const slatsM2 = slatsKnown ? hasSlats * r.slatsUsedM2[i] : 0;

      shape.eaveM = r.eaveM[i];
      shape.pitchDeg = r.pitchDeg[i];
      shape.overhangM = r.overhangM[i];
      shape.bayM = r.bayM[i];
      shape.postRowSpanM = r.postRowSpanM[i];
      shape.longestTimberM = r.longestTimberM[i];
      shape.purlinSpacingM = r.purlinSpacingM[i];
      shape.lengthM = hasBed * r.shedLengthM[i];
      shape.depthM = hasBed * r.shedDepthM[i];
      shape.wallM = r.pushWallM[i];
      const { lengthM: bedLength, depthM: bedDepth } = shape;
      shedFrame(shape, bedded);
      const penLength = slatsM2 / r.slattedPenDepthM[i];
      shape.lengthM = penLength;
      shape.depthM = slatsM2 > 0 ? r.slattedPenDepthM[i] + r.commonPracticeFeedRoadOneSideM[i] : 0;
      shape.wallM = r.penWallHeightM[i];
      shedFrame(shape, slatted);

      const plan = bedded.planM2 + slatted.planM2;
      const posts = bedded.posts + slatted.posts;
      const timber =
        ((bedded.postM + slatted.postM) * r.postSectionM2[i] +
          (bedded.rafterM + slatted.rafterM) * r.rafterSectionM2[i] +
          (bedded.purlinM + slatted.purlinM) * r.purlinSectionM2[i]) *
        (1 + r.timberBracingFraction[i]) *
        (1 + r.timberWasteFraction[i]) *
        timberLoadFactor(r.snowLoadKnPerM2[i], r.referenceSnowLoadKnPerM2[i], r.roofDeadLoadKnPerM2[i]);
      const ownTimber = timber * r.ownTimberShare[i];
      const erection = plan * r.erectionHoursPerM2[i];
      const paddockSideM = Math.sqrt(r.paddockHa[i] * 10_000);
      const stance = Math.min(r.stanceDepthM[i], bedDepth);
      const underSlatsM3 =
        slatsM2 * Math.max(0, r.tankDepthM[i] - r.irelandCoveredFreeboardM[i]) * r.tankUsedShare[i];
      const channel = r.tankUsedShare[i] * r.tankDepthM[i] + (1 - r.tankUsedShare[i]) * r.channelDepthM[i];

      write.billGroundworkM2[i] = plan;
      write.billPadConcreteM3[i] = posts * r.padConcreteM3PerPost[i];
      write.billPostFixingsCount[i] = posts;
      write.billTimberBoughtM3[i] = timber - ownTimber;
      write.billTimberOwnM3[i] = ownTimber;
      write.billSawingHours[i] = ownTimber * r.sawingHoursPerM3[i];
      write.billSawmillHours[i] = ownTimber * r.sawingHoursPerM3[i];
      write.billErectionHours[i] = erection * (1 - r.ownBuildShare[i]);
      write.billErectionOwnHours[i] = erection * r.ownBuildShare[i];
      write.billRoofM2[i] = bedded.roofM2 + slatted.roofM2;
      write.billCladdingM2[i] = bedded.claddingM2 + slatted.claddingM2;
      write.billGuttersM[i] = bedded.gutterM + slatted.gutterM;
      write.billWaterTankM3[i] = plan * r.roofTankM3PerM2[i];
      write.billSlabM2[i] =
        bedLength * stance + (slatsM2 > 0 ? penLength * r.commonPracticeFeedRoadOneSideM[i] : 0);
      write.billYardM2[i] = r.hardStandingM2[i] + hasSlats * r.openYardM2[i];
      write.billBedFloorM2[i] = bedLength * (bedDepth - stance);
      write.billPushWallM2[i] = (bedLength + 2 * (bedDepth - stance)) * r.pushWallM[i];
      write.billRisingBarrierM[i] = bedLength * r.barrierUsedShare[i];
      write.billPenWallM2[i] =
        slatsM2 > 0 ? (penLength + 2 * r.slattedPenDepthM[i]) * r.penWallHeightM[i] : 0;
      write.billSlatsM2[i] = slatsM2;
      write.billTankM3[i] = slatsM2 * channel;
      write.billOutsideStoreM3[i] = hasSlats * Math.max(0, r.storeNeededM3[i] - underSlatsM3);
      write.billStoreCoverM2[i] = hasSlats * r.openStoreM2[i];
      write.billFeedBarrierM[i] = penLength * r.barrierUsedShare[i];
      write.billGatesCount[i] = pieces((bedded.bays + slatted.bays) * r.gatesPerBay[i]);
      write.billBowlsCount[i] =
        plan > 0 ? Math.max(r.waterBowls[i], pieces(head / r.commonPracticeAnimalsPerBowl[i])) : 0;
      write.billBeddingStoreM2[i] =
        hasBed * ((r.beddingM3[i] * r.beddingStoredShare[i]) / r.beddingStackM[i]);
      write.billCompostPadM2[i] = hasBed * r.packM3[i] * r.compostPadM2PerM3[i];
      write.billHeapCoverM2[i] =
        r.compostPadM2PerM3[i] > 0 ? hasBed * r.packM3[i] * r.heapCoverM2PerM3[i] : 0;
      write.billFeedersCount[i] = pieces(head * r.feedersPerHead[i]);
      write.billFenceM[i] = isOut * 4 * paddockSideM;
      write.billMovableFenceM[i] = isOut * paddockSideM * r.movableFenceLengths[i];
      write.billEnergiserCount[i] = isOut;
      write.billWaterPipeM[i] = isOut * 2 * paddockSideM;
      write.billTroughsCount[i] = isOut * pieces(head / r.headPerTrough[i]);
      write.billWindbreakM[i] = isOut * head * r.windbreakMPerHead[i];
      write.billBeddedPlacesHead[i] = bedDepth * bedLength > 0 ? 0 : hasBed * head;
      write.billSlattedPlacesHead[i] = slatsM2 > 0 ? 0 : hasSlats * head;
    }

    write.capitalLines.fill(0);
    write.capitalNonCash.fill(0);
    write.capitalShortLived.fill(0);
    // What the lines on top are shares of: the cash lines so far, and those of sheds and stores among them.
    const cash = new Float64Array(count);
    const buildings = new Float64Array(count);
    for (const line of IN_ORDER) {
      const quantity = write[line.quantity];
      const price = read[line.price];
      const cost = write[line.cost];
      const below = line.onTop === 'buildings' ? buildings : cash;
      for (let i = 0; i < count; i++) {
        if (line.onTop) quantity[i] = cents(below[i]);
        // Nothing to build costs nothing, with or without a price; a price that is missing or below 0 is no price.
        cost[i] = quantity[i] === 0 ? 0 : price[i] >= 0 ? cents(quantity[i] * price[i]) : Number.NaN;
      }
      addTo(write.capitalLines, cost, count);
      if (line.own) addTo(write.capitalNonCash, cost, count);
      if (line.shortLived) addTo(write.capitalShortLived, cost, count);
      if (IN_CASH.has(line)) addTo(cash, cost, count);
      if (IN_BUILDINGS.has(line)) addTo(buildings, cost, count);
    }
    for (let i = 0; i < count; i++) {
      const lines = cents(write.capitalLines[i]);
      const given = r.capitalGiven[i];
      write.capitalLines[i] = lines;
      write.capitalCost[i] = Number.isFinite(given) ? (given >= 0 ? given : Number.NaN) : lines;
      if (Number.isFinite(given)) {
        write.capitalNonCash[i] = 0;
        const share = lines === 0 ? 0 : write.capitalShortLived[i] / lines;
        write.capitalShortLived[i] = given * share;
      }
      write.capitalCash[i] = write.capitalCost[i] - write.capitalNonCash[i];
    }
  },
});

function addTo(sum: Float64Array, column: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) sum[i] += column[i];
}

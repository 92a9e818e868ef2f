// biome-ignore-all lint: made by a program
/** Made by tests/bench/fuse.ts from the stages: the whole model as one loop over rows. Not for reading. */

import { absorbencyAtMoisture } from '../../src/model/bed/absorbency.ts';
import { fedRemainingShare, remainingShare } from '../../src/model/bed/decay.ts';
import { freeAirSpace } from '../../src/model/bed/freeAirSpace.ts';
import { heatClass } from '../../src/model/bed/heat.ts';
import { immobilisedPerKg } from '../../src/model/bed/immobilisation.ts';
import { heapEvaporation, windrowFootprintM2, windrowNitrogenLoss } from '../../src/model/bed/windrow.ts';
import { leachedFromWeekKg } from '../../src/model/field/fieldNitrogen.ts';
import { layerDepthMm, waterHeldMm } from '../../src/model/field/humus.ts';
import { coveredHa, M2_PER_HA } from '../../src/model/field/patches.ts';
import { reseedFraction, treadingLossFraction } from '../../src/model/field/treading.ts';
import { washedFraction } from '../../src/model/field/washOff.ts';
import {
  dryMatterKg,
  grossEnergyMj,
  growthMj,
  maintenanceInCold,
  maintenanceMj,
  milkMj,
  volatileSolidsKg,
} from '../../src/model/herd/energy.ts';
import { loanBalance } from '../../src/model/money/loan.ts';
import {
  annuityFactor,
  debtServiceCover,
  realRate,
  replacementFactor,
  straightLineCost,
} from '../../src/model/money/presentValue.ts';
import { indirectNitrousKg, manureMethaneKg } from '../../src/model/nutrients/managed.ts';
import { lossLimit, mineralisedTanKg, temperatureFactor } from '../../src/model/slurry/ammonia.ts';
import { storeNeededM3 } from '../../src/model/slurry/storage.ts';
import { WEEKS, winterDaysInWeek } from '../../src/model/stage.ts';
import { stressPerMm, takenMm } from '../../src/model/weather/bucket.ts';
import { retentionMm, runoffMm } from '../../src/model/weather/curveNumber.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { daysToDaylight, growthDayOf, seasonOf } from '../../src/model/weather/season.ts';
import { meltMm, snowfallMm } from '../../src/model/weather/snow.ts';
import {
  type ShedFrame,
  type ShedShape,
  shedFrame,
  timberLoadFactor,
} from '../../src/model/works/shedFrame.ts';
import type { CHIEF } from './chief.ts';

function left(eatenKg: number, keptKg: number, limit: number): number {
  return eatenKg - Math.min(keptKg, eatenKg * limit);
}

function usedOnPaddock(
  fallen: number,
  needKgPerHa: number,
  spotShare: number,
  spotHa: number,
  restHa: number,
): number {
  return (
    Math.min(fallen * spotShare, needKgPerHa * spotHa) +
    Math.min(fallen * (1 - spotShare), needKgPerHa * restHa)
  );
}

function part(a: number, whole: number): number {
  return whole > 0 ? a / whole : 0;
}

const MINUTES = 60;

const cents = (amount: number) => Math.round(amount * 100) / 100;

const pieces = (number: number) => Math.ceil(number - 1e-9);

function times(quantity: number, price: number): number {
  return quantity === 0 ? 0 : price >= 0 ? quantity * price : Number.NaN;
}

function yearly(amount: number, rate: number, years: number): number {
  return amount === 0 ? 0 : amount / annuityFactor(rate, years);
}

function balance(loan: LoanColumns, i: number, year: number): number {
  return loanBalance(
    loan.Amount[i],
    loan.Rate[i],
    loan.Years[i],
    loan.GraceYears[i],
    loan.Straight[i] > 0,
    year,
  );
}

type LoanColumns = Readonly<Record<'Amount' | 'Rate' | 'Years' | 'GraceYears' | 'Straight', Float64Array>>;

const NITROUS_PER_NITROGEN = 44 / 28;

function sameAsAbove(columns: readonly Float64Array[], i: number): boolean {
  for (const column of columns) if (column[i] !== column[i - 1]) return false;
  return true;
}

/** Nothing to build costs nothing; a price that is missing or below 0 is no price. */
function costOf(quantity: number, price: number): number {
  return quantity === 0 ? 0 : price >= 0 ? cents(quantity * price) : Number.NaN;
}

const deposits = new Float64Array(WEEKS);
const inflow = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);
const weekTemperatureC = new Float64Array(WEEKS);
const weekRunoffMm = new Float64Array(WEEKS);
const weekTroddenRunoffMm = new Float64Array(WEEKS);
const weekDrainageMm = new Float64Array(WEEKS);
const weekFrozenDays = new Float64Array(WEEKS);
const weekRainMm = new Float64Array(WEEKS);
const weeks = { weekDrainageMm, weekTemperatureC, weekFrozenDays };
const field = {
  growthDay: new Float64Array(1),
  growthBaseC: new Float64Array(1),
  fieldCapacityM3PerM3: new Float64Array(1),
  rootDepthMm: new Float64Array(1),
  nitrifiedFractionPerWeek: new Float64Array(1),
  nitrificationPerC: new Float64Array(1),
  nitrificationReferenceC: new Float64Array(1),
  nitrificationFrozenFractionPerWeek: new Float64Array(1),
  grassUptakeKgPerHaWeekC: new Float64Array(1),
};
const microbes = { yieldFraction: 0, carbonNitrogen: 1 };
const spans = {
  moistureLow: 0,
  moistureHigh: 0,
  airSpace: 0,
  availableCarbonNitrogenLow: 0,
  availableCarbonNitrogenHigh: 0,
  depthM: 0,
};
const bedSigns = {
  driest: 0,
  wettest: 0,
  airSpace: 0,
  availableCarbonNitrogen: 0,
  loosened: false,
  depthM: 0,
};
const compostSigns = {
  driest: 0,
  wettest: 0,
  airSpace: 0,
  availableCarbonNitrogen: 0,
  loosened: false,
  depthM: 0,
};
const shape = {} as ShedShape;
const bedded = {} as ShedFrame;
const slatted = {} as ShedFrame;

type Columns = Readonly<Record<string, Float64Array>>;

function items<K extends string>(
  columns: Columns,
  family: string,
  fields: readonly K[],
): Record<K, Float64Array>[] {
  const out: Record<K, Float64Array>[] = [];
  while (columns[`${family}${out.length + 1}${fields[0]}`])
    out.push(
      Object.fromEntries(fields.map((f) => [f, columns[`${family}${out.length + 1}${f}`]])) as Record<
        K,
        Float64Array
      >,
    );
  return out;
}

/** The chief results of every row, and in `rest` the sum of all others, so that none of them is left out. */
export function runFused(
  columns: Columns,
  rows: number,
  weather: readonly PreparedWeather[],
): Record<(typeof CHIEF)[number] | 'rest', Float64Array> {
  const {
    herdFactor: $herdFactor,
    winterDays: $winterDays,
    weatherIndex: $weatherIndex,
    rainFactor: $rainFactor,
    latitudeDeg: $latitudeDeg,
    rootDepthMm: $rootDepthMm,
    snowThresholdC: $snowThresholdC,
    meltThresholdC: $meltThresholdC,
    meltFactorMmPerCDay: $meltFactorMmPerCDay,
    hargreavesFactor: $hargreavesFactor,
    grassCropFactor: $grassCropFactor,
    snowEvaporationFraction: $snowEvaporationFraction,
    readilyAvailableFraction: $readilyAvailableFraction,
    startSoilWaterFraction: $startSoilWaterFraction,
    groundResponsePerDay: $groundResponsePerDay,
    frozenGroundBelowC: $frozenGroundBelowC,
    growthBaseC: $growthBaseC,
    growthRunDays: $growthRunDays,
    curveNumberFrozen: $curveNumberFrozen,
    curveNumberTrodden: $curveNumberTrodden,
    growthDaylightHours: $growthDaylightHours,
    snowPoachingLimitMm: $snowPoachingLimitMm,
    wetMarginMm: $wetMarginMm,
    fieldCapacityM3PerM3: $fieldCapacityM3PerM3,
    wiltingPointM3PerM3: $wiltingPointM3PerM3,
    curveNumber: $curveNumber,
    drainageRatePerDay: $drainageRatePerDay,
    pastureShare: $pastureShare,
    feedWasteFraction: $feedWasteFraction,
    lowerCriticalTemperatureC: $lowerCriticalTemperatureC,
    coldIntakePerC: $coldIntakePerC,
    intakePerMilkKg: $intakePerMilkKg,
    lactatingMaintenanceMjPerKg: $lactatingMaintenanceMjPerKg,
    activityPastureFraction: $activityPastureFraction,
    pregnancyEnergyFraction: $pregnancyEnergyFraction,
    milkFatPercent: $milkFatPercent,
    energyColdMjPerKgC: $energyColdMjPerKgC,
    gainNitrogenKgPerKg: $gainNitrogenKgPerKg,
    gainPhosphorusKgPerKg: $gainPhosphorusKgPerKg,
    gainPotassiumKgPerKg: $gainPotassiumKgPerKg,
    milkNitrogenKgPerKg: $milkNitrogenKgPerKg,
    milkPhosphorusKgPerKg: $milkPhosphorusKgPerKg,
    milkPotassiumKgPerKg: $milkPotassiumKgPerKg,
    calfNitrogenKg: $calfNitrogenKg,
    calfPhosphorusKg: $calfPhosphorusKg,
    calfPotassiumKg: $calfPotassiumKg,
    conceptusGrowthDays: $conceptusGrowthDays,
    retentionLimitFraction: $retentionLimitFraction,
    faecalNitrogenKgPerKg: $faecalNitrogenKgPerKg,
    urineTanFraction: $urineTanFraction,
    tanLowestFraction: $tanLowestFraction,
    tanHighestFraction: $tanHighestFraction,
    faecesCarbonFraction: $faecesCarbonFraction,
    urineCarbonFraction: $urineCarbonFraction,
    faecesMoistureFraction: $faecesMoistureFraction,
    urineDryMatterFraction: $urineDryMatterFraction,
    waterIntakeKgPerKg: $waterIntakeKgPerKg,
    metabolicWaterKgPerKg: $metabolicWaterKgPerKg,
    skinLungWaterKgPer100KgDay: $skinLungWaterKgPer100KgDay,
    milkWaterFraction: $milkWaterFraction,
    gainWaterFraction: $gainWaterFraction,
    urinaryEnergyFraction: $urinaryEnergyFraction,
    excretaAshFraction: $excretaAshFraction,
    excretaDensityKgPerM3: $excretaDensityKgPerM3,
    bedShare: $bedShare,
    beddingRateKgPer100Kg: $beddingRateKgPer100Kg,
    startDepthM: $startDepthM,
    shedLengthM: $shedLengthM,
    shedDepthM: $shedDepthM,
    stanceDepthM: $stanceDepthM,
    absorbencyTestMoistureFraction: $absorbencyTestMoistureFraction,
    microbeYieldFraction: $microbeYieldFraction,
    microbeCarbonNitrogen: $microbeCarbonNitrogen,
    slatsShare: $slatsShare,
    yardShare: $yardShare,
    yardToPackShare: $yardToPackShare,
    yardAmmoniaTanFraction: $yardAmmoniaTanFraction,
    ammoniaSlopePerC: $ammoniaSlopePerC,
    ammoniaReferenceC: $ammoniaReferenceC,
    paddockHa: $paddockHa,
    paddockAmmoniaTanFraction: $paddockAmmoniaTanFraction,
    frozenAmmoniaFactor: $frozenAmmoniaFactor,
    thawAmmoniaFraction: $thawAmmoniaFraction,
    paddockNitrousFraction: $paddockNitrousFraction,
    soilDinitrogenPerNitrous: $soilDinitrogenPerNitrous,
    soilNitricFraction: $soilNitricFraction,
    runoffNitrogenFraction: $runoffNitrogenFraction,
    runoffPhosphorusFraction: $runoffPhosphorusFraction,
    runoffPotassiumFraction: $runoffPotassiumFraction,
    runoffReferenceMm: $runoffReferenceMm,
    winterUptakeMildKgPerHa: $winterUptakeMildKgPerHa,
    winterUptakeFrozenKgPerHa: $winterUptakeFrozenKgPerHa,
    urinePatchM2PerUnitDay: $urinePatchM2PerUnitDay,
    spotExcretaFraction: $spotExcretaFraction,
    spotAreaFraction: $spotAreaFraction,
    reseedFraction: $reseedFraction,
    lowRiskUnitsPerHa: $lowRiskUnitsPerHa,
    treadingLossPerHundredCowDays: $treadingLossPerHundredCowDays,
    treadingLossLimit: $treadingLossLimit,
    reseedLossFrom: $reseedLossFrom,
    paddockYieldTonnesPerHa: $paddockYieldTonnesPerHa,
    nitrifiedFractionPerWeek: $nitrifiedFractionPerWeek,
    nitrificationPerC: $nitrificationPerC,
    nitrificationReferenceC: $nitrificationReferenceC,
    nitrificationFrozenFractionPerWeek: $nitrificationFrozenFractionPerWeek,
    grassUptakeKgPerHaWeekC: $grassUptakeKgPerHaWeekC,
    slatsM2: $slatsM2,
    washLitresPerDay: $washLitresPerDay,
    openStoreM2: $openStoreM2,
    openYardM2: $openYardM2,
    houseAmmoniaTanFraction: $houseAmmoniaTanFraction,
    houseAmmoniaSlopePerC: $houseAmmoniaSlopePerC,
    houseWarmerC: $houseWarmerC,
    pitLowestC: $pitLowestC,
    storeMineralisedFraction: $storeMineralisedFraction,
    storeAmmoniaTanFraction: $storeAmmoniaTanFraction,
    storeAmmoniaFactor: $storeAmmoniaFactor,
    storeNitrousFraction: $storeNitrousFraction,
    storeNitricOxideFraction: $storeNitricOxideFraction,
    storeDinitrogenFraction: $storeDinitrogenFraction,
    storeDryMatterLossFraction: $storeDryMatterLossFraction,
    slurryPhosphorusLossFraction: $slurryPhosphorusLossFraction,
    slurryPotassiumLossFraction: $slurryPotassiumLossFraction,
    slurryDensityKgPerM3: $slurryDensityKgPerM3,
    yardRunoffFraction: $yardRunoffFraction,
    storeBufferFraction: $storeBufferFraction,
    wetYearRainFactor: $wetYearRainFactor,
    packDecayPerDay: $packDecayPerDay,
    excretaDegradableFraction: $excretaDegradableFraction,
    wastedFeedDegradableFraction: $wastedFeedDegradableFraction,
    excretaAvailableCarbonFraction: $excretaAvailableCarbonFraction,
    packExcretaAshFraction: $packExcretaAshFraction,
    wastedFeedAshFraction: $wastedFeedAshFraction,
    rottingWaterKgPerKg: $rottingWaterKgPerKg,
    bedEvaporationKgPerM2Day: $bedEvaporationKgPerM2Day,
    bedDriestMoistureFraction: $bedDriestMoistureFraction,
    packDryDensityKgPerM3: $packDryDensityKgPerM3,
    startLayerSettlingDays: $startLayerSettlingDays,
    bedAmmoniaTanFraction: $bedAmmoniaTanFraction,
    bedTanLossPerWeekFraction: $bedTanLossPerWeekFraction,
    bedNitrousFraction: $bedNitrousFraction,
    packDinitrogenPerNitrous: $packDinitrogenPerNitrous,
    heatMoistureLow: $heatMoistureLow,
    heatMoistureHigh: $heatMoistureHigh,
    heatFreeAirSpace: $heatFreeAirSpace,
    heatAvailableCarbonNitrogenLow: $heatAvailableCarbonNitrogenLow,
    heatAvailableCarbonNitrogenHigh: $heatAvailableCarbonNitrogenHigh,
    heatDepthM: $heatDepthM,
    compostTurns: $compostTurns,
    heapMade: $heapMade,
    heapLoosened: $heapLoosened,
    heapNitrogenLossIntercept: $heapNitrogenLossIntercept,
    heapNitrogenLossSlope: $heapNitrogenLossSlope,
    heapNitrogenLossLeast: $heapNitrogenLossLeast,
    heapNitrogenLossMost: $heapNitrogenLossMost,
    heapNitrogenWayFactor: $heapNitrogenWayFactor,
    heapNitrogenCoverFactor: $heapNitrogenCoverFactor,
    heapNitrousFraction: $heapNitrousFraction,
    heapOtherGasMostShare: $heapOtherGasMostShare,
    heapLeachFraction: $heapLeachFraction,
    heapPhosphorusLossFraction: $heapPhosphorusLossFraction,
    heapPotassiumLossFraction: $heapPotassiumLossFraction,
    heapReferenceRainMm: $heapReferenceRainMm,
    heapRainKeptFraction: $heapRainKeptFraction,
    heapDryMatterLossFraction: $heapDryMatterLossFraction,
    heapCarbonLossFraction: $heapCarbonLossFraction,
    heapEvaporationKgPerKg: $heapEvaporationKgPerKg,
    heapDriestMoistureFraction: $heapDriestMoistureFraction,
    heapWettestMoistureFraction: $heapWettestMoistureFraction,
    heapTanKeptFraction: $heapTanKeptFraction,
    loosenedPackDensityKgPerM3: $loosenedPackDensityKgPerM3,
    compostDensityKgPerM3: $compostDensityKgPerM3,
    windrowHeightM: $windrowHeightM,
    smallWindrowHeightM: $smallWindrowHeightM,
    heapActiveDays: $heapActiveDays,
    heapCureDays: $heapCureDays,
    heapWinterFactor: $heapWinterFactor,
    coarseWoodFactor: $coarseWoodFactor,
    coarseWoodShare: $coarseWoodShare,
    sanitisingTurns: $sanitisingTurns,
    slurrySpreadAmmoniaFraction: $slurrySpreadAmmoniaFraction,
    compostSpreadAmmoniaFraction: $compostSpreadAmmoniaFraction,
    spreadTechniqueFactor: $spreadTechniqueFactor,
    spreadIncorporationFactor: $spreadIncorporationFactor,
    nitrogenCapKgPerHa: $nitrogenCapKgPerHa,
    phosphorusCapKgPerHa: $phosphorusCapKgPerHa,
    receivingHa: $receivingHa,
    spreadDay: $spreadDay,
    soilNitrousFraction: $soilNitrousFraction,
    slurryIsohumicFraction: $slurryIsohumicFraction,
    compostIsohumicFraction: $compostIsohumicFraction,
    dungIsohumicFraction: $dungIsohumicFraction,
    mixingDepthMm: $mixingDepthMm,
    waterGainMm: $waterGainMm,
    bulkDensityTPerM3: $bulkDensityTPerM3,
    methaneCapacityM3PerKg: $methaneCapacityM3PerKg,
    pastureMethaneCapacityM3PerKg: $pastureMethaneCapacityM3PerKg,
    pastureMethaneFraction: $pastureMethaneFraction,
    slurryMethaneFraction: $slurryMethaneFraction,
    packMethaneFraction: $packMethaneFraction,
    compostMethaneFraction: $compostMethaneFraction,
    indirectAmmoniaFraction: $indirectAmmoniaFraction,
    indirectLeachedFraction: $indirectLeachedFraction,
    methaneWarmingFactor: $methaneWarmingFactor,
    nitrousWarmingFactor: $nitrousWarmingFactor,
    slurryMineralisedFraction: $slurryMineralisedFraction,
    compostMineralisedFraction: $compostMineralisedFraction,
    dungMineralisedFraction: $dungMineralisedFraction,
    slurrySecondYearFraction: $slurrySecondYearFraction,
    compostSecondYearFraction: $compostSecondYearFraction,
    dungSecondYearFraction: $dungSecondYearFraction,
    thirdYearFactor: $thirdYearFactor,
    slurryPhosphorusFirstYearFraction: $slurryPhosphorusFirstYearFraction,
    compostPhosphorusFirstYearFraction: $compostPhosphorusFirstYearFraction,
    dungPhosphorusFirstYearFraction: $dungPhosphorusFirstYearFraction,
    potassiumFirstYearFraction: $potassiumFirstYearFraction,
    cropNitrogenNeedKgPerHa: $cropNitrogenNeedKgPerHa,
    cropPhosphorusNeedKgPerHa: $cropPhosphorusNeedKgPerHa,
    cropPotassiumNeedKgPerHa: $cropPotassiumNeedKgPerHa,
    pastureNitrogenNeedKgPerHa: $pastureNitrogenNeedKgPerHa,
    pasturePhosphorusNeedKgPerHa: $pasturePhosphorusNeedKgPerHa,
    pasturePotassiumNeedKgPerHa: $pasturePotassiumNeedKgPerHa,
    nitrogenPricePerKg: $nitrogenPricePerKg,
    phosphorusPricePerKg: $phosphorusPricePerKg,
    potassiumPricePerKg: $potassiumPricePerKg,
    compostPricePerTonne: $compostPricePerTonne,
    hardStandingM2: $hardStandingM2,
    feedingHoursPerTonne: $feedingHoursPerTonne,
    checkMinutesPerHeadDay: $checkMinutesPerHeadDay,
    siteMinutesPerDay: $siteMinutesPerDay,
    bedSpreadTonnesPerHour: $bedSpreadTonnesPerHour,
    bedSpreadMinutesPerDay: $bedSpreadMinutesPerDay,
    fenceMovesPerDay: $fenceMovesPerDay,
    fenceMinutesPerMove: $fenceMinutesPerMove,
    fenceCheckMinutesPerDay: $fenceCheckMinutesPerDay,
    waterMinutesPerDay: $waterMinutesPerDay,
    iceMinutesPerFrozenDay: $iceMinutesPerFrozenDay,
    scrapeMinutesPerM2Day: $scrapeMinutesPerM2Day,
    scrapeMinutesPerDay: $scrapeMinutesPerDay,
    barrierRaiseStepM: $barrierRaiseStepM,
    barrierHoursPerStep: $barrierHoursPerStep,
    packLoadTonnesPerHour: $packLoadTonnesPerHour,
    turnM3PerHour: $turnM3PerHour,
    turningUsedShare: $turningUsedShare,
    agitateHoursPerM3: $agitateHoursPerM3,
    slurrySpreadM3PerHour: $slurrySpreadM3PerHour,
    solidSpreadTonnesPerHour: $solidSpreadTonnesPerHour,
    contractorShare: $contractorShare,
    tractorFeedingShare: $tractorFeedingShare,
    tractorBeddingShare: $tractorBeddingShare,
    tankDepthM: $tankDepthM,
    eaveM: $eaveM,
    pitchDeg: $pitchDeg,
    overhangM: $overhangM,
    bayM: $bayM,
    pushWallM: $pushWallM,
    waterBowls: $waterBowls,
    longestTimberM: $longestTimberM,
    ownTimberShare: $ownTimberShare,
    snowLoadKnPerM2: $snowLoadKnPerM2,
    capitalGiven: $capitalGiven,
    postRowSpanM: $postRowSpanM,
    postSectionM2: $postSectionM2,
    rafterSectionM2: $rafterSectionM2,
    purlinSectionM2: $purlinSectionM2,
    purlinSpacingM: $purlinSpacingM,
    timberBracingFraction: $timberBracingFraction,
    timberWasteFraction: $timberWasteFraction,
    referenceSnowLoadKnPerM2: $referenceSnowLoadKnPerM2,
    roofDeadLoadKnPerM2: $roofDeadLoadKnPerM2,
    padConcreteM3PerPost: $padConcreteM3PerPost,
    sawingHoursPerM3: $sawingHoursPerM3,
    erectionHoursPerM2: $erectionHoursPerM2,
    ownBuildShare: $ownBuildShare,
    gatesPerBay: $gatesPerBay,
    roofTankM3PerM2: $roofTankM3PerM2,
    slattedPenDepthM: $slattedPenDepthM,
    commonPracticeFeedRoadOneSideM: $commonPracticeFeedRoadOneSideM,
    penWallHeightM: $penWallHeightM,
    irelandCoveredFreeboardM: $irelandCoveredFreeboardM,
    tankUsedShare: $tankUsedShare,
    channelDepthM: $channelDepthM,
    feedersPerHead: $feedersPerHead,
    barrierUsedShare: $barrierUsedShare,
    commonPracticeAnimalsPerBowl: $commonPracticeAnimalsPerBowl,
    headPerTrough: $headPerTrough,
    beddingStoredShare: $beddingStoredShare,
    beddingStackM: $beddingStackM,
    compostPadM2PerM3: $compostPadM2PerM3,
    heapCoverM2PerM3: $heapCoverM2PerM3,
    movableFenceLengths: $movableFenceLengths,
    windbreakMPerHead: $windbreakMPerHead,
    groundworkPricePerM2: $groundworkPricePerM2,
    padConcretePricePerM3: $padConcretePricePerM3,
    postFixingPriceEach: $postFixingPriceEach,
    timberPricePerM3: $timberPricePerM3,
    ownTimberPricePerM3: $ownTimberPricePerM3,
    labourPricePerHour: $labourPricePerHour,
    sawmillPricePerHour: $sawmillPricePerHour,
    builderPricePerHour: $builderPricePerHour,
    roofPricePerM2: $roofPricePerM2,
    claddingPricePerM2: $claddingPricePerM2,
    gutterPricePerM: $gutterPricePerM,
    waterTankPricePerM3: $waterTankPricePerM3,
    slabPricePerM2: $slabPricePerM2,
    yardPricePerM2: $yardPricePerM2,
    bedFloorPricePerM2: $bedFloorPricePerM2,
    pushWallPricePerM2: $pushWallPricePerM2,
    risingBarrierPricePerM: $risingBarrierPricePerM,
    penWallPricePerM2: $penWallPricePerM2,
    slatsPricePerM2: $slatsPricePerM2,
    tankPricePerM3: $tankPricePerM3,
    outsideStorePricePerM3: $outsideStorePricePerM3,
    storeCoverPricePerM2: $storeCoverPricePerM2,
    feedBarrierPricePerM: $feedBarrierPricePerM,
    gatePriceEach: $gatePriceEach,
    waterBowlPriceEach: $waterBowlPriceEach,
    beddingStorePricePerM2: $beddingStorePricePerM2,
    compostPadPricePerM2: $compostPadPricePerM2,
    heapCoverPricePerM2: $heapCoverPricePerM2,
    feederPriceEach: $feederPriceEach,
    fencePricePerM: $fencePricePerM,
    movableFencePricePerM: $movableFencePricePerM,
    energiserPriceEach: $energiserPriceEach,
    waterPipePricePerM: $waterPipePricePerM,
    troughPriceEach: $troughPriceEach,
    windbreakPricePerM: $windbreakPricePerM,
    beddedPlacePrice: $beddedPlacePrice,
    slattedPlacePrice: $slattedPlacePrice,
    engineerFraction: $engineerFraction,
    contingencyFraction: $contingencyFraction,
    grantAmount: $grantAmount,
    interestRate: $interestRate,
    inflation: $inflation,
    lifeYears: $lifeYears,
    shortLifeYears: $shortLifeYears,
    repairsBuildingFraction: $repairsBuildingFraction,
    repairsEquipmentFraction: $repairsEquipmentFraction,
    insuranceFraction: $insuranceFraction,
    tractorPricePerHour: $tractorPricePerHour,
    chippingPricePerHour: $chippingPricePerHour,
    slurrySpreadPricePerHour: $slurrySpreadPricePerHour,
    agitatePricePerHour: $agitatePricePerHour,
    solidSpreadPricePerHour: $solidSpreadPricePerHour,
    grassPricePerTonne: $grassPricePerTonne,
    reseedPricePerHa: $reseedPricePerHa,
    vetPricePerHead: $vetPricePerHead,
    hoofPricePerHead: $hoofPricePerHead,
    ownMoney: $ownMoney,
    incomePerYear: $incomePerYear,
  } = columns;
  const group = items(columns, 'group', [
    'HeadCount',
    'WeightKg',
    'GainKgPerDay',
    'LivestockUnits',
    'PregnantShare',
    'MilkKgPerDay',
    'IntakeFraction',
    'MaintenanceMjPerKg',
    'GrowthSexFactor',
    'MatureWeightKg',
    'MilkDrunkKgPerDay',
    'StoreM3PerWeek',
    'SlatsM2',
  ]);
  const feed = items(columns, 'feed', [
    'Share',
    'CrudeProteinFraction',
    'PhosphorusFraction',
    'PotassiumFraction',
    'DigestibilityFraction',
    'DryMatterFraction',
    'CarbonFraction',
    'PricePerTonne',
  ]);
  const material = items(columns, 'material', [
    'Share',
    'MoistureFraction',
    'CarbonFraction',
    'NitrogenFraction',
    'PhosphorusFraction',
    'PotassiumFraction',
    'AshFraction',
    'DegradableFraction',
    'AvailableCarbonFraction',
    'AbsorbencyKgPerKg',
    'ImmobilisationKgPerKg',
    'AmmoniaFactor',
    'HeapNitrogenFactor',
    'CompostLossFactor',
    'LooseDensityKgPerM3',
    'CoarseFraction',
    'HoursPerTonne',
    'PricePerTonne',
  ]);
  const loan = items(columns, 'loan', ['Amount', 'Rate', 'Years', 'GraceYears', 'Straight']);
  const family = { group, feed, material, loan };
  const owed = new Float64Array(loan.length);
  const weatherColumns = [
    $weatherIndex,
    $winterDays,
    $rainFactor,
    $latitudeDeg,
    $rootDepthMm,
    $snowThresholdC,
    $meltThresholdC,
    $meltFactorMmPerCDay,
    $hargreavesFactor,
    $grassCropFactor,
    $snowEvaporationFraction,
    $readilyAvailableFraction,
    $startSoilWaterFraction,
    $groundResponsePerDay,
    $frozenGroundBelowC,
    $growthBaseC,
    $growthRunDays,
    $curveNumberFrozen,
    $curveNumberTrodden,
    $growthDaylightHours,
    $snowPoachingLimitMm,
    $wetMarginMm,
    $fieldCapacityM3PerM3,
    $wiltingPointM3PerM3,
    $curveNumber,
    $drainageRatePerDay,
  ];
  const out = {
    headCount: new Float64Array(rows),
    nitrogenExcretedKg: new Float64Array(rows),
    nitrogenAmmoniaKg: new Float64Array(rows),
    nitrogenNitrousKg: new Float64Array(rows),
    nitrogenDinitrogenKg: new Float64Array(rows),
    nitrogenLeachedKg: new Float64Array(rows),
    nitrogenRunoffKg: new Float64Array(rows),
    nitrogenKeptKg: new Float64Array(rows),
    nitrogenAvailableKg: new Float64Array(rows),
    phosphorusKeptKg: new Float64Array(rows),
    potassiumKeptKg: new Float64Array(rows),
    beddingTonnes: new Float64Array(rows),
    packDepthM: new Float64Array(rows),
    packMoisture: new Float64Array(rows),
    compostTonnes: new Float64Array(rows),
    slurryM3: new Float64Array(rows),
    storeNeededM3: new Float64Array(rows),
    grassLostTonnes: new Float64Array(rows),
    labourHours: new Float64Array(rows),
    capitalCost: new Float64Array(rows),
    annualCost: new Float64Array(rows),
    nutrientValue: new Float64Array(rows),
    netCost: new Float64Array(rows),
    netCostPerHead: new Float64Array(rows),
    netPresentValue: new Float64Array(rows),
    greenhouseGasTonnes: new Float64Array(rows),
    fundingGap: new Float64Array(rows),
    internalRateOfReturn: new Float64Array(rows),
    paybackYears: new Float64Array(rows),
    debtServiceCover: new Float64Array(rows),
    costPerNitrogenKeptKg: new Float64Array(rows),
    rest: new Float64Array(rows),
  };
  let _headCount = 0,
    _liveWeightKg = 0,
    _livestockUnits = 0,
    _gainKg = 0,
    _rainMm = 0,
    _snowfallMm = 0,
    _runoffMm = 0,
    _evapotranspirationMm = 0,
    _drainageWinterMm = 0,
    _drainageMm = 0,
    _soilWaterChangeMm = 0,
    _wetDays = 0,
    _frozenDays = 0,
    _winterTemperatureC = 0,
    _growthDay = 0,
    _coldIntakeFactor = 0,
    _dryMatterEatenKg = 0,
    _digestibility = 0,
    _nitrogenEatenKg = 0,
    _phosphorusEatenKg = 0,
    _potassiumEatenKg = 0,
    _dryMatterByEnergyKg = 0,
    _dryMatterOfferedKg = 0,
    _feedTonnes = 0,
    _dryMatterWastedKg = 0,
    _nitrogenWastedKg = 0,
    _phosphorusWastedKg = 0,
    _potassiumWastedKg = 0,
    _carbonWastedKg = 0,
    _waterWastedKg = 0,
    _nitrogenExcretedKg = 0,
    _tanExcretedKg = 0,
    _phosphorusExcretedKg = 0,
    _potassiumExcretedKg = 0,
    _waterExcretedKg = 0,
    _dryMatterExcretedKg = 0,
    _carbonExcretedKg = 0,
    _volatileSolidsKg = 0,
    _excretaM3 = 0,
    _bedM2 = 0,
    _startMaterialKg = 0,
    _beddingTonnes = 0,
    _beddingM3 = 0,
    _dryMatterMaterialKg = 0,
    _startDryMatterKg = 0,
    _waterMaterialKg = 0,
    _nitrogenMaterialKg = 0,
    _phosphorusMaterialKg = 0,
    _potassiumMaterialKg = 0,
    _carbonMaterialKg = 0,
    _ashMaterialKg = 0,
    _coarseMaterialKg = 0,
    _availableCarbonMaterialKg = 0,
    _degradableCarbonMaterialKg = 0,
    _degradableMaterialFraction = 0,
    _absorbencyKgPerKg = 0,
    _immobilisationKgPerKg = 0,
    _litterAmmoniaFactor = 0,
    _heapNitrogenFactor = 0,
    _compostLossFactor = 0,
    _nitrogenBeddingKg = 0,
    _phosphorusBeddingKg = 0,
    _potassiumBeddingKg = 0,
    _paddockShare = 0,
    _slurryShare = 0,
    _packShare = 0,
    _yardAmmoniaKg = 0,
    _slatsTanKg = 0,
    _paddockTanInKg = 0,
    _paddockNitrogenInKg = 0,
    _paddockPhosphorusInKg = 0,
    _paddockPotassiumInKg = 0,
    _paddockCarbonInKg = 0,
    _paddockDryMatterInKg = 0,
    _paddockWaterInKg = 0,
    _slurryTanInKg = 0,
    _slurryNitrogenInKg = 0,
    _slurryPhosphorusInKg = 0,
    _slurryPotassiumInKg = 0,
    _slurryCarbonInKg = 0,
    _slurryDryMatterInKg = 0,
    _slurryWaterInKg = 0,
    _packTanInKg = 0,
    _packNitrogenInKg = 0,
    _packPhosphorusInKg = 0,
    _packPotassiumInKg = 0,
    _packCarbonInKg = 0,
    _packDryMatterInKg = 0,
    _packWaterInKg = 0,
    _packDryMatterExcretaKg = 0,
    _packNitrogenWastedKg = 0,
    _packDryMatterWastedKg = 0,
    _paddockAmmoniaKg = 0,
    _paddockNitrousKg = 0,
    _paddockDinitrogenKg = 0,
    _paddockRunoffKg = 0,
    _paddockLeachedKg = 0,
    _paddockNitrogenKeptKg = 0,
    _paddockMineralKg = 0,
    _paddockPhosphorusLostKg = 0,
    _paddockPotassiumLostKg = 0,
    _paddockPhosphorusKeptKg = 0,
    _paddockPotassiumKeptKg = 0,
    _paddockCarbonKeptKg = 0,
    _nitrogenLoadKgPerHa = 0,
    _spotLoadKgPerHa = 0,
    _spotReachedHa = 0,
    _restReachedHa = 0,
    _grassLostTonnes = 0,
    _reseedHa = 0,
    _slatsUsedM2 = 0,
    _houseAmmoniaKg = 0,
    _storeAmmoniaKg = 0,
    _storeNitrousKg = 0,
    _storeDinitrogenKg = 0,
    _slurryNitrogenKg = 0,
    _slurryTanKg = 0,
    _slurryPhosphorusLostKg = 0,
    _slurryPotassiumLostKg = 0,
    _slurryPhosphorusKg = 0,
    _slurryPotassiumKg = 0,
    _slurryCarbonKg = 0,
    _slurryDryMatterKg = 0,
    _slurryM3 = 0,
    _storeNeededM3 = 0,
    _bedAmmoniaKg = 0,
    _bedNitrousKg = 0,
    _bedDinitrogenKg = 0,
    _immobilisedKg = 0,
    _packDryMatterKg = 0,
    _bedDryMatterLostKg = 0,
    _packWaterKg = 0,
    _bedEvaporatedKg = 0,
    _packTonnes = 0,
    _packM3 = 0,
    _packDepthM = 0,
    _packMoisture = 0,
    _packCarbonKg = 0,
    _bedCarbonLostKg = 0,
    _packNitrogenKg = 0,
    _packTanKg = 0,
    _packPhosphorusKg = 0,
    _packPotassiumKg = 0,
    _packAshKg = 0,
    _packCarbonNitrogen = 0,
    _packAvailableCarbonNitrogen = 0,
    _packFreeAirSpace = 0,
    _packHeatClass = 0,
    _compostDays = 0,
    _heapRainMm = 0,
    _heapAmmoniaKg = 0,
    _heapNitrousKg = 0,
    _heapDinitrogenKg = 0,
    _heapLeachedKg = 0,
    _heapPhosphorusLostKg = 0,
    _heapPotassiumLostKg = 0,
    _compostDryMatterKg = 0,
    _heapDryMatterLostKg = 0,
    _compostCarbonKg = 0,
    _heapCarbonLostKg = 0,
    _compostWaterKg = 0,
    _compostTonnes = 0,
    _compostM3 = 0,
    _compostMoisture = 0,
    _compostNitrogenKg = 0,
    _compostTanKg = 0,
    _compostPhosphorusKg = 0,
    _compostPotassiumKg = 0,
    _compostCarbonNitrogen = 0,
    _compostPeakClass = 0,
    _slurrySpreadAmmoniaKg = 0,
    _compostSpreadAmmoniaKg = 0,
    _spreadAmmoniaKg = 0,
    _slurrySoilNitrogenKg = 0,
    _slurrySoilTanKg = 0,
    _compostSoilNitrogenKg = 0,
    _compostSoilTanKg = 0,
    _areaForNitrogenHa = 0,
    _areaForPhosphorusHa = 0,
    _areaNeededHa = 0,
    _soilLeachedKg = 0,
    _soilNitrousKg = 0,
    _soilDinitrogenKg = 0,
    _soilNitrogenKeptKg = 0,
    _soilMineralKg = 0,
    _soilPhosphorusKeptKg = 0,
    _soilPotassiumKeptKg = 0,
    _soilCarbonKeptKg = 0,
    _humusCarbonKg = 0,
    _layerDepthMm = 0,
    _waterHeldMm = 0,
    _nitrogenAmmoniaKg = 0,
    _nitrogenNitrousKg = 0,
    _nitrogenDinitrogenKg = 0,
    _nitrogenLeachedKg = 0,
    _nitrogenRunoffKg = 0,
    _nitrogenKeptKg = 0,
    _phosphorusLostKg = 0,
    _phosphorusKeptKg = 0,
    _potassiumLostKg = 0,
    _potassiumKeptKg = 0,
    _carbonKeptKg = 0,
    _nitrogenInKg = 0,
    _nitrogenOutOfHousingKg = 0,
    _nitrogenOutOfStoreKg = 0,
    _nitrogenIntoSoilKg = 0,
    _methaneKg = 0,
    _greenhouseGasTonnes = 0,
    _nitrogenAvailableKg = 0,
    _phosphorusAvailableKg = 0,
    _potassiumAvailableKg = 0,
    _nitrogenSurplusKg = 0,
    _phosphorusSurplusKg = 0,
    _potassiumSurplusKg = 0,
    _nitrogenAvailableSecondYearKg = 0,
    _nitrogenAvailableThirdYearKg = 0,
    _compostValue = 0,
    _nutrientValue = 0,
    _feedingHours = 0,
    _checkingHours = 0,
    _beddingHours = 0,
    _chippingHours = 0,
    _fenceHours = 0,
    _waterHours = 0,
    _scrapingHours = 0,
    _barrierHours = 0,
    _pushOutHours = 0,
    _turningHours = 0,
    _agitatingHours = 0,
    _spreadingHours = 0,
    _contractorSlurryHours = 0,
    _contractorAgitatingHours = 0,
    _contractorSolidHours = 0,
    _tractorHours = 0,
    _labourHours = 0,
    _labourHoursPerHeadDay = 0,
    _billGroundworkM2 = 0,
    _costGroundwork = 0,
    _billPadConcreteM3 = 0,
    _costPadConcrete = 0,
    _billPostFixingsCount = 0,
    _costPostFixings = 0,
    _billTimberBoughtM3 = 0,
    _costTimberBought = 0,
    _billTimberOwnM3 = 0,
    _costTimberOwn = 0,
    _billSawingHours = 0,
    _costSawing = 0,
    _billSawmillHours = 0,
    _costSawmill = 0,
    _billErectionHours = 0,
    _costErection = 0,
    _billErectionOwnHours = 0,
    _costErectionOwn = 0,
    _billRoofM2 = 0,
    _costRoof = 0,
    _billCladdingM2 = 0,
    _costCladding = 0,
    _billGuttersM = 0,
    _costGutters = 0,
    _billWaterTankM3 = 0,
    _costWaterTank = 0,
    _billSlabM2 = 0,
    _costSlab = 0,
    _billYardM2 = 0,
    _costYard = 0,
    _billBedFloorM2 = 0,
    _costBedFloor = 0,
    _billPushWallM2 = 0,
    _costPushWall = 0,
    _billRisingBarrierM = 0,
    _costRisingBarrier = 0,
    _billPenWallM2 = 0,
    _costPenWall = 0,
    _billSlatsM2 = 0,
    _costSlats = 0,
    _billTankM3 = 0,
    _costTank = 0,
    _billOutsideStoreM3 = 0,
    _costOutsideStore = 0,
    _billStoreCoverM2 = 0,
    _costStoreCover = 0,
    _billFeedBarrierM = 0,
    _costFeedBarrier = 0,
    _billGatesCount = 0,
    _costGates = 0,
    _billBowlsCount = 0,
    _costBowls = 0,
    _billBeddingStoreM2 = 0,
    _costBeddingStore = 0,
    _billCompostPadM2 = 0,
    _costCompostPad = 0,
    _billHeapCoverM2 = 0,
    _costHeapCover = 0,
    _billFeedersCount = 0,
    _costFeeders = 0,
    _billFenceM = 0,
    _costFence = 0,
    _billMovableFenceM = 0,
    _costMovableFence = 0,
    _billEnergiserCount = 0,
    _costEnergiser = 0,
    _billWaterPipeM = 0,
    _costWaterPipe = 0,
    _billTroughsCount = 0,
    _costTroughs = 0,
    _billWindbreakM = 0,
    _costWindbreak = 0,
    _billBeddedPlacesHead = 0,
    _costBeddedPlaces = 0,
    _billSlattedPlacesHead = 0,
    _costSlattedPlaces = 0,
    _billEngineerSum = 0,
    _costEngineer = 0,
    _billContingencySum = 0,
    _costContingency = 0,
    _capitalLines = 0,
    _capitalCost = 0,
    _capitalNonCash = 0,
    _capitalCash = 0,
    _capitalShortLived = 0,
    _grantUsed = 0,
    _grantOverCost = 0,
    _capitalCharge = 0,
    _capitalChargeStraight = 0,
    _repairsCost = 0,
    _insuranceCost = 0,
    _beddingCost = 0,
    _feedCost = 0,
    _feedWasteCost = 0,
    _machineryCost = 0,
    _contractorCost = 0,
    _labourCost = 0,
    _grassLostCost = 0,
    _reseedCost = 0,
    _vetCost = 0,
    _hoofCost = 0,
    _annualCost = 0,
    _operatingCost = 0,
    _operatingCashCost = 0,
    _netCost = 0,
    _annualCostPerHead = 0,
    _netCostPerHead = 0,
    _netCostPerHeadDay = 0,
    _costPerNitrogenKeptKg = 0,
    _loanTotal = 0,
    _loanPayment = 0,
    _loanInterest = 0,
    _ownMoneyNeeded = 0,
    _fundingGap = 0,
    _netPresentValue = 0,
    _levelisedCost = 0,
    _internalRateOfReturn = 0,
    _paybackYears = 0,
    _debtServiceCover = 0;
  for (let i = 0; i < rows; i++) {
    {
      // herd

      const days = $winterDays[i];
      let head = 0;
      let weight = 0;
      let units = 0;
      let gain = 0;
      for (let g = 0; g < group.length; g++) {
        const n = group[g].HeadCount[i] * $herdFactor[i];
        const perHead = group[g].GainKgPerDay[i] * days;
        head += n;
        weight += n * (group[g].WeightKg[i] + perHead / 2);
        units += n * group[g].LivestockUnits[i];
        gain += n * perHead;
      }
      _headCount = head;
      _liveWeightKg = weight;
      _livestockUnits = units;
      _gainKg = gain;
    }

    weather: {
      // weather

      // Scenarios of one draw share their weather; a row like the one above it is copied.
      if (i > 0 && sameAsAbove(weatherColumns, i)) {
        break weather;
      }
      const year = weather[$weatherIndex[i]];
      const { days, rainMm, temperatureC, hargreavesTermMm } = year;
      const season = seasonOf(year);
      const midwinter = $latitudeDeg[i] < 0 ? season.midwinterSouth : season.midwinterNorth;
      const light = midwinter + 1 + daysToDaylight($latitudeDeg[i], $growthDaylightHours[i]);
      const growthDay = growthDayOf(season.temperatureSum, days, light, $growthRunDays[i], $growthBaseC[i]);
      const winterEnd = Math.max(0, Math.min(days, Math.ceil($winterDays[i])));
      const seasonEnd = Math.max(winterEnd, growthDay);

      const rainFactor = $rainFactor[i];
      const snowThreshold = $snowThresholdC[i];
      const meltThreshold = $meltThresholdC[i];
      const meltFactor = $meltFactorMmPerCDay[i];
      const demandFactor = $hargreavesFactor[i] * $grassCropFactor[i];
      const underSnow = $snowEvaporationFraction[i];
      const capacity = $fieldCapacityM3PerM3[i] * $rootDepthMm[i];
      const wilting = Math.min(capacity, $wiltingPointM3PerM3[i] * $rootDepthMm[i]);
      const perMm = stressPerMm(capacity, wilting, $readilyAvailableFraction[i]);
      const drainRate = Math.min(1, $drainageRatePerDay[i]);
      const retention = retentionMm($curveNumber[i]);
      const retentionFrozen = retentionMm($curveNumberFrozen[i]);
      const retentionTrodden = retentionMm($curveNumberTrodden[i]);
      const troddenFrozen = Math.min(retentionTrodden, retentionFrozen);
      const response = $groundResponsePerDay[i];
      const frozenBelow = $frozenGroundBelowC[i];
      const wetMargin = $wetMarginMm[i];
      const snowLimit = $snowPoachingLimitMm[i];

      // The root zone is followed as water above the wilting point: one subtraction less in each day.
      const most = capacity - wilting;
      const start = $startSoilWaterFraction[i] * most;
      const firstWeek = Math.min(7, days);
      let ground = firstWeek > 0 ? season.temperatureSum[firstWeek] / firstWeek : 0;
      let soil = start;
      let snow = 0;
      let snowfall = 0;
      let runoff = 0;
      let trodden = 0;
      let taken = 0;
      let drained = 0;
      let wet = 0;
      let frozen = 0;

      let day = 0;
      for (let week = 0; week < WEEKS; week++) {
        const first = day;
        const end = Math.min(days, first + 7);
        const runoffBefore = runoff;
        const troddenBefore = trodden;
        const drainedBefore = drained;

        const frozenBefore = frozen;
        // A week is cut where the winter or the season ends, so that the loop over days asks nothing else.
        while (day < end) {
          let stop = end;
          if (day < winterEnd && winterEnd < stop) stop = winterEnd;
          if (day < seasonEnd && seasonEnd < stop) stop = seasonEnd;
          for (; day < stop; day++) {
            const warmth = temperatureC[day];
            const fall = rainMm[day] * rainFactor;
            const flakes = snowfallMm(fall, warmth, snowThreshold);
            snow += flakes;
            const melt = meltMm(snow, warmth, meltFactor, meltThreshold);
            snow -= melt;
            ground += response * (warmth - ground);
            const isFrozen = ground < frozenBelow;

            const water = fall - flakes + melt;
            let away = 0;
            if (water > 0) {
              away = runoffMm(water, isFrozen ? retentionFrozen : retention);
              trodden += runoffMm(water, isFrozen ? troddenFrozen : retentionTrodden);
            }
            const demand = demandFactor * hargreavesTermMm[day] * (snow > 0 ? underSnow : 1);
            const use = takenMm(demand, soil, perMm);
            soil += water - away - use;
            const excess = soil - most;
            const drain = excess > 0 ? drainRate * excess : 0;
            soil -= drain;

            snowfall += flakes;
            runoff += away;
            taken += use;
            drained += drain;
            if (isFrozen) frozen++;
            else if (excess > 0 && excess >= wetMargin && snow <= snowLimit) wet++;
          }
          if (day === winterEnd) {
            _snowfallMm = snowfall;
            _runoffMm = runoff;
            _evapotranspirationMm = taken;
            _drainageWinterMm = drained;
            _wetDays = wet;
            _frozenDays = frozen;
            _soilWaterChangeMm = soil + snow - start;
          }
          if (day === seasonEnd) _drainageMm = drained;
        }
        const past = end <= first;
        weekRainMm[week] = past ? Number.NaN : rainFactor * (season.rainSum[end] - season.rainSum[first]);
        weekRunoffMm[week] = past ? Number.NaN : runoff - runoffBefore;
        weekTroddenRunoffMm[week] = past ? Number.NaN : trodden - troddenBefore;
        weekDrainageMm[week] = past ? Number.NaN : drained - drainedBefore;

        weekFrozenDays[week] = past ? Number.NaN : frozen - frozenBefore;
        weekTemperatureC[week] = past
          ? Number.NaN
          : (season.temperatureSum[end] - season.temperatureSum[first]) / (end - first);
      }
      if (winterEnd === 0) {
        _snowfallMm = 0;
        _runoffMm = 0;
        _evapotranspirationMm = 0;
        _drainageWinterMm = 0;
        _wetDays = 0;
        _frozenDays = 0;
        _soilWaterChangeMm = 0;
      }
      if (seasonEnd === 0) _drainageMm = 0;

      _rainMm = rainFactor * season.rainSum[winterEnd];
      _winterTemperatureC = winterEnd > 0 ? season.temperatureSum[winterEnd] / winterEnd : 0;
      _growthDay = growthDay;
    }

    {
      // intake

      const days = $winterDays[i];
      let protein = 0;
      let phosphorus = 0;
      let potassium = 0;
      let digestible = 0;
      let carbon = 0;
      let fresh = 0;
      for (let f = 0; f < feed.length; f++) {
        const share = feed[f].Share[i];
        // Feeds a shorter scenario does not have stand at share 0 with no dry matter.
        if (!(share > 0)) continue;
        protein += share * feed[f].CrudeProteinFraction[i];
        phosphorus += share * feed[f].PhosphorusFraction[i];
        potassium += share * feed[f].PotassiumFraction[i];
        digestible += share * feed[f].DigestibilityFraction[i];
        carbon += share * feed[f].CarbonFraction[i];
        if (feed[f].DryMatterFraction[i] > 0) fresh += share / feed[f].DryMatterFraction[i];
      }

      let coldDegreeDays = 0;
      for (let w = 0; w < WEEKS; w++) {
        const inWeek = winterDaysInWeek(w, days);
        if (inWeek <= 0) break;
        const below = $lowerCriticalTemperatureC[i] - weekTemperatureC[w];
        if (below > 0) coldDegreeDays += inWeek * below;
      }
      const cold = 1 + (days > 0 ? (coldDegreeDays / days) * $coldIntakePerC[i] : 0);

      let perDay = 0;
      let byEnergy = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * $herdFactor[i];
        if (!(head > 0)) continue;
        const gain = group[g].GainKgPerDay[i];
        const weight = group[g].WeightKg[i] + (gain * days) / 2;
        const milk = group[g].MilkKgPerDay[i];
        perDay += head * (group[g].IntakeFraction[i] * weight + $intakePerMilkKg[i] * milk);

        const perKg = milk > 0 ? $lactatingMaintenanceMjPerKg[i] : group[g].MaintenanceMjPerKg[i];
        const rest = maintenanceMj(
          weight,
          maintenanceInCold(perKg, _winterTemperatureC, $energyColdMjPerKgC[i]),
        );
        const upkeep =
          rest *
            (1 +
              $activityPastureFraction[i] * $pastureShare[i] +
              $pregnancyEnergyFraction[i] * group[g].PregnantShare[i]) +
          milkMj(milk, $milkFatPercent[i]);
        const growth = growthMj(weight, gain, group[g].MatureWeightKg[i], group[g].GrowthSexFactor[i]);
        byEnergy += head * dryMatterKg(grossEnergyMj(upkeep, growth, digestible * 100));
      }

      const eaten = perDay * days * cold;
      const waste = Math.min($feedWasteFraction[i], 0.99);
      const offered = eaten / (1 - waste);
      const wasted = offered - eaten;
      _coldIntakeFactor = cold;
      _dryMatterEatenKg = eaten;
      _digestibility = digestible;
      _nitrogenEatenKg = (eaten * protein) / 6.25;
      _phosphorusEatenKg = eaten * phosphorus;
      _potassiumEatenKg = eaten * potassium;
      _dryMatterByEnergyKg = byEnergy * days;
      _dryMatterOfferedKg = offered;
      _feedTonnes = (offered * fresh) / 1000;
      _dryMatterWastedKg = wasted;
      _nitrogenWastedKg = (wasted * protein) / 6.25;
      _phosphorusWastedKg = wasted * phosphorus;
      _potassiumWastedKg = wasted * potassium;
      _carbonWastedKg = wasted * carbon;
      _waterWastedKg = wasted * Math.max(0, fresh - 1);
    }

    {
      // excretion

      const days = $winterDays[i];
      let weight = 0;
      let gain = 0;
      let milk = 0;
      let drunk = 0;
      let calves = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * $herdFactor[i];
        if (!(head > 0)) continue;
        const perDay = group[g].GainKgPerDay[i];
        weight += head * (group[g].WeightKg[i] + (perDay * days) / 2);
        gain += head * perDay * days;
        milk += head * group[g].MilkKgPerDay[i] * days;
        drunk += head * group[g].MilkDrunkKgPerDay[i] * days;
        calves += head * group[g].PregnantShare[i];
      }
      // Milk that calves of this herd drink stays in the balance: it is in their gain or in their dung.
      const milkOut = Math.max(0, milk - drunk);
      const grown = $conceptusGrowthDays[i] > 0 ? calves * Math.min(1, days / $conceptusGrowthDays[i]) : 0;

      const limit = $retentionLimitFraction[i];
      const nitrogen = left(
        _nitrogenEatenKg,
        gain * $gainNitrogenKgPerKg[i] + milkOut * $milkNitrogenKgPerKg[i] + grown * $calfNitrogenKg[i],
        limit,
      );
      const eaten = _dryMatterEatenKg;
      const urineNitrogen = Math.max(0, nitrogen - $faecalNitrogenKgPerKg[i] * eaten);
      const tan = Math.min(
        Math.max($urineTanFraction[i] * urineNitrogen, $tanLowestFraction[i] * nitrogen),
        $tanHighestFraction[i] * nitrogen,
      );

      const dung = eaten * (1 - _digestibility);
      const wet = $faecesMoistureFraction[i];
      const dungWater = wet < 1 ? (dung * wet) / (1 - wet) : 0;
      const water = Math.max(
        dungWater,
        eaten * ($waterIntakeKgPerKg[i] + $metabolicWaterKgPerKg[i]) -
          (weight / 100) * days * $skinLungWaterKgPer100KgDay[i] -
          milkOut * $milkWaterFraction[i] -
          Math.max(0, gain) * $gainWaterFraction[i],
      );
      const solids = $urineDryMatterFraction[i];
      const urineSolids = solids < 1 ? ((water - dungWater) * solids) / (1 - solids) : 0;

      _nitrogenExcretedKg = nitrogen;
      _tanExcretedKg = tan;
      _phosphorusExcretedKg = left(
        _phosphorusEatenKg,
        gain * $gainPhosphorusKgPerKg[i] + milkOut * $milkPhosphorusKgPerKg[i] + grown * $calfPhosphorusKg[i],
        limit,
      );
      _potassiumExcretedKg = left(
        _potassiumEatenKg,
        gain * $gainPotassiumKgPerKg[i] + milkOut * $milkPotassiumKgPerKg[i] + grown * $calfPotassiumKg[i],
        limit,
      );
      _waterExcretedKg = water;
      _dryMatterExcretedKg = dung + urineSolids;
      _carbonExcretedKg = dung * $faecesCarbonFraction[i] + urineSolids * $urineCarbonFraction[i];
      _volatileSolidsKg = volatileSolidsKg(
        eaten,
        _digestibility,
        $urinaryEnergyFraction[i],
        $excretaAshFraction[i],
      );
      _excretaM3 =
        $excretaDensityKgPerM3[i] > 0 ? (dung + urineSolids + water) / $excretaDensityKgPerM3[i] : 0;
    }

    {
      // bedding

      const bedded = $bedShare[i] > 0;
      const bedM2 = $shedLengthM[i] * Math.max(0, $shedDepthM[i] - $stanceDepthM[i]);
      microbes.yieldFraction = $microbeYieldFraction[i];
      microbes.carbonNitrogen = $microbeCarbonNitrogen[i];
      let shares = 0;
      let loose = 0;
      let dry = 0;
      let nitrogen = 0;
      let phosphorus = 0;
      let potassium = 0;
      let carbon = 0;
      let ash = 0;
      let coarse = 0;
      let available = 0;
      let degradableCarbon = 0;
      let degradable = 0;
      let absorbency = 0;
      let immobilisation = 0;
      let ammonia = 0;
      let heapNitrogen = 0;
      let compostLoss = 0;
      // Per kg of the mix as it lies; a sweep may move one share alone, so the shares are made to sum to 1.
      for (const material of family.material) shares += Math.max(0, material.Share[i]);
      for (const material of family.material) {
        if (!(material.Share[i] > 0)) continue;
        const mass = material.Share[i] / shares;
        const moisture = material.MoistureFraction[i];
        const dm = mass * (1 - moisture);
        const c = material.CarbonFraction[i];
        loose += mass / material.LooseDensityKgPerM3[i];
        dry += dm;
        nitrogen += dm * material.NitrogenFraction[i];
        phosphorus += dm * material.PhosphorusFraction[i];
        potassium += dm * material.PotassiumFraction[i];
        carbon += dm * c;
        ash += dm * material.AshFraction[i];
        coarse += dm * material.CoarseFraction[i];
        available += dm * c * material.AvailableCarbonFraction[i];
        degradableCarbon += dm * c * material.DegradableFraction[i];
        degradable += dm * material.DegradableFraction[i];
        absorbency +=
          mass *
          absorbencyAtMoisture(material.AbsorbencyKgPerKg[i], $absorbencyTestMoistureFraction[i], moisture);
        const most = immobilisedPerKg(
          c,
          material.NitrogenFraction[i],
          material.AvailableCarbonFraction[i],
          microbes,
        );
        immobilisation += dm * Math.min(material.ImmobilisationKgPerKg[i], most);
        ammonia += dm * material.AmmoniaFactor[i];
        heapNitrogen += dm * material.HeapNitrogenFactor[i];
        compostLoss += dm * material.CompostLossFactor[i];
      }
      const any = bedded && shares > 0;
      const start = any && loose > 0 ? ($startDepthM[i] * bedM2) / loose : 0;
      const daily = any ? ($beddingRateKgPer100Kg[i] / 100) * _liveWeightKg * $winterDays[i] : 0;
      const mass = start + daily;
      _bedM2 = bedM2;
      _startMaterialKg = start;
      _beddingTonnes = mass / 1000;
      _beddingM3 = mass * loose;
      _dryMatterMaterialKg = mass * dry;
      _startDryMatterKg = start * dry;
      _waterMaterialKg = any ? mass * (1 - dry) : 0;
      _nitrogenMaterialKg = mass * nitrogen;
      _phosphorusMaterialKg = mass * phosphorus;
      _potassiumMaterialKg = mass * potassium;
      _carbonMaterialKg = mass * carbon;
      _ashMaterialKg = mass * ash;
      _coarseMaterialKg = mass * coarse;
      _availableCarbonMaterialKg = mass * available;
      _degradableCarbonMaterialKg = mass * degradableCarbon;
      _degradableMaterialFraction = dry > 0 ? degradable / dry : 0;
      _absorbencyKgPerKg = absorbency;
      _immobilisationKgPerKg = dry > 0 ? immobilisation / dry : 0;
      _litterAmmoniaFactor = dry > 0 ? ammonia / dry : 1;
      _heapNitrogenFactor = dry > 0 ? heapNitrogen / dry : 1;
      _compostLossFactor = dry > 0 ? compostLoss / dry : 1;
      _nitrogenBeddingKg = mass * nitrogen + _nitrogenWastedKg;
      _phosphorusBeddingKg = mass * phosphorus + _phosphorusWastedKg;
      _potassiumBeddingKg = mass * potassium + _potassiumWastedKg;
    }

    {
      // placement

      // A sweep may move one share alone; the day still has 24 hours.
      const total = $pastureShare[i] + $slatsShare[i] + $bedShare[i] + $yardShare[i];
      const day = total > 0 ? 1 / total : 0;
      const yard = $yardShare[i] * day;
      const toPack = $yardToPackShare[i];
      const paddock = $pastureShare[i] * day;
      const slurry = $slatsShare[i] * day + yard * (1 - toPack);
      const pack = $bedShare[i] * day + yard * toPack;

      const days = $winterDays[i];
      let warmth = 0;
      if (yard > 0)
        for (let w = 0; w < WEEKS; w++) {
          const inWeek = winterDaysInWeek(w, days);
          if (inWeek <= 0) break;
          warmth +=
            (inWeek / days) *
            temperatureFactor(weekTemperatureC[w], $ammoniaSlopePerC[i], $ammoniaReferenceC[i]);
        }
      const yardAmmonia = _tanExcretedKg * yard * Math.min(1, $yardAmmoniaTanFraction[i] * warmth);
      const packLoss = yardAmmonia * toPack;
      const slurryLoss = yardAmmonia - packLoss;

      _paddockShare = paddock;
      _slurryShare = slurry;
      _packShare = pack;
      _yardAmmoniaKg = yardAmmonia;
      _slatsTanKg = _tanExcretedKg * $slatsShare[i] * day;

      _paddockTanInKg = _tanExcretedKg * paddock;
      _slurryTanInKg = _tanExcretedKg * slurry - slurryLoss;
      _packTanInKg = _tanExcretedKg * pack - packLoss;

      const nitrogen = _nitrogenExcretedKg + _nitrogenWastedKg;
      _paddockNitrogenInKg = nitrogen * paddock;
      _slurryNitrogenInKg = nitrogen * slurry - slurryLoss;
      _packNitrogenInKg = nitrogen * pack - packLoss + _nitrogenMaterialKg;

      const phosphorus = _phosphorusExcretedKg + _phosphorusWastedKg;
      _paddockPhosphorusInKg = phosphorus * paddock;
      _slurryPhosphorusInKg = phosphorus * slurry;
      _packPhosphorusInKg = phosphorus * pack + _phosphorusMaterialKg;

      const potassium = _potassiumExcretedKg + _potassiumWastedKg;
      _paddockPotassiumInKg = potassium * paddock;
      _slurryPotassiumInKg = potassium * slurry;
      _packPotassiumInKg = potassium * pack + _potassiumMaterialKg;

      const carbon = _carbonExcretedKg + _carbonWastedKg;
      _paddockCarbonInKg = carbon * paddock;
      _slurryCarbonInKg = carbon * slurry;
      _packCarbonInKg = carbon * pack + _carbonMaterialKg;

      const dry = _dryMatterExcretedKg + _dryMatterWastedKg;
      _paddockDryMatterInKg = dry * paddock;
      _slurryDryMatterInKg = dry * slurry;
      _packDryMatterInKg = dry * pack + _dryMatterMaterialKg;

      const water = _waterExcretedKg + _waterWastedKg;
      _paddockWaterInKg = water * paddock;
      _slurryWaterInKg = water * slurry;
      _packWaterInKg = water * pack + _waterMaterialKg;

      _packDryMatterExcretaKg = _dryMatterExcretedKg * pack;
      _packNitrogenWastedKg = _nitrogenWastedKg * pack;
      _packDryMatterWastedKg = _dryMatterWastedKg * pack;
    }

    paddock: {
      // paddock
      field.growthDay[0] = _growthDay;
      field.growthBaseC[0] = $growthBaseC[i];
      field.fieldCapacityM3PerM3[0] = $fieldCapacityM3PerM3[i];
      field.rootDepthMm[0] = $rootDepthMm[i];
      field.nitrifiedFractionPerWeek[0] = $nitrifiedFractionPerWeek[i];
      field.nitrificationPerC[0] = $nitrificationPerC[i];
      field.nitrificationReferenceC[0] = $nitrificationReferenceC[i];
      field.nitrificationFrozenFractionPerWeek[0] = $nitrificationFrozenFractionPerWeek[i];
      field.grassUptakeKgPerHaWeekC[0] = $grassUptakeKgPerHaWeekC[i];
      if (
        _paddockShare === 0 &&
        _paddockNitrogenInKg === 0 &&
        _paddockPhosphorusInKg === 0 &&
        _paddockPotassiumInKg === 0 &&
        _paddockCarbonInKg === 0
      ) {
        // Nobody out there and nothing dropped: all of it is 0, and the weeks need not be walked.
        _paddockAmmoniaKg = 0;
        _paddockNitrousKg = 0;
        _paddockDinitrogenKg = 0;
        _paddockRunoffKg = 0;
        _paddockLeachedKg = 0;
        _paddockNitrogenKeptKg = 0;
        _paddockMineralKg = 0;
        _paddockPhosphorusLostKg = 0;
        _paddockPotassiumLostKg = 0;
        _paddockPhosphorusKeptKg = 0;
        _paddockPotassiumKeptKg = 0;
        _paddockCarbonKeptKg = 0;
        _nitrogenLoadKgPerHa = 0;
        _spotLoadKgPerHa = 0;
        _spotReachedHa = 0;
        _restReachedHa = 0;
        _grassLostTonnes = 0;
        _reseedHa = 0;

        break paddock;
      }

      const days = $winterDays[i];
      const weatherDays = weather[$weatherIndex[i]].days;
      const nitrogen = _paddockNitrogenInKg;
      const tan = Math.min(_paddockTanInKg, nitrogen);
      const phosphorus = _paddockPhosphorusInKg;
      const potassium = _paddockPotassiumInKg;
      const perDay = days > 0 ? 1 / days : 0;
      const hectares = $paddockHa[i];
      const spotShare = $spotExcretaFraction[i];
      const spotArea = $spotAreaFraction[i];

      // Ammonia week by week. What frost holds back leaves, in part, in proportion to the thawed days that follow.
      const reference = $paddockAmmoniaTanFraction[i];
      const frozenFactor = $frozenAmmoniaFactor[i];
      const thawFraction = $thawAmmoniaFraction[i];
      const lastWeek = Math.max(days, _growthDay) / 7;
      let ammonia = 0;
      let held = 0;
      let dropped = 0;
      let washing = 0;
      for (let w = 0; w < WEEKS; w++) {
        const daysInWeek = Math.min(7, weatherDays - 7 * w);
        if (daysInWeek <= 0) {
          deposits.fill(0, w);
          break;
        }
        const runoff = weekRunoffMm[w];
        const part = winterDaysInWeek(w, days) * perDay;
        const deposit = tan * part;
        const frozen = weekFrozenDays[w] / daysInWeek;
        let lost = 0;
        let holding = 0;
        if (deposit > 0) {
          const factor =
            reference * temperatureFactor(weekTemperatureC[w], $ammoniaSlopePerC[i], $ammoniaReferenceC[i]);
          const free = deposit * Math.min(factor, 1);
          lost = free * (1 - frozen + frozen * frozenFactor);
          holding = free - lost;
        }
        const thawed = held * (1 - frozen);
        const released = thawed * thawFraction;
        ammonia += lost + released;
        held += holding - thawed;
        deposits[w] = deposit - lost - holding + thawed - released;
        if (w <= lastWeek)
          washing += (runoff + spotShare * (weekTroddenRunoffMm[w] - runoff)) * (dropped + part / 2);
        dropped += part;
      }
      const afterAmmonia = tan - ammonia;

      const nitrousAsked = nitrogen * $paddockNitrousFraction[i];
      const dinitrogenAsked = nitrousAsked * $soilDinitrogenPerNitrous[i] + nitrogen * $soilNitricFraction[i];
      const asked = nitrousAsked + dinitrogenAsked;
      const limit = asked > afterAmmonia ? afterAmmonia / asked : 1;
      const nitrous = nitrousAsked * limit;
      const dinitrogen = dinitrogenAsked * limit;
      const mineral = afterAmmonia - nitrous - dinitrogen;

      // Ammonium lies in urine patches. Only the sward that reaches a patch can take it up, so crowding wastes it.
      const frost = days > 0 ? Math.min(1, _frozenDays / days) : 0;
      const uptakePerHa = $winterUptakeMildKgPerHa[i] * (1 - frost) + $winterUptakeFrozenKgPerHa[i] * frost;
      const patchHa = (_livestockUnits * _paddockShare * days * $urinePatchM2PerUnitDay[i]) / M2_PER_HA;
      const spotHa = coveredHa(patchHa * spotShare, hectares * spotArea);
      const restHa = coveredHa(patchHa * (1 - spotShare), hectares * (1 - spotArea));
      const uptake =
        Math.min(mineral * spotShare, uptakePerHa * spotHa) +
        Math.min(mineral * (1 - spotShare), uptakePerHa * restHa);
      const open = afterAmmonia > 0 ? Math.max(0, mineral - uptake) / afterAmmonia : 0;
      const pool = spotHa + restHa > 0 ? (mineral - uptake) / (spotHa + restHa) : 0;
      const leached =
        tan > 0
          ? open * leachedFromWeekKg(0, 0, WEEKS, deposits, pool, weatherDays, field, weeks, leachedByWeek)
          : 0;

      const washReference = $runoffReferenceMm[i];
      const runoffN = Math.min(
        nitrogen - tan,
        nitrogen * washedFraction(washing, $runoffNitrogenFraction[i], washReference),
      );
      const lostP = phosphorus * washedFraction(washing, $runoffPhosphorusFraction[i], washReference);
      const lostK = potassium * washedFraction(washing, $runoffPotassiumFraction[i], washReference);

      _paddockAmmoniaKg = ammonia;
      _paddockNitrousKg = nitrous;
      _paddockDinitrogenKg = dinitrogen;
      _paddockRunoffKg = runoffN;
      _paddockLeachedKg = leached;
      _paddockNitrogenKeptKg = nitrogen - ammonia - nitrous - dinitrogen - runoffN - leached;
      _paddockMineralKg = mineral - leached;
      _paddockPhosphorusLostKg = lostP;
      _paddockPotassiumLostKg = lostK;
      _paddockPhosphorusKeptKg = phosphorus - lostP;
      _paddockPotassiumKeptKg = potassium - lostK;
      _paddockCarbonKeptKg = _paddockCarbonInKg;
      _nitrogenLoadKgPerHa = hectares > 0 ? nitrogen / hectares : 0;
      _spotLoadKgPerHa = hectares > 0 && spotArea > 0 ? (nitrogen * spotShare) / (hectares * spotArea) : 0;

      const unitsPerHa = hectares > 0 ? (_livestockUnits * _paddockShare) / hectares : 0;
      const cowDays = unitsPerHa * _wetDays;
      const perHundred = $treadingLossPerHundredCowDays[i];
      const lossLimit = $treadingLossLimit[i];
      const spotLoss =
        spotArea > 0 ? treadingLossFraction((cowDays * spotShare) / spotArea, perHundred, lossLimit) : 0;
      const restLoss =
        spotArea < 1
          ? treadingLossFraction((cowDays * (1 - spotShare)) / (1 - spotArea), perHundred, lossLimit)
          : 0;
      _spotReachedHa = spotHa;
      _restReachedHa = restHa;
      _grassLostTonnes =
        $paddockYieldTonnesPerHa[i] * hectares * (spotArea * spotLoss + (1 - spotArea) * restLoss);
      const from = $reseedLossFrom[i];
      const ruined =
        spotArea * reseedFraction(spotLoss, from, lossLimit) +
        (1 - spotArea) * reseedFraction(restLoss, from, lossLimit);
      const lowRisk = $lowRiskUnitsPerHa[i];
      const gateways = $reseedFraction[i] * (lowRisk > 0 ? Math.min(1, unitsPerHa / lowRisk) : 0);
      _reseedHa = hectares * Math.min(1, Math.max(gateways, ruined));
    }

    {
      // slurry

      const days = $winterDays[i];
      const share = _slurryShare;
      let rule = 0;
      let slats = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * $herdFactor[i];
        if (!(head > 0)) continue;
        rule += head * group[g].StoreM3PerWeek[i] * (days / 7);
        slats += head * group[g].SlatsM2[i];
      }
      // Not given stands as NaN.
      const given = $slatsM2[i] > 0;
      _slatsUsedM2 = $slatsShare[i] > 0 ? (given ? $slatsM2[i] : slats) : 0;

      const pitC = Math.max($pitLowestC[i], _winterTemperatureC + $houseWarmerC[i]);
      const house =
        _slatsTanKg *
        Math.min(
          1,
          $houseAmmoniaTanFraction[i] *
            temperatureFactor(pitC, $houseAmmoniaSlopePerC[i], $ammoniaReferenceC[i]),
        );
      const nitrogenToStore = _slurryNitrogenInKg - house;
      const tan = mineralisedTanKg(_slurryTanInKg - house, nitrogenToStore, $storeMineralisedFraction[i]);

      const ammonia = $storeAmmoniaTanFraction[i] * $storeAmmoniaFactor[i];
      const nitrous = $storeNitrousFraction[i];
      const dinitrogen = $storeDinitrogenFraction[i] + $storeNitricOxideFraction[i];
      const limit = lossLimit(ammonia + nitrous + dinitrogen);
      const storeAmmonia = tan * ammonia * limit;
      const storeNitrous = tan * nitrous * limit;
      const storeDinitrogen = tan * dinitrogen * limit;
      const lost = storeAmmonia + storeNitrous + storeDinitrogen;

      _houseAmmoniaKg = house;
      _storeAmmoniaKg = storeAmmonia;
      _storeNitrousKg = storeNitrous;
      _storeDinitrogenKg = storeDinitrogen;
      _slurryNitrogenKg = nitrogenToStore - lost;
      _slurryTanKg = tan - lost;

      const phosphorusLost = _slurryPhosphorusInKg * $slurryPhosphorusLossFraction[i];
      const potassiumLost = _slurryPotassiumInKg * $slurryPotassiumLossFraction[i];
      _slurryPhosphorusLostKg = phosphorusLost;
      _slurryPotassiumLostKg = potassiumLost;
      _slurryPhosphorusKg = _slurryPhosphorusInKg - phosphorusLost;
      _slurryPotassiumKg = _slurryPotassiumInKg - potassiumLost;

      const dry = _slurryDryMatterInKg * (1 - $storeDryMatterLossFraction[i]);
      _slurryDryMatterKg = dry;
      _slurryCarbonKg = _slurryCarbonInKg * (1 - $storeDryMatterLossFraction[i]);

      const used = share > 0;
      const washM3 = used ? ($washLitresPerDay[i] * days) / 1000 : 0;
      const rainM3 = used
        ? (($openStoreM2[i] + $openYardM2[i] * $yardRunoffFraction[i]) * _rainMm) / 1000
        : 0;
      const density = $slurryDensityKgPerM3[i];
      const wet = density > 0 ? (dry + _slurryWaterInKg) / density : 0;
      _slurryM3 = wet + washM3 + rainM3;
      _storeNeededM3 = storeNeededM3(
        rule * share,
        washM3,
        rainM3 * $wetYearRainFactor[i],
        $storeBufferFraction[i],
      );
    }

    bed: {
      // bed

      if (
        _packDryMatterInKg === 0 &&
        _packWaterInKg === 0 &&
        _packCarbonInKg === 0 &&
        _packNitrogenInKg === 0
      ) {
        // Nothing falls on a bed, or there is none: all of it is 0, and the weeks need not be walked.
        _bedAmmoniaKg = 0;
        _bedNitrousKg = 0;
        _bedDinitrogenKg = 0;
        _immobilisedKg = 0;
        _packDryMatterKg = 0;
        _bedDryMatterLostKg = 0;
        _packWaterKg = 0;
        _bedEvaporatedKg = 0;
        _packTonnes = 0;
        _packM3 = 0;
        _packDepthM = 0;
        _packMoisture = 0;
        _packCarbonKg = 0;
        _bedCarbonLostKg = 0;
        _packNitrogenKg = 0;
        _packTanKg = 0;
        _packPhosphorusKg = 0;
        _packPotassiumKg = 0;
        _packAshKg = 0;
        _packCarbonNitrogen = 0;
        _packAvailableCarbonNitrogen = 0;
        _packFreeAirSpace = 0;
        _packHeatClass = 0;

        break bed;
      }
      // A winter longer than the weekly series is spread over the weeks there are, so that nothing is lost.
      const days = Math.min($winterDays[i], WEEKS * 7);
      const perDay = days > 0 ? 1 / days : 0;
      const k = $packDecayPerDay[i];
      const area = _bedM2;
      const density = $packDryDensityKgPerM3[i];

      const materialDry = _dryMatterMaterialKg;
      const startShare = materialDry > 0 ? Math.min(1, _startDryMatterKg / materialDry) : 0;
      const dailyShare = 1 - startShare;
      const wastedDry = _packDryMatterWastedKg;
      const excretaDry = Math.max(0, _packDryMatterInKg - materialDry - wastedDry);
      const wastedCarbon = _dryMatterWastedKg > 0 ? (_carbonWastedKg * wastedDry) / _dryMatterWastedKg : 0;
      const materialCarbon = _carbonMaterialKg;
      const excretaCarbon = _packCarbonInKg - materialCarbon - wastedCarbon;

      const dE = $excretaDegradableFraction[i];
      const dW = $wastedFeedDegradableFraction[i];
      const dM = _degradableMaterialFraction;
      const degradableIn = (excretaDry * dE + wastedDry * dW + materialDry * dailyShare * dM) * perDay;
      const resistantIn =
        (excretaDry * (1 - dE) + wastedDry * (1 - dW) + materialDry * dailyShare * (1 - dM)) * perDay;
      const materialRotting = _degradableCarbonMaterialKg;
      const rottingCarbonIn =
        (excretaCarbon * dE + wastedCarbon * dW + materialRotting * dailyShare) * perDay;
      const restingCarbonIn =
        (excretaCarbon * (1 - dE) +
          wastedCarbon * (1 - dW) +
          (materialCarbon - materialRotting) * dailyShare) *
        perDay;
      const waterIn = (_packWaterInKg - _waterMaterialKg * startShare) * perDay;
      const nitrogenIn = (_packNitrogenInKg - _nitrogenMaterialKg * startShare) * perDay;
      const phosphorusIn = (_packPhosphorusInKg - _phosphorusMaterialKg * startShare) * perDay;
      const potassiumIn = (_packPotassiumInKg - _potassiumMaterialKg * startShare) * perDay;
      const tanIn = _packTanInKg * perDay;
      const excretedIn =
        Math.max(0, _packNitrogenInKg - _nitrogenMaterialKg - _packNitrogenWastedKg) * perDay;
      const bindsPerKg = _immobilisationKgPerKg;
      const bindsIn = materialDry * dailyShare * bindsPerKg * perDay;
      const atOnce = Math.min(1, $bedAmmoniaTanFraction[i] * _litterAmmoniaFactor);
      const perWeek = Math.min(1, $bedTanLossPerWeekFraction[i] * _litterAmmoniaFactor);
      const waterPerDryLeft = $bedDriestMoistureFraction[i] / (1 - $bedDriestMoistureFraction[i]);

      const rottingWater = $rottingWaterKgPerKg[i];
      const driesPerDay = $bedEvaporationKgPerM2Day[i] * area;
      const perNitrous = 1 + $packDinitrogenPerNitrous[i];
      const gasPerDay = excretedIn * $bedNitrousFraction[i] * perNitrous;
      const settlesPerDay = 1 / $startLayerSettlingDays[i];

      let degradable = materialDry * startShare * dM;
      let resistant = materialDry * startShare * (1 - dM);
      let rottingCarbon = materialRotting * startShare;
      let restingCarbon = (materialCarbon - materialRotting) * startShare;
      let water = _waterMaterialKg * startShare;
      let nitrogen = _nitrogenMaterialKg * startShare;
      let phosphorus = _phosphorusMaterialKg * startShare;
      let potassium = _potassiumMaterialKg * startShare;
      let tan = 0;
      // Microbes bind nitrogen as they eat: what the bedding can bind in all, and what they still lack.
      let binds = materialDry * startShare * bindsPerKg;
      let hungry = 0;
      let ammonia = 0;
      let nitrous = 0;
      let dinitrogen = 0;
      let bound = 0;
      let evaporated = 0;
      // How much higher the first layer lies when fresh than when trodden to the density of the bed.
      const looseM =
        area > 0 && startShare > 0 && density > 0
          ? Math.max(0, $startDepthM[i] - (materialDry * startShare) / density / area)
          : 0;
      let stillLooseM = looseM;
      let keepWeek = Number.NaN;
      let keptDays = -1;

      for (let w = 0; w < WEEKS; w++) {
        const inWeek = winterDaysInWeek(w, days);
        if (inWeek <= 0) {
          continue;
        }
        if (inWeek !== keptDays) {
          keepWeek = remainingShare(k, inWeek);
          keptDays = inWeek;
        }
        // Even additions over the step leave (1 − e^(−k·t))/k days' worth behind.
        const fed = k > 0 ? (1 - keepWeek) / k : inWeek;
        const degradableNext = degradable * keepWeek + degradableIn * fed;
        const rotted = degradable + degradableIn * inWeek - degradableNext;
        degradable = degradableNext;
        resistant += resistantIn * inWeek;
        rottingCarbon = rottingCarbon * keepWeek + rottingCarbonIn * fed;
        restingCarbon += restingCarbonIn * inWeek;
        const dry = degradable + resistant;

        water += waterIn * inWeek + rotted * rottingWater;
        const dries = Math.min(driesPerDay * inWeek, Math.max(0, water - dry * waterPerDryLeft));
        water -= dries;
        evaporated += dries;

        const tanDropped = tanIn * inWeek;
        const prompt = tanDropped * atOnce;
        tan += tanDropped - prompt;
        const bindsNext = binds * keepWeek + bindsIn * fed;
        hungry += binds + bindsIn * inWeek - bindsNext;
        binds = bindsNext;
        const asGas = Math.min(tan, gasPerDay * inWeek);
        const asNitrous = asGas / perNitrous;
        tan -= asGas;
        nitrous += asNitrous;
        dinitrogen += asGas - asNitrous;
        const taken = Math.min(hungry, tan);
        hungry -= taken;
        tan -= taken;
        bound += taken;
        const slow = tan * (inWeek === 7 ? perWeek : 1 - (1 - perWeek) ** (inWeek / 7));
        tan -= slow;
        ammonia += prompt + slow;
        nitrogen += nitrogenIn * inWeek - prompt - slow - asGas;
        phosphorus += phosphorusIn * inWeek;
        potassium += potassiumIn * inWeek;

        if (looseM > 0) stillLooseM = looseM * Math.exp(-(w * 7 + inWeek) * settlesPerDay);
      }

      const dry = degradable + resistant;
      const carbon = rottingCarbon + restingCarbon;
      const volume = density > 0 ? dry / density + stillLooseM * area : 0;
      const depth = area > 0 ? volume / area : 0;
      const moisture = water + dry > 0 ? water / (water + dry) : 0;
      const ash =
        excretaDry * $packExcretaAshFraction[i] + wastedDry * $wastedFeedAshFraction[i] + _ashMaterialKg;
      const airSpace =
        dry > 0 ? freeAirSpace(density / (1 - moisture), moisture, Math.max(0, 1 - ash / dry)) : 0;
      // What came with the excreta and the wasted feed, and what with the bedding, as far as each is still there.
      const animalCarbon =
        excretaCarbon * fedRemainingShare(dE, k, days) + wastedCarbon * fedRemainingShare(dW, k, days);
      const availableOfMaterial = materialCarbon > 0 ? _availableCarbonMaterialKg / materialCarbon : 0;
      const available =
        animalCarbon * $excretaAvailableCarbonFraction[i] + (carbon - animalCarbon) * availableOfMaterial;
      const availableCarbonNitrogen = nitrogen > 0 ? available / nitrogen : 0;

      _bedAmmoniaKg = ammonia;
      _bedNitrousKg = nitrous;
      _bedDinitrogenKg = dinitrogen;
      _immobilisedKg = bound;
      _packDryMatterKg = dry;
      _bedDryMatterLostKg = _packDryMatterInKg - dry;
      _packWaterKg = water;
      _bedEvaporatedKg = evaporated;
      _packTonnes = (dry + water) / 1000;
      _packM3 = volume;
      _packDepthM = depth;
      _packMoisture = moisture;
      _packCarbonKg = carbon;
      _bedCarbonLostKg = _packCarbonInKg - carbon;
      _packNitrogenKg = nitrogen;
      _packTanKg = tan;
      _packPhosphorusKg = phosphorus;
      _packPotassiumKg = potassium;
      _packAshKg = ash;
      _packCarbonNitrogen = nitrogen > 0 ? carbon / nitrogen : 0;
      _packAvailableCarbonNitrogen = availableCarbonNitrogen;
      _packFreeAirSpace = airSpace;
      spans.moistureLow = $heatMoistureLow[i];
      spans.moistureHigh = $heatMoistureHigh[i];
      spans.airSpace = $heatFreeAirSpace[i];
      spans.availableCarbonNitrogenLow = $heatAvailableCarbonNitrogenLow[i];
      spans.availableCarbonNitrogenHigh = $heatAvailableCarbonNitrogenHigh[i];
      spans.depthM = $heatDepthM[i];
      bedSigns.driest = moisture;
      bedSigns.wettest = moisture;
      bedSigns.airSpace = airSpace;
      bedSigns.availableCarbonNitrogen = availableCarbonNitrogen;
      bedSigns.depthM = depth;
      _packHeatClass = dry > 0 ? heatClass(bedSigns, spans) : 0;
    }

    {
      // compost

      const made = $heapMade[i];
      const dry = _packDryMatterKg;
      const nitrogen = _packNitrogenKg;
      const height = $windrowHeightM[i];

      const firstWeek = Math.min(WEEKS - 1, Math.ceil($winterDays[i] / 7));
      const coarse = dry > 0 && _coarseMaterialKg > $coarseWoodShare[i] * _packDryMatterInKg;
      const frosty = height < $smallWindrowHeightM[i] && weekTemperatureC[firstWeek] < 0;
      const heapDays =
        dry > 0
          ? made *
            ($heapActiveDays[i] + $heapCureDays[i]) *
            (coarse ? $coarseWoodFactor[i] : 1) *
            (frosty ? $heapWinterFactor[i] : 1)
          : 0;
      let rain = 0;
      const lastWeek = Math.min(WEEKS, firstWeek + heapDays / 7);
      for (let w = firstWeek; w < lastWeek; w++) {
        // The last week counts by the part of it the heap still lies.
        const fell = weekRainMm[w];
        if (fell > 0) rain += fell * Math.min(1, lastWeek - w);
      }
      const washes = made * (rain / $heapReferenceRainMm[i]);

      const leached = nitrogen * (1 - (1 - $heapLeachFraction[i]) ** washes);
      const line = windrowNitrogenLoss(
        _packCarbonNitrogen,
        $heapNitrogenLossIntercept[i],
        $heapNitrogenLossSlope[i],
        $heapNitrogenLossLeast[i],
        $heapNitrogenLossMost[i],
      );
      const gas = Math.min(
        nitrogen - leached,
        nitrogen *
          made *
          line *
          $heapNitrogenWayFactor[i] *
          $heapNitrogenCoverFactor[i] *
          _heapNitrogenFactor,
      );
      const perNitrous = 1 + $packDinitrogenPerNitrous[i];
      const other = Math.min(
        nitrogen * made * $heapNitrousFraction[i] * perNitrous,
        gas * $heapOtherGasMostShare[i],
      );
      const nitrous = other / perNitrous;

      const dryLost = Math.min(
        Math.max(0, dry - _packAshKg),
        dry * made * $heapDryMatterLossFraction[i] * _compostLossFactor,
      );
      const carbonLost = _packCarbonKg * Math.min(1, made * $heapCarbonLossFraction[i] * _compostLossFactor);
      const dryLeft = dry - dryLost;
      const loosenedM3 = (_packTonnes * 1000) / $loosenedPackDensityKgPerM3[i];
      const rainKept = made * rain * windrowFootprintM2(loosenedM3, height) * $heapRainKeptFraction[i];
      const wet = _packWaterKg + dryLost * $rottingWaterKgPerKg[i] + rainKept;
      const driven = heapEvaporation(
        wet,
        dryLeft,
        dryLost,
        $heapEvaporationKgPerKg[i],
        $heapDriestMoistureFraction[i],
      );
      const holds = (dryLeft * $heapWettestMoistureFraction[i]) / (1 - $heapWettestMoistureFraction[i]);
      // Rain beyond what the heap can hold runs off; a bed that was wetter than that stays as wet as it was.
      const water = Math.min(wet - driven, Math.max(holds, wet - driven - rainKept));
      const mass = dryLeft + water;
      const moisture = mass > 0 ? water / mass : 0;
      const kept = nitrogen - leached - gas;
      const phosphorusLost = _packPhosphorusKg * (1 - (1 - $heapPhosphorusLossFraction[i]) ** washes);
      const potassiumLost = _packPotassiumKg * (1 - (1 - $heapPotassiumLossFraction[i]) ** washes);
      const carbon = _packCarbonKg - carbonLost;

      _compostDays = heapDays;
      _heapRainMm = rain;
      _heapAmmoniaKg = gas - other;
      _heapNitrousKg = nitrous;
      _heapDinitrogenKg = other - nitrous;
      _heapLeachedKg = leached;
      _heapPhosphorusLostKg = phosphorusLost;
      _heapPotassiumLostKg = potassiumLost;
      _compostDryMatterKg = dryLeft;
      _heapDryMatterLostKg = dryLost;
      _compostCarbonKg = carbon;
      _heapCarbonLostKg = carbonLost;
      _compostWaterKg = water;
      _compostTonnes = mass / 1000;
      _compostM3 = mass / $compostDensityKgPerM3[i];
      _compostMoisture = moisture;
      _compostNitrogenKg = kept;
      _compostTanKg = Math.min(kept, _packTanKg * $heapTanKeptFraction[i]);
      _compostPhosphorusKg = _packPhosphorusKg - phosphorusLost;
      _compostPotassiumKg = _packPotassiumKg - potassiumLost;
      _compostCarbonNitrogen = kept > 0 ? carbon / kept : 0;

      spans.moistureLow = $heatMoistureLow[i];
      spans.moistureHigh = $heatMoistureHigh[i];
      spans.airSpace = $heatFreeAirSpace[i];
      spans.availableCarbonNitrogenLow = $heatAvailableCarbonNitrogenLow[i];
      spans.availableCarbonNitrogenHigh = $heatAvailableCarbonNitrogenHigh[i];
      spans.depthM = $heatDepthM[i];
      compostSigns.driest = Math.min(moisture, _packMoisture);
      compostSigns.wettest = Math.max(moisture, _packMoisture);
      compostSigns.airSpace =
        dry > 0
          ? freeAirSpace($loosenedPackDensityKgPerM3[i], _packMoisture, Math.max(0, 1 - _packAshKg / dry))
          : 0;
      compostSigns.availableCarbonNitrogen = _packAvailableCarbonNitrogen;
      compostSigns.loosened = $heapLoosened[i] > 0 && $compostTurns[i] >= 1;
      compostSigns.depthM = height;
      const heat = dry > 0 && made > 0 ? heatClass(compostSigns, spans) : 0;
      _compostPeakClass = heat === 2 && $compostTurns[i] >= $sanitisingTurns[i] ? 3 : heat;
    }

    {
      // spread

      const incorporation = $spreadIncorporationFactor[i];
      const slurryLoss =
        _slurryTanKg *
        Math.min(1, $slurrySpreadAmmoniaFraction[i] * $spreadTechniqueFactor[i] * incorporation);
      const compostLoss = _compostTanKg * Math.min(1, $compostSpreadAmmoniaFraction[i] * incorporation);
      _slurrySpreadAmmoniaKg = slurryLoss;
      _compostSpreadAmmoniaKg = compostLoss;
      _spreadAmmoniaKg = slurryLoss + compostLoss;
      _slurrySoilNitrogenKg = _slurryNitrogenKg - slurryLoss;
      _slurrySoilTanKg = _slurryTanKg - slurryLoss;
      _compostSoilNitrogenKg = _compostNitrogenKg - compostLoss;
      _compostSoilTanKg = _compostTanKg - compostLoss;

      const nitrogenCap = $nitrogenCapKgPerHa[i];
      const phosphorusCap = $phosphorusCapKgPerHa[i];
      const forNitrogen = nitrogenCap > 0 ? (_slurryNitrogenKg + _compostNitrogenKg) / nitrogenCap : 0;
      const forPhosphorus =
        phosphorusCap > 0 ? (_slurryPhosphorusKg + _compostPhosphorusKg) / phosphorusCap : 0;
      _areaForNitrogenHa = forNitrogen;
      _areaForPhosphorusHa = forPhosphorus;
      _areaNeededHa = Math.max(forNitrogen, forPhosphorus);
    }

    {
      // soil
      field.growthDay[0] = _growthDay;
      field.growthBaseC[0] = $growthBaseC[i];
      field.fieldCapacityM3PerM3[0] = $fieldCapacityM3PerM3[i];
      field.rootDepthMm[0] = $rootDepthMm[i];
      field.nitrifiedFractionPerWeek[0] = $nitrifiedFractionPerWeek[i];
      field.nitrificationPerC[0] = $nitrificationPerC[i];
      field.nitrificationReferenceC[0] = $nitrificationReferenceC[i];
      field.nitrificationFrozenFractionPerWeek[0] = $nitrificationFrozenFractionPerWeek[i];
      field.grassUptakeKgPerHaWeekC[0] = $grassUptakeKgPerHaWeekC[i];
      const nitrogen = _slurrySoilNitrogenKg + _compostSoilNitrogenKg;
      const tan = Math.min(nitrogen, _slurrySoilTanKg + _compostSoilTanKg);
      // The published factors are shares of what is spread, before the ammonia of spreading.
      const spread = _slurryNitrogenKg + _compostNitrogenKg;
      const nitrousAsked = spread * $soilNitrousFraction[i];
      const dinitrogenAsked = nitrousAsked * $soilDinitrogenPerNitrous[i] + spread * $soilNitricFraction[i];
      const asked = nitrousAsked + dinitrogenAsked;
      const limit = asked > nitrogen ? nitrogen / asked : 1;
      const nitrous = nitrousAsked * limit;
      const dinitrogen = dinitrogenAsked * limit;
      const mineral = Math.max(0, tan - nitrous - dinitrogen);

      const hectares = $receivingHa[i];
      let leached = 0;
      if (mineral > 0) {
        const week = Math.floor($spreadDay[i] / 7);
        inflow[0] = mineral;
        leached = leachedFromWeekKg(
          0,
          Math.max(0, week) % WEEKS,
          WEEKS,
          inflow,
          hectares > 0 ? mineral / hectares : 0,
          weather[$weatherIndex[i]].days,
          field,
          weeks,
          leachedByWeek,
        );
      }
      const spreadHumus =
        _slurryCarbonKg * $slurryIsohumicFraction[i] + _compostCarbonKg * $compostIsohumicFraction[i];

      _soilLeachedKg = leached;
      _soilNitrousKg = nitrous;
      _soilDinitrogenKg = dinitrogen;
      _soilNitrogenKeptKg = nitrogen - nitrous - dinitrogen - leached;
      _soilMineralKg = mineral - leached;
      _soilPhosphorusKeptKg = _slurryPhosphorusKg + _compostPhosphorusKg;
      _soilPotassiumKeptKg = _slurryPotassiumKg + _compostPotassiumKg;
      _soilCarbonKeptKg = _slurryCarbonKg + _compostCarbonKg;
      _humusCarbonKg = spreadHumus + _paddockCarbonKeptKg * $dungIsohumicFraction[i];
      _layerDepthMm = layerDepthMm(_compostM3, hectares);
      _waterHeldMm =
        hectares > 0
          ? waterHeldMm(spreadHumus / hectares, $mixingDepthMm[i], $bulkDensityTPerM3[i], $waterGainMm[i])
          : 0;
    }

    {
      // ledger

      const ammonia =
        _yardAmmoniaKg +
        _paddockAmmoniaKg +
        _houseAmmoniaKg +
        _storeAmmoniaKg +
        _bedAmmoniaKg +
        _heapAmmoniaKg +
        _spreadAmmoniaKg;
      const nitrous = _paddockNitrousKg + _storeNitrousKg + _bedNitrousKg + _heapNitrousKg + _soilNitrousKg;
      const leached = _paddockLeachedKg + _heapLeachedKg + _soilLeachedKg;
      _nitrogenAmmoniaKg = ammonia;
      _nitrogenNitrousKg = nitrous;
      _nitrogenDinitrogenKg =
        _paddockDinitrogenKg + _storeDinitrogenKg + _bedDinitrogenKg + _heapDinitrogenKg + _soilDinitrogenKg;
      _nitrogenLeachedKg = leached;
      _nitrogenRunoffKg = _paddockRunoffKg;
      _nitrogenKeptKg = _paddockNitrogenKeptKg + _soilNitrogenKeptKg;
      _phosphorusLostKg = _paddockPhosphorusLostKg + _slurryPhosphorusLostKg + _heapPhosphorusLostKg;
      _phosphorusKeptKg = _paddockPhosphorusKeptKg + _soilPhosphorusKeptKg;
      _potassiumLostKg = _paddockPotassiumLostKg + _slurryPotassiumLostKg + _heapPotassiumLostKg;
      _potassiumKeptKg = _paddockPotassiumKeptKg + _soilPotassiumKeptKg;
      _carbonKeptKg = _paddockCarbonKeptKg + _soilCarbonKeptKg;

      const nitrogenIn = _nitrogenExcretedKg + _nitrogenBeddingKg;
      const outOfHousing =
        nitrogenIn -
        _yardAmmoniaKg -
        _paddockAmmoniaKg -
        _houseAmmoniaKg -
        _bedAmmoniaKg -
        _bedNitrousKg -
        _bedDinitrogenKg;
      const outOfStore =
        outOfHousing -
        _storeAmmoniaKg -
        _storeNitrousKg -
        _storeDinitrogenKg -
        _heapAmmoniaKg -
        _heapNitrousKg -
        _heapDinitrogenKg -
        _heapLeachedKg;
      _nitrogenInKg = nitrogenIn;
      _nitrogenOutOfHousingKg = outOfHousing;
      _nitrogenOutOfStoreKg = outOfStore;
      _nitrogenIntoSoilKg = outOfStore - _spreadAmmoniaKg - _paddockRunoffKg;

      const solids = _volatileSolidsKg;
      const capacity = $methaneCapacityM3PerKg[i];
      const methane =
        manureMethaneKg(
          solids * _paddockShare,
          $pastureMethaneCapacityM3PerKg[i],
          $pastureMethaneFraction[i],
        ) +
        manureMethaneKg(solids * _slurryShare, capacity, $slurryMethaneFraction[i]) +
        manureMethaneKg(solids * _packShare, capacity, $packMethaneFraction[i] + $compostMethaneFraction[i]);
      const indirect = indirectNitrousKg(
        ammonia,
        leached + _paddockRunoffKg,
        $indirectAmmoniaFraction[i],
        $indirectLeachedFraction[i],
      );
      _methaneKg = methane;
      _greenhouseGasTonnes =
        (methane * $methaneWarmingFactor[i] +
          (nitrous + indirect) * NITROUS_PER_NITROGEN * $nitrousWarmingFactor[i]) /
        1000;
    }

    {
      // value

      const spreadHa = $receivingHa[i];
      const paddockHa = $paddockHa[i];
      const spotLoad = $spotExcretaFraction[i];
      const spotArea = $spotAreaFraction[i];

      // Organic nitrogen by kind as spread; what the soil stage kept bounds it, so nothing is released twice.
      const slurryOrganic = Math.max(0, _slurrySoilNitrogenKg - _slurrySoilTanKg);
      const compostOrganic = Math.max(0, _compostSoilNitrogenKg - _compostSoilTanKg);
      const organic = slurryOrganic + compostOrganic;
      const organicKept = Math.max(0, _soilNitrogenKeptKg - _soilMineralKg);
      const held = organic > organicKept ? organicKept / organic : 1;
      const fromSlurry = slurryOrganic * held * $slurryMineralisedFraction[i];
      const fromCompost = compostOrganic * held * $compostMineralisedFraction[i];
      const tan = _slurrySoilTanKg + _compostSoilTanKg;
      const compostTanPart = part(_compostSoilTanKg, tan);
      const nitrogen = _soilMineralKg + fromSlurry + fromCompost;
      const compostNitrogenPart = part(_soilMineralKg * compostTanPart + fromCompost, nitrogen);

      const dungOrganic = Math.max(0, _paddockNitrogenKeptKg - _paddockMineralKg);
      const fromDung = dungOrganic * $dungMineralisedFraction[i];
      const paddockNitrogen = _paddockMineralKg + fromDung;

      const compostPhosphorus = _compostPhosphorusKg;
      const compostShare = part(compostPhosphorus, _slurryPhosphorusKg + compostPhosphorus);
      const phosphorusOfCompost =
        _soilPhosphorusKeptKg * compostShare * $compostPhosphorusFirstYearFraction[i];
      const phosphorus =
        phosphorusOfCompost +
        _soilPhosphorusKeptKg * (1 - compostShare) * $slurryPhosphorusFirstYearFraction[i];
      const paddockPhosphorus = _paddockPhosphorusKeptKg * $dungPhosphorusFirstYearFraction[i];

      const potassium = _soilPotassiumKeptKg * $potassiumFirstYearFraction[i];
      const compostPotassiumPart = part(_compostPotassiumKg, _slurryPotassiumKg + _compostPotassiumKg);
      const paddockPotassium = _paddockPotassiumKeptKg * $potassiumFirstYearFraction[i];

      const nitrogenSpread = Math.min(nitrogen, $cropNitrogenNeedKgPerHa[i] * spreadHa);
      const nitrogenDung = usedOnPaddock(
        paddockNitrogen,
        $pastureNitrogenNeedKgPerHa[i],
        spotLoad,
        _spotReachedHa,
        _restReachedHa,
      );
      const phosphorusSpread = Math.min(phosphorus, $cropPhosphorusNeedKgPerHa[i] * spreadHa);
      const phosphorusDung = usedOnPaddock(
        paddockPhosphorus,
        $pasturePhosphorusNeedKgPerHa[i],
        spotLoad,
        paddockHa * spotArea,
        paddockHa * (1 - spotArea),
      );
      const potassiumSpread = Math.min(potassium, $cropPotassiumNeedKgPerHa[i] * spreadHa);
      const potassiumDung = usedOnPaddock(
        paddockPotassium,
        $pasturePotassiumNeedKgPerHa[i],
        spotLoad,
        _spotReachedHa,
        _restReachedHa,
      );

      _nitrogenAvailableKg = nitrogenSpread + nitrogenDung;
      _phosphorusAvailableKg = phosphorusSpread + phosphorusDung;
      _potassiumAvailableKg = potassiumSpread + potassiumDung;
      _nitrogenSurplusKg = nitrogen + paddockNitrogen - nitrogenSpread - nitrogenDung;
      _phosphorusSurplusKg = phosphorus + paddockPhosphorus - phosphorusSpread - phosphorusDung;
      _potassiumSurplusKg = potassium + paddockPotassium - potassiumSpread - potassiumDung;

      const second =
        Math.min(
          _slurrySoilNitrogenKg * $slurrySecondYearFraction[i] +
            _compostSoilNitrogenKg * $compostSecondYearFraction[i],
          Math.min(organic, organicKept) - fromSlurry - fromCompost,
        ) + Math.min(_paddockNitrogenKeptKg * $dungSecondYearFraction[i], dungOrganic - fromDung);
      _nitrogenAvailableSecondYearKg = second;
      _nitrogenAvailableThirdYearKg = second * $thirdYearFactor[i];

      // No own price stands as 0, or NaN where the tables have no row.
      const own = $compostPricePerTonne[i] > 0;
      const replaced = own ? 1 : 0;
      const compostValue = own ? _compostTonnes * $compostPricePerTonne[i] : 0;
      _compostValue = compostValue;
      _nutrientValue =
        compostValue +
        $nitrogenPricePerKg[i] * (nitrogenDung + nitrogenSpread * (1 - compostNitrogenPart * replaced)) +
        $phosphorusPricePerKg[i] *
          (phosphorusDung + phosphorusSpread * (1 - part(phosphorusOfCompost, phosphorus) * replaced)) +
        $potassiumPricePerKg[i] * (potassiumDung + potassiumSpread * (1 - compostPotassiumPart * replaced));
    }

    {
      // labour

      const days = $winterDays[i];
      const head = _headCount;
      // A site without animals takes no work.
      const on = head > 0 ? days / MINUTES : 0;
      const bed = $bedShare[i] > 0 ? on : 0;
      const out = $pastureShare[i];
      const scraped =
        ($bedShare[i] > 0 ? $shedLengthM[i] * $stanceDepthM[i] : 0) +
        ($slatsShare[i] > 0 ? $openYardM2[i] : 0) +
        $hardStandingM2[i];

      const feeding = _feedTonnes * $feedingHoursPerTonne[i];
      const checking = on * (head * $checkMinutesPerHeadDay[i] + $siteMinutesPerDay[i]);
      const bedding = _beddingTonnes / $bedSpreadTonnesPerHour[i] + bed * $bedSpreadMinutesPerDay[i];
      let chipping = 0;
      for (let k = 0; k < family.material.length; k++) {
        const part = _beddingTonnes * family.material[k].Share[i];
        if (part !== 0) chipping += part * family.material[k].HoursPerTonne[i];
      }
      const fence =
        out > 0 ? on * ($fenceMovesPerDay[i] * $fenceMinutesPerMove[i] + $fenceCheckMinutesPerDay[i]) : 0;
      const ice = head > 0 ? (out * _frozenDays * $iceMinutesPerFrozenDay[i]) / MINUTES : 0;
      const water = on * $waterMinutesPerDay[i] + ice;
      const scraping = scraped > 0 ? on * (scraped * $scrapeMinutesPerM2Day[i] + $scrapeMinutesPerDay[i]) : 0;
      const rise = bed > 0 ? Math.max(0, _packDepthM - $startDepthM[i]) : 0;
      const barrier = (rise / $barrierRaiseStepM[i]) * $barrierHoursPerStep[i];
      const pushOut = _packTonnes / $packLoadTonnesPerHour[i];
      const turning = (_packM3 * $compostTurns[i] * $turningUsedShare[i]) / $turnM3PerHour[i];
      const agitating = _slurryM3 * $agitateHoursPerM3[i];
      const slurry = _slurryM3 / $slurrySpreadM3PerHour[i];
      const solid = _compostTonnes / $solidSpreadTonnesPerHour[i];
      const byContractor = $contractorShare[i];
      const own = 1 - byContractor;

      _feedingHours = feeding;
      _checkingHours = checking;
      _beddingHours = bedding;
      _chippingHours = chipping;
      _fenceHours = fence;
      _waterHours = water;
      _scrapingHours = scraping;
      _barrierHours = barrier;
      _pushOutHours = pushOut;
      _turningHours = turning;
      _agitatingHours = agitating;
      _spreadingHours = slurry + solid;
      _contractorSlurryHours = slurry * byContractor;
      _contractorAgitatingHours = agitating * byContractor;
      _contractorSolidHours = solid * byContractor;
      _tractorHours =
        feeding * $tractorFeedingShare[i] +
        bedding * $tractorBeddingShare[i] +
        scraping +
        pushOut +
        turning +
        (agitating + slurry + solid) * own;
      const daily = feeding + checking + fence + water - ice + scraping + barrier;
      const total = daily + ice + bedding + chipping + pushOut + turning + (agitating + slurry + solid) * own;
      _labourHours = total;
      _labourHoursPerHeadDay = head > 0 && days > 0 ? total / (head * days) : 0;
    }

    {
      // building

      const hasBed = $bedShare[i] > 0 ? 1 : 0;
      const hasSlats = $slatsShare[i] > 0 ? 1 : 0;
      const isOut = $pastureShare[i] > 0 ? 1 : 0;
      const head = _headCount;
      const slatsKnown = _slatsUsedM2 > 0;
      const slatsM2 = slatsKnown ? hasSlats * _slatsUsedM2 : 0;

      shape.eaveM = $eaveM[i];
      shape.pitchDeg = $pitchDeg[i];
      shape.overhangM = $overhangM[i];
      shape.bayM = $bayM[i];
      shape.postRowSpanM = $postRowSpanM[i];
      shape.longestTimberM = $longestTimberM[i];
      shape.purlinSpacingM = $purlinSpacingM[i];
      shape.lengthM = hasBed * $shedLengthM[i];
      shape.depthM = hasBed * $shedDepthM[i];
      shape.wallM = $pushWallM[i];
      const { lengthM: bedLength, depthM: bedDepth } = shape;
      shedFrame(shape, bedded);
      const penLength = slatsM2 / $slattedPenDepthM[i];
      shape.lengthM = penLength;
      shape.depthM = slatsM2 > 0 ? $slattedPenDepthM[i] + $commonPracticeFeedRoadOneSideM[i] : 0;
      shape.wallM = $penWallHeightM[i];
      shedFrame(shape, slatted);

      const plan = bedded.planM2 + slatted.planM2;
      const posts = bedded.posts + slatted.posts;
      const timber =
        ((bedded.postM + slatted.postM) * $postSectionM2[i] +
          (bedded.rafterM + slatted.rafterM) * $rafterSectionM2[i] +
          (bedded.purlinM + slatted.purlinM) * $purlinSectionM2[i]) *
        (1 + $timberBracingFraction[i]) *
        (1 + $timberWasteFraction[i]) *
        timberLoadFactor($snowLoadKnPerM2[i], $referenceSnowLoadKnPerM2[i], $roofDeadLoadKnPerM2[i]);
      const ownTimber = timber * $ownTimberShare[i];
      const erection = plan * $erectionHoursPerM2[i];
      const paddockSideM = Math.sqrt($paddockHa[i] * 10_000);
      const stance = Math.min($stanceDepthM[i], bedDepth);
      const underSlatsM3 =
        slatsM2 * Math.max(0, $tankDepthM[i] - $irelandCoveredFreeboardM[i]) * $tankUsedShare[i];
      const channel = $tankUsedShare[i] * $tankDepthM[i] + (1 - $tankUsedShare[i]) * $channelDepthM[i];

      _billGroundworkM2 = plan;
      _billPadConcreteM3 = posts * $padConcreteM3PerPost[i];
      _billPostFixingsCount = posts;
      _billTimberBoughtM3 = timber - ownTimber;
      _billTimberOwnM3 = ownTimber;
      _billSawingHours = ownTimber * $sawingHoursPerM3[i];
      _billSawmillHours = ownTimber * $sawingHoursPerM3[i];
      _billErectionHours = erection * (1 - $ownBuildShare[i]);
      _billErectionOwnHours = erection * $ownBuildShare[i];
      _billRoofM2 = bedded.roofM2 + slatted.roofM2;
      _billCladdingM2 = bedded.claddingM2 + slatted.claddingM2;
      _billGuttersM = bedded.gutterM + slatted.gutterM;
      _billWaterTankM3 = plan * $roofTankM3PerM2[i];
      _billSlabM2 = bedLength * stance + (slatsM2 > 0 ? penLength * $commonPracticeFeedRoadOneSideM[i] : 0);
      _billYardM2 = $hardStandingM2[i] + hasSlats * $openYardM2[i];
      _billBedFloorM2 = bedLength * (bedDepth - stance);
      _billPushWallM2 = (bedLength + 2 * (bedDepth - stance)) * $pushWallM[i];
      _billRisingBarrierM = bedLength * $barrierUsedShare[i];
      _billPenWallM2 = slatsM2 > 0 ? (penLength + 2 * $slattedPenDepthM[i]) * $penWallHeightM[i] : 0;
      _billSlatsM2 = slatsM2;
      _billTankM3 = slatsM2 * channel;
      _billOutsideStoreM3 = hasSlats * Math.max(0, _storeNeededM3 - underSlatsM3);
      _billStoreCoverM2 = hasSlats * $openStoreM2[i];
      _billFeedBarrierM = penLength * $barrierUsedShare[i];
      _billGatesCount = pieces((bedded.bays + slatted.bays) * $gatesPerBay[i]);
      _billBowlsCount =
        plan > 0 ? Math.max($waterBowls[i], pieces(head / $commonPracticeAnimalsPerBowl[i])) : 0;
      _billBeddingStoreM2 = hasBed * ((_beddingM3 * $beddingStoredShare[i]) / $beddingStackM[i]);
      _billCompostPadM2 = hasBed * _packM3 * $compostPadM2PerM3[i];
      _billHeapCoverM2 = $compostPadM2PerM3[i] > 0 ? hasBed * _packM3 * $heapCoverM2PerM3[i] : 0;
      _billFeedersCount = pieces(head * $feedersPerHead[i]);
      _billFenceM = isOut * 4 * paddockSideM;
      _billMovableFenceM = isOut * paddockSideM * $movableFenceLengths[i];
      _billEnergiserCount = isOut;
      _billWaterPipeM = isOut * 2 * paddockSideM;
      _billTroughsCount = isOut * pieces(head / $headPerTrough[i]);
      _billWindbreakM = isOut * head * $windbreakMPerHead[i];
      _billBeddedPlacesHead = bedDepth * bedLength > 0 ? 0 : hasBed * head;
      _billSlattedPlacesHead = slatsM2 > 0 ? 0 : hasSlats * head;
    }
    {
      let cash = 0;
      let buildings = 0;
      _capitalLines = 0;
      _capitalNonCash = 0;
      _capitalShortLived = 0;
      _costGroundwork = costOf(_billGroundworkM2, $groundworkPricePerM2[i]);
      _capitalLines += _costGroundwork;
      cash += _costGroundwork;
      buildings += _costGroundwork;
      _costPadConcrete = costOf(_billPadConcreteM3, $padConcretePricePerM3[i]);
      _capitalLines += _costPadConcrete;
      cash += _costPadConcrete;
      buildings += _costPadConcrete;
      _costPostFixings = costOf(_billPostFixingsCount, $postFixingPriceEach[i]);
      _capitalLines += _costPostFixings;
      cash += _costPostFixings;
      buildings += _costPostFixings;
      _costTimberBought = costOf(_billTimberBoughtM3, $timberPricePerM3[i]);
      _capitalLines += _costTimberBought;
      cash += _costTimberBought;
      buildings += _costTimberBought;
      _costTimberOwn = costOf(_billTimberOwnM3, $ownTimberPricePerM3[i]);
      _capitalLines += _costTimberOwn;
      _capitalNonCash += _costTimberOwn;
      _costSawing = costOf(_billSawingHours, $labourPricePerHour[i]);
      _capitalLines += _costSawing;
      _capitalNonCash += _costSawing;
      _costSawmill = costOf(_billSawmillHours, $sawmillPricePerHour[i]);
      _capitalLines += _costSawmill;
      cash += _costSawmill;
      buildings += _costSawmill;
      _costErection = costOf(_billErectionHours, $builderPricePerHour[i]);
      _capitalLines += _costErection;
      cash += _costErection;
      buildings += _costErection;
      _costErectionOwn = costOf(_billErectionOwnHours, $labourPricePerHour[i]);
      _capitalLines += _costErectionOwn;
      _capitalNonCash += _costErectionOwn;
      _costRoof = costOf(_billRoofM2, $roofPricePerM2[i]);
      _capitalLines += _costRoof;
      cash += _costRoof;
      buildings += _costRoof;
      _costCladding = costOf(_billCladdingM2, $claddingPricePerM2[i]);
      _capitalLines += _costCladding;
      cash += _costCladding;
      buildings += _costCladding;
      _costGutters = costOf(_billGuttersM, $gutterPricePerM[i]);
      _capitalLines += _costGutters;
      _capitalShortLived += _costGutters;
      cash += _costGutters;
      buildings += _costGutters;
      _costWaterTank = costOf(_billWaterTankM3, $waterTankPricePerM3[i]);
      _capitalLines += _costWaterTank;
      cash += _costWaterTank;
      buildings += _costWaterTank;
      _costSlab = costOf(_billSlabM2, $slabPricePerM2[i]);
      _capitalLines += _costSlab;
      cash += _costSlab;
      buildings += _costSlab;
      _costYard = costOf(_billYardM2, $yardPricePerM2[i]);
      _capitalLines += _costYard;
      cash += _costYard;
      _costBedFloor = costOf(_billBedFloorM2, $bedFloorPricePerM2[i]);
      _capitalLines += _costBedFloor;
      cash += _costBedFloor;
      buildings += _costBedFloor;
      _costPushWall = costOf(_billPushWallM2, $pushWallPricePerM2[i]);
      _capitalLines += _costPushWall;
      cash += _costPushWall;
      buildings += _costPushWall;
      _costRisingBarrier = costOf(_billRisingBarrierM, $risingBarrierPricePerM[i]);
      _capitalLines += _costRisingBarrier;
      cash += _costRisingBarrier;
      buildings += _costRisingBarrier;
      _costPenWall = costOf(_billPenWallM2, $penWallPricePerM2[i]);
      _capitalLines += _costPenWall;
      cash += _costPenWall;
      buildings += _costPenWall;
      _costSlats = costOf(_billSlatsM2, $slatsPricePerM2[i]);
      _capitalLines += _costSlats;
      cash += _costSlats;
      buildings += _costSlats;
      _costTank = costOf(_billTankM3, $tankPricePerM3[i]);
      _capitalLines += _costTank;
      cash += _costTank;
      buildings += _costTank;
      _costOutsideStore = costOf(_billOutsideStoreM3, $outsideStorePricePerM3[i]);
      _capitalLines += _costOutsideStore;
      cash += _costOutsideStore;
      buildings += _costOutsideStore;
      _costStoreCover = costOf(_billStoreCoverM2, $storeCoverPricePerM2[i]);
      _capitalLines += _costStoreCover;
      _capitalShortLived += _costStoreCover;
      cash += _costStoreCover;
      buildings += _costStoreCover;
      _costFeedBarrier = costOf(_billFeedBarrierM, $feedBarrierPricePerM[i]);
      _capitalLines += _costFeedBarrier;
      cash += _costFeedBarrier;
      buildings += _costFeedBarrier;
      _costGates = costOf(_billGatesCount, $gatePriceEach[i]);
      _capitalLines += _costGates;
      cash += _costGates;
      buildings += _costGates;
      _costBowls = costOf(_billBowlsCount, $waterBowlPriceEach[i]);
      _capitalLines += _costBowls;
      _capitalShortLived += _costBowls;
      cash += _costBowls;
      buildings += _costBowls;
      _costBeddingStore = costOf(_billBeddingStoreM2, $beddingStorePricePerM2[i]);
      _capitalLines += _costBeddingStore;
      cash += _costBeddingStore;
      buildings += _costBeddingStore;
      _costCompostPad = costOf(_billCompostPadM2, $compostPadPricePerM2[i]);
      _capitalLines += _costCompostPad;
      cash += _costCompostPad;
      buildings += _costCompostPad;
      _costHeapCover = costOf(_billHeapCoverM2, $heapCoverPricePerM2[i]);
      _capitalLines += _costHeapCover;
      _capitalShortLived += _costHeapCover;
      cash += _costHeapCover;
      buildings += _costHeapCover;
      _costFeeders = costOf(_billFeedersCount, $feederPriceEach[i]);
      _capitalLines += _costFeeders;
      _capitalShortLived += _costFeeders;
      cash += _costFeeders;
      _costFence = costOf(_billFenceM, $fencePricePerM[i]);
      _capitalLines += _costFence;
      _capitalShortLived += _costFence;
      cash += _costFence;
      _costMovableFence = costOf(_billMovableFenceM, $movableFencePricePerM[i]);
      _capitalLines += _costMovableFence;
      _capitalShortLived += _costMovableFence;
      cash += _costMovableFence;
      _costEnergiser = costOf(_billEnergiserCount, $energiserPriceEach[i]);
      _capitalLines += _costEnergiser;
      _capitalShortLived += _costEnergiser;
      cash += _costEnergiser;
      _costWaterPipe = costOf(_billWaterPipeM, $waterPipePricePerM[i]);
      _capitalLines += _costWaterPipe;
      cash += _costWaterPipe;
      _costTroughs = costOf(_billTroughsCount, $troughPriceEach[i]);
      _capitalLines += _costTroughs;
      _capitalShortLived += _costTroughs;
      cash += _costTroughs;
      _costWindbreak = costOf(_billWindbreakM, $windbreakPricePerM[i]);
      _capitalLines += _costWindbreak;
      cash += _costWindbreak;
      _costBeddedPlaces = costOf(_billBeddedPlacesHead, $beddedPlacePrice[i]);
      _capitalLines += _costBeddedPlaces;
      cash += _costBeddedPlaces;
      buildings += _costBeddedPlaces;
      _costSlattedPlaces = costOf(_billSlattedPlacesHead, $slattedPlacePrice[i]);
      _capitalLines += _costSlattedPlaces;
      cash += _costSlattedPlaces;
      buildings += _costSlattedPlaces;
      _billEngineerSum = cents(buildings);
      _costEngineer = costOf(_billEngineerSum, $engineerFraction[i]);
      _capitalLines += _costEngineer;
      _billContingencySum = cents(cash);
      _costContingency = costOf(_billContingencySum, $contingencyFraction[i]);
      _capitalLines += _costContingency;
      const lines = cents(_capitalLines);
      const given = $capitalGiven[i];
      _capitalLines = lines;
      _capitalCost = Number.isFinite(given) ? (given >= 0 ? given : Number.NaN) : lines;
      if (Number.isFinite(given)) {
        _capitalNonCash = 0;
        const share = lines === 0 ? 0 : _capitalShortLived / lines;
        _capitalShortLived = given * share;
      }
      _capitalCash = _capitalCost - _capitalNonCash;
    }

    {
      // costs

      const head = _headCount;
      const days = $winterDays[i];
      const capital = _capitalCost;
      const shortLived = _capitalShortLived;
      const granted = Math.min($grantAmount[i], capital);
      const paidShare = capital > 0 ? 1 - granted / capital : capital === 0 ? 0 : Number.NaN;
      const rate = realRate($interestRate[i], $inflation[i]);
      const long = (capital - shortLived) * paidShare;
      const short = shortLived * paidShare;
      _grantUsed = granted;
      _grantOverCost = $grantAmount[i] - granted;
      _capitalCharge = yearly(long, rate, $lifeYears[i]) + yearly(short, rate, $shortLifeYears[i]);
      _capitalChargeStraight =
        straightLineCost(long, $interestRate[i], $lifeYears[i], 0) +
        straightLineCost(short, $interestRate[i], $shortLifeYears[i], 0);
      _repairsCost =
        (capital - shortLived) * $repairsBuildingFraction[i] + shortLived * $repairsEquipmentFraction[i];
      _insuranceCost = capital * $insuranceFraction[i];

      let bedding = 0;
      for (let k = 0; k < material.length; k++)
        bedding += times(_beddingTonnes * material[k].Share[i], material[k].PricePerTonne[i]);
      _beddingCost = bedding;

      let feeding = 0;
      for (let k = 0; k < feed.length; k++) {
        const offered = _dryMatterOfferedKg * feed[k].Share[i];
        if (offered !== 0)
          feeding += times(offered / feed[k].DryMatterFraction[i] / 1000, feed[k].PricePerTonne[i]);
      }
      const wastedShare = _dryMatterOfferedKg > 0 ? _dryMatterWastedKg / _dryMatterOfferedKg : 0;
      _feedCost = feeding * (1 - wastedShare);
      _feedWasteCost = feeding * wastedShare;

      _machineryCost =
        times(_tractorHours, $tractorPricePerHour[i]) + times(_chippingHours, $chippingPricePerHour[i]);
      _contractorCost =
        times(_contractorSlurryHours, $slurrySpreadPricePerHour[i]) +
        times(_contractorAgitatingHours, $agitatePricePerHour[i]) +
        times(_contractorSolidHours, $solidSpreadPricePerHour[i]);
      _labourCost = times(_labourHours, $labourPricePerHour[i]);
      _grassLostCost = times(_grassLostTonnes, $grassPricePerTonne[i]);
      _reseedCost = times(_reseedHa, $reseedPricePerHa[i]);
      _vetCost = times(head, $vetPricePerHead[i]);
      _hoofCost = times(head, $hoofPricePerHead[i]);

      let annual = 0;
      annual += _capitalCharge;
      annual += _repairsCost;
      annual += _insuranceCost;
      annual += _beddingCost;
      annual += _feedCost;
      annual += _feedWasteCost;
      annual += _machineryCost;
      annual += _contractorCost;
      annual += _labourCost;
      annual += _grassLostCost;
      annual += _reseedCost;
      annual += _vetCost;
      annual += _hoofCost;
      const net = annual - _nutrientValue;
      _annualCost = annual;
      _operatingCost = annual - _capitalCharge;
      _operatingCashCost = _operatingCost - _labourCost - _grassLostCost;
      _netCost = net;
      _annualCostPerHead = head > 0 ? annual / head : 0;
      _netCostPerHead = head > 0 ? net / head : 0;
      _netCostPerHeadDay = head > 0 && days > 0 ? net / (head * days) : 0;
      _costPerNitrogenKeptKg = _nitrogenKeptKg > 0 ? annual / _nitrogenKeptKg : Number.NaN;
    }

    {
      // finance

      let total = 0;
      let lastYear = 0;
      for (let k = 0; k < loan.length; k++) {
        if (loan[k].Amount[i] === 0) continue;
        total += loan[k].Amount[i];
        lastYear = Math.max(lastYear, loan[k].Years[i]);
        owed[k] = balance(loan[k], i, 0);
      }
      let heaviest = 0;
      let interest = 0;
      for (let year = 1; year <= lastYear; year++) {
        let payment = 0;
        for (let k = 0; k < loan.length; k++) {
          if (loan[k].Amount[i] === 0) continue;
          const rate = loan[k].Rate[i];
          const opening = owed[k];
          owed[k] = balance(loan[k], i, year);
          payment += opening * (1 + rate) - owed[k];
          interest += opening * rate;
        }
        heaviest = Math.max(heaviest, payment);
      }
      // A loan of no years is not a loan without payments.
      const repayable = total === 0 || lastYear > 0;
      _loanTotal = total;
      _loanPayment = repayable ? heaviest : Number.NaN;
      _loanInterest = repayable ? interest : Number.NaN;
      const needed = _capitalCash - _grantUsed - total;
      _ownMoneyNeeded = Math.max(0, needed);
      _fundingGap = Math.max(0, _ownMoneyNeeded - $ownMoney[i]);

      const rate = realRate($interestRate[i], $inflation[i]);
      const years = Math.round($lifeYears[i]);
      const factor = annuityFactor(rate, years);
      const value =
        (_nutrientValue - _operatingCost) * factor -
        (_capitalCost - _grantUsed) -
        _capitalShortLived * replacementFactor(rate, years, $shortLifeYears[i]);
      _netPresentValue = value;
      _levelisedCost = -value / factor;
      _internalRateOfReturn = Number.NaN;
      _paybackYears = Number.NaN;
      _debtServiceCover = debtServiceCover($incomePerYear[i] - _operatingCashCost, _loanPayment);
    }

    out.headCount[i] = _headCount;
    out.nitrogenExcretedKg[i] = _nitrogenExcretedKg;
    out.nitrogenAmmoniaKg[i] = _nitrogenAmmoniaKg;
    out.nitrogenNitrousKg[i] = _nitrogenNitrousKg;
    out.nitrogenDinitrogenKg[i] = _nitrogenDinitrogenKg;
    out.nitrogenLeachedKg[i] = _nitrogenLeachedKg;
    out.nitrogenRunoffKg[i] = _nitrogenRunoffKg;
    out.nitrogenKeptKg[i] = _nitrogenKeptKg;
    out.nitrogenAvailableKg[i] = _nitrogenAvailableKg;
    out.phosphorusKeptKg[i] = _phosphorusKeptKg;
    out.potassiumKeptKg[i] = _potassiumKeptKg;
    out.beddingTonnes[i] = _beddingTonnes;
    out.packDepthM[i] = _packDepthM;
    out.packMoisture[i] = _packMoisture;
    out.compostTonnes[i] = _compostTonnes;
    out.slurryM3[i] = _slurryM3;
    out.storeNeededM3[i] = _storeNeededM3;
    out.grassLostTonnes[i] = _grassLostTonnes;
    out.labourHours[i] = _labourHours;
    out.capitalCost[i] = _capitalCost;
    out.annualCost[i] = _annualCost;
    out.nutrientValue[i] = _nutrientValue;
    out.netCost[i] = _netCost;
    out.netCostPerHead[i] = _netCostPerHead;
    out.netPresentValue[i] = _netPresentValue;
    out.greenhouseGasTonnes[i] = _greenhouseGasTonnes;
    out.fundingGap[i] = _fundingGap;
    out.internalRateOfReturn[i] = _internalRateOfReturn;
    out.paybackYears[i] = _paybackYears;
    out.debtServiceCover[i] = _debtServiceCover;
    out.costPerNitrogenKeptKg[i] = _costPerNitrogenKeptKg;
    out.rest[i] =
      _liveWeightKg +
      _livestockUnits +
      _gainKg +
      _rainMm +
      _snowfallMm +
      _runoffMm +
      _evapotranspirationMm +
      _drainageWinterMm +
      _drainageMm +
      _soilWaterChangeMm +
      _wetDays +
      _frozenDays +
      _winterTemperatureC +
      _growthDay +
      _coldIntakeFactor +
      _dryMatterEatenKg +
      _digestibility +
      _nitrogenEatenKg +
      _phosphorusEatenKg +
      _potassiumEatenKg +
      _dryMatterByEnergyKg +
      _dryMatterOfferedKg +
      _feedTonnes +
      _dryMatterWastedKg +
      _nitrogenWastedKg +
      _phosphorusWastedKg +
      _potassiumWastedKg +
      _carbonWastedKg +
      _waterWastedKg +
      _tanExcretedKg +
      _phosphorusExcretedKg +
      _potassiumExcretedKg +
      _waterExcretedKg +
      _dryMatterExcretedKg +
      _carbonExcretedKg +
      _volatileSolidsKg +
      _excretaM3 +
      _bedM2 +
      _startMaterialKg +
      _beddingM3 +
      _dryMatterMaterialKg +
      _startDryMatterKg +
      _waterMaterialKg +
      _nitrogenMaterialKg +
      _phosphorusMaterialKg +
      _potassiumMaterialKg +
      _carbonMaterialKg +
      _ashMaterialKg +
      _coarseMaterialKg +
      _availableCarbonMaterialKg +
      _degradableCarbonMaterialKg +
      _degradableMaterialFraction +
      _absorbencyKgPerKg +
      _immobilisationKgPerKg +
      _litterAmmoniaFactor +
      _heapNitrogenFactor +
      _compostLossFactor +
      _nitrogenBeddingKg +
      _phosphorusBeddingKg +
      _potassiumBeddingKg +
      _paddockShare +
      _slurryShare +
      _packShare +
      _yardAmmoniaKg +
      _slatsTanKg +
      _paddockTanInKg +
      _paddockNitrogenInKg +
      _paddockPhosphorusInKg +
      _paddockPotassiumInKg +
      _paddockCarbonInKg +
      _paddockDryMatterInKg +
      _paddockWaterInKg +
      _slurryTanInKg +
      _slurryNitrogenInKg +
      _slurryPhosphorusInKg +
      _slurryPotassiumInKg +
      _slurryCarbonInKg +
      _slurryDryMatterInKg +
      _slurryWaterInKg +
      _packTanInKg +
      _packNitrogenInKg +
      _packPhosphorusInKg +
      _packPotassiumInKg +
      _packCarbonInKg +
      _packDryMatterInKg +
      _packWaterInKg +
      _packDryMatterExcretaKg +
      _packNitrogenWastedKg +
      _packDryMatterWastedKg +
      _paddockAmmoniaKg +
      _paddockNitrousKg +
      _paddockDinitrogenKg +
      _paddockRunoffKg +
      _paddockLeachedKg +
      _paddockNitrogenKeptKg +
      _paddockMineralKg +
      _paddockPhosphorusLostKg +
      _paddockPotassiumLostKg +
      _paddockPhosphorusKeptKg +
      _paddockPotassiumKeptKg +
      _paddockCarbonKeptKg +
      _nitrogenLoadKgPerHa +
      _spotLoadKgPerHa +
      _spotReachedHa +
      _restReachedHa +
      _reseedHa +
      _slatsUsedM2 +
      _houseAmmoniaKg +
      _storeAmmoniaKg +
      _storeNitrousKg +
      _storeDinitrogenKg +
      _slurryNitrogenKg +
      _slurryTanKg +
      _slurryPhosphorusLostKg +
      _slurryPotassiumLostKg +
      _slurryPhosphorusKg +
      _slurryPotassiumKg +
      _slurryCarbonKg +
      _slurryDryMatterKg +
      _bedAmmoniaKg +
      _bedNitrousKg +
      _bedDinitrogenKg +
      _immobilisedKg +
      _packDryMatterKg +
      _bedDryMatterLostKg +
      _packWaterKg +
      _bedEvaporatedKg +
      _packTonnes +
      _packM3 +
      _packCarbonKg +
      _bedCarbonLostKg +
      _packNitrogenKg +
      _packTanKg +
      _packPhosphorusKg +
      _packPotassiumKg +
      _packAshKg +
      _packCarbonNitrogen +
      _packAvailableCarbonNitrogen +
      _packFreeAirSpace +
      _packHeatClass +
      _compostDays +
      _heapRainMm +
      _heapAmmoniaKg +
      _heapNitrousKg +
      _heapDinitrogenKg +
      _heapLeachedKg +
      _heapPhosphorusLostKg +
      _heapPotassiumLostKg +
      _compostDryMatterKg +
      _heapDryMatterLostKg +
      _compostCarbonKg +
      _heapCarbonLostKg +
      _compostWaterKg +
      _compostM3 +
      _compostMoisture +
      _compostNitrogenKg +
      _compostTanKg +
      _compostPhosphorusKg +
      _compostPotassiumKg +
      _compostCarbonNitrogen +
      _compostPeakClass +
      _slurrySpreadAmmoniaKg +
      _compostSpreadAmmoniaKg +
      _spreadAmmoniaKg +
      _slurrySoilNitrogenKg +
      _slurrySoilTanKg +
      _compostSoilNitrogenKg +
      _compostSoilTanKg +
      _areaForNitrogenHa +
      _areaForPhosphorusHa +
      _areaNeededHa +
      _soilLeachedKg +
      _soilNitrousKg +
      _soilDinitrogenKg +
      _soilNitrogenKeptKg +
      _soilMineralKg +
      _soilPhosphorusKeptKg +
      _soilPotassiumKeptKg +
      _soilCarbonKeptKg +
      _humusCarbonKg +
      _layerDepthMm +
      _waterHeldMm +
      _phosphorusLostKg +
      _potassiumLostKg +
      _carbonKeptKg +
      _nitrogenInKg +
      _nitrogenOutOfHousingKg +
      _nitrogenOutOfStoreKg +
      _nitrogenIntoSoilKg +
      _methaneKg +
      _phosphorusAvailableKg +
      _potassiumAvailableKg +
      _nitrogenSurplusKg +
      _phosphorusSurplusKg +
      _potassiumSurplusKg +
      _nitrogenAvailableSecondYearKg +
      _nitrogenAvailableThirdYearKg +
      _compostValue +
      _feedingHours +
      _checkingHours +
      _beddingHours +
      _chippingHours +
      _fenceHours +
      _waterHours +
      _scrapingHours +
      _barrierHours +
      _pushOutHours +
      _turningHours +
      _agitatingHours +
      _spreadingHours +
      _contractorSlurryHours +
      _contractorAgitatingHours +
      _contractorSolidHours +
      _tractorHours +
      _labourHoursPerHeadDay +
      _billGroundworkM2 +
      _costGroundwork +
      _billPadConcreteM3 +
      _costPadConcrete +
      _billPostFixingsCount +
      _costPostFixings +
      _billTimberBoughtM3 +
      _costTimberBought +
      _billTimberOwnM3 +
      _costTimberOwn +
      _billSawingHours +
      _costSawing +
      _billSawmillHours +
      _costSawmill +
      _billErectionHours +
      _costErection +
      _billErectionOwnHours +
      _costErectionOwn +
      _billRoofM2 +
      _costRoof +
      _billCladdingM2 +
      _costCladding +
      _billGuttersM +
      _costGutters +
      _billWaterTankM3 +
      _costWaterTank +
      _billSlabM2 +
      _costSlab +
      _billYardM2 +
      _costYard +
      _billBedFloorM2 +
      _costBedFloor +
      _billPushWallM2 +
      _costPushWall +
      _billRisingBarrierM +
      _costRisingBarrier +
      _billPenWallM2 +
      _costPenWall +
      _billSlatsM2 +
      _costSlats +
      _billTankM3 +
      _costTank +
      _billOutsideStoreM3 +
      _costOutsideStore +
      _billStoreCoverM2 +
      _costStoreCover +
      _billFeedBarrierM +
      _costFeedBarrier +
      _billGatesCount +
      _costGates +
      _billBowlsCount +
      _costBowls +
      _billBeddingStoreM2 +
      _costBeddingStore +
      _billCompostPadM2 +
      _costCompostPad +
      _billHeapCoverM2 +
      _costHeapCover +
      _billFeedersCount +
      _costFeeders +
      _billFenceM +
      _costFence +
      _billMovableFenceM +
      _costMovableFence +
      _billEnergiserCount +
      _costEnergiser +
      _billWaterPipeM +
      _costWaterPipe +
      _billTroughsCount +
      _costTroughs +
      _billWindbreakM +
      _costWindbreak +
      _billBeddedPlacesHead +
      _costBeddedPlaces +
      _billSlattedPlacesHead +
      _costSlattedPlaces +
      _billEngineerSum +
      _costEngineer +
      _billContingencySum +
      _costContingency +
      _capitalLines +
      _capitalNonCash +
      _capitalCash +
      _capitalShortLived +
      _grantUsed +
      _grantOverCost +
      _capitalCharge +
      _capitalChargeStraight +
      _repairsCost +
      _insuranceCost +
      _beddingCost +
      _feedCost +
      _feedWasteCost +
      _machineryCost +
      _contractorCost +
      _labourCost +
      _grassLostCost +
      _reseedCost +
      _vetCost +
      _hoofCost +
      _operatingCost +
      _operatingCashCost +
      _annualCostPerHead +
      _netCostPerHeadDay +
      _loanTotal +
      _loanPayment +
      _loanInterest +
      _ownMoneyNeeded +
      _levelisedCost;
  }
  return out;
}

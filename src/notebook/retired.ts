/** Rows of the tables that older notebooks may replace and that no figure rests on any more, and what took their place. */

const COLD = 'feed follows need by coat, rain, wind and mud now; see coldNeedDryPerC and its neighbours';
const HOUSE = 'house and pit have temperatures of their own by week now';
const SPREADING = 'ammonia at spreading follows temperature, wind, dry matter and technique now';
const BED = 'the bed has a temperature by week now, and rots, dries and loses ammonia by it';
const HEAP = 'the heap follows its days, season, turnings and cover now';
const PADDOCK = 'the paddock is followed through two drainage seasons by month, soil and temperature now';

const WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(coldIntakePerC|lowerCriticalTemperatureC)\b/, COLD],
  [/^(houseWarmerC|pitLowestC)$/, HOUSE],
  [/^((slurry|compost)SpreadAmmoniaFraction|spreadTechniqueFactor)\b/, SPREADING],
  [
    /^contingencyFraction$/,
    'the paper sets aside what the draws ask for (P80 less the lines of the bill) now',
  ],
  [/^gatesPerBay$/, 'gates are counted where they hang now: both ends of the solid floor, and each way out'],
  [/^thirdYearFactor$/, 'later years follow laterYearsFactor now'],
  [
    /^(heatMoistureLow|heatMoistureHigh|heatFreeAirSpace|heatAvailableCarbonNitrogen(Low|High)|heatDepthM)$/,
    BED,
  ],
  [/^(bedEvaporationKgPerM2Day|bedTanLossPerWeekFraction|packDecayPerDay|mixDryMatterLossFraction)$/, BED],
  [
    /^(coarseWoodFactor|heap(ActiveDays|CarbonLossFraction|ColdC|CompostingC|CoverM2PerM3\.covered|CureDays|DryMatterLossFraction|LeachFraction|NitrogenCoverFactor|NitrogenLoss\w+|NitrogenWayFactor|OtherGasMostShare|PhosphorusLossFraction|PotassiumLossFraction|RainKeptFraction|ReferenceRainMm|SanitisingC|WarmC|WinterFactor))\b/,
    HEAP,
  ],
  [
    /^(paddockAmmoniaTanFraction|runoffPotassiumFraction|treadingLossLimit|treadingLossPerHundredCowDays|winterUptake(Frozen|Mild)KgPerHa)\b/,
    PADDOCK,
  ],
];

/** Why a row is gone; nothing for a row that is not known to have been one. */
export function retiredRow(id: string): string | undefined {
  return WORDS.find(([pattern]) => pattern.test(id))?.[1];
}

/**
 * Why each number of a notebook ends where it does. Within a span everything is taken, odd as it may be, and checks ask about it;
 * beyond it the number was mistyped or is in another unit. Where no source is named, the basis says on what the end rests.
 */
export interface SpanReason {
  readonly because: string;
  readonly basis: 'by definition' | 'from memory' | 'common practice, no source' | 'invented';
}

const definition = (because: string): SpanReason => ({ because, basis: 'by definition' });
const memory = (because: string): SpanReason => ({ because, basis: 'from memory' });
const practice = (because: string): SpanReason => ({ because, basis: 'common practice, no source' });
const invented = (because: string): SpanReason => ({ because, basis: 'invented' });

/** By the end of the place; the first that fits counts. */
const REASONS: readonly (readonly [RegExp, SpanReason])[] = [
  [/latitudeDeg$/, definition('the poles lie there')],
  [/longitudeDeg$|openSideAzimuthDeg$/, definition('the circle closes there')],
  [/(^|\.)share$|[a-z]Share$/, definition('a part is at most the whole')],
  [/wetDays$/, definition('no month has more days')],
  [/spreading\.month$|paidIn\.\w+$/, definition('a year has twelve months')],
  [/(draws|weather)\.seed$/, definition('what the generator of chance can begin from')],
  [/horizonDeg$/, practice('no valley that cattle winter in is steeper')],
  [/weather\.year$/, practice('winters, prices and tables are of these two centuries')],
  [/money\.year$/, invented('older prices say nothing of what building costs now')],
  [/monthly\.rainMm$/, memory('no place on earth has had more in a month')],
  [/temperatureC$/, memory('no month has been colder or hotter on the mean')],
  [/rangeC$/, memory('no month swings further between night and day')],
  [/rainFactor$/, invented('five times the rain is another climate')],
  [/rootDepthMm$/, practice('grass roots no deeper, and a thinner soil is rock')],
  [/\.head$/, invented('no small herd, nor any single holding')],
  [/\.weightKg$/, memory('no calf that lives is born lighter, and no bull is heavier')],
  [/gainKgPerDay$/, practice('no animal gains faster, nor lives while it loses more')],
  [/milkKgPerDay$/, practice('no suckler cow gives more')],
  [/dryMatterKgPerDay$/, practice('no animal eats more')],
  [/crudeProteinFraction$/, practice('no forage or straw has more')],
  [/(phosphorus|potassium)Fraction$/, practice('no forage or straw has more')],
  [/digestibilityFraction$/, practice('no feed is digested less, or wholly')],
  [/feed\.\*\.dryMatterFraction$/, practice('what is wetter is no feed but water')],
  [/moistureFraction$/, practice('what is wetter is no bedding but slurry')],
  [/interestRate$|loans\.\*\.rate$/, invented('a loan at more than its own sum a year is none')],
  [/inflation$/, invented('a budget of constant prices says nothing beyond it')],
  [/horizonYears$|loans\.\*\.years$|ageYears$|leftYears$/, practice('no shed and no loan lasts longer')],
  [/graceYears$/, practice('no lender waits longer')],
  [/vat\.((works|winter)Fraction|rates\.\w+)$/, memory('no country takes half')],
  [/refundMonths$|worksMonths$/, invented('later is another year’s case')],
  [/grantMonths$/, invented('no grant is paid ten years late')],
  [/incomePerHead$/, invented('no animal earns or loses so much')],
  [/tankDepthM$|storeDepthM$/, practice('none is dug shallower or deeper')],
  [/timesStirred$/, invented('once a week through a year')],
  [/windMPerS$/, practice('nobody spreads in a storm')],
  [/shed\.lengthM$|shed\.depthM$|stanceDepthM$/, practice('wider than any building for cattle')],
  [/eaveM$|rearEaveM$/, practice('higher than any building for cattle, or too low to stand in')],
  [/pitchDeg$/, practice('steeper is a wall')],
  [
    /overhangM$|bayM$|ridgeSlotM$|longestTimberM$/,
    practice('beyond what is built of timber or steel for cattle'),
  ],
  [
    /(pushWall|barrier|barrierLift|gateHeight|bowlHeight|bowlLift)M$/,
    practice('higher than any animal reaches'),
  ],
  [/machine(Height|Width|Turn)M$/, practice('larger than any machine that works in a shed')],
  [/waterBowls$|exits$/, invented('more than any shed has')],
  [/hardStandingM2$|calvingPensM2$|inletM2$/, invented('ten hectares of floor or opening are no shed')],
  [/basicWindMPerS$/, memory('no gust has been measured much faster')],
  [/frostDepthM$/, practice('ground that freezes deeper never thaws')],
  [/snowLoadKnPerM2$/, practice('no map of loads goes so far')],
  [/startDepthM$/, practice('a bed a metre deep is no start')],
  [/rateKgPer100Kg$/, practice('more straw than the animals weigh in three weeks')],
  [/stirredPerWeek$/, invented('three times a day')],
  [/compost\.turns$/, practice('no heap is turned more often')],
  [/compost\.days$/, practice('after three years it is soil')],
  [/draws\.count$/, invented('what a page can hold')],
  [
    /(tonnes|pricePerTonne|machineHoursPerTonne|Ha|labourPerHour|debtServicePerYear|washLitresPerDay|areaM2|storeSurfaceM2|openStoreM2|openYardM2|capital|grant|amount|unitPrice|ownMoney|value|low|high)$|decide\.weights\.\*$/,
    invented('no number of a farm is so large'),
  ],
];

/** Why the number at a place of the front matter, lists by their place or `*`, ends where it does. */
export const spanReason = (place: string): SpanReason | undefined =>
  REASONS.find(([end]) => end.test(place.replace(/\.\d+(?=\.|$)/g, '.*')))?.[1];

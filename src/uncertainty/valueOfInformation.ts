/**
 * How a keeper can find out a number that the tables only give a range for: by the id of the coefficient or price,
 * what to do. Numbers that take a laboratory trial over years are not here. Common practice, no source.
 */
const MEASURES: readonly (readonly [RegExp, string | ((option: string) => string)])[] = [
  [/^(material)PricePerTonne\.(.+)$/, (m) => `Ask two sellers for a delivered price of ${m}, by weight`],
  [
    /^materialMoistureFraction\.(.+)$/,
    (m) => `Dry a weighed bucket of ${m} in a warm oven until it loses no more weight`,
  ],
  [/^materialLooseDensityKgPerM3\.(.+)$/, (m) => `Weigh a filled box of known size of ${m}`],
  [
    /^materialAbsorbencyKgPerKg\.(.+)$/,
    (m) => `Soak a weighed net of ${m} for a day, let it drip, weigh it again`,
  ],
  [
    /^material(Nitrogen|Phosphorus|Potassium|Carbon|Ash)\w*\.(.+)$/,
    (m) => `Send a sample of ${m} to a laboratory`,
  ],
  [/^materialHoursPerTonne\.(.+)$/, (m) => `Time one load of ${m} from stack to bed and weigh it`],
  [/^feedPricePerTonne\.(.+)$/, (f) => `Ask what ${f} fetches near you this autumn`],
  [/^feedDryMatterFraction\.(.+)$/, (f) => `Weigh three bales of ${f} and dry a core of each`],
  [
    /^feed(CrudeProtein|Phosphorus|Potassium|Digestibility|Carbon|Ash)Fraction\.(.+)$/,
    (f) => `Send cores of three bales of ${f} to a laboratory`,
  ],
  [/^feedWasteFraction\./, 'Rake up and weigh what lies around the feeder for one week'],
  [/^groupIntakeFraction\./, 'Weigh the bales that go in over two weeks, and what is left'],
  [/^(roundBaleKg|squareBaleKg)$/, 'Weigh three bales'],
  [
    /^(bedEvaporation|packDry|packDecay|bedDriest|rottingWater)/,
    'Take two bed depths a month and weigh a bucket cut from the bed',
  ],
  [
    /^(bedAmmonia|bedTan|bedNitrous|packDinitrogen)/,
    'Send a sample of the bed to a laboratory at clean-out, for total and ammonium nitrogen',
  ],
  [
    /^heap(NitrogenLoss|TanKept|NitrogenCover)/,
    'Send a sample of the heap to a laboratory when it is made and when it is done, and weigh a load both times',
  ],
  [
    /^heap(DryMatter|Carbon|Evaporation|Driest|Wettest)/,
    'Count and weigh the loads into the heap and out of it',
  ],
  [/^(compostDensity|loosenedPackDensity)/, 'Weigh a trailer of known size, filled level'],
  [
    /^compost(Mineralised|PhosphorusFirst|SecondYear)/,
    'Leave a strip without fertiliser and one without compost, and compare the cuts',
  ],
  [
    /^slurry(Mineralised|PhosphorusFirst|SecondYear)/,
    'Leave a strip without fertiliser and one without slurry, and compare the cuts',
  ],
  [
    /^(houseAmmonia|storeAmmonia|storeMineralised|slurryDensity)/,
    'Stir the tank by the safety rules and send a slurry sample to a laboratory',
  ],
  [/^slurryStored|^groupStoreM3/, 'Read a dipstick in the tank at the start and end of a month'],
  [
    /^paddockYield|^treading|^reseed/,
    'Cut and weigh a square metre of grass on trodden and on spared ground in spring',
  ],
  [
    /^(winterUptake|nitrified|nitrification|grassUptake)/,
    'Take soil samples to 60 cm in late autumn and in early spring, for mineral nitrogen',
  ],
  [/^spot|^runoff/, 'Pace out how much of the paddock is dung and mud, each month'],
  [
    /^(fieldCapacity|wiltingPoint|drainageRate|curveNumber|bulkDensity)/,
    'Dig a pit and have the texture of each layer judged',
  ],
  [/^(snow|melt)/, 'Put a rain gauge and a snow stick by the shed'],
  [/^urineTan|^tan(Lowest|Highest)|^faecalNitrogen/, 'Have dung and urine of three animals analysed'],
  [/^(feedingHours|tractorFeeding)/, 'Time the feeding for a week'],
  [
    /^(checkMinutes|siteMinutes|waterMinutes|iceMinutes|fence\w*Minutes)/,
    'Keep a list of minutes by the door for two weeks',
  ],
  [/^(scrape|bedSpread|barrierHours|packLoad|turn|agitate)\w*/, 'Time the job once with your own machine'],
  [/^(slurrySpread|solidSpread)\w*(PerHour)$/, 'Ask the contractor for his rate and his price an hour'],
  [
    /^(roof|cladding|purlin|rafter|timber|post|sawing|erection|builder|sawmill|ownTimber)/,
    'Get two quotes for the frame and the roof',
  ],
  [
    /^(slab|yard|tank|slats|padConcrete|bedFloor|groundwork|outsideStore|beddedPlace|slattedPlace|pushWall|penWall)/,
    'Get two quotes for groundwork and concrete',
  ],
  [
    /^(feeder|fence|movableFence|gate|trough|waterBowl|waterPipe|waterTank|energiser|windbreak|feedBarrier|risingBarrier)\w*Price/,
    'Price the fittings at your merchant',
  ],
  [/^(nitrogen|phosphorus|potassium)PricePerKg$/, 'Ask the fertiliser price for spring delivery'],
  [/^tractorPricePerHour$/, 'Work out fuel, repairs and wear of your tractor from last year’s bills'],
  [/^(vet|hoof)PricePerHead/, 'Add up last winter’s vet and hoof bills'],
  [/^grassPricePerTonne$/, 'Ask what standing grass or grazing lets for near you'],
  [/^reseedPricePerHa$/, 'Ask a contractor what reseeding a hectare costs'],
  [
    /^cropNitrogenNeed|^pastureNitrogenNeed|^crop\w+Need|^pasture\w+Need/,
    'Take a soil test of the ground that gets the manure',
  ],
];

/** What to do to know this number; undefined for one that cannot be measured on a farm. */
export function measuringOf(id: string): string | undefined {
  for (const [pattern, words] of MEASURES) {
    const match = pattern.exec(id);
    if (!match) continue;
    return typeof words === 'string' ? words : words(spelt(match[match.length - 1]));
  }
  return undefined;
}

/** `softwoodChips` as "softwood chips". */
const spelt = (name: string) => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

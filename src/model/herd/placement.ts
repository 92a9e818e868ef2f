/** Where the day is spent → what each route (paddock, slurry, pack) receives. */
import { quantity } from '../engine/quantity.ts';
import { WEEKS, winterDaysInWeek } from '../series.ts';
import { temperatureFactor } from '../slurry/ammonia.ts';

const share = (label: string, formula: string, when: string) =>
  quantity(label, 'fraction', `${formula} ÷ sum of the shares of the day`, { when });

const WORDS = {
  nitrogen: 'nitrogen',
  phosphorus: 'phosphorus',
  potassium: 'potassium',
  carbon: 'carbon',
  dryMatter: 'dry matter',
  water: 'water',
} as const;
type Matter = keyof typeof WORDS;

const ofRoute = (place: string, matter: string, less: string, more: string, when: string) =>
  quantity(`${matter} into ${place}`, 'kg', `${matter} excreted${less} × share of the route${more}`, {
    when,
  });
const LESS_YARD = ', less the ammonia of the yard';
const WASTED = ' + wasted feed × share of the route';

/** What falls on the paddock: its share of the excreta and of the wasted feed. */
const intoPaddock = (matter: Matter) =>
  ofRoute('the paddock', WORDS[matter], '', WASTED, 'paddockShare').of(
    [`${matter}ExcretedKg`, `${matter}WastedKg`, 'paddockShare'] as const,
    (i, excreted, wasted, part) => (excreted[i] + wasted[i]) * part[i],
  );

const intoSlurry = (matter: Matter) =>
  ofRoute('slats and slurry', WORDS[matter], '', WASTED, 'slurryShare').of(
    [`${matter}ExcretedKg`, `${matter}WastedKg`, 'slurryShare'] as const,
    (i, excreted, wasted, part) => (excreted[i] + wasted[i]) * part[i],
  );

/** What the bed takes, its bedding too. */
const intoPack = (matter: Matter) =>
  ofRoute('the bed', WORDS[matter], '', `${WASTED} + bedding`, 'packShare').of(
    [`${matter}ExcretedKg`, `${matter}WastedKg`, 'packShare', `${matter}MaterialKg`] as const,
    (i, excreted, wasted, part, bedding) => (excreted[i] + wasted[i]) * part[i] + bedding[i],
  );

const toBed = (label: string, formula: string, of: string) =>
  quantity(label, 'kg', `${formula} × share that ends in the bed`, { when: 'packShare' }).product([
    of,
    'packShare',
  ]);

export const placement = {
  // A sweep may move one share alone; the day still has 24 hours.
  dayShareSum: quantity(
    'sum of the shares of the day',
    'fraction',
    'shares of the day on pasture + slats + bed + yard as given; each place then counts by its part of the sum',
  ).sum(['pastureShare', 'slatsShare', 'bedShare', 'yardShare']),
  slatsDropShare: share('share that falls on the slats', 'share of the day on slats', 'slatsShare').ratio(
    'slatsShare',
    'dayShareSum',
  ),
  bedDropShare: share('share that falls on the bed', 'share of the day on the bed', 'bedShare').ratio(
    'bedShare',
    'dayShareSum',
  ),
  yardDropShare: share(
    'share that falls on stance and yard',
    'share of the day on the yard',
    'yardShare',
  ).ratio('yardShare', 'dayShareSum'),
  paddockShare: share('share that falls on the paddock', 'share of the day on pasture', 'paddockShare').ratio(
    'pastureShare',
    'dayShareSum',
  ),
  slurryShare: share(
    'share that ends in slurry',
    '(share of the day on slats + share on the yard × (1 − scrapings to the pack))',
    'slurryShare',
  ).of(
    ['slatsDropShare', 'yardDropShare', 'yardToPackShare'],
    (i, slats, yard, toPack) => slats[i] + yard[i] * (1 - toPack[i]),
  ),
  packShare: share(
    'share that ends in the bed',
    '(share of the day on the bed + share on the yard × scrapings to the pack)',
    'packShare',
  ).of(
    ['bedDropShare', 'yardDropShare', 'yardToPackShare'],
    (i, bed, yard, toPack) => bed[i] + yard[i] * toPack[i],
  ),
  yardWarmthFactor: quantity(
    'ammonia of the yard for the warmth of the winter',
    '×',
    'mean over the winter weeks of e^(slope × (week temperature − reference)); 0 without a yard',
    { source: ['lithuania2013'], when: 'yardShare' },
  ).of(
    ['weekTemperatureC', 'ammoniaSlopePerC', 'ammoniaReferenceC', 'winterDays', 'yardShare'],
    (i, temperature, slope, reference, days, yard) => {
      let warmth = 0;
      // Farms without a yard are spared the weeks.
      if (!(yard[i] > 0)) return 0;
      for (let w = 0; w < WEEKS; w++) {
        const inWeek = winterDaysInWeek(w, days[i]);
        if (inWeek <= 0) break;
        warmth += (inWeek / days[i]) * temperatureFactor(temperature[i * WEEKS + w], slope[i], reference[i]);
      }
      return warmth;
    },
  ),
  yardAmmoniaKg: quantity(
    'ammonia from stance and yard (N)',
    'kg',
    'TAN dropped on stance and yard × share lost at the reference temperature × mean over the winter weeks of e^(slope × (week temperature − reference)), at most all of it',
    { source: ['emep2019', 'lithuania2013'] },
  ).of(
    ['tanExcretedKg', 'yardDropShare', 'yardAmmoniaTanFraction', 'yardWarmthFactor'],
    (i, tan, yard, lost, warmth) => tan[i] * yard[i] * Math.min(1, lost[i] * warmth[i]),
  ),
  yardToPackAmmoniaKg: quantity(
    'ammonia of the yard from what is scraped to the bed (N)',
    'kg',
    'ammonia from stance and yard × scrapings to the pack',
    { when: 'packShare' },
  ).product(['yardAmmoniaKg', 'yardToPackShare']),
  yardToSlurryAmmoniaKg: quantity(
    'ammonia of the yard from what is scraped to slurry (N)',
    'kg',
    'ammonia from stance and yard − that from what is scraped to the bed',
    { when: 'slurryShare' },
  ).minus('yardAmmoniaKg', ['yardToPackAmmoniaKg']),
  slatsTanKg: quantity('TAN dropped on the slats', 'kg', 'TAN excreted × share of the day on slats', {
    when: 'slurryShare',
  }).product(['tanExcretedKg', 'slatsDropShare']),

  paddockTanInKg: ofRoute('the paddock', 'TAN', '', '', 'paddockShare').product([
    'tanExcretedKg',
    'paddockShare',
  ]),
  paddockNitrogenInKg: intoPaddock('nitrogen'),
  paddockPhosphorusInKg: intoPaddock('phosphorus'),
  paddockPotassiumInKg: intoPaddock('potassium'),
  paddockCarbonInKg: intoPaddock('carbon'),
  paddockDryMatterInKg: intoPaddock('dryMatter'),
  paddockWaterInKg: intoPaddock('water'),

  slurryTanInKg: ofRoute('slats and slurry', 'TAN', LESS_YARD, '', 'slurryShare').of(
    ['tanExcretedKg', 'slurryShare', 'yardToSlurryAmmoniaKg'],
    (i, excreted, part, lost) => excreted[i] * part[i] - lost[i],
  ),
  slurryNitrogenInKg: ofRoute('slats and slurry', 'nitrogen', LESS_YARD, WASTED, 'slurryShare').of(
    ['nitrogenExcretedKg', 'nitrogenWastedKg', 'slurryShare', 'yardToSlurryAmmoniaKg'],
    (i, excreted, wasted, part, lost) => (excreted[i] + wasted[i]) * part[i] - lost[i],
  ),
  slurryPhosphorusInKg: intoSlurry('phosphorus'),
  slurryPotassiumInKg: intoSlurry('potassium'),
  slurryCarbonInKg: intoSlurry('carbon'),
  slurryDryMatterInKg: intoSlurry('dryMatter'),
  slurryWaterInKg: intoSlurry('water'),

  packTanInKg: ofRoute('the bed', 'TAN', LESS_YARD, '', 'packShare').of(
    ['tanExcretedKg', 'packShare', 'yardToPackAmmoniaKg'],
    (i, excreted, part, lost) => excreted[i] * part[i] - lost[i],
  ),
  packNitrogenInKg: ofRoute('the bed', 'nitrogen', LESS_YARD, `${WASTED} + bedding`, 'packShare').of(
    ['nitrogenExcretedKg', 'nitrogenWastedKg', 'packShare', 'yardToPackAmmoniaKg', 'nitrogenMaterialKg'],
    (i, excreted, wasted, part, lost, bedding) => (excreted[i] + wasted[i]) * part[i] - lost[i] + bedding[i],
  ),
  packPhosphorusInKg: intoPack('phosphorus'),
  packPotassiumInKg: intoPack('potassium'),
  packCarbonInKg: intoPack('carbon'),
  packDryMatterInKg: intoPack('dryMatter'),
  packWaterInKg: ofRoute(
    'the bed',
    WORDS.water,
    '',
    `${WASTED} + bedding + rain where the bed has no roof`,
    'packShare',
  ).of(
    ['waterExcretedKg', 'waterWastedKg', 'packShare', 'waterMaterialKg', 'bedRainKg'],
    (i, excreted, wasted, part, bedding, rain) => (excreted[i] + wasted[i]) * part[i] + bedding[i] + rain[i],
  ),

  packDryMatterExcretaKg: toBed(
    'dry matter of dung and urine into the bed',
    'dry matter excreted',
    'dryMatterExcretedKg',
  ),
  packNitrogenWastedKg: toBed(
    'nitrogen of wasted feed into the bed',
    'nitrogen in wasted feed',
    'nitrogenWastedKg',
  ),
  packDryMatterWastedKg: toBed(
    'wasted feed into the bed, dry matter',
    'dry matter wasted',
    'dryMatterWastedKg',
  ),
};

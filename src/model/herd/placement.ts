/** Where the day is spent → what each route (paddock, slurry, pack) receives. */
import { temperatureFactor } from '../slurry/ammonia.ts';
import { defineStage, type Quantity, type Route, WEEKS, winterDaysInWeek } from '../stage.ts';

const SHARES = ['pastureShare', 'slatsShare', 'bedShare', 'yardShare', 'yardToPackShare'] as const;

const share = (route: Route, label: string, formula: string): Quantity => ({
  label,
  unit: 'fraction',
  formula: `${formula} ÷ sum of the shares of the day`,
  from: SHARES,
  route,
});

/** What enters a route: its share of the excreta and of the wasted feed, and for the pack the bedding. */
function into(route: Route, words: string, matter: string, from: readonly string[]): Quantity {
  const place = { paddock: 'the paddock', slurry: 'slats and slurry', pack: 'the bed' }[route];
  const wasted = matter === 'TAN' ? '' : ' + wasted feed × share of the route';
  const bedding = route === 'pack' && matter !== 'TAN' ? ' + bedding' : '';
  return {
    label: `${matter} into ${place}`,
    unit: 'kg',
    formula: `${words} × share of the route${wasted}${bedding}`,
    from: [...from, `${route}Share`],
    route,
  };
}

const YARD = ['yardAmmoniaKg', 'yardShare', 'yardToPackShare'] as const;
/** The part of a route's nitrogen that lay on the yard first has lost the yard's ammonia. */
const lessYard = (route: Route) => (route === 'paddock' ? [] : YARD);

function quantities<R extends Route>(route: R) {
  const bed = (name: string) => (route === 'pack' ? [name] : []);
  return {
    [`${route}TanInKg`]: into(route, 'TAN excreted, less the ammonia of the yard', 'TAN', [
      'tanExcretedKg',
      ...lessYard(route),
    ]),
    [`${route}NitrogenInKg`]: into(route, 'nitrogen excreted, less the ammonia of the yard', 'nitrogen', [
      'nitrogenExcretedKg',
      'nitrogenWastedKg',
      ...lessYard(route),
      ...bed('nitrogenMaterialKg'),
    ]),
    [`${route}PhosphorusInKg`]: into(route, 'phosphorus excreted', 'phosphorus', [
      'phosphorusExcretedKg',
      'phosphorusWastedKg',
      ...bed('phosphorusMaterialKg'),
    ]),
    [`${route}PotassiumInKg`]: into(route, 'potassium excreted', 'potassium', [
      'potassiumExcretedKg',
      'potassiumWastedKg',
      ...bed('potassiumMaterialKg'),
    ]),
    [`${route}CarbonInKg`]: into(route, 'carbon excreted', 'carbon', [
      'carbonExcretedKg',
      'carbonWastedKg',
      ...bed('carbonMaterialKg'),
    ]),
    [`${route}DryMatterInKg`]: into(route, 'dry matter excreted', 'dry matter', [
      'dryMatterExcretedKg',
      'dryMatterWastedKg',
      ...bed('dryMatterMaterialKg'),
    ]),
    [`${route}WaterInKg`]: into(route, 'water excreted', 'water', [
      'waterExcretedKg',
      'waterWastedKg',
      ...bed('waterMaterialKg'),
    ]),
  } as Record<
    `${R}${'Tan' | 'Nitrogen' | 'Phosphorus' | 'Potassium' | 'Carbon' | 'DryMatter' | 'Water'}InKg`,
    Quantity
  >;
}

export const placementStage = defineStage({
  name: 'placement',
  about:
    'Splits dung, urine and wasted feed by where the animals are; the yard loses ammonia before it is scraped.',
  reads: [
    'winterDays', 'pastureShare', 'slatsShare', 'bedShare', 'yardShare', 'yardToPackShare', 'nitrogenExcretedKg',
    'tanExcretedKg', 'phosphorusExcretedKg', 'potassiumExcretedKg', 'carbonExcretedKg', 'dryMatterExcretedKg',
    'waterExcretedKg', 'nitrogenWastedKg', 'phosphorusWastedKg', 'potassiumWastedKg', 'carbonWastedKg',
    'dryMatterWastedKg', 'waterWastedKg', 'nitrogenMaterialKg', 'phosphorusMaterialKg', 'potassiumMaterialKg',
    'carbonMaterialKg', 'dryMatterMaterialKg', 'waterMaterialKg', 'yardAmmoniaTanFraction', 'ammoniaSlopePerC',
    'ammoniaReferenceC',
  ], // biome-ignore format: one list
  readsTracks: ['weekTemperatureC'],
  makes: {
    paddockShare: share('paddock', 'share that falls on the paddock', 'share of the day on pasture'),
    slurryShare: share(
      'slurry',
      'share that ends in slurry',
      '(share of the day on slats + share on the yard × (1 − scrapings to the pack))',
    ),
    packShare: share(
      'pack',
      'share that ends in the bed',
      '(share of the day on the bed + share on the yard × scrapings to the pack)',
    ),
    yardAmmoniaKg: {
      label: 'ammonia from stance and yard (N)',
      unit: 'kg',
      formula:
        'TAN dropped on stance and yard × share lost at the reference temperature × mean over the winter weeks of e^(slope × (week temperature − reference)), at most all of it',
      from: [
        'tanExcretedKg', 'yardShare', 'pastureShare', 'slatsShare', 'bedShare', 'yardAmmoniaTanFraction', 'ammoniaSlopePerC',
        'ammoniaReferenceC', 'weekTemperatureC', 'winterDays',
      ], // biome-ignore format: one list
      source: ['emep2019', 'lithuania2013'],
    },
    slatsTanKg: {
      label: 'TAN dropped on the slats',
      unit: 'kg',
      formula: 'TAN excreted × share of the day on slats',
      from: ['tanExcretedKg', 'slatsShare', 'pastureShare', 'bedShare', 'yardShare'],
      route: 'slurry',
    },
    ...quantities('paddock'),
    ...quantities('slurry'),
    ...quantities('pack'),
    packDryMatterExcretaKg: {
      label: 'dry matter of dung and urine into the bed',
      unit: 'kg',
      formula: 'dry matter excreted × share that ends in the bed',
      from: ['dryMatterExcretedKg', 'packShare'],
      route: 'pack',
    },
    packNitrogenWastedKg: {
      label: 'nitrogen of wasted feed into the bed',
      unit: 'kg',
      formula: 'nitrogen in wasted feed × share that ends in the bed',
      from: ['nitrogenWastedKg', 'packShare'],
      route: 'pack',
    },
    packDryMatterWastedKg: {
      label: 'wasted feed into the bed, dry matter',
      unit: 'kg',
      formula: 'dry matter wasted × share that ends in the bed',
      from: ['dryMatterWastedKg', 'packShare'],
      route: 'pack',
    },
  },
  run({ count, read, readTrack, write }) {
    for (let i = 0; i < count; i++) {
      // A sweep may move one share alone; the day still has 24 hours.
      const total = read.pastureShare[i] + read.slatsShare[i] + read.bedShare[i] + read.yardShare[i];
      const day = total > 0 ? 1 / total : 0;
      const yard = read.yardShare[i] * day;
      const toPack = read.yardToPackShare[i];
      const paddock = read.pastureShare[i] * day;
      const slurry = read.slatsShare[i] * day + yard * (1 - toPack);
      const pack = read.bedShare[i] * day + yard * toPack;

      const days = read.winterDays[i];
      let warmth = 0;
      if (yard > 0)
        for (let w = 0; w < WEEKS; w++) {
          const inWeek = winterDaysInWeek(w, days);
          if (inWeek <= 0) break;
          warmth +=
            (inWeek / days) *
            temperatureFactor(
              readTrack.weekTemperatureC[i * WEEKS + w],
              read.ammoniaSlopePerC[i],
              read.ammoniaReferenceC[i],
            );
        }
      const yardAmmonia = read.tanExcretedKg[i] * yard * Math.min(1, read.yardAmmoniaTanFraction[i] * warmth);
      const packLoss = yardAmmonia * toPack;
      const slurryLoss = yardAmmonia - packLoss;

      write.paddockShare[i] = paddock;
      write.slurryShare[i] = slurry;
      write.packShare[i] = pack;
      write.yardAmmoniaKg[i] = yardAmmonia;
      write.slatsTanKg[i] = read.tanExcretedKg[i] * read.slatsShare[i] * day;

      write.paddockTanInKg[i] = read.tanExcretedKg[i] * paddock;
      write.slurryTanInKg[i] = read.tanExcretedKg[i] * slurry - slurryLoss;
      write.packTanInKg[i] = read.tanExcretedKg[i] * pack - packLoss;

      const nitrogen = read.nitrogenExcretedKg[i] + read.nitrogenWastedKg[i];
      write.paddockNitrogenInKg[i] = nitrogen * paddock;
      write.slurryNitrogenInKg[i] = nitrogen * slurry - slurryLoss;
      write.packNitrogenInKg[i] = nitrogen * pack - packLoss + read.nitrogenMaterialKg[i];

      const phosphorus = read.phosphorusExcretedKg[i] + read.phosphorusWastedKg[i];
      write.paddockPhosphorusInKg[i] = phosphorus * paddock;
      write.slurryPhosphorusInKg[i] = phosphorus * slurry;
      write.packPhosphorusInKg[i] = phosphorus * pack + read.phosphorusMaterialKg[i];

      const potassium = read.potassiumExcretedKg[i] + read.potassiumWastedKg[i];
      write.paddockPotassiumInKg[i] = potassium * paddock;
      write.slurryPotassiumInKg[i] = potassium * slurry;
      write.packPotassiumInKg[i] = potassium * pack + read.potassiumMaterialKg[i];

      const carbon = read.carbonExcretedKg[i] + read.carbonWastedKg[i];
      write.paddockCarbonInKg[i] = carbon * paddock;
      write.slurryCarbonInKg[i] = carbon * slurry;
      write.packCarbonInKg[i] = carbon * pack + read.carbonMaterialKg[i];

      const dry = read.dryMatterExcretedKg[i] + read.dryMatterWastedKg[i];
      write.paddockDryMatterInKg[i] = dry * paddock;
      write.slurryDryMatterInKg[i] = dry * slurry;
      write.packDryMatterInKg[i] = dry * pack + read.dryMatterMaterialKg[i];

      const water = read.waterExcretedKg[i] + read.waterWastedKg[i];
      write.paddockWaterInKg[i] = water * paddock;
      write.slurryWaterInKg[i] = water * slurry;
      write.packWaterInKg[i] = water * pack + read.waterMaterialKg[i];

      write.packDryMatterExcretaKg[i] = read.dryMatterExcretedKg[i] * pack;
      write.packNitrogenWastedKg[i] = read.nitrogenWastedKg[i] * pack;
      write.packDryMatterWastedKg[i] = read.dryMatterWastedKg[i] * pack;
    }
  },
});

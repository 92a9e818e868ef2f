/** Dung, urine and trampled feed on the paddock → gases, wash-off, leaching, what stays; sward lost to treading. */
import { temperatureFactor } from '../slurry/ammonia.ts';
import { defineStage, type Quantity, WEEKS, winterDaysInWeek } from '../stage.ts';
import { FIELD_READS, FIELD_TRACKS, leachedFromWeekKg } from './fieldNitrogen.ts';
import { coveredHa, M2_PER_HA } from './patches.ts';
import { reseedFraction, treadingLossFraction } from './treading.ts';
import { washedFraction } from './washOff.ts';

const AMMONIA = [
  'paddockTanInKg', 'winterDays', 'paddockAmmoniaTanFraction', 'ammoniaSlopePerC', 'ammoniaReferenceC',
  'frozenAmmoniaFactor', 'thawAmmoniaFraction', 'weekTemperatureC', 'weekFrozenDays',
] as const; // biome-ignore format: one list
const WASH = [
  'weekRunoffMm', 'weekTroddenRunoffMm', 'winterDays', 'growthDay', 'runoffReferenceMm', 'spotExcretaFraction',
] as const; // biome-ignore format: one list
const REACHED = [
  'winterDays', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction', 'livestockUnits', 'paddockShare',
  'urinePatchM2PerUnitDay',
] as const; // biome-ignore format: one list
const UPTAKE = [
  'winterUptakeMildKgPerHa', 'winterUptakeFrozenKgPerHa', 'frozenDays', 'winterDays', 'spotExcretaFraction',
  'spotReachedHa', 'restReachedHa',
] as const; // biome-ignore format: one list
const TREADING = [
  'livestockUnits', 'paddockShare', 'wetDays', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction',
  'treadingLossPerHundredCowDays', 'treadingLossLimit',
] as const; // biome-ignore format: one list

const kg = (
  label: string,
  formula: string,
  from: readonly string[],
  source?: readonly string[],
): Quantity => ({
  label,
  unit: 'kg',
  formula,
  from,
  route: 'paddock',
  ...(source ? { source } : {}),
});

const deposits = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);

export const paddockStage = defineStage({
  name: 'paddock',
  about:
    'Follows what falls on the wintering paddock week by week until grass grows, and the ground under the hooves.',
  reads: [
    'weatherIndex', 'winterDays', 'paddockHa', 'livestockUnits', 'paddockShare', 'wetDays', 'frozenDays', 'paddockTanInKg',
    'paddockNitrogenInKg', 'paddockPhosphorusInKg', 'paddockPotassiumInKg', 'paddockCarbonInKg',
    'paddockAmmoniaTanFraction', 'ammoniaSlopePerC', 'ammoniaReferenceC', 'frozenAmmoniaFactor', 'thawAmmoniaFraction',
    'paddockNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction', 'runoffNitrogenFraction',
    'runoffPhosphorusFraction', 'runoffPotassiumFraction', 'runoffReferenceMm', 'winterUptakeMildKgPerHa',
    'winterUptakeFrozenKgPerHa', 'urinePatchM2PerUnitDay', 'spotExcretaFraction', 'spotAreaFraction', 'reseedFraction', 'lowRiskUnitsPerHa',
    'treadingLossPerHundredCowDays', 'treadingLossLimit', 'reseedLossFrom', 'paddockYieldTonnesPerHa', ...FIELD_READS,
  ], // biome-ignore format: one list
  readsTracks: ['weekRunoffMm', 'weekTroddenRunoffMm', ...FIELD_TRACKS],
  makes: {
    paddockAmmoniaKg: kg(
      'ammonia from the paddock (N)',
      'TAN dropped evenly over the winter × share lost at the reference temperature × e^(slope × (week temperature − reference)); on frozen ground less, and part of the rest when it thaws',
      AMMONIA,
      ['emep2019', 'lithuania2013'],
    ),
    paddockNitrousKg: kg(
      'nitrous oxide from the paddock (N)',
      'nitrogen dropped × share, at most what the ammonia left of the TAN',
      [
        'paddockNitrogenInKg',
        'paddockTanInKg',
        'paddockAmmoniaKg',
        'paddockNitrousFraction',
        'soilDinitrogenPerNitrous',
        'soilNitricFraction',
      ],
      ['ipcc2019'],
    ),
    paddockDinitrogenKg: kg(
      'nitrogen gas and nitric oxide from the paddock (N)',
      'nitrous oxide × nitrogen gas for each kg of it + nitrogen dropped × share of nitric oxide, at most what the ammonia left of the TAN',
      [
        'paddockNitrogenInKg',
        'paddockTanInKg',
        'paddockAmmoniaKg',
        'paddockNitrousFraction',
        'soilDinitrogenPerNitrous',
        'soilNitricFraction',
      ],
      ['ipcc2019', 'emep2019d'],
    ),
    paddockRunoffKg: kg(
      'nitrogen washed off the paddock',
      'nitrogen dropped × (1 − e^(−share × run-off ÷ reference run-off)), at most the organic nitrogen; run-off counts by the share dropped before it, and round the feeding places it is that of trodden ground',
      ['paddockNitrogenInKg', 'paddockTanInKg', 'runoffNitrogenFraction', ...WASH],
      ['salomon2015'],
    ),
    paddockLeachedKg: kg(
      'nitrate leached below the paddock (N)',
      'each week part of the ammonium nitrifies; of that nitrate the Burns share of the drainage still to come leaves the root zone, less what the sward under urine patches takes up in winter and, by warmth, once it grows',
      [
        'paddockTanInKg', 'paddockAmmoniaKg', 'paddockNitrousKg', 'paddockDinitrogenKg', ...FIELD_READS, ...FIELD_TRACKS,
        ...UPTAKE, ...AMMONIA,
      ], // biome-ignore format: one list
      ['burns1975'],
    ),
    paddockNitrogenKeptKg: kg(
      'nitrogen left in paddock and sward',
      'nitrogen dropped − ammonia − nitrous oxide − nitrogen gas − washed off − leached',
      [
        'paddockNitrogenInKg', 'paddockAmmoniaKg', 'paddockNitrousKg', 'paddockDinitrogenKg', 'paddockRunoffKg',
        'paddockLeachedKg',
      ], // biome-ignore format: one list
    ),
    paddockMineralKg: kg(
      'of it mineral nitrogen when grass grows',
      'TAN dropped − ammonia − nitrous oxide − nitrogen gas − leached',
      ['paddockTanInKg', 'paddockAmmoniaKg', 'paddockNitrousKg', 'paddockDinitrogenKg', 'paddockLeachedKg'],
    ),
    paddockPhosphorusLostKg: kg(
      'phosphorus washed off the paddock',
      'phosphorus dropped × (1 − e^(−share × run-off ÷ reference run-off))',
      ['paddockPhosphorusInKg', 'runoffPhosphorusFraction', ...WASH],
      ['salomon2015'],
    ),
    paddockPotassiumLostKg: kg(
      'potassium washed off the paddock',
      'potassium dropped × (1 − e^(−share × run-off ÷ reference run-off))',
      ['paddockPotassiumInKg', 'runoffPotassiumFraction', ...WASH],
    ),
    paddockPhosphorusKeptKg: kg('phosphorus left on the paddock', 'phosphorus dropped − washed off', [
      'paddockPhosphorusInKg',
      'paddockPhosphorusLostKg',
    ]),
    paddockPotassiumKeptKg: kg('potassium left on the paddock', 'potassium dropped − washed off', [
      'paddockPotassiumInKg',
      'paddockPotassiumLostKg',
    ]),
    paddockCarbonKeptKg: kg(
      'carbon dropped on the paddock',
      'carbon of dung, urine and wasted feed; nothing taken off for rotting',
      ['paddockCarbonInKg'],
    ),
    nitrogenLoadKgPerHa: {
      label: 'nitrogen dropped a hectare',
      unit: 'kg/ha',
      formula: 'nitrogen dropped ÷ paddock',
      from: ['paddockNitrogenInKg', 'paddockHa'],
      route: 'paddock',
    },
    spotLoadKgPerHa: {
      label: 'nitrogen dropped a hectare of feeding places',
      unit: 'kg/ha',
      formula: 'nitrogen dropped × share round the feeding places ÷ (paddock × their share of it)',
      from: ['paddockNitrogenInKg', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
      source: ['salomon2015'],
      route: 'paddock',
    },
    spotReachedHa: {
      label: 'ground round the feeding places that urine reaches',
      unit: 'ha',
      formula: 'their ground × (1 − e^(−urine patches there ÷ their ground)): patches fall at random',
      from: REACHED,
      source: ['haynesWilliams1993'],
      route: 'paddock',
    },
    restReachedHa: {
      label: 'ground of the rest of the paddock that urine reaches',
      unit: 'ha',
      formula: 'its ground × (1 − e^(−urine patches there ÷ its ground)): patches fall at random',
      from: REACHED,
      source: ['haynesWilliams1993'],
      route: 'paddock',
    },
    grassLostTonnes: {
      label: 'grass lost to treading (dry matter)',
      unit: 't',
      formula:
        'yield × area × share lost, feeding places and the rest apart: loss for 100 wet cow-days a hectare × wet cow-days, at most the limit (our own rule)',
      from: [...TREADING, 'paddockYieldTonnesPerHa'],
      route: 'paddock',
    },
    reseedHa: {
      label: 'ground to be sown again',
      unit: 'ha',
      formula:
        'round feeders and gateways: their share of the paddock, less at a stocking the sward survives; and ground that lost more growth than the reseeding line (our own rule)',
      from: [...TREADING, 'reseedFraction', 'lowRiskUnitsPerHa', 'reseedLossFrom'],
      route: 'paddock',
    },
  },
  tracks: {
    weekPaddockNitrateLeachedKg: {
      label: 'nitrate formed this week that will leach (N)',
      unit: 'kg',
      formula: 'ammonium nitrified in the week × Burns share of the drainage still to come',
      from: ['paddockLeachedKg'],
      route: 'paddock',
    },
  },
  run({ count, read, readTrack, write, track, weather }) {
    const results = Object.values(write);
    const weekly = Object.values(track);
    for (let i = 0; i < count; i++) {
      if (
        read.paddockShare[i] === 0 &&
        read.paddockNitrogenInKg[i] === 0 &&
        read.paddockPhosphorusInKg[i] === 0 &&
        read.paddockPotassiumInKg[i] === 0 &&
        read.paddockCarbonInKg[i] === 0
      ) {
        // Nobody out there and nothing dropped: all of it is 0, and the weeks need not be walked.
        for (const result of results) result[i] = 0;
        for (const series of weekly) series.fill(0, i * WEEKS, (i + 1) * WEEKS);
        continue;
      }
      const at = i * WEEKS;
      const days = read.winterDays[i];
      const weatherDays = weather[read.weatherIndex[i]].days;
      const nitrogen = read.paddockNitrogenInKg[i];
      const tan = Math.min(read.paddockTanInKg[i], nitrogen);
      const phosphorus = read.paddockPhosphorusInKg[i];
      const potassium = read.paddockPotassiumInKg[i];
      const perDay = days > 0 ? 1 / days : 0;
      const hectares = read.paddockHa[i];
      const spotShare = read.spotExcretaFraction[i];
      const spotArea = read.spotAreaFraction[i];

      // Ammonia week by week. What frost holds back leaves, in part, in proportion to the thawed days that follow.
      const reference = read.paddockAmmoniaTanFraction[i];
      const frozenFactor = read.frozenAmmoniaFactor[i];
      const thawFraction = read.thawAmmoniaFraction[i];
      const lastWeek = Math.max(days, read.growthDay[i]) / 7;
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
        const runoff = readTrack.weekRunoffMm[at + w];
        const part = winterDaysInWeek(w, days) * perDay;
        const deposit = tan * part;
        const frozen = readTrack.weekFrozenDays[at + w] / daysInWeek;
        let lost = 0;
        let holding = 0;
        if (deposit > 0) {
          const factor =
            reference *
            temperatureFactor(
              readTrack.weekTemperatureC[at + w],
              read.ammoniaSlopePerC[i],
              read.ammoniaReferenceC[i],
            );
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
          washing +=
            (runoff + spotShare * (readTrack.weekTroddenRunoffMm[at + w] - runoff)) * (dropped + part / 2);
        dropped += part;
      }
      const afterAmmonia = tan - ammonia;

      const nitrousAsked = nitrogen * read.paddockNitrousFraction[i];
      const dinitrogenAsked =
        nitrousAsked * read.soilDinitrogenPerNitrous[i] + nitrogen * read.soilNitricFraction[i];
      const asked = nitrousAsked + dinitrogenAsked;
      const limit = asked > afterAmmonia ? afterAmmonia / asked : 1;
      const nitrous = nitrousAsked * limit;
      const dinitrogen = dinitrogenAsked * limit;
      const mineral = afterAmmonia - nitrous - dinitrogen;

      // Ammonium lies in urine patches. Only the sward that reaches a patch can take it up, so crowding wastes it.
      const frost = days > 0 ? Math.min(1, read.frozenDays[i] / days) : 0;
      const uptakePerHa =
        read.winterUptakeMildKgPerHa[i] * (1 - frost) + read.winterUptakeFrozenKgPerHa[i] * frost;
      const patchHa =
        (read.livestockUnits[i] * read.paddockShare[i] * days * read.urinePatchM2PerUnitDay[i]) / M2_PER_HA;
      const spotHa = coveredHa(patchHa * spotShare, hectares * spotArea);
      const restHa = coveredHa(patchHa * (1 - spotShare), hectares * (1 - spotArea));
      const uptake =
        Math.min(mineral * spotShare, uptakePerHa * spotHa) +
        Math.min(mineral * (1 - spotShare), uptakePerHa * restHa);
      const open = afterAmmonia > 0 ? Math.max(0, mineral - uptake) / afterAmmonia : 0;
      const pool = spotHa + restHa > 0 ? (mineral - uptake) / (spotHa + restHa) : 0;
      const leached =
        tan > 0
          ? open * leachedFromWeekKg(i, 0, WEEKS, deposits, pool, weatherDays, read, readTrack, leachedByWeek)
          : 0;
      for (let w = 0; w < WEEKS; w++)
        track.weekPaddockNitrateLeachedKg[at + w] = tan > 0 ? open * leachedByWeek[w] : 0;

      const washReference = read.runoffReferenceMm[i];
      const runoffN = Math.min(
        nitrogen - tan,
        nitrogen * washedFraction(washing, read.runoffNitrogenFraction[i], washReference),
      );
      const lostP = phosphorus * washedFraction(washing, read.runoffPhosphorusFraction[i], washReference);
      const lostK = potassium * washedFraction(washing, read.runoffPotassiumFraction[i], washReference);

      write.paddockAmmoniaKg[i] = ammonia;
      write.paddockNitrousKg[i] = nitrous;
      write.paddockDinitrogenKg[i] = dinitrogen;
      write.paddockRunoffKg[i] = runoffN;
      write.paddockLeachedKg[i] = leached;
      write.paddockNitrogenKeptKg[i] = nitrogen - ammonia - nitrous - dinitrogen - runoffN - leached;
      write.paddockMineralKg[i] = mineral - leached;
      write.paddockPhosphorusLostKg[i] = lostP;
      write.paddockPotassiumLostKg[i] = lostK;
      write.paddockPhosphorusKeptKg[i] = phosphorus - lostP;
      write.paddockPotassiumKeptKg[i] = potassium - lostK;
      write.paddockCarbonKeptKg[i] = read.paddockCarbonInKg[i];
      write.nitrogenLoadKgPerHa[i] = hectares > 0 ? nitrogen / hectares : 0;
      write.spotLoadKgPerHa[i] =
        hectares > 0 && spotArea > 0 ? (nitrogen * spotShare) / (hectares * spotArea) : 0;

      const unitsPerHa = hectares > 0 ? (read.livestockUnits[i] * read.paddockShare[i]) / hectares : 0;
      const cowDays = unitsPerHa * read.wetDays[i];
      const perHundred = read.treadingLossPerHundredCowDays[i];
      const lossLimit = read.treadingLossLimit[i];
      const spotLoss =
        spotArea > 0 ? treadingLossFraction((cowDays * spotShare) / spotArea, perHundred, lossLimit) : 0;
      const restLoss =
        spotArea < 1
          ? treadingLossFraction((cowDays * (1 - spotShare)) / (1 - spotArea), perHundred, lossLimit)
          : 0;
      write.spotReachedHa[i] = spotHa;
      write.restReachedHa[i] = restHa;
      write.grassLostTonnes[i] =
        read.paddockYieldTonnesPerHa[i] * hectares * (spotArea * spotLoss + (1 - spotArea) * restLoss);
      const from = read.reseedLossFrom[i];
      const ruined =
        spotArea * reseedFraction(spotLoss, from, lossLimit) +
        (1 - spotArea) * reseedFraction(restLoss, from, lossLimit);
      const lowRisk = read.lowRiskUnitsPerHa[i];
      const gateways = read.reseedFraction[i] * (lowRisk > 0 ? Math.min(1, unitsPerHa / lowRisk) : 0);
      write.reseedHa[i] = hectares * Math.min(1, Math.max(gateways, ruined));
    }
  },
});

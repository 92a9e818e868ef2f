/**
 * The heap from the day it is made: how warm it is, what rots, what rain falls on it. Steps of seven days from the day
 * it is made, in the air and rain of the week of the year each begins in; after a year the same weeks come again.
 *
 * Carbon: the aired share rots at Haug's rate for the temperature of the heap, the rest at a fraction of it, save what
 * warm air rising through a loose heap reaches while it is hot; each turning mixes the two anew. Warmth: a heap heats where it makes more heat than it loses at every temperature (form
 * one), or where the air is above a threshold (form two); it then stands at its hot temperature for as many days as
 * such heaps were seen to stay hot, more with each turning; before and after it rests a little above the air.
 */
import { exponential } from '../../units/exponential.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week } from '../series.ts';
import { rateByTemperature } from './haug.ts';
import { heatNumber, litShare, respirationMgPerGDay, restingRiseC, warmStart } from './heapRates.ts';

const STEP_DAYS = 7;
/** Weeks of a year that have seven days; the 53rd week has one or two. */
const YEAR_WEEKS = WEEKS - 1;

const LIES = ['heapMade', 'compostDays', 'heapDay'] as const;
const TURNED = [...LIES, 'heapTurns', 'turnIntervalDays'] as const;
const HOT = [
  ...TURNED, 'weekTemperatureC', 'heapHeatPerLossC', 'heapTurnedHeatFactor', 'heapHeatingSpread', 'packTemperatureC',
  'heapHeatingForm', 'heapLightsFromC', 'heapHotDaysStill', 'heapHotDaysPerTurn', 'heapHotDaysMost', 'compostCompacted',
  'heapCompactedHotFactor',
] as const; // biome-ignore format: one list
const HEAT = [
  ...HOT, 'heapHotC', 'heapRatePerDay', 'heapSlowFactor', 'heapAirShare', 'heapAirlessFactor', 'heapDraughtShare',
] as const; // biome-ignore format: one list

const STABLE = [
  'heapDegradableCarbonKg', 'heapDryMatterInKg', 'heapAshInKg', 'heapMatterPerCarbonKgPerKg', 'stableRatePerDay',
  'stableMgPerGDay', 'readyAboveAirC', 'readyAfterTurnDays',
] as const; // biome-ignore format: one list

const inHeap = { when: 'packShare' } as const;

export const heapWarmth = walk({
  name: 'heap by week',
  about: 'Temperature of the heap, what rots in it, and the rain on it, from the day it is made.',
  reads: [...HEAT, 'weekRainMm', 'heapAmmoniaSlopePerC', 'heapAmmoniaReferenceC', ...STABLE],
  makes: {
    heapRottedFraction: {
      ...inHeap,
      label: 'share of the carbon that can rot which the heap has lost',
      unit: 'fraction',
      formula:
        'step by step: aired share × (1 − e^(−rate × days)) + the rest at a fraction of that rate, nearer to it for the share that rising warm air reaches on hot days, mixed anew at each turning',
      from: HEAT,
      source: ['haug1993', 'thomsen2000', 'sommerDahl1999', 'haoChangLarney2004'],
    },
    heapPeakC: {
      ...inHeap,
      label: 'heap at its warmest',
      unit: '°C',
      formula: 'highest of the temperatures of the heap, mean of its mass, while it lies',
      from: HEAT,
    },
    heapHotDays: {
      ...inHeap,
      label: 'days the heap is hot',
      unit: 'd',
      formula: 'days after it lit × share that lit, at most as many as such heaps stay hot',
      from: HOT,
      source: ['haoChangLarney2004'],
    },
    heapAirC: {
      ...inHeap,
      label: 'air while the heap lies',
      unit: '°C',
      formula: 'mean of the weeks it lies',
      from: [...LIES, 'weekTemperatureC'],
    },
    heapRainMm: {
      ...inHeap,
      label: 'rain on the heap',
      unit: 'mm',
      formula: 'rain and snow from the day it is made until it is spread',
      from: [...LIES, 'weekRainMm'],
    },
    heapAmmoniaDays: {
      ...inHeap,
      label: 'days of ammonia at 10 °C that the heap stands for',
      unit: 'd',
      formula: 'days × e^(slope × (temperature of the heap − reference)), summed',
      from: [...HEAT, 'heapAmmoniaSlopePerC', 'heapAmmoniaReferenceC'],
    },
    compostStableDays: {
      ...inHeap,
      label: 'days until the heap is stable and has cooled',
      unit: 'd',
      formula:
        'first step in which it would give off less carbon dioxide than stable compost, is no warmer than a margin above the air, and was turned long enough ago; 0 where it does not come to that before it is spread',
      from: [...HEAT, ...STABLE],
      source: ['tmecc'],
    },
    weekHeapTemperatureC: week('temperature of the heap', '°C', 'mean of its mass, in the weeks it lies', {
      from: HEAT,
      when: 'packShare',
    }),
  },
  // Long: one walk through the weeks the heap lies; rotting, warmth and turning hang on each other.
  run({ count, read, write, wants }) {
    const { weekTemperatureC, weekRainMm } = read;
    const byWeek = wants('weekHeapTemperatureC') ? write.weekHeapTemperatureC : null;
    for (let i = 0; i < count; i++) {
      const row = i * WEEKS;
      byWeek?.fill(Number.NaN, row, row + WEEKS);
      const lies = read.heapMade[i] > 0 ? read.compostDays[i] : 0;
      const turns = read.heapTurns[i];
      const everyDays = Math.min(read.turnIntervalDays[i], lies / (turns + 1));
      const rate = read.heapRatePerDay[i] * read.heapSlowFactor[i];
      const air = read.heapAirShare[i];
      const airless = read.heapAirlessFactor[i];
      const draughty = read.heapDraughtShare[i] * (1 - airless);
      const perLoss = read.heapHeatPerLossC[i];
      const perLossTurned = perLoss * read.heapTurnedHeatFactor[i];
      const spread = read.heapHeatingSpread[i];
      const form = read.heapHeatingForm[i];
      const lightsFromC = read.heapLightsFromC[i];
      const hotC = read.heapHotC[i];
      const hotDaysMost = read.heapHotDaysMost[i];
      const hotDaysStill = read.heapHotDaysStill[i];
      const hotDaysPerTurn = read.heapHotDaysPerTurn[i];
      const pressed = 1 + read.compostCompacted[i] * (read.heapCompactedHotFactor[i] - 1);
      const slope = read.heapAmmoniaSlopePerC[i];
      const referenceC = read.heapAmmoniaReferenceC[i];
      const readyAfterDays = read.readyAfterTurnDays[i];
      const readyAboveC = read.readyAboveAirC[i];
      const carbon = read.heapDegradableCarbonKg[i];
      const organic = read.heapDryMatterInKg[i] - read.heapAshInKg[i];

      let aired = air;
      let rest = 1 - air;
      let lit = 0;
      let hotDays = 0;
      let turned = 0;
      let lastTurn = 0;
      let peak = 0;
      let airSum = 0;
      let rain = 0;
      let ammoniaDays = 0;
      let stable = 0;
      let airC = 0;
      const madeWeek = Math.floor(read.heapDay[i] / STEP_DAYS);
      let weekOfYear = (((madeWeek % YEAR_WEEKS) + YEAR_WEEKS) % YEAR_WEEKS) | 0;
      for (let step = 0; step * STEP_DAYS < lies; step++) {
        const day = step * STEP_DAYS;
        const days = Math.min(STEP_DAYS, lies - day);
        const at = row + weekOfYear;
        weekOfYear = weekOfYear + 1 === YEAR_WEEKS ? 0 : weekOfYear + 1;
        // Weather that ends before the heap does goes on as it was last.
        const known = weekTemperatureC[at];
        if (!Number.isNaN(known)) airC = known;
        const fell = weekRainMm[at];
        if (turned < turns && day > 0 && day + STEP_DAYS / 2 >= (turned + 1) * everyDays) {
          turned = Math.min(turns, Math.max(turned + 1, Math.floor((day + STEP_DAYS / 2) / everyDays)));
          lastTurn = day;
          const left = aired + rest;
          aired = air * left;
          rest = left - aired;
        }
        // Turning lets air in and has the better chance to heat, and so has a bed cleaned out warm.
        const fresh = heatNumber(turned > 0 ? perLossTurned : perLoss, airC);
        if (lit < 1) {
          const started = day === 0 ? fresh * warmStart(Math.max(0, read.packTemperatureC[i] - airC)) : fresh;
          const litNow = litShare(started, spread);
          lit = Math.max(lit, (1 - form) * litNow + form * (airC >= lightsFromC ? 1 : 0));
        }
        const most = Math.min(hotDaysMost, hotDaysStill + hotDaysPerTurn * turned) * pressed;
        const hot = Math.max(0, Math.min(days * lit, most - hotDays));
        hotDays += hot;
        const restingC = airC + restingRiseC((fresh * aired) / air);
        const heapC = restingC + (hot / days) * Math.max(0, hotC - restingC);

        const rots = rate * rateByTemperature(heapC) * days;
        aired *= exponential(-rots);
        rest *= exponential(-(airless + (draughty * hot) / days) * rots);
        if (heapC > peak || day === 0) peak = heapC;
        airSum += airC * days;
        if (fell > 0) rain += (fell * days) / STEP_DAYS;
        ammoniaDays += days * exponential(slope * (heapC - referenceC));
        if (
          stable === 0 &&
          turned >= turns &&
          (turns === 0 || day + days - lastTurn >= readyAfterDays) &&
          heapC < airC + readyAboveC
        ) {
          const left = carbon * (aired + rest);
          const organicLeft = organic - read.heapMatterPerCarbonKgPerKg[i] * (carbon - left);
          if (
            organicLeft > 0 &&
            respirationMgPerGDay(read.stableRatePerDay[i], left / organicLeft) < read.stableMgPerGDay[i]
          )
            stable = day + days;
        }
        const week = madeWeek + step;
        if (byWeek && week >= 0 && week < WEEKS) byWeek[row + week] = heapC;
      }
      write.heapRottedFraction[i] = lies > 0 ? 1 - aired - rest : 0;
      write.heapPeakC[i] = peak;
      write.heapHotDays[i] = hotDays;
      write.heapAirC[i] = lies > 0 ? airSum / lies : 0;
      write.heapRainMm[i] = rain;
      write.heapAmmoniaDays[i] = ammoniaDays;
      write.compostStableDays[i] = stable;
    }
  },
});

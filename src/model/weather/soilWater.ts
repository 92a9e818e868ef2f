/** Rain and temperature by day → snow, run-off, evapotranspiration, soil water and drainage; frozen and wet days. */
import { walk } from '../engine/walk.ts';
import { DAYS, day, WEEKS, week } from '../series.ts';
import { stressPerMm, takenMm } from './bucket.ts';
import { retentionMm, runoffMm } from './curveNumber.ts';
import { seasonOf } from './season.ts';
import { meltMm, snowfallMm } from './snow.ts';

const RAIN = ['@weather', 'weatherIndex', 'rainFactor'] as const;
const SNOW = [...RAIN, 'snowThresholdC', 'meltThresholdC', 'meltFactorMmPerCDay'] as const;
const FROST = ['@weather', 'weatherIndex', 'groundResponsePerDay', 'frozenGroundBelowC'] as const;
const GROUND = [...SNOW, 'groundResponsePerDay', 'frozenGroundBelowC'] as const;
const SOIL = [
  ...GROUND, 'curveNumber', 'curveNumberFrozen', 'hargreavesFactor', 'grassCropFactor', 'snowEvaporationFraction',
  'readilyAvailableFraction', 'startSoilWaterFraction', 'fieldCapacityM3PerM3', 'wiltingPointM3PerM3', 'rootDepthMm',
  'drainageRatePerDay',
] as const; // biome-ignore format: one list
const WET = [...SOIL, 'wetMarginMm', 'snowPoachingLimitMm'] as const;

const words = {
  runoff: 'curve number of the soil, or of frozen ground, applied to rain and melt day by day',
  taken: 'Hargreaves × winter factor of grass, less as the soil dries or snow lies',
  drained: 'each day the draining share of the water above field capacity',
  wet: 'days not frozen, soil above field capacity by the margin, no snow that carries a hoof',
  frozen: 'days whose lagged air temperature stays below that of frozen ground',
};

export const soilWater = walk({
  name: 'soil water',
  about: 'A daily water balance of the root zone through the winter and on to the end of the weather year.',
  reads: [...WET, 'winterDays', 'growthDay', 'curveNumberTrodden'],
  makes: {
    snowfallMm: {
      label: 'of it snow',
      unit: 'mm',
      formula: 'precipitation on days at or below the snow threshold, as water',
      from: [...RAIN, 'snowThresholdC', 'winterDays'],
      source: ['stationSnow2023'],
    },
    runoffMm: {
      label: 'surface run-off over the winter',
      unit: 'mm',
      formula: words.runoff,
      from: [...GROUND, 'curveNumber', 'curveNumberFrozen', 'winterDays'],
      source: ['scsTr55'],
    },
    evapotranspirationMm: {
      label: 'evapotranspiration over the winter',
      unit: 'mm',
      formula: words.taken,
      from: [...SOIL, 'winterDays'],
      source: ['fao56'],
    },
    drainageWinterMm: {
      label: 'drainage over the winter',
      unit: 'mm',
      formula: words.drained,
      from: [...SOIL, 'winterDays'],
      source: ['fao56'],
    },
    drainageMm: {
      label: 'drainage until grass grows',
      unit: 'mm',
      formula: `${words.drained}, from the first winter day to the last or to the start of growth, whichever is later`,
      from: [...SOIL, 'winterDays', 'growthDay'],
      source: ['fao56'],
    },
    soilWaterChangeMm: {
      label: 'water gained by soil and snow over the winter',
      unit: 'mm',
      formula:
        'water in root zone and snow at the end − at the start = rain − run-off − evapotranspiration − drainage',
      from: [...SOIL, 'winterDays'],
    },
    wetDays: { label: 'wet days', unit: 'd', formula: words.wet, from: [...WET, 'winterDays'] },
    frozenDays: {
      label: 'days of frozen ground',
      unit: 'd',
      formula: words.frozen,
      from: [...FROST, 'winterDays'],
    },
    weekRunoffMm: week('surface run-off', 'mm', words.runoff, {
      from: [...GROUND, 'curveNumber', 'curveNumberFrozen'],
    }),
    weekTroddenRunoffMm: week(
      'surface run-off from trodden ground',
      'mm',
      'curve number of badly trodden ground, or of frozen ground, applied to rain and melt day by day',
      { from: [...GROUND, 'curveNumberTrodden', 'curveNumberFrozen'] },
    ),
    weekDrainageMm: week('drainage', 'mm', words.drained, { from: SOIL }),
    weekFrozenDays: week('days of frozen ground', 'd', words.frozen, { from: FROST }),
    weekWetDays: week('wet days', 'd', words.wet, { from: WET }),
    dayRainMm: day('rain and snow', 'mm', 'rain and snow of the weather × rain factor', { from: RAIN }),
    dayTemperatureC: day('mean temperature', '°C', 'daily mean of the weather', {
      from: ['@weather', 'weatherIndex'],
    }),
    daySnowWaterMm: day('water in the snow', 'mm', 'snow fallen − snow melted', { from: SNOW }),
    daySoilWaterMm: day(
      'water in the root zone',
      'mm',
      'day before + rain and melt − run-off − evapotranspiration − drainage',
      { from: SOIL },
    ),
    dayDrainageMm: day('drainage', 'mm', words.drained, { from: SOIL }),
    dayEvapotranspirationMm: day('evapotranspiration', 'mm', words.taken, { from: SOIL }),
  },
  // Long: one pass through the days; cut apart, each day would be walked several times.
  run({ count, read, write, wants, repeats }) {
    const daily = wants('daySoilWaterMm');
    for (let i = 0; i < count; i++) {
      // Scenarios of one draw share their weather; a row like the one above it is copied.
      if (repeats(i)) continue;
      const year = read['@weather'][read.weatherIndex[i]];
      const { days, rainMm, temperatureC, hargreavesTermMm } = year;
      const season = seasonOf(year);
      const winterEnd = Math.max(0, Math.min(days, Math.ceil(read.winterDays[i])));
      const seasonEnd = Math.max(winterEnd, read.growthDay[i]);

      const rainFactor = read.rainFactor[i];
      const snowThreshold = read.snowThresholdC[i];
      const meltThreshold = read.meltThresholdC[i];
      const meltFactor = read.meltFactorMmPerCDay[i];
      const demandFactor = read.hargreavesFactor[i] * read.grassCropFactor[i];
      const underSnow = read.snowEvaporationFraction[i];
      const capacity = read.fieldCapacityM3PerM3[i] * read.rootDepthMm[i];
      const wilting = Math.min(capacity, read.wiltingPointM3PerM3[i] * read.rootDepthMm[i]);
      const perMm = stressPerMm(capacity, wilting, read.readilyAvailableFraction[i]);
      const drainRate = Math.min(1, read.drainageRatePerDay[i]);
      const retention = retentionMm(read.curveNumber[i]);
      const retentionFrozen = retentionMm(read.curveNumberFrozen[i]);
      const retentionTrodden = retentionMm(read.curveNumberTrodden[i]);
      const troddenFrozen = Math.min(retentionTrodden, retentionFrozen);
      const response = read.groundResponsePerDay[i];
      const frozenBelow = read.frozenGroundBelowC[i];
      const wetMargin = read.wetMarginMm[i];
      const snowLimit = read.snowPoachingLimitMm[i];

      // The root zone is followed as water above the wilting point: one subtraction less in each day.
      const most = capacity - wilting;
      const start = read.startSoilWaterFraction[i] * most;
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
        const at = i * WEEKS + week;
        const first = day;
        const end = Math.min(days, first + 7);
        const runoffBefore = runoff;
        const troddenBefore = trodden;
        const drainedBefore = drained;
        const wetBefore = wet;
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
            if (daily) {
              const k = i * DAYS + day;
              write.dayRainMm[k] = fall;
              write.dayTemperatureC[k] = warmth;
              write.daySnowWaterMm[k] = snow;
              write.daySoilWaterMm[k] = soil + wilting;
              write.dayDrainageMm[k] = drain;
              write.dayEvapotranspirationMm[k] = use;
            }
          }
          if (day === winterEnd) {
            write.snowfallMm[i] = snowfall;
            write.runoffMm[i] = runoff;
            write.evapotranspirationMm[i] = taken;
            write.drainageWinterMm[i] = drained;
            write.wetDays[i] = wet;
            write.frozenDays[i] = frozen;
            write.soilWaterChangeMm[i] = soil + snow - start;
          }
          if (day === seasonEnd) write.drainageMm[i] = drained;
        }
        const past = end <= first;
        write.weekRunoffMm[at] = past ? Number.NaN : runoff - runoffBefore;
        write.weekTroddenRunoffMm[at] = past ? Number.NaN : trodden - troddenBefore;
        write.weekDrainageMm[at] = past ? Number.NaN : drained - drainedBefore;
        write.weekWetDays[at] = past ? Number.NaN : wet - wetBefore;
        write.weekFrozenDays[at] = past ? Number.NaN : frozen - frozenBefore;
      }
      if (winterEnd === 0) for (const name of IN_WINTER) write[name][i] = 0;
      if (seasonEnd === 0) write.drainageMm[i] = 0;
      if (daily) for (const name of BY_DAY) write[name].fill(Number.NaN, i * DAYS + days, (i + 1) * DAYS);
    }
  },
});

/** What is read off on the last winter day, and is 0 where a winter has none. */
const IN_WINTER = [
  'snowfallMm', 'runoffMm', 'evapotranspirationMm', 'drainageWinterMm', 'wetDays', 'frozenDays', 'soilWaterChangeMm',
] as const; // biome-ignore format: one list

const BY_DAY = [
  'dayRainMm', 'dayTemperatureC', 'daySnowWaterMm', 'daySoilWaterMm', 'dayDrainageMm', 'dayEvapotranspirationMm',
] as const; // biome-ignore format: one list

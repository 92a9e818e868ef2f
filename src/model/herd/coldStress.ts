/**
 * Cold, wet coat, wind and mud → what they add to an animal's need and take from its appetite. Indoors and outdoors
 * have the same air; what differs is rain on the coat, wind and the ground.
 */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';

const WEATHER = ['@weather', 'weatherIndex', 'winterDays'] as const;
const COAT = ['paddockShare', 'rainFactor', 'wetCoatFraction', 'wetCoatRainMm', 'wetCoatAboveC'] as const;

const coat = walk({
  name: 'coat',
  about: 'Day by day how far the air lies below the lower critical temperature of a dry and of a wet coat.',
  reads: [...WEATHER, ...COAT, 'windChillC', 'lowerCriticalDryC', 'lowerCriticalWetC'],
  makes: {
    wetCoatDays: {
      label: 'days with a wet coat',
      unit: 'd',
      formula:
        'winter days with rain of at least the wetting amount, not colder than the temperature at which it falls as snow that does not wet × share of such a day the coat is wet × share of the time outdoors',
      from: [...WEATHER, ...COAT],
    },
    coldDryC: {
      label: 'cold below the lower critical temperature, dry coat',
      unit: '°C',
      formula:
        'mean over the winter days of lower critical temperature of a dry coat − day’s temperature less the chill of the wind outdoors, where above 0; times the share of the day with a dry coat',
      source: ['ndsuCold', 'webster1970'],
      from: [...WEATHER, ...COAT, 'windChillC', 'lowerCriticalDryC'],
    },
    coldWetC: {
      label: 'cold below the lower critical temperature, wet coat',
      unit: '°C',
      formula:
        'mean over the winter days of lower critical temperature of a wet coat − day’s temperature less the chill of the wind, where above 0; times the share of the day with a wet coat',
      source: ['ndsuCold'],
      from: [...WEATHER, ...COAT, 'windChillC', 'lowerCriticalWetC'],
    },
  },
  run({ count, read, write, repeats }) {
    for (let i = 0; i < count; i++) {
      if (repeats(i)) continue;
      const { days, rainMm, temperatureC } = read['@weather'][read.weatherIndex[i]];
      const end = Math.max(0, Math.min(days, Math.ceil(read.winterDays[i])));
      const outside = read.paddockShare[i];
      const dryLimit = read.lowerCriticalDryC[i];
      const windyLimit = dryLimit + read.windChillC[i];
      const wetLimit = read.lowerCriticalWetC[i] + read.windChillC[i];
      const soaked = outside * read.wetCoatFraction[i];
      // Rain of the file that comes to the wetting amount; none does where it never rains.
      const rainFrom = read.rainFactor[i] > 0 ? read.wetCoatRainMm[i] / read.rainFactor[i] : Infinity;
      const above = read.wetCoatAboveC[i];
      let dry = 0;
      let windy = 0;
      let soakedWindy = 0;
      let wet = 0;
      let wetDays = 0;
      // Animals that are never under a roof, or never outdoors, are spared the days of the other.
      if (outside < 1) for (let d = 0; d < end; d++) dry += Math.max(0, dryLimit - temperatureC[d]);
      if (outside > 0)
        for (let d = 0; d < end; d++) {
          const air = temperatureC[d];
          const below = Math.max(0, windyLimit - air);
          windy += below;
          if (rainMm[d] >= rainFrom && air > above) {
            wetDays++;
            soakedWindy += below;
            wet += Math.max(0, wetLimit - air);
          }
        }
      const perDay = end > 0 ? 1 / end : 0;
      write.wetCoatDays[i] = soaked * wetDays;
      write.coldDryC[i] = ((1 - outside) * dry + outside * windy - soaked * soakedWindy) * perDay;
      write.coldWetC[i] = soaked * wet * perDay;
    }
  },
});

const need = {
  coldNeedFraction: quantity(
    'more need in the cold, by coat',
    'fraction',
    'of maintenance: degrees below the lower critical temperature × need for each degree, dry coat and wet coat, at most the limit; where cold is counted by coat and not by air temperature alone or not at all',
    { source: ['ndsuCold'] },
  ).of(
    [
      'coldDryC', 'coldNeedDryPerC', 'coldWetC', 'coldNeedWetPerC', 'coldNeedLimitFraction', 'coldAirForm',
      'coldNoneForm',
    ], // biome-ignore format: one list
    (i, dryC, dryPerC, wetC, wetPerC, limit, byAir, none) =>
      (1 - none[i]) * (1 - byAir[i]) * Math.min(limit[i], dryC[i] * dryPerC[i] + wetC[i] * wetPerC[i]),
  ),
  coldMaintenanceMjPerKg: quantity(
    'more maintenance in the cold, by air temperature',
    'MJ/d/kg^0.75',
    'need for each degree × degrees the mean of the winter lies below 20 °C, in the field and under a roof alike; where cold is counted so',
    { source: ['ipcc2019', 'nasem2016'] },
  ).of(
    ['winterTemperatureC', 'energyColdMjPerKgC', 'coldAirForm', 'coldNoneForm'],
    (i, temperature, perC, byAir, none) =>
      (1 - none[i]) * byAir[i] * perC[i] * Math.max(0, THERMONEUTRAL_C - temperature[i]),
  ),
  mudShare: quantity(
    'share of the time in deep mud',
    'fraction',
    'share of the time on the paddock × wet days ÷ winter days × share of a wet day that is spent in deep mud at the feed',
  ).of(['paddockShare', 'wetDays', 'winterDays', 'mudTimeFraction'], (i, outside, wet, days, time) =>
    days[i] > 0 ? outside[i] * Math.min(1, wet[i] / days[i]) * time[i] : 0,
  ),
  appetiteFactor: quantity(
    'appetite in the cold and in mud',
    '×',
    '(1 + rise for each degree × degrees the winter, less the chill of the wind outdoors, is colder than the reference) × (1 − share of the time in deep mud × appetite lost in mud)',
    { source: ['nrc1987', 'ohioMud2019'] },
  ).of(
    [
      'winterTemperatureC', 'windChillC', 'paddockShare', 'appetiteRisePerC', 'appetiteReferenceC', 'mudShare',
      'mudAppetiteFraction',
    ], // biome-ignore format: one list
    (i, temperature, chill, outside, perC, reference, mud, lost) =>
      (1 + perC[i] * Math.max(0, reference[i] - temperature[i] + chill[i] * outside[i])) *
      (1 - mud[i] * lost[i]),
  ),
};

/** Equation 10.2 of the IPCC guidelines and the US tables count from here. */
const THERMONEUTRAL_C = 20;

export const coldStress = [coat, need] as const;

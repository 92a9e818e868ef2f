/** The winter as the weather gives it: rain, temperature, and the day grass starts to grow. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week } from '../series.ts';
import { daysToDaylight, growthDayOf, seasonOf } from './season.ts';

const YEAR = ['@weather', 'weatherIndex'] as const;

export const winter = walk({
  name: 'winter',
  about: 'Reads sums and means of a winter off the running sums of its weather.',
  reads: [
    ...YEAR, 'winterDays', 'rainFactor', 'latitudeDeg', 'growthDaylightHours', 'growthRunDays', 'growthBaseC',
  ], // biome-ignore format: one list
  makes: {
    rainMm: {
      label: 'rain and snow over the winter',
      unit: 'mm',
      formula: 'rain and snow of the weather × rain factor',
      from: [...YEAR, 'rainFactor', 'winterDays'],
    },
    winterTemperatureC: {
      label: 'mean temperature of the winter',
      unit: '°C',
      formula: 'mean of the daily means over the winter days',
      from: [...YEAR, 'winterDays'],
    },
    growthDay: {
      label: 'day grass starts to grow, from the first winter day',
      unit: 'd',
      formula:
        'first day after midwinter, once the days are long enough, from which the running mean reaches the growth temperature',
      from: [...YEAR, 'latitudeDeg', 'growthDaylightHours', 'growthRunDays', 'growthBaseC'],
    },
    growthEndDay: {
      label: 'day grass stops growing for want of light, from the first winter day',
      unit: 'd',
      formula: 'as many days before midwinter as there are from it to days long enough, not below 0',
      from: [...YEAR, 'latitudeDeg', 'growthDaylightHours'],
    },
    weekRainMm: week('rain and snow', 'mm', 'rain and snow of the weather × rain factor', {
      from: [...YEAR, 'rainFactor'],
    }),
    weekTemperatureC: week('mean temperature', '°C', 'mean of the daily means', { from: YEAR }),
  },
  run({ count, read, write, repeats }) {
    for (let i = 0; i < count; i++) {
      if (repeats(i)) continue;
      const year = read['@weather'][read.weatherIndex[i]];
      const { days } = year;
      const { rainSum, temperatureSum, midwinterNorth, midwinterSouth } = seasonOf(year);
      const latitude = read.latitudeDeg[i];
      const midwinter = latitude < 0 ? midwinterSouth : midwinterNorth;
      const dark = daysToDaylight(latitude, read.growthDaylightHours[i]);
      const light = midwinter + 1 + dark;
      const winterEnd = Math.max(0, Math.min(days, Math.ceil(read.winterDays[i])));
      write.growthDay[i] = growthDayOf(
        temperatureSum,
        days,
        light,
        read.growthRunDays[i],
        read.growthBaseC[i],
      );
      write.growthEndDay[i] = Math.max(0, Math.min(days, midwinter - dark));
      write.rainMm[i] = read.rainFactor[i] * rainSum[winterEnd];
      write.winterTemperatureC[i] = winterEnd > 0 ? temperatureSum[winterEnd] / winterEnd : 0;
      for (let w = 0; w < WEEKS; w++) {
        const first = Math.min(days, w * 7);
        const end = Math.min(days, first + 7);
        const past = end <= first;
        const at = i * WEEKS + w;
        write.weekRainMm[at] = past ? Number.NaN : read.rainFactor[i] * (rainSum[end] - rainSum[first]);
        write.weekTemperatureC[at] = past
          ? Number.NaN
          : (temperatureSum[end] - temperatureSum[first]) / (end - first);
      }
    }
  },
});

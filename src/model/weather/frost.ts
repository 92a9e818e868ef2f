/** The depth to which the ground of the place freezes: the keeper's, or else from the winters of the weather in use. */
import { walk } from '../engine/walk.ts';
import { designFreezingIndexCD, frostDepthM } from './frostDepth.ts';
import { frostClimate } from './season.ts';

const YEAR = ['@weather', 'weatherIndex'] as const;
const SOIL = [
  'frostSurfaceFactor', 'frostSoilConductivityWPerMK', 'frostSoilDryDensityKgPerM3', 'frostSoilWaterFraction',
] as const; // biome-ignore format: one list

export const frost = walk({
  name: 'frost in the ground',
  about: 'Freezing index and depth of frost from all winters of the weather in use',
  reads: [...YEAR, 'frostDepthGivenM', 'frostReturnYears', ...SOIL],
  makes: {
    designFreezingIndexCD: {
      label: 'freezing index that foundations are laid for',
      unit: '°C·d',
      formula:
        'degree days below freezing of a winter, exceeded once in so many years by the winters of the weather in use (Gumbel)',
      source: ['iso13793'],
      from: [...YEAR, 'frostReturnYears'],
    },
    frostDepthM: {
      label: 'frost depth',
      unit: 'm',
      formula:
        'the depth given in the notebook, or else by the modified Berggren formula from the freezing index, the mean of the year and the ground',
      source: ['ufc313006'],
      from: [...YEAR, 'frostDepthGivenM', 'frostReturnYears', ...SOIL],
    },
  },
  run({ count, read: r, write: w }) {
    for (let i = 0; i < count; i++) {
      const climate = frostClimate(r['@weather'][r.weatherIndex[i]]);
      const index = designFreezingIndexCD(climate, r.frostReturnYears[i]);
      w.designFreezingIndexCD[i] = index;
      const given = r.frostDepthGivenM[i];
      w.frostDepthM[i] = Number.isFinite(given)
        ? given
        : frostDepthM(
            { freezingIndexCD: index, days: climate.days, meanYearC: climate.meanYearC },
            {
              surfaceFactor: r.frostSurfaceFactor[i],
              conductivityWPerMK: r.frostSoilConductivityWPerMK[i],
              dryDensityKgPerM3: r.frostSoilDryDensityKgPerM3[i],
              waterFraction: r.frostSoilWaterFraction[i],
            },
          );
    }
  },
});

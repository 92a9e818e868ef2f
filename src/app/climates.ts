import type { Climate } from '../tables/weatherJoin.ts';

/** The climates that are shipped, and about where they lie: data/weather/README.md. */
export const CLIMATES: readonly Climate[] = [
  { file: 'balticHills.csv', label: 'hills inland of the Baltic', latitudeDeg: 57.8 },
  { file: 'maritimeCoast.csv', label: 'a maritime coast of eastern Canada', latitudeDeg: 45.6 },
  { file: 'atlanticGrassland.csv', label: 'wet grassland near the Atlantic', latitudeDeg: 53.4 },
];

/** Colours and drawn sizes of the section. */
export const LOOK = {
  bed: '#e6cb8b',
  bedEdge: '#8a6a22',
  layer: '#c9a75a',
  range: '#7a5200',
  concrete: '#b8b1a2',
  timber: '#8a5a33',
  sheet: '#4d5d63',
  cow: '#7c3f1d',
  cowFar: '#5b2c12',
  horn: '#e9dfc6',
  loader: '#1f6f9f',
  sun: '#e08a00',
  alarm: '#9b1c1c',
  earth: '#ded5c2',
  slats: '#6f6a5f',
  slurry: '#8a7a4c',
  slurryMark: '#4f4424',
  load: '#3a4a52',
} as const;

/** Thickness of walls, boards, posts and roof as drawn, m: for show, not for building. */
export const THICK = {
  wall: 0.2,
  post: 0.18,
  roof: 0.16,
  board: 0.06,
  floor: 0.15,
  slats: 0.17,
  tank: 0.22,
} as const;
/** Height of a beast's back over the neck rail of a barrier, as drawn, m. */
export const NECK_RAIL_OVER_SILL = 0.8;
export const TROUGH_WIDTH = 0.8;

/** As it stands on dimension lines. */
export const metres = (value: number) => `${value.toFixed(2)} m`;

/** What can kill or is forbidden, said every time. */
import type { CheckRule } from './check.ts';
import { type Context, comparedWith } from './context.ts';
import { say } from './say.ts';

const slattedCows: CheckRule<Context> = {
  id: 'slattedCowsSweden',
  theme: 'caution',
  run: (c) => {
    if (!c.slatted || c.country !== 'SE' || c.bedded) return null;
    const cows = c.herd.filter((g) => g.class === 'sucklerCow').reduce((sum, g) => sum + g.head, 0);
    if (cows === 0) return null;
    return {
      status: 'stop',
      value: cows,
      limit: 0,
      unit: 'head',
      row: c.row('swedenLyingM2SucklerCow'),
      words: `In Sweden cows may not lie on slats: ${say(cows, 0)} cows need a bedded or cubicle lying area, with slats only as feed alley. Slatted lying areas are for insulated houses and young or male cattle on yielding slats. Check the local rule.`,
    };
  },
};

const slurryGas: CheckRule<Context> = {
  id: 'slurryGas',
  theme: 'caution',
  run: (c) => {
    if (!c.slatted) return null;
    const row = c.row('agitationKeepOutMin');
    return {
      status: 'look',
      value: null,
      limit: row.central,
      unit: 'min',
      row,
      words: `Slurry gas kills within breaths. Before mixing: animals out, doors open, a windy day, a second adult outside; keep out ${say(row.central)} minutes after mixing starts and never enter a tank without your own air supply. ${say(c.row('hydrogenSulphideDangerPpm').central)} ppm of hydrogen sulphide is dangerous and numbs the nose.`,
    };
  },
};

const hotPack: CheckRule<Context> = {
  id: 'hotPack',
  theme: 'caution',
  run: (c) => {
    if (!c.bedded) return null;
    const row = c.row('barnAmmoniaLimitPpm');
    return {
      status: 'look',
      value: null,
      limit: row.central,
      unit: 'ppm',
      row,
      words: `Opening a warm bed lets out ammonia, heat and then dust: animals out, doors open, filtered cab, and never stand under the cut face. ${say(row.central)} ppm of ammonia is the limit for animals, ${say(row.high)} for people over a day's work.`,
    };
  },
};

const hotHay: CheckRule<Context> = {
  id: 'hotStack',
  theme: 'caution',
  run: (c) => {
    const stacked =
      c.scenario.farm.feed.some((f) => f.feed === 'hay') ||
      c.scenario.bed.mix.some((m) => m.material.endsWith('Chips') || m.material === 'spoiledHay');
    if (!stacked) return null;
    const row = c.row('hayHeatC');
    return {
      status: 'look',
      value: null,
      limit: row.low,
      unit: '°C',
      row,
      words: `Hay, spoiled hay and green chips heat in the stack: probe them in the first six weeks, daily above ${say(row.low)} °C, and call the fire service before opening a stack above ${say(row.high)} °C. Mouldy bedding and feed dust harm lungs: wear a mask.`,
    };
  },
};

const openBed: CheckRule<Context> = {
  id: 'openBed',
  theme: 'caution',
  run: (c) => {
    const rainKg = c.bedded && !c.roofed ? c.value('bedRainKg') : null;
    const days = c.value('winterDays') ?? 0;
    if (rainKg === null || !(days > 0) || !(c.bedM2 > 0)) return null;
    const row = c.row('checkBedDryingKgPerM2Day');
    const perDay = rainKg / c.bedM2 / days;
    return {
      status: perDay > row.high ? 'stop' : 'look',
      value: perDay,
      limit: row.high,
      unit: 'kg/m²/d',
      row,
      words: `The bed lies open: ${say(rainKg / 1000, 0)} t of rain and snow fall on it in the winter, ${say(perDay)} kg on a square metre a day, where an unstirred bed dries by ${say(row.low)} to ${say(row.high)}. All of it is counted as staying in the bed. In truth what does not dry runs through and carries nitrogen, phosphorus and potassium with it, which is not counted: what is kept stands too high and what drains off is missing. A pad must drain to a store, away from wells and watercourses; ask the authority before building one.`,
    };
  },
};

const shelter: CheckRule<Context> = {
  id: 'outdoorShelter',
  theme: 'caution',
  run: (c) => {
    if (!c.outdoors) return null;
    const compared = comparedWith(c, 'SE');
    const row = c.row('swedenOutdoorHoursPerDay');
    const hours = c.scenario.placement.pastureShare * 24;
    if (hours <= row.central) return null;
    return {
      status: c.scenario.exposure === 'shed' || compared !== '' ? 'look' : 'stop',
      value: hours,
      limit: row.central,
      unit: 'h/d',
      row,
      words: `${compared}${compared === '' ? 'C' : 'c'}attle outdoors ${say(hours, 0)} h a day in the cold season count as kept outdoors and need a shelter with a dry, clean lying place for every animal at once, or a place in a supervised scheme. Check the local rule.`,
      ...(compared === '' ? {} : { foreign: true as const }),
    };
  },
};

export const CAUTION_RULES: readonly CheckRule<Context>[] = [
  slattedCows,
  slurryGas,
  hotPack,
  openBed,
  hotHay,
  shelter,
];

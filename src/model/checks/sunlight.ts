/** Does the low winter sun reach the bed through the open side? */
import { daysBetween } from '../../units/days.ts';
import { eaveEdgeM } from '../works/roof.ts';
import {
  litStrip,
  type SunHours,
  solarNoonMs,
  sunAt,
  sunHoursByMonth,
  verticalShadowAngleDeg,
} from '../works/sun.ts';
import { sayDay } from './bedSeries.ts';
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

/** Darkest day of the winter: the solstice of the hemisphere nearest its middle. */
function darkestDay(c: Context): string {
  const { winter, place } = c.scenario.farm;
  const year = Number(winter.start.slice(0, 4));
  const day = place.latitudeDeg >= 0 ? '12-21' : '06-21';
  const inside = [`${year}-${day}`, `${year + 1}-${day}`].find(
    (iso) => iso >= winter.start && iso <= winter.end,
  );
  return inside ?? winter.start;
}

const noonSun: CheckRule<Context> = {
  id: 'noonSunOnBed',
  theme: 'sun',
  run: (c) => {
    if (!c.bed || !c.roofed) return null;
    const { place } = c.scenario.farm;
    const row = c.row('sunStripFraction');
    const day = darkestDay(c);
    const sun = sunAt(
      solarNoonMs(day, place.latitudeDeg, place.longitudeDeg),
      place.latitudeDeg,
      place.longitudeDeg,
    );
    const week = Math.max(
      0,
      Math.min(c.bed.weeks - 1, Math.floor(daysBetween(c.scenario.farm.winter.start, day) / 7)),
    );
    const depth = c.shed.depthM - c.shed.stanceDepthM;
    const shared = { limit: depth * row.central, unit: 'm', row };
    if (sun.altitudeDeg <= 0)
      return {
        ...shared,
        status: 'stop',
        value: 0,
        words: `Polar night: at ${say(place.latitudeDeg, 1)}° the sun does not rise on ${sayDay(day)}. Count on no sun to dry the bed; give light by lamps.`,
      };
    if (sun.altitudeDeg <= place.horizonDeg)
      return {
        ...shared,
        status: 'look',
        value: 0,
        words: `On ${sayDay(day)} the noon sun stands ${say(sun.altitudeDeg, 1)}° high, behind the ${say(place.horizonDeg, 1)}° of hill or forest: no direct sun. No change of the eave helps.`,
      };
    const strip = litStrip(
      {
        eaveM: eaveEdgeM(c.shed, c.built().roadM),
        overhangM: c.shed.overhangM + c.built().roadM,
        bedM: c.bed.depthM[week],
        wallM: 0,
        depthM: c.shed.depthM,
        bedFromM: c.shed.stanceDepthM,
      },
      verticalShadowAngleDeg(sun, c.shed.openSideAzimuthDeg),
    );
    const lit = strip ? strip.toM - strip.fromM : 0;
    return {
      ...shared,
      status: lit >= depth * row.central ? 'pass' : 'look',
      value: lit,
      words: `On ${sayDay(day)} the noon sun stands ${say(sun.altitudeDeg, 1)}° high and ${strip ? `lights the bed from ${say(strip.fromM, 1)} to ${say(strip.toM, 1)} m behind the open side` : 'does not reach the bed'} (of ${say(c.shed.depthM, 1)} m). It dries and cleans the top; it does not warm the house.`,
    };
  },
};

/** Sun hours of a place depend on nothing that is dragged; the last few are kept. */
const kept = new Map<string, SunHours[]>();

function sunHours(c: Context): SunHours[] {
  const { place, winter } = c.scenario.farm;
  const key = [
    winter.start.slice(0, 4),
    place.latitudeDeg,
    place.longitudeDeg,
    c.shed.openSideAzimuthDeg,
    place.horizonDeg,
  ].join();
  const found = kept.get(key);
  if (found) return found;
  if (kept.size > 50) kept.clear();
  const hours = sunHoursByMonth(
    Number(winter.start.slice(0, 4)),
    place.latitudeDeg,
    place.longitudeDeg,
    c.shed.openSideAzimuthDeg,
    place.horizonDeg,
  );
  kept.set(key, hours);
  return hours;
}

const sunHoursFront: CheckRule<Context> = {
  id: 'sunHours',
  theme: 'sun',
  run: (c) => {
    if (!c.bed || !c.roofed) return null;
    const row = c.row('sunHoursLeast');
    const hours = sunHours(c);
    const month = Number(darkestDay(c).slice(5, 7)) - 1;
    const spring = (month + 3) % 12;
    return {
      status: hours[month].front >= row.central ? 'pass' : 'look',
      value: hours[month].front,
      limit: row.central,
      unit: 'h/d',
      row,
      words: `In the darkest month a clear day gives ${say(hours[month].front, 1)} h of sun that can shine into the open side (${say(hours[month].sky, 1)} h above the horizon line), ${say(hours[spring].front, 1)} h three months later.`,
    };
  },
};

export const SUN_RULES: readonly CheckRule<Context>[] = [noonSun, sunHoursFront];

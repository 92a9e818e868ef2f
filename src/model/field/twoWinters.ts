/**
 * The nitrogen of the paddock, week by week, through its own drainage season, the growth year and the next drainage
 * season. The weather holds one year, so the second season is the same year's again.
 */
import { exponential } from '../../units/exponential.ts';
import type { ReadsOf } from '../engine/columns.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import {
  ammonium,
  beginGrowthYear,
  beginRow,
  DUNG,
  drain,
  mineralKg,
  nitrate,
  nitrify,
  PLACES,
  REST,
  SPOT,
  taken,
  takeUp,
} from './pools.ts';

const NITRIFIED = ['@weather', 'weatherIndex', 'weekNitrifiedFraction'] as const;
const TURNED = [...NITRIFIED, 'growthDay', 'spotExcretaFraction'] as const;
/** What decides how much urine nitrogen stays bound, and how much dung. */
const URINE_FREED = [
  ...TURNED, 'paddockUrineBoundKg', 'sodReleasedFraction', 'urineReleasedFraction', 'spotReseededFraction', 'restReseededFraction',
] as const; // biome-ignore format: one list
const DUNG_FREED = ['winterDays', 'paddockDungNitrogenKg', 'dungMineralisedFraction'] as const;
/** What decides what drains and what grass takes of that, at any place. */
const GROUND = [
  'weekTemperatureC', 'weekFrozenDays', 'weekDrainageMm', 'fieldCapacityM3PerM3', 'rootDepthMm', 'growthEndDay', 'growthBaseC', 'grassUptakeKgPerHaWeekC',
  'winterUptakeKgPerHaDay', 'patchUptakeKgPerHa', 'spotSwardHa', 'restSwardHa',
] as const; // biome-ignore format: one list
const OPEN = [...GROUND, 'weekPaddockOpenKg', 'ammoniumMobileFraction'] as const;
const ORGANIC = 'leachedOrganicKgPerKg';
const URINE = [...URINE_FREED, ...OPEN, ORGANIC] as const;
const LATER = 'dungSecondYearFraction';
const DUNG_ALONE = [
  ...NITRIFIED, 'growthDay', ...DUNG_FREED, LATER, ...GROUND, ORGANIC,
] as const; // biome-ignore format: one list
const STAYS = [...URINE, ...DUNG_FREED, LATER] as const;
const READS = [...STAYS, 'weekPaddockBypassKg'] as const;

const when = 'paddockShare';
const UPTAKE =
  'each week what grows can take, by warmth while there is light and little in mild winter weeks, at most what one growth year can hold and at most the mineral nitrogen there';

/** The year's weeks of one row; no row keeps anything here. */
const nitrified = new Float64Array(WEEKS);
const uptakeKgPerHa = new Float64Array(WEEKS);
const dungFreed = new Float64Array(WEEKS);

export const twoWinters = walk({
  name: 'two winters',
  about:
    'Follows ammonium and nitrate of the paddock through its drainage season, the growth year and the next drainage season.',
  reads: READS,
  makes: {
    paddockLeachedKg: {
      label: 'nitrogen leached below the paddock',
      unit: 'kg',
      formula:
        'urine that ran through + each week the share of the nitrate that its drainage carries below the roots (Burns, in its continuous form), and on sand of some ammonium, until grass grows in the second spring; the second winter is the same weather again',
      source: ['burns1975', 'scotter1993', 'wachendorf2005'],
      when,
    },
    paddockOrganicLeachedKg: {
      label: 'organic nitrogen leached below the paddock',
      unit: 'kg',
      formula:
        'nitrate and ammonium that drainage carries below the roots × dissolved organic nitrogen for each kg of them, out of what urine left bound and out of dung, until grass grows in the second spring',
      source: ['vanKessel2009', 'wachendorf2005'],
      from: STAYS,
      when,
    },
    paddockLaterLeachedKg: {
      label: 'of it in the second winter',
      unit: 'kg',
      formula: 'nitrogen leached from the first day of the second winter on',
      from: STAYS,
      when,
    },
    spotUptakeKg: {
      label: 'nitrogen herbage takes from urine round the feeding places',
      unit: 'kg',
      formula: UPTAKE,
      from: URINE,
      source: ['decau2003', 'saarijarvi2009', 'cowlingLockyer1970'],
      when,
    },
    restUptakeKg: {
      label: 'nitrogen herbage takes from urine on the rest of the paddock',
      unit: 'kg',
      formula: UPTAKE,
      from: URINE,
      source: ['decau2003', 'saarijarvi2009', 'cowlingLockyer1970'],
      when,
    },
    dungUptakeKg: {
      label: 'nitrogen herbage takes from dung',
      unit: 'kg',
      formula: UPTAKE,
      from: DUNG_ALONE,
      source: ['saarijarvi2009', 'cowlingLockyer1970'],
      when,
    },
    paddockSpringMineralKg: {
      label: 'mineral nitrogen of the paddock when grass starts to grow',
      unit: 'kg',
      formula: 'ammonium and nitrate left in the soil by the first spring',
      from: [...TURNED, ...DUNG_FREED, ...OPEN, ORGANIC],
      when,
    },
    paddockNitrogenBoundKg: {
      label: 'nitrogen of the paddock bound in soil, roots and dung',
      unit: 'kg',
      formula:
        'urine nitrogen bound + nitrogen of dung and wasted feed − freed by warmth and, where the sward is killed, at once − organic nitrogen leached',
      from: STAYS,
      when,
    },
    paddockNitrogenAtRiskKg: {
      label: 'mineral nitrogen of the paddock after the second winter',
      unit: 'kg',
      formula: 'ammonium and nitrate left in the soil when grass grows in the second spring',
      from: STAYS,
      when,
    },
    weekPaddockLeachedKg: week(
      'nitrogen leached below the paddock, first year',
      'kg',
      'urine that ran through + share of the nitrate that the drainage of the week carries below the roots',
      { from: [...URINE, ...DUNG_FREED, 'weekPaddockBypassKg'], when },
    ),
  },
  run({ count, read, write, wants }) {
    const { weekPaddockOpenKg, weekPaddockBypassKg } = read;
    const byWeek = wants('weekPaddockLeachedKg') ? write.weekPaddockLeachedKg : null;
    for (let i = 0; i < count; i++) {
      const at = i * WEEKS;
      const urineBound = read.paddockUrineBoundKg[i];
      const ofDung = read.paddockDungNitrogenKg[i];
      state[BOUND] = urineBound;
      state[OF_DUNG] = ofDung;
      state[DRAINED_LATER] = 0;
      state[SPRING] = 0;
      state[ORGANIC_KG] = 0;
      let through = 0;
      let there = urineBound + ofDung;
      for (let w = at; w < at + WEEKS; w++) {
        through += weekPaddockBypassKg[w];
        there += weekPaddockOpenKg[w];
        if (byWeek) byWeek[w] = weekPaddockBypassKg[w];
      }
      beginRow(read.spotSwardHa[i], read.restSwardHa[i]);
      const drained = there !== 0 ? passWeeks(i, read, byWeek) : 0;
      write.paddockLeachedKg[i] = through + drained;
      write.paddockLaterLeachedKg[i] = state[DRAINED_LATER];
      write.paddockOrganicLeachedKg[i] = state[ORGANIC_KG];
      write.paddockSpringMineralKg[i] = state[SPRING];
      write.spotUptakeKg[i] = taken[SPOT];
      write.restUptakeKg[i] = taken[REST];
      write.dungUptakeKg[i] = taken[DUNG];
      write.paddockNitrogenBoundKg[i] = state[BOUND] + state[OF_DUNG];
      write.paddockNitrogenAtRiskKg[i] = mineralKg();
    }
  },
});

/**
 * Nitrogen bound in soil and roots, in dung, mineral in spring, leached in the second winter and leached as organic
 * nitrogen, of the row in hand, kg.
 * Places of one array, since single numbers that functions share are made anew at every step.
 */
const BOUND = 0;
const OF_DUNG = 1;
const SPRING = 2;
const DRAINED_LATER = 3;
const ORGANIC_KG = 4;
const state = new Float64Array(5);

/**
 * Leads the pools of row `i` through the weeks and gives what drained below the roots, kg; adds it to `byWeek`
 * where it left in the first year.
 */
function passWeeks(i: number, read: ReadsOf<(typeof READS)[number]>, byWeek: Float64Array | null): number {
  const { weekPaddockOpenKg, weekDrainageMm } = read;
  const at = i * WEEKS;
  const warmth = prepareWeeks(i, read);
  const growthWeek = Math.min(WEEKS, Math.ceil(read.growthDay[i] / 7));
  const spotShare = read.spotExcretaFraction[i];
  const released = warmth > 0 ? read.urineReleasedFraction[i] / warmth : 0;
  const dungLater = warmth > 0 ? read.dungSecondYearFraction[i] / warmth : 0;
  const mobile = read.ammoniumMobileFraction[i];
  const organicPerKg = read.leachedOrganicKgPerKg[i];
  const heldCm = read.fieldCapacityM3PerM3[i] * (read.rootDepthMm[i] / 10);
  const most = read.patchUptakeKgPerHa[i];
  const dungDropped = state[OF_DUNG];
  let boundKg = state[BOUND];
  let dungKg = dungDropped;
  let laterKg = 0;
  let yearsBound = 0;
  let drained = 0;
  let organicKg = 0;
  // Drainage that the nitrate of urine and of dung has met, as the mean over what formed earlier and later.
  let metCm = 0;
  let metDungCm = 0;
  beginGrowthYear(most);
  for (let k = 0; k < WEEKS + growthWeek; k++) {
    const first = k < WEEKS;
    const w = first ? k : k - WEEKS;
    if (k === growthWeek) {
      state[SPRING] = mineralKg();
      beginGrowthYear(most);
      state[BOUND] = boundKg;
      killSward(i, read);
      boundKg = state[BOUND];
      yearsBound = boundKg;
    }
    const drainedCm = weekDrainageMm[at + w] / 10;
    if (drainedCm > 0) {
      const share = shareBelow(metCm, drainedCm, heldCm);
      let lost = drain(SPOT, DUNG, share, Math.min(1, mobile * share));
      metCm += drainedCm;
      // Organic nitrogen goes along, out of what is bound where it drains.
      const ofBound = Math.min(boundKg, lost * organicPerKg);
      boundKg -= ofBound;
      organicKg += ofBound;
      if (nitrate[DUNG] > 0) {
        const below = drain(DUNG, PLACES, shareBelow(metDungCm, drainedCm, heldCm), 0);
        metDungCm += drainedCm;
        const ofDung = Math.min(dungKg, below * organicPerKg);
        dungKg -= ofDung;
        organicKg += ofDung;
        lost += below;
      }
      drained += lost;
      if (!first) laterKg += lost;
      else if (byWeek) byWeek[at + w] += lost;
    }
    if (first) addUrine(weekPaddockOpenKg[at + w], spotShare);
    const turning = nitrified[w];
    if (turning > 0) {
      if (k >= growthWeek) {
        const freed = Math.min(boundKg, yearsBound * released * turning);
        boundKg -= freed;
        addUrine(freed, spotShare);
      }
      const fromDung = Math.min(dungKg, dungDropped * (first ? dungFreed[w] : dungLater * turning));
      dungKg -= fromDung;
      ammonium[DUNG] += fromDung;
      // What formed over the week met half of its drainage.
      const half = drainedCm > 0 ? drainedCm / 2 : 0;
      metCm += nitrify(SPOT, DUNG, turning) * (half - metCm);
      metDungCm += nitrify(DUNG, PLACES, turning) * (half - metDungCm);
    }
    if (uptakeKgPerHa[w] > 0) takeUp(uptakeKgPerHa[w]);
  }
  state[BOUND] = boundKg;
  state[OF_DUNG] = dungKg;
  state[DRAINED_LATER] = laterKg;
  state[ORGANIC_KG] = organicKg;
  return drained;
}

/**
 * Share of nitrate that met `metCm` of drainage and is still there which the next `drainedCm` carries below, 0…1, by the
 * continuous form of Burns: e^(−water held to the depth of the roots ÷ drainage), cm, before and after.
 */
function shareBelow(metCm: number, drainedCm: number, heldCm: number): number {
  const allCm = metCm + drainedCm;
  if (!(metCm > 0)) return exponential(-heldCm / allCm);
  // One division for both.
  const per = -heldCm / (metCm * allCm);
  const before = exponential(per * allCm);
  return before < 1 ? (exponential(per * metCm) - before) / (1 - before) : 0;
}

function addUrine(kg: number, spotShare: number): void {
  ammonium[SPOT] += kg * spotShare;
  ammonium[REST] += kg * (1 - spotShare);
}

/** Where the sward is killed and sown again, the soil lets go of part of what it bound. */
function killSward(i: number, read: ReadsOf<(typeof URINE_FREED)[number]>): void {
  const spotShare = read.spotExcretaFraction[i];
  const share = Math.min(1, read.sodReleasedFraction[i]);
  const bound = state[BOUND];
  const spot = bound * spotShare * share * read.spotReseededFraction[i];
  const rest = bound * (1 - spotShare) * share * read.restReseededFraction[i];
  state[BOUND] = bound - (spot + rest);
  ammonium[SPOT] += spot;
  ammonium[REST] += rest;
}

/**
 * Shares nitrified and freed from dung, and what grass can take, for each week of row `i`; gives the sum of the
 * shares nitrified, by which what warmth frees is laid over the weeks. Weeks the weather does not reach hold nothing.
 */
function prepareWeeks(i: number, read: ReadsOf<(typeof STAYS)[number]>): number {
  const { weekTemperatureC, weekFrozenDays, weekNitrifiedFraction } = read;
  const at = i * WEEKS;
  const weatherDays = read['@weather'][read.weatherIndex[i]].days;
  const growthDay = read.growthDay[i];
  const lightUntil = read.growthEndDay[i];
  const base = read.growthBaseC[i];
  const perC = read.grassUptakeKgPerHaWeekC[i];
  const winterly = read.winterUptakeKgPerHaDay[i];
  const winterDays = read.winterDays[i];
  let warmth = 0;
  let overDung = 0;
  let dropped = 0;
  for (let w = 0; w < WEEKS; w++) {
    const days = Math.min(7, weatherDays - 7 * w);
    if (!(days > 0)) {
      nitrified[w] = 0;
      dungFreed[w] = 0;
      uptakeKgPerHa[w] = 0;
      continue;
    }
    const temperature = weekTemperatureC[at + w];
    const frozen = weekFrozenDays[at + w];
    const share = weekNitrifiedFraction[at + w];
    nitrified[w] = share;
    warmth += share;
    dropped += winterDaysInWeek(w, winterDays);
    dungFreed[w] = share * dropped;
    overDung += dungFreed[w];
    const light = 7 * w < lightUntil || 7 * w >= growthDay;
    const growing = light && temperature > base ? perC * (temperature - base) * (days / 7) : 0;
    uptakeKgPerHa[w] = Math.max(growing, winterly * Math.max(0, days - frozen));
  }
  const ofDung = overDung > 0 ? read.dungMineralisedFraction[i] / overDung : 0;
  for (let w = 0; w < WEEKS; w++) dungFreed[w] *= ofDung;
  return warmth;
}

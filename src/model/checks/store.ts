/** Does the slurry fit until it may be spread? */
import type { Coefficient } from '../../tables/coefficient.ts';
import type { CheckRule } from './check.ts';
import { type Context, comparedWith } from './context.ts';
import { say } from './say.ts';

/** Store that holds slurry, m³ below the freeboard; null where there is none. */
function storeM3(c: Context): { m3: number; row: Coefficient; slats: number } | null {
  if (!c.slatted) return null;
  const { slats } = c.scenario;
  const covered = c.row('irelandCoveredFreeboardM');
  const open = c.row('irelandOpenFreeboardM');
  const under = slats.areaM2 ?? c.value('slatsUsedM2') ?? 0;
  const m3 =
    under * Math.max(0, slats.tankDepthM - covered.central) +
    slats.openStoreM2 * Math.max(0, slats.tankDepthM - open.central);
  return { m3, row: slats.openStoreM2 > 0 ? open : covered, slats: under };
}

const volume: CheckRule<Context> = {
  id: 'slurryStore',
  theme: 'store',
  run: (c) => {
    const store = storeM3(c);
    const need = c.value('storeNeededM3');
    if (!store || need === null) return null;
    const { m3, row } = store;
    const rain = c.scenario.slats.openStoreM2 > 0 || c.scenario.slats.openYardM2 > 0;
    return {
      status: m3 >= need ? 'pass' : 'stop',
      value: m3,
      limit: need,
      unit: 'm³',
      row,
      words: `The store holds ${say(m3, 0)} m³ below ${say(row.central * 100, 0)} cm of freeboard${comparedWith(c, 'IE') === '' ? '' : ' (Ireland’s figure, for comparison)'}; the winter needs ${say(need, 0)} m³${rain ? ', rain on open store and yard included' : ''}. ${m3 >= need ? '' : `${say(need - m3, 0)} m³ are missing. `}Check the local rule.`,
      ...(m3 >= need ? {} : { passesWith: passingStore(c, store.slats, need, row.central) }),
    };
  },
};

/** A depth of the tank under the slats that would do, where nothing else holds slurry. */
function passingStore(c: Context, slatsM2: number, needM3: number, freeboardM: number): string {
  return c.scenario.slats.openStoreM2 > 0 || slatsM2 <= 0
    ? `a store of ${say(needM3, 0)} m³ below the freeboard`
    : `a tank ${say(needM3 / slatsM2 + freeboardM)} m deep under the same slats`;
}

/** Months a country asks for; null where the tables hold none. */
function monthsRow(c: Context): { months: number; row: Coefficient } | null {
  const ids: Record<string, string> = {
    SE: 'swedenSmallStorageMonths',
    GB: c.scenario.farm.land.nitrateZone ? 'englandNvzStorageMonths' : 'englandStorageMonths',
  };
  if (c.country === 'IE') {
    const row = c.row('irelandStorageWeeks');
    return { months: (row.central * 7 * 12) / 365, row };
  }
  const id = c.country === null ? undefined : ids[c.country];
  return id ? { months: c.row(id).central, row: c.row(id) } : null;
}

const months: CheckRule<Context> = {
  id: 'storeMonths',
  theme: 'store',
  run: (c) => {
    const store = storeM3(c);
    const need = c.value('storeNeededM3');
    const days = c.value('winterDays');
    const rule = monthsRow(c);
    if (!store || !need || !days) return null;
    const have = ((store.m3 / need) * days * 12) / 365;
    if (!rule)
      return {
        status: 'look',
        value: have,
        limit: null,
        unit: 'months',
        row: store.row,
        foreign: true,
        words: `The store lasts ${say(have, 1)} months at this winter's rate; the tables hold no months of storage ${c.country === null ? 'without a country' : `for ${c.country}`}. Ask how many are asked where you live.`,
      };
    return {
      status: have >= rule.months ? 'pass' : 'stop',
      value: have,
      limit: rule.months,
      unit: 'months',
      row: rule.row,
      words: `The store lasts ${say(have, 1)} months at this winter's rate; ${say(rule.months, 1)} are asked (${rule.row.appliesTo}). Check the local rule.`,
    };
  },
};

const openStore: CheckRule<Context> = {
  id: 'openStore',
  theme: 'store',
  run: (c) => {
    const { openStoreM2, store } = c.scenario.slats;
    if (!c.slatted || openStoreM2 <= 0) return null;
    const bare = store === 'none';
    const row = c.row('irelandOpenFreeboardM');
    const rain = c.value('rainMm');
    return {
      status: bare ? 'look' : 'pass',
      value: rain === null ? null : (rain * openStoreM2) / 1000,
      limit: null,
      unit: 'm³',
      row,
      words: `${say(openStoreM2, 0)} m² of open store catch ${rain === null ? 'the winter’s rain' : `${say((rain * openStoreM2) / 1000, 0)} m³ of rain`}${bare ? ' and have no crust or cover: ammonia leaves freely' : ''}. Fence it and keep ${say(row.central * 100, 0)} cm free.`,
    };
  },
};

export const STORE_RULES: readonly CheckRule<Context>[] = [volume, months, openStore];

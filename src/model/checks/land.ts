/** Nutrients against the ground they are meant for, and the calendar of the law. */

import type { ResultName } from '../quantities.ts';
import type { CheckRule } from './check.ts';
import { closedPeriod, isClosed } from './closedPeriod.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

function areaRule(
  id: string,
  result: ResultName,
  what: string,
  rowOf: (c: Context) => string,
): CheckRule<Context> {
  return {
    id,
    theme: 'land',
    run: (c) => {
      const need = c.bedded || c.slatted ? c.value(result) : null;
      if (need === null) return null;
      const row = c.row(rowOf(c));
      const have = c.scenario.farm.land.receivingHa;
      return {
        status: have >= need ? 'pass' : 'stop',
        value: have,
        limit: need,
        unit: 'ha',
        row,
        words: `${what} asks ${say(need, 1)} ha at ${say(row.central)} ${row.unit} a year (${row.appliesTo.split(':')[0]}); ${say(have, 1)} ha can take it. ${have >= need ? '' : 'Spread over more ground, over more years, or sell some. '}Check the local rule.`,
      };
    },
  };
}

const nitrogenCap = areaRule(
  'nitrogenCap',
  'areaForNitrogenHa',
  'The nitrogen of the manure',
  () => 'euManureNitrogenLimitKgPerHa',
);
const phosphorusCap = areaRule('phosphorusCap', 'areaForPhosphorusHa', 'The phosphorus of the manure', (c) =>
  c.country === 'NO'
    ? 'norwayPhosphorusLimitKgPerHa'
    : c.country === 'DK'
      ? 'denmarkPhosphorusLimitKgPerHa'
      : 'swedenManurePhosphorusLimitKgPerHa',
);

const spreadingMonth: CheckRule<Context> = {
  id: 'closedPeriod',
  theme: 'land',
  run: (c) => {
    if (!c.bedded && !c.slatted) return null;
    const kind = c.slatted ? 'slurry' : 'solid';
    const { month } = c.scenario.spreading;
    const period = closedPeriod(c.country, kind, c.scenario.farm.land.nitrateZone, (id) =>
      c.coefficients.get(id),
    );
    const fallback = c.row('euManureNitrogenLimitKgPerHa');
    if (!period)
      return {
        status: 'look',
        value: month,
        limit: null,
        unit: 'month',
        row: fallback,
        words: `The tables hold no closed period for ${kind === 'slurry' ? 'slurry' : 'solid manure'} ${c.country ? `in ${c.country}` : 'without a country'}. Never on frozen, snow-covered or wet ground. Check the local rule.`,
      };
    const middle = `2025-${String(month).padStart(2, '0')}-15`;
    const closed = isClosed(period, middle);
    return {
      status: closed ? 'stop' : 'pass',
      value: month,
      limit: null,
      unit: 'month',
      row: period.from,
      words: `${closed ? 'The middle of the spreading month lies in' : 'The spreading month lies outside'} the closed period from day ${say(period.from.central)} to day ${say(period.to.central)} of the year (${period.from.appliesTo.split(';')[0]}). Never on frozen, snow-covered or wet ground. Check the local rule.`,
    };
  },
};

const paddockLoad: CheckRule<Context> = {
  id: 'paddockLoad',
  theme: 'land',
  run: (c) => {
    const load = c.outdoors ? c.value('nitrogenLoadKgPerHa') : null;
    if (load === null) return null;
    const row = c.row('euManureNitrogenLimitKgPerHa');
    const irish = c.row('irelandOutwinteringNitrogenLimitKgPerHa');
    return {
      status: load <= irish.central ? 'pass' : load <= row.central ? 'look' : 'stop',
      value: load,
      limit: row.central,
      unit: 'kg/ha',
      row,
      words: `${say(load, 0)} kg N/ha on the wintering paddock in one winter; ${say(row.central)} is the yearly cap of nitrate zones, ${say(irish.central)} the Irish figure for outwintering ground. Check the local rule.`,
    };
  },
};

const feedingSpot: CheckRule<Context> = {
  id: 'feedingSpot',
  theme: 'land',
  run: (c) => {
    if (!c.outdoors || c.head === 0) return null;
    const { moved } = c.scenario.paddock;
    const row = c.row('commonPracticeHardStandingM2Cow');
    const fixed = moved === 'fixed';
    return {
      status: moved === 'weekly' || moved === 'daily' ? 'pass' : 'look',
      value: c.shed.hardStandingM2 / c.head,
      limit: fixed ? row.central : null,
      unit: 'm²/head',
      row,
      words: fixed
        ? `Feed stands in one place all winter: dung, mud and run-off gather there. Lay ${say(row.central)} m² a head of drained hard standing or move it weekly.`
        : `Feed is moved ${moved}; keep it off wet hollows and away from water and wells.`,
    };
  },
};

export const LAND_RULES: readonly CheckRule<Context>[] = [
  nitrogenCap,
  phosphorusCap,
  spreadingMonth,
  paddockLoad,
  feedingSpot,
];

/** Nutrients against the ground they are meant for, and the calendar of the law. */

import type { ResultName } from '../quantities.ts';
import type { CheckRule } from './check.ts';
import { closedPeriod, isClosed } from './closedPeriod.ts';
import { type Context, comparedWith, underNitratesDirective } from './context.ts';
import { say } from './say.ts';

function areaRule(
  id: string,
  result: ResultName,
  what: string,
  rowOf: (c: Context) => { readonly id: string; readonly compared: string },
): CheckRule<Context> {
  return {
    id,
    theme: 'land',
    run: (c) => {
      const need = c.bedded || c.slatted ? c.value(result) : null;
      if (need === null) return null;
      const { id, compared } = rowOf(c);
      const row = c.row(id);
      const have = c.scenario.farm.land.receivingHa;
      const short = have < need;
      const asks = `${what} asks ${say(need, 1)} ha at ${say(row.central)} ${row.unit} a year (${row.appliesTo.split(':')[0]}); ${say(have, 1)} ha can take it.`;
      return {
        // What another country's law asks does not stop anything here.
        status: !short ? 'pass' : compared === '' ? 'stop' : 'look',
        value: have,
        limit: need,
        unit: 'ha',
        row,
        words: `${compared}${compared === '' ? asks : lowered(asks)} ${short ? 'Spread over more ground, over more years, or sell some. ' : ''}Check the local rule.`,
        ...(compared === '' ? {} : { foreign: true as const }),
        ...(short ? { passesWith: `${say(need, 1)} ha of ground to spread on` } : {}),
      };
    },
  };
}

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

const nitrogenCap = areaRule('nitrogenCap', 'areaForNitrogenHa', 'The nitrogen of the manure', (c) => ({
  id: 'euManureNitrogenLimitKgPerHa',
  compared: comparedWith(c, 'EU'),
}));
const PHOSPHORUS: Readonly<Record<string, string>> = {
  NO: 'norwayPhosphorusLimitKgPerHa',
  DK: 'denmarkPhosphorusLimitKgPerHa',
};
const phosphorusCap = areaRule(
  'phosphorusCap',
  'areaForPhosphorusHa',
  'The phosphorus of the manure',
  (c) => {
    const own = PHOSPHORUS[c.country ?? ''];
    return own
      ? { id: own, compared: '' }
      : { id: 'swedenManurePhosphorusLimitKgPerHa', compared: comparedWith(c, 'SE') };
  },
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
        foreign: true,
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
    const dropped = `${say(load, 0)} kg N/ha are dropped on the wintering paddock in one winter`;
    const hectares = (limit: number) => ({
      passesWith: `${say((c.scenario.paddock.areaHa * load) / limit, 1)} ha of paddock`,
    });
    const shared = { value: load, unit: 'kg/ha' } as const;
    if (load > row.central) {
      const cap = `${say(row.central)} is the yearly cap of nitrate zones`;
      const home = underNitratesDirective(c);
      return {
        ...shared,
        status: home ? 'stop' : 'look',
        limit: row.central,
        row,
        words: `${comparedWith(c, 'EU')}${dropped}; ${cap}. Check the local rule.`,
        ...(home ? {} : { foreign: true as const }),
        ...hectares(row.central),
      };
    }
    if (load <= irish.central)
      return {
        ...shared,
        status: 'pass',
        limit: irish.central,
        row: irish,
        words: `${dropped}, not above the ${say(irish.central)} kg N/ha that Ireland allows on outwintering ground. Check the local rule.`,
      };
    const compared = comparedWith(c, 'IE');
    return {
      ...shared,
      status: 'look',
      limit: irish.central,
      row: irish,
      words: `${compared}${dropped}; ${say(irish.central)} kg N/ha are allowed on outwintering ground. Check the local rule.`,
      ...(compared === '' ? {} : { foreign: true as const }),
      ...hectares(irish.central),
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
    const per = c.shed.hardStandingM2 / c.head;
    if (moved !== 'fixed')
      return {
        status: moved === 'monthly' ? 'look' : 'pass',
        value: null,
        limit: null,
        unit: '',
        row,
        words: `Feed is moved ${moved}; keep it off wet hollows and away from water and wells.`,
        ...(moved === 'monthly' ? { passesWith: 'feed moved weekly or daily' } : {}),
      };
    return {
      status: per >= row.central ? 'pass' : 'look',
      value: per,
      limit: row.central,
      unit: 'm²/head',
      row,
      words: `Feed stands in one place all winter: dung, mud and run-off gather there. Lay ${say(row.central)} m² a head of drained hard standing or move it weekly.`,
      ...(per >= row.central
        ? {}
        : { passesWith: `${say(row.central * c.head, 0)} m² of hard standing, or feed moved weekly` }),
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

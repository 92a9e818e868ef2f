/** The wintering paddock: what hooves, feed and water do to wet or frozen ground, and what animals need out there. */
import type { CheckRule } from './check.ts';
import { type Context, comparedWith } from './context.ts';
import { say } from './say.ts';

/** Ground that carries no cattle when it is wet. */
const HEAVY: ReadonlySet<string> = new Set(['siltyClayLoam', 'clay']);
const SOIL_WORDS: Readonly<Record<string, string>> = {
  sand: 'sand', loamySand: 'loamy sand', sandyLoam: 'sandy loam', loam: 'loam', siltLoam: 'silt loam',
  siltyClayLoam: 'silty clay loam', clay: 'clay',
}; // biome-ignore format: one short list

/** Hectares at which treading takes no more than `limit` of a year's growth; null where it never takes as much. */
function hectaresFor(c: Context, loss: number, limit: number): number | null {
  const ofYear = c.row(`treadingYearFraction.${c.scenario.paddock.moved}`).central;
  if (!(loss > limit) || loss >= ofYear || limit >= ofYear) return null;
  return (c.scenario.paddock.areaHa * Math.log1p(-loss / ofYear)) / Math.log1p(-limit / ofYear);
}

const paddockWet: CheckRule<Context> = {
  id: 'paddockWet',
  theme: 'land',
  run: (c) => {
    const [loss, wet, days] = [c.value('restTreadingLoss'), c.value('wetDays'), c.value('winterDays')];
    if (!c.outdoors || c.head === 0 || loss === null || wet === null || !days) return null;
    const from = c.row('reseedLossFrom');
    const { texture } = c.scenario.farm.soil;
    const heavy = HEAVY.has(texture) && wet > 0;
    const hectares = hectaresFor(c, loss, from.central);
    return {
      status: loss > c.row('reseedLossAll').central ? 'stop' : loss > from.central || heavy ? 'look' : 'pass',
      value: loss * 100,
      limit: from.central * 100,
      unit: '%',
      row: from,
      words: `The ground is wet on ${say(wet, 0)} of ${say(days, 0)} days; on ${SOIL_WORDS[texture]} treading takes ${say(loss * 100, 0)} % of a year's growth away from the feed, and from ${say(from.central * 100, 0)} % ground must be sown again.${heavy ? ' Clay carries no cattle when it is wet: have drained, hard ground or a sacrifice paddock to go to, and take them off before the sward breaks.' : ''}`,
      ...(hectares === null ? {} : { passesWith: `${say(Math.ceil(hectares * 10) / 10, 1)} ha of paddock` }),
    };
  },
};

const paddockMud: CheckRule<Context> = {
  id: 'paddockMud',
  theme: 'land',
  run: (c) => {
    const [loss, load, reseed] = [
      c.value('spotTreadingLoss'),
      c.value('spotLoadKgPerHa'),
      c.value('reseedHa'),
    ];
    if (!c.outdoors || c.head === 0 || loss === null || load === null) return null;
    const from = c.row('reseedLossFrom');
    const hectares = hectaresFor(c, loss, from.central);
    const { moved } = c.scenario.paddock;
    const oftener = moved === 'daily' ? '' : 'feed moved oftener';
    const more = hectares === null ? '' : `${say(Math.ceil(hectares * 10) / 10, 1)} ha of paddock`;
    const passesWith = [more, oftener].filter((part) => part !== '').join(', or ');
    const over = loss > from.central;
    return {
      status: over ? 'look' : 'pass',
      value: loss * 100,
      limit: from.central * 100,
      unit: '%',
      row: from,
      words: `Round the feed, moved ${moved === 'fixed' ? 'never' : moved}, treading takes ${say(loss * 100, 0)} % of a year's growth and ${say(load, 0)} kg N/ha are dropped${reseed ? `; ${say(reseed, 1)} ha are to be sown again` : ''}. Put rings on the driest, hardest ground, never in a hollow.`,
      ...(over && passesWith !== '' ? { passesWith } : {}),
    };
  },
};

const paddockSward: CheckRule<Context> = {
  id: 'paddockSward',
  theme: 'land',
  run: (c) => {
    const [units, lost] = [c.value('paddockUnitsPerHa'), c.value('grassLostTonnes')];
    if (!c.outdoors || c.head === 0 || units === null) return null;
    const row = c.row('lowRiskUnitsPerHa');
    const over = units > row.high;
    const { texture } = c.scenario.farm.soil;
    return {
      status: over ? 'look' : 'pass',
      value: units,
      limit: row.high,
      unit: 'LU/ha',
      row,
      words: `${say(units, 1)} livestock units a hectare all winter; a sward on loam${texture === 'loam' ? '' : ` (here ${SOIL_WORDS[texture]})`} survives ${say(row.low)} to ${say(row.high)} a hectare with feeders moved.${lost === null ? '' : ` ${say(lost, 1)} t of grass (dry matter) is counted as lost.`}`,
      ...(over
        ? {
            passesWith: `${say(Math.ceil(((c.scenario.paddock.areaHa * units) / row.high) * 10) / 10, 1)} ha of paddock`,
          }
        : {}),
    };
  },
};

const paddockWater: CheckRule<Context> = {
  id: 'paddockWater',
  theme: 'room',
  run: (c) => {
    const frozen = c.value('frozenDays');
    if (!c.outdoors || c.head === 0) return null;
    const row = c.row('commonPracticeWaterNeedLPerDay');
    return {
      status: 'look',
      value: (row.central * c.head) / 1000,
      limit: null,
      unit: 'm³/d',
      row,
      words: `The herd drinks about ${say((row.central * c.head) / 1000, 1)} m³ a day outdoors (${say(row.low)} to ${say(row.high)} L a head)${!frozen ? '' : `, on ${say(frozen, 0)} days of frozen ground too`}. The notebook does not say from where: a supply that does not freeze, on hard ground, and not a stream they foul.`,
    };
  },
};

const paddockShelter: CheckRule<Context> = {
  id: 'paddockShelter',
  theme: 'room',
  run: (c) => {
    const [wet, cold, days] = [c.value('wetCoatDays'), c.value('coldNeedFraction'), c.value('winterDays')];
    if (!c.outdoors || c.head === 0 || wet === null || !days) return null;
    const { exposure } = c.scenario;
    return {
      status: exposure === 'open' ? 'look' : 'pass',
      value: wet,
      limit: null,
      unit: 'd',
      row: c.row(`wetCoatFraction.${exposure}`),
      words: `${exposure === 'open' ? 'There is no windbreak' : exposure === 'windbreak' ? 'There is a windbreak' : 'A roof is open to them'}: coats are wet through on ${say(wet, 0)} of ${say(days, 0)} days${cold === null ? '' : ` and cold adds ${say(cold * 100, 0)} % to what they need to live`}. They also need a dry place to lie for every animal at once, which no figure here counts.`,
      ...(exposure === 'open' ? { passesWith: 'a windbreak or a roof open to them (exposure)' } : {}),
    };
  },
};

const paddockFrozen: CheckRule<Context> = {
  id: 'paddockFrozen',
  theme: 'land',
  run: (c) => {
    const [share, washed, frozen] = [
      c.value('paddockWashedFraction'),
      c.value('paddockRunoffKg'),
      c.value('frozenDays'),
    ];
    if (!c.outdoors || c.head === 0 || share === null || washed === null) return null;
    const row = c.row('washedLookFraction');
    return {
      status: share > row.central ? 'look' : 'pass',
      value: share * 100,
      limit: row.central * 100,
      unit: '%',
      row,
      words: `Run-off carries ${say(washed, 1)} kg of nitrogen, ${say(share * 100, 1)} % of what is dropped, off the paddock${frozen ? `, much of it over ground frozen on ${say(frozen, 0)} days` : ''}. Feed on the flat, away from ditches; leave a strip of long grass before water.`,
    };
  },
};

/** Grams of nitrate to a gram of its nitrogen: 62.005 ÷ 14.007. */
const NITRATE_OF_NITROGEN = 62.005 / 14.007;
/** Kilograms on a hectare in a millimetre of water are so many milligrams in a litre. */
const MG_PER_L = 100;

const paddockDrainage: CheckRule<Context> = {
  id: 'paddockDrainage',
  theme: 'land',
  run: (c) => {
    const [leached, later, drained] = [
      c.value('paddockLeachedKg'),
      c.value('paddockLaterLeachedKg'),
      c.value('drainageMm'),
    ];
    if (!c.outdoors || c.head === 0 || leached === null || !drained || drained < 1) return null;
    const perHa = (leached - (later ?? 0)) / c.scenario.paddock.areaHa;
    const nitrate = (perHa / drained) * MG_PER_L * NITRATE_OF_NITROGEN;
    const row = c.row('euNitrateInWaterMgPerL');
    return {
      status: nitrate > row.central ? 'look' : 'pass',
      value: nitrate,
      limit: row.central,
      unit: 'mg/L',
      row,
      words: `What drains below the roots until grass grows (${say(drained, 0)} mm) carries ${say(perHa, 0)} kg N/ha, ${say(nitrate, 0)} mg of nitrate in a litre on average, with more under feed and urine. ${comparedWith(c, 'EU')}${say(row.central)} mg is the line for water that counts as polluted. A neighbour's well or a spring below the paddock drinks it: ask where they draw, and keep away.`,
      ...(nitrate > row.central
        ? {
            passesWith: `about ${say(Math.ceil(((c.scenario.paddock.areaHa * nitrate) / row.central) * 10) / 10, 1)} ha of paddock`,
          }
        : {}),
    };
  },
};

export const PADDOCK_RULES: readonly CheckRule<Context>[] = [
  paddockWet,
  paddockMud,
  paddockSward,
  paddockWater,
  paddockShelter,
  paddockFrozen,
  paddockDrainage,
];

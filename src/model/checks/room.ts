/** Room to live: lying area, area in all, feed places by class and weight. */
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';
import { herdNeed, isRanked, ruleName, type SpaceKind } from './spaceRules.ts';

const LOCAL = 'Check the local rule.';

const holdsAnimal: CheckRule<Context> = {
  id: 'shedHoldsAnimals',
  theme: 'room',
  run: (c) => {
    const length = c.largest('standingLengthM');
    if (!c.housed || !length) return null;
    const withers = c.largest('withersHeightM');
    const { shed } = c;
    const shared = { value: shed.depthM, limit: length.size, unit: 'm', row: length.row };
    if (shed.depthM < length.size)
      return {
        ...shared,
        status: 'stop',
        words: `The shed is ${say(shed.depthM)} m deep, less than the ${say(length.size)} m an animal stands on. Nothing else here can be judged.`,
      };
    if (withers && shed.eaveM < withers.size)
      return {
        ...shared,
        value: shed.eaveM,
        limit: withers.size,
        row: withers.row,
        status: 'stop',
        words: `The eave (${say(shed.eaveM)} m) is lower than the withers of the tallest animals (${say(withers.size)} m).`,
      };
    if (c.bedded && c.bedM2 <= 0)
      return {
        ...shared,
        value: c.bedM2,
        limit: null,
        unit: 'm²',
        status: 'stop',
        words: `The feed stance (${say(shed.stanceDepthM)} m) takes the whole depth of the shed: no area is left for a bed.`,
      };
    return {
      ...shared,
      status: 'pass',
      words: `The shed is deeper than an animal is long (${say(length.size)} m).`,
    };
  },
};

function areaRule(
  id: string,
  kind: SpaceKind,
  what: string,
  areaOf: (c: Context) => number | null,
  passing: (c: Context, needM2: number, haveM2: number) => string,
): CheckRule<Context> {
  return {
    id,
    theme: 'room',
    run: (c) => {
      const rules = c.scenario.farm.spaceRules;
      const have = areaOf(c);
      const need = have === null || c.head === 0 ? null : herdNeed(rules, kind, c.herd, c.row);
      if (have === null || !need) return null;
      const enough = have >= need.total - 1e-9;
      const missing = need.incomplete ? ' Some groups have no figure in this set and are left out.' : '';
      return {
        status: enough ? 'pass' : 'stop',
        value: have,
        limit: need.total,
        unit: 'm²',
        row: need.row,
        words: `${what}: ${say(have, 0)} m² for ${say(c.head, 0)} head against ${say(need.total, 0)} m² in ${ruleName(rules, c.country)} (${say(have / c.head, 1)} m² a head).${missing} ${LOCAL}`,
        ...(enough
          ? {}
          : {
              passesWith: `${passing(c, need.total, have)}, or ${say(Math.floor((c.head * have) / need.total), 0)} head`,
            }),
      };
    },
  };
}

/** Bed on which the herd lies: pens inside it are set apart. */
const lyingM2 = (c: Context) => Math.max(0, c.bedM2 - c.built().floor.pensM2);

/** How long the shed would be for so much bed, its depth and its pens as they are. */
function lengthFor({ shed }: Context, needM2: number, haveM2: number): string {
  const across = shed.depthM - shed.stanceDepthM;
  return across > 0
    ? `a shed ${say(up(shed.lengthM + (needM2 - haveM2) / across), 1)} m long`
    : `${say(needM2, 0)} m² of bed`;
}

/** To the next tenth, so that what is said passes. */
const up = (value: number) => Math.ceil(value * 10 - 1e-6) / 10;

const lyingArea = areaRule(
  'lyingArea',
  'lying',
  'Lying area without the calving pens',
  (c) => (c.bedded ? lyingM2(c) : null),
  lengthFor,
);
const totalArea = areaRule(
  'totalArea',
  'total',
  'Area in all under the roof',
  (c) => (c.bedded ? Math.max(0, c.shed.lengthM * c.shed.depthM) : null),
  ({ shed }, need) => `a shed ${say(up(need / shed.depthM), 1)} m long`,
);
const slattedArea = areaRule(
  'slattedArea',
  'slats',
  'Slatted area',
  (c) => (c.slatted ? (c.value('slatsUsedM2') ?? c.scenario.slats.areaM2 ?? null) : null),
  (_, need) => `${say(need, 0)} m² of slats`,
);

const slatsFit: CheckRule<Context> = {
  id: 'slatsFit',
  theme: 'room',
  run: (c) => {
    const need = c.slatted ? (c.value('slatsUsedM2') ?? c.scenario.slats.areaM2 ?? 0) : 0;
    if (need <= 0) return null;
    const { floor } = c.built();
    const drawn = floor.slatsLengthM * floor.slatsDepthM;
    const fits = need <= drawn + 1e-6;
    return {
      status: fits ? 'pass' : 'stop',
      value: drawn,
      limit: need,
      unit: 'm²',
      row: { source: 'own', basis: 'derived' },
      words: fits
        ? `${say(need, 0)} m² of slats lie in the shed: ${say(floor.slatsLengthM, 1)} m along it and ${say(floor.slatsDepthM, 1)} m deep.`
        : `${say(need, 0)} m² of slats do not fit: ${c.bedded ? 'the stance beside the bed' : 'the shed without its pens'} holds ${say(drawn, 0)} m². The bill counts them all the same: make the shed larger.`,
    };
  },
};

const dryBedArea: CheckRule<Context> = {
  id: 'dryBedArea',
  theme: 'room',
  run: (c) => {
    if (!c.bedded || c.liveWeightKg <= 0) return null;
    const row = c.row('commonPracticeLyingM2Per100Kg');
    const per = (lyingM2(c) * 100) / c.liveWeightKg;
    return {
      status: per >= row.central ? 'pass' : per >= row.low ? 'look' : 'stop',
      value: per,
      limit: row.central,
      unit: 'm²/100 kg',
      row,
      words: `${say(per)} m² of bed, without the calving pens, for each 100 kg of animal; ${say(row.low)} to ${say(row.high)} m² (${say(row.central)} m² as a rule) keeps a bed dry enough to warm. Less area means more bedding, not only more dirt.`,
      ...(per >= row.central
        ? {}
        : { passesWith: lengthFor(c, (row.central * c.liveWeightKg) / 100, lyingM2(c)) }),
    };
  },
};

/** The Swedish feed places, where the keeper's own set has none. */
const comparedSet = (c: Context) =>
  c.country === 'SE'
    ? ruleName('sweden', 'SE')
    : 'the Swedish rules, for comparison, since the set in use has none';

const feedPlaces: CheckRule<Context> = {
  id: 'feedPlaces',
  theme: 'room',
  run: (c) => {
    if (!c.housed || c.scenario.feeder !== 'barrier' || c.head === 0) return null;
    const rules = c.scenario.farm.spaceRules;
    const own = herdNeed(rules, 'feed', c.herd, c.row);
    const need = own ?? herdNeed('sweden', 'feed', c.herd, c.row);
    if (!need) return null;
    const free = c.row('swedenAnimalsPerFeedPlace');
    const all = c.shed.lengthM >= need.total - 1e-9;
    const shared = c.shed.lengthM >= need.total / free.central;
    const set = own ? ruleName(rules, c.country) : `${comparedSet(c)}`;
    const ranked = isRanked(rules, c.horned);
    const short = need.total - c.shed.lengthM;
    return {
      status: all ? 'pass' : shared && !ranked ? 'look' : 'stop',
      value: c.shed.lengthM,
      limit: need.total,
      unit: 'm',
      row: need.row,
      words: all
        ? `All ${say(c.head, 0)} animals can eat at once: ${say(c.shed.lengthM, 1)} m of barrier against ${say(need.total, 1)} m in ${set}. ${LOCAL}`
        : `Barrier ${say(short, 1)} m too short for all to eat at once (${say(need.total, 1)} m in ${set}).${ranked ? ' In a horned or strongly ranked herd the lowest go without.' : ` Works only with feed in front of them day and night (${say(free.central)} to a place${c.country === 'SE' ? '' : ', Sweden’s figure for comparison'}).`} ${LOCAL}`,
      ...(all ? {} : { passesWith: `${say(up(need.total), 1)} m of barrier` }),
    };
  },
};

export const ROOM_RULES: readonly CheckRule<Context>[] = [
  holdsAnimal,
  lyingArea,
  totalArea,
  slattedArea,
  slatsFit,
  dryBedArea,
  feedPlaces,
];

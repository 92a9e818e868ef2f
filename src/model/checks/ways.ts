/** Ways and places besides the bed: past a feeding animal, out, to water, to a pen, on hard ground, for the loader. */
import type { CheckRule, Verdict } from './check.ts';
import { type Context, comparedWith } from './context.ts';
import { say, sayIn } from './say.ts';
import { isRanked, passRow } from './spaceRules.ts';

const LOCAL = 'Check the local rule.';

const passBehind: CheckRule<Context> = {
  id: 'passBehind',
  theme: 'room',
  run: (c) => {
    if (!c.housed || c.scenario.feeder !== 'barrier' || c.head === 0) return null;
    const ranked = isRanked(c.scenario.farm.spaceRules, c.horned);
    const row = passRow(ranked, c.row);
    const feeding = c.largest('standingLengthM')?.size ?? 0;
    // Over slats alone the whole depth of the shed is floor to pass on.
    const stance = c.bedded && c.shed.stanceDepthM > 0 ? c.shed.stanceDepthM : c.shed.depthM;
    const shared = { value: stance, limit: row.central, unit: 'm', row };
    const behind = `behind a feeding animal (${say(feeding)} m) ${say(Math.max(0, stance - feeding))} m is left`;
    if (stance >= row.low)
      return {
        ...shared,
        status: stance >= row.central ? 'pass' : 'look',
        words: `${say(stance)} m behind the barrier; ${behind}. ${say(row.low)} to ${say(row.high)} m lets a low-ranking ${ranked ? 'animal pass horned ones' : 'animal pass'}.`,
      };
    if (c.bedded && c.shed.depthM >= row.central)
      return {
        ...shared,
        status: 'look',
        words: `The stance is ${say(stance)} m deep; ${behind}, less than the ${say(row.low)} m wanted. A low-ranking animal must pass over the bed: keep its edge low and open along the whole stance.`,
      };
    return {
      ...shared,
      status: 'stop',
      words: `${say(stance)} m behind the barrier against ${say(row.low)} m or more; ${behind}, and there is no other way round.`,
    };
  },
};

const exits: CheckRule<Context> = {
  id: 'exits',
  theme: 'room',
  run: (c) => {
    if (!c.housed || c.head < 2) return null;
    const row = c.row('exitsHerd');
    const ranked = isRanked(c.scenario.farm.spaceRules, c.horned);
    const enough = c.shed.exits >= row.central;
    return {
      status: enough ? 'pass' : ranked || c.shed.exits === 0 ? 'stop' : 'look',
      value: c.shed.exits,
      limit: row.central,
      ...(enough ? {} : { passesWith: `${say(row.central)} ways out` }),
      unit: 'exits',
      row,
      words: enough
        ? `${c.shed.exits} ways out of the lying area; set them far apart so that no animal is caught in a dead end.`
        : `${c.shed.exits === 1 ? 'Only one way' : 'No way'} out of the lying area: ${ranked ? 'in a horned or strongly ranked herd one animal can shut the others in' : 'open a second one'}.`,
    };
  },
};

const waterPoints: CheckRule<Context> = {
  id: 'waterPoints',
  theme: 'room',
  run: (c) => {
    if (!c.housed || c.head === 0) return null;
    const row = c.row('commonPracticeAnimalsPerBowl');
    const least = c.row('waterPointsLeast');
    const limit = Math.max(least.central, Math.ceil(c.head / row.central));
    const bare = Math.max(least.central, Math.ceil(c.head / row.high));
    const bowls = c.shed.waterBowls;
    return {
      status: bowls >= limit ? 'pass' : bowls >= bare ? 'look' : 'stop',
      value: bowls,
      limit,
      unit: 'bowls',
      row,
      ...(bowls >= limit ? {} : { passesWith: `${limit} bowls` }),
      words: `${bowls} water bowls for ${say(c.head, 0)} head; ${limit} by one for ${say(row.central)} and never fewer than ${say(least.central)} in different corners. The herd drinks about ${say((c.row('commonPracticeWaterNeedLPerDay').central * c.head) / 1000, 1)} m³ a day. ${LOCAL}`,
    };
  },
};

const calvingPens: CheckRule<Context> = {
  id: 'calvingPens',
  theme: 'room',
  run: (c) => {
    const pregnant = c.herd.reduce((sum, g) => sum + g.head * g.pregnantShare, 0);
    if (!c.housed || pregnant <= 0) return null;
    const pen = c.row('swedenCalvingPenM2');
    const per = c.row('calvingCowsPerPen');
    const limit = Math.ceil(pregnant / per.central) * pen.central;
    const have = c.shed.calvingPensM2;
    return {
      status: have >= limit ? 'pass' : 'look',
      value: have,
      limit,
      unit: 'm²',
      row: pen,
      ...(have >= limit ? {} : { passesWith: `${say(limit)} m² of pens` }),
      words: `${comparedWith(c, 'SE')}${say(have)} m² of calving and sick pens for ${say(pregnant, 0)} in calf; ${say(limit)} m² is one pen of ${say(pen.central)} m² for each ${say(per.central)}, shortest side ${say(c.row('calvingPenSideM').central)} m. ${LOCAL}`,
    };
  },
};

const hardStanding: CheckRule<Context> = {
  id: 'hardStanding',
  theme: 'room',
  run: (c) => {
    if (!c.bedded || c.head === 0) return null;
    const row = c.row('commonPracticeHardStandingM2Cow');
    const share = c.row('hardShareOfDayFraction');
    const per =
      (c.shed.hardStandingM2 + c.shed.lengthM * Math.min(c.shed.stanceDepthM, c.shed.depthM)) / c.head;
    const day = c.scenario.placement.yardShare + c.scenario.placement.slatsShare;
    const ok = per >= row.low && day >= share.low;
    return {
      status: ok && per >= row.central ? 'pass' : 'look',
      value: per,
      limit: row.central,
      unit: 'm²/head',
      row,
      ...(per >= row.central
        ? {}
        : { passesWith: `${say((row.central - per) * c.head, 0)} m² more of hard standing` }),
      words: `${say(per, 1)} m² a head of stance and hard standing, used ${say(day * 100, 0)} % of the day. Hooves on a soft bed overgrow: ${say(row.central)} m² of hard, slightly rough ground and ${say(share.central * 100, 0)} % of the day wear them.`,
    };
  },
};

const loaderTurns: CheckRule<Context> = {
  id: 'loaderTurns',
  theme: 'room',
  run: (c) => {
    if (!c.bedded) return null;
    const row = c.row('machineSideM');
    const { shed } = c;
    const width = shed.machineWidthM + 2 * row.central;
    const turns = shed.depthM >= shed.machineTurnM && shed.lengthM >= shed.machineTurnM;
    const enters = shed.bayM >= width;
    const verdict = (status: Verdict['status'], value: number, limit: number, words: string): Verdict => ({
      status,
      value,
      limit,
      unit: 'm',
      row,
      words,
    });
    if (!enters)
      return verdict(
        'stop',
        shed.bayM,
        width,
        `Bays of ${say(shed.bayM)} m let no loader of ${sayIn(shed.machineWidthM, 'm')} between the posts with ${say(row.central)} m to each side.`,
      );
    if (!turns)
      return verdict(
        'look',
        Math.min(shed.depthM, shed.lengthM),
        shed.machineTurnM,
        `The loader turns in ${say(shed.machineTurnM)} m, more than the shed is deep: it must work in and out along one line, so keep both ends open.`,
      );
    return verdict(
      'pass',
      shed.depthM,
      shed.machineTurnM,
      `The loader can turn inside (${say(shed.machineTurnM)} m).`,
    );
  },
};

export const WAY_RULES: readonly CheckRule<Context>[] = [
  passBehind,
  exits,
  waterPoints,
  calvingPens,
  hardStanding,
  loaderTurns,
];

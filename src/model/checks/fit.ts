/** Does everything still fit over and beside a floor that rises all winter? */
import { type BedSeries, firstWeek, sayWeek } from './bedSeries.ts';
import type { CheckRule } from './check.ts';
import { type Context, lowestRoofM } from './context.ts';
import { animalReachM, machineNeedM } from './reach.ts';
import { rising } from './rising.ts';
import { capital, say } from './say.ts';

/** A roof that clears the bed at the high end of its range. */
const passingRoof = (bed: BedSeries, status: string, needM: number) =>
  status === 'pass' ? {} : { passesWith: `a lowest roof member at ${say(up(bed.end.high + needM))} m` };

/** To the next centimetre, so that what is said passes. */
const up = (value: number) => Math.ceil(value * 100 - 1e-6) / 100;

const roofClearance: CheckRule<Context> = {
  id: 'roofClearance',
  theme: 'fit',
  run: (c) => {
    if (!c.bed || !c.roofed) return null;
    const animal = animalReachM(c);
    const machine = machineNeedM(c);
    const roof = lowestRoofM(c.shed);
    const need = Math.max(animal?.needM ?? 0, machine.needM);
    const row = animal && animal.needM >= machine.needM ? animal.row : machine.row;
    const who = animal && animal.needM >= machine.needM ? animal.who : 'the loader';
    const free = roof - bedEnd(c.bed);
    const verdict = rising(c, c.bed, {
      topM: roof - need,
      row,
      fails: `The lowest roof member (${say(roof)} m) leaves less than the ${say(need)} m that ${who} needs over the bed`,
      fits: `${say(free)} m stays free under the lowest roof member (${say(roof)} m) when the bed is highest; ${who} needs ${say(need)} m, which fits`,
    });
    return { ...verdict, value: free, limit: need, ...passingRoof(c.bed, verdict.status, need) };
  },
};

const hornClearance: CheckRule<Context> = {
  id: 'hornClearance',
  theme: 'fit',
  run: (c) => {
    const animal = c.bed && animalReachM(c);
    if (!c.bed || !animal || !c.roofed) return null;
    const roof = lowestRoofM(c.shed);
    const verdict = rising(c, c.bed, {
      topM: roof - animal.needM,
      row: animal.row,
      fails: `${capital(animal.who)} can touch the lowest roof member (${say(roof)} m)`,
      fits: `${capital(animal.who)} need ${say(animal.needM)} m; the roof clears them`,
    });
    return {
      ...verdict,
      value: roof - bedEnd(c.bed),
      limit: animal.needM,
      ...passingRoof(c.bed, verdict.status, animal.needM),
    };
  },
};

const mountingClearance: CheckRule<Context> = {
  id: 'mountingClearance',
  theme: 'fit',
  run: (c) => {
    const withers = c.bed && c.largest('withersHeightM');
    if (!c.bed || !withers || !c.roofed) return null;
    const rise = c.row('mountingRiseM');
    const roof = lowestRoofM(c.shed);
    const need = withers.size + rise.central;
    const verdict = rising(c, c.bed, {
      topM: roof - need,
      row: rise,
      fails: `An animal that mounts another (withers at ${say(need)} m) hits the roof`,
      fits: `Withers of a mounting animal at ${say(need)} m clear the roof`,
    });
    return {
      ...verdict,
      value: roof - bedEnd(c.bed),
      limit: need,
      ...passingRoof(c.bed, verdict.status, need),
    };
  },
};

const pushWallHeight: CheckRule<Context> = {
  id: 'pushWallHeight',
  theme: 'fit',
  run: (c) => {
    if (!c.bed) return null;
    const spare = c.row('wallFreeboardM');
    const verdict = rising(c, c.bed, {
      topM: c.shed.pushWallM - spare.central,
      row: spare,
      fails: `Less than ${say(spare.central)} m of the push wall (${say(c.shed.pushWallM)} m) stands above the bed`,
      fits: `The push wall (${say(c.shed.pushWallM)} m) stays ${say(spare.central)} m or more above the bed`,
    });
    return verdict.status === 'pass'
      ? verdict
      : { ...verdict, passesWith: `a push wall of ${say(up(c.bed.end.high + spare.central))} m` };
  },
};

const bedDepth: CheckRule<Context> = {
  id: 'bedDepth',
  theme: 'fit',
  run: (c) => {
    if (!c.bed) return null;
    const full = c.row('bedCleanOutDepthM');
    const week = firstWeek(c.bed.depthM, (depth) => depth > full.central);
    return {
      status: week === undefined ? 'pass' : 'look',
      value: c.bed.end.central,
      limit: full.central,
      unit: 'm',
      row: full,
      week,
      words:
        week === undefined
          ? `The bed ends at ${say(c.bed.end.central)} m (${say(c.bed.end.low)} to ${say(c.bed.end.high)}), below the depth at which beds are emptied.`
          : `The bed passes ${say(full.central)} m, the usual depth for a clean-out, in ${sayWeek(c.scenario, week)}: plan to empty part of it, or build for ${say(c.bed.end.high)} m, the high end of its range (${say(c.bed.end.low)} to ${say(c.bed.end.high)} m).`,
      ...(week === undefined ? {} : { passesWith: `part of it emptied before ${sayWeek(c.scenario, week)}` }),
    };
  },
};

const bedGrowth: CheckRule<Context> = {
  id: 'bedGrowth',
  theme: 'fit',
  run: (c) => {
    if (!c.bed || c.bed.weeks < 2) return null;
    const row = c.row('bedGrowthMPerDay');
    const perDay = (c.bed.end.central - c.bed.startM) / (c.bed.weeks * 7);
    const inside = perDay >= row.low && perDay <= row.high;
    return {
      status: inside ? 'pass' : 'look',
      value: perDay * 100,
      limit: row.low * 100,
      limitHigh: row.high * 100,
      unit: 'cm/d',
      row,
      words: `The bed grows ${say(perDay * 100)} cm a day; ${say(row.low * 100)} to ${say(row.high * 100)} cm is usual at about 1 m² for each 100 kg.${inside ? '' : ' Check bedding rate, area and weights.'}`,
    };
  },
};

const bedEnd = (bed: BedSeries) => bed.end.central;

export const FIT_RULES: readonly CheckRule<Context>[] = [
  roofClearance,
  hornClearance,
  mountingClearance,
  pushWallHeight,
  bedDepth,
  bedGrowth,
];

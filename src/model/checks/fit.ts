/** Does everything still fit over and beside a floor that rises all winter? */
import { barrierRaises, feetLevels, feetStart } from './barrier.ts';
import { type BedSeries, firstWeek, sayDay, sayWeek } from './bedSeries.ts';
import type { CheckRule, Verdict } from './check.ts';
import { type Context, lowestRoofM } from './context.ts';
import { animalReachM, machineNeedM } from './reach.ts';
import { capital, say } from './say.ts';

interface Rising {
  /** Highest bed level that still fits, m above the floor. */
  readonly topM: number;
  readonly row: Verdict['row'];
  /** `the bed leaves too little room for horns`. */
  readonly fails: string;
  readonly fits: string;
  /** Easily mended on the day: never more than a look. */
  readonly mendable?: boolean;
}

/** A bed level against a fixed height: stop when the central forecast passes it, look when only its range does. */
function rising(c: Context, bed: BedSeries, { topM, row, fails, fits, mendable }: Rising): Verdict {
  const week = firstWeek(bed.depthM, (depth) => depth > topM);
  const early = firstWeek(bed.highM, (depth) => depth > topM);
  const shared = { value: bed.end.central, limit: topM, unit: 'm', row };
  if (week !== undefined)
    return {
      ...shared,
      status: mendable ? 'look' : 'stop',
      week,
      words: `${fails} from ${sayWeek(c.scenario, week)}; ${lastGood(c, week)}.`,
    };
  if (early !== undefined)
    return {
      ...shared,
      status: 'look',
      week: early,
      words: `${fits} on the central forecast, but a loosely trodden bed would be too high from ${sayWeek(c.scenario, early)}.`,
    };
  return { ...shared, status: 'pass', words: `${fits} all winter, even if the bed lies loose.` };
}

function lastGood(c: Context, week: number): string {
  return week > 1 ? `${sayWeek(c.scenario, week - 1)} is the latest week that still fits` : 'it never fits';
}

const roofClearance: CheckRule<Context> = {
  id: 'roofClearance',
  theme: 'fit',
  run: (c) => {
    if (!c.bed) return null;
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
    return { ...verdict, value: free, limit: need };
  },
};

const hornClearance: CheckRule<Context> = {
  id: 'hornClearance',
  theme: 'fit',
  run: (c) => {
    const animal = c.bed && animalReachM(c);
    if (!c.bed || !animal) return null;
    const roof = lowestRoofM(c.shed);
    const verdict = rising(c, c.bed, {
      topM: roof - animal.needM,
      row: animal.row,
      fails: `${capital(animal.who)} can touch the lowest roof member (${say(roof)} m)`,
      fits: `${capital(animal.who)} need ${say(animal.needM)} m; the roof clears them`,
    });
    return { ...verdict, value: roof - bedEnd(c.bed), limit: animal.needM };
  },
};

const mountingClearance: CheckRule<Context> = {
  id: 'mountingClearance',
  theme: 'fit',
  run: (c) => {
    const withers = c.bed && c.largest('withersHeightM');
    if (!c.bed || !withers) return null;
    const rise = c.row('mountingRiseM');
    const roof = lowestRoofM(c.shed);
    const need = withers.size + rise.central;
    const verdict = rising(c, c.bed, {
      topM: roof - need,
      row: rise,
      fails: `An animal that mounts another (withers at ${say(need)} m) hits the roof`,
      fits: `Withers of a mounting animal at ${say(need)} m clear the roof`,
    });
    return { ...verdict, value: roof - bedEnd(c.bed), limit: need };
  },
};

const pushWallHeight: CheckRule<Context> = {
  id: 'pushWallHeight',
  theme: 'fit',
  run: (c) => {
    if (!c.bed) return null;
    const spare = c.row('wallFreeboardM');
    return rising(c, c.bed, {
      topM: c.shed.pushWallM - spare.central,
      row: spare,
      fails: `Less than ${say(spare.central)} m of the push wall (${say(c.shed.pushWallM)} m) stands above the bed`,
      fits: `The push wall (${say(c.shed.pushWallM)} m) stays ${say(spare.central)} m or more above the bed`,
    });
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
          : `The bed passes ${say(full.central)} m, the usual depth for a clean-out, in ${sayWeek(c.scenario, week)}: plan to empty part of it or build for ${say(c.bed.end.high)} m.`,
    };
  },
};

const barrierLift: CheckRule<Context> = {
  id: 'barrierLift',
  theme: 'fit',
  run: (c) => {
    if (!c.bed || c.scenario.feeder !== 'barrier') return null;
    const row = c.row('barrierThroatM');
    const raises = barrierRaises(c.scenario, c.bed, { throat: row, step: c.row('barrierRaiseStepM') });
    const needed = raises.at(-1)?.totalM ?? 0;
    const limit = c.shed.barrierLiftM;
    const shared = { value: needed, limit, unit: 'm', row };
    if (needed === 0) {
      const words =
        c.shed.stanceDepthM > 0
          ? 'Animals eat from the scraped stance, so barrier and trough keep their height; if the stance is left to fill, they must rise with the bed.'
          : 'The bed does not grow enough to need a lift of barrier and trough.';
      return { ...shared, status: 'pass', words };
    }
    const list = raises.map((r) => `${sayDay(r.day)} by ${say(r.byM)} m`).join(', ');
    const beyond = raises.find((r) => r.totalM > limit + 1e-9);
    if (beyond)
      return {
        ...shared,
        status: 'stop',
        week: beyond.week,
        words: `Barrier and trough must rise ${say(needed)} m but can be lifted only ${say(limit)} m; out of reach from ${sayWeek(c.scenario, beyond.week)}. Lifts: ${list}.`,
      };
    return {
      ...shared,
      status: 'pass',
      words: `Raise barrier and trough together: ${list} (${say(needed)} m in all, ${say(limit)} m possible).`,
    };
  },
};

const barrierThroat: CheckRule<Context> = {
  id: 'barrierThroat',
  theme: 'fit',
  run: (c) => {
    if (!c.housed || c.scenario.feeder !== 'barrier') return null;
    const row = c.row('barrierThroatM');
    const ok = c.shed.barrierM >= row.low && c.shed.barrierM <= row.high;
    return {
      status: ok ? 'pass' : 'look',
      value: c.shed.barrierM,
      limit: row.central,
      unit: 'm',
      row,
      words: `The sill of the barrier begins ${say(c.shed.barrierM)} m above the feet; ${say(row.low)} to ${say(row.high)} m suits grown cattle, less for young stock. Keep the trough floor ${say(c.row('troughFloorM').central)} m above the feet.`,
    };
  },
};

const stanceStep: CheckRule<Context> = {
  id: 'stanceStep',
  theme: 'fit',
  run: (c) => {
    if (!c.bed || c.shed.stanceDepthM <= 0) return null;
    const step = c.row('stanceStepM');
    const ramp = c.row('bedRampRatio');
    const week = firstWeek(c.bed.depthM, (depth) => depth > step.central);
    const run = c.bed.end.central * ramp.central;
    const flat = c.shed.depthM - c.shed.stanceDepthM - run;
    return {
      status: week === undefined ? 'pass' : 'look',
      value: c.bed.end.central,
      limit: step.central,
      unit: 'm',
      row: step,
      week,
      words:
        week === undefined
          ? `The bed stands ${say(c.bed.end.central)} m above the stance at the end: one step.`
          : `The bed stands more than a step (${say(step.central)} m) above the scraped stance from ${sayWeek(c.scenario, week)} and ${say(c.bed.end.central)} m at the end. Leave ramps of bedding at both ends, ${say(run, 1)} m long (${say(ramp.central)}:1)${flat < 0 ? ', which is longer than the bed is deep: lay them along the barrier' : ''}; no single way down.`,
    };
  },
};

const gateTop: CheckRule<Context> = {
  id: 'gateTop',
  theme: 'fit',
  run: (c) => {
    if (!c.bed) return null;
    const row = c.row('gateTopM');
    return rising(c, c.bed, {
      topM: feetStart({ ...c.scenario, shed: { ...c.shed, stanceDepthM: 0 } }) + c.shed.gateHeightM - row.low,
      row,
      fails: `Gates (${say(c.shed.gateHeightM)} m above the first bed) stand less than ${say(row.low)} m above the bed and no longer swing: hang them on lifting hinges or slip rails`,
      fits: `Gates stay at least ${say(row.low)} m above the bed`,
      mendable: true,
    });
  },
};

const bowlHeight: CheckRule<Context> = {
  id: 'bowlHeight',
  theme: 'fit',
  run: (c) => {
    if (!c.bed || c.shed.waterBowls === 0) return null;
    const row = c.row('bowlRimM');
    const feet = feetLevels(c.scenario, c.bed);
    const rim = feetStart(c.scenario) + c.shed.bowlHeightM;
    const lift = Math.max(0, ...feet.map((level) => level + row.low - rim));
    const { bowlLiftM } = c.shed;
    const week = firstWeek(feet, (level) => level + row.low - rim > bowlLiftM + 1e-9);
    const first = firstWeek(feet, (level) => level + row.low - rim > 1e-9);
    const shared = { value: lift, limit: bowlLiftM, unit: 'm', row };
    if (week !== undefined)
      return {
        ...shared,
        status: 'stop',
        week,
        words: `Water bowls sink below ${say(row.low)} m above the bed and fill with dung from ${sayWeek(c.scenario, week)}; ${lastGood(c, week)}. They can be lifted ${say(bowlLiftM)} m and need ${say(lift)} m: set them on the stance or make them rise.`,
      };
    const words =
      first === undefined
        ? `Water bowls keep their rim ${say(row.low)} m or more above the feet${c.shed.stanceDepthM > 0 ? ', standing on the scraped stance' : ''}.`
        : `Lift the water bowls from ${sayWeek(c.scenario, first)} on, ${say(lift)} m in all (${say(bowlLiftM)} m possible).`;
    return { ...shared, status: 'pass', words };
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
      limit: row.central * 100,
      unit: 'cm/d',
      row,
      words: `The bed grows ${say(perDay * 100)} cm a day; ${say(row.low * 100)} to ${say(row.high * 100)} is usual at about 1 m² for each 100 kg.${inside ? '' : ' Check bedding rate, area and weights.'}`,
    };
  },
};

const bedEnd = (bed: BedSeries) => bed.end.central;

export const FIT_RULES: readonly CheckRule<Context>[] = [
  roofClearance, hornClearance, mountingClearance, pushWallHeight, bedDepth, bedGrowth,
  barrierLift, barrierThroat, stanceStep, gateTop, bowlHeight,
]; // biome-ignore format: one short list

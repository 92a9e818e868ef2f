/** Barrier, trough, gates and bowls beside a floor that rises: what must be lifted, and when. */
import { barrierRaises, feetLevels, feetStart } from './barrier.ts';
import { firstWeek, sayDay, sayWeek } from './bedSeries.ts';
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { lastGood, rising } from './rising.ts';
import { say } from './say.ts';

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
        passesWith: `a lift of ${say(needed)} m`,
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
      limit: row.low,
      limitHigh: row.high,
      unit: 'm',
      row,
      words: `The sill of the barrier begins ${say(c.shed.barrierM)} m above the feet; ${say(row.low)} to ${say(row.high)} m suits grown cattle, less for young stock. Keep the trough floor ${say(c.row('troughFloorM').central)} m above the feet.`,
    };
  },
};

const troughUnderEave: CheckRule<Context> = {
  id: 'troughUnderEave',
  theme: 'fit',
  run: (c) => {
    if (!c.roofed || c.scenario.feeder !== 'barrier') return null;
    const row = c.row('troughWidthM');
    const { roadM } = c.built();
    const overM = c.shed.overhangM + roadM;
    const shared = { value: overM, limit: row.central, unit: 'm', row };
    if (roadM > 0)
      return {
        ...shared,
        status: 'pass',
        words: `The roof runs on over the feed road and ends ${say(overM)} m in front of the barrier: the trough stays dry.`,
      };
    if (overM >= row.central)
      return {
        ...shared,
        status: 'pass',
        words: `The edge of the roof stands ${say(overM)} m in front of the barrier, beyond a trough ${say(row.central)} m wide. What drips and slides from it lands on the feed road, where somebody walks.`,
      };
    return {
      ...shared,
      status: 'look',
      words: `The edge of the roof stands ${say(overM)} m in front of the barrier, over a trough ${say(row.central)} m wide: rain that the gutter misses drips on the feed, and snow slides into it and onto whoever feeds. A wider overhang, guards that hold the snow (which the roof then has to carry: ask an engineer first), or a roof over the feed road.`,
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
    const topM =
      feetStart({ ...c.scenario, shed: { ...c.shed, stanceDepthM: 0 } }) + c.shed.gateHeightM - row.low;
    const verdict = rising(c, c.bed, {
      topM,
      row,
      fails: `Gates (${say(c.shed.gateHeightM)} m above the first bed) stand less than ${say(row.low)} m above the bed and no longer swing: hang them on lifting hinges or slip rails`,
      fits: `Gates stay at least ${say(row.low)} m above the bed`,
      mendable: true,
    });
    const higher = Math.ceil((c.shed.gateHeightM + c.bed.end.high - topM) * 100 - 1e-6) / 100;
    return verdict.status === 'pass'
      ? verdict
      : { ...verdict, passesWith: `gates ${say(higher)} m above the first bed` };
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
        passesWith: `bowls that can be lifted ${say(Math.ceil(lift * 100 - 1e-6) / 100)} m`,
        words: `Water bowls sink below ${say(row.low)} m above the bed and fill with dung from ${sayWeek(c.scenario, week)}; ${lastGood(c, week)}. They can be lifted ${say(bowlLiftM)} m and need ${say(lift)} m: set them on the stance or make them rise.`,
      };
    const words =
      first === undefined
        ? `Water bowls keep their rim ${say(row.low)} m or more above the feet${c.shed.stanceDepthM > 0 ? ', standing on the scraped stance' : ''}.`
        : `Lift the water bowls from ${sayWeek(c.scenario, first)} on, ${say(lift)} m in all (${say(bowlLiftM)} m possible).`;
    return { ...shared, status: 'pass', words };
  },
};

export const FITTING_RULES: readonly CheckRule<Context>[] = [
  barrierLift,
  barrierThroat,
  troughUnderEave,
  stanceStep,
  gateTop,
  bowlHeight,
];

/** Loads as numbers for the engineer. None of this is a design, and none of it passes a building. */

import type { Coefficient } from '../../tables/coefficient.ts';
import { pushWallForce, storedManureForce } from '../works/pushWall.ts';
import { roofShape } from '../works/roof.ts';
import { roofSnowKnPerM2 } from '../works/snowLoad.ts';
import { peakWindKnPerM2 } from '../works/windLoad.ts';
import type { CheckRule, Verdict } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

const ENGINEER = 'A number for the engineer, not a design; check the local rule.';

/** Snow on the roof, kN per m² of plan, without what drifts or slides; throws MissingRow. */
export const snowOnRoofKnPerM2 = (c: Context): number =>
  roofSnowKnPerM2(
    c.shed.snowLoadKnPerM2,
    c.shed.pitchDeg,
    c.row('snowExposureFactor').central,
    c.row('snowThermalFactor').central,
  );

/** Peak of the wind at the ridge, kN per m², over ground as rough as open fields unless said; throws MissingRow. */
export const windAtRidgeKnPerM2 = (c: Context, roughnessM = c.row('windRoughnessM').central): number =>
  peakWindKnPerM2(
    {
      basicMPerS: c.shed.basicWindMPerS,
      airKgPerM3: c.row('windAirDensityKgPerM3').central,
      roughnessM,
      leastHeightM: c.row('windLeastHeightM').central,
    },
    roofShape(c.shed).ridgeM,
  );

const snow: CheckRule<Context> = {
  id: 'snowLoad',
  theme: 'loads',
  run: (c) => {
    if (!c.roofed) return null;
    const row = c.row('snowEngineerKnPerM2');
    const { snowLoadKnPerM2: ground, pitchDeg } = c.shed;
    const load = snowOnRoofKnPerM2(c);
    return {
      status: 'look',
      value: load,
      limit: null,
      unit: 'kN/m²',
      row: c.row('snowExposureFactor'),
      words: `Snow on the roof ${say(load)} kN/m² of plan from ${say(ground)} kN/m² on the ground at ${say(pitchDeg)}°, ${say(load * c.row('snowSafetyFactor').central)} kN/m² with the safety factor; drifts, sliding snow and wind uplift on an open side come on top${ground > row.central ? ' and this much snow needs an engineer in any case' : ''}. ${ENGINEER}`,
    };
  },
};

/** Rain that soaks into snow on the roof: only where the code of the country counts it, and only as a number to ask about. */
const rainOnSnow: CheckRule<Context> = {
  id: 'rainOnSnow',
  theme: 'loads',
  run: (c) => {
    if (!c.roofed || c.shed.snowLoadKnPerM2 <= 0) return null;
    const { snowLoadKnPerM2: ground } = c.shed;
    const verdict = (row: Coefficient, addedKnPerM2: number, words: string): Verdict => ({
      status: 'look',
      value: addedKnPerM2,
      limit: null,
      unit: 'kN/m²',
      row,
      words: `${words} ${ENGINEER}`,
    });
    if (c.country === 'CA') {
      const row = c.row('canadaRainOnSnowKnPerM2');
      return verdict(
        row,
        row.central,
        `The Canadian code adds rain that falls into the snow: ${say(row.low)} to ${say(row.high)} kN/m² by place, ${say(row.central)} kN/m² taken here, so ${say(snowOnRoofKnPerM2(c) + row.central)} kN/m² on the roof in all. Take the value of your place from the code's table.`,
      );
    }
    if (c.country === 'US') {
      const row = c.row('unitedStatesRainOnSnowKnPerM2');
      const light = c.row('unitedStatesRainOnSnowUpToKnPerM2');
      const added = ground <= light.central ? row.central : 0;
      return verdict(
        row,
        added,
        added > 0
          ? `The American load standard adds ${say(added)} kN/m² for rain on snow on roofs of low slope where the ground snow is no more than ${say(light.central)} kN/m² (${say(ground)} here): ${say(snowOnRoofKnPerM2(c) + added)} kN/m² in all.`
          : `The American load standard adds rain on snow only where the ground snow is no more than ${say(light.central)} kN/m²; here it is ${say(ground)}.`,
      );
    }
    return null;
  },
};

const wind: CheckRule<Context> = {
  id: 'windLoad',
  theme: 'loads',
  run: (c) => {
    if (!c.roofed) return null;
    const { basicWindMPerS } = c.shed;
    const topM = roofShape(c.shed).ridgeM;
    const row = c.row('windRoughnessM');
    const pressure = windAtRidgeKnPerM2(c);
    const lift = pressure * c.row('windOpenFrontFactor').central;
    return {
      status: 'look',
      value: pressure,
      limit: null,
      unit: 'kN/m²',
      row,
      words: `Wind of ${say(basicWindMPerS)} m/s presses and sucks with a peak of ${say(pressure)} kN/m² at the ridge (${say(topM, 1)} m) in open fields, ${say(windAtRidgeKnPerM2(c, row.low))} kN/m² at the shore. With the front open it can lift the roof with about ${say(lift)} kN/m², and sheets and timber weigh ${say(c.row('roofDeadLoadKnPerM2').central)} kN/m²: every joint, post and pad must hold it down. Is ${say(basicWindMPerS)} m/s the local map's? ${ENGINEER}`,
    };
  },
};

const frost: CheckRule<Context> = {
  id: 'frostDepth',
  theme: 'loads',
  run: (c) => {
    if (!c.roofed) return null;
    const row = c.row('padDepthM');
    const frostDepthM = c.shed.frostDepthM ?? c.value('frostDepthM');
    if (frostDepthM === null) return null;
    const given = c.shed.frostDepthM !== undefined;
    const below = Math.max(0, frostDepthM - row.central);
    return {
      status: 'look',
      value: frostDepthM,
      limit: row.central,
      unit: 'm',
      row,
      words: `Foundations go below the depth to which the ground freezes, ${given ? `${say(frostDepthM)} m in this notebook` : `${say(frostDepthM)} m reckoned from the winters of the weather in use, for bare silt without snow`}${below > 0 ? `: the bill counts ${say(below)} m of stub on each pad` : ', which a usual pad reaches'}. Cold country freezes to 1 m and far deeper, sand and gravel deeper than silt: the local code says how deep, not this figure. Walls and the digging are not counted deeper. ${ENGINEER}`,
    };
  },
};

const pushWall: CheckRule<Context> = {
  id: 'pushWallLoad',
  theme: 'loads',
  run: (c) => {
    if (!c.bed) return null;
    const height = Math.min(c.bed.end.high, c.shed.pushWallM);
    const row = c.row('beddingWeightKnPerM3');
    const surcharge = c.row('loaderSurchargeKnPerM2').central;
    const of = (surchargeKnPerM2: number) =>
      pushWallForce({
        heightM: height,
        earthPressure: c.row('earthPressureFraction').central,
        weightKnPerM3: row.central,
        surchargeKnPerM2,
      });
    const force = of(surcharge);
    const alone = of(0);
    const limit = c.row('wallEngineerM').central;
    return {
      status: 'look',
      value: force.thrustKnPerM,
      limit: null,
      unit: 'kN/m',
      row,
      words: `${say(height)} m of bed and a loader (${say(surcharge)} kN/m²) push ${say(force.thrustKnPerM)} kN on each metre of wall and bend its foot with ${say(force.momentKnmPerM)} kNm a metre (${say(alone.thrustKnPerM)} kN a metre and ${say(alone.momentKnmPerM)} kNm a metre without the loader). ${height > limit ? `Above ${say(limit)} m, or pushed by a machine, no wall without an engineer; unreinforced blocks are not a push wall. ` : ''}${ENGINEER}`,
    };
  },
};

const storedManure: CheckRule<Context> = {
  id: 'storedManureLoad',
  theme: 'loads',
  run: (c) => {
    if (!c.bed) return null;
    const row = c.row('storedManureKnPerM2PerM');
    const force = storedManureForce(c.bed.end.high, row.central);
    return {
      status: 'look',
      value: force.thrustKnPerM,
      limit: null,
      unit: 'kN/m',
      row,
      words: `Counted as stored manure of ${say(row.central)} kN/m² for each metre, ${say(c.bed.end.high)} m press ${say(force.baseKnPerM2)} kN/m² at the foot, ${say(force.thrustKnPerM)} kN a metre and ${say(force.momentKnmPerM)} kNm a metre of wall. ${ENGINEER}`,
    };
  },
};

const tankWall: CheckRule<Context> = {
  id: 'tankWall',
  theme: 'loads',
  run: (c) => {
    if (!c.slatted) return null;
    const row = c.row('storedManureKnPerM2PerM');
    const depth = c.scenario.slats.tankDepthM;
    const force = storedManureForce(depth, row.high);
    return {
      status: 'look',
      value: force.thrustKnPerM,
      limit: null,
      unit: 'kN/m',
      row,
      words: `A full tank ${say(depth)} m deep presses ${say(force.thrustKnPerM, 1)} kN on each metre of wall, and earth outside presses back when it is empty. Tanks are for a specialist. ${ENGINEER}`,
    };
  },
};

const timber: CheckRule<Context> = {
  id: 'longestTimber',
  theme: 'loads',
  run: (c) => {
    if (!c.roofed) return null;
    const row = c.row('spanEngineerM');
    const cos = Math.cos((c.shed.pitchDeg * Math.PI) / 180);
    const rafter = roofShape(c.shed).rafterM + (cos > 0 ? c.shed.overhangM / cos : 0);
    const need = Math.max(rafter, c.shed.bayM);
    const fits = c.shed.longestTimberM >= need;
    return {
      status: 'look',
      value: c.shed.longestTimberM,
      limit: need,
      unit: 'm',
      row,
      ...(fits ? {} : { passesWith: `timber ${say(need, 1)} m long` }),
      words: `Longest timber ${say(c.shed.longestTimberM)} m; rafters run ${say(rafter, 1)} m with the overhang, purlins ${say(c.shed.bayM)} m between frames. ${fits ? 'They can be had in one piece.' : 'They must be joined or the shed shallower.'} ${need > row.central ? `Spans above ${say(row.central)} m need an engineer. ` : ''}${ENGINEER}`,
    };
  },
};

export const LOAD_RULES: readonly CheckRule<Context>[] = [
  snow,
  rainOnSnow,
  wind,
  frost,
  pushWall,
  storedManure,
  tankWall,
  timber,
];

/** Ventilation by the animals' own heat, beside the handbooks' rules of slot width: they disagree. */
import type { HerdGroup } from '../../notebook/schema.ts';
import { cowHeatW, growingHeatW, sensibleHeatW } from '../works/animalHeat.ts';
import { roofShape } from '../works/roof.ts';
import {
  effectiveOpeningM2,
  openingForM2,
  type Stack,
  stackFlowM3PerS,
  stackWarmingK,
} from '../works/stackEffect.ts';
import type { CheckRule } from './check.ts';
import type { Context } from './context.ts';
import { say } from './say.ts';

const KELVIN = 273.15;
const SECONDS = 3600;

interface Air {
  readonly stack: Stack;
  readonly outletM2: number;
  readonly inletM2: number;
  readonly flowM3PerHourHead: number;
  readonly warmingK: number | null;
}

function heatOf(c: Context, group: HerdGroup): number {
  const pregnant = c.row('heatPregnancyDay').central;
  const carried = group.pregnantShare * (cowHeatW(0, 0, pregnant) - cowHeatW(0, 0, 0));
  if (group.class === 'sucklerCow') return cowHeatW(group.weightKg, group.milkKgPerDay, 0) + carried;
  const feedMjPerKg = c.row('heatFeedMjPerKg').central;
  return growingHeatW({ weightKg: group.weightKg, gainKgPerDay: group.gainKgPerDay, feedMjPerKg }) + carried;
}

function airOf(c: Context): Air | null {
  if (!c.roofed || c.head === 0) return null;
  const { shed } = c;
  const outside = c.row('stackOutsideC').central;
  const indoors = 1 - c.scenario.placement.pastureShare;
  const sensibleW =
    indoors * c.herd.reduce((sum, g) => sum + g.head * sensibleHeatW(heatOf(c, g), outside), 0);
  const inletM2 = shed.inletM2 ?? Math.max(0, shed.eaveM - shed.barrierM) * shed.lengthM;
  const outletM2 = shed.ridgeSlotM * shed.lengthM;
  const stack: Stack = {
    sensibleW,
    // Air enters over the open side, on average at half its height.
    heightM: Math.max(0, roofShape(shed).ridgeM - (shed.eaveM + shed.barrierM) / 2),
    outsideK: outside + KELVIN,
    discharge: c.row('airDischargeFraction').central,
    densityKgPerM3: c.row('airDensityKgPerM3').central,
    heatJPerKgK: c.row('airHeatJPerKgK').central,
  };
  const flow = stackFlowM3PerS(effectiveOpeningM2(outletM2, inletM2), stack);
  return {
    stack,
    outletM2,
    inletM2,
    flowM3PerHourHead: (flow * SECONDS) / c.head,
    warmingK: stackWarmingK(flow, stack),
  };
}

/** Slot that the stack sum asks for at the least flow, m; null where nothing drives it. */
function slotForLeastM(c: Context, air: Air): number | null {
  const flow = (c.row('ventLeastM3PerHour').central * c.head) / SECONDS;
  const need = openingForM2(flow, air.stack);
  if (need === null || need >= air.inletM2) return null;
  return need / Math.sqrt(1 - (need / air.inletM2) ** 2) / c.shed.lengthM;
}

const stackAir: CheckRule<Context> = {
  id: 'stackAir',
  theme: 'air',
  run: (c) => {
    const air = airOf(c);
    if (!air) return null;
    const row = c.row('ventLeastM3PerHour');
    const flow = air.flowM3PerHourHead;
    return {
      status: flow >= row.central ? 'pass' : flow >= row.low ? 'look' : 'stop',
      value: flow,
      limit: row.central,
      unit: 'm³/h/head',
      row,
      words: `On a windless day at ${say(c.row('stackOutsideC').central)} °C the herd's heat draws ${say(flow, 0)} m³ of air an hour for each animal through the ridge, ${say(air.warmingK, 1)} K warmer than outside; ${say(row.low)} to ${say(row.high)} m³ is the least in the cold.`,
    };
  },
};

const ridgeSlot: CheckRule<Context> = {
  id: 'ridgeSlot',
  theme: 'air',
  run: (c) => {
    const air = airOf(c);
    if (!air) return null;
    const span = c.shed.depthM;
    const irish = c.row(
      span <= 15 ? 'ridgeSlotIrishUpTo15M' : span <= 24 ? 'ridgeSlotIrishUpTo24M' : 'ridgeSlotIrishOver24M',
    );
    const american = c.row('ridgeSlotNorthAmericaFraction').central * span;
    const slot = c.shed.ridgeSlotM;
    const needed = slotForLeastM(c, air);
    const snow = c.row('snowRidgeSlotM');
    const drift = slot >= snow.central && c.shed.snowLoadKnPerM2 > c.row('snowEngineerKnPerM2').central;
    return {
      status: slot >= irish.central && !drift ? 'pass' : slot > 0 || !c.bedded ? 'look' : 'stop',
      value: slot * 1000,
      limit: irish.central * 1000,
      unit: 'mm',
      row: irish,
      ...(slot >= irish.central ? {} : { passesWith: `a ridge slot of ${say(irish.central * 1000, 0)} mm` }),
      words: `Ridge slot ${say(slot * 1000, 0)} mm. The Irish rule asks ${say(irish.central * 1000, 0)} mm at this span, the North American ${say(american * 1000, 0)} mm, the stack sum ${needed === null ? 'cannot be met through this inlet' : `${say(needed * 1000, 0)} mm for the least air`}: they disagree, so take the widest the weather allows.${drift ? ' At this snow an open ridge this wide lets drifting snow onto the bed: use upstands.' : ''}`,
    };
  },
};

const inletToOutlet: CheckRule<Context> = {
  id: 'inletToOutlet',
  theme: 'air',
  run: (c) => {
    const air = airOf(c);
    if (!air || air.outletM2 <= 0) return null;
    const row = c.row('inletOutletRatio');
    const ratio = air.inletM2 / air.outletM2;
    return {
      status: ratio >= row.low ? 'pass' : 'look',
      value: ratio,
      limit: row.low,
      unit: 'm²/m²',
      row,
      ...(ratio >= row.low ? {} : { passesWith: `${say(row.low * air.outletM2, 1)} m² of inlets` }),
      words: `Inlets are ${say(ratio, 1)} times the ridge opening; at least ${say(row.low)}, better ${say(row.high)}, split over both sides.`,
    };
  },
};

export const AIR_RULES: readonly CheckRule<Context>[] = [stackAir, ridgeSlot, inletToOutlet];

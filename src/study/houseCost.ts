/** What a shed's bill comes to by the square metre and by the head, beside published costs of its kind. */

import { formatWhole } from '../units/format.ts';
import type { BillRow } from './billRow.ts';
import type { Run } from './evaluate.ts';

/** Lines of the bill that a listed house does not hold: stores, pads, roof water, partitions of pens, ramps, fees. */
const NOT_LISTED: readonly string[] = [
  'beddingStore', 'compostPad', 'heapCover', 'waterTank', 'penPartitions', 'exitRamps', 'outsideStore', 'storeCover', 'engineer',
]; // biome-ignore format: one list
const OUTDOORS: readonly string[] = [
  'fence',
  'movableFence',
  'energiser',
  'waterPipe',
  'troughs',
  'windbreak',
  'feeders',
  'yard',
];

export interface HouseCost {
  readonly name: string;
  readonly bedded: boolean;
  readonly currency: string;
  readonly planM2: number;
  readonly head: number;
  /** The whole bill and the house alone, by the square metre of plan; money. */
  readonly billPerM2: number;
  readonly perM2: number;
  readonly perHead: number;
  /** The published cost a square metre of a shed of the same floors, and what builders are said to ask; money. */
  readonly listPerM2: number;
  readonly askedPerM2: number;
  /** Slats and tank alone by the square metre of slats, against the list's slatted area; null without slats over a tank. */
  readonly tank: {
    readonly perM2: number;
    readonly listPerM2: number;
    readonly depthM: number;
    readonly listDepthM: number;
    /** What the depth beyond the published one costs; 0 where the tank is no deeper. */
    readonly deeperPerM2: number;
  } | null;
  /** A published slatted shed by the head, low and high; null for a bedded shed. */
  readonly shedPerHead: readonly [number, number] | null;
  /** Dearest lines of the house with their share of it, the dearest first. */
  readonly dearest: readonly { readonly label: string; readonly share: number }[];
}

/** Null where nothing is built by measures, a price is missing, or money has no rate to the euro. */
export function houseCost(run: Run, index: number, bill: readonly BillRow[]): HouseCost | null {
  const { values, scenario, name } = run.results[index];
  const { coefficients } = run.bound[index];
  const planM2 = values.shedPlanM2 ?? 0;
  const head = values.headCount ?? 0;
  const row = (id: string) => coefficients.get(id);
  const { currency } = run;
  const rate = currency === 'EUR' ? 1 : row(`reference${currency[0]}${currency.slice(1).toLowerCase()}PerEur`)?.central; // biome-ignore format: one choice
  const loose = row('referenceLooseHousePricePerM2');
  const slatted = row('referenceSlattedAreaPricePerM2');
  const shed = row('referenceSlattedShedPricePerHead');
  const tank = row('referenceSlattedTankDepthM');
  if (!(planM2 > 0 && head > 0) || rate === undefined || !loose || !slatted || !shed || !tank) return null;
  if (bill.some(({ amount }) => amount === null)) return null;
  const sum = (rows: readonly BillRow[]) => rows.reduce((all, { amount }) => all + (amount ?? 0), 0);
  const house = bill.filter(({ id }) => !NOT_LISTED.includes(id) && !OUTDOORS.includes(id));
  const cost = sum(house);
  const slatsM2 = bill.find(({ id }) => id === 'slats')?.quantity ?? 0;
  const slatsShare = Math.min(1, slatsM2 / planM2);
  const tankLine = bill.find(({ id }) => id === 'tank');
  const tankDepthM = scenario.slats.tankDepthM;
  const listed = (end: 'central' | 'high') =>
    (slatsShare * slatted[end] + (1 - slatsShare) * loose[end]) * rate;
  return {
    name,
    bedded: scenario.placement.bedShare > 0,
    currency,
    planM2,
    head,
    billPerM2: sum(bill) / planM2,
    perM2: cost / planM2,
    perHead: cost / head,
    listPerM2: listed('central'),
    askedPerM2: listed('high'),
    tank:
      tankLine && slatsM2 > 0 && scenario.slats.store === 'underSlats'
        ? {
            perM2: sum(bill.filter(({ id }) => id === 'slats' || id === 'tank')) / slatsM2,
            listPerM2: slatted.central * rate,
            depthM: tankDepthM,
            listDepthM: tank.central,
            deeperPerM2: ((tankLine.amount ?? 0) / slatsM2) * Math.max(0, 1 - tank.central / tankDepthM),
          }
        : null,
    shedPerHead:
      slatsShare > 0 && !(scenario.placement.bedShare > 0) ? [shed.low * rate, shed.high * rate] : null,
    dearest: [...house]
      .sort((a, b) => (b.amount ?? 0) - (a.amount ?? 0))
      .slice(0, 3)
      .map(({ label, amount }) => ({ label, share: (amount ?? 0) / cost })),
  };
}

const whole = (value: number) => formatWhole(value);

/** Why slats are dear: what they and the tank come to alone, and how much of that is depth. */
function tankWords(
  { perM2, listPerM2, depthM, listDepthM, deeperPerM2 }: NonNullable<HouseCost['tank']>,
  currency: string,
): string {
  const deeper =
    deeperPerM2 > 0
      ? ` ${currency} ${whole(deeperPerM2)} of it is depth: ${Number(depthM.toFixed(2))} m against the ${Number(listDepthM.toFixed(2))} m of a published three-bay shed.`
      : '';
  return `Slats and tank alone come to ${currency} ${whole(perM2)} a square metre of slats, where the list has ${whole(listPerM2)} for the slatted area whole; our tank is priced by the cubic metre from an open tank, and that price is old: get a quote.${deeper}`;
}

/** The comparison in words; every figure in the money of the notebook. */
export function houseWords(of: HouseCost): string {
  const { currency, planM2, head, billPerM2, perM2, perHead, listPerM2, askedPerM2, shedPerHead, dearest } =
    of;
  const tank = of.tank === null ? '' : ` ${tankWords(of.tank, currency)}`;
  const off = perM2 / listPerM2 - 1;
  const gap =
    Math.abs(off) < 0.005
      ? 'as much as the list'
      : `${whole(Math.abs(off) * 100)} % ${off > 0 ? 'above' : 'below'} the list`;
  const inside =
    off <= 0
      ? 'Below it, look for what is missing'
      : perM2 <= askedPerM2
        ? 'That lies within what builders are said to ask'
        : `That is ${whole((perM2 / askedPerM2 - 1) * 100)} % above even that`;
  const lines = dearest.map(({ label, share }) => `${label} (${whole(share * 100)} %)`).join(', ');
  const each = shedPerHead
    ? ` A three-bay slatted shed of 2023 came to ${whole(shedPerHead[0])} to ${whole(shedPerHead[1])} a cow, with about 5 m² each; these ${whole(head)} head have ${(planM2 / head).toFixed(1)} m² each.`
    : '';
  return `The bill comes to ${currency} ${whole(billPerM2)} a square metre of plan; the house alone, without stores, pads, roof water, pens’ partitions, ramps and fees, to ${currency} ${whole(perM2)} a square metre and ${whole(perHead)} a head. Irish reference costs of 2025 for the same floors come to ${whole(listPerM2)} a square metre without value added tax, and builders are said to ask about a fifth more, ${whole(askedPerM2)} a square metre: the house is ${gap}. ${inside}. Dearest are ${lines}.${tank} The list is of another country and year${currency === 'EUR' ? '' : '; it is converted at the mean rate of 2024'}.${each}`;
}

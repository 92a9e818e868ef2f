/** What every rule looks at: the scenario's shed, herd and bed, read once. */
import type { HerdGroup, Scenario } from '../../notebook/schema.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import type { Values } from '../quantities.ts';
import {
  type FrameShape,
  frameLines,
  postRows,
  type ShedFloor,
  type ShedFrame,
  type ShedShape,
  shedFloor,
  shedFrame,
  type WayOut,
  waysOut,
} from '../works/geometry.ts';
import { type BedSeries, bedSeries } from './bedSeries.ts';
import { type CheckInput, MissingRow } from './check.ts';

export interface Context extends CheckInput {
  readonly shed: Scenario['shed'];
  readonly herd: readonly HerdGroup[];
  readonly head: number;
  readonly liveWeightKg: number;
  readonly horned: boolean;
  readonly bedded: boolean;
  readonly slatted: boolean;
  readonly outdoors: boolean;
  /** Animals stand on bed, slats or yard for some of the day. */
  readonly housed: boolean;
  /** They do so under a roof. */
  readonly roofed: boolean;
  /** Null where there is no bed. */
  readonly bed: BedSeries | null;
  readonly bedM2: number;
  /** The shed as the bill counts it; throws MissingRow. */
  readonly built: () => Built;
  /** Two-letter code in capitals, or null. */
  readonly country: string | null;
  /** A row of the tables; throws MissingRow, which shows as an open check. */
  readonly row: (id: string) => Coefficient;
  readonly value: (name: keyof Values) => number | null;
  /** Largest central value of a class family over the animals that are there; null without animals. */
  readonly largest: (
    family: string,
    of?: (group: HerdGroup) => boolean,
  ) => { size: number; row: Coefficient } | null;
}

/** What stands where, and the frame over it; the road is 0 m wide where it lies open. */
export interface Built {
  readonly floor: ShedFloor;
  readonly frame: ShedFrame;
  readonly frameShape: FrameShape;
  readonly roadM: number;
  /** Where rows of posts stand from the barrier inwards and frames along the shed, m; none without a roof. */
  readonly rows: readonly number[];
  readonly frames: readonly number[];
  readonly exits: readonly WayOut[];
}

function builtOf(scenario: Scenario, slatsM2: number, row: (id: string) => Coefficient): Built {
  const { shed, placement } = scenario;
  const roadM = shed.roofed && shed.feedRoadRoofed ? row('commonPracticeFeedRoadOneSideM').central : 0;
  const shape = {
    ...shed,
    bedShare: placement.bedShare,
    slatsM2,
    calvingPenSideM: row('calvingPenSideM').central,
    calvingPenM2: row('swedenCalvingPenM2').central,
    feedRoadM: roadM,
    exitWidthM: row('exitWidthM').central,
  } satisfies ShedShape;
  const floor = shedFloor(shape, {} as ShedFloor);
  const stands = shed.roofed && floor.planM2 > 0;
  const frameShape: FrameShape = {
    ...shed,
    lengthM: stands ? shed.lengthM : 0,
    feedRoadM: roadM,
    postRowSpanM: row('postRowSpanM').central,
    purlinSpacingM: row('purlinSpacingM').central,
    wallM: placement.bedShare > 0 ? shed.pushWallM : row('penWallHeightM').central,
  };
  const frame = shedFrame(frameShape, {} as ShedFrame);
  const rows = frame.bays > 0 ? postRows(shed.depthM, frame.rows, roadM) : [];
  const frames = frame.bays > 0 ? frameLines(shed.lengthM, frame.bays) : [];
  return { floor, frame, frameShape, roadM, rows, frames, exits: waysOut(shape, floor, rows, frames) };
}

/** Members of the Union, whose nitrates directive holds there, and the United Kingdom, which kept it (from memory). */
const NITRATES_DIRECTIVE: ReadonlySet<string> = new Set(
  'AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE GB'.split(' '),
);

export const underNitratesDirective = ({ country }: Context): boolean =>
  country !== null && NITRATES_DIRECTIVE.has(country);

const WHOSE: Readonly<Record<string, string>> = { SE: 'Sweden', IE: 'Ireland', EU: 'the European Union' };

/** Put before a rule of another country: it is not the law here. Empty at home. */
export function comparedWith(c: Context, of: 'SE' | 'IE' | 'EU'): string {
  const home = of === 'EU' ? underNitratesDirective(c) : c.country === of;
  if (home) return '';
  return `No rule ${c.country === null ? 'without a country' : `for ${c.country}`} in the tables; that of ${WHOSE[of]}, for comparison: `;
}

/** Reads the input of the checks; never throws. */
export function contextOf(input: CheckInput): Context {
  const { scenario, values, coefficients } = input;
  const { shed, placement, farm } = scenario;
  const herd = farm.herd.filter((group) => group.head > 0);
  const row = (id: string): Coefficient => {
    const found = coefficients.get(id);
    if (!found) throw new MissingRow(id);
    return found;
  };
  const value = (name: keyof Values): number | null => {
    const found = values[name];
    return typeof found === 'number' && Number.isFinite(found) ? found : null;
  };
  const bedded = placement.bedShare > 0;
  const slatted = placement.slatsShare > 0;
  return {
    ...input,
    shed,
    herd,
    head: herd.reduce((sum, group) => sum + group.head, 0),
    liveWeightKg: herd.reduce((sum, group) => sum + group.head * group.weightKg, 0),
    horned: herd.some((group) => group.hornedShare > 0),
    bedded,
    slatted,
    outdoors: placement.pastureShare > 0,
    housed: bedded || slatted || placement.yardShare > 0,
    roofed: shed.roofed && (bedded || slatted || placement.yardShare > 0),
    bed: bedded ? bedSeries(input) : null,
    bedM2: Math.max(0, shed.lengthM * (shed.depthM - shed.stanceDepthM)),
    built: () => builtOf(scenario, slatted ? (value('slatsUsedM2') ?? scenario.slats.areaM2 ?? 0) : 0, row),
    country: farm.place.country?.toUpperCase() ?? null,
    row,
    value,
    largest: (family, of = () => true) => {
      let best: { size: number; row: Coefficient } | null = null;
      for (const group of herd.filter(of)) {
        const candidate = row(`${family}.${group.class}`);
        if (!best || candidate.central > best.size) best = { size: candidate.central, row: candidate };
      }
      return best;
    },
  };
}

/** The lowest roof member over the bed: eaves and tie beams count, a higher ridge does not help. */
export function lowestRoofM(shed: Scenario['shed']): number {
  return Math.min(shed.eaveM, shed.rearEaveM ?? shed.eaveM);
}

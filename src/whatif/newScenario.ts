/**
 * A scenario that is not there yet, from a way of wintering: an outline drawn for a herd that is known, turned to the
 * farm's herd as the slider would turn it, and lengthened bay by bay until the model's own limits of room are kept.
 */
import type { Notebook } from '../notebook/read.ts';
import type { NewScenario } from '../notebook/scenarioEdits.ts';
import { toScenario } from '../notebook/scenarios.ts';
import type { HerdGroup, Scenario } from '../notebook/schema.ts';
import { SYSTEMS, type System } from '../notebook/systems.ts';
import { evaluate, type WinterOf } from '../study/evaluate.ts';
import type { Tables } from '../tables/coefficient.ts';
import { turnOf, worksWritten } from './turn.ts';

export interface Surroundings {
  readonly notebook: Pick<Notebook, 'farm' | 'scenarios' | 'overrides'>;
  readonly tables: Tables;
  readonly winterOf: WinterOf;
}

export interface Proposed {
  readonly scenario: NewScenario;
  /** What it was made to, in words. */
  readonly said: string;
}

type Part = Readonly<Record<string, number | string | boolean>>;
interface Outline {
  readonly shed?: Part;
  readonly slats?: Part;
  readonly bed?: {
    readonly mix: readonly { readonly material: string; readonly share: number }[];
    readonly rateKgPer100Kg?: number;
  };
  readonly paddock?: Part;
}

/** The herd the outlines are drawn for; herd and outlines are invented, and only where the search for a size begins. */
const DRAWN_FOR: HerdGroup = {
  name: 'cows',
  class: 'sucklerCow',
  head: 20,
  weightKg: 650,
  gainKgPerDay: 0,
  pregnantShare: 0.9,
  milkKgPerDay: 0,
  hornedShare: 0,
};
const HA_PER_HEAD = 0.3;
const SHED = { calvingPensM2: 18, waterBowls: 3, exits: 2 } as const;
const SLATTED = { ...SHED, lengthM: 19.2, depthM: 9 } as const;
const BEDDED = {
  ...SHED,
  lengthM: 24,
  depthM: 10.5,
  stanceDepthM: 3.6,
  eaveM: 4.8,
  barrierLiftM: 1.2,
  bowlLiftM: 1,
} as const;
/** What a shed has of its site and its owner, the same in whatever is built there. */
const OF_SITE = [
  'snowLoadKnPerM2',
  'basicWindMPerS',
  'frostDepthM',
  'openSideAzimuthDeg',
  'longestTimberM',
  'ownTimber',
] as const;
/** Limits a shed of the right length keeps. */
const ROOM = new Set([
  'shedHoldsAnimals',
  'lyingArea',
  'totalArea',
  'slattedArea',
  'slatsFit',
  'dryBedArea',
  'feedPlaces',
]);
const BAY_M = 4.8;
const MOST_BAYS = 60;

/** A scenario of this system for the farm's herd; with `toHerd` false the shed is as it was drawn, for twenty cows. */
export function newScenario(around: Surroundings, system: System, name: string, toHerd: boolean): Proposed {
  const { farm } = around.notebook;
  const head = farm.herd.reduce((sum, group) => sum + group.head, 0);
  const bases = new Set(around.notebook.scenarios.flatMap(({ finance }) => finance.baseline ?? []));
  const [baseline] = bases;
  const base = {
    name,
    system,
    because: `To see what it would be here: ${SYSTEMS[system].label}`,
    // Held against what the others are held against, where they agree.
    ...(baseline !== undefined && bases.size === 1 ? { finance: { baseline } } : {}),
  };
  const outline = outlineOf(around, system, head);
  if (outline.shed === undefined)
    return {
      scenario: { ...base, ...outline },
      said: `on ${outline.paddock?.areaHa} ha of pasture`,
    };
  if (!toHerd)
    return {
      scenario: { ...base, ...outline },
      said: `${sizeOf(outline)}, as drawn for ${DRAWN_FOR.head} cows`,
    };
  const turned = turnedTo(around, base, outline, head);
  const kept = lengthened(around, base, turned);
  return {
    scenario: { ...base, ...kept.outline },
    said: `${sizeOf(kept.outline)} for ${head} head${kept.holds ? '' : '; the limits of room are not all kept: look at the checks'}`,
  };
}

function outlineOf({ notebook: { farm, scenarios } }: Surroundings, system: System, head: number): Outline {
  const { bedShare, slatsShare } = SYSTEMS[system].defaults.placement;
  if (!(bedShare > 0 || slatsShare > 0)) {
    const known = scenarios.find((s) => s.placement.pastureShare > 0)?.paddock.areaHa;
    const areaHa =
      known ?? Math.max(0.5, Math.min(farm.land.receivingHa, Math.round(head * HA_PER_HEAD * 10) / 10));
    return { paddock: { areaHa } };
  }
  const built = scenarios.find(({ placement }) => placement.bedShare + placement.slatsShare > 0)?.shed;
  const site = Object.fromEntries(OF_SITE.flatMap((key) => (built ? [[key, built[key]]] : [])));
  if (slatsShare > 0) return { shed: { ...SLATTED, ...site }, slats: { store: 'underSlats' } };
  const straws = farm.materials.map(({ material }) => material);
  const material = straws.find((each) => each.endsWith('Straw')) ?? straws[0];
  // As much as in the bed that is there: the same animals on the same feed.
  const rate = scenarios.find(({ placement }) => placement.bedShare > 0)?.bed.rateKgPer100Kg;
  return {
    shed: { ...BEDDED, ...site },
    bed: {
      ...(rate === undefined ? {} : { rateKgPer100Kg: rate }),
      mix: material === undefined ? [] : [{ material, share: 1 }],
    },
  };
}

type Base = Pick<NewScenario, 'name' | 'system' | 'because'>;

/** The outline as it becomes when the herd it is drawn for is turned to so many head. */
function turnedTo(around: Surroundings, base: Base, outline: Outline, head: number): Outline {
  const drawn = strictOf(around, { ...base, ...outline, farm: { herd: [DRAWN_FOR] } });
  const turn = drawn && turnOf(tried(around, drawn), 'headCount', 'built');
  if (!turn || !(head > 0)) return outline;
  const shed: Record<string, number | string | boolean> = { ...outline.shed };
  for (const [path, value] of worksWritten(turn, head)) {
    const key = path.split('.').at(-1) ?? '';
    if (key in shed) shed[key] = key === 'waterBowls' ? Math.max(1, value) : value;
  }
  shed.lengthM = wholeBays(Number(shed.lengthM));
  return { ...outline, shed };
}

function lengthened(
  around: Surroundings,
  base: Base,
  outline: Outline,
): { readonly outline: Outline; readonly holds: boolean } {
  const from = Math.round(Number(outline.shed?.lengthM) / BAY_M);
  let wider = outline;
  for (let bays = from; bays <= MOST_BAYS; bays++) {
    const longer = { ...wider, shed: { ...wider.shed, lengthM: wholeBays(bays * BAY_M) } };
    const scenario = strictOf(around, { ...base, ...longer });
    if (!scenario) break;
    const stops = tried(around, scenario).results[0].checks.filter(
      ({ id, status }) => ROOM.has(id) && status === 'stop',
    );
    if (stops.length === 0) return { outline: longer, holds: true };
    // Slats that nobody gave an area are laid by the table, which a rule of the country may ask more than.
    const slats = stops.find(({ id }) => id === 'slattedArea')?.limit;
    if (slats && wider.slats?.areaM2 === undefined) {
      wider = { ...wider, slats: { ...wider.slats, areaM2: Math.ceil(slats) } };
      bays--;
    }
  }
  return { outline, holds: false };
}

const wholeBays = (lengthM: number) =>
  Math.round(Math.max(1, Math.ceil(lengthM / BAY_M - 1e-6)) * BAY_M * 10) / 10;

const tried = ({ notebook: { overrides }, tables, winterOf }: Surroundings, scenario: Scenario) =>
  evaluate({ scenarios: [scenario], overrides }, tables, winterOf);

const strictOf = ({ notebook: { farm } }: Surroundings, written: Readonly<Record<string, unknown>>) =>
  toScenario(written, { file: '', index: 0, farm, farmIsSound: true, lineOf: () => 1 }).scenario;

const sizeOf = ({ shed }: Outline) => `a shed of ${shed?.lengthM} × ${shed?.depthM} m`;

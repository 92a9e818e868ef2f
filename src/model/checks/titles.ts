/** What each check is called, which way its limit holds, and whom an open one is for. */
import type { Check } from './check.ts';

/** `atLeast` and `atMost`: the limit is the least or the most that passes. `told`: a number without a limit of ours. */
export type Wants = 'atLeast' | 'atMost' | 'between' | 'told';

/**
 * In order of use. `stop`: does not work as written. `change`: what the keeper can change. `engineer`: loads, for a
 * licensed engineer. `local`: no rule of this country in the tables. `caution`: holds whatever the numbers are.
 */
export const CHECK_GROUPS = ['stop', 'change', 'engineer', 'local', 'caution', 'pass'] as const;
export type CheckGroup = (typeof CHECK_GROUPS)[number];

interface Entry {
  readonly title: string;
  readonly wants: Wants;
}

const least = (title: string): Entry => ({ title, wants: 'atLeast' });
const most = (title: string): Entry => ({ title, wants: 'atMost' });
const told = (title: string): Entry => ({ title, wants: 'told' });

const ENTRIES: Readonly<Record<string, Entry>> = {
  weeksThatFit: least('weeks that everything fits'),
  roofClearance: least('height under the roof'),
  hornClearance: least('height over horns and heads'),
  mountingClearance: least('height over a mounting animal'),
  pushWallHeight: most('bed against the push wall'),
  bedDepth: most('depth of the bed'),
  bedGrowth: { title: 'growth of the bed', wants: 'between' },
  troughUnderEave: least('roof edge in front of the trough'),
  barrierLift: most('lift of barrier and trough'),
  barrierThroat: { title: 'sill of the barrier', wants: 'between' },
  stanceStep: most('step from bed to stance'),
  gateTop: most('bed against the gates'),
  bowlHeight: most('lift of the water bowls'),
  shedHoldsAnimals: least('shed that holds the animals'),
  lyingArea: least('lying area'),
  totalArea: least('area under the roof'),
  slattedArea: least('slatted area'),
  slatsFit: least('slats that fit into the shed'),
  dryBedArea: least('bed for the weight on it'),
  feedPlaces: least('feed places'),
  passBehind: least('room behind a feeding animal'),
  exits: least('ways out'),
  waterPoints: least('water bowls'),
  calvingPens: least('calving and sick pens'),
  hardStanding: least('hard ground to stand on'),
  loaderTurns: least('room for the loader'),
  stackAir: least('air without wind'),
  ridgeSlot: least('ridge slot'),
  inletToOutlet: least('air inlets'),
  noonSunOnBed: least('noon sun on the bed'),
  sunHours: least('hours of sun'),
  snowLoad: told('snow load'),
  rainOnSnow: told('rain on snow'),
  windLoad: told('wind load'),
  frostDepth: told('frost depth'),
  pushWallLoad: told('push on the wall'),
  storedManureLoad: told('push of stored manure'),
  tankWall: told('push on the tank'),
  longestTimber: least('longest timber'),
  bedMoisture: most('moisture of the bed'),
  bedAirSpace: least('air in the bed'),
  bedCarbonNitrogen: least('carbon to nitrogen'),
  bedAvailableCarbon: least('carbon that rots this winter'),
  beddingStock: least('bedding within reach'),
  chipMoisture: most('moisture of the chips'),
  slurryStore: least('slurry store'),
  storeMonths: least('months the store lasts'),
  openStore: told('rain on the open store'),
  nitrogenCap: least('ground for the nitrogen'),
  phosphorusCap: least('ground for the phosphorus'),
  closedPeriod: told('closed period'),
  paddockLoad: most('nitrogen on the paddock'),
  feedingSpot: told('feeding places'),
  paddockWet: most('treading on wet ground'),
  paddockMud: most('mud round the feed'),
  paddockSward: most('stocking the sward survives'),
  paddockWater: told('water outdoors'),
  paddockShelter: told('shelter outdoors'),
  paddockFrozen: most('run-off from frozen and wet ground'),
  paddockDrainage: most('nitrate in what drains away'),
  rationReach: most('need the ration leaves open'),
  condition: most('condition by spring'),
  slattedCowsSweden: most('cows on slats'),
  outdoorShelter: told('shelter by the rules'),
  openBed: most('rain on an open bed'),
  slurryGas: told('slurry gas'),
  hotPack: told('warm bed'),
  hotStack: told('heating stacks'),
};

/** Every id that has a name; a test holds it against the rules. */
export const TITLED: readonly string[] = Object.keys(ENTRIES);

export const titleOf = (id: string): string => ENTRIES[id]?.title ?? id;
export const wantsOf = (id: string): Wants => ENTRIES[id]?.wants ?? 'told';

/** What is said once for all, whatever the numbers are. */
const WARNINGS: ReadonlySet<string> = new Set(['slurryGas', 'hotPack', 'hotStack']);

export function groupOf({ id, theme, status, foreign }: Check): CheckGroup {
  if (WARNINGS.has(id)) return 'caution';
  if (status === 'pass' || status === 'stop') return status;
  if (foreign) return 'local';
  return theme === 'loads' ? 'engineer' : 'change';
}

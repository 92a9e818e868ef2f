/** Which row of the space tables holds for a group under a rule set. Every figure: check the local rule. */
import type { HerdGroup, Scenario } from '../../notebook/schema.ts';
import type { Coefficient } from '../../tables/coefficient.ts';

export type SpaceKind = 'lying' | 'total' | 'slats' | 'feed';
type Rules = Scenario['farm']['spaceRules'];

const RULE_NAMES: Readonly<Record<Rules, string>> = {
  commonPracticeHorned: 'common practice for horned and strongly ranked herds',
  sweden: 'the Swedish rules',
  ireland: 'the Irish recommendations',
  euOrganic: 'the EU organic rules',
  unitedKingdom: 'United Kingdom assurance level',
};

const HOME: Readonly<Partial<Record<Rules, readonly string[]>>> = {
  sweden: ['SE'],
  ireland: ['IE'],
  unitedKingdom: ['GB'],
};

/** The set by name; one of another country says that it is for comparison. */
export function ruleName(rules: Rules, country: string | null): string {
  const home = HOME[rules];
  const away = home !== undefined && (country === null || !home.includes(country));
  return `${RULE_NAMES[rules]}${away ? ', for comparison' : ''}`;
}

/** Whether low-ranking animals need room to get away: horned ones, and herds kept by the rules for those. */
export const isRanked = (rules: Rules, horned: boolean): boolean =>
  horned || rules === 'commonPracticeHorned';

/** Depth of floor behind a feeding animal that lets another pass, m. */
export const passRow = (ranked: boolean, row: RowOf): Coefficient =>
  row(ranked ? 'commonPracticeHornedAlleyM' : 'commonPracticeStanceDepthM');

export interface SpaceNeed {
  /** m² or m of barrier a head. */
  readonly perHead: number;
  readonly row: Coefficient;
}

type RowOf = (id: string) => Coefficient;

const isCow = (group: HerdGroup) => group.class === 'sucklerCow';
const isAdult = (group: HerdGroup) => isCow(group) || group.class === 'bull';

/** `UpTo400Kg` for the first bound that holds the weight, `Over600Kg` beyond the last. */
function band(weightKg: number, bounds: readonly number[]): string {
  const bound = bounds.find((b) => weightKg <= b);
  return bound === undefined ? `Over${bounds.at(-1)}Kg` : `UpTo${bound}Kg`;
}

function irishKind(group: HerdGroup): 'SucklerCow' | 'Store' | 'Weanling' | 'Calf' {
  if (isAdult(group)) return 'SucklerCow';
  if (group.class === 'calf') return 'Calf';
  // The Irish tables call cattle stores above 275 kg.
  return group.class === 'weanling' || group.weightKg <= 275 ? 'Weanling' : 'Store';
}

const SWEDISH_AREAS = [150, 250, 400, 600];
const SWEDISH_FEED = [90, 150, 250, 400, 600];

function sweden(kind: SpaceKind, group: HerdGroup): string | null {
  if (kind === 'feed')
    return isAdult(group)
      ? `swedenFeedPlaceMAdult${band(group.weightKg, [500, 650])}`
      : `swedenFeedPlaceM${band(group.weightKg, SWEDISH_FEED)}`;
  const name = { lying: 'swedenLyingM2', total: 'swedenTotalM2', slats: 'swedenSlatsM2' }[kind];
  // No figure exists for cows on slats alone: they may not be kept so.
  if (isCow(group)) return kind === 'slats' ? null : `${name}SucklerCow`;
  return name + band(group.weightKg, SWEDISH_AREAS);
}

function ireland(kind: SpaceKind, group: HerdGroup): string | null {
  const of = irishKind(group);
  if (kind === 'total') return null;
  if (kind === 'feed') return `irelandFeedPlaceM${of === 'Calf' ? 'Weanling' : of}Rationed`;
  if (of === 'Calf') return kind === 'slats' ? 'irelandSlatsM2SpringCalf' : 'irelandCreepM2Calf';
  if (kind === 'slats' && group.class === 'finisher') return 'irelandSlatsM2Finisher';
  return kind === 'slats' ? `irelandSlatsM2${of}` : `irelandLyingM2${of}`;
}

/** Lying, total or slatted area (m² a head) or feed place (m a head); null where the set gives no such figure. */
export function spaceNeed(rules: Rules, kind: SpaceKind, group: HerdGroup, row: RowOf): SpaceNeed | null {
  const at = (id: string | null): SpaceNeed | null => {
    if (id === null) return null;
    const found = row(id);
    return { perHead: found.central, row: found };
  };
  const perWeight = (id: string): SpaceNeed => {
    const found = row(id);
    return { perHead: (found.central * group.weightKg) / 100, row: found };
  };
  switch (rules) {
    case 'sweden':
      return at(sweden(kind, group));
    case 'ireland':
      return at(ireland(kind, group));
    case 'euOrganic': {
      if (kind !== 'total') return null;
      if (group.class === 'bull') return at('euOrganicTotalM2Bull');
      const least = at(`euOrganicTotalM2${band(group.weightKg, [100, 200, 350])}`);
      const byWeight = group.weightKg > 350 ? perWeight('euOrganicTotalM2Per100Kg') : null;
      return least && byWeight && byWeight.perHead > least.perHead ? byWeight : least;
    }
    case 'unitedKingdom':
      if (kind === 'slats') return isAdult(group) ? at('unitedKingdomSlatsM2Cow') : null;
      return kind === 'total'
        ? at(`unitedKingdomTotalM2${band(group.weightKg, [300, 400, 500, 600, 700])}`)
        : null;
    case 'commonPracticeHorned':
      if (kind === 'feed')
        return isAdult(group) ? at('commonPracticeHornedFeedPlaceMCow') : at(sweden('feed', group));
      if (kind !== 'lying') return null;
      if (isCow(group)) return at('commonPracticeHornedLyingM2Cow');
      return perWeight(
        group.hornedShare > 0 ? 'commonPracticeHornedLyingM2Per100Kg' : 'commonPracticeLyingM2Per100Kg',
      );
  }
}

export interface HerdNeed {
  /** m² or m of barrier for the whole herd. */
  readonly total: number;
  /** Row of the group that takes most. */
  readonly row: Coefficient;
  /** True where a group had no figure in the set and was left out. */
  readonly incomplete: boolean;
}

/** The need of the whole herd; null where the set gives no figure for any group. */
export function herdNeed(
  rules: Rules,
  kind: SpaceKind,
  herd: readonly HerdGroup[],
  row: RowOf,
): HerdNeed | null {
  let total = 0;
  let most = 0;
  let of: Coefficient | null = null;
  let incomplete = false;
  for (const group of herd) {
    const need = spaceNeed(rules, kind, group, row);
    if (!need) {
      incomplete = true;
      continue;
    }
    const share = need.perHead * group.head;
    total += share;
    if (of === null || share > most) {
      most = share;
      of = need.row;
    }
  }
  return of ? { total, row: of, incomplete } : null;
}

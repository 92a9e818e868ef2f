/** Sheds sized to the herd by the same rows of the space tables that the checks hold them to. */
import { herdNeed, isRanked, passRow } from '../model/checks/spaceRules.ts';
import { SPACE_RULES } from '../notebook/schema.ts';
import type { Coefficient, Tables } from '../tables/coefficient.ts';
import type { Plan } from './plan.ts';

export interface ShedSize {
  readonly lengthM: number;
  readonly depthM: number;
  readonly calvingPensM2: number;
}

export interface Sizes {
  readonly spaceRules: (typeof SPACE_RULES)[number];
  readonly waterBowls: number;
  readonly bed: ShedSize & { readonly stanceDepthM: number };
  readonly slats: ShedSize & { readonly areaM2: number; readonly tankDepthM: number };
}

/** What only a run of the model tells of this herd. */
export interface FirstRun {
  /** Slatted area by its own rows, where the space rules name none. */
  readonly slatsM2: number;
  readonly storeNeededM3: number;
}

/** A shed longer than this the notebook does not take. */
const LONGEST_M = 1000;
const upTo = (value: number, step: number) => Number((Math.ceil(value / step - 1e-9) * step).toFixed(3));

export function sizesOf(plan: Plan, { coefficients }: Tables, first: FirstRun): Sizes {
  const row = (id: string): Coefficient => {
    const found = coefficients.get(id);
    if (!found) throw new Error(`no row ${id}`);
    return found;
  };
  const { herd } = plan;
  const head = herd.reduce((sum, group) => sum + group.head, 0);
  const weightKg = herd.reduce((sum, group) => sum + group.head * group.weightKg, 0);
  const inCalf = herd.reduce((sum, group) => sum + group.head * group.pregnantShare, 0);
  const spaceRules = rulesOf(plan);
  const need = (kind: 'lying' | 'total' | 'slats') => herdNeed(spaceRules, kind, herd, row)?.total ?? 0;
  const barrierM =
    (herdNeed(spaceRules, 'feed', herd, row) ?? herdNeed('sweden', 'feed', herd, row))?.total ?? 0;
  const calvingPensM2 =
    inCalf > 0 ? Math.ceil(inCalf / row('calvingCowsPerPen').central) * row('swedenCalvingPenM2').central : 0;
  const longestM = Math.max(...herd.map((group) => row(`standingLengthM.${group.class}`).central));
  const passM = passRow(isRanked(spaceRules, isHorned(plan)), row).low;
  const dryBedM2 = (row('commonPracticeLyingM2Per100Kg').central * weightKg) / 100;
  const shared = { plan, barrierM, calvingPensM2, longestM };
  return {
    spaceRules,
    waterBowls: Math.max(
      row('waterPointsLeast').central,
      Math.ceil(head / row('commonPracticeAnimalsPerBowl').central),
    ),
    bed: bedShed({ ...shared, lyingM2: Math.max(need('lying'), dryBedM2), totalM2: need('total') }),
    slats: withTank(slattedShed({ ...shared, passM, slatsM2: Math.max(need('slats'), first.slatsM2) }), {
      plan,
      storeNeededM3: first.storeNeededM3,
      freeboardM: row('irelandCoveredFreeboardM').central,
    }),
  };
}

/** A tank that holds the slurry of the winter below its freeboard, as deep as one is dug at most. */
function withTank(
  shed: ShedSize & { readonly areaM2: number },
  { plan, storeNeededM3, freeboardM }: { plan: Plan; storeNeededM3: number; freeboardM: number },
): Sizes['slats'] {
  const needed = upTo(storeNeededM3 / shed.areaM2 + freeboardM, 0.1);
  const tankDepthM = Math.min(plan.start('tankMostM'), Math.max(plan.start('tankDepthM'), needed));
  return { ...shed, tankDepthM };
}

const isHorned = ({ herd }: Plan): boolean => herd.some((group) => group.hornedShare > 0);

/** Horned cattle need the room that horned cattle need, whatever the rules of the country leave. */
function rulesOf(plan: Plan): Sizes['spaceRules'] {
  const own = plan.startWord('spaceRules');
  return isHorned(plan)
    ? 'commonPracticeHorned'
    : (SPACE_RULES.find((rules) => rules === own) ?? 'commonPracticeHorned');
}

interface Needs {
  readonly plan: Plan;
  readonly barrierM: number;
  readonly calvingPensM2: number;
  readonly longestM: number;
}

function bedShed({
  plan,
  barrierM,
  calvingPensM2,
  longestM,
  lyingM2,
  totalM2,
}: Needs & { lyingM2: number; totalM2: number }): Sizes['bed'] {
  const stance = Math.max(
    plan.start(isHorned(plan) ? 'stanceDepthHornedM' : 'stanceDepthM'),
    upTo(longestM, 0.1),
  );
  if (plan.standing?.use === 'bed') {
    const { lengthM, depthM } = plan.standing;
    // A shallow shed keeps some of its depth for the bed.
    return { lengthM, depthM, calvingPensM2, stanceDepthM: Math.min(stance, Math.round(depthM * 4) / 10) };
  }
  const bay = plan.start('bayM');
  const areaM2 = Math.max(lyingM2 + calvingPensM2, 1);
  const lengthM = Math.min(
    LONGEST_M,
    Math.max(upTo(barrierM, bay), upTo(areaM2 / plan.start('bedRowMostM'), bay), 2 * bay),
  );
  const depthM = Math.max(stance + Math.max(areaM2 / lengthM, plan.start('bedRowLeastM')), totalM2 / lengthM);
  return {
    lengthM: Number(lengthM.toFixed(2)),
    depthM: upTo(depthM, 0.1),
    calvingPensM2,
    stanceDepthM: stance,
  };
}

function slattedShed({
  plan,
  barrierM,
  calvingPensM2,
  longestM,
  passM,
  slatsM2,
}: Needs & { passM: number; slatsM2: number }): ShedSize & { readonly areaM2: number } {
  const areaM2 = Math.max(1, Math.ceil(slatsM2 - 1e-9));
  if (plan.standing?.use === 'slats') {
    const { lengthM, depthM } = plan.standing;
    // Slats first; pens in what they leave.
    const room = Math.floor(lengthM * depthM);
    const slatted = Math.min(areaM2, room);
    return { lengthM, depthM, areaM2: slatted, calvingPensM2: Math.min(calvingPensM2, room - slatted) };
  }
  const bay = plan.start('bayM');
  const rowM2 = areaM2 + calvingPensM2;
  const lengthM = Math.min(
    LONGEST_M,
    Math.max(upTo(barrierM, bay), upTo(rowM2 / plan.start('slatsRowMostM'), bay), 2 * bay),
  );
  // Where animals must pass behind those that feed, the row is that deep, and all of it is slats.
  const depthM = upTo(Math.max(rowM2 / lengthM, plan.start('slatsRowLeastM'), longestM, passM), 0.1);
  const slatted = Math.max(areaM2, Math.floor(lengthM * depthM - calvingPensM2 + 1e-9));
  return { lengthM: Number(lengthM.toFixed(2)), depthM, calvingPensM2, areaM2: slatted };
}

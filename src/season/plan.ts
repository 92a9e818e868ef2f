/** The season as a keeper's list: what must be stacked, done and kept clear, and on which day. */
import { type BarrierRaise, barrierRaises } from '../model/checks/barrier.ts';
import { bedSeries, sayDay, weekStart } from '../model/checks/bedSeries.ts';
import type { ShedResult } from '../model/checks/check.ts';
import { closedPeriod, firstOpenDay } from '../model/checks/closedPeriod.ts';
import { say } from '../model/checks/say.ts';
import type { Coefficient } from '../tables/coefficient.ts';
import { dayAfter, daysBetween } from '../units/days.ts';
import { type Heap, heapOf } from './heap.ts';
import { type RowOf, type Stack, stacksOf } from './stacks.ts';

type TaskKind = 'stack' | 'feed' | 'start' | 'raise' | 'cleanOut' | 'turn' | 'ready' | 'spread' | 'store';

interface SeasonTask {
  readonly kind: TaskKind;
  /** ISO day it must be done by, or on which it begins. */
  readonly day: string;
  /** Last ISO day where it lasts. */
  readonly until?: string;
  readonly title: string;
  readonly words: string;
}

interface BeddingWeek {
  readonly week: number;
  readonly day: string;
  readonly beddingKg: number;
  /** Top of the bed at the end of the week, m; null without a bed track. */
  readonly bedM: number | null;
  readonly raiseM: number;
}

interface SpreadingPlan {
  /** First ISO day the law leaves open after the manure is ready. */
  readonly earliest: string;
  /** False where the tables hold no closed period for the country and kind. */
  readonly known: boolean;
  readonly areaForNitrogenHa: number | null;
  readonly areaForPhosphorusHa: number | null;
  readonly receivingHa: number;
}

export interface SeasonPlan {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly stacks: readonly Stack[];
  readonly feedTonnes: number | null;
  readonly feedKgPerDay: number | null;
  readonly weeks: readonly BeddingWeek[];
  readonly raises: readonly BarrierRaise[];
  readonly cleanOut: { readonly from: string; readonly to: string } | null;
  readonly heap: Heap | null;
  readonly spreading: SpreadingPlan | null;
  readonly tasks: readonly SeasonTask[];
}

/** The plan of one scenario. Quantities a scenario does not have are null or empty lists; never throws. */
export function seasonPlan(result: ShedResult, coefficients: ReadonlyMap<string, Coefficient>): SeasonPlan {
  const { scenario, values, name } = result;
  const { start, end } = scenario.farm.winter;
  const row: RowOf = (id) => coefficients.get(id);
  const days = Math.max(1, daysBetween(start, end));
  const bed = scenario.placement.bedShare > 0 ? bedSeries({ ...result, coefficients }) : null;
  const throat = row('barrierThroatM');
  const step = row('barrierRaiseStepM');
  const raises =
    bed && throat && step && scenario.feeder === 'barrier'
      ? barrierRaises(scenario, bed, { throat, step })
      : [];
  const stacks = bed ? stacksOf(result, row) : [];
  const cleanOut = bed ? cleanOutWindow(result, row) : null;
  const heap = cleanOut ? heapOf(result, heapedOn(result, cleanOut), row) : null;
  const feedTonnes = values.feedTonnes ?? null;
  const plan = {
    name,
    from: start,
    to: end,
    stacks,
    feedTonnes,
    feedKgPerDay: feedTonnes === null ? null : (feedTonnes * 1000) / days,
    weeks: bed ? beddingWeeks(result, days, raises) : [],
    raises,
    cleanOut,
    heap,
    spreading: spreadingPlan(result, heap?.spreadFrom ?? cleanOut?.to ?? end, row),
  };
  return { ...plan, tasks: tasksOf(result, plan) };
}

function cleanOutWindow({ scenario }: ShedResult, row: RowOf): { from: string; to: string } {
  const after = row('cleanOutAfterDays');
  const { end } = scenario.farm.winter;
  if (scenario.bed.cleanOut) return { from: scenario.bed.cleanOut, to: scenario.bed.cleanOut };
  return { from: dayAfter(end, after?.low ?? 0), to: dayAfter(end, after?.high ?? 0) };
}

/** The day the model makes the heap on, inside the window of the clean-out. */
function heapedOn({ scenario, values }: ShedResult, { from, to }: { from: string; to: string }): string {
  const day = values.heapDay ?? null;
  if (day === null) return to;
  const made = dayAfter(scenario.farm.winter.start, Math.round(day));
  return made < from ? from : made > to ? to : made;
}

/** Bedding spread evenly over the winter's days after the starting layer, which lies in week 1. */
function beddingWeeks(
  { scenario, values, tracks }: ShedResult,
  days: number,
  raises: readonly BarrierRaise[],
): BeddingWeek[] {
  const total = (values.beddingTonnes ?? 0) * 1000;
  const layer = Math.min(total, values.startMaterialKg ?? 0);
  const perDay = (total - layer) / days;
  return Array.from({ length: Math.ceil(days / 7) }, (_, k) => {
    const depth = tracks.weekPackDepthM?.[k];
    return {
      week: k + 1,
      day: weekStart(scenario, k + 1),
      beddingKg: perDay * Math.min(7, days - k * 7) + (k === 0 ? layer : 0),
      bedM: depth !== undefined && Number.isFinite(depth) ? depth : null,
      raiseM: raises.find((r) => r.week === k + 1)?.byM ?? 0,
    };
  });
}

function spreadingPlan({ scenario, values }: ShedResult, ready: string, row: RowOf): SpreadingPlan | null {
  const { bedShare, slatsShare } = scenario.placement;
  if (bedShare <= 0 && slatsShare <= 0) return null;
  const country = scenario.farm.place.country?.toUpperCase() ?? null;
  const { nitrateZone, receivingHa } = scenario.farm.land;
  const period = closedPeriod(country, slatsShare > 0 ? 'slurry' : 'solid', nitrateZone, row);
  return {
    earliest: firstOpenDay(period, ready),
    known: period !== null,
    areaForNitrogenHa: values.areaForNitrogenHa ?? null,
    areaForPhosphorusHa: values.areaForPhosphorusHa ?? null,
    receivingHa,
  };
}

/** Listed is what lies on the farm or can be had; only own material is on hand for certain. */
function reachWords({ missingTonnes, own }: Stack): string {
  if (missingTonnes > 0) return `${say(missingTonnes, 1)} t more than the notebook lists within reach.`;
  return own
    ? 'The notebook lists as much of your own.'
    : 'The notebook lists as much within reach; it has to be bought.';
}

/** Where the notebook spreads before the manure may go out or is ready: the sums are for the earlier day. */
function laterThanWritten({ farm, spreading }: ShedResult['scenario'], earliest: string): string {
  const middle = `${farm.winter.end.slice(0, 4)}-${String(spreading.month).padStart(2, '0')}-15`;
  if (middle < farm.winter.end || middle >= earliest) return '';
  return `The notebook counts with spreading around ${sayDay(middle)}, which is earlier: change the month. `;
}

function tasksOf({ scenario, values }: ShedResult, plan: Omit<SeasonPlan, 'tasks'>): SeasonTask[] {
  const tasks: SeasonTask[] = [];
  for (const stack of plan.stacks)
    tasks.push({
      kind: 'stack',
      day: stack.by,
      title: `Stack ${say(stack.tonnes, 1)} t of ${stack.label}`,
      words: `${stack.words} ${reachWords(stack)}`,
    });
  if (plan.feedTonnes !== null && plan.feedKgPerDay !== null)
    tasks.push({
      kind: 'feed',
      day: plan.from,
      title: `Have ${say(plan.feedTonnes, 0)} t of feed in reach`,
      words: `${say(plan.feedKgPerDay, 0)} kg to carry a day, as fed, until ${sayDay(plan.to)}. Probe hay for heat in its first six weeks.`,
    });
  if (plan.weeks.length > 0 && scenario.bed.startDepthM > 0)
    tasks.push({
      kind: 'start',
      day: plan.from,
      title: `Lay ${say(scenario.bed.startDepthM)} m of starting bed`,
      words: 'Dry material underneath, before the first animal.',
    });
  for (const raise of plan.raises)
    tasks.push({
      kind: 'raise',
      day: raise.day,
      title: `Raise barrier and trough by ${say(raise.byM)} m`,
      words: `Then ${say(raise.totalM)} m above their place in the autumn. Lift gates and check the water bowls too.`,
    });
  if (plan.cleanOut)
    tasks.push({
      kind: 'cleanOut',
      day: plan.cleanOut.from,
      ...(plan.cleanOut.to > plan.cleanOut.from ? { until: plan.cleanOut.to } : {}),
      title: `Clean out ${say(values.packTonnes ?? null, 0)} t of bed`,
      words: `${plan.cleanOut.to > plan.cleanOut.from ? `Any day between ${sayDay(plan.cleanOut.from)} and ${sayDay(plan.cleanOut.to)}: the span is not how long the work takes. ` : ''}Animals out, doors open, filtered cab: a warm bed lets out ammonia, then dust. Never stand under the cut face.`,
    });
  for (const turn of plan.heap?.turns ?? [])
    tasks.push({
      kind: 'turn',
      day: turn.day,
      title: `Turn the windrow, ${turn.number} of ${plan.heap?.turns.length}`,
      words: turn.words,
    });
  if (plan.heap)
    tasks.push({
      kind: 'ready',
      day: plan.heap.ready ?? plan.heap.spreadFrom,
      title: plan.heap.ready ? 'Compost ready' : 'Heap due for spreading, not finished',
      words: plan.heap.words,
    });
  if (scenario.placement.slatsShare > 0)
    tasks.push({
      kind: 'store',
      day: plan.from,
      title: `Store empty: ${say(values.storeNeededM3 ?? null, 0)} m³ will be needed`,
      words:
        'Slurry gas kills within breaths: animals out before mixing, doors open, a second adult outside, nobody into a tank.',
    });
  if (plan.spreading) {
    const { earliest, known, areaForNitrogenHa: n, areaForPhosphorusHa: p, receivingHa } = plan.spreading;
    const need = `${say(n, 1)} ha by nitrogen, ${say(p, 1)} ha by phosphorus, ${say(receivingHa, 1)} ha at hand`;
    tasks.push({
      kind: 'spread',
      day: earliest,
      title: 'Earliest spreading',
      words: `${need}. ${laterThanWritten(scenario, earliest)}${known ? 'Outside the closed period in the tables' : 'The tables hold no closed period here'}; never on frozen, snow-covered or wet ground. Check the local rule.`,
    });
  }
  return tasks.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

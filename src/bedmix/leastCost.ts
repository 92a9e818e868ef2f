/**
 * The cheapest bedding by week, of what the keeper has or can buy, that keeps the bed dry, soaks up the urine
 * and feeds the microbes: a linear program, since moisture and C:N of a mix are straight lines in the masses
 * once carbon and nitrogen are summed apart. Where it cannot be done, it says which limit is in the way and
 * what would free it. Equations: NRAES-54 (1992) ch. 3 and the water balance of the bed.
 */
import { type Constraint, type Solution, solve } from 'yalps';
import {
  amountName,
  type Kind,
  kindsOf,
  type LimitName,
  type Line,
  linesOf,
  type MixMaterial,
  type MixQuestion,
  type MixWeek,
} from './lines.ts';

export interface MixedWeek {
  /** kg as it lies, in the order of the materials. */
  readonly kg: readonly number[];
  readonly cost: number;
  readonly moisture: number;
  readonly carbonNitrogen: number;
  readonly availableCarbonNitrogen: number;
}

/** A limit in the way, and how far it would have to give. */
export interface Freed {
  readonly limit: LimitName;
  /**
   * What it would have to be for a mix to exist with every other limit kept (or bent too, if `together`); for
   * absorbency the urine to lead away.
   */
  readonly needed: number;
  readonly unit: string;
  /** Not enough alone: these give only with the others named beside it. */
  readonly together: boolean;
  readonly words: string;
}

export type MixAnswer =
  | {
      readonly status: 'found';
      readonly cost: number;
      readonly weeks: readonly MixedWeek[];
      /** Tonnes of each material over all weeks. */
      readonly tonnes: readonly number[];
      /** Limits with nothing to spare: only these decide the mix. */
      readonly binding: readonly LimitName[];
    }
  | { readonly status: 'impossible'; readonly frees: readonly Freed[] };

const CLOSE = 1e-6;

/**
 * The cheapest mix, or what stands in its way. Never throws on a question without an answer. Weeks that are
 * alike day by day get the same mix: the mean of any two mixes that keep the limits keeps them at the same cost.
 */
export function cheapestMix(question: MixQuestion): MixAnswer {
  const { materials, weeks } = question;
  const kinds = kindsOf(weeks);
  const lines = linesOf(question, kinds);
  const cheapest = run(lines, question, kinds, new Map(), true);
  if (!cheapest) return { status: 'impossible', frees: whatFrees(question, kinds, lines) };
  const byKind = kinds.map((kind) => weekOf(question, cheapest, kind));
  const mixed = weeks.map(({ days }, w) => {
    const at = kinds.findIndex((kind) => kind.at.includes(w));
    return lasting(byKind[at], days / kinds[at].week.days);
  });
  return {
    status: 'found',
    cost: mixed.reduce((sum, week) => sum + week.cost, 0),
    weeks: mixed,
    tonnes: materials.map((_, k) => mixed.reduce((sum, week) => sum + week.kg[k], 0) / 1000),
    binding: [...new Set(lines.filter((line) => isTight(line, cheapest)).map(({ limit }) => limit))],
  };
}

/**
 * A given bed, `kgPerDay` of each material all winter, by the same sums: what it comes to over all weeks together, and the
 * limits it does not keep.
 */
export function givenMix(
  question: MixQuestion,
  kgPerDay: readonly number[],
): { readonly winter: MixedWeek; readonly broken: readonly LimitName[] } {
  const kinds = kindsOf(question.weeks);
  const amounts = new Map(
    kinds.flatMap((kind) => kgPerDay.map((kg, k) => [amountName(kind, k), kg * kind.week.days] as const)),
  );
  const broken = linesOf(question, kinds).filter((line) => {
    const over = sumOf(line, amounts) - line.bound;
    return (line.least ? -over : over) > CLOSE * line.scale;
  });
  const whole = question.weeks.reduce(
    (sum, week) =>
      Object.fromEntries(
        Object.entries(sum).map(([name, value]) => [name, value + week[name as keyof MixWeek]]),
      ) as unknown as MixWeek,
  );
  const winter = layerOf(
    question,
    kgPerDay.map((kg) => kg * whole.days),
    whole,
  );
  return { winter, broken: [...new Set(broken.map(({ limit }) => limit))] };
}

/** The same mix for a longer or shorter week. */
function lasting(week: MixedWeek, times: number): MixedWeek {
  return times === 1 ? week : { ...week, kg: week.kg.map((kg) => kg * times), cost: week.cost * times };
}

/** Amounts by variable, or undefined when no mix keeps every line; lines of a limit in `gives` may be bent. */
function run(
  lines: readonly Line[],
  { materials }: MixQuestion,
  kinds: readonly Kind[],
  gives: ReadonlyMap<LimitName, number>,
  byCost: boolean,
): ReadonlyMap<string, number> | undefined {
  const variables = new Map<string, Map<string, number>>();
  const constraints = new Map<string, Constraint>();
  kinds.forEach((kind) => {
    materials.forEach(({ costPerTonne }, k) => {
      variables.set(
        amountName(kind, k),
        new Map([['objective', byCost ? (costPerTonne / 1000) * kind.times : 0]]),
      );
    });
  });
  for (const { key, limit, least, bound, per, scale } of lines) {
    constraints.set(key, least ? { min: bound } : { max: bound });
    for (const { variable, value } of per) variables.get(variable)?.set(key, value);
    const weight = gives.get(limit);
    if (weight !== undefined)
      variables.set(
        `give:${key}`,
        new Map([
          ['objective', weight / scale],
          [key, least ? 1 : -1],
        ]),
      );
  }
  const solution: Solution<string> = solve({
    direction: 'minimize',
    objective: 'objective',
    constraints,
    variables,
  });
  return solution.status === 'optimal' ? new Map(solution.variables) : undefined;
}

const sumOf = (line: Line, amounts: ReadonlyMap<string, number>) =>
  line.per.reduce((sum, { variable, value }) => sum + value * (amounts.get(variable) ?? 0), 0);

const isTight = (line: Line, amounts: ReadonlyMap<string, number>) =>
  Math.abs(sumOf(line, amounts) - line.bound) <= CLOSE * line.scale;

/** The state of a week's layer under given amounts. */
function weekOf(question: MixQuestion, amounts: ReadonlyMap<string, number>, kind: Kind): MixedWeek {
  return layerOf(
    question,
    question.materials.map((_, k) => amounts.get(amountName(kind, k)) ?? 0),
    kind.week,
  );
}

/** Cost, moisture and C:N of what falls in a week with `kg` of each material laid to it, as it lies. */
function layerOf({ materials, limits }: MixQuestion, kg: readonly number[], week: MixWeek): MixedWeek {
  const total = (start: number, of: (material: MixMaterial) => number) =>
    materials.reduce((sum, material, k) => sum + kg[k] * of(material), start);
  const dry = total(week.dryMatterKg, (m) => 1 - m.moistureFraction) * (1 - limits.dryMatterLossFraction);
  const water = Math.max(
    0,
    total(week.waterKg - week.evaporatedKg, (m) => m.moistureFraction),
  );
  const nitrogen = total(week.nitrogenKg, (m) => (1 - m.moistureFraction) * m.nitrogenFraction);
  const carbon = total(week.carbonKg, (m) => (1 - m.moistureFraction) * m.carbonFraction);
  const available = total(
    week.availableCarbonKg,
    (m) => (1 - m.moistureFraction) * m.carbonFraction * m.availableCarbonFraction,
  );
  return {
    kg,
    cost: total(0, (m) => m.costPerTonne / 1000),
    moisture: water / (water + dry),
    carbonNitrogen: carbon / nitrogen,
    availableCarbonNitrogen: available / nitrogen,
  };
}

/** Bends one kind of limit at a time; when none suffices alone, all of them together, by as little as can be. */
function whatFrees(question: MixQuestion, kinds: readonly Kind[], lines: readonly Line[]): Freed[] {
  const limits = [...new Set(lines.map(({ limit }) => limit))];
  const alone = limits.flatMap((limit) => {
    const bent = run(lines, question, kinds, new Map([[limit, 1]]), false);
    return bent ? [freed(question, kinds, lines, bent, limit, false)] : [];
  });
  if (alone.length > 0) return alone;
  const bent = run(lines, question, kinds, new Map(limits.map((limit) => [limit, 1])), false);
  if (!bent) return [];
  return limits
    .filter((limit) =>
      lines.some((line) => line.limit === limit && (bent.get(`give:${line.key}`) ?? 0) > CLOSE * line.scale),
    )
    .map((limit) => freed(question, kinds, lines, bent, limit, true));
}

function freed(
  question: MixQuestion,
  kinds: readonly Kind[],
  lines: readonly Line[],
  bent: ReadonlyMap<string, number>,
  limit: LimitName,
  together: boolean,
): Freed {
  const weeks = kinds.map((kind) => weekOf(question, bent, kind));
  const give = (of: (line: Line) => number) =>
    Math.max(...lines.filter((line) => line.limit === limit).map((line) => of(line)));
  const answer = (needed: number, unit: string, words: string): Freed => ({
    limit,
    needed,
    unit,
    together,
    words,
  });
  if (limit === 'moisture') {
    const needed = Math.max(...weeks.map((week) => week.moisture));
    return answer(
      needed,
      'fraction',
      `let the bed be as wet as ${(Math.ceil(1000 * needed) / 10).toFixed(1)} %, or dry it: more air, more area, drier bedding`,
    );
  }
  if (limit === 'carbonNitrogen') {
    const needed = Math.min(...weeks.map((week) => week.carbonNitrogen));
    return answer(needed, ':1', `accept a C:N of ${(Math.floor(10 * needed) / 10).toFixed(1)}`);
  }
  if (limit === 'availableCarbonNitrogen') {
    const needed = Math.min(...weeks.map((week) => week.availableCarbonNitrogen));
    return answer(needed, ':1', `accept an available C:N of ${(Math.floor(10 * needed) / 10).toFixed(1)}`);
  }
  if (limit === 'absorbency') {
    const dry = give((line) => (bent.get(`give:${line.key}`) ?? 0) / line.days);
    return answer(
      dry,
      'kg/d',
      `lead ${Math.ceil(dry)} kg of urine a day away from the bed, or find bedding that soaks more`,
    );
  }
  if (limit === 'depth' && question.limits.depth) {
    const { mostM, dryKgPerM } = question.limits.depth;
    const needed = mostM + give((line) => sumOf(line, bent) - line.bound) / dryKgPerM;
    return answer(
      needed,
      'm',
      `build the wall for a bed of ${(Math.ceil(100 * needed) / 100).toFixed(2)} m, or empty the bed within the winter`,
    );
  }
  if (limit === 'handling') {
    const needed = give((line) => sumOf(line, bent) / line.days);
    return answer(needed, 'kg/d', `handle ${Math.ceil(needed)} kg of bedding a day`);
  }
  const needed = give((line) => sumOf(line, bent)) / 1000;
  return answer(
    needed,
    't',
    `have ${(Math.ceil(10 * needed) / 10).toFixed(1)} t of ${inWords(limit.slice('stock.'.length))} within reach`,
  );
}

/** `barleyStraw` → barley straw. */
const inWords = (id: string) => id.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * The cheapest bedding by week, of what the keeper has or can buy, that keeps the bed dry, soaks up the urine
 * and feeds the microbes: a linear program, since moisture and C:N of a mix are straight lines in the masses
 * once carbon and nitrogen are summed apart. Where it cannot be done, it says which limit is in the way and
 * what would free it. Equations: NRAES-54 (1992) ch. 3 and the water balance of the bed.
 */
import { type Constraint, type Solution, solve } from 'yalps';

export interface MixMaterial {
  readonly material: string;
  /** On hand or within reach for all the weeks asked about, kg as it lies. */
  readonly stockKg: number;
  readonly moistureFraction: number;
  readonly carbonFraction: number;
  readonly nitrogenFraction: number;
  readonly availableCarbonFraction: number;
  /** Water a kg takes up at its own moisture when soaked. */
  readonly absorbencyKgPerKg: number;
  /** Cash and own hours together, money per tonne as it lies. */
  readonly costPerTonne: number;
  /** From the keeper's own land. */
  readonly own?: boolean;
}

/** What falls on the bed in a week, kg, and what the air takes. */
export interface MixWeek {
  /** 7, or fewer in the last week of a winter. */
  readonly days: number;
  readonly waterKg: number;
  readonly dryMatterKg: number;
  readonly carbonKg: number;
  readonly availableCarbonKg: number;
  readonly nitrogenKg: number;
  /** Less the water that rotting forms. */
  readonly evaporatedKg: number;
  /** Urine the bedding has to soak up. */
  readonly liquidKg: number;
}

export interface MixLimits {
  /** Wettest bed. */
  readonly moistureMost: number;
  /** Share of the dry matter that rots while the bed is judged. */
  readonly dryMatterLossFraction: number;
  /** Share of its soak value a trodden bedding uses. */
  readonly fieldFraction: number;
  /** Null where not asked for. */
  readonly carbonNitrogenLeast: number | null;
  readonly availableCarbonNitrogenLeast: number | null;
  /** How high the bed may stand at the end, m, and the dry matter a metre of it holds, kg. */
  readonly depth: { readonly mostM: number; readonly dryKgPerM: number } | null;
  /** Bedding that can be carried in a day, kg. */
  readonly handledKgPerDay: number | null;
}

export interface MixQuestion {
  readonly materials: readonly MixMaterial[];
  readonly weeks: readonly MixWeek[];
  readonly limits: MixLimits;
}

/** `moisture`, `absorbency`, `carbonNitrogen`, `availableCarbonNitrogen`, `depth`, `handling`, or `stock.<material>`. */
export type LimitName = string;

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

/** One straight line: Σ amount × coefficient (+ slack) ≥ or ≤ bound. */
interface Line {
  readonly limit: LimitName;
  readonly key: string;
  readonly least: boolean;
  readonly bound: number;
  readonly per: readonly { readonly variable: string; readonly value: number }[];
  /** Days its week has; 1 where it belongs to no week. */
  readonly days: number;
  /** Size of a noticeable slack, to weigh limits of different kinds against each other. */
  readonly scale: number;
}

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

/** The same mix for a longer or shorter week. */
function lasting(week: MixedWeek, times: number): MixedWeek {
  return times === 1 ? week : { ...week, kg: week.kg.map((kg) => kg * times), cost: week.cost * times };
}

/** Weeks that are alike day by day; a last week may have fewer days. */
interface Kind {
  readonly id: number;
  /** The first of them. */
  readonly week: MixWeek;
  readonly at: readonly number[];
  /** How many of the first it takes to make up the days of all. */
  readonly times: number;
}

function kindsOf(weeks: readonly MixWeek[]): Kind[] {
  const byNumbers = new Map<string, { week: MixWeek; at: number[] }>();
  weeks.forEach((week, w) => {
    const { days, ...falls } = week;
    const key = Object.entries(falls)
      .sort()
      .map(([name, kg]) => `${name} ${(kg / days).toPrecision(9)}`)
      .join(' ');
    const kind = byNumbers.get(key) ?? { week, at: [] };
    kind.at.push(w);
    byNumbers.set(key, kind);
  });
  return [...byNumbers.values()].map((kind, id) => ({
    ...kind,
    id,
    times: kind.at.reduce((sum, w) => sum + weeks[w].days, 0) / kind.week.days,
  }));
}

const amountName = (kind: Kind, material: number) => `${kind.id}:${material}`;

function linesOf({ materials, limits }: MixQuestion, kinds: readonly Kind[]): Line[] {
  const waterPerDry = limits.moistureMost / (1 - limits.moistureMost);
  const left = 1 - limits.dryMatterLossFraction;
  const lines: Line[] = [];
  kinds.forEach((kind) => {
    const { week } = kind;
    const each = (of: (material: MixMaterial) => number) =>
      materials.map((material, k) => ({ variable: amountName(kind, k), value: of(material) }));
    const add = (
      limit: LimitName,
      least: boolean,
      bound: number,
      scale: number,
      of: (material: MixMaterial) => number,
    ) =>
      lines.push({
        limit,
        key: `${limit}@${kind.id}`,
        least,
        bound,
        per: each(of),
        scale: Math.max(scale, 1),
        days: week.days,
      });
    add(
      'moisture',
      true,
      week.waterKg - week.evaporatedKg - waterPerDry * week.dryMatterKg * left,
      week.waterKg,
      (m) => waterPerDry * (1 - m.moistureFraction) * left - m.moistureFraction,
    );
    add('absorbency', true, week.liquidKg, week.liquidKg, (m) => m.absorbencyKgPerKg * limits.fieldFraction);
    const ratio = limits.carbonNitrogenLeast;
    if (ratio !== null)
      add(
        'carbonNitrogen',
        true,
        ratio * week.nitrogenKg - week.carbonKg,
        week.carbonKg,
        (m) => (1 - m.moistureFraction) * (m.carbonFraction - ratio * m.nitrogenFraction),
      );
    const available = limits.availableCarbonNitrogenLeast;
    if (available !== null)
      add(
        'availableCarbonNitrogen',
        true,
        available * week.nitrogenKg - week.availableCarbonKg,
        week.availableCarbonKg,
        (m) =>
          (1 - m.moistureFraction) *
          (m.carbonFraction * m.availableCarbonFraction - available * m.nitrogenFraction),
      );
    if (limits.handledKgPerDay !== null)
      add('handling', false, limits.handledKgPerDay * week.days, limits.handledKgPerDay * week.days, () => 1);
  });
  if (limits.depth) {
    const laid = kinds.reduce((sum, { week, times }) => sum + week.dryMatterKg * times * left, 0);
    lines.push({
      limit: 'depth',
      key: 'depth',
      least: false,
      bound: limits.depth.mostM * limits.depth.dryKgPerM - laid,
      per: kinds.flatMap((kind) =>
        materials.map(({ moistureFraction }, k) => ({
          variable: amountName(kind, k),
          value: kind.times * (1 - moistureFraction) * left,
        })),
      ),
      scale: Math.max(limits.depth.mostM * limits.depth.dryKgPerM, 1),
      days: 1,
    });
  }
  materials.forEach((material, k) => {
    const per = kinds.map((kind) => ({ variable: amountName(kind, k), value: kind.times }));
    lines.push({
      limit: `stock.${material.material}`,
      key: `stock.${k}`,
      least: false,
      bound: material.stockKg,
      per,
      scale: Math.max(material.stockKg, 1000),
      days: 1,
    });
  });
  return lines;
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
function weekOf(
  { materials, limits }: MixQuestion,
  amounts: ReadonlyMap<string, number>,
  kind: Kind,
): MixedWeek {
  const { week } = kind;
  const kg = materials.map((_, k) => amounts.get(amountName(kind, k)) ?? 0);
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

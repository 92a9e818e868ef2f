/** A bedding question as straight lines: kinds of week that are alike, and what each limit asks of the amounts. */

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

/** One straight line: Σ amount × coefficient (+ slack) ≥ or ≤ bound. */
export interface Line {
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

/** Weeks that are alike day by day; a last week may have fewer days. */
export interface Kind {
  readonly id: number;
  /** The first of them. */
  readonly week: MixWeek;
  readonly at: readonly number[];
  /** How many of the first it takes to make up the days of all. */
  readonly times: number;
}

export function kindsOf(weeks: readonly MixWeek[]): Kind[] {
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

export const amountName = (kind: Kind, material: number) => `${kind.id}:${material}`;

export function linesOf({ materials, limits }: MixQuestion, kinds: readonly Kind[]): Line[] {
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
  if (limits.depth) lines.push(depthLine(limits.depth, materials, kinds, left));
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

/** All dry matter that is left, of dung and of bedding, fits under the height the bed may have. */
function depthLine(
  { mostM, dryKgPerM }: NonNullable<MixLimits['depth']>,
  materials: readonly MixMaterial[],
  kinds: readonly Kind[],
  left: number,
): Line {
  const laid = kinds.reduce((sum, { week, times }) => sum + week.dryMatterKg * times * left, 0);
  return {
    limit: 'depth',
    key: 'depth',
    least: false,
    bound: mostM * dryKgPerM - laid,
    per: kinds.flatMap((kind) =>
      materials.map(({ moistureFraction }, k) => ({
        variable: amountName(kind, k),
        value: kind.times * (1 - moistureFraction) * left,
      })),
    ),
    scale: Math.max(mostM * dryKgPerM, 1),
    days: 1,
  };
}

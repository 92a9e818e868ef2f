/** What follows from the answers of each step, read off the model's own run. */
import { RESULTS } from '../model/dictionary.ts';
import type { ResultName } from '../model/quantities.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import { toSystem, type UnitSystem } from '../units/quantities.ts';
import type { NewNotebook } from './begin.ts';
import { SCENARIOS } from './text.ts';

export interface Follows {
  /** The scenarios the figures are of; one where they are the same for all. */
  readonly heads: readonly string[];
  readonly rows: readonly { readonly label: string; readonly values: readonly string[] }[];
}

const { paddock, slats, bed } = SCENARIOS;
const ALL = [paddock, slats, bed];
type Asked = { readonly heads: readonly string[]; readonly names: readonly (ResultName | 'winterDays')[] };
const ASKED: readonly Asked[] = [
  { heads: [paddock], names: ['winterDays', 'rainMm', 'winterTemperatureC', 'drainageMm'] },
  { heads: [paddock], names: ['livestockUnits', 'liveWeightKg', 'dryMatterEatenKg', 'nitrogenExcretedKg'] },
  {
    heads: [paddock],
    names: ['feedTonnes', 'rationProteinFraction', 'conditionKgPerHead', 'nitrogenExcretedKg'],
  },
  { heads: [paddock], names: ['paddockUnitsPerHa', 'nitrogenLoadKgPerHa', 'grassLostTonnes'] },
  { heads: [slats, bed], names: ['beddingTonnes', 'packDepthM', 'compostTonnes', 'capitalCost'] },
  { heads: ALL, names: ['capitalCost', 'loanPayment', 'labourHours', 'netCost'] },
];

export function followsOf(step: number, { run, plan }: NewNotebook): Follows | undefined {
  if (!run) return undefined;
  const { heads, names } = ASKED[step];
  const of = heads.flatMap((name) => run.results.find((result) => result.name === name) ?? []);
  const options = { system: plan.system, currency: plan.currency };
  const rows = names.flatMap((name) => {
    const meta = RESULTS.find((result) => result.name === name);
    const values = of.map(({ values: all }) => all[name]);
    // A quantity none of them has says nothing, nor does a loan nobody wants.
    if (values.every((value) => value === null || (value === 0 && name === 'loanPayment'))) return [];
    const unit = meta?.unit ?? 'd';
    const isMoney = unit === 'money';
    const label = `${meta?.label ?? 'winter'}${isMoney ? `, ${plan.currency}` : ''}`;
    const shown = (value: number | null) => formatQuantity(value, unit, options);
    return [
      {
        label,
        // The currency stands once, in the label.
        values: values.map((value) =>
          isMoney ? shown(value).replace(`${plan.currency} `, '') : shown(value),
        ),
      },
    ];
  });
  const sizes =
    step === 4
      ? [
          {
            label: 'shed, length × depth',
            values: of.map(({ scenario }) => size(scenario.shed, plan.system)),
          },
        ]
      : [];
  return { heads: of.length > 1 ? of.map(({ name }) => name) : [], rows: [...sizes, ...rows] };
}

function size({ lengthM, depthM }: { lengthM: number; depthM: number }, system: UnitSystem): string {
  const [length, depth] = [lengthM, depthM].map((metres) => toSystem(metres, 'm', system));
  return `${formatNumber(length.value, length.unit)} × ${formatNumber(depth.value, depth.unit)} ${depth.unit}`;
}

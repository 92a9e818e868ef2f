/** The comparison as a table to read in a terminal: aligned, with units, ranges and the differences in words. */
import type { Draws } from '../explore/draws.ts';
import { COMPARISONS, type Comparison, type Question } from '../explore/measures.ts';
import { differenceSentences } from '../explore/sentences.ts';
import { shareBest } from '../explore/spread.ts';
import { describe } from '../model/dictionary.ts';
import type { Run, ScenarioResult } from '../model/evaluate.ts';
import type { Notebook } from '../notebook/read.ts';
import { formatQuantity, formatRange } from '../units/format.ts';

const HEADINGS: Readonly<Record<Question, string>> = { stays: 'What stays', takes: 'What it takes' };

export function comparisonText(notebook: Notebook, run: Run, draws: Draws | undefined): string {
  const { currency, year, scenarios } = run;
  const context = { system: notebook.units, currency, plain: true } as const;
  const cell = (s: ScenarioResult, name: string, unit: string): string[] => {
    const value = s.values[name];
    if (value === null || value === undefined) return ['–'];
    const range = s.bands && formatRange(s.bands.p10[name], s.bands.p90[name], unit, context);
    return [formatQuantity(value, unit, context), ...(range ? [range] : [])];
  };
  const { farm } = scenarios[0].scenario;
  const lines = [
    notebook.title,
    notebook.invented ? '(an invented farm)' : '',
    `${scenarios[0].values.headCount} head, ${scenarios[0].values.winterDays} winter days from ${farm.winter.start}, rain ${Math.round(scenarios[0].values.rainMm ?? 0)} mm; money in ${currency} of ${year}`,
    draws ? `Under each figure: P10 to P90 of ${draws.count} draws, seed ${draws.seed}.` : '',
  ].filter((line) => line !== '');

  for (const question of ['stays', 'takes'] as const) {
    const rows = COMPARISONS.filter((c) => c.question === question && scenarios.some((s) => s.values[c.name] !== null));
    const cells = rows.map((c) => scenarios.map((s) => cell(s, c.name, describe(c.name)?.unit ?? '')));
    lines.push('', ...table([HEADINGS[question], ...scenarios.map((s) => s.name)], rows, cells));
  }
  if (draws) lines.push('', ...howSure(run, draws));
  lines.push('', 'Differences', ...differenceSentences(run, context, draws).map((s) => `  ${s}`));
  lines.push('', ...checkLines(run, context));
  lines.push(
    '',
    'Slurry gas kills: stock and people out before any tank is stirred. Loads on walls, roofs and slabs belong to a',
    'licensed engineer; welfare, storage and spreading rules to the local authority; loans to a professional.',
    '`explain FILE SCENARIO QUANTITY` shows how a figure came about.',
  );
  return `${lines.join('\n')}\n`;
}

function table(head: readonly string[], rows: readonly Comparison[], cells: readonly string[][][]): string[] {
  const widths = head.map((text, k) =>
    Math.max(text.length, ...(k === 0 ? rows.map((r) => r.short.length + 2) : cells.flatMap((row) => row[k - 1].map((line) => line.length)))),
  );
  const line = (parts: readonly string[]) => parts.map((part, k) => (k === 0 ? part.padEnd(widths[k]) : part.padStart(widths[k]))).join('  ').trimEnd();
  const out = [line(head), widths.map((w) => '─'.repeat(w)).join('  ')];
  rows.forEach((row, r) => {
    const height = Math.max(...cells[r].map((lines) => lines.length));
    for (let h = 0; h < height; h++) out.push(line([h === 0 ? `  ${row.short}` : '', ...cells[r].map((lines) => lines[h] ?? '')]));
  });
  return out;
}

function howSure({ scenarios }: Run, draws: Draws): string[] {
  const measures = COMPARISONS.filter((c) => c.better && ['nitrogenKeptKg', 'nitrogenAvailableKg', 'labourHours', 'netCost'].includes(c.name));
  return [
    'How sure: best in how many of 100 draws',
    ...measures.map((c) => {
      const shares = shareBest(draws, c.name, c.better as 'more' | 'less');
      return `  ${c.short} (${c.better} is better): ${scenarios.map((s, k) => `${s.name} ${Math.round(shares[k] * 100)}`).join(', ')}`;
    }),
  ];
}

function checkLines({ scenarios }: Run, context: Parameters<typeof formatQuantity>[2]): string[] {
  const show = (v: number | null, unit: string) => (v === null ? '' : formatQuantity(v, unit, context));
  return scenarios.flatMap((s) => {
    const open = s.checks.filter((c) => c.status !== 'pass');
    const passed = s.checks.length - open.length;
    return [
      `Checks, ${s.name}: ${passed} pass, ${open.filter((c) => c.status === 'look').length} to look at, ${open.filter((c) => c.status === 'stop').length} stop`,
      ...open
        .sort((a, b) => (a.status === b.status ? 0 : a.status === 'stop' ? -1 : 1))
        .map((c) => `  ${c.status.padEnd(4)}  ${c.words}${c.limit === null ? '' : ` (${show(c.value, c.unit)}, limit ${show(c.limit, c.unit)}; ${c.source})`}`),
    ];
  });
}

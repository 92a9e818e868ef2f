/** The comparison as a table to read in a terminal: aligned, with units, ranges and the differences in words. */

import type { Check } from '../model/checks/check.ts';
import { CHECK_GROUPS, titleOf } from '../model/checks/titles.ts';
import { describe } from '../model/dictionary.ts';
import { COMPARISONS, type Comparison, type Question } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Notebook } from '../notebook/read.ts';
import { answerOf, missingOf } from '../plots/answer.ts';
import { answerWords } from '../plots/answerWords.ts';
import { countsText, grouped, limitText, rulesInUse } from '../plots/checkWords.ts';
import type { Run, ScenarioResult } from '../study/evaluate.ts';
import { chancesOf, chanceWords } from '../uncertainty/chances.ts';
import { measuresOf } from '../uncertainty/decide.ts';
import { type Doubt, doubtOf } from '../uncertainty/doubt.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import { shareBest } from '../uncertainty/percentiles.ts';
import { differenceSentences, hundredthsOf } from '../uncertainty/sentences.ts';
import { type FormatOptions, formatQuantity, formatRange } from '../units/format.ts';
import { overtakes } from '../whatif/overtake.ts';

const HEADINGS: Readonly<Record<Question, string>> = { stays: 'What stays', takes: 'What it takes' };

export function comparisonText(notebook: Notebook, run: Run, draws: Draws | undefined): string {
  const { currency, year, scenarios } = run;
  const context = { system: notebook.units, currency, plain: true } as const;
  const cell = (s: ScenarioResult, name: ResultName, unit: string): string[] => {
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
  lines.push('', ...answerLines(notebook, run, draws));

  for (const question of ['stays', 'takes'] as const) {
    const rows = COMPARISONS.filter(
      (c) => c.question === question && scenarios.some((s) => s.values[c.name] !== null),
    );
    const cells = rows.map((c) => scenarios.map((s) => cell(s, c.name, describe(c.name)?.unit ?? '')));
    lines.push('', ...table([HEADINGS[question], ...scenarios.map((s) => s.name)], rows, cells));
  }
  if (draws) lines.push('', ...howSure(run, draws), '', ...surety(run, draws, context));
  lines.push('', 'Differences', ...differenceSentences(run, context, draws).map((s) => `  ${s}`));
  lines.push('', ...checkLines(run, context));
  lines.push(
    '',
    'Slurry gas kills: stock and people out before any tank is stirred. Loads on walls, roofs and slabs belong to a',
    'licensed engineer; welfare, storage and spreading rules to the local authority; loans to a professional.',
    'All checks with value, limit and source: `--format json`.',
    '`explain FILE SCENARIO QUANTITY` shows how a figure came about.',
  );
  return `${lines.join('\n')}\n`;
}

/** The paragraph that stands above the cards on the page. */
function answerLines(notebook: Notebook, run: Run, draws: Draws | undefined): string[] {
  const { weights } = notebook.decide;
  const reading = { currency: run.currency, year: run.year, system: notebook.units, plain: true };
  const known = {
    results: run.scenarios,
    weights,
    draws,
    missing: missingOf(run, notebook),
    overtakes: overtakes(run, measuresOf(weights)),
  };
  const { first, second } = answerOf(known, reading);
  const doubt = draws && second !== null ? doubtIn(draws, weights, first, second) : undefined;
  const { lead, rest } = answerWords(answerOf({ ...known, doubt }, reading), reading);
  return hanging('', [lead, ...rest].join(' '));
}

function doubtIn(
  draws: Draws,
  weights: Readonly<Record<string, number>>,
  first: number,
  second: number,
): Doubt | null {
  const doubting = doubtOf(draws, measuresOf(weights), first, second);
  for (;;) {
    const step = doubting.next();
    if (step.done) return step.value;
  }
}

function table(head: readonly string[], rows: readonly Comparison[], cells: readonly string[][][]): string[] {
  const widths = head.map((text, k) =>
    Math.max(
      text.length,
      ...(k === 0
        ? rows.map((r) => r.short.length + 2)
        : cells.flatMap((row) => row[k - 1].map((line) => line.length))),
    ),
  );
  const line = (parts: readonly string[]) =>
    parts
      .map((part, k) => (k === 0 ? part.padEnd(widths[k]) : part.padStart(widths[k])))
      .join('  ')
      .trimEnd();
  const out = [line(head), widths.map((w) => '─'.repeat(w)).join('  ')];
  rows.forEach((row, r) => {
    const height = Math.max(...cells[r].map((lines) => lines.length));
    for (let h = 0; h < height; h++)
      out.push(line([h === 0 ? `  ${row.short}` : '', ...cells[r].map((lines) => lines[h] ?? '')]));
  });
  return out;
}

function howSure({ scenarios }: Run, draws: Draws): string[] {
  const measures = COMPARISONS.filter(
    (c) => c.better && ['nitrogenKeptKg', 'nitrogenAvailableKg', 'labourHours', 'netCost'].includes(c.name),
  );
  return [
    'How sure: best in how many of 100 draws',
    ...measures.map((c) => {
      const said = hundredthsOf(shareBest(draws, c.name, c.better as 'more' | 'less'));
      return `  ${c.short} (${c.better} is better): ${scenarios.map((s, k) => `“${s.name}” ${said[k]}`).join(', ')}`;
    }),
  ];
}

/** Whether each scenario pays against its baseline and serves its loans, and in how many draws. */
function surety({ scenarios }: Run, draws: Draws, context: FormatOptions): string[] {
  return scenarios.flatMap(({ name, finance }, k) => {
    const { difference, debtServiceCover } = finance;
    if (!difference) return [];
    const baseline = scenarios.findIndex((other) => other.name === difference.baseline);
    const { cover, worth, ...chances } = chancesOf(draws, k, baseline);
    const said = chanceWords({ cover, worth, ...chances });
    if (said === '') return [];
    const money = (value: number) => formatQuantity(value, 'money', context);
    const spans = [
      ...(cover && debtServiceCover.value !== null
        ? [`cover ${debtServiceCover.value.toFixed(2)} (${cover.p10.toFixed(2)} to ${cover.p90.toFixed(2)})`]
        : []),
      ...(worth && difference.netPresentValue.value !== null
        ? [
            `present value ${money(difference.netPresentValue.value)} (${money(worth.p10)} to ${money(worth.p90)})`,
          ]
        : []),
    ];
    return hanging('', `Against “${difference.baseline}”, “${name}”: ${said}; ${spans.join(', ')}.`);
  });
}

/** What stops and what the keeper can change, with what would pass; the rest is counted. */
function checkLines({ scenarios, currency, year }: Run, context: FormatOptions): string[] {
  const reading = { currency, year, system: context.system ?? 'metric', plain: true };
  const line = (lead: string, check: Check) => {
    const numbers = limitText(check, reading);
    const passes = check.passesWith === undefined ? '' : ` Passes with ${check.passesWith}.`;
    return hanging(
      lead,
      `${titleOf(check.id)}${numbers === '' ? '' : ` (${numbers})`}: ${check.words}${passes} [${check.source}]`,
    );
  };
  return [
    ...hanging('', rulesInUse(scenarios)),
    ...scenarios.flatMap(({ name, checks }) => {
      const { stop, change } = grouped(checks);
      return [
        `Checks, ${name}: ${countsText(checks, CHECK_GROUPS)}`,
        ...stop.flatMap((check) => line('  stop    ', check)),
        ...change.flatMap((check) => line('  change  ', check)),
      ];
    }),
  ];
}

const WIDTH = 100;

/** Text broken at blanks, later lines under the first letter. */
function hanging(lead: string, words: string): string[] {
  const lines: string[] = [];
  let line = lead;
  for (const word of words.split(' ')) {
    if (line.length + word.length > WIDTH && line.trim() !== '') {
      lines.push(line.trimEnd());
      line = ' '.repeat(lead.length);
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()];
}

/** Our own plain daily file: `date,rainMm,minC,maxC` and perhaps `meanC`, read strictly. */
import { dayNumber } from '../units/days.ts';
import type { Problem } from '../units/problem.ts';
import { toSeries } from './weatherDays.ts';
import { type Measure, type RawDay, shorten, type WeatherReading } from './weatherSeries.ts';
import type { TextLine } from './weatherText.ts';

export const OWN_HEADER = ['date', 'rainMm', 'minC', 'maxC'] as const;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** Whether the first line says this is our own format, or means to. */
export function looksOwn(header: string): boolean {
  const names = header.split(',').map((name) => name.trim());
  return (
    names[0] === 'date' &&
    names.filter((name) => ['rainMm', 'minC', 'maxC', 'meanC'].includes(name)).length >= 2
  );
}

/** Reads the lines of a file in our own format. Empty cells are days not measured; anything else must be right. */
export function readOwn(file: string, label: string, lines: readonly TextLine[]): WeatherReading {
  const [header, ...rows] = lines;
  const names = header.text.split(',').map((name) => name.trim());
  const problems: Problem[] = headerProblems(file, header.line, names);
  if (problems.length > 0) return { series: null, problems, notes: [] };
  const raw: RawDay[] = [];
  for (const { line, text } of rows) {
    const cells = text.split(',').map((cell) => cell.trim());
    if (cells.length !== names.length) {
      const todo =
        cells.length > names.length
          ? 'write decimals with a point, not a comma'
          : 'write a comma for each empty cell';
      problems.push({
        what: 'the row has not as many cells as the header',
        file,
        line,
        found: `${cells.length} cells`,
        allowed: `${names.length} cells: ${names.join(',')}`,
        todo,
      });
      continue;
    }
    const cell = (name: string) => cells[names.indexOf(name)] ?? '';
    if (Number.isNaN(dayNumber(cell('date'))))
      problems.push({
        what: 'not a date',
        file,
        line,
        key: 'date',
        found: cell('date') || '(empty)',
        allowed: 'year-month-day, like 2014-11-30',
      });
    const value = (key: Measure): number | null => {
      const written = cell(key);
      if (written === '') return null;
      if (NUMBER.test(written)) return Number(written);
      problems.push({
        what: 'not a number',
        file,
        line,
        key,
        found: written,
        allowed: 'a plain number, like -3.4, or an empty cell where nothing was measured',
      });
      return null;
    };
    raw.push({
      line,
      date: cell('date'),
      rainMm: value('rainMm'),
      minC: value('minC'),
      maxC: value('maxC'),
      meanC: value('meanC'),
    });
  }
  if (problems.length > 0) return { series: null, problems: shorten(problems), notes: [] };
  return toSeries(file, raw, { label });
}

function headerProblems(file: string, line: number, names: readonly string[]): Problem[] {
  const allowed = `${OWN_HEADER.join(',')} and perhaps meanC`;
  const problems: Problem[] = [];
  for (const name of OWN_HEADER)
    if (!names.includes(name))
      problems.push({
        what: 'missing column',
        file,
        line,
        key: name,
        found: names.join(','),
        allowed,
        todo: 'add it to the header',
      });
  names.forEach((name, k) => {
    if (!['date', 'rainMm', 'minC', 'maxC', 'meanC'].includes(name))
      problems.push({
        what: 'unknown column',
        file,
        line,
        key: name || '(no name)',
        allowed,
        todo: 'remove or rename it',
      });
    else if (names.indexOf(name) < k)
      problems.push({ what: 'column given twice', file, line, key: name, allowed, todo: 'keep one' });
  });
  return problems;
}

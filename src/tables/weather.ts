/** Any daily weather file: our own form, GHCN-Daily, or somebody else's table by a guess that can be corrected. */
import type { Problem } from '../units/problem.ts';
import { applyGuess } from './weatherApply.ts';
import { looksDly, looksGhcnCsv, readDly, readGhcnCsv } from './weatherGhcn.ts';
import { guessWeather, type WeatherGuess } from './weatherGuess.ts';
import { looksOwn, readOwn } from './weatherOwn.ts';
import {
  type BadDays,
  LONGEST_FILLED_GAP,
  type WeatherReading,
  type WeatherSeries,
} from './weatherSeries.ts';
import { linesOf, type TextLine } from './weatherText.ts';

export type WeatherForm = 'own' | 'ghcnFixedWidth' | 'ghcnCsv' | 'guessed';

export interface WeatherFile extends WeatherReading {
  /** How it was read; undefined where it is no text to begin with. */
  readonly form?: WeatherForm;
  /** What was guessed of a foreign file, to be shown and corrected. */
  readonly guess?: WeatherGuess;
}

export interface ReadOptions {
  /** The one station to take of a file that holds several. */
  readonly station?: string;
  /** A corrected guess to read a foreign file by. */
  readonly guess?: WeatherGuess;
  /** Days that cannot be right are refused unless told otherwise. */
  readonly bad?: BadDays;
}

/**
 * Reads a daily weather file. `file` is its name for messages; its last part without the ending is the label
 * unless the file names a station. Rain in mm, temperature in °C. Bad files give problems, never an exception.
 */
export function readWeather(file: string, text: string, options: ReadOptions = {}): WeatherFile {
  const { lines, problem } = linesOf(file, text);
  if (problem) return { series: null, problems: [problem], notes: [] };
  const read = readLines(file, lines, options);
  const { bad = 'refuse' } = options;
  if (bad === 'refuse') return { ...read, mendable: badLines(read).length > 0 };
  return withoutBadDays(file, lines, read, options, bad);
}

function readLines(file: string, lines: readonly TextLine[], { station, guess }: ReadOptions): WeatherFile {
  const label = (file.split(/[/\\]/).at(-1) ?? file).replace(/\.[^.]+$/, '');
  const header = lines[0].text;
  if (guess) return { form: 'guessed', guess, ...applyGuess(file, label, lines, guess, station) };
  if (looksOwn(header)) return { form: 'own', ...readOwn(file, label, lines) };
  if (looksDly(header)) return { form: 'ghcnFixedWidth', ...readDly(file, lines, station) };
  if (looksGhcnCsv(header)) return { form: 'ghcnCsv', ...readGhcnCsv(file, lines, station) };
  const guessed = guessWeather(lines);
  return { form: 'guessed', guess: guessed, ...applyGuess(file, label, lines, guessed, station) };
}

/** More bad lines than this are no slips of the pen: a column or a unit is another one. */
const MOST_BAD_LINES = 400;
const MOST_BAD_SHARE = 0.1;

/** Lines of single days that cannot be right; none where the file is wrong as a whole, or a line holds a month. */
function badLines({ problems, form, series, rain }: WeatherFile): Problem[] {
  if (series || rain || form === 'ghcnFixedWidth') return [];
  const bad = problems.filter(({ line }) => line !== undefined && line > 1);
  return problems.every((each) => bad.includes(each) || /^and \d+ more/.test(each.what)) ? bad : [];
}

/** Reads again without the lines that cannot be right, until none is left or there are too many. */
function withoutBadDays(
  file: string,
  lines: readonly TextLine[],
  first: WeatherFile,
  options: ReadOptions,
  how: Exclude<BadDays, 'refuse'>,
): WeatherFile {
  const most = Math.min(MOST_BAD_LINES, lines.length * MOST_BAD_SHARE);
  // To be left out with its winter, a day takes those after it along: a short gap would be filled.
  const width = how === 'bridge' ? 1 : LONGEST_FILLED_GAP + 1;
  const out: Problem[] = [];
  let left = lines;
  let read = first;
  for (let bad = badLines(read); bad.length > 0; bad = badLines(read)) {
    out.push(...bad);
    if (out.length > most) return first;
    const starts = new Set(bad.map(({ line }) => line));
    const cut = new Set<number>();
    left.forEach(({ line }, k) => {
      if (starts.has(line)) for (let n = 0; n < width; n++) cut.add(k + n);
    });
    left = left.filter((_, k) => !cut.has(k));
    read = readLines(file, left, { ...options, guess: first.guess ?? options.guess });
  }
  if (out.length === 0 || !(read.series || read.rain)) return read;
  const done =
    how === 'bridge'
      ? 'lines that cannot be right were taken as days not measured (of a day given twice the first line stands)'
      : 'lines that cannot be right were left out, and the winters they stand in with them';
  const list = out
    .slice(0, BAD_TOLD)
    .map(({ line, what, found }) => `line ${line}: ${what}${found ? ` (${found})` : ''}`);
  const more = out.length > BAD_TOLD ? ` and ${out.length - BAD_TOLD} more` : '';
  return { ...read, notes: [{ what: done, file, found: list.join('; ') + more }, ...read.notes] };
}
const BAD_TOLD = 20;

/** Years of days that travel in a notebook: as many as the shipped climates have, and no more than a link can carry. */
const YEARS_CARRIED = 21;

/** The last years of days in our own form. */
export function lastYears(csv: string): string {
  const lines = csv.split('\n');
  const last = lines.findLast((line) => /^\d{4}-/.test(line));
  if (last === undefined) return csv;
  const from = `${String(Number(last.slice(0, 4)) - YEARS_CARRIED).padStart(4, '0')}${last.slice(4, 10)}`;
  return lines.filter((line, k) => k === 0 || line.slice(0, 10) > from || line === '').join('\n');
}

/** A series in our own form, rounded to tenths, as text with a last line break. */
export function writeWeather({ days }: Pick<WeatherSeries, 'days'>): string {
  const tenth = (n: number) => (Math.round(n * 10) / 10 || 0).toString();
  return `date,rainMm,minC,maxC\n${days.map((d) => `${d.date},${tenth(d.rainMm)},${tenth(d.minC)},${tenth(d.maxC)}\n`).join('')}`;
}

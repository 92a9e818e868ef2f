/** Any daily weather file: our own form, GHCN-Daily, or somebody else's table by a guess that can be corrected. */
import { applyGuess } from './weatherApply.ts';
import { looksDly, looksGhcnCsv, readDly, readGhcnCsv } from './weatherGhcn.ts';
import { guessWeather, type WeatherGuess } from './weatherGuess.ts';
import { looksOwn, readOwn } from './weatherOwn.ts';
import type { WeatherReading, WeatherSeries } from './weatherSeries.ts';
import { linesOf } from './weatherText.ts';

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
}

/**
 * Reads a daily weather file. `file` is its name for messages; its last part without the ending is the label
 * unless the file names a station. Rain in mm, temperature in °C. Bad files give problems, never an exception.
 */
export function readWeather(file: string, text: string, { station, guess }: ReadOptions = {}): WeatherFile {
  const { lines, problem } = linesOf(file, text);
  if (problem) return { series: null, problems: [problem], notes: [] };
  const label = (file.split(/[/\\]/).at(-1) ?? file).replace(/\.[^.]+$/, '');
  const header = lines[0].text;
  if (guess) return { form: 'guessed', guess, ...applyGuess(file, label, lines, guess, station) };
  if (looksOwn(header)) return { form: 'own', ...readOwn(file, label, lines) };
  if (looksDly(header)) return { form: 'ghcnFixedWidth', ...readDly(file, lines, station) };
  if (looksGhcnCsv(header)) return { form: 'ghcnCsv', ...readGhcnCsv(file, lines, station) };
  const guessed = guessWeather(lines);
  return { form: 'guessed', guess: guessed, ...applyGuess(file, label, lines, guessed, station) };
}

/** A series in our own form, rounded to tenths, as text with a last line break. */
export function writeWeather({ days }: Pick<WeatherSeries, 'days'>): string {
  const tenth = (n: number) => (Math.round(n * 10) / 10 || 0).toString();
  return `date,rainMm,minC,maxC\n${days.map((d) => `${d.date},${tenth(d.rainMm)},${tenth(d.minC)},${tenth(d.maxC)}\n`).join('')}`;
}

/**
 * Days of weather as columns of tenths: what a build makes of a shipped file, half the size of its text once packed. The
 * page writes the same text from it again, to the letter.
 */
import { dateOf, dayNumber } from '../units/days.ts';

export interface WeatherColumns {
  /** The line of names. */
  readonly header: string;
  /** First day, ISO; each row is the next. */
  readonly start: string;
  /** Tenths of the first number, the second, and of the third over the second. */
  readonly columns: readonly [readonly number[], readonly number[], readonly number[]];
}

/** Throws where the text is not days one after the other with three numbers in tenths. */
export function weatherColumnsOf(text: string): WeatherColumns {
  const [header, ...rows] = text.trimEnd().split('\n');
  const fields = rows.map((row) => row.split(','));
  const tenths = (at: number) => fields.map((row) => Math.round(Number(row[at]) * 10));
  const [first, second, third] = [tenths(1), tenths(2), tenths(3)];
  const columns = {
    header,
    start: fields[0][0],
    columns: [first, second, third.map((value, k) => value - second[k])],
  } as const;
  if (weatherTextOf(columns) !== text)
    throw new Error(
      'these days of weather are not three numbers in tenths for each day, one after the other',
    );
  return columns;
}

/** The text of the file. */
export function weatherTextOf({ header, start, columns: [first, second, over] }: WeatherColumns): string {
  const from = dayNumber(start);
  const rows = first.map((value, d) =>
    [dateOf(from + d), value / 10, second[d] / 10, (second[d] + over[d]) / 10].join(','),
  );
  return `${[header, ...rows].join('\n')}\n`;
}

/**
 * Days of weather that travel in the notebook: a fence at the end of the text, its first word `weather`, then the
 * name the front matter asks for. Data, not a cell: the page shows it nowhere.
 */

export const WEATHER_WORD = 'weather';

/** The name in a fence's info, or undefined where the fence is no weather. */
export function weatherName(info: string): string | undefined {
  return /^\s*weather[ \t]+(\S.*?)\s*$/.exec(info)?.[1];
}

/** Lengths of a fence: the opening line, its content, the closing line, with the line breaks before it. */
const BLOCK = /(?:\r?\n)*^```weather[ \t]+[^\n]*\n[\s\S]*?^```[ \t]*(?:\r?\n|$(?![\s\S]))/gm;

/** The text with these days in it, and no other days: a notebook that needs no file beside it. */
export function withWeather(text: string, name: string, csv: string): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const rows = csv.replace(/\r?\n/g, eol).replace(/[\r\n]*$/, eol);
  const block = ['```', WEATHER_WORD, ' ', name, eol, rows, '```', eol].join('');
  return `${withoutWeather(text).replace(/[\r\n]*$/, eol + eol)}${block}`;
}

function withoutWeather(text: string): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  return text.replace(BLOCK, eol);
}

/** A name that can stand in the text and in a path: no quotes of code, no folders. */
export const plainName = (name: string): string =>
  name
    .replace(/^.*[/\\]/, '')
    .replace(/[^\p{L}\p{N}._ -]+/gu, '-')
    .trim()
    .slice(0, 100) || 'weather.csv';

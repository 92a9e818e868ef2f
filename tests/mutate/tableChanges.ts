/** Faults in the tables, one at a time: a centre a third off, a row gone, the figures of another option. */
import { csvFormatRows, csvParseRows } from 'd3-dsv';
import type { Change } from './changes.ts';

const FACTORS = [1.3, 0.7] as const;

/** Every fault that may be put into a table with columns for a best guess or a price. */
export function tableChangesOf(file: string, text: string): Change[] {
  const rows = csvParseRows(text);
  const [head] = rows;
  const [low, central, high] = ['low', 'central', 'high'].map((name) => head.indexOf(name));
  if (low < 0 || central < 0 || high < 0) return [];
  const changed = (at: number, what: string, to: readonly string[] | undefined): Change => ({
    file,
    line: text.split('\n').findIndex((line) => line.startsWith(`${rows[at][0]},`)) + 1,
    what: `${rows[at][0]} ${what}`,
    text: csvFormatRows(rows.flatMap((row, k) => (k !== at ? [row] : to ? [[...to]] : []))),
  });
  return rows.flatMap((row, at) => {
    if (at === 0 || row.length !== head.length || !Number.isFinite(Number(row[central] || Number.NaN)))
      return [];
    const centre = Number(row[central]);
    const scaled = FACTORS.flatMap((factor) => {
      const value = centre * factor;
      // Ends that the new centre would lie beyond go with it: the loader must not be what notices.
      const to = row.map((cell, k) =>
        k === central
          ? String(value)
          : k === low && cell !== ''
            ? String(Math.min(Number(cell), value))
            : k === high && cell !== ''
              ? String(Math.max(Number(cell), value))
              : cell,
      );
      return centre === 0 ? [] : [changed(at, `× ${factor}`, to)];
    });
    const family = row[0].split('.')[0];
    const other = rows.find(
      (each, k) =>
        k > 0 &&
        k !== at &&
        row[0].includes('.') &&
        each[0].split('.')[0] === family &&
        each[central] !== row[central],
    );
    const exchanged = other
      ? [
          changed(
            at,
            `with the figures of ${other[0]}`,
            row.map((cell, k) => ([low, central, high].includes(k) ? other[k] : cell)),
          ),
        ]
      : [];
    return [...scaled, changed(at, 'deleted', undefined), ...exchanged];
  });
}

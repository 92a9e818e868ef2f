/** Cells of one line of somebody else's table. */

/** Splits a line at the delimiter, outside double quotes; a space stands for any run of blanks. Cells are trimmed. */
export function splitCells(line: string, delimiter: string): string[] {
  if (delimiter === ' ') return line.trim().split(/\s+/);
  if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let k = 0; k < line.length; k++) {
    const c = line[k];
    if (c === '"' && quoted && line[k + 1] === '"') {
      cell += '"';
      k++;
    } else if (c === '"') quoted = !quoted;
    else if (c === delimiter && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += c;
  }
  cells.push(cell.trim());
  return cells;
}

/** The delimiter that gives most lines the same number of cells, at least two of them. */
export function delimiterOf(lines: readonly string[]): string {
  let best = ',';
  let bestScore = 0;
  for (const delimiter of ['\t', ';', ',', ' ']) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const n = splitCells(line, delimiter).length;
      if (n > 1) counts.set(n, (counts.get(n) ?? 0) + 1);
    }
    const score = Math.max(0, ...counts.values());
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** A number as written abroad: decimal comma where told. Null for a missing-value sign, NaN for text. */
export function numberOf(cell: string, decimalComma: boolean, missing: ReadonlySet<string>): number | null {
  if (cell === '' || missing.has(cell.toLowerCase())) return null;
  const plain = decimalComma ? cell.replace(',', '.') : cell;
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : Number.NaN;
}

export const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

/** The ISO date in a cell (a time after it is dropped), or undefined. Names of months are English. */
export function isoDateOf(cell: string, order: DateOrder): string | undefined {
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(cell);
  if (compact) return `${compact[1]}-${compact[2]}-${compact[3]}`;
  const named = /^(\d{1,2})[-/. ]([A-Za-z]{3})[a-z]*[-/. ,]+(\d{4})/.exec(cell);
  if (named) {
    const month = MONTHS.indexOf(named[2].toLowerCase()) + 1;
    return month > 0 ? iso(named[3], String(month), named[1]) : undefined;
  }
  const parts = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?=$|[T ])/.exec(cell);
  if (!parts) return undefined;
  const [, a, b, c] = parts;
  if (a.length === 4) return iso(a, b, c);
  if (c.length !== 4) return undefined;
  return order === 'mdy' ? iso(c, a, b) : iso(c, b, a);
}

const iso = (year: string, month: string, day: string) =>
  `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;

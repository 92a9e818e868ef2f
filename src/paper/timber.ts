/** The list of members for the saw, in words for the paper and for the page. */

import type { TimberList } from '../study/timberList.ts';
import { formatNumber } from '../units/format.ts';
import { type Html, html, tableOf } from './html.ts';

const mm = (metres: number, step: number) => String(Math.round((metres * 1000) / step) * step);
const cubic = (m3: number) => m3.toFixed(2);

/** Part, pieces, section, length, volume: cells as they are read. The last row is the sum. */
export function timberRows({ members, timberM3, boardsM2, boardM }: TimberList): {
  readonly rows: readonly (readonly string[])[];
  readonly sum: readonly string[];
  readonly boards: readonly string[];
} {
  return {
    rows: members.map(({ part, pieces, lengthM, widthM, thickM, m3, tooLong }) => [
      part,
      pieces === null ? '' : String(pieces),
      widthM === null || thickM === null ? '' : `${mm(widthM, 5)} × ${mm(thickM, 5)}`,
      lengthM === null ? '' : `${lengthM.toFixed(2)}${tooLong ? ' (joined)' : ''}`,
      cubic(m3),
    ]),
    sum: ['timber of the bill', '', '', '', cubic(timberM3)],
    boards: [
      `boards above the walls, ${formatNumber(boardsM2, '', { digits: 3 })} m², in the line of cladding`,
      '',
      mm(boardM, 1),
      '',
      cubic(boardsM2 * boardM),
    ],
  };
}

export const TIMBER_HEAD = ['Part', 'Pieces', 'Section, mm', 'Length, m', 'm³'] as const;

/** What holds for every such list. */
export const timberWords = ({ members }: TimberList): string =>
  `Counted from the drawn frame; the volumes add up to the timber of the bill. Sections are our own guess, heavier with the snow, until the engineer sets them; timber sawn at home that carries a roof must be graded by a person licensed to do it where the rules ask for grades.${members.some(({ tooLong }) => tooLong) ? ' A piece marked “joined” is longer than the longest that can be had: a joint over a post, as the engineer draws it.' : ''} Boards are counted as if laid closed; spaced ones take less.`;

export function timberSection(list: TimberList | null): Html {
  if (!list) return html``;
  const { rows, sum, boards } = timberRows(list);
  return html`<h3>Timber for the saw</h3>
    <p class="small">${timberWords(list)}</p>
    ${tableOf(
      TIMBER_HEAD.map((head, k) => ({ head, number: k > 0 })),
      [...rows.map((cells) => ({ cells })), { cells: sum, look: 'total' as const }, { cells: boards }],
      'bill',
    )}`;
}

/** The mark a scenario's line has in the figures, to stand beside its name. */
import { svg } from 'lit';

export const MARKS: Readonly<Record<string, string>> = {
  circle: '●',
  square: '■',
  triangle: '▲',
  diamond: '◆',
  star: '★',
  cross: '✚',
  hexagon: '⬢',
  wye: 'Y',
};

export function symbolMark(symbol: string, fill: string) {
  return svg`<svg width="16" height="16" aria-hidden="true" style="filter: var(--drawn)"><text x="8" y="13" font-size="14" text-anchor="middle" fill=${fill}>${MARKS[symbol] ?? '●'}</text></svg>`;
}

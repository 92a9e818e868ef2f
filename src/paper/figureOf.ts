/** A figure on paper: finding, looks, drawing, caption. Its table stands elsewhere in the document or in the files. */
import type { PrintFigure } from '../plots/figure.ts';
import { swatchText } from '../plots/svgText.ts';
import { type Html, html, made } from './html.ts';

/** Width of the drawing on A4 and Letter inside the margins, CSS pixels. */
export const PAPER_WIDTH = 680;

export function figureOf({ finding, legend, caption, markup }: PrintFigure, ids: string): Html {
  if (!markup) return html`<p class="gap">${finding}</p>`;
  const patterned = legend.some(({ pattern }) => pattern !== undefined);
  return html`<figure><p class="finding">${finding}</p>
    ${patterned ? html`<ul class="legend">${legend.map((entry, k) => html`<li>${made(swatchText(entry, `${ids}-look-${k}`))} ${entry.label}</li>`)}</ul>` : ''}
    ${made(markup(PAPER_WIDTH, ids))}
    ${caption ? html`<figcaption>${caption}</figcaption>` : ''}</figure>`;
}

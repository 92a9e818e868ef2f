/** HTML as text without a document: every value set into it is escaped, unless it is markup itself. */
import { escaped } from '../plots/svgText.ts';

export interface Html {
  readonly markup: string;
}

type Part = Html | string | number | null | undefined | false | readonly Part[];

const text = (part: Part): string => {
  if (part === null || part === undefined || part === false) return '';
  if (Array.isArray(part)) return part.map(text).join('');
  if (typeof part === 'object') return (part as Html).markup;
  return escaped(String(part));
};

/** Markup with values in it. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return { markup: strings.reduce((all, piece, k) => all + text(parts[k - 1]) + piece) };
}

/** Markup made elsewhere in this program, such as a drawing; never a person's words. */
export const made = (markup: string): Html => ({ markup });

export interface Column {
  readonly head: string;
  /** Right-aligned, as numbers are. */
  readonly number?: boolean;
}

/** A table with its first column as row headings; `total` rows stand out, `part` rows head a group. */
export function tableOf(
  columns: readonly Column[],
  rows: readonly { readonly cells: readonly Part[]; readonly look?: 'total' | 'part' | 'gap' }[],
  look = '',
): Html {
  const of = (k: number) => (columns[k]?.number ? 'n' : '');
  return html`<table class="${look}"><thead><tr>${columns.map(({ head }, k) => html`<th scope="col" class="${of(k)}">${head}</th>`)}</tr></thead><tbody>${rows.map(
    ({ cells, look: row }) =>
      row === 'part'
        ? html`<tr class="part"><th scope="rowgroup" colspan="${columns.length}">${cells}</th></tr>`
        : html`<tr class="${row ?? ''}">${cells.map((cell, k) => (k === 0 ? html`<th scope="row">${cell}</th>` : html`<td class="${of(k)}">${cell}</td>`))}</tr>`,
  )}</tbody></table>`;
}

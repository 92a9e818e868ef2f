/**
 * Stands in the page for the table of named letters (`&eacute;`) that the Markdown parser brings along: every browser
 * holds that table already.
 */

/** The letters of one whole reference; what no browser knows stays as it is written. */
export function decodeHTMLStrict(reference: string): string {
  const area = document.createElement('textarea');
  area.innerHTML = reference;
  return area.textContent ?? reference;
}

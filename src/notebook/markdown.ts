/** The one Markdown parser: no HTML, no pictures, so that a notebook from a stranger is only words. */
import MarkdownIt from 'markdown-it';
import { canBeSet } from './bounds.ts';
import { type InlineValue, isInlineValue, readInlineValue } from './inline.ts';

// Pictures would be fetched from elsewhere: nothing on the page may tell others that it was opened.
export const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false }).disable('image');

/** Links lead to pages, to letters, or within where the notebook lies: nowhere that runs, opens a file or speaks to a program. */
const SCHEME = /^[a-z][a-z0-9+.-]*:/i;
const SCHEMES = /^(https?|mailto):/i;
markdown.validateLink = (url) => SCHEMES.test(url.trim()) || !SCHEME.test(url.replace(/[\p{Cc}\p{Z}]/gu, ''));

/** A paragraph no parser should be given: shown as it is written. Taken before every other rule, whatever it begins with. */
export const AS_TEXT = 'as_text';
/** More of it is not shown: it stands in the text. */
const MOST_SHOWN = 4000;
const FENCED = /^ {0,3}(`{3,}|~{3,})/;

markdown.block.ruler.before('table', AS_TEXT, (state, from, end, silent) => {
  const { src, bMarks, eMarks } = state;
  let to = from;
  while (
    to < end &&
    eMarks[to] > bMarks[to] + state.blkIndent &&
    !FENCED.test(src.slice(bMarks[to], bMarks[to] + 8)) &&
    !state.isEmpty(to)
  )
    to++;
  if (to === from || canBeSet(src.slice(bMarks[from], eMarks[to - 1]))) return false;
  if (silent) return true;
  const token = state.push(AS_TEXT, 'pre', 0);
  token.content = src.slice(bMarks[from], eMarks[to - 1]);
  token.map = [from, to];
  state.line = to;
  return true;
});

markdown.renderer.rules[AS_TEXT] = (tokens, k) => {
  const { content } = tokens[k];
  const more = content.length - MOST_SHOWN;
  return `<pre class="as-text" tabindex="0">${markdown.utils.escapeHtml(content.slice(0, MOST_SHOWN))}${more > 0 ? `… and ${more} more letters, as they stand in the text` : ''}</pre>\n`;
};

markdown.renderer.rules.link_open = (tokens, k, options, _env, self) => {
  tokens[k].attrSet('rel', 'noopener noreferrer');
  return self.renderToken(tokens, k, options);
};

/** What to show for a value: plain text, escaped here. */
export type ShowValue = (value: InlineValue) => string;

markdown.renderer.rules.code_inline = (tokens, k, _options, env) => {
  const { content } = tokens[k];
  const { escapeHtml } = markdown.utils;
  const show = (env as { show?: ShowValue } | undefined)?.show;
  const value = show && isInlineValue(content) ? readInlineValue(content, 0) : undefined;
  if (!value || !show) return `<code>${escapeHtml(content)}</code>`;
  const scenario = value.scenario === null ? '' : ` data-scenario="${escapeHtml(value.scenario)}"`;
  return `<button type="button" class="inline-value" data-quantity="${escapeHtml(value.quantity)}"${scenario}>${escapeHtml(show(value))}</button>`;
};

/**
 * Prose as HTML that holds no script, no picture and no raw HTML of the author's, paragraph by paragraph: each
 * heading, list or table by itself, in their order. Each value by name becomes a button with `data-quantity` and
 * `data-scenario`, holding the text `show` gives.
 */
export function proseParts(text: string, show: ShowValue): string[] {
  // All are read at once, since a link may be told its target in another paragraph.
  const env = { show };
  const tokens = markdown.parse(text, env);
  const out: string[] = [];
  let first = 0;
  tokens.forEach(({ level, nesting }, k) => {
    if (level !== 0 || nesting > 0) return;
    out.push(markdown.renderer.render(tokens.slice(first, k + 1), markdown.options, env));
    first = k + 1;
  });
  return out;
}

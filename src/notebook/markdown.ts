/** The one Markdown parser: no HTML, no pictures, so that a notebook from a stranger is only words. */
import MarkdownIt from 'markdown-it';
import { type InlineValue, isInlineValue, readInlineValue } from './inline.ts';

// Pictures would be fetched from elsewhere: nothing on the page may tell others that it was opened.
export const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false }).disable('image');

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

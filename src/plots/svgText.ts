/** SVG as text, so that one drawing serves the page, the paper without a browser, and files. */
import type { LegendEntry, Pattern } from './figure.ts';
import { INK, PAPER } from './palette.ts';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Words made safe to stand in markup, SVG and HTML alike. */
export const escaped = (text: string) => text.replace(/[&<>"']/g, (letter) => ENTITIES[letter]);

/** A rim in the colour of the paper that keeps words legible over lines and fills. */
export const HALO = { stroke: PAPER, 'stroke-width': 4, 'paint-order': 'stroke' } as const;

/** One element; numbers are cut to two decimals. Throws on a number that is none. */
export function tag(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes).flatMap(([key, value]) => {
    if (value === undefined) return [];
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new Error(`a drawing holds a number that is none: ${name} ${key}`);
    return [` ${key}="${escaped(typeof value === 'number' ? String(Number(value.toFixed(2))) : value)}"`];
  });
  return children.length === 0
    ? `<${name}${written.join('')}/>`
    : `<${name}${written.join('')}>${children.join('')}</${name}>`;
}

/** What a mark says when it is pointed at. */
export const says = (text: string): string => tag('title', {}, escaped(text));

/** Words at a place. */
export const words = (x: number, y: number, text: string, attributes: Attributes = {}): string =>
  tag('text', { x, y, fill: INK, ...attributes }, escaped(text));

/** A straight line. */
export const stroke = (x1: number, y1: number, x2: number, y2: number, attributes: Attributes = {}): string =>
  tag('line', { x1, y1, x2, y2, stroke: INK, ...attributes });

/** The whole picture. `label` is its finding, for those who cannot see it. */
export function picture(
  width: number,
  height: number,
  label: string,
  ...children: readonly string[]
): string {
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.round(width)} ${Math.round(height)}`,
      width: Math.round(width),
      height: Math.round(height),
      role: 'img',
      'aria-label': label,
      'font-family': 'system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif',
      'font-size': 13,
    },
    ...children,
  );
}

const STROKES: Readonly<Record<Exclude<Pattern, 'solid' | 'dots'>, string>> = {
  rising: 'M-2,2 l4,-4 M0,8 l8,-8 M6,10 l4,-4',
  falling: 'M-2,6 l4,4 M0,0 l8,8 M6,-2 l4,4',
  crossed: 'M0,0 l8,8 M0,8 l8,-8',
  upright: 'M2,0 v8 M6,0 v8',
  level: 'M0,2 h8 M0,6 h8',
};

/** A fill told apart without colour; refer to it as `url(#id)`. */
export function patternText(id: string, kind: Pattern, fill: string): string {
  const mark =
    kind === 'solid'
      ? []
      : kind === 'dots'
        ? [2, 6].map((at) => tag('circle', { cx: at, cy: at, r: 1.1, fill: INK }))
        : [tag('path', { d: STROKES[kind], stroke: INK, 'stroke-width': 0.9, fill: 'none' })];
  return tag(
    'pattern',
    { id, width: 8, height: 8, patternUnits: 'userSpaceOnUse' },
    tag('rect', { width: 8, height: 8, fill }),
    ...mark,
  );
}

/** A small square of a legend's look, as a picture of its own. */
export function swatchText({ fill, pattern = 'solid' }: LegendEntry, id: string): string {
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: 22,
      height: 13,
      viewBox: '0 0 22 13',
      'aria-hidden': 'true',
    },
    tag('defs', {}, patternText(id, pattern, fill)),
    tag('rect', { width: 22, height: 13, fill: `url(#${id})` }),
  );
}

/** The same as an element of the page; `markup` is one element, its text escaped. */
export function toSvg(markup: string): Element {
  // In a document that is at hand already: one of its own for each drawing takes longer than what is in it.
  const holder = document.createElement('template');
  holder.innerHTML = markup;
  return holder.content.firstElementChild as Element;
}

/** Width of a letter against the size of the type: on the wide side, since the type is the reader's own. */
const LETTER = 0.61;
export const textWidth = (text: string, size = 13) => text.length * LETTER * size;

/** Text shortened to fit a width. */
export function fitted(text: string, width: number, size = 13): string {
  const letters = Math.floor(width / (LETTER * size));
  return text.length <= letters ? text : `${text.slice(0, Math.max(1, letters - 1)).trimEnd()}…`;
}

/** Text broken into lines that fit, two at most. */
export function twoLines(text: string, width: number, size = 13): string[] {
  const letters = Math.floor(width / (LETTER * size));
  if (text.length <= letters) return [text];
  const cut = text.lastIndexOf(' ', letters);
  const at = cut > letters / 3 ? cut : letters;
  return [text.slice(0, at), fitted(text.slice(at).trim(), width, size)];
}

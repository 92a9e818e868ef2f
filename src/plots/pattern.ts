/** SVG patterns as elements of the page: a fill that is told apart without colour. */
import type { Pattern } from './figure.ts';
import { patternText, tag, toSvg } from './svgText.ts';

/** A `<pattern>` of `kind` over `fill`; refer to it as `url(#id)`. */
export function patternElement(id: string, kind: Pattern, fill: string): Element {
  const holder = toSvg(tag('svg', { xmlns: 'http://www.w3.org/2000/svg' }, patternText(id, kind, fill)));
  return holder.firstElementChild as Element;
}

/** SVG patterns: a fill that is told apart without colour. */
import type { Pattern } from './figure.ts';

const SVG = 'http://www.w3.org/2000/svg';
const MARK = '#1d1b17';

const STROKES: Readonly<Record<Exclude<Pattern, 'solid' | 'dots'>, string>> = {
  rising: 'M-2,2 l4,-4 M0,8 l8,-8 M6,10 l4,-4',
  falling: 'M-2,6 l4,4 M0,0 l8,8 M6,-2 l4,4',
  crossed: 'M0,0 l8,8 M0,8 l8,-8',
  upright: 'M2,0 v8 M6,0 v8',
};

/** A `<pattern>` of `kind` over `fill`; refer to it as `url(#id)`. */
export function patternElement(
  id: string,
  kind: Pattern,
  fill: string,
  document: Document,
): SVGPatternElement {
  const pattern = document.createElementNS(SVG, 'pattern');
  for (const [name, value] of Object.entries({ id, width: '8', height: '8', patternUnits: 'userSpaceOnUse' }))
    pattern.setAttribute(name, value);
  const ground = document.createElementNS(SVG, 'rect');
  for (const [name, value] of Object.entries({ width: '8', height: '8', fill }))
    ground.setAttribute(name, value);
  pattern.append(ground);
  if (kind === 'dots') {
    for (const [cx, cy] of [
      [2, 2],
      [6, 6],
    ]) {
      const dot = document.createElementNS(SVG, 'circle');
      for (const [name, value] of Object.entries({ cx, cy, r: 1.1, fill: MARK }))
        dot.setAttribute(name, String(value));
      pattern.append(dot);
    }
  } else if (kind !== 'solid') {
    const path = document.createElementNS(SVG, 'path');
    for (const [name, value] of Object.entries({
      d: STROKES[kind],
      stroke: MARK,
      'stroke-width': '0.9',
      fill: 'none',
    }))
      path.setAttribute(name, value);
    pattern.append(path);
  }
  return pattern;
}

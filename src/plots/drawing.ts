/** A drawing in metres: shapes with y upwards, and the SVG they become. Numbers keep a tenth of a millimetre. */
import { curveCatmullRom, curveCatmullRomClosed, curveLinear, curveLinearClosed, line } from 'd3';
import { escaped, toSvg } from './svgText.ts';

export type Point = readonly [x: number, y: number];

interface Common {
  /** What it is, for tests and styles: `bed`, `roof`, `horn`. */
  readonly part: string;
  readonly fill?: string;
  readonly stroke?: string;
  /** Stroke width in metres. */
  readonly weightM?: number;
  readonly dash?: readonly number[];
  readonly opacity?: number;
}

export interface PathShape extends Common {
  readonly kind: 'path';
  readonly points: readonly Point[];
  readonly closed?: boolean;
  readonly smooth?: boolean;
}

interface TextShape extends Common {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  readonly sizeM: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  /** Turned a quarter anticlockwise. */
  readonly upright?: boolean;
  /** A rim in this colour keeps the letters legible over lines. */
  readonly halo?: string;
}

export type Shape = PathShape | TextShape;

interface Hatch {
  readonly id: string;
  readonly stroke: string;
  readonly stepM: number;
  readonly weightM: number;
  readonly angleDeg: number;
}

export interface Drawing {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly shapes: readonly Shape[];
  readonly hatches: readonly Hatch[];
}

const fixed = (value: number) => String(Number(value.toFixed(4)));

/** An axis-parallel box from its corners. */
export function box(x0: number, y0: number, x1: number, y1: number): Point[] {
  return [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]; // biome-ignore format: corners
}

/** The drawing as SVG text; its viewBox is in metres, y downwards from the drawing's top. Throws on a NaN. */
export function toMarkup(drawing: Drawing, label: string): string {
  const { left, right, top, bottom } = drawing;
  const flip = (y: number) => top - y;
  const body = drawing.shapes.map((shape) => markupOf(shape, flip)).join('');
  const markup =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${[left, 0, right - left, top - bottom].map(fixed).join(' ')}" role="img" aria-label="${escaped(label)}" font-family="inherit">` +
    `<defs>${drawing.hatches.map(hatchMarkup).join('')}</defs>${body}</svg>`;
  if (/NaN|Infinity/.test(markup.replace(/aria-label="[^"]*"/, '')))
    throw new Error('a drawing holds a number that is none');
  return markup;
}

/** The same as an element of the page. */
export const toElement = (drawing: Drawing, label: string): Element => toSvg(toMarkup(drawing, label));

function hatchMarkup({ id, stroke, stepM, weightM, angleDeg }: Hatch): string {
  return `<pattern id="${id}" patternUnits="userSpaceOnUse" width="${fixed(stepM)}" height="${fixed(stepM)}" patternTransform="rotate(${angleDeg})"><line x1="0" y1="0" x2="0" y2="${fixed(stepM)}" stroke="${stroke}" stroke-width="${fixed(weightM)}"/></pattern>`;
}

function markupOf(shape: Shape, flip: (y: number) => number): string {
  const look =
    ` data-part="${shape.part}"` +
    (shape.opacity === undefined ? '' : ` opacity="${shape.opacity}"`) +
    (shape.dash ? ` stroke-dasharray="${shape.dash.map(fixed).join(' ')}"` : '');
  if (shape.kind === 'text') {
    const { at, text, sizeM, anchor = 'middle', bold, upright, halo } = shape;
    const [x, y] = [fixed(at[0]), fixed(flip(at[1]))];
    const turn = upright ? ` transform="rotate(-90 ${x} ${y})"` : '';
    const rim = halo
      ? ` stroke="${halo}" stroke-width="${fixed(sizeM / 4)}" stroke-linejoin="round" paint-order="stroke"`
      : '';
    return `<text${look} x="${x}" y="${y}" font-size="${fixed(sizeM)}" text-anchor="${anchor}"${bold ? ' font-weight="700"' : ''} fill="${shape.fill ?? '#000'}"${rim}${turn}>${escaped(text)}</text>`;
  }
  const curve = shape.smooth
    ? shape.closed
      ? curveCatmullRomClosed
      : curveCatmullRom
    : shape.closed
      ? curveLinearClosed
      : curveLinear;
  const path = line<Point>()
    .x((p) => p[0])
    .y((p) => flip(p[1]))
    .curve(curve)
    .digits(4)(shape.points as Point[]);
  return `<path${look} d="${path ?? ''}" fill="${shape.fill ?? 'none'}"${shape.stroke ? ` stroke="${shape.stroke}" stroke-width="${fixed(shape.weightM ?? 0.02)}" stroke-linejoin="round" stroke-linecap="butt"` : ''}/>`;
}

export interface DimensionStyle {
  readonly ink: string;
  readonly halo: string;
  readonly sizeM: number;
  readonly weightM: number;
}

/** Width of a letter against its size, on average. */
const LETTER = 0.56;

/**
 * A dimension line with end ticks and its number beside it, as on a builder's plan. On an upright line that is
 * shorter than its number the number lies flat, to the side given.
 */
export function dimension(
  part: string,
  from: Point,
  to: Point,
  text: string,
  style: DimensionStyle,
  side: 'left' | 'right' = 'left',
): Shape[] {
  const vertical = Math.abs(from[0] - to[0]) < 1e-9;
  const { sizeM, ink, weightM } = style;
  const tick = sizeM * 0.35;
  const end = ([x, y]: Point): PathShape => ({
    kind: 'path',
    part: `${part}Tick`,
    points: vertical ? [[x - tick, y], [x + tick, y]] : [[x, y - tick], [x, y + tick]],
    stroke: ink,
    weightM,
  }); // biome-ignore format: pairs
  const [x, y]: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const flat = vertical && Math.abs(to[1] - from[1]) < text.length * LETTER * sizeM;
  const away = side === 'left' ? -1 : 1;
  const at: Point = flat
    ? [x + away * sizeM * 0.5, Math.max(y - sizeM * 0.35, Math.min(from[1], to[1]) + sizeM * 0.35)]
    : vertical
      ? [x + (side === 'left' ? -0.3 : 1.05) * sizeM, y]
      : [x, y + sizeM * 0.3];
  return [
    { kind: 'path', part, points: [from, to], stroke: ink, weightM },
    end(from),
    end(to),
    {
      kind: 'text',
      part: `${part}Text`,
      at,
      text,
      sizeM,
      fill: ink,
      halo: style.halo,
      upright: vertical && !flat,
      anchor: flat ? (side === 'left' ? 'end' : 'start') : 'middle',
    },
  ];
}

/** A figure as a file: a drawing that stands alone, the same as pixels, and its numbers. Fetched when first asked for. */
import type { Figure, FigureTable, LegendEntry } from '../../plots/figure.ts';
import { INK, PAPER } from '../../plots/palette.ts';
import { escaped, patternText, tag, words } from '../../plots/svgText.ts';
import { csvLines } from '../../tables/csvLines.ts';
import { MARKS } from './mark.ts';

/** Wide enough for a page of paper or a slide. */
const WIDTH = 800;
const PAD = 20;
const LINE = 19;
/** A letter of the usual typefaces against the size of the type, on the wide side. */
const LETTER = 0.56;
/** Pixels for one of the drawing: what a dense screen and paper show. */
const SCALE = 2;

export interface About {
  readonly heading: string;
  /** Said at the foot of the drawing: whose figure it is and what it rests on. */
  readonly source: string;
}

/** The figure as SVG text, light as on paper: heading, finding, legend, drawing, caption and where it comes from. */
export function figureSvg(figure: Figure, { heading, source }: About): string {
  const inner = WIDTH - 2 * PAD;
  const parts: string[] = [];
  let y = PAD;
  const lines = (text: string, size: number, look: Record<string, string | number> = {}) => {
    for (const line of wrapped(text, inner, size)) {
      y += (LINE * size) / 13;
      parts.push(words(PAD, y, line, { 'font-size': size, ...look }));
    }
  };
  if (heading !== '') lines(heading, 16, { 'font-weight': 700 });
  lines(figure.finding, 14);
  y += 8;
  const keys = legendParts(figure.legend, y, inner);
  parts.push(...keys.parts);
  y = keys.bottom + 12;
  for (const drawing of drawingsOf(figure.draw?.(inner))) {
    const { width, height } = sizeOf(drawing, inner);
    parts.push(placed(drawing, y, width, height));
    y += height + 12;
  }
  if (figure.caption) lines(figure.caption, 12);
  lines(source, 12, { 'font-style': 'italic' });
  const height = Math.ceil(y + PAD);
  return `${tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: WIDTH,
      height,
      viewBox: `0 0 ${WIDTH} ${height}`,
      role: 'img',
      color: INK,
      'font-family': 'system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif',
      'font-size': 13,
    },
    tag('title', {}, escaped(heading === '' ? figure.finding : heading)),
    tag('desc', {}, escaped([figure.finding, figure.caption ?? '', source].filter(Boolean).join(' '))),
    tag('style', {}, 'text{white-space:pre}'),
    tag('rect', { width: WIDTH, height, fill: PAPER }),
    ...parts,
  )}\n`;
}

function wrapped(text: string, width: number, size: number): string[] {
  const most = Math.floor(width / (LETTER * size));
  const lines = [''];
  for (const word of text.split(/[ \n]+/)) {
    const last = lines[lines.length - 1];
    if (last !== '' && last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines.filter((line) => line !== '');
}

/** Side by side, and below one another where a line is full. */
function legendParts(legend: readonly LegendEntry[], top: number, width: number) {
  let [x, y] = [PAD, top];
  const parts = legend.flatMap((entry, k) => {
    const wide = 34 + entry.label.length * LETTER * 13 + 18;
    if (x > PAD && x + wide > PAD + width) [x, y] = [PAD, y + LINE + 4];
    const [at, id] = [x, `take-${k}`];
    x += wide;
    const key = entry.symbol
      ? [
          tag(
            'text',
            { x: at + 13, y: y + 13, 'font-size': 14, 'text-anchor': 'middle', fill: entry.fill },
            MARKS[entry.symbol] ?? '●',
          ),
        ]
      : [
          tag('defs', {}, patternText(id, entry.pattern ?? 'solid', entry.fill)),
          tag('rect', { x: at, y, width: 26, height: 16, fill: `url(#${id})` }),
        ];
    return [...key, words(at + 32, y + 13, entry.label)];
  });
  return { parts, bottom: legend.length === 0 ? top : y + LINE };
}

/** The outermost drawings; most figures are one. */
function drawingsOf(made: Element | undefined): Element[] {
  if (!made) return [];
  return made.localName === 'svg'
    ? [made]
    : [...made.querySelectorAll('svg')].filter((each) => !each.parentElement?.closest('svg'));
}

/** Its own size, or the whole width where it is drawn in metres and has none. */
function sizeOf(drawing: Element, width: number) {
  const [own, high] = ['width', 'height'].map((name) => Number(drawing.getAttribute(name)));
  if (own > 0 && high > 0) return { width: own, height: high };
  const [, , across = 1, up = 1] = (drawing.getAttribute('viewBox') ?? '').split(/[ ,]+/).map(Number);
  return { width, height: (width * up) / across };
}

function placed(drawing: Element, y: number, width: number, height: number): string {
  // The plotting library's own rules size the drawing for a page, which here would undo its size.
  for (const style of drawing.querySelectorAll('style')) style.remove();
  const at = {
    x: PAD,
    y: Number(y.toFixed(2)),
    width,
    height: Number(height.toFixed(2)),
    overflow: 'visible',
  };
  for (const [name, value] of Object.entries(at)) drawing.setAttribute(name, String(value));
  drawing.removeAttribute('class');
  return new XMLSerializer().serializeToString(drawing);
}

/** The same as pixels. As an address that holds the drawing itself it is drawn without asking anyone for it. */
export async function figurePng(svg: string): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = image.width * SCALE;
  canvas.height = image.height * SCALE;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser draws no pictures');
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('this browser makes no PNG'))),
      'image/png',
    ),
  );
}

const FIGURE = /^([A-Z]{3} )?([\u2212-]?\d{1,3}(?:\u202F\d{3})*(?:\.\d+)?)((?:\s|\/).+| ?%)?$/u;

interface Split {
  readonly unit: string;
  readonly number: number;
}

function split(cell: string): Split | undefined {
  const found = FIGURE.exec(cell);
  if (!found) return undefined;
  const [, currency = '', number, rest = ''] = found;
  return {
    unit: `${currency.trim()}${rest.trim()}`,
    number: Number(number.replace(/\u202F/g, '').replace('\u2212', '-')),
  };
}

const absent = (cell: string) => cell === '—' || cell === '–' || cell === '';
const plainly = (text: string) => text.replace(/[\u202F\u00A0]/g, ' ').replace(/\u2212/g, '-');

/**
 * The table behind the figure as lines of CSV, rounded as it is shown. Where all numbers of a column have one unit, it
 * goes into the heading and they are written without; what is more than a number (a range, words) stays as it is shown.
 */
export function figureCsv({ caption, head, rows }: FigureTable): string {
  const columns = head.map((name, k) => {
    const cells = rows.map((row) => row[k] ?? '');
    const parts = cells.map(split);
    const known = parts.filter((part) => part !== undefined);
    const unit = known[0]?.unit;
    const even = k > 0 && known.length > 0 && known.every((part) => part.unit === unit);
    const title = k === 0 ? (name === '' ? caption : `${name} (${caption})`) : name;
    return {
      title: plainly(even && unit ? `${title} (${unit})` : title),
      cells: even
        ? parts.map((part, row) => part?.number ?? (absent(cells[row]) ? null : plainly(cells[row])))
        : cells.map((cell) => (absent(cell) && k > 0 ? null : plainly(cell))),
    };
  });
  return csvLines([
    columns.map(({ title }) => title),
    ...rows.map((_, row) => columns.map(({ cells }) => cells[row] ?? null)),
  ]);
}

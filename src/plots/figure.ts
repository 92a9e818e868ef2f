/** What every figure is: a finding in one sentence, the table behind it, and a drawing for a given width. */
export interface FigureTable {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly string[])[];
}

export interface LegendEntry {
  readonly label: string;
  readonly fill: string;
  readonly pattern?: Pattern;
  readonly symbol?: string;
}

/** How a filled area is told apart without colour. */
export type Pattern = 'solid' | 'dots' | 'rising' | 'falling' | 'crossed' | 'upright' | 'level';

export interface Figure {
  readonly finding: string;
  readonly table: FigureTable;
  readonly legend: readonly LegendEntry[];
  /** Said under the drawing: what the axis is, what a range means. */
  readonly caption?: string;
  /** Draws at a width in CSS pixels; needs a document. Null when there is nothing to draw. */
  readonly draw: ((width: number) => Element) | null;
}

/** A figure that has nothing to show says why. */
export function emptyFigure(finding: string): Figure {
  return { finding, table: { caption: finding, head: [], rows: [] }, legend: [], draw: null };
}

/** A figure drawn as text: for paper and files, where there is no document. */
export interface PrintFigure extends Figure {
  /** The drawing as SVG text at a width in CSS pixels; `ids` keeps the patterns of several drawings apart. */
  readonly markup: ((width: number, ids?: string) => string) | null;
}

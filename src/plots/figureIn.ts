/** A figure whose words and drawing are written in metric units, said in the reader's: numbers, labels, letters on the drawing. */
import { labelIn, numbersIn, unitOfLabel, wordsIn } from '../units/inWords.ts';
import type { UnitSystem } from '../units/quantities.ts';
import type { Figure, FigureTable } from './figure.ts';

export function figureIn(figure: Figure, system: UnitSystem): Figure {
  if (system === 'metric') return figure;
  const { draw } = figure;
  return {
    ...figure,
    finding: wordsIn(figure.finding, system),
    ...(figure.caption === undefined ? {} : { caption: wordsIn(figure.caption, system) }),
    legend: figure.legend.map((entry) => ({ ...entry, label: wordsIn(entry.label, system) })),
    table: tableIn(figure.table, system),
    draw: draw && ((width) => drawnIn(draw(width), system)),
  };
}

/** Letters of a drawing that is not on the page yet. */
export function drawnIn(drawing: Element, system: UnitSystem): Element {
  if (system === 'metric') return drawing;
  for (const text of drawing.querySelectorAll('text, title')) {
    // Words with parts of their own keep them.
    if (text.childElementCount === 0) text.textContent = wordsIn(text.textContent ?? '', system);
  }
  const label = drawing.getAttribute('aria-label');
  if (label !== null) drawing.setAttribute('aria-label', wordsIn(label, system));
  return drawing;
}

/** Units stand in the heading of a column or, where rows are different things, at the end of the row's own. */
function tableIn({ caption, head, rows }: FigureTable, system: UnitSystem): FigureTable {
  const columns = head.map(unitOfLabel);
  return {
    caption: labelIn(caption, system),
    head: head.map((label) => labelIn(label, system)),
    rows: rows.map(([label, ...cells]) => {
      const own = unitOfLabel(label);
      return [
        labelIn(label, system),
        ...cells.map((cell, k) => numbersIn(cell, own ?? columns[k + 1], system)),
      ];
    }),
  };
}

/** The paper's figures as files. */
import { cashFlowFigure } from '../plots/cashFlow.ts';
import { costStackFigure } from '../plots/costStack.ts';
import { tornadoFigure } from '../plots/tornado.ts';
import { PAPER_WIDTH } from './figureOf.ts';
import type { Report } from './report.ts';

/** SVG text by file name without ending; a figure with nothing to draw is left out. */
export function caseDrawings({
  results,
  reading,
  bands,
  proposal: { result, finance },
  sensitivities,
  stress,
}: Report): Map<string, string> {
  const figures = {
    costs: costStackFigure(results, reading),
    'cash-flow': cashFlowFigure(results, reading, bands()),
    tornado: tornadoFigure(
      { scenario: result.name, baseline: finance.difference?.baseline ?? null, sensitivities, stress },
      reading,
    ),
  };
  return new Map(
    Object.entries(figures).flatMap(([name, { markup }]) =>
      markup ? [[name, `${markup(PAPER_WIDTH, name)}\n`]] : [],
    ),
  );
}

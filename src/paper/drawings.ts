/** The paper's figures as files. */
import { cashFlowFigure } from '../plots/cashFlow.ts';
import { costStackFigure } from '../plots/costStack.ts';
import { tornadoFigure } from '../plots/tornado.ts';
import { PAPER_WIDTH } from './figureOf.ts';
import type { Report } from './report.ts';
import { shedPictures } from './sheds.ts';

/** SVG text by file name without ending; a figure with nothing to draw is left out. */
export function caseDrawings(report: Report): Map<string, string> {
  const { results, reading, bands, proposal, sensitivities, stress } = report;
  const { result, finance } = proposal;
  const figures = {
    costs: costStackFigure(results, reading),
    'cash-flow': cashFlowFigure(results, reading, bands()),
    tornado: tornadoFigure(
      { scenario: result.name, baseline: finance.difference?.baseline ?? null, sensitivities, stress },
      reading,
    ),
  };
  const sheds = results.flatMap((_, k) =>
    shedPictures(report, k).flatMap(({ view, markup }): [string, string][] =>
      markup === null ? [] : [[`${view}-${k + 1}`, `${markup}\n`]],
    ),
  );
  return new Map([
    ...Object.entries(figures).flatMap(([name, { markup }]): [string, string][] =>
      markup ? [[name, `${markup(PAPER_WIDTH, name)}\n`]] : [],
    ),
    ...sheds,
  ]);
}

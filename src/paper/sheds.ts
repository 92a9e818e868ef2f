/** Section and plan of a scenario's shed as the paper and its files show them. */

import { toMarkup } from '../plots/drawing.ts';
import { planDrawing, planScene } from '../plots/plan.ts';
import { sceneAt } from '../plots/scene.ts';
import { sectionDrawing } from '../plots/section.ts';
import type { Report } from './report.ts';

/** Drawn wider than it is printed, so that its letters stay apart. */
const SHED_WIDTH = 780;

export interface ShedPicture {
  readonly view: 'section' | 'plan';
  /** Null where there is nothing to draw; the words then say why. */
  readonly markup: string | null;
  readonly words: string;
}

/** Both views, the section as it stands when the bed is highest; none where animals are kept in the open or on an open pad. */
export function shedPictures(
  { run, results }: Pick<Report, 'run' | 'results'>,
  index: number,
): ShedPicture[] {
  const { name, scenario, values, tracks, bands } = results[index];
  const { placement, shed, slats } = scenario;
  const slatted = placement.slatsShare > 0 && (values.slatsUsedM2 ?? slats.areaM2 ?? 0) > 0;
  if (!(placement.bedShare > 0 || slatted) || !shed.roofed) return [];
  const input = {
    scenario,
    values,
    tracks,
    coefficients: run.bound[index].coefficients,
    ...(bands ? { bands } : {}),
  };
  const ids = `paper-${index}`;
  const cut = sceneAt(input, Math.max(0, Math.ceil((values.winterDays ?? 7) / 7) - 1));
  const seen = planScene(input);
  const when = placement.bedShare > 0 ? ' at the end of the winter' : '';
  const gas = slatted ? ' Slurry gas kills: stock and people out before a tank is stirred.' : '';
  const section: ShedPicture =
    typeof cut === 'string'
      ? { view: 'section', markup: null, words: cut }
      : {
          view: 'section',
          markup: toMarkup(sectionDrawing(cut, SHED_WIDTH, ids), `The shed of “${name}” cut across${when}`),
          words: `“${name}”: the shed cut across${when}, to scale, with snow and wind as numbers for the engineer. It is a drawing to talk over, not to build from.${gas}`,
        };
  if (typeof seen === 'string') return [section];
  return [
    section,
    {
      view: 'plan',
      markup: toMarkup(planDrawing(seen, SHED_WIDTH), `The shed of “${name}” from above`),
      words: `“${name}”: the shed from above, to scale, as the bill counts it; the broken line is the edge of the roof.`,
    },
  ];
}

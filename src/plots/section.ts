/** To-scale cross-section of the shed with the bed as it stands in a chosen week: a drawing to build by. */
import { sayDay } from '../model/checks/bedSeries.ts';
import type { CheckInput } from '../model/checks/check.ts';
import { type DimensionStyle, type Drawing, toElement } from './drawing.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { INK, PAPER } from './palette.ts';
import { type Scene, sceneAt } from './scene.ts';
import { LOOK, metres, THICK, TROUGH_WIDTH } from './sectionLook.ts';
import { clearance, measures } from './sectionMeasures.ts';
import { bed, ground, roof, walls } from './sectionShell.ts';
import { animals, barrier, loader, sunRay } from './sectionUse.ts';

/** CSS pixels: text on paper and phone alike. */
const TEXT_PX = 12;
const NARROW_PX = 560;

/** The section of one week as shapes, for a width in CSS pixels; `ids` keeps patterns of several drawings apart. */
export function sectionDrawing(scene: Scene, widthPx: number, ids: string): Drawing {
  const { shed } = scene;
  const narrow = widthPx < NARROW_PX;
  const out = Math.max(scene.frontM, TROUGH_WIDTH + 0.35);
  // Text is sized in pixels, so the margins that hold it depend on the scale, which depends on them.
  const bare = shed.depthM + out + shed.overhangM;
  const px = bare / Math.max(120, widthPx - TEXT_PX * (narrow ? 9 : 14));
  const size = TEXT_PX * px;
  const left = -out - size * (narrow ? 3 : 6);
  const right = shed.depthM + Math.max(shed.overhangM, THICK.wall) + size * (narrow ? 5.4 : 7);
  const top = Math.max(scene.roof.ridgeM + THICK.roof, scene.bedM + scene.animal.sizeM) + size * 2.2;
  const bottom = -THICK.floor - size * (narrow ? 3.2 : 4.6);
  const style: DimensionStyle = { ink: INK, halo: PAPER, sizeM: size, weightM: px };
  return {
    left,
    right,
    top,
    bottom,
    hatches: [{ id: `${ids}-range`, stroke: LOOK.range, stepM: 6 * px, weightM: px, angleDeg: 45 }],
    shapes: [
      ...ground(scene, left, right, px),
      ...sunRay(scene, left, top, px, size),
      ...bed(scene, ids, px, size, narrow),
      ...walls(scene, px),
      ...roof(scene, px),
      ...animals(scene),
      ...loader(scene, px, size, narrow),
      ...barrier(scene, px),
      ...clearance(scene, style, narrow),
      ...measures(scene, style, narrow, out),
    ],
  };
}

/** What the section shows in one sentence. */
export function sectionFinding(scene: Scene): string {
  const { week, day, bedM, lowM, highM, freeM, animal, machine, liftM } = scene;
  const need = Math.max(animal.needM, machine.needM);
  const who = animal.needM > machine.needM ? animal.who : machine.who;
  const fits =
    freeM >= need ? `enough for ${who} (${metres(need)})` : `too little for ${who} (${metres(need)})`;
  const lift = liftM > 0 ? ` Barrier and trough stand ${metres(liftM)} above their place in the autumn.` : '';
  return `Week ${week} (${sayDay(day)}): the bed stands ${metres(bedM)} above the floor (${lowM.toFixed(2)} to ${highM.toFixed(2)}) and leaves ${metres(freeM)} under the lowest roof member, ${fits}.${lift}`;
}

/** The section of week `week` with its sentence and the numbers of every week. */
export function sectionFigure(input: CheckInput, week: number, ids = 'section'): Figure {
  const scene = sceneAt(input, week);
  if (typeof scene === 'string') return emptyFigure(scene);
  const rows: string[][] = [];
  for (let w = 1; w <= scene.weeks; w++) {
    const at = sceneAt(input, w);
    if (typeof at === 'string') continue;
    const lit = at.lit ? `${at.lit.fromM.toFixed(1)} to ${at.lit.toM.toFixed(1)}` : 'none';
    rows.push([
      String(w),
      sayDay(at.day),
      at.bedM.toFixed(2),
      `${at.lowM.toFixed(2)} to ${at.highM.toFixed(2)}`,
      at.freeM.toFixed(2),
      at.liftM.toFixed(2),
      at.sun.altitudeDeg.toFixed(1),
      lit,
    ]);
  }
  return {
    finding: sectionFinding(scene),
    table: {
      caption: 'The bed and the shed by week',
      head: [
        'Week',
        'Middle',
        'Bed, m',
        'Range, m',
        'Free under the roof, m',
        'Barrier raised, m',
        'Noon sun, °',
        'Lit from the open side, m',
      ],
      rows,
    },
    legend: [
      { label: 'bed', fill: LOOK.bed },
      { label: 'starting layer', fill: LOOK.layer },
      { label: 'range of the bed', fill: LOOK.range, pattern: 'rising' },
      { label: 'sun on the bed at noon', fill: LOOK.sun },
      { label: 'loader, in outline', fill: LOOK.loader },
      { label: 'room it or an animal needs does not fit', fill: LOOK.alarm },
    ],
    caption:
      'Drawn to scale; thickness of roof, walls and boards is only for show. Loads and timber are the engineer’s.',
    draw: (width) => toElement(sectionDrawing(scene, width, `${ids}-${scene.week}`), sectionFinding(scene)),
  };
}

/** To-scale cross-section of the shed with the bed as it stands in a chosen week: a drawing to build by. */
import { sayDay } from '../model/checks/bedSeries.ts';
import type { CheckInput } from '../model/checks/check.ts';
import { type DimensionStyle, type Drawing, toElement } from './drawing.ts';
import { emptyFigure, type Figure, type FigureTable } from './figure.ts';
import { INK, PAPER } from './palette.ts';
import { type Scene, sceneAt } from './scene.ts';
import { LOOK, metres, THICK, TROUGH_WIDTH } from './sectionLook.ts';
import { clearance, measures, tankMeasures } from './sectionMeasures.ts';
import { bed, farEnd, footM, ground, loads, roof, tank, walls } from './sectionShell.ts';
import { animals, barrier, loader, sunRay } from './sectionUse.ts';

/** CSS pixels: text on paper and phone alike. */
const TEXT_PX = 12;
const NARROW_PX = 560;

/** The section of one week as shapes, for a width in CSS pixels; `ids` keeps patterns of several drawings apart. */
export function sectionDrawing(scene: Scene, widthPx: number, ids: string): Drawing {
  const { shed } = scene;
  const narrow = widthPx < NARROW_PX;
  const out = Math.max(scene.frontM, scene.roadM, TROUGH_WIDTH + 0.35);
  // Text is sized in pixels, so the margins that hold it depend on the scale, which depends on them.
  const bare = shed.depthM + out + shed.overhangM;
  const px = bare / Math.max(120, widthPx - TEXT_PX * (narrow ? 9 : 14));
  const size = TEXT_PX * px;
  const left = -out - size * (narrow ? 3 : 6);
  const right = shed.depthM + Math.max(shed.overhangM, THICK.wall) + size * (narrow ? 5.4 : 7);
  const top = Math.max(scene.roof.ridgeM + THICK.roof, scene.bedM + scene.animal.sizeM) + size * 2.6;
  const bottom = -footM(scene) - size * (narrow ? 1.9 : 3.3);
  const style: DimensionStyle = { ink: INK, halo: PAPER, sizeM: size, weightM: px };
  return {
    left,
    right,
    top,
    bottom,
    hatches: [
      { id: `${ids}-range`, stroke: LOOK.range, stepM: 6 * px, weightM: px, angleDeg: 45 },
      { id: `${ids}-slurry`, stroke: LOOK.slurryMark, stepM: 9 * px, weightM: px, angleDeg: 90 },
    ],
    shapes: [
      ...ground(scene, left, right, px),
      ...farEnd(scene, px),
      ...tank(scene, ids, px),
      ...sunRay(scene, left, top, px, size),
      ...bed(scene, ids, px, size, narrow),
      ...walls(scene, px),
      ...roof(scene, px),
      ...animals(scene),
      ...loader(scene, px, size, narrow),
      ...barrier(scene, px),
      ...loads(scene, px, size, narrow),
      ...tankMeasures(scene, style, narrow),
      ...clearance(scene, style, narrow),
      ...measures(scene, style, narrow, out),
    ],
  };
}

/** What the section shows in one sentence. */
export function sectionFinding(scene: Scene): string {
  const { week, day, bedded, bedM, lowM, highM, freeM, animal, machine, liftM } = scene;
  const need = Math.max(animal.needM, bedded ? machine.needM : 0);
  const who = !bedded || animal.needM > machine.needM ? animal.who : machine.who;
  const fits =
    freeM >= need ? `enough for ${who} (${metres(need)})` : `too little for ${who} (${metres(need)})`;
  if (!bedded)
    return `${metres(freeM)} stays free under the lowest roof member, ${fits}. ${tankWords(scene)}`;
  const lift = liftM > 0 ? ` Barrier and trough stand ${metres(liftM)} above their place in the autumn.` : '';
  return `Week ${week} (${sayDay(day)}): the bed stands ${metres(bedM)} above the floor (${lowM.toFixed(2)} to ${highM.toFixed(2)} m) and leaves ${metres(freeM)} under the lowest roof member, ${fits}.${lift}${scene.slats ? ` ${tankWords(scene)}` : ''}`;
}

/** Whether the slurry of the winter stays under the slats. */
function tankWords({ slats }: Scene): string {
  if (!slats) return '';
  const { tankM, channel, neededM, freeboardM } = slats;
  if (channel) return `Under the slats runs a channel ${metres(tankM)} deep to an outside store.`;
  if (neededM === null) return `The tank under the slats is ${metres(tankM)} deep.`;
  const room = tankM - freeboardM;
  return `The tank under the slats is ${metres(tankM)} deep; the winter needs ${metres(neededM)} of it and ${metres(Math.max(0, room))} may be filled, ${neededM <= room ? 'so it fits' : 'so the rest needs an outside store'}.`;
}

const CAPTION =
  'Drawn to scale; thickness of roof, walls, boards and slats is only for show. Loads, timber, walls and tanks are the engineer’s: snow and wind stand beside the roof as numbers to hand over.';
const GAS =
  ' A post over the tank needs a pier through it: it is drawn, and the bill counts a usual pad for it. Slurry gas kills: stock and people out before a tank is stirred.';

/** The section of week `week` with its sentence and the numbers of every week, or of the shed where nothing rises. */
export function sectionFigure(input: CheckInput, week: number, ids = 'section'): Figure {
  const scene = sceneAt(input, week);
  if (typeof scene === 'string') return emptyFigure(scene);
  const bedded = [
    { label: 'bed', fill: LOOK.bed },
    { label: 'starting layer', fill: LOOK.layer },
    { label: 'range of the bed', fill: LOOK.range, pattern: 'rising' as const },
    { label: 'loader, in outline', fill: LOOK.loader },
  ];
  const slatted = [
    { label: 'slats', fill: LOOK.slats },
    { label: 'slurry at the end of the winter', fill: LOOK.slurry, pattern: 'falling' as const },
  ];
  return {
    finding: sectionFinding(scene),
    table: scene.bedded ? byWeek(input, scene.weeks) : inNumbers(scene),
    legend: [
      ...(scene.bedded ? bedded : []),
      ...(scene.slats ? slatted : []),
      { label: scene.bedded ? 'sun on the bed at noon' : 'noon sun', fill: LOOK.sun },
      { label: 'room it or an animal needs does not fit', fill: LOOK.alarm },
    ],
    caption: `${CAPTION}${scene.slats ? GAS : ''}`,
    draw: (width) => toElement(sectionDrawing(scene, width, `${ids}-${scene.week}`), sectionFinding(scene)),
  };
}

/** The numbers of a shed in which nothing rises. */
function inNumbers(scene: Scene): FigureTable {
  const { shed, solidM, slats, wallM, roadM, freeM, roof: shape, rows, snowKnPerM2, windKnPerM2 } = scene;
  const two = (value: number) => value.toFixed(2);
  const list: [string, string][] = [
    ['Depth, barrier to rear wall, m', two(shed.depthM)],
    ['Feed road under the roof, m', roadM > 0 ? two(roadM) : 'open'],
    ['Solid floor, m', two(solidM)],
    ['Slats, m', slats ? two(slats.toM - slats.fromM) : '–'],
    ['Tank or channel, m deep', slats ? two(slats.tankM) : '–'],
    ['Slurry of the winter, m deep', slats?.neededM == null ? '–' : two(slats.neededM)],
    ['Solid walls, m high', two(wallM)],
    ['Eave, m', two(shape.frontM)],
    ['Ridge, m', two(shape.ridgeM)],
    ['Free under the lowest roof member, m', two(freeM)],
    ['Rows of posts', String(rows.length)],
    ['Snow on the roof, kN/m² of plan', two(snowKnPerM2)],
    ['Wind, peak at the ridge, kN/m²', two(windKnPerM2)],
  ];
  return { caption: 'The section in numbers', head: ['', ''], rows: list };
}

function byWeek(input: CheckInput, weeks: number): FigureTable {
  const rows: string[][] = [];
  for (let w = 1; w <= weeks; w++) {
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
  };
}

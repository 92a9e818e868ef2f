/** To-scale cross-section of the shed with the bed as it stands in a chosen week: a drawing to build by. */
import { sayDay } from '../model/checks/bedSeries.ts';
import type { CheckInput } from '../model/checks/check.ts';
import { roofAtM } from '../model/checks/shape.ts';
import {
  box,
  type DimensionStyle,
  type Drawing,
  dimension,
  type Point,
  type Shape,
  toElement,
} from './drawing.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { INK, PAPER } from './palette.ts';
import { type Scene, sceneAt } from './scene.ts';
import { BEAST_LENGTH, beast, CHEST_AT } from './silhouettes.ts';

const LOOK = {
  bed: '#e6cb8b',
  bedEdge: '#8a6a22',
  layer: '#c9a75a',
  range: '#7a5200',
  concrete: '#b8b1a2',
  timber: '#8a5a33',
  sheet: '#4d5d63',
  cow: '#7c3f1d',
  cowFar: '#5b2c12',
  horn: '#e9dfc6',
  loader: '#1f6f9f',
  sun: '#e08a00',
  alarm: '#9b1c1c',
  earth: '#ded5c2',
} as const;

/** Thickness of walls, boards, posts and roof as drawn, m: for show, not for building. */
const THICK = { wall: 0.2, post: 0.18, roof: 0.16, board: 0.06, floor: 0.15 } as const;
/** Height of a beast's back over the neck rail of a barrier, as drawn, m. */
const NECK_RAIL_OVER_SILL = 0.8;
const TROUGH_WIDTH = 0.8;
/** CSS pixels: text on paper and phone alike. */
const TEXT_PX = 12;
const NARROW_PX = 560;

const metres = (value: number) => `${value.toFixed(2)} m`;

/** The section of one week as shapes, for a width in CSS pixels; `ids` keeps patterns of several drawings apart. */
export function sectionDrawing(scene: Scene, widthPx: number, ids: string): Drawing {
  const { shed } = scene;
  const narrow = widthPx < NARROW_PX;
  const out = Math.max(shed.overhangM, TROUGH_WIDTH + 0.35);
  // Text is sized in pixels, so the margins that hold it depend on the scale, which depends on them.
  const bare = shed.depthM + out + shed.overhangM;
  const px = bare / Math.max(120, widthPx - TEXT_PX * (narrow ? 9 : 12));
  const size = TEXT_PX * px;
  const left = -out - size * (narrow ? 3 : 4);
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

function ground({ shed }: Scene, left: number, right: number, px: number): Shape[] {
  return [
    { kind: 'path', part: 'earth', points: box(left, -THICK.floor * 2, right, 0), closed: true, fill: LOOK.earth },
    { kind: 'path', part: 'floor', points: box(-TROUGH_WIDTH - 0.35, -THICK.floor, shed.depthM + THICK.wall, 0), closed: true, fill: LOOK.concrete },
    { kind: 'path', part: 'floorLine', points: [[left, 0], [right, 0]], stroke: INK, weightM: px },
  ]; // biome-ignore format: pairs
}

function bed(scene: Scene, ids: string, px: number, size: number, narrow: boolean): Shape[] {
  const { shed, bedM, lowM, highM, startM } = scene;
  const from = shed.stanceDepthM;
  const to = shed.depthM;
  const shapes: Shape[] = [
    { kind: 'path', part: 'bed', points: box(from, 0, to, bedM), closed: true, fill: LOOK.bed },
    { kind: 'path', part: 'startingLayer', points: box(from, 0, to, startM), closed: true, fill: LOOK.layer },
    { kind: 'path', part: 'startingLayerLine', points: [[from, startM], [to, startM]], stroke: LOOK.bedEdge, weightM: px, dash: [4 * px, 3 * px] },
  ]; // biome-ignore format: one shape a line
  if (highM > lowM)
    shapes.push({
      kind: 'path',
      part: 'range',
      points: box(from, lowM, to, highM),
      closed: true,
      fill: `url(#${ids}-range)`,
      opacity: 0.45,
    });
  shapes.push({
    kind: 'path',
    part: 'bedTop',
    points: [
      [from, bedM],
      [to, bedM],
    ],
    stroke: LOOK.bedEdge,
    weightM: 2 * px,
  });
  if (from > 0)
    shapes.push({
      kind: 'path',
      part: 'bedBoards',
      points: box(from - THICK.board, 0, from, bedM),
      closed: true,
      fill: LOOK.timber,
    });
  if (startM > 0.05 && !narrow)
    shapes.push({
      kind: 'text',
      part: 'startingLayerText',
      at: [to - size * 0.6, startM / 2 - size * 0.3],
      text: `starting layer ${metres(startM)}`,
      sizeM: Math.min(size * 0.9, startM * 0.7),
      anchor: 'end',
      fill: INK,
    });
  return shapes;
}

function walls({ shed, roof: shape }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  return [
    {
      kind: 'path',
      part: 'boarding',
      points: box(d, shed.pushWallM, d + THICK.board, shape.rearM),
      closed: true,
      fill: LOOK.timber,
      opacity: 0.55,
    },
    {
      kind: 'path',
      part: 'pushWall',
      points: box(d, 0, d + THICK.wall, shed.pushWallM),
      closed: true,
      fill: LOOK.concrete,
      stroke: INK,
      weightM: px,
    },
    {
      kind: 'path',
      part: 'post',
      points: box(-THICK.post, 0, 0, shape.frontM),
      closed: true,
      fill: LOOK.timber,
      opacity: 0.55,
    },
  ];
}

function roof({ shed, roof: shape, lowestM }: Scene, px: number): Shape[] {
  const d = shed.depthM;
  const o = shed.overhangM;
  const at = (x: number) => roofAtM(shape, d, x);
  const slab = (x0: number, x1: number): Point[] => [[x0, at(x0)], [x1, at(x1)], [x1, at(x1) + THICK.roof], [x0, at(x0) + THICK.roof]]; // biome-ignore format: corners
  const plate = (points: Point[]): Shape => ({
    kind: 'path',
    part: 'roof',
    points,
    closed: true,
    fill: LOOK.sheet,
  });
  const ridged = shape.ridgeXM > 0 && shape.ridgeXM < d;
  const half = Math.min(shed.ridgeSlotM / 2, ridged ? Math.min(shape.ridgeXM, d - shape.ridgeXM) : 0);
  return [
    ...(ridged ? [plate(slab(-o, shape.ridgeXM - half)), plate(slab(shape.ridgeXM + half, d + o))] : [plate(slab(-o, d + o))]),
    { kind: 'path', part: 'lowestMember', points: [[0, lowestM], [d, lowestM]], stroke: LOOK.timber, weightM: 2 * px, dash: [8 * px, 4 * px] },
  ]; // biome-ignore format: pairs
}

/** Places on the bed, from the stance on: a standing animal, then the loader, then one that lies. */
function places({ shed, withersM, machine }: Scene) {
  const length = BEAST_LENGTH * withersM;
  const gap = 0.35;
  const standing =
    shed.stanceDepthM > 0
      ? shed.stanceDepthM + gap
      : Math.min(withersM * 2.1, Math.max(0.1, shed.depthM - length - 0.1));
  const afterStanding = standing + length + gap;
  const loaderFits = afterStanding + shed.machineWidthM <= shed.depthM;
  const loader = loaderFits
    ? shed.depthM - shed.machineWidthM - Math.min(0.6, shed.depthM - shed.machineWidthM - afterStanding)
    : null;
  const lies = loader !== null && afterStanding + length + gap <= loader ? afterStanding : null;
  return { standing: standing + length <= shed.depthM ? standing : null, loader, lies, length, machine };
}

function animals(scene: Scene): Shape[] {
  const look = {
    withersM: scene.withersM,
    hornTipM: scene.hornTipM,
    fill: LOOK.cow,
    far: LOOK.cowFar,
    horn: LOOK.horn,
  };
  const { standing, lies } = places(scene);
  // The chest stands a hand behind the barrier; the head is in the trough.
  const eating = 0.12 - CHEST_AT * scene.withersM;
  return [
    ...(lies === null ? [] : beast('lying', lies, scene.bedM, look)),
    ...(standing === null ? [] : beast('standing', standing, scene.bedM, look)),
    ...beast('feeding', eating, scene.feetM, look),
  ];
}

/** Front view of a loader at work, in outline: it is not there with the animals. */
function loader(scene: Scene, px: number, size: number, narrow: boolean): Shape[] {
  const { loader: x } = places(scene);
  if (x === null) return [];
  const { machineWidthM: w, machineHeightM: h } = scene.shed;
  const y = scene.bedM;
  const line = (part: string, points: Point[]): Shape => ({
    kind: 'path',
    part,
    points,
    closed: true,
    stroke: LOOK.loader,
    weightM: 1.5 * px,
    dash: [5 * px, 3 * px],
  });
  const wheel = Math.min(w * 0.2, 0.4);
  return [
    line('loader', box(x, y, x + w, y + h)),
    line('loaderCab', [[x + w * 0.2, y + h * 0.42], [x + w * 0.8, y + h * 0.42], [x + w * 0.74, y + h * 0.95], [x + w * 0.26, y + h * 0.95]]),
    line('loaderWheel', box(x + 0.02, y, x + wheel, y + h * 0.38)),
    line('loaderWheel', box(x + w - wheel, y, x + w - 0.02, y + h * 0.38)),
    line('loaderBucket', box(x + 0.05, y + 0.05, x + w - 0.05, y + h * 0.22)),
    ...(narrow ? [] : [{ kind: 'text', part: 'loaderText', at: [x + w / 2, y + h * 0.28], text: 'loader', sizeM: size * 0.9, fill: LOOK.loader, halo: PAPER } as const]),
  ]; // biome-ignore format: pairs
}

function barrier({ sillM, sillStartM, troughM, liftM }: Scene, px: number): Shape[] {
  const rail = sillM + NECK_RAIL_OVER_SILL;
  const floor = troughM;
  const lip = sillM;
  const trough: Point[] = [[-0.1, lip - 0.02], [-0.1, floor], [-TROUGH_WIDTH, floor], [-TROUGH_WIDTH, floor + 0.45], [-TROUGH_WIDTH - 0.07, floor + 0.45], [-TROUGH_WIDTH - 0.07, floor - 0.07], [-0.03, floor - 0.07], [-0.03, lip - 0.02]]; // biome-ignore format: a trough
  const shapes: Shape[] = [
    { kind: 'path', part: 'trough', points: trough, closed: true, fill: LOOK.timber },
    {
      kind: 'path',
      part: 'sill',
      points: box(-0.07, lip - 0.12, 0.05, lip),
      closed: true,
      fill: LOOK.timber,
      stroke: INK,
      weightM: px,
    },
    {
      kind: 'path',
      part: 'neckRail',
      points: box(-0.06, rail - 0.05, 0.04, rail + 0.05),
      closed: true,
      fill: LOOK.sheet,
    },
  ];
  if (floor - 0.07 > 0)
    for (const x of [-TROUGH_WIDTH + 0.08, -0.2])
      shapes.unshift({
        kind: 'path',
        part: 'troughLeg',
        points: box(x - 0.05, 0, x + 0.05, floor - 0.07),
        closed: true,
        fill: LOOK.timber,
        opacity: 0.6,
      });
  if (liftM > 0)
    shapes.push({
      kind: 'path',
      part: 'sillAutumn',
      points: [
        [-TROUGH_WIDTH, sillStartM],
        [0.3, sillStartM],
      ],
      stroke: INK,
      weightM: px,
      dash: [3 * px, 3 * px],
    });
  return shapes;
}

function sunRay(scene: Scene, left: number, top: number, px: number, size: number): Shape[] {
  const { shed, edgeM, shadowDeg, lit, bedM, sun } = scene;
  const label = (text: string): Shape => ({
    kind: 'text',
    part: 'sunText',
    at: [left + size * 0.3, top - size],
    text,
    sizeM: size,
    anchor: 'start',
    fill: INK,
    halo: PAPER,
  });
  if (shadowDeg === null)
    return [label(sun.altitudeDeg <= 0 ? 'polar night: no sun at noon' : 'no direct sun at noon')];
  const slope = Math.tan((shadowDeg * Math.PI) / 180);
  const edgeX = -shed.overhangM;
  // The ray runs to the bed, or to the rear wall when the bed ends first.
  const reach = edgeX + (edgeM - bedM) / slope;
  const end: Point =
    reach <= shed.depthM ? [reach, bedM] : [shed.depthM, edgeM - (shed.depthM - edgeX) * slope];
  const back = Math.min(edgeX - left - size * 0.4, (top - edgeM - size * 1.6) / slope);
  const start: Point = [edgeX - Math.max(0, back), edgeM + Math.max(0, back) * slope];
  const ray: Shape = {
    kind: 'path',
    part: 'sunRay',
    points: [start, end],
    stroke: LOOK.sun,
    weightM: 2 * px,
    dash: [10 * px, 4 * px],
  };
  const strip: Shape[] = lit
    ? [
        {
          kind: 'path',
          part: 'litStrip',
          points: box(lit.fromM, bedM, lit.toM, bedM + 4 * px),
          closed: true,
          fill: LOOK.sun,
        },
      ]
    : [];
  return [ray, ...strip, label(`noon sun ${sun.altitudeDeg.toFixed(1)}° high`)];
}

/** Free height over the bed, beside what needs it; red where it does not fit. */
function clearance(scene: Scene, style: DimensionStyle, narrow: boolean): Shape[] {
  const { shed, bedM, lowestM, freeM, animal, machine } = scene;
  const { loader: loaderX, standing, length } = places(scene);
  const need = (part: string, x0: number, x1: number, needM: number, textAt: Point): Shape[] => {
    const fits = needM <= freeM + 1e-9;
    const ink = fits ? INK : LOOK.alarm;
    const y = bedM + needM;
    return [
      { kind: 'path', part, points: [[x0, y], [x1, y]], stroke: ink, weightM: style.weightM * (fits ? 1 : 2.5), dash: fits ? [2 * style.weightM, 2 * style.weightM] : undefined },
      { kind: 'text', part: `${part}Text`, at: textAt, text: narrow ? metres(needM) : `needs ${metres(needM)}`, sizeM: style.sizeM * 0.9, fill: ink, halo: PAPER, bold: !fits },
    ]; // biome-ignore format: two shapes
  };
  const shapes: Shape[] = [];
  if (loaderX !== null) {
    const w = shed.machineWidthM;
    shapes.push(
      ...need('machineNeed', loaderX, loaderX + w, machine.needM, [
        loaderX + w / 2,
        bedM + shed.machineHeightM * 0.62,
      ]),
    );
  }
  if (standing !== null) {
    const over = bedM + animal.needM + style.sizeM * 0.3;
    shapes.push(
      ...need('animalNeed', standing - 0.1, standing + length * 0.5, animal.needM, [
        standing - 0.05 + length * 0.25,
        over,
      ]),
    );
  }
  // Over the edge of the bed the air is free of animals; without a stance the loader's side is.
  const tall =
    shed.stanceDepthM > 0
      ? shed.stanceDepthM + style.weightM * 4
      : (loaderX ?? shed.depthM) - style.sizeM * 0.7;
  const ink = freeM >= Math.max(animal.needM, machine.needM) ? INK : LOOK.alarm;
  shapes.push(
    ...dimension(
      'freeHeight',
      [tall, bedM],
      [tall, lowestM],
      narrow ? metres(freeM) : `${metres(freeM)} free`,
      { ...style, ink },
    ),
  );
  return shapes;
}

function measures(scene: Scene, style: DimensionStyle, narrow: boolean, out: number): Shape[] {
  const { shed, bedM, sillM, feetM, roof: shape } = scene;
  const d = shed.depthM;
  const s = style.sizeM;
  const right = d + Math.max(shed.overhangM, THICK.wall);
  const low = -THICK.floor * 2 - s * 0.9;
  const across = (part: string, x0: number, x1: number, y: number, text: string) =>
    dimension(part, [x0, y], [x1, y], text, style);
  const upright = (part: string, x: number, y0: number, y1: number, text: string) =>
    dimension(part, [x, y0], [x, y1], text, style);
  const shapes: Shape[] = [
    ...dimension('bedDepth', [right + s * 0.9, 0], [right + s * 0.9, bedM], metres(bedM), style, 'right'),
    ...upright(
      'eaveHeight',
      -out - s * (narrow ? 1 : 2.6),
      0,
      shape.frontM,
      `${narrow ? '' : 'eave '}${metres(shape.frontM)}`,
    ),
    ...across('bedWidth', shed.stanceDepthM, d, low, `bed ${metres(d - shed.stanceDepthM)}`),
  ];
  if (shed.stanceDepthM > 0)
    shapes.push(
      ...across(
        'stanceWidth',
        0,
        shed.stanceDepthM,
        low,
        `${narrow ? '' : 'stance '}${metres(shed.stanceDepthM)}`,
      ),
    );
  if (!narrow) {
    shapes.push(
      ...upright('pushWallHeight', right + s * 5.6, 0, shed.pushWallM, `wall ${metres(shed.pushWallM)}`),
      ...dimension('sillHeight', [-out, feetM], [-out, sillM], metres(sillM - feetM), style, 'left'),
      ...across('shedDepth', 0, d, low - s * 1.7, `shed ${metres(d)}`),
    );
  }
  return shapes;
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
    draw: (width) =>
      toElement(sectionDrawing(scene, width, `${ids}-${scene.week}`), sectionFinding(scene), document),
  };
}

/** Plan of the shed: bed, stance, feed places, the way behind a feeding animal, water and ways out, to scale. */
import type { CheckInput } from '../model/checks/check.ts';
import { contextOf } from '../model/checks/context.ts';
import { herdNeed, isRanked, ruleName } from '../model/checks/spaceRules.ts';
import { bowlsBuilt, type WayOut } from '../model/works/geometry.ts';
import { box, type DimensionStyle, type Drawing, dimension, type Shape, toElement } from './drawing.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { INK, PAPER } from './palette.ts';
import {
  LOOK,
  type PlanScene,
  pens,
  places,
  posts,
  ramps,
  slats,
  wallsAndExits,
  water,
  wayBehind,
} from './planParts.ts';

const TROUGH = 0.8;
const TEXT_PX = 12;
const NARROW_PX = 560;

/** The numbers of the plan, or a sentence that says why there is none. Throws MissingRow. */
export function planScene(input: CheckInput): PlanScene | string {
  const c = contextOf(input);
  const { shed } = c;
  if (!c.housed) return 'This scenario has no shed to draw.';
  const length = c.largest('standingLengthM');
  const width = c.largest('bodyWidthM');
  if (!length || !width || c.head === 0) return 'There are no animals in the shed.';
  if (shed.depthM < length.size)
    return `The shed (${shed.depthM} m deep) is shallower than an animal (${length.size} m): nothing to draw.`;
  const set = c.scenario.farm.spaceRules;
  const own = herdNeed(set, 'feed', c.herd, c.row);
  const need = own ?? herdNeed('sweden', 'feed', c.herd, c.row);
  const placeM = need ? need.total / c.head : width.size;
  const ranked = isRanked(set, c.horned);
  const { floor, frame, roadM, rows, frames, exits } = c.built();
  const clear = c.bedded ? floor.solidDepthM : shed.depthM;
  const bedM = Math.min(c.value('packDepthM') ?? 0, shed.pushWallM);
  const channel = c.scenario.slats.store !== 'underSlats';
  return {
    lengthM: shed.lengthM,
    depthM: shed.depthM,
    floor,
    frames,
    rows,
    roadM,
    overhangM: frame.bays > 0 ? shed.overhangM : 0,
    bedded: c.bedded,
    rowFromM: c.bedded ? floor.solidDepthM : floor.slatsFromM,
    exits,
    rampM: c.bedded ? Math.max(0, bedM) * c.row('exitRampRatio').central : 0,
    tankM: channel ? c.row('channelDepthM').central : c.scenario.slats.tankDepthM,
    channel,
    bowls: bowlsBuilt(shed.waterBowls, c.head, c.row('commonPracticeAnimalsPerBowl').central),
    openAzimuthDeg: shed.openSideAzimuthDeg,
    places: Math.floor(shed.lengthM / placeM + 1e-9),
    head: c.head,
    placeM,
    animalM: length.size,
    animalWideM: width.size,
    behindM: (clear > 0 ? clear : shed.depthM) - length.size,
    wantedM: c.row(ranked ? 'commonPracticeHornedAlleyM' : 'commonPracticeStanceDepthM').low - length.size,
    rules: ruleName(own ? set : 'sweden', c.country),
  };
}

/** Plan with the open side below; x along the shed, y from the open side inwards, in metres. */
export function planDrawing(scene: PlanScene, widthPx: number): Drawing {
  const narrow = widthPx < NARROW_PX;
  const { lengthM: l, depthM: d, floor, roadM, overhangM: o, rampM, bedded, frames } = scene;
  const through = (wall: WayOut['wall']) => (scene.exits.some((exit) => exit.wall === wall) ? rampM : 0);
  const [near, far] = [Math.max(o, through('near')), Math.max(o, through('far'))];
  const px = (l + near + far) / Math.max(120, widthPx - TEXT_PX * (narrow ? 4 : 7.4));
  const size = TEXT_PX * px;
  const style: DimensionStyle = { ink: INK, halo: PAPER, sizeM: size, weightM: px };
  const solid = floor.solidDepthM;
  const foot = -Math.max(TROUGH, roadM + (roadM > 0 ? o : 0));
  const bays = frames.length - 1;
  const rear = Math.max(o, through('rear'));
  const side = l + far + size * 1.5;
  const flat = (part: string, points: ReturnType<typeof box>, fill: string, opacity = 1): Shape => ({ kind: 'path', part, points, closed: true, fill, opacity }); // biome-ignore format: one shape
  const text = (part: string, x: number, y: number, words: string, halo: string = PAPER, sizeM = size): Shape => ({ kind: 'text', part, at: [x, y], text: words, sizeM, fill: INK, halo }); // biome-ignore format: one shape
  const shapes: Shape[] = [
    ...ramps(scene, size, narrow),
    flat('stance', box(0, 0, l, bedded ? solid : d), LOOK.stance),
    ...(bedded ? [flat('bed', box(0, solid, l, d), LOOK.bed)] : []),
    ...(roadM > 0 ? [flat('feedRoad', box(0, -roadM, l, 0), LOOK.stance, 0.6)] : []),
    flat('trough', box(0, -TROUGH, l, 0), LOOK.trough, 0.55),
    ...slats(scene, size, narrow),
    ...pens(scene, size, narrow),
    ...places(scene, px),
    ...posts(scene),
    ...wallsAndExits(scene, px, size, narrow),
    ...wayBehind(scene, px, size, narrow),
    ...water(scene, size),
    ...(bedded ? [text('bedText', l * 0.3, solid + (d - solid) * 0.45, `bed ${(l * (d - solid)).toFixed(0)} m²`, LOOK.bed)] : []),
    ...(bays > 0 ? [{ kind: 'path' as const, part: 'roofEdge', points: [...box(-o, -roadM - o, l + o, d + o)], closed: true, stroke: INK, weightM: px, dash: [10 * px, 4 * px, 2 * px, 4 * px], opacity: 0.7 }] : []),
    text('openText', l / 2, foot - size * 1.25, narrow ? `open side, ${compass(scene.openAzimuthDeg)}` : `${roadM > 0 ? 'feed road under the roof' : 'feed road, open'}; open side facing ${compass(scene.openAzimuthDeg)}`),
    ...dimension('length', [0, foot - size * 2.9], [l, foot - size * 2.9], `${l.toFixed(2)} m${bays > 0 && !narrow ? `: ${bays} ${bays === 1 ? 'bay' : 'bays'} of ${(l / bays).toFixed(2)} m` : ''}`, style),
    ...dimension('depth', [side + (narrow ? 0 : size * 2.7), 0], [side + (narrow ? 0 : size * 2.7), d], `${d.toFixed(2)} m`, style),
    ...(narrow ? [] : chain(scene, side, style)),
  ]; // biome-ignore format: one shape a line
  return {
    left: -near - size * 1.2,
    right: side + size * (narrow ? 0.9 : 3.4),
    top: d + rear + size * 0.8,
    bottom: foot - size * 3.7,
    hatches: [],
    shapes,
  };
}

/** Depths one after the other: feed road, solid floor, bed or slats. */
function chain({ floor, depthM, roadM }: PlanScene, x: number, style: DimensionStyle): Shape[] {
  const solid = floor.solidDepthM;
  const part = (name: string, from: number, to: number) =>
    to - from < style.sizeM * 0.5
      ? []
      : dimension(name, [x, from], [x, to], `${(to - from).toFixed(2)}`, style, 'right');
  return [
    ...(roadM > 0 ? part('roadDepth', -roadM, 0) : []),
    ...part('solidDepth', 0, solid),
    ...part('rowDepth', solid, depthM),
  ]; // biome-ignore format: one list
}

function compass(azimuthDeg: number): string {
  const names = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
  return names[Math.round(azimuthDeg / 45) % 8];
}

/** What the plan shows in one sentence. */
function planFinding(scene: PlanScene): string {
  const { places: room, head, behindM, wantedM, exits, bowls, rules, bedded } = scene;
  const feed =
    room >= head ? `all ${head} animals can eat at once` : `${room} of ${head} animals can eat at once`;
  const pass = behindM >= wantedM ? 'enough' : `less than the ${wantedM.toFixed(2)} m wanted`;
  return `At the widths of ${rules}, ${feed}; ${Math.max(0, behindM).toFixed(2)} m is left ${bedded ? 'on the stance ' : ''}to pass behind them, ${pass}; ${exits.length} ways out and ${bowls} water bowls.`;
}

export function planFigure(input: CheckInput): Figure {
  const scene = planScene(input);
  if (typeof scene === 'string') return emptyFigure(scene);
  const { floor, bedded } = scene;
  const bed = bedded ? scene.lengthM * (scene.depthM - floor.solidDepthM) : 0;
  const rows: [string, string][] = [
    ['Length × depth, m', `${scene.lengthM.toFixed(2)} × ${scene.depthM.toFixed(2)}`],
    ['Bays', scene.frames.length > 1 ? String(scene.frames.length - 1) : '–'],
    ['Feed road under the roof, m', scene.roadM > 0 ? scene.roadM.toFixed(2) : 'open'],
    [bedded ? 'Stance, m' : 'Solid floor, m', floor.solidDepthM.toFixed(2)],
    ['Bed, m²', bed.toFixed(0)],
    ['Slats, m²', (floor.slatsLengthM * floor.slatsDepthM).toFixed(0)],
    ['Feed place, m a head', scene.placeM.toFixed(2)],
    ['Feed places and animals', `${scene.places} and ${scene.head}`],
    ['To pass behind, m (wanted)', `${Math.max(0, scene.behindM).toFixed(2)} (${scene.wantedM.toFixed(2)})`],
    ['Ways out', String(scene.exits.length)],
    ['Gates', String(floor.gatesCount)],
    ['Ramps outside, m long', scene.rampM > 0 ? scene.rampM.toFixed(1) : '–'],
    ['Solid walls, m', floor.wallsM.toFixed(1)],
    ['Water bowls', String(scene.bowls)],
    ['Calving and sick pens, m²', floor.pensM2.toFixed(0)],
    ['Posts', String(scene.frames.length * scene.rows.length)],
  ];
  return {
    finding: planFinding(scene),
    table: { caption: 'The plan in numbers', head: ['', ''], rows },
    legend: [
      ...(bedded ? [{ label: 'bed', fill: LOOK.bed }] : []),
      { label: bedded ? 'stance' : 'solid floor', fill: LOOK.stance },
      { label: 'trough', fill: LOOK.trough },
      ...(floor.slatsLengthM > 0 ? [{ label: 'slats', fill: LOOK.slats, pattern: 'upright' as const }] : []),
      { label: 'gate, way out, way behind', fill: LOOK.way },
      { label: 'water', fill: LOOK.water },
    ],
    caption:
      'Drawn to scale. Frames, posts, slats, pens, gates, ways out and bowls stand as the bill counts them; the broken line is the edge of the roof. Their places are a proposal; pens take their area from the bed, or from the row of slats; the law’s widths are to be checked locally.',
    draw: (width) => toElement(planDrawing(scene, width), planFinding(scene)),
  };
}

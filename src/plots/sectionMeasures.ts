/** The section's numbers: what is free over the bed, what is needed, and the builder's dimensions. */

import { roofAtM } from '../model/works/roof.ts';
import { type DimensionStyle, dimension, type Point, type Shape } from './drawing.ts';
import { INK, PAPER } from './palette.ts';
import type { Scene } from './scene.ts';
import { LOOK, metres, THICK } from './sectionLook.ts';
import { footM } from './sectionShell.ts';
import { places } from './sectionUse.ts';

/** Free height over the bed, beside what needs it; red where it does not fit. */
export function clearance(scene: Scene, style: DimensionStyle, narrow: boolean): Shape[] {
  const { shed, bedM, bedded, lowestM, freeM, animal, machine, solidM } = scene;
  const { loader: loaderX, standing, length } = places(scene);
  const need = (
    part: string,
    x0: number,
    x1: number,
    needM: number,
    textAt: Point,
    anchor?: 'start',
  ): Shape[] => {
    const fits = needM <= freeM + 1e-9;
    const ink = fits ? INK : LOOK.alarm;
    const y = bedM + needM;
    return [
      { kind: 'path', part, points: [[x0, y], [x1, y]], stroke: ink, weightM: style.weightM * (fits ? 1 : 2.5), dash: fits ? [2 * style.weightM, 2 * style.weightM] : undefined },
      { kind: 'text', part: `${part}Text`, at: textAt, text: narrow ? metres(needM) : `needs ${metres(needM)}`, sizeM: style.sizeM * 0.9, fill: ink, halo: PAPER, bold: !fits, anchor },
    ]; // biome-ignore format: two shapes
  };
  // Over the edge of the bed the air is free of animals; without a stance the loader's side is.
  const tall = solidM > 0 ? solidM + style.weightM * 4 : (loaderX ?? shed.depthM) - style.sizeM * 0.7;
  const shapes: Shape[] = [];
  if (loaderX !== null) {
    const w = shed.machineWidthM;
    // A small loader's cab is narrower than the number, which then stands over it where the roof leaves room.
    const over = narrow && freeM - machine.needM > style.sizeM;
    shapes.push(
      ...need('machineNeed', loaderX, loaderX + w, machine.needM, [
        loaderX + w / 2,
        bedM + (over ? machine.needM + style.sizeM * 0.25 : shed.machineHeightM * 0.62),
      ]),
    );
  }
  if (standing !== null) {
    const over = bedM + animal.needM + style.sizeM * 0.3;
    shapes.push(
      // Right of the upright measure, whose number reads along it.
      ...need(
        'animalNeed',
        standing - 0.1,
        standing + length * 0.5,
        animal.needM,
        [solidM > 0 ? Math.max(standing - 0.1, tall + style.sizeM * 0.6) : standing, over],
        'start',
      ),
    );
  }
  const ink = freeM >= Math.max(animal.needM, bedded ? machine.needM : 0) ? INK : LOOK.alarm;
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

export function measures(scene: Scene, style: DimensionStyle, narrow: boolean, out: number): Shape[] {
  const { shed, bedded, bedM, solidM, wallM, roadM, roof: shape, slats } = scene;
  const d = shed.depthM;
  const s = style.sizeM;
  const right = d + Math.max(shed.overhangM, THICK.wall);
  const low = -footM(scene) - s * 0.9;
  const across = (part: string, x0: number, x1: number, y: number, text: string) =>
    dimension(part, [x0, y], [x1, y], text, style);
  const upright = (part: string, x: number, y0: number, y1: number, text: string) =>
    dimension(part, [x, y0], [x, y1], text, style);
  const shapes: Shape[] = [
    ...upright(
      'eaveHeight',
      -out - s * (narrow ? 1 : 4.3),
      0,
      shape.frontM,
      `${narrow ? '' : 'eave '}${metres(shape.frontM)}`,
    ),
  ];
  if (bedded)
    shapes.push(
      ...dimension('bedDepth', [right + s * 0.9, 0], [right + s * 0.9, bedM], metres(bedM), style, 'right'),
      ...across('bedWidth', solidM, d, low, `bed ${metres(d - solidM)}`),
    );
  else if (slats)
    shapes.push(...across('slatsWidth', slats.fromM, d, low, `slats ${metres(d - slats.fromM)}`));
  if (solidM > 0) {
    const name = bedded ? 'stance' : 'solid floor';
    shapes.push(...across('stanceWidth', 0, solidM, low, `${narrow ? '' : `${name} `}${metres(solidM)}`));
  }
  if (roadM > 0)
    shapes.push(...across('roadWidth', -roadM, 0, low, `${narrow ? '' : 'feed road '}${metres(roadM)}`));
  if (narrow) return shapes;
  const wall = bedded ? right + s * 5.6 : right + s * 0.9;
  return [
    ...shapes,
    ...upright('pushWallHeight', wall, 0, wallM, `wall ${metres(wallM)}`),
    ...sillHeight(scene, style, out),
    ...across('shedDepth', 0, d, low - s * 1.7, `shed ${metres(d)}`),
    ...roofMeasures(scene, style),
  ];
}

function sillHeight({ feetM, sillM }: Scene, style: DimensionStyle, out: number): Shape[] {
  return dimension('sillHeight', [-out, feetM], [-out, sillM], metres(sillM - feetM), style, 'left');
}

/** Ridge, pitch and overhang. */
function roofMeasures({ shed, roof }: Scene, style: DimensionStyle): Shape[] {
  const { sizeM: s, weightM } = style;
  const d = shed.depthM;
  const text = (part: string, at: Point, words: string): Shape => ({ kind: 'text', part, at, text: words, sizeM: s * 0.9, fill: INK, halo: PAPER }); // biome-ignore format: one shape
  const edge = roofAtM(roof, d, d + shed.overhangM) - s * 0.9;
  const x = Math.min(d - s, Math.max(s, roof.ridgeXM));
  const level = roofAtM(roof, d, x);
  const mark = s * 0.3;
  return [
    { kind: 'path', part: 'ridgeMark', points: [[x, level], [x - mark, level - mark * 1.6], [x + mark, level - mark * 1.6]], closed: true, stroke: INK, weightM },
    text('ridgeText', [x, level - s * 1.7], `${roof.ridgeXM > 0 && roof.ridgeXM < d ? 'ridge ' : ''}${metres(level)}`),
    text('pitchText', [d * 0.26, roofAtM(roof, d, d * 0.26) - s * 1.6], `pitch ${Number(shed.pitchDeg.toFixed(1))}°`),
    ...(shed.overhangM > s ? dimension('overhang', [d, edge], [d + shed.overhangM, edge], metres(shed.overhangM), { ...style, sizeM: s * 0.85 }) : []),
  ]; // biome-ignore format: one shape a line
}

/** Depth of tank or channel, what the winter fills, and what must stay free. */
export function tankMeasures({ slats }: Scene, style: DimensionStyle, narrow: boolean): Shape[] {
  if (!slats) return [];
  const { fromM, toM, tankM, channel, neededM, freeboardM } = slats;
  const s = style.sizeM;
  const top = -THICK.slats;
  const x = fromM + (toM - fromM) * 0.82;
  const text = (part: string, y: number, words: string, ink: string = INK): Shape => ({ kind: 'text', part, at: [fromM + (toM - fromM) * 0.4, y], text: words, sizeM: s * 0.9, fill: ink, halo: PAPER }); // biome-ignore format: one shape
  const shapes = dimension(
    'tankDepth',
    [x, top - tankM],
    [x, top],
    `${narrow ? '' : channel ? 'channel ' : 'tank '}${metres(tankM)}`,
    style,
  );
  if (neededM === null || neededM <= 0) return shapes;
  const over = neededM > tankM - freeboardM + 1e-9;
  const said = over
    ? `the winter needs ${metres(neededM)}`
    : `the winter fills ${metres(Math.min(neededM, tankM))}`;
  const level = top - tankM + Math.min(neededM, tankM) / 2;
  return [
    ...shapes,
    text('slurryText', level - s * 0.3, narrow ? metres(neededM) : said, over ? LOOK.alarm : INK),
    ...(narrow || freeboardM < s * 0.3 || freeboardM > tankM ? [] : [text('freeboardText', top - freeboardM - s * 1.1, `keep ${metres(freeboardM)} free`)]),
  ]; // biome-ignore format: one shape a line
}

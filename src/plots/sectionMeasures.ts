/** The section's numbers: what is free over the bed, what is needed, and the builder's dimensions. */
import { type DimensionStyle, dimension, type Point, type Shape } from './drawing.ts';
import { INK, PAPER } from './palette.ts';
import type { Scene } from './scene.ts';
import { LOOK, metres, THICK } from './sectionLook.ts';
import { places } from './sectionUse.ts';

/** Free height over the bed, beside what needs it; red where it does not fit. */
export function clearance(scene: Scene, style: DimensionStyle, narrow: boolean): Shape[] {
  const { shed, bedM, lowestM, freeM, animal, machine } = scene;
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
  const tall =
    shed.stanceDepthM > 0
      ? shed.stanceDepthM + style.weightM * 4
      : (loaderX ?? shed.depthM) - style.sizeM * 0.7;
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
        [shed.stanceDepthM > 0 ? Math.max(standing - 0.1, tall + style.sizeM * 0.6) : standing, over],
        'start',
      ),
    );
  }
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

export function measures(scene: Scene, style: DimensionStyle, narrow: boolean, out: number): Shape[] {
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
      -out - s * (narrow ? 1 : 4.3),
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

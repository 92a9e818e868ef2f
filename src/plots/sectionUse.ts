/** What uses the shed in the section: animals, loader, barrier and trough, the sun. */
import { box, type Point, type Shape } from './drawing.ts';
import { INK, PAPER } from './palette.ts';
import type { Scene } from './scene.ts';
import { LOOK, NECK_RAIL_OVER_SILL, TROUGH_WIDTH } from './sectionLook.ts';
import { BEAST_LENGTH, beast, CHEST_AT } from './silhouettes.ts';

/** Places on the bed, from the stance on: a standing animal, then the loader, then one that lies. */
export function places({ shed, withersM, machine, solidM, bedded }: Scene) {
  const length = BEAST_LENGTH * withersM;
  const gap = 0.35;
  const standing =
    solidM > 0 ? solidM + gap : Math.min(withersM * 2.1, Math.max(0.1, shed.depthM - length - 0.1));
  const afterStanding = standing + length + gap;
  // Only a bed is worked with a loader.
  const loaderFits = bedded && afterStanding + shed.machineWidthM <= shed.depthM;
  const loader = loaderFits
    ? shed.depthM - shed.machineWidthM - Math.min(0.6, shed.depthM - shed.machineWidthM - afterStanding)
    : null;
  const free = bedded ? loader : shed.depthM;
  const lies = free !== null && afterStanding + length + gap <= free ? afterStanding : null;
  return { standing: standing + length <= shed.depthM ? standing : null, loader, lies, length, machine };
}

export function animals(scene: Scene): Shape[] {
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
export function loader(scene: Scene, px: number, size: number, narrow: boolean): Shape[] {
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

export function barrier({ sillM, sillStartM, troughM, liftM }: Scene, px: number): Shape[] {
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

export function sunRay(scene: Scene, left: number, top: number, px: number, size: number): Shape[] {
  const { shed, edgeM, frontM, shadowDeg, lit, bedM, feetM, sun, solidM } = scene;
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
  const edgeX = -frontM;
  // The ray runs to the bed, to the rear wall when the bed ends first, or to the stance and the bed's own edge.
  const heightAt = (x: number) => edgeM - (x - edgeX) * slope;
  const reach = (y: number) => edgeX + (edgeM - y) / slope;
  const end: Point =
    reach(bedM) > shed.depthM
      ? [shed.depthM, heightAt(shed.depthM)]
      : reach(bedM) >= solidM
        ? [reach(bedM), bedM]
        : reach(feetM) < solidM
          ? [reach(feetM), feetM]
          : [solidM, heightAt(solidM)];
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

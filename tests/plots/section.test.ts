import { describe, expect, it } from 'vitest';
import { toMarkup } from '../../src/plots/drawing.ts';
import { planDrawing, planFigure, planScene } from '../../src/plots/plan.ts';
import { type Scene, sceneAt } from '../../src/plots/scene.ts';
import { sectionDrawing, sectionFigure, sectionFinding } from '../../src/plots/section.ts';
import { coefficients, type Patch, resultWith } from '../model/checks/fixture.ts';

const MM = 0.001;

function scene(patch: Patch, week: number): Scene {
  const made = sceneAt({ ...resultWith(patch), coefficients }, week);
  if (typeof made === 'string') throw new Error(made);
  return made;
}

/** Corners of a part in the SVG, in metres above the floor: read back from the text, not from the shapes. */
function corners(svg: string, part: string): [number, number][] {
  const found = new RegExp(`<path data-part="${part}"[^>]* d="([^"]+)"`).exec(svg);
  if (!found) throw new Error(`no part ${part}`);
  const floor = Number(/<path data-part="floorLine"[^>]* d="M[-\d.]+,([-\d.]+)/.exec(svg)?.[1]);
  return [...found[1].matchAll(/([-\d.]+),([-\d.]+)/g)].map(([, x, y]) => [Number(x), floor - Number(y)]);
}

const span = (points: [number, number][], axis: 0 | 1) => [
  Math.min(...points.map((p) => p[axis])),
  Math.max(...points.map((p) => p[axis])),
];

function near(found: number[], wanted: number[]): void {
  found.forEach((value, k) => {
    expect(Math.abs(value - wanted[k]), `${found} against ${wanted}`).toBeLessThanOrEqual(MM);
  });
}

describe('the section', () => {
  for (const width of [358, 1248])
    for (const week of [1, 26]) {
      it(`is true to the millimetre at ${width} px in week ${week}`, () => {
        const s = scene({ shed: { depthM: 9 } }, week);
        const svg = toMarkup(sectionDrawing(s, width, 'test'), 'test');
        const depth = 0.3 + (Math.min(week * 7, 189) * 0.5) / 100;
        near(span(corners(svg, 'bed'), 0), [3, 9]);
        near(span(corners(svg, 'bed'), 1), [0, depth]);
        near(span(corners(svg, 'startingLayer'), 1), [0, 0.3]);
        near(span(corners(svg, 'range'), 1), [depth * 0.81, depth * 1.22]);
        near(span(corners(svg, 'pushWall'), 1), [0, 1.8]);
        near(span(corners(svg, 'lowestMember'), 1), [4.2, 4.2]);
        near(span(corners(svg, 'freeHeight'), 1), [depth, 4.2]);
        near(span(corners(svg, 'loader'), 1), [depth, depth + 2.6]);
        near(span(corners(svg, 'machineNeed'), 1), [depth + 2.9, depth + 2.9]);
        // Underside of the roof at the edge of the overhang: 4.2 m less 0.6 m at 12°.
        near([span(corners(svg, 'roof'), 1)[0]], [4.2 - 0.6 * Math.tan((12 * Math.PI) / 180)]);
      });
    }

  it('lets the horn tips of the standing animal reach their height exactly', () => {
    const s = scene({ shed: { depthM: 9 } }, 26);
    const svg = toMarkup(sectionDrawing(s, 1248, 'test'), 'test');
    const tips = [...svg.matchAll(/<path data-part="horn"[^>]* d="([^"]+)"/g)].map(([, d]) => d);
    const floor = Number(/<path data-part="floorLine"[^>]* d="M[-\d.]+,([-\d.]+)/.exec(svg)?.[1]);
    const top = Math.max(...tips.map((d) => floor - Number(/,([-\d.]+)$/.exec(d)?.[1])));
    near([top], [1.21 + 2.1]);
  });

  it('raises barrier and trough with a bed the animals eat from', () => {
    const s = scene({ shed: { depthM: 9, stanceDepthM: 0 } }, 26);
    expect(s.liftM).toBeGreaterThan(0.6);
    const svg = toMarkup(sectionDrawing(s, 1248, 'test'), 'test');
    near([span(corners(svg, 'sill'), 1)[1]], [0.3 + 0.5 + s.liftM]);
    near(span(corners(svg, 'sillAutumn'), 1), [0.8, 0.8]);
    expect(sectionFinding(s)).toContain('above their place in the autumn');
  });

  it('draws the noon ray from the eave edge to the end of the lit strip', () => {
    const s = scene({ shed: { depthM: 30 } }, 18);
    if (!s.lit || s.shadowDeg === null) throw new Error('no sun');
    const svg = toMarkup(sectionDrawing(s, 1248, 'test'), 'test');
    const ray = corners(svg, 'sunRay');
    const slope = Math.tan((s.shadowDeg * Math.PI) / 180);
    near(ray[1], [s.lit.toM, s.bedM]);
    const atEdge = ray[1][1] + (ray[1][0] + 0.6) * slope;
    near([atEdge], [s.edgeM]);
    near(span(corners(svg, 'litStrip'), 0), [s.lit.fromM, s.lit.toM]);
  });

  it('turns red where something does not fit', () => {
    const svg = toMarkup(
      sectionDrawing(scene({ shed: { eaveM: 3.2, depthM: 9 } }, 26), 1248, 'test'),
      'test',
    );
    expect(svg).toMatch(/data-part="machineNeed"[^>]*stroke="#9b1c1c"/);
    expect(toMarkup(sectionDrawing(scene({ shed: { depthM: 9 } }, 26), 1248, 'test'), 'test')).not.toContain(
      '#9b1c1c',
    );
  });

  it('cuts a slatted shed to the millimetre: slats, tank and what the winter fills', () => {
    for (const width of [358, 1248]) {
      // 60 m² of slats and 18 m² of pens in a row of 78 / 24 = 3.25 m along the rear wall of a shed 9 m deep.
      const s = scene(
        { system: 'slatted', shed: { depthM: 9 }, slats: { tankDepthM: 3, store: 'underSlats' } },
        1,
      );
      const svg = toMarkup(sectionDrawing(s, width, 'test'), 'test');
      near(span(corners(svg, 'slats'), 0), [5.75, 9]);
      near(span(corners(svg, 'tank'), 0), [5.75, 9]);
      near([span(corners(svg, 'tank'), 1)[1] - span(corners(svg, 'tank'), 1)[0]], [3]);
      // 190 m³ over 60 m² of slats: 190 / 60 = 3.167 m, more than the tank is deep.
      near([span(corners(svg, 'slurry'), 1)[1] - span(corners(svg, 'slurry'), 1)[0]], [3]);
      expect(svg).toMatch(/data-part="slurryTop"[^>]*stroke="#9b1c1c"/);
      near(span(corners(svg, 'freeHeight'), 1), [0, 4.2]);
      expect(svg).not.toContain('data-part="bed"');
    }
  });

  it('says of a slatted shed whether its tank holds the winter', () => {
    const of = (tankDepthM: number) =>
      sectionFigure(
        {
          ...resultWith({
            system: 'slatted',
            shed: { depthM: 9 },
            slats: { tankDepthM, store: 'underSlats' },
          }),
          coefficients,
        },
        1,
      );
    expect(of(3).finding).toContain(
      'the winter needs 3.17 m of it and 2.80 m may be filled, so the rest needs',
    );
    expect(of(3.5).finding).toContain('so it fits');
    expect(of(3).caption).toContain('Slurry gas kills');
    expect(of(3).table.rows.find(([what]) => what === 'Tank or channel, m deep')).toEqual([
      'Tank or channel, m deep',
      '3.00',
    ]);
  });

  it('says why there is nothing to draw', () => {
    for (const [patch, words] of [
      [{ shed: { depthM: 1.5, stanceDepthM: 0 } }, 'shallower than an animal'],
      [{ shed: { depthM: 3, stanceDepthM: 3 } }, 'leaves no depth for a bed'],
      [{ shed: { eaveM: 1 } }, 'lower than the withers'],
      [{ system: 'outwintered' }, 'no bed and no slats to draw'],
    ] as [Patch, string][]) {
      const figure = sectionFigure({ ...resultWith(patch), coefficients }, 10);
      expect(figure.draw).toBeNull();
      expect(figure.finding).toContain(words);
    }
  });

  it('holds no NaN in polar night, midnight sun, flat and lopsided roofs', () => {
    for (const patch of [
      { place: { latitudeDeg: 78 } },
      { place: { latitudeDeg: 90 } },
      { place: { latitudeDeg: -70 } },
      { shed: { pitchDeg: 0 } },
      { shed: { rearEaveM: 6.5 } },
      { shed: { rearEaveM: 2.9, overhangM: 0 } },
      { shed: { depthM: 4, stanceDepthM: 0 } },
      { shed: { depthM: 60, machineWidthM: 3 } },
      { shed: { openSideAzimuthDeg: 0 } },
    ] as Patch[])
      for (const week of [1, 9, 27])
        expect(() => toMarkup(sectionDrawing(scene(patch, week), 358, 'n'), 'n')).not.toThrow();
  });

  it('gives every week in its table', () => {
    const figure = sectionFigure({ ...resultWith(), coefficients }, 26);
    expect(figure.table.rows).toHaveLength(27);
    expect(figure.table.rows[25].slice(0, 3)).toEqual(['26', '16 Apr 2026', '1.21']);
    expect(figure.finding).toContain('the bed stands 1.21 m above the floor');
  });
});

describe('the plan', () => {
  it('is true to the millimetre', () => {
    const made = planScene({ ...resultWith({ shed: { exits: 3 } }), coefficients });
    if (typeof made === 'string') throw new Error(made);
    const svg = toMarkup(planDrawing(made, 1248), 'plan').replace(
      'data-part="barrier"',
      'data-part="floorLine"',
    );
    near(span(corners(svg, 'bed'), 0), [0, 24]);
    near(span(corners(svg, 'bed'), 1), [3, 12]);
    near(span(corners(svg, 'stance'), 1), [0, 3]);
    expect([...svg.matchAll(/data-part="exit"/g)]).toHaveLength(3);
    expect([...svg.matchAll(/data-part="cowBody"/g)]).toHaveLength(24);
    // Two are named; the bill builds one for every ten of 24 head.
    expect([...svg.matchAll(/data-part="water"/g)]).toHaveLength(3);
    // Mean place of the herd: 18.4 m over 24 head.
    near([corners(svg, 'feedPlace')[0][0]], [18.4 / 24]);
  });

  it('draws only as many animals as can eat at once', () => {
    const made = planScene({ ...resultWith({ shed: { lengthM: 10 } }), coefficients });
    if (typeof made === 'string') throw new Error(made);
    expect([...toMarkup(planDrawing(made, 358), 'plan').matchAll(/data-part="cowBody"/g)]).toHaveLength(13);
    expect(planFigure({ ...resultWith({ shed: { lengthM: 10 } }), coefficients }).finding).toContain(
      '13 of 24 animals can eat at once',
    );
  });
});

/**
 * The list of members against own arithmetic and against the bill: lengths worked from the roof by hand, volumes equal
 * to the timber that is billed, for random sheds.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../../src/cli/open.ts';
import { type FrameShape, type ShedFrame, shedFrame } from '../../../src/model/works/geometry.ts';
import { frameMembers, type Sections } from '../../../src/model/works/members.ts';
import { billRows } from '../../../src/study/moneyCase.ts';
import { timberList } from '../../../src/study/timberList.ts';

const SHAPE: FrameShape = {
  lengthM: 24, depthM: 9, feedRoadM: 0, eaveM: 4.2, pitchDeg: 12, overhangM: 0.6, bayM: 4.8, postRowSpanM: 5,
  longestTimberM: 6, purlinSpacingM: 0.9, wallM: 1.8,
}; // biome-ignore format: one short list
const SECTIONS: Sections = {
  post: { areaM2: 0.04, widthM: 0.2 },
  rafter: { areaM2: 0.045, widthM: 0.15 },
  purlin: { areaM2: 0.0169, widthM: 0.075 },
  snowFactor: 1,
  bracingFraction: 0.1,
  wasteFraction: 0.1,
};
const listOf = (shape: FrameShape, sections = SECTIONS) => {
  const frame = shedFrame(shape, {} as ShedFrame);
  return { frame, members: frameMembers(shape, frame, sections) };
};

describe('the members of a shed worked by hand', () => {
  const { members } = listOf(SHAPE);
  const of = (part: string) =>
    members
      .filter((m) => m.part === part)
      .map(({ pieces, lengthM }) => [pieces, Number(lengthM!.toFixed(4))]);

  // Six frames; the middle row stands under the ridge: 4.2 + 4.5 × tan 12° = 5.1565.
  it('posts: six under the ridge, twelve under the eaves', () =>
    expect(of('post')).toEqual([
      [6, 5.1565],
      [12, 4.2],
    ]));
  // Half the depth and the overhang along the slope: 5.1 / cos 12° = 5.2139, two on each frame.
  it('rafters: two a frame, with the overhang', () => expect(of('rafter')).toEqual([[12, 5.2139]]));
  // 10.4279 / 0.9 and one more, 13 lines, over five bays of 4.8 m, those at the ends 0.6 m longer.
  it('purlins: a piece a bay in thirteen lines', () =>
    expect(of('purlin')).toEqual([
      [26, 5.4],
      [39, 4.8],
    ]));
  it('all of it: 3.25356 + 2.81552 + 5.53644 with a tenth of bracing and a tenth of offcuts', () =>
    expect(members.reduce((sum, { m3 }) => sum + m3, 0)).toBeCloseTo(14.04268, 4));
  it('marks what is longer than can be had', () => {
    expect(members.some(({ tooLong }) => tooLong)).toBe(false);
    const short = listOf({ ...SHAPE, longestTimberM: 5 }).members;
    expect(short.filter(({ tooLong }) => tooLong).map(({ part }) => part)).toEqual([
      'post',
      'rafter',
      'purlin',
    ]);
  });
  it('nothing where nothing stands', () => expect(listOf({ ...SHAPE, lengthM: 0 }).members).toEqual([]));
});

it('running metres of every part are those the bill counts, for any shed', () => {
  const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      metres(4, 60), metres(3, 16), fc.oneof(fc.constant(0), metres(4, 5)), metres(4, 6), fc.option(metres(3, 7), { nil: undefined }),
      metres(0, 35), metres(0, 1.2), metres(3, 7), metres(3, 9), metres(1, 1.6),
      (lengthM, depthM, feedRoadM, eaveM, rearEaveM, pitchDeg, overhangM, bayM, longestTimberM, snowFactor) => {
        const { frame, members } = listOf(
          { ...SHAPE, lengthM, depthM, feedRoadM, eaveM, rearEaveM, pitchDeg, overhangM, bayM, longestTimberM },
          { ...SECTIONS, snowFactor },
        );
        const run = (part: string) =>
          members.filter((m) => m.part === part).reduce((sum, { pieces, lengthM: l }) => sum + pieces! * l!, 0);
        // Pieces that differ by less than a millimetre are listed together.
        const near = (found: number, counted: number, of: number) =>
          expect(Math.abs(found - counted)).toBeLessThan(0.001 * of + 1e-9);
        near(run('post'), frame.postM, frame.posts);
        near(run('rafter'), frame.rafterM, frame.posts * 2);
        near(run('purlin'), frame.purlinM, frame.purlins * frame.bays);
        expect(members.reduce((sum, { m3 }) => sum + m3, 0)).toBeCloseTo(
          (frame.postM * 0.04 + frame.rafterM * 0.045 + frame.purlinM * 0.0169) * snowFactor * 1.1 * 1.1,
          9,
        );
      },
    ), // biome-ignore format: one list of measures
    { numRuns: 200, seed: 20251126 },
  );
});

describe('the timber of the shipped sheds', () => {
  it.each(['coast-lender-case', 'hill-farm-choice', 'hill-farm-own-chips', 'atlantic-rain-and-herd'])(
    '%s: what it costs in the bill is the volume of the list at its price',
    async (name) => {
      const { run } = await openNotebook(`notebooks/${name}.md`);
      let listed = 0;
      run.results.forEach((_, k) => {
        const list = timberList(run, k);
        const lines = billRows(run, k).filter(({ id }) => id === 'timberBought' || id === 'timberOwn');
        expect(list === null, run.results[k].name).toBe(lines.length === 0);
        if (!list) return;
        listed++;
        const cost = lines.reduce((sum, { amount }) => sum + amount!, 0);
        const volume = list.members.reduce((sum, { m3 }) => sum + m3, 0);
        const [{ unitPrice }] = lines;
        expect(lines).toHaveLength(1);
        expect(cost).toBeCloseTo(volume * unitPrice!, 1);
      });
      expect(listed).toBeGreaterThan(0);
    },
  );
});

import { describe, expect, it } from 'vitest';
import { STAGES } from '../../src/model/stages.ts';
import { CHOICES, INPUT_FAMILIES, INPUTS } from '../../src/notebook/inputs.ts';

/** What a stage declares must be true, since labels, traces and the order of the stages are read off it. */
describe('declarations', () => {
  const made = new Map<string, string>();
  const tracks = new Map<string, string>();
  const inputs = new Set(['weatherIndex', ...INPUTS.map((i) => i.column)]);

  it('there are stages', () => expect(STAGES.length).toBeGreaterThan(12));

  for (const stage of STAGES) {
    it(`${stage.name} makes nothing that is made already`, () => {
      for (const name of Object.keys(stage.makes)) expect([name, made.get(name)]).toEqual([name, undefined]);
    });

    it(`${stage.name} depends only on what it reads, makes or what tracks it reads`, () => {
      const own = new Set([
        ...stage.reads,
        ...Object.keys(stage.makes),
        ...Object.keys(stage.tracks ?? {}),
        ...(stage.readsTracks ?? []),
        ...Object.entries(stage.families ?? {}).flatMap(([family, fields]) =>
          fields.map((field) => `${family}*${field}`),
        ),
      ]);
      const all = { ...stage.makes, ...stage.tracks, ...stage.dailies };
      for (const [name, { from }] of Object.entries(all))
        expect({ name, unread: from.filter((f) => !own.has(f)) }).toEqual({ name, unread: [] });
    });

    it(`${stage.name} says everything about what it makes`, () => {
      for (const [name, { label, unit, formula, from }] of Object.entries(stage.makes)) {
        expect([name, label.length > 3, formula.length > 8]).toEqual([name, true, true]);
        expect([name, from.length > 0]).toEqual([name, true]);
        expect(typeof unit).toBe('string');
      }
    });

    it(`${stage.name} reads no result that comes later`, () => {
      const later = new Set(STAGES.slice(STAGES.indexOf(stage)).flatMap((s) => Object.keys(s.makes)));
      expect(stage.reads.filter((name) => later.has(name))).toEqual([]);
      for (const name of stage.readsTracks ?? []) expect([...tracks.keys()]).toContain(name);
      for (const name of Object.keys(stage.makes)) made.set(name, stage.name);
      for (const name of Object.keys(stage.tracks ?? {})) tracks.set(name, stage.name);
    });

    it(`${stage.name} reads only families the notebook has`, () => {
      for (const family of Object.keys(stage.families ?? {}))
        expect(INPUT_FAMILIES.map((f) => f.family)).toContain(family);
    });
  }

  it('no input has the name of a result', () => {
    const results = STAGES.flatMap((s) => Object.keys(s.makes));
    expect(results.filter((name) => inputs.has(name))).toEqual([]);
  });

  it('every choice is a known dimension', () => expect(Object.keys(CHOICES).length).toBeGreaterThan(8));
});

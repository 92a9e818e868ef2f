/** What is said of a notebook that older versions read another way, where no key of it says so. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { notesOf } from '../../src/cli/notes.ts';
import { openNotebook } from '../../src/cli/open.ts';
import { NOTEBOOKS } from './run.ts';

const HILL = readFileSync(NOTEBOOKS[0], 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'winterkeep-'));
const frostNotes = async (name: string, text: string) => {
  const file = join(folder, `${name}.md`);
  writeFileSync(file, text);
  const opened = await openNotebook(file);
  return { opened, notes: notesOf(opened).filter((note) => note.includes('frost')) };
};

describe('a notebook without a depth of frost', () => {
  const without = HILL.replaceAll(/ frostDepthM: 1\.2,|^ *frostDepthM: 1\.2\n/gm, '');

  it('is told once how deep foundations go now, and what to write for the depth before', async () => {
    expect(without).not.toContain('frostDepthM');
    const { opened, notes } = await frostNotes('without', without);
    const depth = opened.run.results[1].values.frostDepthM as number;
    expect(depth).toBeGreaterThan(0.6);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/without\.md:\d+ scenarios\.1\.shed\.frostDepthM: /);
    expect(notes[0]).toContain(`foundations go ${depth.toFixed(2)} m deep there`);
    expect(notes[0]).toContain('"Slats", "Straw bed"');
    expect(notes[0]).toContain('frostDepthM: 0.6 in shed gives what stood before');
  });

  it('reckons with 0.6 m again where that is written, and says no more', async () => {
    const before = HILL.replaceAll('frostDepthM: 1.2', 'frostDepthM: 0.6');
    const { opened, notes } = await frostNotes('before', before);
    expect(notes).toEqual([]);
    for (const { values } of opened.run.results.slice(1)) expect(values.frostDepthM).toBe(0.6);
  });

  it('hears nothing where the pads reach deeper than the frost', async () => {
    const opened = await openNotebook('notebooks/atlantic-rain-and-herd.md');
    expect(notesOf(opened).filter((note) => note.includes('frost'))).toEqual([]);
    expect(opened.run.results[1].values.frostDepthM).toBeLessThan(0.6);
  });
});

import { describe, expect, it } from 'vitest';
import type { Edited, Editing } from '../../src/notebook/edit.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import {
  addScenario,
  copyScenario,
  freeName,
  MOST_SCENARIOS,
  moveScenario,
  removeScenario,
  renameScenario,
  setBase,
} from '../../src/notebook/scenarioEdits.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const at = (text: string): Editing => ({ text, file: 'n.md', read: readNotebook });
const done = (edited: Edited): string => {
  if ('refused' in edited) throw new Error(`${edited.refused.what}: ${edited.refused.found}`);
  return edited.text;
};
const refusal = (edited: Edited) => {
  if ('text' in edited) throw new Error('was not refused');
  return edited.refused;
};
const read = (text: string) => {
  const result = readNotebook(text, 'n.md');
  expect(result.problems).toEqual([]);
  if (!result.notebook) throw new Error('cannot be read');
  return result.notebook;
};
const names = (text: string) => read(text).scenarios.map(({ name }) => name);
/** Lines of the second that the first does not have, and the other way round. */
const changedLines = (before: string, after: string) => {
  const count = (text: string) => {
    const lines = new Map<string, number>();
    for (const line of text.split('\n')) lines.set(line, (lines.get(line) ?? 0) + 1);
    return lines;
  };
  const [a, b] = [count(before), count(after)];
  const more = (x: Map<string, number>, y: Map<string, number>) =>
    [...x].filter(([line, n]) => n > (y.get(line) ?? 0)).map(([line]) => line);
  return { gone: more(a, b), come: more(b, a) };
};

describe('scenarios of a notebook', () => {
  it('adds one after the others and leaves every other byte', () => {
    const next = done(
      addScenario(at(SMALL), {
        name: 'Slats, ours',
        system: 'slatted',
        because: 'To see: what it takes',
        shed: { lengthM: 19.2, depthM: 9 },
      }),
    );
    expect(names(next)).toEqual(['Paddock', 'Deep bed', 'Slats, ours']);
    expect(read(next).scenarios[2].shed.lengthM).toBe(19.2);
    const { gone, come } = changedLines(SMALL, next);
    expect(gone).toEqual([]);
    expect(come).toHaveLength(4);
  });

  it('copies one under a name of its own, without the comment above it', () => {
    const next = done(copyScenario(at(SMALL), 1));
    expect(names(next)).toEqual(['Paddock', 'Deep bed', 'Deep bed 2']);
    expect(next.match(/the one we hope for/g)).toHaveLength(1);
    const [, first, second] = read(next).scenarios;
    expect({ ...second, name: first.name }).toEqual(first);
  });

  it('finds a free name within its sixty letters', () => {
    const long = 'x'.repeat(60);
    const scenarios = [{ name: long }] as never;
    expect(freeName({ scenarios }, long)).toBe(`${'x'.repeat(58)} 2`);
    expect(freeName({ scenarios: [{ name: 'A' }, { name: 'A 2' }] as never }, 'A 2')).toBe('A 3');
  });

  it('renames one wherever it is named', () => {
    const text = SMALL.replace(
      "because: 'To see'",
      "because: 'To see'\n    finance: { baseline: Paddock } # the old way",
    )
      .replace(
        '---\n\n# Words',
        'diary:\n  - { date: 2025-12-01, scenario: Deep bed, note: wet, kind: note }\n---\n\n# Words',
      )
      .replace('of Deep bed`', 'of Deep\nbed`, or ``=netCost of Deep bed``')
      .concat('\n> | a | b |\n> |---|---|\n> | `=netCost of Deep bed` | x |\n')
      .concat('\n```compare\nmeasure: netCost\nscenarios: [Deep bed, Paddock] # both\n```\n')
      .concat(
        '\n  ~~~flip\n  over: headCount\n  measure: netCost\n  between:\n    - Paddock\n    - Deep bed\n  ~~~\n',
      );
    const first = read(text);
    expect(first.scenarios).toHaveLength(2);
    const next = done(renameScenario(at(text), 1, 'Straw, deep: ours'));
    const after = read(next);
    expect(next).not.toContain('Deep bed');
    expect(next).not.toMatch(/Deep\s+bed/);
    expect(after.scenarios[1].name).toBe('Straw, deep: ours');
    expect(next).toContain('# both');
    expect(next).toContain('# the old way');
    const values = after.blocks.flatMap((block) => (block.type === 'prose' ? block.values : []));
    expect(values.filter(({ scenario }) => scenario === 'Straw, deep: ours')).toHaveLength(3);
    expect(values.filter(({ scenario }) => scenario === null)).toHaveLength(1);
    // And back again.
    const back = read(done(renameScenario(at(next), 1, 'Deep bed')));
    expect(back.scenarios).toEqual(first.scenarios);
  });

  it.each([
    ['', 'nothing'],
    ['a `b`', '“a `b`”'],
    ['a | b', '“a | b”'],
    ['x'.repeat(61), `“${'x'.repeat(61)}”`],
    ['Paddock', '“Paddock”'],
  ])('refuses the name %j', (name, found) => {
    expect(refusal(renameScenario(at(SMALL), 1, name)).found).toBe(found);
  });

  it('puts them in another order with their comments, and keeps what unnamed values mean', () => {
    const next = done(moveScenario(at(SMALL), 1, 0));
    expect(names(next)).toEqual(['Deep bed', 'Paddock']);
    expect(next).toContain('  # the one we hope for\n  - name: Deep bed');
    // Named now, since the first is another.
    expect(next).toContain('`=nitrogenExcretedKg of Paddock`');
    expect(done(moveScenario(at(next), 1, 0)).length).toBe(next.length);
  });

  it('keeps to the last scenario, and to those the prose speaks of', () => {
    expect(refusal(removeScenario(at(SMALL), 1))).toMatchObject({
      what: '“Deep bed” is spoken of in your own words',
      found: expect.stringContaining('The bed keeps'),
    });
    const one = SMALL.replace(/ {2}# the one we hope for[\s\S]*?share: 1 }\] }\n/, '').replace(
      ' of Deep bed',
      '',
    );
    expect(names(one)).toEqual(['Paddock']);
    expect(refusal(removeScenario(at(one), 0)).what).toBe('a notebook keeps at least one scenario');
  });

  it('asks before it takes out one that cells, baselines or the diary name, and lets go of it everywhere', () => {
    const text = `${SMALL.replace('of Deep bed`', 'of Paddock`').replace(
      'because: As it is',
      'because: As it is\n    finance: { baseline: Deep bed }',
    )}\n\`\`\`compare\nscenarios: [Paddock, Deep bed]\nmeasure: netCost\n\`\`\`\n\n\`\`\`section\nscenario: Deep bed\n\`\`\`\n`;
    const asked = removeScenario(at(text), 1);
    if ('text' in asked) throw new Error('was not asked');
    expect(asked.asks?.map(({ words }) => words)).toEqual([
      '“Paddock”, whose differences are taken against it',
      expect.stringContaining('the cell compare'),
      expect.stringContaining('the cell section'),
    ]);
    const next = done(removeScenario(at(text), 1, { letGo: true }));
    expect(names(next)).toEqual(['Paddock']);
    expect(next).not.toContain('Deep bed');
    expect(next).toContain('scenarios: [Paddock]');
    expect(next).toContain('```section\n```');
    expect(next).not.toContain('finance');
  });

  it('holds all against one base, and against none again', () => {
    for (const { text } of shipped) {
      const { scenarios } = read(text);
      const based = done(setBase(at(text), scenarios.length - 1));
      const last = scenarios[scenarios.length - 1].name;
      expect(read(based).scenarios.map(({ finance }) => finance.baseline)).toEqual(
        scenarios.map(({ name }) => (name === last ? undefined : last)),
      );
      const none = read(done(setBase(at(based), null)));
      expect(none.scenarios.every(({ finance }) => finance.baseline === undefined)).toBe(true);
    }
  });

  it(`refuses more than ${MOST_SCENARIOS}`, () => {
    let text = SMALL;
    while (names(text).length < MOST_SCENARIOS) text = done(copyScenario(at(text), 0));
    expect(new Set(names(text)).size).toBe(MOST_SCENARIOS);
    expect(refusal(copyScenario(at(text), 0))).toMatchObject({ found: '8 scenarios' });
    expect(refusal(addScenario(at(text), { name: 'X', system: 'outwintered', because: 'y' })).todo).toContain(
      'take one out',
    );
  });

  it('works with Windows line ends and with a list between brackets', () => {
    const crlf = SMALL.replace(/\n/g, '\r\n');
    for (const edit of [
      copyScenario(at(crlf), 1),
      moveScenario(at(crlf), 0, 1),
      renameScenario(at(crlf), 1, 'Bed'),
    ])
      expect(done(edit).replace(/\r\n/g, '')).not.toContain('\n');
    const flow = SMALL.replace(
      /scenarios:[\s\S]*?\n---/,
      'scenarios: [{ name: Paddock, system: outwintered, because: x }, { name: Deep bed, system: deep-bedded, because: y, bed: { mix: [{ material: barleyStraw, share: 1 }] } }]\n---',
    );
    expect(names(done(copyScenario(at(flow), 0)))).toEqual(['Paddock', 'Deep bed', 'Paddock 2']);
    expect(names(done(moveScenario(at(flow), 0, 1)))).toEqual(['Deep bed', 'Paddock']);
    expect(
      names(done(addScenario(at(flow), { name: 'N', system: 'outwintered', because: 'z' }))),
    ).toHaveLength(3);
  });

  it('says so where the notebook cannot be read', () => {
    expect(refusal(copyScenario(at('nothing'), 0)).what).toContain('cannot be read');
  });
});

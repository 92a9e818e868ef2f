/** What is said of two texts, held against edits whose effect is known. */
import { describe, expect, it } from 'vitest';
import type { Told } from '../../src/notebook/bodyDifferences.ts';
import type { Edited } from '../../src/notebook/edit.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { moveScenario, renameScenario } from '../../src/notebook/scenarioEdits.ts';
import { textDifferences } from '../../src/notebook/textDifferences.ts';
import { setInput } from '../../src/notebook/write.ts';
import { shipped } from './shipped.ts';

const { text, file } = shipped.find(
  (each) => each.file === 'hill-farm-choice.md',
) as (typeof shipped)[number];
const editing = { text, file, read: readNotebook };
const told = (after: string, before = text) =>
  (textDifferences(before, after) ?? []).map(({ of, words }) => `${of}: ${words}`);
const edited = (result: Edited) => ('text' in result ? result.text : '');

describe('what differs between two texts', () => {
  it('is nothing for one text, nor for remarks, spaces and line ends', () => {
    for (const each of shipped) expect(textDifferences(each.text, each.text)).toEqual([]);
    expect(told(text.replace(/ # .*$/gm, ''))).toEqual([]);
    expect(told(text.replaceAll('\n', '\r\n'))).toEqual([]);
  });

  it('is each input with both values, where it stands', () => {
    expect(told(setInput(text, 'farm.land.receivingHa', 30))).toEqual([
      expect.stringMatching(/^inputs: .*22 ha, now 30 ha$/),
    ]);
    expect(told(setInput(text, ['farm', 'herd', 0, 'head'], 20))).toEqual([
      expect.stringMatching(/^inputs: .*cows in calf: .*16.*, now 20/),
    ]);
    expect(told(setInput(text, ['farm', 'feed', 0, 'share'], 0.7))).toEqual([
      expect.stringMatching(/65 %, now 70 %$/),
    ]);
    expect(told(setInput(text, 'farm.money.year', 2023))).toEqual([expect.stringMatching(/2024, now 2023$/)]);
    expect(told(setInput(text, ['scenarios', 0, 'exposure'], undefined))).toEqual([
      expect.stringMatching(/^inputs: “Paddock”, .*windbreak, now not written$/),
    ]);
  });

  it('is rows that came and went', () => {
    const more = text.replace(
      '    - { feed: hay,',
      '    - { feed: barleyStraw, share: 0 }\n    - { feed: hay,',
    );
    expect(told(more)).toEqual([expect.stringMatching(/barley straw” was added$/)]);
    expect(told(text.replace('name: bull,', 'name: Otto,'))).toEqual([
      expect.stringMatching(/^inputs: .*bull: .*“bull”, now “Otto”$/),
    ]);
    expect(told(text, more)).toEqual([expect.stringMatching(/barley straw” was taken out$/)]);
  });

  it('is scenarios that were renamed, taken out or put in order, and nothing else of them', () => {
    const renamed = told(edited(renameScenario(editing, 0, 'On the hill')));
    expect(renamed[0]).toMatch(/^(inputs|scenarios): /);
    expect(renamed).toContain('scenarios: “Paddock” is now called “On the hill”');
    expect(told(edited(moveScenario(editing, 2, 0)))[0]).toMatch(/^scenarios: in another order: “Straw bed”/);
    expect(told(text.replace(/ {2}- name: Slats[\s\S]*?(?= {2}- name: Straw bed)/, ''))).toEqual([
      'scenarios: “Slats” was taken out',
    ]);
  });

  it('is cells and paragraphs', () => {
    const add = `${text}\n\`\`\`compare\nmeasure: capitalCost\n\`\`\`\n\nLast words of mine.\n`;
    expect(told(add)).toEqual([
      'cells: “One result across scenarios” was added',
      'words: “Last words of mine.” was added',
    ]);
    expect(told(text, add)).toEqual([
      'cells: “One result across scenarios” was taken out',
      'words: “Last words of mine.” was taken out',
    ]);
    expect(told(add.replace('capitalCost', 'netCost'), add)).toEqual([
      'cells: “One result across scenarios”: result capitalCost, now netCost',
    ]);
    expect(told(add.replace('words of mine', 'words of ours'), add)).toEqual([
      'words: “Last words of mine.” is now “Last words of ours.”',
    ]);
    const moved = add
      .replace('\n\nLast words of mine.\n', '\n')
      .replace('---\n\n', '---\n\nLast words of mine.\n\n');
    expect(told(moved, add)).toEqual(['words: “Last words of mine.” stands elsewhere']);
  });

  it('is told for every line of an input that is turned, whatever the notebook', () => {
    let turned = 0;
    for (const each of shipped)
      for (const { 0: whole, 1: key, 2: value, index } of each.text.matchAll(
        /\b(head|weightKg|share|tonnes|lengthM): ([\d.]+)/g,
      )) {
        const after = `${each.text.slice(0, index)}${key}: ${Number(value) + 1}${each.text.slice(index + whole.length)}`;
        const found = textDifferences(each.text, after) as readonly Told[];
        expect(found).toHaveLength(1);
        expect(found[0].words).toMatch(/, now /);
        turned++;
      }
    expect(turned).toBeGreaterThan(30);
  });

  it('cannot be said of a text whose front matter cannot be read', () => {
    expect(textDifferences(text, 'words')).toBeUndefined();
    expect(textDifferences('---\n[\n---\n', text)).toBeUndefined();
  });
});

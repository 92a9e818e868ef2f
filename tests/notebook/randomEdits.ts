/** Edits as a keeper makes them on the page, at random: for the properties and the fuzz. */
import {
  addCell,
  addProse,
  movePart,
  type Options,
  removePart,
  setOptions,
  setProse,
} from '../../src/notebook/bodyEdits.ts';
import { fieldsOf } from '../../src/notebook/cellForm.ts';
import { CELL_KINDS } from '../../src/notebook/cells.ts';
import { CELL_WORDS } from '../../src/notebook/cellWords.ts';
import type { Edited, Editing } from '../../src/notebook/edit.ts';
import { partsOf } from '../../src/notebook/parts.ts';
import type { Notebook } from '../../src/notebook/read.ts';
import {
  addScenario,
  copyScenario,
  moveScenario,
  removeScenario,
  renameScenario,
  setBase,
} from '../../src/notebook/scenarioEdits.ts';
import { SYSTEM_NAMES } from '../../src/notebook/systems.ts';

/** Names a keeper might give, with what YAML, Markdown and lists could trip over. */
const NAMES = [
  'Out',
  'Straw, deep: ours',
  'yes',
  '12',
  "Per's",
  '"Best"',
  '# one',
  '- dash',
  'Ström',
  '{a}',
  'A & B',
  '*',
];
const WORDS = [
  'Plain words.',
  '## A heading\n\nand words: `=netCost`',
  '- one\n- two',
  '> quoted\n> on two lines',
  '',
  'One.\n\n\nTwo.',
  '| a | b |\n|---|---|\n| `=netCost` | 1 |',
  '    an indented line',
  '---',
  '```\nnot a cell\n```',
  '1. first\n\n   more of it',
  '```bed\nshow: moisture\n```',
  'never closed\n\n```plain',
];

/** One edit of the notebook, or why it is not made. */
export function anEdit(at: Editing, { scenarios, blocks }: Notebook, next: () => number): Edited {
  const upTo = (n: number) => Math.floor(next() * n);
  const one = <T>(all: readonly T[]): T => all[upTo(all.length)];
  const parts = partsOf(blocks);
  const [scenario, place] = [upTo(scenarios.length), upTo(parts.length)];
  // Kept small, so that edits meet: what is long is cut.
  const draw = parts.length > 10 && next() < 0.4 ? 0.8 : next();
  if (parts.length === 0 && draw > 0.4) return addProse(at, -1, 'Words');
  if (draw < 0.05) return copyScenario(at, scenario);
  if (draw < 0.08)
    return addScenario(at, { name: one(NAMES), system: one(SYSTEM_NAMES.slice(0, 2)), because: one(NAMES) });
  if (draw < 0.13) return renameScenario(at, scenario, one(NAMES));
  if (draw < 0.18) return moveScenario(at, scenario, upTo(scenarios.length));
  if (draw < 0.26) return removeScenario(at, scenario, { letGo: true });
  if (draw < 0.29) return setBase(at, next() < 0.3 ? null : scenario);
  if (draw < 0.4) {
    const kind = one(CELL_KINDS);
    return addCell(at, upTo(parts.length + 1) - 1, kind, CELL_WORDS[kind].start);
  }
  if (draw < 0.55) return addProse(at, upTo(parts.length + 1) - 1, one(WORDS));
  if (draw < 0.65) return setProse(at, place, one(WORDS));
  if (draw < 0.75) return movePart(at, place, next() < 0.5 ? -1 : 1);
  if (draw < 0.85) return removePart(at, place);
  const block = parts[place]?.block;
  return block?.type === 'cell'
    ? setOptions(
        at,
        place,
        someOptions(
          block.kind,
          scenarios.map(({ name }) => name),
          next,
        ),
      )
    : movePart(at, place, 1);
}

function someOptions(
  kind: (typeof CELL_KINDS)[number],
  names: readonly string[],
  next: () => number,
): Options {
  const field = fieldsOf(kind)[Math.floor(next() * fieldsOf(kind).length)];
  const name = names[Math.floor(next() * names.length)];
  if (field.type === 'scenario') {
    const value = field.many === 'one' ? name : field.many === 'list' ? [name] : [name, names[0]];
    return { [field.key]: next() < 0.3 ? undefined : value };
  }
  if (field.type === 'choice')
    return { [field.key]: field.options[Math.floor(next() * field.options.length)].value };
  if (field.type === 'number') return { [field.key]: field.low === undefined ? 7.5 : field.low + 1 };
  return field.type === 'text' ? { caption: WORDS[Math.floor(next() * 4)] || undefined } : {};
}

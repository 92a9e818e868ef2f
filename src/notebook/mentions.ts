/** Where a notebook names a scenario, and what becomes of it when the scenario has another name or is gone. */
import type { Block, CellBlock } from './body.ts';
import { referencesOf } from './cells.ts';
import { cellYaml } from './cellText.ts';
import { type Mention, Refused } from './edit.ts';
import { type InlineValue, isInlineValue, readInlineValue } from './inline.ts';
import { markdown } from './markdown.ts';
import { paragraphsOf } from './parts.ts';
import type { Notebook } from './read.ts';
import type { Splice } from './splice.ts';
import { setInput, setOption, type Value } from './write.ts';

/** Everything that names the scenario; prose whose value names none speaks of the first. */
export function mentionsOf({ scenarios, diary, blocks }: Notebook, index: number): Mention[] {
  const { name } = scenarios[index];
  const based = scenarios.filter(({ finance }) => finance.baseline === name);
  return [
    ...based.map((s) => ({ words: `“${s.name}”, whose differences are taken against it`, inProse: false })),
    ...diary.flatMap(({ scenario, date }) =>
      scenario === name ? [{ words: `the diary entry of ${date}`, inProse: false }] : [],
    ),
    ...blocks.flatMap((block): Mention[] => {
      if (block.type === 'cell')
        return optionsNaming(block, name).map((option) => ({
          words: `the cell ${block.kind} on line ${block.lineOf(option)}, under ${option}`,
          inProse: false,
        }));
      return block.type === 'prose' ? sentencesOf(block, name, index === 0) : [];
    }),
  ];
}

/** Paragraphs whose values are of the scenario, by their first words; the first scenario is meant where none is named. */
function sentencesOf(block: Block & { readonly type: 'prose' }, name: string, isFirst: boolean): Mention[] {
  const named = block.values.filter(({ scenario }) => scenario === name || (scenario === null && isFirst));
  const parts = paragraphsOf(block);
  const places = new Set(named.map(({ line }) => parts.findLastIndex((part) => part.line <= line)));
  return [...places].map((place) => {
    const { from, to, line } = parts[place] ?? { from: block.from, to: block.from + 40, line: block.line };
    const words = block.text
      .slice(from - block.from, to - block.from)
      .replace(/`[^`]*`/g, '…')
      .replace(/\s+/g, ' ');
    const first = words.length > 48 ? `${words.slice(0, 47).trimEnd()}…` : words;
    return { words: `the words “${first}” on line ${line}`, inProse: true };
  });
}

const optionsNaming = (block: CellBlock, name: string): string[] => [
  ...new Set(
    referencesOf(block.options).scenarios.flatMap(([option, named]) => (named === name ? [option] : [])),
  ),
];

/** The text with every mention of a scenario under its new name, its own name apart. */
export function renameMentions(text: string, notebook: Notebook, index: number, to: string): string {
  const { name } = notebook.scenarios[index];
  const inBody = [
    ...valueSplices(notebook.blocks, ({ scenario }) => (scenario === name ? to : null)),
    ...cellSplices(notebook.blocks, (yaml, block) => {
      let so = yaml;
      for (const option of optionsNaming(block, name)) {
        const value = optionOf(block, option);
        if (Array.isArray(value))
          value.forEach((each, k) => {
            if (each === name) so = setOption(so, [option, k], to);
          });
        else so = setOption(so, [option], to);
      }
      return so;
    }),
  ];
  return inFront(spliced(text, inBody), notebook, name, to);
}

/** The text without what names the scenario: what hung on it takes what it does when nothing is said. Prose stays. */
export function dropMentions(text: string, notebook: Notebook, index: number): string {
  const { name } = notebook.scenarios[index];
  const inBody = cellSplices(notebook.blocks, (yaml, block) => {
    let so = yaml;
    for (const option of optionsNaming(block, name)) {
      const value = optionOf(block, option);
      const rest =
        option === 'scenarios' && Array.isArray(value) ? value.filter((each) => each !== name) : [];
      so = setOption(so, [option], rest.length > 0 ? rest : undefined);
    }
    return so;
  });
  return inFront(spliced(text, inBody), notebook, name, undefined);
}

/** The text with each value in prose that names no scenario given the name it means, so that another first changes no sentence. */
export const nameFirst = (text: string, { blocks, scenarios }: Notebook): string =>
  spliced(
    text,
    valueSplices(blocks, ({ scenario }) => (scenario === null ? scenarios[0].name : null)),
  );

const optionOf = ({ options }: CellBlock, option: string) =>
  (options as Record<string, Value | undefined>)[option];

/** Baselines and diary under another name, or under none. */
function inFront(
  text: string,
  { scenarios, diary, readerNotes }: Notebook,
  name: string,
  to: string | undefined,
): string {
  let next = text;
  scenarios.forEach(({ finance }, k) => {
    if (finance.baseline === name) next = setInput(next, ['scenarios', k, 'finance', 'baseline'], to);
  });
  diary.forEach(({ scenario }, k) => {
    if (scenario === name) next = setInput(next, ['diary', k, 'scenario'], to);
  });
  // A note on a figure of a scenario that goes stays with the figure's name: it is shown at the end.
  if (to !== undefined)
    readerNotes.forEach(({ on }, k) => {
      if (on.kind === 'number' && on.scenario === name)
        next = setInput(next, ['notes', k, 'on', 'scenario'], to);
    });
  return next;
}

/** The text with all splices made, from the last to the first, so that places before stay where they were. */
function spliced(text: string, splices: readonly Splice[]): string {
  return [...splices]
    .sort((a, b) => b.from - a.from)
    .reduce((so, { from, to, insert }) => so.slice(0, from) + insert + so.slice(to), text);
}

/** What becomes of the options of cells, where `change` makes something else of their YAML. */
function cellSplices(blocks: readonly Block[], change: (yaml: string, block: CellBlock) => string): Splice[] {
  return blocks.flatMap((block) => {
    if (block.type !== 'cell') return [];
    const { from, to } = cellYaml(block);
    const yaml = block.text.slice(from - block.from, to - block.from);
    const insert = change(yaml, block);
    return insert === yaml ? [] : [{ from, to, insert }];
  });
}

/** Values in prose with another scenario, where `name` gives one. */
function valueSplices(blocks: readonly Block[], name: (value: InlineValue) => string | null): Splice[] {
  return blocks.flatMap((block) => {
    if (block.type !== 'prose') return [];
    const spans = valueSpans(block.text).filter(({ value }) => name(value) !== null);
    const wanted = block.values.filter((value) => name(value) !== null);
    if (spans.length !== wanted.length)
      throw new Refused({
        what: 'a value in the prose cannot be followed to where it is written',
        line: wanted[0]?.line ?? block.line,
        found: `${wanted.length} of that scenario, ${spans.length} found in the text`,
        todo: 'name the scenario there by hand first, or put the value on a line of its own',
      });
    return spans.map(({ from, to, value }) => ({
      from: block.from + from,
      to: block.from + to,
      insert: `=${value.quantity} of ${name(value)}`,
    }));
  });
}

interface ValueSpan {
  /** Of what stands between the backticks. */
  readonly from: number;
  readonly to: number;
  readonly value: InlineValue;
}

/** Where values by name stand in prose: code spans as the parser finds them, within lines that hold running text. */
function valueSpans(prose: string): ValueSpan[] {
  const starts = [0];
  for (let at = prose.indexOf('\n'); at >= 0; at = prose.indexOf('\n', at + 1)) starts.push(at + 1);
  const found = new Map<number, ValueSpan>();
  let lines: readonly [number, number] = [0, 0];
  for (const token of markdown.parse(prose, {})) {
    // The words of a table have no lines of their own, but its row has.
    lines = token.map ?? lines;
    if (token.type !== 'inline') continue;
    if (!token.children?.some(({ type, content }) => type === 'code_inline' && isInlineValue(content)))
      continue;
    const [from, to] = [starts[lines[0]], starts[lines[1]] ?? prose.length];
    for (const span of codeSpans(prose.slice(from, to))) {
      const code = span.code.replace(/\r?\n[ \t>]*/g, ' ').trim();
      const value = isInlineValue(code) ? readInlineValue(code, 0) : undefined;
      if (value) found.set(from + span.from, { from: from + span.from, to: from + span.to, value });
    }
  }
  return [...found.values()].sort((a, b) => a.from - b.from);
}

/** Code spans: as many backticks behind as before, and none escaped before. */
function codeSpans(text: string): { from: number; to: number; code: string }[] {
  const out: { from: number; to: number; code: string }[] = [];
  const runs = /`+/g;
  for (let run = runs.exec(text); run; run = runs.exec(text)) {
    const escapes = /\\*$/.exec(text.slice(0, run.index))?.[0].length ?? 0;
    if (escapes % 2 === 1) {
      runs.lastIndex = run.index + 1;
      continue;
    }
    const from = run.index + run[0].length;
    const close = new RegExp(`(?<!\`)\`{${run[0].length}}(?!\`)`, 'g');
    close.lastIndex = from;
    const end = close.exec(text);
    if (!end) continue;
    out.push({ from, to: end.index, code: text.slice(from, end.index) });
    runs.lastIndex = end.index + end[0].length;
  }
  return out;
}

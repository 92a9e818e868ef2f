/** The body of a notebook: the keeper's prose with cells between. */
import type { Problem } from '../units/problem.ts';
import { bodyBound, cellBound } from './bounds.ts';
import { CELL_KINDS, CELL_OPTIONS, type Cell, isCellKind } from './cells.ts';
import { INLINE_FORM, type InlineValue, isInlineValue, readInlineValue } from './inline.ts';
import { problemsOf } from './issues.ts';
import { markdown } from './markdown.ts';
import { meant } from './nearest.ts';
import { weatherName } from './weatherBlock.ts';
import { readYaml } from './yamlText.ts';

interface Part {
  /** Exactly what stands in the file. */
  readonly text: string;
  /** 1-based line in the file. */
  readonly line: number;
  /** Offsets in the file's text. */
  readonly from: number;
  readonly to: number;
}
interface ProseBlock extends Part {
  readonly type: 'prose';
  readonly values: readonly InlineValue[];
}
export type CellBlock = Part & { readonly type: 'cell' } & Cell & {
    readonly lineOf: (option: string) => number;
  };
/** A cell that could not be read; the page shows why in its place. */
interface BrokenBlock extends Part {
  readonly type: 'broken';
  readonly kind: string;
  readonly problems: readonly Problem[];
}
export type Block = ProseBlock | CellBlock | BrokenBlock;

export interface Body {
  readonly blocks: readonly Block[];
  /** Days of weather that travel in the text, by the name the front matter asks for. */
  readonly weather: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

/** A fence's word for plain text, one letter from a kind. */
const PLAIN = 'plain';

/** Splits `text` from offset `from` on, whose first line is `firstLine`, into prose and cells. */
export function readBody(text: string, from: number, firstLine: number, file: string): Body {
  const source = text.slice(from);
  const bound = bodyBound(source);
  if (bound)
    return tooMuch(source, from, firstLine, {
      line: firstLine + bound.line,
      found: bound.found,
      allowed: bound.allowed,
      file,
    });
  const tokens = markdown.parse(source, {});
  const starts = lineStarts(source);
  const partOf = (a: number, b: number): Part => {
    const [start, end] = [starts[a] ?? source.length, starts[b] ?? source.length];
    return { text: source.slice(start, end), line: firstLine + a, from: from + start, to: from + end };
  };
  const blocks: Block[] = [];
  const problems: Problem[] = [];
  const weather = new Map<string, string>();
  let proseFrom = 0;
  let values: InlineValue[] = [];
  const endProse = (line: number) => {
    const part = partOf(proseFrom, line);
    if (part.text.trim() !== '') blocks.push({ type: 'prose', ...part, values });
    values = [];
  };
  for (const token of tokens) {
    const kind = token.info.trim().split(/\s+/, 1)[0];
    // Only a fence of its own is a cell: inside a list or a quotation it is shown as it is written.
    const fence = token.type === 'fence' && token.level === 0 && token.map;
    const days = fence ? weatherName(token.info) : undefined;
    if (fence && days !== undefined) {
      endProse(fence[0]);
      weather.set(days, token.content);
      proseFrom = fence[1];
      continue;
    }
    const near = fence && !isCellKind(kind) && kind !== PLAIN ? meant(kind, CELL_KINDS) : undefined;
    if (fence && (isCellKind(kind) || near)) {
      endProse(fence[0]);
      const part = partOf(fence[0], fence[1]);
      const block = isCellKind(kind)
        ? readCell(kind, token.content, part, file)
        : mistyped(kind, near as string, part, file);
      if (block.type === 'broken') problems.push(...block.problems);
      blocks.push(block);
      proseFrom = fence[1];
    } else if (token.type === 'inline') {
      let line = firstLine + (token.map?.[0] ?? proseFrom);
      for (const child of token.children ?? []) {
        if (child.type === 'softbreak' || child.type === 'hardbreak') line++;
        if (child.type !== 'code_inline' || !isInlineValue(child.content)) continue;
        const value = readInlineValue(child.content, line);
        if (value) values.push(value);
        else
          problems.push({
            what: 'this is not a value by name',
            file,
            line,
            found: `\`${child.content.slice(0, 60)}\``,
            allowed: INLINE_FORM,
            todo: 'a notebook names results and never calculates',
          });
      }
    }
  }
  endProse(starts.length);
  return { blocks, weather, problems };
}

/** A body that is more than a page can hold stands there as one part, and says so. */
function tooMuch(text: string, from: number, line: number, at: Omit<Problem, 'what'>): Body {
  const problem: Problem = {
    what: 'the words and figures are more than a page can hold',
    ...at,
    todo: 'put a part of it into a notebook of its own',
  };
  const block: BrokenBlock = {
    type: 'broken',
    kind: 'words',
    text,
    line,
    from,
    to: from + text.length,
    problems: [problem],
  };
  return { blocks: [block], weather: new Map(), problems: [problem] };
}

/** Any other first word makes a fence that is shown as it is written; one that is nearly a kind would be lost so. */
function mistyped(kind: string, near: string, part: Part, file: string): BrokenBlock {
  const problem: Problem = {
    what: `you wrote \`${kind}\`: did you mean \`${near}\`?`,
    file,
    line: part.line,
    allowed: CELL_KINDS.join(', '),
    todo: `mend the word; a fence of plain text has none, or ${PLAIN}`,
  };
  return { type: 'broken', kind, ...part, problems: [problem] };
}

function readCell(kind: Cell['kind'], content: string, part: Part, file: string): CellBlock | BrokenBlock {
  const broken = (problems: readonly Problem[]): BrokenBlock => ({ type: 'broken', kind, ...part, problems });
  const bound = cellBound(content);
  if (bound) {
    const { line, found, allowed } = bound;
    return broken([
      {
        what: 'the figure’s options are too long or too deep',
        file,
        line: part.line + 1 + line,
        key: kind,
        found,
        allowed,
      },
    ]);
  }
  const yaml = readYaml(content, part.line + 1, file);
  if (yaml.problems.length > 0) return broken(yaml.problems);
  const schema = CELL_OPTIONS[kind];
  const data = yaml.data ?? {};
  const result = schema.safeParse(data);
  if (!result.success) {
    const lineOf = (path: readonly (string | number)[]) =>
      path.length > 1 ? yaml.lineOf(path.slice(1)) : part.line;
    return broken(
      result.error.issues.flatMap((issue) => problemsOf(issue, { schema, data, file, at: [kind], lineOf })),
    );
  }
  return { type: 'cell', ...part, kind, options: result.data, lineOf: yaml.lineOf } as CellBlock;
}

/** Offset of each line's first letter, as the parser counts lines. */
function lineStarts(text: string): number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    // The parser takes a carriage return, with or without a line feed, for one line end.
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return starts;
}

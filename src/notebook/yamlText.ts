/** YAML text → plain data with line numbers, refusing what a notebook never needs: anchors, tags, merge keys. */
import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  type YAMLMap,
} from 'yaml';
import type { Problem } from '../units/problem.ts';
import { oddNodes } from './oddNodes.ts';
import type { Path } from './path.ts';

export interface YamlText {
  readonly document: Document;
  /** Plain data; undefined where there are problems. */
  readonly data: unknown;
  readonly problems: readonly Problem[];
  /** 1-based line in the file of the deepest part of the path that is written. */
  readonly lineOf: (path: Path | string) => number;
}

const FEW = 10;

/** Parses YAML that begins on `firstLine` of `file`. Never throws. */
export function readYaml(source: string, firstLine: number, file: string): YamlText {
  const counter = new LineCounter();
  const lineAt = (offset: number) => firstLine - 1 + Math.max(1, counter.linePos(offset).line);
  // Keys are compared below: the parser's own test takes time squared in the number of keys.
  const document = parseDocument(source, {
    version: '1.2',
    schema: 'core',
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'silent',
    lineCounter: counter,
  });
  const problems: Problem[] = [...document.errors, ...document.warnings].slice(0, FEW).map((error) => ({
    what: error.code === 'TAG_RESOLVE_FAILED' ? 'a tag is not understood' : 'this is not valid YAML',
    file,
    line: lineAt(error.pos[0]),
    found: /call stack/i.test(error.message)
      ? 'lists and maps nested thousands deep'
      : plainMessage(error.message),
    todo: error.code === 'TAG_RESOLVE_FAILED' ? 'take the ! and its word out' : hint(error.code),
  }));
  if (problems.length === 0) problems.push(...oddNodes(document.contents as Node | null, file, lineAt));
  return {
    document,
    data: problems.length === 0 ? document.toJS({ maxAliasCount: 0 }) : undefined,
    problems,
    lineOf: (path) => {
      const offset = deepestOffset(
        document.contents as Node | null,
        typeof path === 'string' ? path.split('.') : path,
      );
      return offset === undefined ? firstLine : lineAt(offset);
    },
  };
}

const plainMessage = (message: string) =>
  message.replace(/ at line \d+, column \d+:[\s\S]*$/, '').split('\n', 1)[0];

function hint(code: string): string {
  if (code === 'TAB_AS_INDENT') return 'indent with spaces, not tabs';
  if (code === 'MULTIPLE_DOCS') return 'keep one block between the two lines ---';
  if (code === 'BLOCK_AS_IMPLICIT_KEY')
    return 'put words with a colon in quotes, or each key on a line of its own';
  return 'look at indents, colons and quotes on this line and the one above';
}

/** Offset of the key or item at the path, or of the last part of it that is written. */
function deepestOffset(root: Node | null, path: Path): number | undefined {
  let node = root;
  let offset: number | undefined = root?.range?.[0];
  for (let k = 0; k < path.length && node !== null; ) {
    if (isSeq(node)) {
      node = (node.items[Number(path[k])] as Node | undefined) ?? null;
      offset = node?.range?.[0] ?? offset;
      k++;
    } else if (isMap(node)) {
      const found = pairAlong(node, path, k);
      if (!found) break;
      offset = (found.pair.key as Node).range?.[0] ?? offset;
      node = found.pair.value as Node | null;
      k = found.next;
    } else break;
  }
  return offset;
}

/** The pair whose key is the next part of the path; ids of prices hold dots, so several parts may make one key. */
function pairAlong(map: YAMLMap, path: Path, k: number) {
  for (let next = k + 1; next <= path.length; next++) {
    const name = path.slice(k, next).join('.');
    const pair = map.items.find(({ key }) => isScalar(key) && String(key.value) === name);
    if (pair) return { pair, next };
  }
  return undefined;
}

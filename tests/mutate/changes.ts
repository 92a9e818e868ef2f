/** Small faults in code, one at a time: where each may be put in, found in the syntax and not in the text. */
import { parseSync } from 'vite';

export interface Change {
  /** Path in the repository. */
  readonly file: string;
  readonly line: number;
  /** What was done, in words that find the place again. */
  readonly what: string;
  /** The whole text of the file with the fault in it. */
  readonly text: string;
}

type Node = { readonly type: string; readonly start: number; readonly end: number } & Record<string, unknown>;

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly to: string;
  readonly what: string;
}

/** An operator to the one it is most easily mistaken for. */
const OPERATORS: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '%': '*',
  '<': '>=',
  '>': '<=',
  '<=': '<',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
};

const METHODS: Readonly<Record<string, string>> = {
  max: 'min',
  min: 'max',
  floor: 'ceil',
  ceil: 'floor',
  some: 'every',
  every: 'some',
};

/** Types say nothing at run time; what is thrown is words. */
const LEFT_OUT = new Set(['ThrowStatement', 'ImportDeclaration', 'ExportAllDeclaration']);
const THROUGH_TYPES = new Set(['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression']);

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Every fault that may be put into a file. */
export function changesOf(file: string, text: string): Change[] {
  const edits: Edit[] = [];
  const visit = (node: Node): void => {
    if (LEFT_OUT.has(node.type)) return;
    if (node.type.startsWith('TS') && !THROUGH_TYPES.has(node.type)) return;
    edits.push(...editsAt(node, text));
    for (const [key, value] of Object.entries(node)) {
      // A key is a name, `a[0]` and `{ 1: … }` included: another name is another program, not a slip.
      if (key === 'key' && node.computed !== true) continue;
      for (const each of Array.isArray(value) ? value : [value]) if (isNode(each)) visit(each);
    }
  };
  visit(parseSync(file, text).program as unknown as Node);
  return edits.map(({ start, end, to, what }) => ({
    file,
    line: text.slice(0, start).split('\n').length,
    what,
    text: text.slice(0, start) + to + text.slice(end),
  }));
}

function editsAt(node: Node, text: string): Edit[] {
  const of = (part: unknown): string => (isNode(part) ? text.slice(part.start, part.end) : '');
  const edit = (at: Node, to: string): Edit[] => [
    { start: at.start, end: at.end, to, what: `${short(of(at))} → ${short(to)}` },
  ];
  switch (node.type) {
    case 'BinaryExpression':
    case 'LogicalExpression':
    case 'AssignmentExpression':
      return operatorAt(node, text);
    case 'IfStatement':
    case 'ConditionalExpression':
      return isNode(node.test) ? edit(node.test, `!(${of(node.test)})`) : [];
    case 'UnaryExpression':
      return node.operator === '-' || node.operator === '!' ? edit(node, `(${of(node.argument)})`) : [];
    case 'Literal':
      return typeof node.value === 'number' ? edit(node, otherNumber(node.value)) : [];
    case 'MemberExpression': {
      const { property } = node;
      const to = isNode(property) && !node.computed ? METHODS[of(property)] : undefined;
      return to !== undefined && isNode(property) ? edit(property, to) : [];
    }
    case 'CallExpression':
      return columnsAt(node, of, edit);
    case 'ReturnStatement':
      return returnedAt(node, of, edit);
    default:
      return [];
  }
}

function operatorAt(node: Node, text: string): Edit[] {
  const { left, right, operator } = node;
  const to = OPERATORS[String(operator)];
  if (to === undefined || !isNode(left) || !isNode(right)) return [];
  // Texts put together are words, and a minus between them is seen by anyone.
  const words = (part: Node) => part.type === 'TemplateLiteral' || typeof part.value === 'string';
  if ((operator === '+' || operator === '+=') && (words(left) || words(right))) return [];
  const start = text.indexOf(String(operator), left.end);
  const line = text.slice(node.start, node.end);
  return [
    {
      start,
      end: start + String(operator).length,
      to,
      what: `${operator} → ${to} in ${short(line)}`,
    },
  ];
}

type OfText = (part: unknown) => string;
type EditOf = (at: Node, to: string) => Edit[];

/** The first two names of a declaration that hands its columns to a function in the same order. */
function columnsAt(node: Node, of: OfText, edit: EditOf): Edit[] {
  const [list, then] = node.arguments as (Node | undefined)[];
  if (list?.type !== 'ArrayExpression' || then?.type !== 'ArrowFunctionExpression') return [];
  const names = (list.elements as (Node | null)[]).filter((each): each is Node => each !== null);
  if (names.length < 2 || !names.every(({ value }) => typeof value === 'string')) return [];
  return edit(list, `[${[names[1], names[0], ...names.slice(2)].map(of).join(', ')}]`);
}

/** What is returned under the first name goes by the second too. */
function returnedAt(node: Node, of: OfText, edit: EditOf): Edit[] {
  const { argument } = node;
  if (!isNode(argument) || argument.type !== 'ObjectExpression') return [];
  const named = (argument.properties as Node[]).filter(
    ({ type, kind, method }) => type === 'Property' && kind === 'init' && !method,
  );
  if (named.length < 2) return [];
  const [first, second] = named;
  return edit(second, `${of(second.key)}: ${of(first.value)}`);
}

const otherNumber = (value: number): string =>
  value === 0
    ? '1'
    : value === 1
      ? '2'
      : String(Number.isInteger(value) ? Math.round(value * 1.3) : value * 1.3);

const SHOWN = 60;
function short(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > SHOWN ? `${line.slice(0, SHOWN)}…` : line;
}

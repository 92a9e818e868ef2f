/** Plain values as YAML: on one line inside what is there already, or as a block of lines of its own. */
import { isScalar, type Node, parse, stringify } from 'yaml';

/** A word that YAML reads back as the same words without quotes, also between braces. */
const BARE = /^(?:[A-Za-z][\w./-]*(?: [\w./-]+)*|\d{4}-\d{2}-\d{2})$/;

/** A value on one line. */
export function inFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inFlow).join(', ')}]`;
  if (value !== null && typeof value === 'object') {
    const pairs = Object.entries(value).filter(([, v]) => v !== undefined);
    return pairs.length === 0
      ? '{}'
      : `{ ${pairs.map(([key, v]) => `${inFlow(key)}: ${inFlow(v)}`).join(', ')} }`;
  }
  if (typeof value !== 'string') return String(value);
  return BARE.test(value) && readsBack(value) ? value : JSON.stringify(value);
}

/** `true`, `no` or `1e3` are words to the writer and something else to YAML. */
const readsBack = (text: string): boolean => parse(text, { version: '1.2', schema: 'core' }) === text;

/** Words that may need no quotes; only reading them back in their place tells. */
const MAY_BE_BARE = /^\p{L}[^\r\n]*[^\s:]$/u;

/** A scalar in the quotes the one before it had; with `bare`, none where there were none. */
export function likeBefore(value: unknown, before: Node | null, bare: boolean): string {
  if (typeof value === 'string' && isScalar(before)) {
    if (bare && before.type === 'PLAIN' && MAY_BE_BARE.test(value)) return value;
    if (before.type === 'QUOTE_SINGLE' && !/[\r\n]/.test(value)) return `'${value.replaceAll("'", "''")}'`;
    if (before.type === 'QUOTE_DOUBLE') return JSON.stringify(value);
  }
  return inFlow(value);
}

/** A value as lines, each indented by `indent` spaces, no line end at the end. */
export function inBlock(value: unknown, indent: number, eol: string): string {
  const lines = stringify(value, { version: '1.2', lineWidth: 0, indentSeq: true }).trimEnd().split('\n');
  return lines.map((line) => (line === '' ? '' : ' '.repeat(indent) + line)).join(eol);
}

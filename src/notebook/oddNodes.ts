/** What YAML can say and a notebook never needs: anchors, merge keys, keys that are no words, a key twice. */
import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Problem } from '../units/problem.ts';
import type { Path } from './path.ts';

const MAX_DEPTH = 30;
const FEW = 10;

/** A problem for each such node, with its line; at most a few. */
export function oddNodes(root: Node | null, file: string, lineAt: (offset: number) => number): Problem[] {
  const problems: Problem[] = [];
  const say = (node: Node | null, what: string, rest: Partial<Problem>) => {
    if (problems.length < FEW) problems.push({ what, file, line: lineAt(node?.range?.[0] ?? 0), ...rest });
  };
  const walk = (node: Node | null, path: Path, depth: number): void => {
    if (node === null || problems.length >= FEW) return;
    const key = path.length > 0 ? { key: path.join('.') } : {};
    if (depth > MAX_DEPTH) {
      say(node, 'the lists and maps are nested too deep', { ...key, allowed: `${MAX_DEPTH} levels` });
      return;
    }
    if (isAlias(node) || node.anchor) {
      say(node, 'anchors and aliases are not used in a notebook', {
        ...key,
        found: isAlias(node) ? `*${node.source}` : `&${node.anchor}`,
        todo: 'write the value out where it is needed',
      });
      return;
    }
    if (isSeq(node)) {
      for (const [k, item] of node.items.entries()) walk(item as Node | null, [...path, k], depth + 1);
    } else if (isMap(node)) {
      const seen = new Map<string, number>();
      for (const pair of node.items) {
        const keyNode = pair.key as Node | null;
        if (
          !isScalar(keyNode) ||
          keyNode.anchor ||
          keyNode.value === null ||
          typeof keyNode.value === 'object'
        ) {
          say(keyNode ?? node, 'a key is not a plain word', { ...key, todo: 'write "key: value"' });
          continue;
        }
        const name = String(keyNode.value);
        const at = [...path, name].join('.');
        const line = lineAt(keyNode.range?.[0] ?? 0);
        if (name === '<<' || name === '__proto__')
          say(keyNode, 'this key has no meaning in a notebook', {
            key: at,
            found: name,
            todo: 'take the line out',
          });
        else if (seen.has(name))
          say(keyNode, 'the key is there twice', {
            key: at,
            found: `${name} on lines ${seen.get(name)} and ${line}`,
            allowed: 'once',
            todo: 'take one of them out',
          });
        seen.set(name, line);
        walk(pair.value as Node | null, [...path, name], depth + 1);
      }
    }
  };
  walk(root, [], 0);
  return problems;
}

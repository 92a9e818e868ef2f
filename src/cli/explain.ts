import { RESULTS } from '../model/dictionary.ts';
import { nearest } from '../notebook/nearest.ts';
import { explain, type TraceNode } from '../study/trace.ts';
import { formatQuantity } from '../units/format.ts';
import { argumentsOf } from './arguments.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';

export const usage = `explain FILE SCENARIO QUANTITY [--depth N]
Prints how a result came about: formula in words, inputs, coefficients, sources. SCENARIO is a name or a number.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 3, 3, {
    depth: { type: 'string', default: '12' },
  });
  const [file, scenario, quantity] = positionals;
  const depth = Number(values.depth);
  if (!Number.isInteger(depth) || depth < 1)
    throw new CommandError(`--depth: not a whole number above 0; found ${values.depth}`, 2);
  const { run: evaluated, notebook } = await openNotebook(file);
  const names = evaluated.results.map((r) => r.name);
  const at = names.includes(scenario) ? names.indexOf(scenario) : Number(scenario) - 1;
  if (!names[at])
    throw new CommandError(
      `${file}: no scenario of that name; found ${scenario}; allowed ${names.join(', ')} or 1 to ${names.length}`,
    );
  const known = ['winterDays', ...RESULTS.map((r) => r.name)];
  if (!known.includes(quantity) && !evaluated.bound[at].bindings.has(quantity))
    throw new CommandError(
      `${file}: no quantity of that name; found ${quantity}; did you mean ${nearest(quantity, known).join(', ')}?`,
    );
  const tree = explain(evaluated, at, quantity);
  const context = { system: notebook.units, currency: evaluated.currency, plain: true } as const;
  out(
    `${names[at]}: ${tree.label}\n${lines(tree, '', depth, (v, unit) => formatQuantity(v, unit, context)).join('\n')}\n`,
  );
}

function lines(
  node: TraceNode,
  indent: string,
  depth: number,
  format: (value: number | null, unit: string) => string,
): string[] {
  const value = format(node.value, node.unit);
  const head = `${indent}${node.name} = ${value}  ${node.label}${node.seen && node.formula ? ' (working above)' : ''}`;
  const inner = `${indent}    `;
  const notes = [
    !node.seen && node.formula ? `${inner}how: ${node.formula}` : '',
    node.low !== undefined && node.high !== undefined
      ? `${inner}range: ${format(node.low, node.unit)} to ${format(node.high, node.unit)}`
      : '',
    node.kind === 'input' ? `${inner}from the notebook: ${node.id}` : '',
    node.kind === 'override' ? `${inner}put in by the keeper for ${node.id}: ${node.because}` : '',
    node.kind === 'missing' ? `${inner}no row for ${node.id} in the tables` : '',
    ...(node.seen ? [] : node.sources).map((s) => {
      const basis = node.basis ? `, ${node.basis}` : '';
      return `${inner}source: ${[s.author, s.title, s.year].filter(Boolean).join(', ')}${node.where ? `, ${node.where}` : ''}${basis}`;
    }),
  ].filter((line) => line !== '');
  const deeper =
    depth > 1 ? node.children.flatMap((child) => lines(child, `${indent}  `, depth - 1, format)) : [];
  const cut =
    depth <= 1 && node.children.length > 0
      ? [`${indent}  … ${node.children.length} more below; --depth shows them`]
      : [];
  return [head, ...notes, ...deeper, ...cut];
}

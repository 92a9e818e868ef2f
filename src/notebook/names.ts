/** Names in a notebook that only the tables and the model know: coefficients, results, inputs. */
import type { Problem } from '../units/problem.ts';
import { referencesOf } from './cells.ts';
import { nearest } from './nearest.ts';
import type { Notebook } from './read.ts';

export interface KnownNames {
  /** Ids of coefficients and prices that can be replaced. */
  readonly coefficients: readonly string[];
  readonly results: readonly string[];
  /** Names of results, and of inputs that prose may name. */
  readonly quantities: readonly string[];
  /** Inputs that can be turned. */
  readonly inputs: readonly string[];
}

/** A problem for each name that is not known, with its line and the nearest that are. */
export function checkNames(notebook: Notebook, known: KnownNames): Problem[] {
  const { file, lineOf } = notebook;
  const sets = {
    coefficients: new Set(known.coefficients),
    results: new Set(known.results),
    quantities: new Set(known.quantities),
    inputs: new Set(known.inputs),
  };
  const check = (
    list: keyof KnownNames,
    name: string,
    what: string,
    line: number,
    key?: string,
  ): Problem[] =>
    sets[list].has(name)
      ? []
      : [
          {
            what,
            file,
            line,
            ...(key ? { key } : {}),
            found: `"${name}"`,
            allowed: `nearest ${nearest(name, known[list]).join(', ')}`,
          },
        ];
  const NO_ROW = 'no row of the tables has this id';
  const NO_RESULT = 'no result has this name';
  return [
    ...notebook.overrides.flatMap(({ id }, k) =>
      check('coefficients', id, NO_ROW, lineOf(['coefficients', k, 'id']), `coefficients.${k}.id`),
    ),
    ...Object.keys(notebook.farm.money.prices).flatMap((id) =>
      check('coefficients', id, NO_ROW, lineOf(['farm', 'money', 'prices', id]), `farm.money.prices.${id}`),
    ),
    ...notebook.scenarios.flatMap((scenario, k) =>
      Object.keys(scenario.farm.money.prices)
        .filter((id) => !(id in notebook.farm.money.prices))
        .flatMap((id) =>
          check(
            'coefficients',
            id,
            NO_ROW,
            lineOf(['scenarios', k, 'farm', 'money', 'prices', id]),
            `scenarios.${k}.farm.money.prices.${id}`,
          ),
        ),
    ),
    ...Object.keys(notebook.decide.weights).flatMap((name) =>
      check('results', name, NO_RESULT, lineOf(['decide', 'weights', name]), `decide.weights.${name}`),
    ),
    ...notebook.blocks.flatMap((block) => {
      if (block.type === 'broken') return [];
      if (block.type === 'prose')
        return block.values.flatMap(({ quantity, line }) => check('quantities', quantity, NO_RESULT, line));
      const { results, inputs } = referencesOf(block.options);
      const key = (option: string) => `${block.kind}.${option}`;
      return [
        ...results.flatMap(([option, name]) =>
          check('results', name, NO_RESULT, block.lineOf(option), key(option)),
        ),
        ...inputs.flatMap(([option, name]) =>
          check('inputs', name, 'no input has this name', block.lineOf(option), key(option)),
        ),
      ];
    }),
  ];
}

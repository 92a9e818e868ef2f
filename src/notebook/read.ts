/** Text → notebook, or every problem in it with its line. The one border at which loose becomes strict. */
import type { Problem } from '../units/problem.ts';
import { type Block, readBody } from './body.ts';
import { yamlBound } from './bounds.ts';
import { referencesOf } from './cells.ts';
import { decodeNotebook, lineAt } from './decode.ts';
import type { DiaryEntry } from './diary.ts';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { MOST_SCENARIOS, type Outer, outerSchema, type UnitSystem, type View } from './frontSchema.ts';
import { problemsOf, show } from './issues.ts';
import { isPlain } from './merge.ts';
import { asToday, MIGRATIONS, type Migration, migrate, oldestReadable } from './migrate.ts';
import { nearestScenarios } from './nearest.ts';
import type { Path } from './path.ts';
import { breachesOf } from './rules.ts';
import { toScenario } from './scenarios.ts';
import { type Farm, FORMAT_VERSION, type Override, type Scenario } from './schema.ts';
import { readYaml, type YamlText } from './yamlText.ts';

export interface Notebook {
  readonly file: string;
  /** Format the text is written in. */
  readonly version: number;
  readonly title: string;
  readonly invented: boolean;
  readonly units: UnitSystem;
  readonly view: View;
  readonly farm: Farm;
  readonly scenarios: readonly Scenario[];
  readonly overrides: readonly Override[];
  readonly diary: readonly DiaryEntry[];
  readonly draws: { readonly count: number; readonly seed: number };
  /** What the keeper weighs, by name of the result. */
  readonly decide: { readonly weights: Readonly<Record<string, number>> };
  readonly blocks: readonly Block[];
  /** Days of weather that travel in the text, by name. */
  readonly weather: ReadonlyMap<string, string>;
  /** What is worth knowing though nothing is wrong: keys that are read over. */
  readonly notes: readonly Problem[];
  /** The whole file, exactly as it was read. */
  readonly text: string;
  /** 1-based line of the deepest written part of a path in the front matter. */
  readonly lineOf: (path: Path | string) => number;
}

/**
 * The notebook is there whenever its front matter is sound; cells that could not be read are then `broken` blocks,
 * and what is wrong with them is among the problems. A command refuses unless `ok`, a page shows them in place.
 */
export type ReadResult =
  | { readonly ok: true; readonly notebook: Notebook; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly notebook?: Notebook; readonly problems: readonly Problem[] };

/** More would bury the first. */
const MOST_PROBLEMS = 100;

/** Reads a notebook. Never throws: whatever is wrong comes back as problems with their lines. */
export function readNotebook(
  source: string | Uint8Array,
  file: string,
  migrations: Readonly<Record<number, Migration>> = MIGRATIONS,
): ReadResult {
  const decoded = decodeNotebook(source, file);
  if ('problem' in decoded) return refuse([decoded.problem], file);
  const { text } = decoded;
  const front = findFrontMatter(text, file);
  if (isProblem(front)) return refuse([front], file);
  const deep = yamlBound(front.source);
  if (deep) {
    const { line, found, allowed } = deep;
    return refuse(
      [
        {
          what: 'the front matter is too long or too deep',
          file,
          line: front.firstLine + line,
          found,
          allowed,
        },
      ],
      file,
    );
  }
  const yaml = readYaml(front.source, front.firstLine, file);
  const body = readBody(text, front.bodyFrom, lineAt(text, front.bodyFrom), file);
  if (yaml.problems.length > 0) return refuse([...yaml.problems, ...body.problems], file);

  const version = versionProblem(yaml, file, migrations);
  if (version) return refuse([version], file);
  const { front: today, notes } = asToday(migrate(yaml.data, migrations));
  const { parts, scenarios, problems } = complete(today, yaml, file);
  if (!parts) return refuse([...problems, ...body.problems], file);
  const { title, invented, units, view, farm, coefficients: overrides, diary, draws, decide } = parts;
  const breaches = breachesOf({ farm, scenarios, overrides, diary }, file, yaml.lineOf);
  const inBody = [...body.problems, ...scenarioNameProblems(body.blocks, scenarios, file)];
  if (breaches.length > 0) return refuse([...breaches, ...inBody], file);
  const notebook: Notebook = {
    file,
    version: Number((yaml.data as { winterkeep: unknown }).winterkeep),
    title,
    invented,
    units,
    view,
    farm,
    scenarios,
    overrides,
    diary,
    draws,
    decide,
    blocks: body.blocks,
    weather: body.weather,
    notes: notes.map(({ at, words, todo }) => ({
      what: words,
      file,
      line: yaml.lineOf(at),
      key: at.join('.'),
      todo: todo ?? 'the line may be taken out',
    })),
    text,
    lineOf: yaml.lineOf,
  };
  return inBody.length === 0 ? { ok: true, notebook, problems: [] } : { ...refuse(inBody, file), notebook };
}

function refuse(problems: readonly Problem[], file: string): ReadResult & { readonly ok: false } {
  const sorted = [...problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  const more = sorted.length - MOST_PROBLEMS;
  if (more > 0) sorted.splice(MOST_PROBLEMS, more, { what: `and ${more} more problems`, file });
  return { ok: false, problems: sorted };
}

function versionProblem(
  { data, lineOf }: YamlText,
  file: string,
  migrations: Readonly<Record<number, Migration>>,
): Problem | undefined {
  if (!isPlain(data))
    return {
      what: 'the front matter is not a map of keys',
      file,
      line: 2,
      found: data === null ? 'nothing' : show(data),
      allowed: 'winterkeep, title, farm, scenarios',
    };
  const { winterkeep } = data;
  const oldest = oldestReadable(migrations);
  const place = { file, line: lineOf(['winterkeep']), key: 'winterkeep' };
  const allowed = oldest === FORMAT_VERSION ? String(FORMAT_VERSION) : `${oldest} to ${FORMAT_VERSION}`;
  if (winterkeep === undefined)
    return {
      what: 'the format version is missing',
      ...place,
      line: 2,
      allowed,
      todo: `write winterkeep: ${FORMAT_VERSION} as the first line after ---`,
    };
  if (typeof winterkeep === 'number' && winterkeep > FORMAT_VERSION)
    return {
      what: 'the notebook is written in a newer format than this program knows',
      ...place,
      found: String(winterkeep),
      allowed,
      todo: 'open it with a newer winterkeep',
    };
  if (!Number.isInteger(winterkeep) || (winterkeep as number) < oldest)
    return { what: 'the format version is not known', ...place, found: show(winterkeep), allowed };
  return undefined;
}

interface Completed {
  /** Absent when anything is wrong. */
  readonly parts?: Outer;
  readonly scenarios: readonly Scenario[];
  readonly problems: readonly Problem[];
}

function complete(data: unknown, { lineOf }: YamlText, file: string): Completed {
  const result = outerSchema.safeParse(data);
  const issues = result.success ? [] : result.error.issues;
  const problems = issues
    .slice(0, MOST_PROBLEMS)
    .flatMap((issue) => problemsOf(issue, { schema: outerSchema, data, file, at: [], lineOf }));
  const more = issues.length - MOST_PROBLEMS;
  if (more > 0)
    problems.push({
      what: `and ${more} more places that are wrong`,
      file,
      line: lineOf(issues[MOST_PROBLEMS].path as Path),
    });
  const { farm, scenarios: written } = data as { farm?: unknown; scenarios?: unknown };
  const farmIsSound = !issues.some(({ path }) => path[0] === 'farm');
  // More are refused already; completing them would only take time.
  const completed = (Array.isArray(written) ? written : [])
    .slice(0, MOST_SCENARIOS)
    .map((scenario, index) => toScenario(scenario, { file, index, farm, farmIsSound, lineOf }));
  problems.push(...completed.flatMap((c) => c.problems));
  const scenarios = completed.flatMap((c) => (c.scenario ? [c.scenario] : []));
  return result.success && problems.length === 0
    ? { parts: result.data, scenarios, problems }
    : { scenarios, problems };
}

function scenarioNameProblems(
  blocks: readonly Block[],
  scenarios: readonly Scenario[],
  file: string,
): Problem[] {
  const names = scenarios.map((s) => s.name);
  const unknown = (name: string, line: number, key?: string): Problem[] =>
    names.includes(name)
      ? []
      : [
          {
            what: 'no scenario has this name',
            file,
            line,
            ...(key ? { key } : {}),
            found: `"${name}"`,
            allowed: nearestScenarios(name, names),
          },
        ];
  return blocks.flatMap((block) => {
    if (block.type === 'prose')
      return block.values.flatMap(({ scenario, line }) => (scenario === null ? [] : unknown(scenario, line)));
    if (block.type === 'broken') return [];
    return referencesOf(block.options).scenarios.flatMap(([option, name]) =>
      unknown(name, block.lineOf(option), `${block.kind}.${option}`),
    );
  });
}

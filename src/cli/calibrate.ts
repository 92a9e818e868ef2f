import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type DrawCount, type Scored, scoreCase } from '../calibrate/score.ts';
import { houseCost } from '../study/houseCost.ts';
import { billRows } from '../study/moneyCase.ts';
import { argumentsOf, wholeNumber } from './arguments.ts';
import {
  type Houses,
  housesText,
  inReadme,
  restsCsv,
  restsText,
  scoreCsv,
  scoreJson,
  scoreText,
} from './calibrateText.ts';
import { CASES, openCases } from './cases.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';
import { findRoot } from './readData.ts';
import { type Rests, restsOf } from './rests.ts';
import { writeWhole } from './writeWhole.ts';

export const usage = `calibrate [--format text|json|csv] [--draws N --seed S] [--write]
Holds the model against published measurements, each a notebook in ${CASES} with what was measured beside it, and
says what the spread of the shipped notebooks rests on. --write puts the score into README.md and ${CASES}/score.json.`;

const FORMATS = ['text', 'json', 'csv'] as const;

/** What the score in the README and on the page is made with. */
export const KEPT: DrawCount = { count: 500, seed: 1 };

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values } = argumentsOf(args, usage, 0, 0, {
    format: { type: 'string', default: 'text' },
    draws: { type: 'string', default: String(KEPT.count) },
    seed: { type: 'string', default: String(KEPT.seed) },
    write: { type: 'boolean', default: false },
  });
  const format = FORMATS.find((f) => f === values.format);
  if (!format)
    throw new CommandError(`--format: unknown; found ${values.format}; allowed ${FORMATS.join(', ')}`, 2);
  const draws: DrawCount = {
    count: wholeNumber(values.draws, 'draws', 20, 100_000),
    seed: wholeNumber(values.seed, 'seed', 0, 2 ** 31 - 1),
  };
  if (values.write && (draws.count !== KEPT.count || draws.seed !== KEPT.seed))
    throw new CommandError(
      `--write: the score that is kept is made with ${KEPT.count} draws and seed ${KEPT.seed}; leave --draws and --seed out`,
      2,
    );
  const rows = await scoreAll(draws);
  if (values.write) await write(rows);
  const { rests, houses } = await shippedNotebooks(draws);
  if (format === 'text') out(`${scoreText(rows, draws)}\n${restsText(rests)}\n${housesText(houses)}`);
  else if (format === 'csv') out(`${scoreCsv(rows)}\n${restsCsv(rests)}`);
  else out(`${JSON.stringify({ draws, ...scoreJson(rows), outputs: rows, restsOn: rests }, null, 2)}\n`);
}

/** Every output of every shipped case, scored. */
export async function scoreAll(draws: DrawCount): Promise<Scored[]> {
  return (await openCases()).flatMap((one) => scoreCase(one, draws));
}

/** What the spread of each shipped notebook rests on, and its sheds beside published costs. */
async function shippedNotebooks(draws: DrawCount): Promise<{ rests: Rests[]; houses: Houses[] }> {
  const folder = join(findRoot(), 'notebooks');
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .sort();
  const rests: Rests[] = [];
  const houses: Houses[] = [];
  for (const notebook of names) {
    const { run } = await openNotebook(join(folder, notebook));
    rests.push(restsOf(notebook, run, draws));
    const found = run.results.flatMap((_, k) => houseCost(run, k, billRows(run, k)) ?? []);
    houses.push({ notebook, houses: found });
  }
  return { rests, houses };
}

async function write(rows: readonly Scored[]): Promise<void> {
  const root = findRoot();
  const readme = join(root, 'README.md');
  await writeWhole(readme, inReadme(readFileSync(readme, 'utf8'), rows));
  await writeWhole(join(root, CASES, 'score.json'), `${JSON.stringify(scoreJson(rows), null, 2)}\n`);
}

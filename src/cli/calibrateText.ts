/** The score as a table in a terminal, as CSV, as the block in the README and as the small file the page shows. */
import { CLASSES, type OutputClass, type Scored, type Tally, tally } from '../calibrate/score.ts';
import { SPREAD_BASES } from '../calibrate/spread.ts';
import { type HouseCost, houseWords } from '../study/houseCost.ts';
import { csvLines } from '../tables/csvLines.ts';
import { CommandError } from './error.ts';
import type { Rest, Rests } from './rests.ts';

const CLASS_SAID: Readonly<Record<OutputClass, string>> = {
  independent: 'Measurements the model was not fitted to',
  standard: 'Standards and tables, which nobody measured',
  calibration: 'Studies that rows of the tables were taken from: agreement proves little',
};

/** Three figures that count, without an exponent. */
export const short = (value: number | null): string => {
  if (value === null) return '–';
  if (Math.abs(value) < 1e-9) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(Math.min(digits, 6));
};

export const scoreLine = ({ outputs, studies, pass, near, fail, insideDraws }: Tally): string =>
  `${pass} of ${outputs} pass, ${near} near, ${fail} fail; measured value inside P10–P90 in ${insideDraws} of ${outputs}; ${studies} studies`;

export function scoreText(rows: readonly Scored[], draws: { count: number; seed: number }): string {
  const head = ['output', 'unit', 'measured', 'band', 'model', 'P10–P90', 'verdict', 'in draws'];
  const lines: string[] = [
    `Model against published measurements, ${draws.count} draws, seed ${draws.seed}.`,
    'pass: the model’s best guess lies in the band; near: off it by no more than a quarter of its width, or within',
    '20 % of the measured value; fail: farther off. A band marked * is ours, since the source gives no spread; known',
    'from memory is marked m, quoted second-hand q.',
  ];
  for (const of of CLASSES) {
    const counted = rows.filter((row) => row.class === of);
    if (counted.length === 0) continue;
    lines.push('', `${CLASS_SAID[of]} (${counted.length})`);
    const cells = counted.map((row) => [
      `${row.case}: ${row.output}`,
      row.unit,
      `${short(row.measured)}${row.known === 'from memory' ? ' m' : row.known === 'quoted' ? ' q' : ''}`,
      `${short(row.low)}–${short(row.high)}${row.band === 'ours' ? '*' : ''}`,
      short(row.model),
      `${short(row.p10)}–${short(row.p90)}`,
      row.verdict,
      row.insideDraws ? 'yes' : 'no',
    ]);
    lines.push(...aligned([head, ...cells]), scoreLine(tally(rows, of)));
  }
  const off = rows.filter((row) => row.class === 'independent' && row.verdict === 'fail');
  if (off.length > 0)
    lines.push(
      '',
      'Where to look first',
      ...off.map((row) => `  ${row.case}, ${row.output}: ${row.likelyCause}`),
    );
  lines.push('', `Score: ${scoreLine(tally(rows, 'independent'))}. Calibration and standards apart.`, '');
  return lines.join('\n');
}

function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, k) => Math.max(...rows.map((row) => row[k].length)));
  return rows.map((row) =>
    `  ${row.map((cell, k) => (k < 2 || k > 5 ? cell.padEnd(widths[k]) : cell.padStart(widths[k]))).join('  ')}`.trimEnd(),
  );
}

export function scoreCsv(rows: readonly Scored[]): string {
  const columns = [
    'case', 'source', 'output', 'unit', 'measured', 'low', 'high', 'band', 'known', 'class', 'model', 'p10', 'p90',
    'verdict', 'insideDraws',
  ] as const; // biome-ignore format: one list
  return csvLines([
    columns,
    ...rows.map((row) =>
      columns.map((name) => (name === 'insideDraws' ? (row[name] ? 'yes' : 'no') : row[name])),
    ),
  ]);
}

/** What the page shows, and what a stale README is found by. */
export function scoreJson(rows: readonly Scored[]): Record<OutputClass, Tally> {
  return Object.fromEntries(CLASSES.map((of) => [of, tally(rows, of)])) as Record<OutputClass, Tally>;
}

const BEGIN = '<!-- score: written by npm run calibrate -- --write -->';
const END = '<!-- score: end -->';

/** The README with its block of the score made anew. Throws `CommandError` where the block is not there. */
export function inReadme(readme: string, rows: readonly Scored[]): string {
  const from = readme.indexOf(BEGIN);
  const to = readme.indexOf(END);
  if (from < 0 || to < from)
    throw new CommandError(
      `README.md: no block for the score; put the lines ${BEGIN} and ${END} where it shall stand`,
    );
  return `${readme.slice(0, from)}${BEGIN}\n\n${readmeBlock(rows)}\n\n${readme.slice(to)}`;
}

function readmeBlock(rows: readonly Scored[]): string {
  const by = (of: OutputClass) => tally(rows, of);
  const cell = (text: string) => text.replaceAll('|', '/').replace(/\s+/g, ' ').trim();
  const failed = rows.filter((row) => row.class === 'independent' && row.verdict === 'fail');
  return [
    `**${scoreLine(by('independent'))}.**`,
    '',
    `Apart from these: ${by('calibration').outputs} outputs of studies that rows of the tables were taken from (${by('calibration').pass} pass), and ${by('standard').outputs} figures of standards, which nobody measured (${by('standard').pass} pass).`,
    ...(failed.length === 0
      ? []
      : [
          '',
          'What fails, and where to look first:',
          '',
          '| measured | value (band) | model (P10–P90) | likely cause |',
          '|---|---|---|---|',
          ...failed.map(
            (row) =>
              `| ${cell(`${row.title}: ${row.output}`)} | ${short(row.measured)} (${short(row.low)}–${short(row.high)}) ${cell(row.unit)} | ${short(row.model)} (${short(row.p10)}–${short(row.p90)}) | ${cell(row.likelyCause)} |`,
          ),
        ]),
  ].join('\n');
}

const percent = (share: number) => (Number.isFinite(share) ? `${Math.round(share * 100)} %` : '–');

export function restsText(rests: readonly Rests[]): string {
  const lines = [
    'What the spread rests on, by the basis of each number, one number turned at a time (numbers that move together',
    'count apart); and the share of the draws below the figure by best guesses, 50 % where it stands in their middle.',
  ];
  for (const { notebook, figures } of rests) {
    const cells = figures.map(({ figure, scenario, less, shares, publishedOrDerived, centreAt }) => [
      `${figure}, ${scenario}${less === undefined ? '' : ` less ${less}`}`,
      percent(publishedOrDerived),
      ...SPREAD_BASES.map((basis) => percent(shares[basis])),
      percent(centreAt),
    ]);
    const head = ['figure', 'published or derived', ...SPREAD_BASES, 'draws below centre'];
    const rows = [head, ...cells];
    const widths = head.map((_, k) => Math.max(...rows.map((row) => row[k].length)));
    lines.push(
      '',
      notebook,
      ...rows.map(
        (row) => `  ${row.map((c, k) => (k === 0 ? c.padEnd(widths[k]) : c.padStart(widths[k]))).join('  ')}`,
      ),
    );
  }
  lines.push('', 'Published or derived, mean over the scenarios or pairs of each notebook');
  for (const { notebook, figures } of rests) {
    const kindOf = ({ figure, less }: Rest) => `${less === undefined ? '' : 'difference in '}${figure}`;
    const kinds = [...new Set(figures.map(kindOf))];
    const mean = (kind: string) => {
      const of = figures.filter((figure) => kindOf(figure) === kind);
      return of.reduce((sum, { publishedOrDerived }) => sum + publishedOrDerived, 0) / of.length;
    };
    const said = kinds.filter((kind) => /nitrogenKeptKg|netCost$/.test(kind));
    lines.push(`  ${notebook}: ${said.map((kind) => `${kind} ${percent(mean(kind))}`).join(', ')}`);
  }
  return `${lines.join('\n')}\n`;
}

export interface Houses {
  readonly notebook: string;
  readonly houses: readonly HouseCost[];
}

/** The bill of each shipped shed beside published costs of its kind. */
export function housesText(all: readonly Houses[]): string {
  const lines = all.flatMap(({ notebook, houses }) =>
    houses.map((house) => `  ${notebook}, ${house.name}: ${houseWords(house)}`),
  );
  return ['Sheds beside published costs', ...lines, ''].join('\n');
}

export function restsCsv(rests: readonly Rests[]): string {
  return csvLines([
    ['notebook', 'figure', 'scenario', 'less', 'publishedOrDerived', ...SPREAD_BASES, 'centreAt'],
    ...rests.flatMap(({ notebook, figures }) =>
      figures.map((f) => [
        notebook,
        f.figure,
        f.scenario,
        f.less,
        f.publishedOrDerived,
        ...SPREAD_BASES.map((basis) => f.shares[basis]),
        f.centreAt,
      ]),
    ),
  ]);
}

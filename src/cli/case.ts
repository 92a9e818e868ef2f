import { mkdir, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { paperDocument } from '../paper/document.ts';
import { caseDrawings } from '../paper/drawings.ts';
import { dayText, type Report } from '../paper/report.ts';
import { csvText } from '../paper/sheets.ts';
import { caseTables } from '../paper/tables.ts';
import { chanceWords } from '../uncertainty/chances.ts';
import { argumentsOf, wholeNumber } from './arguments.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';
import { paperReport } from './paper.ts';
import { printPdf } from './pdf.ts';
import { workbook } from './tableFiles.ts';
import { notWritten, writeWhole } from './writeWhole.ts';

export const usage = `case FILE [--scenario NAME] [--baseline NAME] [--out case.pdf] [--paper a4|letter]
     [--tables DIR] [--draws N --seed S]
Writes the lender's paper as PDF, or as HTML when --out ends in .html; with --tables also .xlsx, .csv and .svg.
Draws are the notebook's own unless --draws and --seed say otherwise.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 1, 1, {
    scenario: { type: 'string' },
    baseline: { type: 'string' },
    out: { type: 'string', default: 'case.pdf' },
    paper: { type: 'string', default: 'a4' },
    tables: { type: 'string' },
    draws: { type: 'string' },
    seed: { type: 'string' },
  });
  const paper = (['a4', 'letter'] as const).find((size) => size === values.paper.toLowerCase());
  if (!paper) throw new CommandError(`--paper: unknown; found ${values.paper}; allowed a4, letter`, 2);
  const ending = /\.(pdf|html)$/i.exec(values.out)?.[1].toLowerCase();
  if (!ending) throw new CommandError(`--out: the name must end in .pdf or .html; found ${values.out}`, 2);
  const draws = values.draws === undefined ? {} : { draws: wholeNumber(values.draws, 'draws', 0, 100_000) };
  const seed = values.seed === undefined ? {} : { seed: wholeNumber(values.seed, 'seed', 0, 2 ** 31 - 1) };
  // Known before the work is done, and before tables are written that would lack their paper.
  const folder = await stat(dirname(values.out)).catch(() => undefined);
  if (!folder?.isDirectory()) throw new CommandError(notWritten(values.out, 'ENOENT'));
  const opened = await openNotebook(positionals[0]);
  const report = await paperReport(opened, {
    ...(values.scenario === undefined ? {} : { scenario: values.scenario }),
    ...(values.baseline === undefined ? {} : { baseline: values.baseline }),
    ...draws,
    ...seed,
    day: dayText(new Date().toISOString()),
  });
  if (values.tables !== undefined) await writeTables(report, values.tables, out);
  const html = paperDocument(report, paper);
  if (ending === 'html') {
    await writeWhole(values.out, html);
    out(written(values.out, report));
    return;
  }
  const printed = await printPdf(html);
  if ('pdf' in printed) {
    await writeWhole(values.out, printed.pdf);
    out(written(values.out, report));
    return;
  }
  const beside = values.out.replace(/\.pdf$/i, '.html');
  await writeWhole(beside, html);
  throw new CommandError(
    `${values.out}: not written, since ${printed.why}; wrote ${beside} instead: open it in any browser and print it, or set CHROMIUM_PATH to a Chromium`,
  );
}

/** Where the paper is, and how surely its case holds. */
function written(file: string, { proposal: { result, index }, chances }: Report): string {
  const drawn = chances(index);
  const said = drawn ? chanceWords(drawn) : '';
  return `${file}: the case for “${result.name}”${said === '' ? '' : `; ${said}`}\n`;
}

async function writeTables(report: Report, folder: string, out: (text: string) => void): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new CommandError(
      `--tables: no folder can be made at ${folder} (${(error as NodeJS.ErrnoException).code})`,
    );
  }
  const tables = caseTables(report);
  await writeWhole(join(folder, 'case.xlsx'), await workbook(tables));
  for (const table of tables)
    await writeWhole(join(folder, `${table.name.replace(/ /g, '-')}.csv`), csvText(table));
  for (const [name, svg] of caseDrawings(report)) await writeWhole(join(folder, `${name}.svg`), svg);
  out(
    `${folder}: case.xlsx, ${tables.map(({ name }) => `${name.replace(/ /g, '-')}.csv`).join(', ')}, figures as .svg\n`,
  );
}

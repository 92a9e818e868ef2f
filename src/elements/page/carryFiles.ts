/** The whole notebook's figures as files, gathered as the commands gather them. Fetched when first asked for. */
import writeExcelFile from 'write-excel-file/browser';
import type { Notebook } from '../../notebook/read.ts';
import {
  allBands,
  type Compared,
  checksTable,
  comparisonJson,
  comparisonTable,
} from '../../paper/comparison.ts';
import { paperDocument } from '../../paper/document.ts';
import { type Answerer, gather } from '../../paper/gather.ts';
import { dayText } from '../../paper/report.ts';
import { csvText, sheetsOf } from '../../paper/sheets.ts';
import { caseTables } from '../../paper/tables.ts';
import { type Run, withBands } from '../../study/evaluate.ts';
import { proposalOf } from '../../study/moneyCase.ts';

export type Form = 'xlsx' | 'csv' | 'json' | 'html';

export interface Carrying {
  readonly notebook: Notebook;
  readonly run: Run;
  readonly answers: Answerer;
}

const TYPES: Readonly<Record<Exclude<Form, 'xlsx'>, string>> = {
  csv: 'text/csv',
  json: 'application/json',
  html: 'text/html',
};

/** What the notebook's own case is of, where it has one. */
function proposed({ blocks }: Notebook, run: Run): number {
  const cell = blocks.find((block) => block.type === 'cell' && block.kind === 'case');
  const named = cell?.type === 'cell' && cell.kind === 'case' ? cell.options.scenario : undefined;
  const index = proposalOf(run, named);
  return index < 0 ? proposalOf(run) : index;
}

/** Ranges are the same for every form, and take seconds to draw. */
const drawn = new WeakMap<Run, NonNullable<Awaited<ReturnType<typeof allBands>>>>();

async function compared({ notebook, run, answers }: Carrying): Promise<Compared | undefined> {
  const bands = drawn.get(run) ?? (await allBands(run, notebook.draws, answers.draws));
  if (bands) drawn.set(run, bands);
  return bands && { currency: run.currency, scenarios: withBands(run.results, run.bound, bands) };
}

const reported = ({ notebook, run, answers }: Carrying) =>
  gather({ notebook, run, index: proposed(notebook, run), day: dayText(new Date().toISOString()) }, answers);

/** The file; undefined where it was stopped. */
export async function carried(form: Form, from: Carrying): Promise<Blob | undefined> {
  if (form === 'html') {
    const report = await reported(from);
    return report && new Blob([paperDocument(report, 'a4')], { type: TYPES.html });
  }
  const all = await compared(from);
  if (!all) return undefined;
  if (form === 'json') return new Blob([comparisonJson(from.notebook.file, all)], { type: TYPES.json });
  if (form === 'csv') return new Blob([csvText(comparisonTable(all))], { type: TYPES.csv });
  const report = await reported(from);
  if (!report) return undefined;
  return writeExcelFile(sheetsOf([comparisonTable(all), checksTable(all), ...caseTables(report)])).toBlob();
}

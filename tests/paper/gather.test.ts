/**
 * One paper, two ways to it: the page's way (the store opens the text, a worker answers over a channel) and the
 * command's (a file opened, answered in this thread) must not differ in a single text.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openNotebook as openFile, shippedTables } from '../../src/cli/open.ts';
import { paperReport } from '../../src/cli/paper.ts';
import { answerBy } from '../../src/elements/parts/paperAnswers.ts';
import { notebookWinters } from '../../src/model/weather/notebookWinters.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { answerLines } from '../../src/paper/answers.ts';
import { paperDocument } from '../../src/paper/document.ts';
import { caseDrawings } from '../../src/paper/drawings.ts';
import { gather, movesQuestion } from '../../src/paper/gather.ts';
import { type Report, reportFrom } from '../../src/paper/report.ts';
import { caseTables } from '../../src/paper/tables.ts';
import { moneyCase, proposalOf } from '../../src/study/moneyCase.ts';
import { type Explorer, type ExplorerPort, openExplorer } from '../../src/worker/explorer.ts';
import type { Port } from '../../src/worker/protocol.ts';
import { serve } from '../../src/worker/serve.ts';
import { shipped } from '../notebook/shipped.ts';
import { type OpenNotebook, openNotebook as openText } from '../openNotebook.ts';

const DAY = '1 January 2026';
const closing: (() => void)[] = [];
afterEach(() => {
  for (const close of closing.splice(0)) close();
});

/** A worker's two ends in this thread: what is sent is cloned as it is for a worker. */
function worker(): Explorer {
  const { port1, port2 } = new MessageChannel();
  serve(port2 as unknown as Port);
  port2.start();
  const explorer = openExplorer(port1 as unknown as ExplorerPort);
  closing.push(() => {
    explorer.close();
    port2.close();
  });
  return explorer;
}

async function onPage(file: string, explorer: Explorer): Promise<OpenNotebook> {
  const open = openText(readFileSync(file, 'utf8'), file, {
    tables: shippedTables(),
    read: readNotebook,
    winters: ({ scenarios }) =>
      notebookWinters(scenarios, file, async (name) =>
        readFileSync(`data/weather/${name.replace(/^.*\//, '')}`, 'utf8'),
      ),
    explorer,
  });
  closing.push(() => open.close());
  await expect.poll(() => open.draws.value?.count, { timeout: 50_000 }).toBe(600);
  expect(open.problems.value).toEqual([]);
  return open;
}

/** Every text of paper, files and figures, one by one. */
function texts(report: Report): string[] {
  return [
    ...paperDocument(report, 'a4').split(/(?=<)/),
    ...caseTables(report).flatMap(({ name, head, rows }) => [name, ...head, ...rows.flat().map(String)]),
    ...[...caseDrawings(report)].flatMap(([name, svg]) => [name, ...svg.split(/(?=<)/)]),
  ];
}

/** A shipped notebook with few draws of its own, so that the ways to the paper and not the draws take the time. */
function withFewDraws(file: string, text: string): string {
  const own = 'draws: { count: 600, seed: 5 }';
  const few = /^draws:.*$/m.test(text)
    ? text.replace(/^draws:.*$/m, own)
    : text.replace(/^winterkeep: 1$/m, `winterkeep: 1\n${own}`);
  const path = join(mkdtempSync(join(tmpdir(), 'winterkeep-paper-')), file);
  writeFileSync(path, few);
  return path;
}

const named = (text: string) => /```case\s+scenario: (.+)/.exec(text)?.[1];

describe.each(shipped)('the paper of $file', ({ file, text }) => {
  it('is the same from the page and from the command, and its lines are those on the page', async () => {
    const scenario = named(text);
    const path = withFewDraws(file, text);
    const explorer = worker();
    const open = await onPage(path, explorer);
    const { notebook: { value: notebook }, run: { value: run } } = open; // biome-ignore format: one line
    if (!notebook || !run) throw new Error(`${file} was not opened`);
    const index = proposalOf(run, scenario);
    const answers = answerBy(explorer, run, { draws: 'paper draws', moves: 'paper moves' });
    const page = (await gather({ notebook, run, index, day: DAY }, answers)) as Report;
    const command = await paperReport(await openFile(path), {
      ...(scenario === undefined ? {} : { scenario }),
      day: DAY,
    });
    expect(texts(command).length).toBeGreaterThan(2000);
    expect(texts(page)).toEqual(texts(command));

    const proposal = moneyCase(run, index);
    const moves = await answers.moves(movesQuestion(proposal));
    if (!moves) throw new Error('the worker did not answer');
    const shown = reportFrom(notebook, run, proposal, {
      ...moves,
      results: open.results.value,
      ...(open.draws.value ? { draws: open.draws.value } : {}),
      day: DAY,
    });
    expect(answerLines(shown)).toEqual(answerLines(command));
  });
});

it('keeps to the notebook’s own draws, and to others when they are asked for', async () => {
  const opened = await openFile('notebooks/coast-lender-case.md');
  const { count, seed } = opened.notebook.draws;
  const own = await paperReport(opened, { day: DAY });
  expect([own.draws?.count, own.draws?.seed]).toEqual([count, seed]);
  const asked = await paperReport(opened, { day: DAY, draws: 40, seed: seed + 1 });
  expect([asked.draws?.count, asked.draws?.seed]).toEqual([40, seed + 1]);
  expect(texts(asked)).not.toEqual(texts(own));
  expect((await paperReport(opened, { day: DAY, draws: 0 })).draws).toBeUndefined();
});

/** Page one against its own figures worked out again, and the faults it is known to have had. */
import { readFileSync } from 'node:fs';
import { quantile } from 'simple-statistics';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openNotebook } from '../../src/cli/open.ts';
import { paperReport } from '../../src/cli/paper.ts';
import type { Note } from '../../src/notebook/noteSchema.ts';
import { answerLines, heaviestYears } from '../../src/paper/answers.ts';
import { budgetOf } from '../../src/paper/budget.ts';
import { paperDocument } from '../../src/paper/document.ts';
import type { Report } from '../../src/paper/report.ts';
import { evaluateBound } from '../../src/study/evaluate.ts';
import { withChanges } from '../../src/study/rows.ts';
import { needsOf } from '../../src/whatif/needs.ts';

const LENDER = 'notebooks/coast-lender-case.md';
const plain = (text: string) => text.replace(/\s+/gu, ' ');
const said = (report: Report, head: string) =>
  plain(answerLines(report).find((line) => line.head === head)!.words);
const grouped = (value: number) => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ' ');

let opened: Opened;
let report: Report;
let slats: Report;
beforeAll(async () => {
  opened = await openNotebook(LENDER);
  report = await paperReport(opened, { day: '1 January 2026', draws: 500 });
  slats = await paperReport(opened, { day: '1 January 2026', draws: 500, scenario: 'Slats' });
}, 60_000);

describe('notes of readers', () => {
  const on = { kind: 'page', section: 'answer' } as const;
  const by = { by: 'Lender <b>', when: '2026-11-26T08:00:00.000Z' };
  const withNotes = (readerNotes: readonly Note[]) =>
    plain(paperDocument({ ...report, notebook: { ...report.notebook, readerNotes } }, 'a4'));
  it('stand at the end of the paper, with who wrote them, when and on what, as words', () => {
    const text = withNotes([
      { id: 'aaaa', on, ...by, text: 'Is <script> that with the grant?' },
      { id: 'bbbb', on: { kind: 'note', id: 'aaaa' }, by: 'Keeper', when: by.when, text: 'Yes.' },
      {
        id: 'cccc',
        on: { kind: 'number', quantity: 'netCost', scenario: 'Slats' },
        ...by,
        text: 'Why so low?',
      },
    ]);
    const at = text.indexOf('<h2>Notes of readers</h2>');
    expect(at).toBeGreaterThan(text.lastIndexOf('<h2>To be added by hand</h2>'));
    const said = text
      .slice(at)
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ');
    expect(said).toContain(
      'On the answer: Lender &lt;b&gt; , 26 November 2026: Is &lt;script&gt; that with the grant?',
    );
    expect(said).toContain('Keeper , 26 November 2026: Yes.');
    expect(said).toContain('On net cost a year, Slats: Lender');
  });
  it('that were taken out stand only where they were answered, and no section stands without any', () => {
    const gone = { id: 'aaaa', on, ...by, text: '' };
    expect(withNotes([gone])).not.toContain('Notes of readers');
    expect(withNotes([])).not.toContain('Notes of readers');
    const answer = { id: 'bbbb', on: { kind: 'note', id: 'aaaa' } as const, ...by, text: 'Still so.' };
    expect(withNotes([gone, answer])).toContain('taken out.');
  });
});

describe('the years in which the loans take most', () => {
  const years = (...payments: number[]) =>
    payments.map((payment, k) => ({ year: k + 1, interest: -payment / 4, principal: (-payment * 3) / 4 }));
  it.each([
    [years(10, 20, 5807, 4000), 'in year 3 only'],
    [years(10, 50, 50, 50, 0), 'in years 2 to 4'],
    [years(50, 10, 50), 'in years 1 and 3'],
  ])('are those they fall in', (of, words) => expect(heaviestYears(of)).toBe(words));
});

describe('page one', () => {
  it('answers in five lines', () => {
    expect(answerLines(report).map(({ head }) => head)).toEqual([
      'What is asked',
      'What it does to cash',
      'Is the payment covered',
      'What would make it pay',
      'What was left out',
    ]);
    expect(said(report, 'What it does to cash')).toContain('a year, in years 2 to 15;');
  });

  it('budgets at P80 of the draws, the unforeseen being that less the lines', () => {
    const { draws, proposal } = report;
    const cash = Array.from(
      { length: 500 },
      (_, d) => draws!.results.capitalCash![d * draws!.scenarios + proposal.index],
    );
    const { lines, unforeseen, cash: budget, own, gap } = budgetOf(report);
    expect(budget).toBeGreaterThanOrEqual(quantile(cash, 0.79));
    expect(budget).toBeLessThanOrEqual(quantile(cash, 0.81));
    const bill = proposal.bill.filter((line) => !line.own).reduce((sum, { amount }) => sum + amount!, 0);
    expect(lines).toBeCloseTo(bill, 2);
    expect(lines! + unforeseen!).toBeCloseTo(budget!, 6);
    expect(own! + gap! + 195_000 + 40_000).toBeCloseTo(budget!, 6);
    for (const figure of [budget!, unforeseen!, lines!])
      expect(said(report, 'What is asked')).toContain(`CAD ${grouped(figure)}`);
  });

  it('has one figure of own money', () => {
    const text = plain(paperDocument(report, 'a4').replace(/<[^>]*>/g, ' '));
    const found = [...text.matchAll(/own money(?: of)? (?:CAD )?(\d[\d ]*\d)/gi)].map((m) => m[1]);
    expect(found.length).toBeGreaterThanOrEqual(2);
    expect([...new Set(found)]).toEqual([grouped(budgetOf(report).own!)]);
  });

  it('sets nothing aside where no draws say how much', async () => {
    const none = await paperReport(opened, { day: '1 January 2026', draws: 0 });
    expect(budgetOf(none)).toMatchObject({ unforeseen: null, cash: none.proposal.result.values.capitalCash });
    expect(said(none, 'Is the payment covered')).not.toContain('of 100 draws');
  });

  it('says how much each head would have to bring for the works to be even', () => {
    const { result, finance } = report.proposal;
    const more = Number(
      /It needs CAD (\d[\d ]*) more for each head/
        .exec(said(report, 'What would make it pay'))![1]
        .replace(/ /g, ''),
    );
    const { interestRate, inflation, horizonYears } = result.scenario.farm.money;
    let factor = 0;
    for (let year = 1; year <= horizonYears; year++) factor += ((1 + inflation) / (1 + interestRate)) ** year;
    const needed = -finance.difference!.netPresentValue.value! / factor / result.values.headCount!;
    expect(more).toBe(Math.ceil(needed));
  });

  it('says down to what income the payment is met', () => {
    const { headCount, operatingCashCost, loanPayment } = report.proposal.result.values;
    expect(said(report, 'Is the payment covered')).toContain(
      `as long as the herd brings CAD ${grouped((operatingCashCost! + loanPayment!) / headCount!)} a head and year`,
    );
  });
});

describe('what would make it pay', () => {
  it('is true: at each level the scenario is worth as much as its baseline, and on its sides it is not', () => {
    const { run } = opened;
    const index = slats.proposal.index;
    const found = needsOf(run, index, 0, run.results[index].values.capitalCost!);
    expect(found.map(({ kind }) => kind).sort()).toEqual(['feed', 'feed', 'hour', 'works']);
    for (const need of found) {
      expect(need.at, need.label).not.toBeNull();
      const column = { works: `capitalGiven@${index}`, hour: 'labourPricePerHour' }[need.kind as string];
      const name =
        column ?? [...run.bound[index].bindings.values()].find(({ label }) => label === need.label)!.column;
      const gain = (value: number) => {
        const { bound, weather, weatherIndex } = withChanges(run, new Map([[name, value]]));
        const turned = evaluateBound(bound, run.tables, weather, weatherIndex);
        return turned.results[index].finance.difference!.netPresentValue.value!;
      };
      expect(Math.abs(gain(need.at!)), need.label).toBeLessThan(1);
      expect(gain(need.at! * 0.9) > 0, need.label).not.toBe(gain(need.at! * 1.1) > 0);
    }
  }, 60_000);

  it('is said from where things stand', () => {
    expect(said(slats, 'What would make it pay')).toMatch(
      /It (pays|stops paying), each alone, if .*the works cost (less|more) than CAD/,
    );
    expect(said(report, 'What would make it pay')).toContain('No price of barley straw');
  });
});

it('names no machine word on page one', () => {
  for (const { words } of answerLines(report)) expect(words).not.toMatch(/NaN|undefined|null|[a-z][A-Z]/);
  expect(readFileSync(LENDER, 'utf8')).toContain('invented: true');
});

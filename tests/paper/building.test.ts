/** The building on paper: both sheds drawn, the bill with its spans and budget, what stands behind its money, the timber. */
import { quantile } from 'simple-statistics';
import { beforeAll, describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { paperReport } from '../../src/cli/paper.ts';
import { paperDocument } from '../../src/paper/document.ts';
import { caseDrawings } from '../../src/paper/drawings.ts';
import type { Report } from '../../src/paper/report.ts';
import { guessed, restsOn } from '../../src/paper/summary.ts';
import { caseTables } from '../../src/paper/tables.ts';
import { houseCost, houseWords } from '../../src/study/houseCost.ts';
import { drawsOf } from '../../src/uncertainty/percentiles.ts';
import { EUR_PER, SCOPE } from '../reference/buildingCosts.ts';

let report: Report;
let paper: string;
beforeAll(async () => {
  const opened = await openNotebook('notebooks/coast-lender-case.md');
  report = await paperReport(opened, { day: '1 January 2026', draws: 300, scenario: 'Slats' });
  paper = paperDocument(report, 'a4');
}, 120_000);

const tableNamed = (name: string) => caseTables(report).find((table) => table.name === name)!;
const column = (table: ReturnType<typeof tableNamed>, head: string) => table.head.indexOf(head);

describe('the drawings', () => {
  it('show the proposal and the other shed, each once, in section and plan', () => {
    expect([...paper.matchAll(/<figure class="section">/g)]).toHaveLength(4);
    expect(paper).toContain('“Slats”: the shed cut across, to scale');
    expect(paper).toContain('“Deep bed”: the shed from above, to scale');
    expect(paper).not.toContain('“Deep bed, no grant”: the shed');
    expect(paper).toMatch(/<path data-part="tank"/);
    expect(paper).toContain('Slurry gas kills: stock and people out before a tank is stirred.');
  });
  it('lie beside the tables as files', () => {
    const names = [...caseDrawings(report).keys()];
    for (const k of [2, 3, 4]) expect(names).toEqual(expect.arrayContaining([`section-${k}`, `plan-${k}`]));
  });
});

describe('the bill', () => {
  it('has the middle and P10 to P90 of each line and sum, and its budget at P80', () => {
    const bill = tableNamed('bill');
    const at = (label: string) => bill.rows.find(([line]) => line === label)!;
    const tank = drawsOf(report.draws!, 'costTank', report.proposal.index);
    const [low, high] = [column(bill, 'amount p10'), column(bill, 'amount p90')];
    expect(at('tank or channel under the slats')[low]).toBeCloseTo(quantile([...tank], 0.1), -3);
    expect(at('tank or channel under the slats')[high]).toBeCloseTo(quantile([...tank], 0.9), -3);
    const cash = drawsOf(report.draws!, 'capitalCash', report.proposal.index);
    const amount = column(bill, 'amount');
    const budget = at('budget in cash, P80')[amount] as number;
    expect(Math.abs(budget / quantile([...cash], 0.8) - 1)).toBeLessThan(0.005);
    // Unforeseen and lines make the budget, to the cent.
    expect(at('unforeseen, in cash: P80 less the lines')[amount] as number).toBeCloseTo(
      budget - (at('in cash')[amount] as number),
      2,
    );
    expect(paper).toContain('P10 to P90');
  });

  it('says what share of the money, not of the lines, rests on dated quotes', () => {
    const { bill } = report.proposal;
    const whole = bill.reduce((sum, { amount }) => sum + amount!, 0);
    const tank = bill.find(({ id }) => id === 'tank')!;
    const with_ = (because: string) =>
      bill.map((row) => (row === tank ? { ...row, basis: 'own quote' as const, because } : row));
    expect(restsOn(with_('builder in town, March 2026'))!.dated).toBeCloseTo(tank.amount! / whole, 9);
    expect(restsOn(with_('builder in town'))).toMatchObject({ dated: 0 });
    expect(restsOn(with_('builder in town'))!.undated).toBeCloseTo(tank.amount! / whole, 9);
    expect(guessed(with_('builder in town, March 2026'))).toContain(
      `${Math.round((tank.amount! / whole) * 100)} % rests on dated quotes`,
    );
    expect(paper).toContain(guessed(bill));
  });

  it('stands beside published costs, worked again from its lines', () => {
    const { run, proposal: { bill, index } } = report; // biome-ignore format: one line
    const house = houseCost(run, index, bill)!;
    const rows = bill.filter(({ id }) => !SCOPE.some((left) => left === id));
    const cost = rows.reduce((sum, { amount }) => sum + amount!, 0);
    expect(house.perM2).toBeCloseTo(cost / 384, 6);
    // 200 of 384 m² are slats: the listed 277.72 EUR, and 200.57 for the rest.
    expect(house.listPerM2).toBeCloseTo((200 * 277.72 + 184 * 200.57) / 384 / EUR_PER.CAD, 6);
    expect(houseWords(house)).toContain(
      `the house is ${Math.round((house.perM2 / house.listPerM2 - 1) * 100)} % above the list`,
    );
    expect(paper).toContain('Beside published costs');
  });

  it('lists the timber for the saw, which is the timber it prices', () => {
    const timber = tableNamed('timber');
    const volumes = timber.rows.map((row) => [row[0], row[column(timber, 'volume m3')] as number] as const);
    const sum = volumes.findIndex(([part]) => part === 'timber of the bill');
    const listed = volumes.slice(0, sum).reduce((all, [, m3]) => all + m3, 0);
    expect(listed).toBeCloseTo(volumes[sum][1], 2);
    const [line] = report.proposal.bill.filter(({ id }) => id === 'timberBought');
    expect(line.quantity).toBeCloseTo(volumes[sum][1], 2);
    expect(line.amount!).toBeCloseTo(listed * line.unitPrice!, -1);
    expect(paper).toContain('must be graded by a person licensed to do it where the rules ask for grades');
  });
});

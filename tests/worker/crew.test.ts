// Long work shared among workers gives what one worker gives, to the bit, and goes on when others are lost.
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { type Explorer, type ExplorerPort, openExplorer } from '../../src/worker/explorer.ts';
import type { Request } from '../../src/worker/job.ts';
import type { Port, ToServer } from '../../src/worker/protocol.ts';
import { serve } from '../../src/worker/serve.ts';
import { farm } from '../farm.ts';

let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});

const open: (() => void)[] = [];
afterEach(() => {
  for (const close of open.splice(0)) close();
});

interface Team {
  readonly explorer: Explorer;
  readonly lead: MessagePort;
  /** What the lead asked of each of the others. */
  readonly asked: ToServer[][];
}

/** A lead and others in this thread, joined by real channels; `deaf` others take questions and never answer. */
function team(others: number, deaf = false): Team {
  const front = new MessageChannel();
  serve(front.port2 as unknown as Port);
  front.port2.start();
  const asked: ToServer[][] = [];
  const ports = Array.from({ length: others }, () => {
    const { port1, port2 } = new MessageChannel();
    const heard: ToServer[] = [];
    asked.push(heard);
    port1.addEventListener('message', ({ data }) => heard.push(data));
    if (!deaf) serve(port1 as unknown as Port);
    port1.start();
    open.push(() => port1.close());
    return port2;
  });
  if (others > 0) front.port1.postMessage({ say: 'crew', ports }, ports);
  const port: ExplorerPort = {
    postMessage: (message) => front.port1.postMessage(message),
    addEventListener: (type, listener) => front.port1.addEventListener(type, listener as EventListener),
    start: () => front.port1.start(),
    close: () => front.port1.close(),
  };
  const explorer = openExplorer(port);
  open.push(() => explorer.close());
  return { explorer, lead: front.port1, asked };
}

const COUNT = 2_701;
const REQUESTS = [
  { kind: 'draws', count: COUNT, seed: 7, keep: ['netCost', 'nitrogenKeptKg', 'slurryM3'] },
  { kind: 'rank', measure: 'netCost', top: 5, count: COUNT, seed: 3 },
  {
    kind: 'doubt',
    measures: [{ name: 'netCost', better: 'less', weight: 1 }],
    first: 0,
    second: 1,
    count: COUNT,
    seed: 1,
  },
] as const satisfies readonly Request[];
const changes = new Map([
  ['rainFactor', 1.3],
  ['labourPricePerHour', 21],
]);

describe('long work shared among workers', { timeout: 120_000 }, () => {
  it.each(REQUESTS)('of kind $kind is the same to the bit for one to four', async (request) => {
    const answers = [];
    for (const others of [0, 1, 2, 3]) {
      const { explorer, asked } = team(others);
      answers.push(await explorer.ask({ slot: 'a', setting: run, request, changes }));
      // They did have a share, else this would hold for nothing.
      expect(asked.map((heard) => heard.filter(({ say }) => say === 'ask').length)).toEqual(
        Array.from({ length: others }, () => 1),
      );
    }
    for (const answer of answers.slice(1)) expect(answer).toEqual(answers[0]);
  });

  it('begins each share where the one before ends', () => {
    const whole = drawAll(run, { count: 3_000, seed: 5, keep: ['netCost'] });
    for (const [from, count] of [
      [0, 1],
      [1, 1_030],
      [1_024, 1],
      [2_047, 953],
    ]) {
      const { results } = drawAll(run, { from, count, seed: 5, keep: ['netCost'] });
      expect(results.netCost).toEqual(whole.results.netCost.slice(from * 3, (from + count) * 3));
    }
  });

  it('keeps few draws to the lead', async () => {
    const { explorer, asked } = team(2);
    await explorer.ask({ slot: 'a', setting: run, request: { ...REQUESTS[0], count: 300 } });
    expect(asked.flat()).toEqual([]);
  });

  it('is told a setting anew when the others have let go of it', async () => {
    const { explorer, asked } = team(1);
    // Copies are settings of their own; the first comes again at the end.
    const settings = [run, ...Array.from({ length: 5 }, () => ({ ...run, bound: [...run.bound] })), run];
    for (const setting of settings) {
      const request = { ...REQUESTS[0], count: 2_500 };
      expect((await explorer.ask({ slot: 'a', setting, request }))?.draws.count).toBe(2_500);
    }
    expect(asked[0].filter(({ say }) => say === 'setting').length).toBe(7);
  });

  it('goes on alone when the others are lost while it waits', async () => {
    const { explorer, lead, asked } = team(2, true);
    const answer = explorer.ask({ slot: 'a', setting: run, request: REQUESTS[0] });
    while (asked.some((heard) => heard.length < 2)) await new Promise((resume) => setTimeout(resume, 5));
    lead.postMessage({ say: 'crew', ports: [] });
    expect((await answer)?.draws.results).toEqual(drawAll(run, REQUESTS[0]).results);
    // And the next one does not ask them.
    expect((await explorer.ask({ slot: 'a', setting: run, request: REQUESTS[0] }))?.draws.count).toBe(COUNT);
  });

  it('stops the others when something newer is asked, which need not wait for them', async () => {
    const { explorer, asked } = team(2, true);
    const first = explorer.ask({ slot: 'a', setting: run, request: REQUESTS[0] });
    while (asked.some((heard) => heard.length < 2)) await new Promise((resume) => setTimeout(resume, 5));
    const few = { ...REQUESTS[0], count: 100 };
    const second = await explorer.ask({ slot: 'a', setting: run, request: few });
    expect(await first).toBeUndefined();
    expect(second?.draws.results).toEqual(drawAll(run, few).results);
    while (asked.some((heard) => heard.at(-1)?.say !== 'stop'))
      await new Promise((resume) => setTimeout(resume, 5));
  });
});

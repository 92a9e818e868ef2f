import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { type Explorer, type ExplorerPort, openExplorer } from '../../src/worker/explorer.ts';
import { type Request, work } from '../../src/worker/job.ts';
import type { Port, ToServer } from '../../src/worker/protocol.ts';
import { serve } from '../../src/worker/serve.ts';
import { farm, winterOf } from '../farm.ts';
import { startWork } from '../workedMs.ts';

let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});

/** Runs a job to its end and counts its steps. */
function finish(request: Request) {
  const job = work(run, request);
  const steps: number[] = [];
  for (let step = job.next(); ; step = job.next()) {
    if (step.done) return { answer: step.value, steps };
    steps.push(step.value);
  }
}

const REQUESTS: readonly Request[] = [
  { kind: 'draws', count: 2_500, seed: 1, keep: ['netCost'] },
  { kind: 'sweep', over: 'rainFactor', steps: 5, names: ['netCost'] },
  { kind: 'grid', over: 'rainFactor', across: 'headCount', steps: 5, names: ['netCost'] },
  { kind: 'flips', over: 'labourPricePerHour', measure: 'netCost', first: 0, second: 1 },
  { kind: 'winters', winters: [winterOf(1), winterOf(2)], names: ['netCost'] },
  { kind: 'rank', measure: 'netCost', top: 5, count: 500, seed: 1 },
  { kind: 'overtakes', measures: [{ name: 'netCost', better: 'less', weight: 1 }] },
  {
    kind: 'doubt',
    measures: [{ name: 'netCost', better: 'less', weight: 1 }],
    first: 0,
    second: 1,
    count: 500,
    seed: 1,
  },
];

describe('a job', () => {
  it.each(REQUESTS)('of kind $kind goes in steps from 0 to 1 and its answer can be cloned', (request) => {
    const { answer, steps } = finish(request);
    expect(steps.length).toBeGreaterThan(0);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    expect(Math.max(...steps)).toBeLessThanOrEqual(1);
    expect(structuredClone(answer)).toEqual(answer);
  });

  it('is null for an input that is not there', () => {
    expect(finish({ kind: 'sweep', over: 'rain', steps: 5, names: ['netCost'] }).answer).toBeNull();
  });
});

describe('the explorer', () => {
  const open: Explorer[] = [];
  /** Both ends in this thread, joined by a real channel: what is sent is cloned as it is for a worker. */
  function pair(now?: () => number): { explorer: Explorer; sent: ToServer[] } {
    const { port1, port2 } = new MessageChannel();
    serve(port2 as unknown as Port);
    port2.start();
    const sent: ToServer[] = [];
    const spy: ExplorerPort = {
      postMessage: (message) => {
        sent.push(message as ToServer);
        port1.postMessage(message);
      },
      addEventListener: (type, listener) => port1.addEventListener(type, listener as EventListener),
      start: () => port1.start(),
      close: () => {
        port1.close();
        port2.close();
      },
    };
    const explorer = openExplorer(spy, now);
    open.push(explorer);
    return { explorer, sent };
  }
  afterEach(() => {
    for (const explorer of open.splice(0)) explorer.close();
  });
  const drawing = (count: number, slot = 'cards') => ({
    slot,
    setting: run,
    request: { kind: 'draws', count, seed: 7, keep: ['netCost'] } as const,
  });

  it('answers with what the same job gives here', async () => {
    const { explorer } = pair();
    const answer = await explorer.ask(drawing(200));
    expect(answer?.draws.results).toEqual(drawAll(run, { count: 200, seed: 7, keep: ['netCost'] }).results);
    expect(answer?.bands).toHaveLength(3);
  });

  it('sends a setting once, however often it is asked about', async () => {
    const { explorer, sent } = pair();
    await explorer.ask(drawing(10));
    await explorer.ask({ ...drawing(10), changes: new Map([['rainFactor', 0.5]]) });
    expect(sent.filter((m) => m.say === 'setting')).toHaveLength(1);
  });

  it('takes turned inputs along', async () => {
    const { explorer } = pair();
    const changes = new Map([['labourPricePerHour', 0]]);
    const answer = await explorer.ask({
      slot: 'a',
      setting: run,
      request: { kind: 'draws', count: 10, seed: 7, keep: ['labourCost'] },
      changes,
    });
    expect(Math.max(...(answer?.draws.results.labourCost ?? [1]))).toBe(0);
  });

  it('drops what was asked before in the same slot, and leaves other slots alone', async () => {
    const { explorer, sent } = pair();
    const other = explorer.ask(drawing(20, 'other'));
    const first = explorer.ask(drawing(20_000));
    const second = explorer.ask(drawing(20));
    expect(await first).toBeUndefined();
    expect((await second)?.draws.count).toBe(20);
    expect((await other)?.draws.count).toBe(20);
    expect(sent.filter((m) => m.say === 'stop')).toHaveLength(1);
  });

  it('stops a long job early', async () => {
    const { explorer } = pair();
    const long = explorer.ask(drawing(200_000));
    setTimeout(() => explorer.stop('cards'), 50);
    const workedMs = startWork();
    expect(await long).toBeUndefined();
    // The next question is answered long before two hundred thousand draws could have been made.
    await explorer.ask(drawing(5));
    expect(workedMs()).toBeLessThan(20_000);
  });

  it('shows progress only of what takes longer than a moment', async () => {
    let clock = 0;
    const { explorer } = pair(() => clock);
    const seen: number[] = [];
    const stop = explorer.progress.subscribe((list) => {
      if (list.length > 0) seen.push(list[0].done);
    });
    await explorer.ask(drawing(3_000));
    expect(seen).toEqual([]);
    const slow = explorer.ask(drawing(6_000));
    clock = 201;
    await slow;
    expect(seen.length).toBeGreaterThan(0);
    expect(explorer.progress.value).toEqual([]);
    stop();
  });

  it('gives few draws first, then all, and neither once something newer is asked', async () => {
    const { explorer } = pair();
    const counts: number[] = [];
    await explorer.follow(drawing(1_500), ({ draws }) => counts.push(draws.count));
    expect(counts).toEqual([300, 1_500]);
    const old = explorer.follow(drawing(1_500), () => counts.push(-1));
    await explorer.follow(drawing(100), ({ draws }) => counts.push(draws.count));
    await old;
    expect(counts).toEqual([300, 1_500, 100]);
  });

  it('does the urgent before what was asked later', async () => {
    const { explorer } = pair();
    const done: string[] = [];
    const asked = (slot: string, count: number, urgent?: boolean) =>
      explorer.ask({ ...drawing(count, slot), urgent }).then(() => done.push(slot));
    const all = [asked('cell', 4_000), asked('cards', 4_000, true), asked('later cell', 20)];
    // One more comes in while the cards are being worked on.
    await new Promise((resume) => setTimeout(resume, 15));
    all.push(asked('latest cell', 20));
    await Promise.all(all);
    expect(done[0]).toBe('cards');
    expect(done).toHaveLength(4);
  });

  it('tells of a job that failed', async () => {
    const { explorer } = pair();
    await expect(
      explorer.ask({
        slot: 'a',
        setting: run,
        // @ts-expect-error no result has this name
        request: { kind: 'draws', count: 5, seed: 1, keep: ['netCosts'] },
      }),
    ).rejects.toThrow('unknown quantity: netCosts');
  });
});

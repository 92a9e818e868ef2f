/**
 * What a step of the slider is spent on, in the page as shipped: script, style, layout and paint from the browser's own
 * trace, and the functions that take the most time of their own. `npm run profile`.
 */
import { loadavg } from 'node:os';
import { atTheSlider } from './slider.ts';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly dur?: number;
  readonly tid: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

interface CpuProfile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: { readonly functionName: string; readonly url: string; readonly lineNumber: number };
  }[];
  readonly samples: readonly number[];
  readonly timeDeltas: readonly number[];
}

/** The browser's names of what it does on the main thread, and ours. */
const KINDS: Readonly<Record<string, string>> = {
  FunctionCall: 'script',
  RunMicrotasks: 'script',
  UpdateLayoutTree: 'style',
  Layout: 'layout',
  PrePaint: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
  MajorGC: 'collecting garbage',
  MinorGC: 'collecting garbage',
};

const slowdown = Number(process.argv[2] ?? 1);
const width = Number(process.argv[3] ?? 1280);

await atTheSlider({ slowdown, width, readable: true }, async (page, drag) => {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Profiler.enable');
  await session.send('Profiler.setSamplingInterval', { interval: 200 });
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['devtools.timeline', 'v8.gc', 'disabled-by-default-devtools.timeline'],
    },
  });
  await session.send('Profiler.start');
  const { steps } = await drag();
  const { profile } = (await session.send('Profiler.stop')) as unknown as { profile: CpuProfile };
  const complete = new Promise((resume) => session.once('Tracing.tracingComplete', resume));
  await session.send('Tracing.end');
  await complete;
  report(steps, events, profile);
});

function report(steps: readonly number[], events: readonly TraceEvent[], profile: CpuProfile): void {
  const sorted = [...steps].sort((a, b) => a - b);
  console.log(
    `${steps.length} steps of rain, ${width} px, ${slowdown} times slower than this machine: median ` +
      `${sorted[Math.floor(sorted.length / 2)].toFixed(1)} ms, worst ${sorted[sorted.length - 1].toFixed(1)} ms ` +
      `(with the profiler on); load ${loadavg()[0].toFixed(1)}`,
  );
  const main = mainThread(events);
  const spent = new Map<string, number>();
  const times = new Map<string, number>();
  for (const { name, dur = 0, tid, ph } of events) {
    const kind = KINDS[name] && `${KINDS[name]} (${name})`;
    if (!kind || ph !== 'X' || tid !== main) continue;
    spent.set(kind, (spent.get(kind) ?? 0) + dur / 1000);
    times.set(kind, (times.get(kind) ?? 0) + 1);
  }
  for (const [kind, ms] of [...spent].sort((a, b) => b[1] - a[1]))
    console.log(
      `  ${(ms / steps.length).toFixed(2)} ms a step: ${kind}, ${((times.get(kind) ?? 0) / steps.length).toFixed(1)} times`,
    );
  console.log('Functions by their own time, ms a step (style and layout they force is theirs):');
  const own = new Map<string, number>();
  const frames = new Map(profile.nodes.map(({ id, callFrame }) => [id, callFrame]));
  profile.samples.forEach((id, k) => {
    const frame = frames.get(id);
    if (!frame || frame.functionName === '(idle)') return;
    const file = frame.url.replace(/.*\//, '').replace(/-[\w-]{8}\.js$/, '');
    const key = `${frame.functionName || 'unnamed'} (${file}${file ? `:${frame.lineNumber + 1}` : ''})`;
    own.set(key, (own.get(key) ?? 0) + profile.timeDeltas[k] / 1000);
  });
  for (const [name, ms] of [...own].sort((a, b) => b[1] - a[1]).slice(0, 40))
    console.log(`  ${(ms / steps.length).toFixed(2)}  ${name}`);
}

/** The thread that ran the most script: where the page is. */
function mainThread(events: readonly TraceEvent[]): number | undefined {
  const script = new Map<number, number>();
  for (const { name, dur = 0, tid } of events)
    if (name === 'Layout') script.set(tid, (script.get(tid) ?? 0) + dur);
  return [...script].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** How far long work is, on standard error: in place on a terminal, else a line now and then. */

export interface ProgressLine {
  /** `done` of `all`, of which `before` were done by an earlier call. */
  at(done: number, before?: number): void;
  end(): void;
}

interface Screen {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** On a terminal the line is written anew this often, ms; elsewhere a line is added. */
const TERMINAL_MS = 500;
const LOG_MS = 10_000;

export function progressLine(
  what: string,
  all: number,
  screen: Screen = process.stderr,
  now: () => number = () => performance.now(),
): ProgressLine {
  const every = screen.isTTY ? TERMINAL_MS : LOG_MS;
  let last = now();
  /** When the first was done here: getting ready takes seconds and says nothing of the pace. */
  let first: { readonly time: number; readonly done: number } | undefined;
  let shown = false;
  return {
    at(done, before = 0) {
      const time = now();
      if (done > before) first ??= { time, done };
      if (time - last < every || done === all) return;
      last = time;
      const left =
        first && done > first.done
          ? ((time - first.time) / 1000 / (done - first.done)) * (all - done)
          : undefined;
      const words = `${what}: ${done} of ${all}${before > 0 ? `, ${before} of them kept from before` : ''}${left === undefined ? '' : `, about ${lasting(left)} left`}`;
      screen.write(screen.isTTY ? `\r\x1b[K${words}` : `${words}\n`);
      shown = true;
    },
    end() {
      if (shown && screen.isTTY) screen.write('\r\x1b[K');
    },
  };
}

function lasting(seconds: number): string {
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
}

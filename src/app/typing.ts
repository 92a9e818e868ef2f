/** Text as it is typed: known at once, so that it can be kept; taken in at a pause, or every half a second without one. */

/** Typing pauses this long before the page follows. */
const PAUSE_MS = 250;
/** A typist who never pauses is followed this often. */
const LONGEST_MS = 500;

export interface TypingStep {
  readonly text: string;
  readonly what: string;
  /** One run of typing is one step to undo. */
  readonly mark: string;
}

export interface Typing {
  /** What is typed and not taken in yet. */
  readonly text: string | undefined;
  type(text: string): void;
  /** Takes in what is typed, now. */
  commit(): void;
  /** The text field was left: what is typed from now on is another step. */
  endRun(): void;
}

export function followTyping(known: (step: TypingStep) => void, taken: (step: TypingStep) => void): Typing {
  let step: TypingStep | undefined;
  let since = 0;
  let run = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const commit = () => {
    clearTimeout(timer);
    const done = step;
    step = undefined;
    if (done) taken(done);
  };
  return {
    get text() {
      return step?.text;
    },
    type(text) {
      const now = performance.now();
      if (!step) since = now;
      step = { text, what: 'typing', mark: `typing ${run}` };
      known(step);
      clearTimeout(timer);
      timer = setTimeout(commit, Math.max(0, Math.min(PAUSE_MS, since + LONGEST_MS - now)));
    },
    commit,
    endRun() {
      commit();
      run++;
    },
  };
}

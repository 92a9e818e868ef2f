/**
 * The open notebook: text in, results out. The text is the only state that is kept; what is read, computed and
 * drawn from it follows by signals. Turning an input changes rows of the model, never the text, until it is let go.
 */
import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals-core';
import type { Draws } from '../explore/draws.ts';
import { bandsOf } from '../explore/spread.ts';
import type { RowChanges } from '../model/bind.ts';
import { evaluate, evaluateBound, type Run, type ScenarioResult, type WinterOf } from '../model/evaluate.ts';
import type { Notebook, ReadResult } from '../notebook/read.ts';
import { removeOverride, setOverride } from '../notebook/write.ts';
import type { Tables } from '../tables/coefficient.ts';
import type { Problem } from '../units/problem.ts';
import { type History, push, redo, startHistory, undo } from './history.ts';
import { changesOf, edited, type Strip, stripOf } from './strip.ts';

/** What the store needs from outside, so that a test can give its own. */
export interface Engine {
  readonly tables: Tables;
  readonly read: (text: string, file: string) => ReadResult;
  /** Finds the winters of a notebook; may have to fetch them. */
  readonly winters: (notebook: Notebook) => Promise<{ readonly winterOf: WinterOf; readonly problems: readonly Problem[] }>;
  /** Draws in the background and hands over what it has, perhaps more than once; gives up when `signal` is aborted. */
  readonly draw?: (run: Run, notebook: Notebook, signal: AbortSignal, onDraws: (draws: Draws) => void) => void;
}

export interface OpenNotebook {
  readonly file: string;
  readonly text: ReadonlySignal<string>;
  readonly history: ReadonlySignal<History>;
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** The last text that could be read; undefined until one could. */
  readonly notebook: ReadonlySignal<Notebook | undefined>;
  readonly run: ReadonlySignal<Run | undefined>;
  /** Results with their ranges, when the draws belong to what is shown. */
  readonly results: ReadonlySignal<readonly ScenarioResult[]>;
  readonly draws: ReadonlySignal<Draws | undefined>;
  readonly strip: ReadonlySignal<readonly Strip[]>;
  /** Turns an input without writing it. */
  preview(id: string, value: number): void;
  /** Writes a turned input into the text: one step to undo. */
  commit(id: string, value: number): void;
  /** Puts the keeper's own number in place of a table row; null takes it out again. */
  override(id: string, value: number | null, because: string): void;
  /** Replaces the text. Steps with one mark, one after the other, are one step. */
  edit(text: string, what: string, mark?: string): void;
  undo(): void;
  redo(): void;
  close(): void;
}

export function openNotebook(text: string, file: string, engine: Engine): OpenNotebook {
  const history = signal(startHistory(text));
  const now = computed(() => history.value.now.text);
  const reading = computed(() => engine.read(now.value, file));
  const notebook = signal<Notebook | undefined>(undefined);
  const winterOf = signal<WinterOf | undefined>(undefined);
  const winterProblems = signal<readonly Problem[]>([]);
  const turned = signal<ReadonlyMap<string, number>>(new Map());
  const fault = signal<Problem | undefined>(undefined);
  let version = 0;

  const stopReading = effect(() => {
    const read = reading.value.notebook;
    if (!read) return;
    // A late answer about an older text is dropped.
    const mine = ++version;
    void engine.winters(read).then(({ winterOf: found, problems }) => {
      if (mine !== version) return;
      batch(() => {
        winterProblems.value = problems;
        turned.value = new Map();
        if (problems.length > 0) return;
        notebook.value = read;
        winterOf.value = found;
      });
    });
  });

  const base = computed<Run | undefined>(() => {
    const [read, find] = [notebook.value, winterOf.value];
    if (!read || !find) return undefined;
    return evaluate(read, engine.tables, find);
  });
  const changes = computed<RowChanges>(() => {
    const [read, of] = [notebook.value, base.value];
    if (!read || !of) return new Map();
    return changesOf(read, engine.tables, turned.value, (column) => of.bound.some(({ bindings }) => bindings.has(column)));
  });
  const run = computed(() => {
    const still = base.value;
    if (!still || changes.value.size === 0) return still;
    return evaluateBound(still.bound, still.tables, still.weather, still.weatherIndex, changes.value);
  });

  const drawn = signal<{ readonly of: Run; readonly draws: Draws } | undefined>(undefined);
  const stopDrawing = effect(() => {
    const [of, read] = [base.value, notebook.value];
    if (!of || !read || !engine.draw) return;
    const stop = new AbortController();
    engine.draw(of, read, stop.signal, (draws) => {
      if (!stop.signal.aborted) drawn.value = { of, draws };
    });
    return () => stop.abort();
  });
  const draws = computed(() => (drawn.value && drawn.value.of === run.value ? drawn.value.draws : undefined));
  const results = computed<readonly ScenarioResult[]>(() => {
    const [made, of] = [draws.value, run.value];
    if (!of) return [];
    return made ? of.scenarios.map((result, k) => ({ ...result, bands: bandsOf(made, k) })) : of.scenarios;
  });

  const edit = (next: string, what: string, mark?: string) => {
    history.value = push(history.value, { text: next, what, ...(mark === undefined ? {} : { mark }) });
  };
  return {
    file,
    text: now,
    history,
    notebook,
    run,
    results,
    draws,
    problems: computed(() => [
      ...reading.value.problems,
      ...(reading.value.notebook ? winterProblems.value : []),
      ...(fault.value ? [fault.value] : []),
    ]),
    strip: computed(() => (notebook.value ? stripOf(notebook.value, engine.tables, turned.value) : [])),
    preview(id, value) {
      turned.value = new Map([[id, value]]);
    },
    commit(id, value) {
      const read = notebook.value;
      if (!read) return;
      try {
        const result = edited(now.value, read, engine.tables, id, value);
        batch(() => {
          fault.value = undefined;
          if (result.text === now.value) turned.value = new Map();
          edit(result.text, result.what);
        });
      } catch (error) {
        fault.value = cannotWrite(error, file);
      }
    },
    override(id, value, because) {
      try {
        const next = value === null ? removeOverride(now.value, id) : setOverride(now.value, { id, value, because });
        fault.value = undefined;
        edit(next, value === null ? `${id} from the tables` : `${id} to ${value}`);
      } catch (error) {
        fault.value = cannotWrite(error, file);
      }
    },
    edit,
    undo: () => {
      history.value = undo(history.value);
    },
    redo: () => {
      history.value = redo(history.value);
    },
    close() {
      version++;
      stopReading();
      stopDrawing();
    },
  };
}

function cannotWrite(error: unknown, file: string): Problem {
  return {
    what: 'the change could not be written into the text',
    file,
    found: error instanceof Error ? error.message : String(error),
    todo: 'mend the text by hand, or undo the last change',
  };
}

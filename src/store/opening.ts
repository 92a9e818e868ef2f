/**
 * The open notebook: text in, results out. The text is the only state that is kept; what is read, computed and
 * drawn from it follows by signals. Turning an input changes rows of the model, never the text, until it is let go.
 */

import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals-core';
import type { RowChanges } from '../model/bind.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import type { Notebook, ReadResult } from '../notebook/read.ts';
import {
  evaluate,
  evaluateBound,
  type Run,
  type ScenarioResult,
  type WinterOf,
  withBands,
} from '../study/evaluate.ts';
import type { Tables } from '../tables/coefficient.ts';
import type { Climate } from '../tables/weatherJoin.ts';
import type { RainDay } from '../tables/weatherSeries.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import { type Problem, withLine } from '../units/problem.ts';
import { HERD_DEFAULT, type HerdMeaning } from '../whatif/turn.ts';
import type { Explorer } from '../worker/explorer.ts';
import type { Answers } from '../worker/job.ts';
import { WHILE_DRAGGING } from '../worker/protocol.ts';
import { DRAWN, mostDraws } from './drawn.ts';
import type { FirstEngine, FoundWinters, Texts } from './engine.ts';
import { type History, push, redo, startHistory, undo } from './history.ts';
import { changesOf, type Strip, stripOf } from './strip.ts';

export interface OpenNotebook {
  readonly file: string;
  readonly tables: Tables;
  readonly text: ReadonlySignal<string>;
  readonly history: ReadonlySignal<History>;
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** The last text that could be read; undefined until one could. */
  readonly notebook: ReadonlySignal<Notebook | undefined>;
  /** What is worth knowing of the weather: gaps, winters left out. */
  readonly weatherNotes: ReadonlySignal<readonly Problem[]>;
  readonly run: ReadonlySignal<Run | undefined>;
  /** Results with their ranges, when the draws belong to what is shown. */
  readonly results: ReadonlySignal<readonly ScenarioResult[]>;
  readonly draws: ReadonlySignal<Draws | undefined>;
  readonly strip: ReadonlySignal<readonly Strip[]>;
  /** What turning the herd means for the shed; the same for the strip and every cell that does not say its own. */
  readonly herd: ReadonlySignal<HerdMeaning>;
  setHerd(meaning: HerdMeaning): void;
  /** Columns turned but not written, by name; the same map as long as nothing is turned further. */
  readonly changes: ReadonlySignal<RowChanges>;
  /** Every winter of the first scenario's weather file; none where it is not known. */
  readonly allWinters: ReadonlySignal<readonly PreparedWeather[]>;
  /** Answers the cells that ask for more than the results; absent where there is no worker. */
  readonly explorer: Explorer | undefined;
  /** Turns an input without writing it. */
  preview(id: string, value: number): void;
  /** Writes a turned input into the text: one step to undo. */
  commit(id: string, value: number): void;
  /** Puts the keeper's own number in place of a table row; null takes it out again. */
  override(id: string, value: number | null, because: string): void;
  /** Writes days of weather and their name into the text. */
  useWeather(name: string, text: string): void;
  /** The shipped climates, the nearest first. */
  readonly climates: ReadonlySignal<readonly Climate[]>;
  /** Writes a gauge's rain into the text, with the temperature of a shipped climate. */
  useRain(name: string, rain: readonly RainDay[], climate: Climate): Promise<void>;
  /** Replaces the text. Steps with one mark, one after the other, are one step. */
  edit(text: string, what: string, mark?: string): void;
  undo(): void;
  redo(): void;
  close(): void;
}

/** How a notebook is kept between visits. */
export interface Keeping {
  /** The history of an earlier visit, whose steps can still be undone. */
  readonly before?: History;
  /** Told of each change before anything is read or computed from it, so that keeping waits for neither. */
  readonly changed?: (history: History) => void;
}

/** Opens a text with an engine that may still be on its way. */
export function openWith(
  text: string,
  file: string,
  first: FirstEngine,
  { before, changed }: Keeping = {},
): OpenNotebook {
  /** What reads the text, and what the figures on show were worked out with: that follows once their winters are found. */
  const reader = signal(first);
  const engine = signal(first);
  const history = signal(before?.now.text === text ? before : startHistory(text));
  const setHistory = (next: History) => {
    if (next === history.value) return;
    changed?.(next);
    history.value = next;
  };
  const now = computed(() => history.value.now.text);
  let last: { read: FirstEngine['read']; text: string; result: ReadResult } | undefined;
  const reading = computed(() => {
    const [{ read }, text] = [reader.value, now.value];
    // An engine that reads as the one before finds the same, and a large text takes a while.
    if (last?.read !== read || last.text !== text) last = { read, text, result: read(text, file) };
    return last.result;
  });
  const notebook = signal<Notebook | undefined>(undefined);
  const winterOf = signal<WinterOf | undefined>(undefined);
  const wintersOf = signal<FoundWinters['wintersOf']>(undefined);
  const notebookProblems = signal<readonly Problem[]>([]);
  const weatherNotes = signal<readonly Problem[]>([]);
  const turned = signal<ReadonlyMap<string, number>>(new Map());
  const herd = signal<HerdMeaning>(HERD_DEFAULT);
  const fault = signal<Problem | undefined>(undefined);
  let version = 0;

  let arrive: (texts: Texts) => void = () => {};
  const arrived = new Promise<Texts>((resolve) => {
    arrive = resolve;
  });
  /** Writes now, or as soon as what writes is there and the figures are those of the text. */
  const writing = (act: (texts: Texts) => void) => {
    const { texts } = engine.value;
    if (texts) act(texts);
    else void arrived.then(act);
  };
  let asked = false;
  /** Once there is something to be painted: what comes is not to hold that up. */
  const askWhole = () => {
    if (asked || !first.whole) return;
    asked = true;
    first.whole().then(
      (whole) => {
        reader.value = whole;
      },
      (error: Error) => {
        fault.value = {
          what: 'a part of the page could not be fetched: the figures stand, without what belongs to it',
          file,
          found: error.message,
          todo: 'reload the page',
        };
      },
    );
  };
  const stopReading = effect(() => {
    const by = reader.value;
    const read = reading.value.notebook;
    if (!read) {
      if (by.texts) arrive(by.texts);
      askWhole();
      return;
    }
    // A late answer about an older text is dropped.
    const mine = ++version;
    void by.winters(read).then(({ winterOf: found, wintersOf: all, problems, notes = [] }) => {
      if (mine !== version) return;
      batch(() => {
        const faults = [
          ...(by.texts?.unknown(read, by.tables) ?? []),
          ...problems.map((problem) => withLine(problem, read)),
        ];
        engine.value = by;
        notebookProblems.value = faults;
        // The same text read again by another engine leaves a slider where it is held.
        if (notebook.value?.text !== read.text) turned.value = new Map();
        if (faults.length > 0) return;
        notebook.value = read;
        winterOf.value = found;
        wintersOf.value = all;
        weatherNotes.value = notes;
      });
      if (by.texts) arrive(by.texts);
      askWhole();
    });
  });

  // A fault of the model is shown; it must not take the page with it.
  const tried = computed<{ readonly run?: Run; readonly fault?: Problem }>(() => {
    const [read, find] = [notebook.value, winterOf.value];
    if (!read || !find) return {};
    try {
      return { run: evaluate(read, engine.value.tables, find) };
    } catch (error) {
      return {
        fault: {
          what: 'the figures could not be computed',
          file,
          found: words(error),
          todo: 'undo the last change, or tell the makers',
        },
      };
    }
  });
  const base = computed(() => tried.value.run);
  const changes = computed<RowChanges>(() => {
    const [read, of] = [notebook.value, base.value];
    if (!read || !of) return new Map();
    return changesOf(
      { notebook: read, tables: engine.value.tables, setting: of, herd: herd.value },
      turned.value,
    );
  });
  const run = computed(() => {
    const still = base.value;
    if (!still || changes.value.size === 0) return still;
    return evaluateBound(
      still.bound,
      still.tables,
      still.weather,
      still.weatherIndex,
      changes.value,
      still.results,
    );
  });

  // While an input is turned the last draws stay until the next come in, a few frames later.
  const drawn = signal<Answers['draws'] | undefined>(undefined);
  const stopDrawing = effect(() => {
    const [setting, read, turns] = [base.value, notebook.value, changes.value];
    const { explorer } = engine.value;
    if (!setting || !read || !explorer) return;
    const { count, seed } = read.draws;
    const request = {
      kind: 'draws',
      count:
        turns.size > 0 ? Math.min(WHILE_DRAGGING, count) : Math.min(mostDraws(setting.bound.length), count),
      seed,
      keep: DRAWN,
    } as const;
    explorer
      .follow({ slot: 'cards', setting, request, changes: turns, urgent: true }, (answer) => {
        drawn.value = answer;
      })
      .catch((error: Error) => {
        drawn.value = undefined;
        fault.value = {
          what: 'the draws could not be made',
          file,
          found: error.message,
          todo: 'the figures stand, without ranges',
        };
      });
  });
  const fitting = computed(() =>
    drawn.value?.draws.scenarios === run.value?.scenarios.length ? drawn.value : undefined,
  );
  const draws = computed(() => fitting.value?.draws);
  const results = computed<readonly ScenarioResult[]>(() => {
    const bands = fitting.value?.bands;
    const [now, still] = [run.value, changes.value.size === 0];
    return now && bands
      ? withBands(now.results, now.bound, bands, { checks: still })
      : (now?.scenarios ?? []);
  });

  const edit = (next: string, what: string, mark?: string) => {
    fault.value = undefined;
    setHistory(push(history.value, { text: next, what, ...(mark === undefined ? {} : { mark }) }));
  };
  const useWeather = (name: string, text: string) =>
    writing((texts) => {
      const plain = texts.plainName(name);
      const known = engine.value.ownName?.(plain) ?? plain;
      try {
        edit(texts.withWeather(now.value, known, text), `weather of ${known}`);
      } catch (error) {
        fault.value = cannotWrite(error, file);
      }
    });
  return {
    file,
    get tables() {
      return engine.value.tables;
    },
    text: now,
    history,
    notebook,
    weatherNotes,
    run,
    results,
    draws,
    problems: computed(() => [
      ...reading.value.problems,
      ...(reading.value.notebook ? notebookProblems.value : []),
      ...(tried.value.fault ? [tried.value.fault] : []),
      ...(fault.value ? [fault.value] : []),
    ]),
    changes,
    allWinters: computed(() => {
      const [read, find] = [notebook.value, wintersOf.value];
      return read && find ? find(read.scenarios[0]) : [];
    }),
    get explorer() {
      return engine.value.explorer;
    },
    strip: computed(() => (notebook.value ? stripOf(notebook.value, engine.value.tables, turned.value) : [])),
    herd,
    setHerd(meaning) {
      herd.value = meaning;
    },
    preview(id, value) {
      turned.value = new Map([[id, value]]);
    },
    commit: (id, value) =>
      writing((texts) => {
        const [read, setting] = [notebook.value, base.value];
        if (!read || !setting) return;
        // The places of the last sound reading are not the places of this text.
        if (reading.value.notebook !== read || reading.value.problems.length > 0) {
          batch(() => {
            turned.value = new Map();
            fault.value = atFault(file);
          });
          return;
        }
        const { tables } = engine.value;
        try {
          const of = { notebook: read, tables, setting, herd: herd.value };
          const result = texts.turned(now.value, of, id, value);
          batch(() => {
            fault.value = undefined;
            if (result.text === now.value) turned.value = new Map();
            edit(result.text, result.what);
          });
        } catch (error) {
          fault.value = cannotWrite(error, file);
        }
      }),
    override: (id, value, because) =>
      writing((texts) => {
        try {
          const next = texts.overridden(now.value, id, value, because);
          fault.value = undefined;
          edit(next, value === null ? `${id} from the tables` : `${id} to ${value}`);
        } catch (error) {
          fault.value = cannotWrite(error, file);
        }
      }),
    useWeather,
    climates: computed(() => nearest(engine.value.climates ?? [], notebook.value?.farm.place.latitudeDeg)),
    async useRain(name, rain, climate) {
      const text = await engine.value.climateText?.(climate.file);
      writing((texts) => {
        const joined = texts.rainIn(name, rain, climate, text);
        if (joined) useWeather(joined.name, joined.text);
        else
          fault.value = {
            what: 'the climate could not be read',
            file: climate.file,
            todo: 'reload the page',
          };
      });
    },
    edit,
    undo: () => {
      fault.value = undefined;
      setHistory(undo(history.value));
    },
    redo: () => {
      fault.value = undefined;
      setHistory(redo(history.value));
    },
    close() {
      version++;
      stopReading();
      stopDrawing();
      engine.value.explorer?.stop('cards');
    },
  };
}

/** By latitude, which is what a notebook says of its place; the keeper may choose another. */
const nearest = (climates: readonly Climate[], latitudeDeg = 0): Climate[] =>
  [...climates].sort((a, b) => Math.abs(a.latitudeDeg - latitudeDeg) - Math.abs(b.latitudeDeg - latitudeDeg));

function cannotWrite(error: unknown, file: string): Problem {
  return {
    what: 'the change could not be written into the text',
    file,
    found: words(error),
    todo: 'mend the text by hand, or undo the last change',
  };
}

const atFault = (file: string): Problem => ({
  what: 'nothing was changed: the text is at fault, and the figures shown are of the text before',
  file,
  todo: 'mend the text or undo the last change, then turn the slider again',
});

const words = (error: unknown) => (error instanceof Error ? error.message : String(error));

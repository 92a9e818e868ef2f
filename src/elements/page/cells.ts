/** Every kind of cell: the element that shows it and what that is given, of the cell's options and of the page. */

import { nothing } from 'lit';
import type { DirectiveResult } from 'lit/directive.js';
import type { RowChanges } from '../../model/bind.ts';
import { resultNamed } from '../../model/dictionary.ts';
import type { PreparedWeather } from '../../model/weather/prepared.ts';
import type { Cell, CellKind } from '../../notebook/cells.ts';
import type { Notebook } from '../../notebook/read.ts';
import { compareFigure } from '../../plots/compare.ts';
import type { Figure } from '../../plots/figure.ts';
import { ladderFigure } from '../../plots/ladder.ts';
import type { Reading } from '../../plots/reading.ts';
import { WEEK_SERIES } from '../../plots/weeks.ts';
import type { Run, ScenarioResult } from '../../study/evaluate.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import type { HerdMeaning } from '../../whatif/turn.ts';
import type { Explorer } from '../../worker/explorer.ts';
import { gives } from '../parts/given.ts';
import '../cells/wk-bed.ts';
import '../cells/wk-bill.ts';
import '../cells/wk-calendar.ts';
import '../cells/wk-cards.ts';
import '../cells/wk-case.ts';
import '../cells/wk-cashflow.ts';
import '../cells/wk-checks.ts';
import '../cells/wk-costs.ts';
import '../cells/wk-diary.ts';
import '../cells/wk-draws.ts';
import '../cells/wk-flip.ts';
import '../cells/wk-ledger.ts';
import '../cells/wk-mix.ts';
import '../cells/wk-plan.ts';
import '../cells/wk-rain.ts';
import '../cells/wk-rank.ts';
import '../cells/wk-section.ts';
import '../cells/wk-sources.ts';
import '../cells/wk-sweep.ts';
import '../parts/wk-figure.ts';

/** What the page has for its cells. */
export interface CellPage {
  readonly notebook: Notebook | undefined;
  readonly run: Run | undefined;
  /** Results with their ranges, once the draws are in. */
  readonly results: readonly ScenarioResult[];
  readonly reading: Reading;
  /** What the exploring cells ask; without it they stay empty. */
  readonly explorer: Explorer | undefined;
  readonly changes: RowChanges | undefined;
  /** What turning the herd means for the shed, where a cell does not say its own. */
  readonly herd: HerdMeaning;
  readonly draws: Draws | undefined;
  /** Draws a cell makes of its own: what the notebook asks for, as far as a page can keep them. */
  readonly count: number;
  /** Every winter of the weather file. */
  readonly winters: readonly PreparedWeather[];
}

type Shown = DirectiveResult | typeof nothing;
type OptionsOf<K extends CellKind> = Extract<Cell, { readonly kind: K }>['options'];

/** What every cell is given that asks the worker. */
const asking = ({ run, explorer, changes, reading }: CellPage) => ({ run, explorer, changes, reading });
/** Draws of a cell's own are those of the page, made again with another result kept. */
const drawing = (page: CellPage) => ({
  ...asking(page),
  count: page.count,
  seed: page.notebook?.draws.seed ?? 1,
});

/** Order and colour stay those of the notebook: a scenario keeps its look everywhere. */
const some = (names: readonly string[] | undefined, results: readonly ScenarioResult[]) =>
  names ? results.filter((result) => names.includes(result.name)) : results;

/** The same without ranges, for what shows none: it is not drawn again when the draws come in. */
const unranged = (names: readonly string[] | undefined, { run, results }: CellPage) =>
  some(names, run?.scenarios ?? results);

/** The scenario a cell names; without one, the first that has a bed, else the first. */
const one = (name: string | undefined, { results }: CellPage) =>
  name === undefined
    ? (results.find(({ values }) => (values.packTonnes ?? 0) > 0) ?? results[0])
    : results.find((result) => result.name === name);

/** Drawn with the keeper's own numbers in place of rows of the tables, as the bill is counted. */
const shed = (name: string | undefined, page: CellPage) => {
  const result = one(name, page);
  const own = page.run?.bound.find(({ scenario }) => scenario.name === result?.name);
  return {
    result,
    coefficients: own?.coefficients ?? page.run?.tables.coefficients,
    system: page.reading.system,
  };
};

const NO_OVERRIDES: Notebook['overrides'] = [];
const NO_DIARY: Notebook['diary'] = [];

const captioned = (figure: Figure, caption: string | undefined): Figure =>
  caption === undefined ? figure : { ...figure, caption };

/** The figure's result by its name in the model: the reader has seen to it that there is one. */
const measured = <Options extends { readonly measure: string }>(o: Options) => ({
  ...o,
  measure: resultNamed(o.measure),
});

/** Series of the model behind the words a bed cell uses. */
const BED = {
  depth: 'weekPackDepthM',
  moisture: 'weekPackMoisture',
  carbonNitrogen: 'weekPackCarbonNitrogen',
  dryMatter: 'weekPackDryMatterKg',
  nitrogen: 'weekPackNitrogenKg',
  temperature: 'weekPackTemperatureC',
} as const satisfies Readonly<Record<string, keyof typeof WEEK_SERIES>>;

const cardsInText = gives('wk-cards', ({ scenarios, ...o }: OptionsOf<'cards'>, p: CellPage) => ({
  ...o,
  inText: true,
  reading: p.reading,
  results: some(scenarios, p.results),
  draws: p.draws,
  asked: p.notebook?.draws.count ?? 0,
}));

/** To add a cell is to add a line: kind, element, what it is given. */
const CELLS: { readonly [K in CellKind]: (options: OptionsOf<K>, page: CellPage) => Shown } = {
  bed: gives('wk-bed', ({ show, scenarios, ...o }, p) => ({
    ...drawing(p),
    ...o,
    results: some(scenarios, p.results),
    series: WEEK_SERIES[BED[show]],
  })),
  bill: gives('wk-bill', (o, { run, reading, results, draws }) => ({ run, reading, results, draws, ...o })),
  calendar: gives('wk-calendar', (o, p) => shed(o.scenario, p)),
  // Without options these are the cards that stand above the text anyway.
  cards: (o, p) => (Object.keys(o).length === 0 ? nothing : cardsInText(o, p)),
  case: gives('wk-case', (o, p) => ({
    ...asking(p),
    ...o,
    results: p.results,
    draws: p.draws,
    notebook: p.notebook,
  })),
  cashflow: gives('wk-cashflow', ({ scenarios, ...o }, p) => ({
    ...o,
    run: p.run,
    reading: p.reading,
    changes: p.changes,
    draws: p.draws,
    results: some(scenarios, p.results),
  })),
  checks: gives('wk-checks', (o, p) => ({
    id: 'checks',
    reading: p.reading,
    results: some(o.scenarios, p.results),
    sources: p.run?.tables.sources,
    openOnly: o.show === 'open',
  })),
  compare: gives('wk-figure', (o, p) => ({
    figure: captioned(
      compareFigure(some(o.scenarios, p.results), resultNamed(o.measure), p.reading),
      o.caption,
    ),
  })),
  costs: gives('wk-costs', ({ scenarios, ...o }, p) => ({
    ...o,
    run: p.run,
    reading: p.reading,
    results: some(scenarios, p.results),
  })),
  diary: gives('wk-diary', (o, p) => ({ ...o, reading: p.reading, diary: p.notebook?.diary ?? NO_DIARY })),
  draws: gives('wk-draws', (o, p) => ({ ...drawing(p), ...measured(o), draws: p.draws })),
  flip: gives('wk-flip', (o, p) => ({ ...asking(p), ...measured(o), herd: o.herd ?? p.herd })),
  ladder: gives('wk-figure', (o, p) => ({
    heading: 'Nitrogen step by step',
    figure: captioned(ladderFigure(some(o.scenarios, p.results), p.reading), o.caption),
  })),
  ledger: gives('wk-ledger', (o, p) => ({
    reading: p.reading,
    results: unranged(o.scenarios, p),
    nutrient: o.element,
  })),
  mix: gives('wk-mix', (o, { run, reading, notebook }) => ({
    run,
    reading,
    overrides: notebook?.overrides ?? NO_OVERRIDES,
    ...o,
  })),
  plan: gives('wk-plan', (o, p) => shed(o.scenario, p)),
  rain: gives('wk-rain', (o, { run, explorer, reading, winters }) => ({
    run,
    explorer,
    reading,
    winters,
    ...measured({ measure: 'nitrogenLeachedKg', ...o }),
  })),
  // Ranking takes too long to follow an input while it is turned.
  rank: gives('wk-rank', (o, p) => ({ ...drawing(p), changes: undefined, ...measured(o) })),
  section: gives('wk-section', (o, p) => ({ ...shed(o.scenario, p), week: o.week ?? 26 })),
  sources: gives('wk-sources', (_, { run, reading }) => ({ run, reading })),
  sweep: gives('wk-sweep', (o, p) => ({ ...asking(p), ...measured(o), herd: o.herd ?? p.herd })),
};

/** A cell of the text as it is to stand on the page. */
export const cellShown = ({ kind, options }: Cell, page: CellPage): Shown =>
  (CELLS[kind] as (options: Cell['options'], page: CellPage) => Shown)(options, page);

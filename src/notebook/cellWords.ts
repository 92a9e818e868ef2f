/** What each kind of cell answers, and the words for its options: what a keeper chooses from. */

import type { Options } from './bodyEdits.ts';
import type { CellKind } from './cells.ts';

export interface CellWords {
  readonly name: string;
  /** The question it answers, as a keeper would ask it. */
  readonly answers: string;
  /** Options it starts with where it needs some; the names are results and inputs every notebook has. */
  readonly start: Options;
}

/** In the order they are offered: what stays, what it takes, what decides, what is built, what is written down. */
export const CELL_WORDS: { readonly [K in CellKind]: CellWords } = {
  cards: {
    name: 'A few results side by side',
    answers: 'How do the scenarios compare in the results I choose?',
    start: { measures: ['nitrogenKeptKg', 'netCost', 'labourHours'] },
  },
  compare: {
    name: 'One result across scenarios',
    answers: 'Which has most of one thing, and how sure is that?',
    start: { measure: 'netCost' },
  },
  ledger: { name: 'Where an element went', answers: 'Where did each kilogram of nitrogen go?', start: {} },
  ladder: {
    name: 'Nitrogen step by step',
    answers: 'What is left of the nitrogen after each step, down to the first crop?',
    start: {},
  },
  bed: { name: 'The bed week by week', answers: 'How deep, wet or warm is the bed in each week?', start: {} },
  rain: {
    name: 'Rain, snow and drainage',
    answers: 'When does water carry nitrate below the roots?',
    start: {},
  },
  costs: { name: 'What the year costs', answers: 'What is the yearly cost made of?', start: {} },
  cashflow: {
    name: 'Money year by year',
    answers: 'When does it pay back, and what does it leave?',
    start: {},
  },
  bill: { name: 'Bill of quantities', answers: 'What has to be bought and built, at what price?', start: {} },
  draws: {
    name: 'How sure a result is',
    answers: 'In how many draws is each scenario best?',
    start: { measure: 'nitrogenKeptKg' },
  },
  rank: {
    name: 'What decides',
    answers: 'Which numbers decide between two scenarios, and which should I measure first?',
    start: { measure: 'netCost' },
  },
  sweep: {
    name: 'A result while an input is turned',
    answers: 'What if the herd, the rain or a price were another?',
    start: { over: 'headCount', measure: 'netCostPerHead' },
  },
  flip: {
    name: 'Where one overtakes another',
    answers: 'From which herd, rain or price on is the other one better?',
    start: { over: 'headCount', measure: 'netCost' },
  },
  checks: { name: 'Limits checked', answers: 'What breaks a rule, and what should be looked at?', start: {} },
  section: {
    name: 'The shed cut across',
    answers: 'How high do bed, barrier and machine come in a week?',
    start: {},
  },
  plan: { name: 'The shed from above', answers: 'Where do bed, stance, pens and gates lie?', start: {} },
  mix: { name: 'Cheapest bedding', answers: 'Which mix of the materials at hand costs least?', start: {} },
  calendar: {
    name: 'Calendar of the work',
    answers: 'What is to be done when, from autumn to spring?',
    start: {},
  },
  case: { name: 'Case for a lender', answers: 'What does a partner or lender need to see?', start: {} },
  diary: { name: 'Diary', answers: 'What was measured this winter, beside what was expected?', start: {} },
  sources: { name: 'Sources', answers: 'Where does each number come from?', start: {} },
};

/** Words for options, the same in every cell. */
export const OPTION_WORDS: Readonly<Record<string, string>> = {
  scenarios: 'Scenarios',
  scenario: 'Scenario',
  between: 'Two scenarios',
  measure: 'Result',
  measures: 'Results',
  over: 'Input that is turned',
  across: 'Second input',
  from: 'From',
  to: 'To',
  steps: 'Steps',
  herd: 'When the herd is turned',
  element: 'Element',
  show: 'Show',
  week: 'Week of the winter',
  top: 'How many numbers',
  caption: 'Words under it',
};

/** Words for what an option can be, where the name in the file is not plain. */
export const CHOICE_WORDS: Readonly<Record<string, string>> = {
  built: 'shed and yards are built to match',
  stays: 'the shed stays as it is',
  carbonNitrogen: 'carbon to nitrogen',
  dryMatter: 'dry matter',
  winter: 'this winter',
  winters: 'every winter of the weather file',
  open: 'only what is not passed',
  all: 'everything',
};

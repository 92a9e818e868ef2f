/** All of an open notebook but its first cards, figures and all that draws them: fetched once those are on the page. */
import '../parts/wk-trace.ts';
import './wk-carry.ts';
import './wk-contents.ts';
import './wk-notebook.ts';
import './wk-print.ts';
import './wk-scenarios.ts';
import './wk-weather.ts';
import { setQuote } from '../../notebook/quote.ts';
import { readNotebook } from '../../notebook/read.ts';
import { explain } from '../../study/trace.ts';
import { contentsOf } from './contents.ts';
import { InputChanges } from './inputChanges.ts';
import { notedNumber, notedOf, notesOnSection, notesTogether, placedIn } from './placed.ts';
import { sectionsBelow } from './sectionsBelow.ts';
import { turnView } from './turnView.ts';

/** What the page does with them. */
export const BELOW = {
  setQuote,
  readNotebook,
  explain,
  contentsOf,
  InputChanges,
  notedNumber,
  notedOf,
  notesOnSection,
  notesTogether,
  placedIn,
  sectionsBelow,
  turnView,
};

/** All of an open notebook but its first cards, figures and all that draws them: fetched once those are on the page. */
import '../cells/wk-cautions.ts';
import '../cells/wk-checks.ts';
import '../cells/wk-compare.ts';
import '../cells/wk-ledger.ts';
import '../cells/wk-sources.ts';
import '../parts/wk-trace.ts';
import './wk-carry.ts';
import './wk-contents.ts';
import './wk-notebook.ts';
import './wk-print.ts';
import './wk-scenarios.ts';
import './wk-weather.ts';

export { setQuote } from '../../notebook/quote.ts';
export { readNotebook } from '../../notebook/read.ts';
export { setInput } from '../../notebook/write.ts';
export { explain } from '../../study/trace.ts';
export { contentsOf } from './contents.ts';
export { InputChanges } from './inputChanges.ts';
export { notedNumber, notedOf, notesTogether, placedIn } from './placed.ts';

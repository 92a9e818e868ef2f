/** What an open notebook needs for its first cards: fetched when the first one is opened. */
import '../elements/page/wk-page.ts';

export { openWith } from '../store/opening.ts';
export { firstEngine } from './firstEngine.ts';

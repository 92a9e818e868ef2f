/** All that an open notebook needs: fetched when the first one is opened, so that the list of notebooks shows at once. */
import '../elements/page/wk-page.ts';

export { openNotebook } from '../store/open.ts';
export { startEngine } from './engine.ts';

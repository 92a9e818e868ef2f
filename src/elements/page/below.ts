/** What stands below the cards, figures and all that draws them: fetched once the cards are on the page. */
import '../cells/wk-cautions.ts';
import '../cells/wk-checks.ts';
import '../cells/wk-compare.ts';
import '../cells/wk-ledger.ts';
import '../cells/wk-sources.ts';
import './wk-notebook.ts';
import './wk-scenarios.ts';
import './wk-weather.ts';

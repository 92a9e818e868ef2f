import { html, render } from 'lit';
import { evaluation, reading } from '../../tests/browser/fixtures/evaluation.ts';
import { ladderFigure } from '../plots/ladder.ts';
import { WEEK_SERIES, weekFigure } from '../plots/weeks.ts';
import '../elements/wk-cards.ts';
import '../elements/wk-ledger.ts';
import '../elements/wk-compare.ts';
import '../elements/wk-inputs.ts';
import '../elements/wk-checks.ts';
const r = evaluation.scenarios;
render(html`<wk-inputs .inputs=${[['Head', 'head', 16, 1, 60, 1], ['Winter days', 'd', 190, 30, 300, 1], ['Rain against this weather', '×', 1, 0, 2.5, 0.05], ['Bedding a day per 100 kg', 'kg', 1.3, 0, 3, 0.1], ['Own hour worth', 'EUR', 12, 0, 60, 1], ['Straw price a tonne', 'EUR', 60, 0, 200, 5]].map(([label, unit, value, min, max, step]) => ({ id: label, short: label, label, unit, value, min, max, step }))}></wk-inputs>
<wk-cards .results=${r} .reading=${reading}></wk-cards><wk-ledger .results=${r} .reading=${reading}></wk-ledger>
<h2>Ladder</h2><wk-figure .figure=${ladderFigure(r, reading)}></wk-figure>
<wk-compare .results=${r} .reading=${reading}></wk-compare>
<wk-figure .figure=${weekFigure(r, WEEK_SERIES.bedDepthM, reading)}></wk-figure>
<wk-figure .figure=${weekFigure(r, WEEK_SERIES.weekRainMm, reading)}></wk-figure>
<wk-checks .results=${r} .reading=${reading}></wk-checks>`, document.querySelector('#x') as HTMLElement);

/** The last block of the cards, how sure: in how many draws a scenario is best, and the limits it breaks. */
import { html, nothing, type TemplateResult } from 'lit';
import { COMPARISONS } from '../../model/measures.ts';
import { countsText } from '../../plots/checkWords.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';
import { measuresOf } from '../../uncertainty/decide.ts';
import type { Draws } from '../../uncertainty/monteCarlo.ts';
import { shareBest, shareBestWeighted } from '../../uncertainty/percentiles.ts';
import { ask } from '../parts/events.ts';
import { SURE } from '../parts/measures.ts';

/** What the keeper weighs, results by name. */
export type Weights = Readonly<Record<string, number>>;

/** The rows: the measures always told, then the keeper's own weights, whose key is empty, where there are any. */
export function sureRows(weights: Weights): readonly { readonly key: string; readonly label: string }[] {
  return [
    ...SURE.map(({ quantity, label }) => ({ key: quantity, label })),
    ...(Object.values(weights).some((w) => w > 0) ? [{ key: '', label: 'Best by your weights' }] : []),
  ];
}

/** Share of the draws each scenario wins in the row of a key, in the draws' order; undefined until they are made. */
export type Wins = (draws: Draws | undefined, weights: Weights, key: string) => readonly number[] | undefined;

/** Counts each row once for the same draws. */
export function countingWins(): Wins {
  let counted: { draws: Draws; weights: Weights; of: Map<string, readonly number[]> } | undefined;
  return (draws, weights, key) => {
    if (!draws) return undefined;
    if (counted?.draws !== draws || counted.weights !== weights) counted = { draws, weights, of: new Map() };
    const known = counted.of.get(key);
    if (known) return known;
    const row = SURE.find(({ quantity }) => quantity === key);
    const names = row ? [row.quantity] : measuresOf(weights).map(({ name }) => name);
    if (!names.every((name) => draws.results[name])) return undefined;
    const wins = row
      ? shareBest(draws, row.quantity, row.better)
      : shareBestWeighted(draws, measuresOf(weights));
    counted.of.set(key, wins);
    return wins;
  };
}

/**
 * The block on one card. `shareOf` gives in how many of 100 draws this scenario wins in a row, null until drawn. Counted
 * are only what stops and what the keeper can change: where less is modelled, fewer numbers for the engineer are not safety.
 */
export function sureBlock(
  { checks }: ScenarioResult,
  weights: Weights,
  shareOf: (key: string) => string | null,
): TemplateResult {
  const found = countsText(checks, ['stop', 'change']);
  return html`<section>
      <h4><span>How sure</span></h4>
      <dl>
        ${sureRows(weights).map(({ key, label }) => {
          const share = shareOf(key);
          return html`<div class="row">
            <dt>${label}</dt>
            <dd>${share === null ? html`<span class="quiet">drawing …</span>` : share === '' ? html`<span class="quiet">nothing to compare</span>` : html`<span class="often">${share}<span class="unit"> of 100</span></span>`}</dd>
          </div>`;
        })}
        <div class="row">
          <dt>Limits checked</dt>
          <dd><button type="button" class="number" @click=${(event: Event) => ask(event.currentTarget as HTMLElement, 'wk-go', { to: 'checks' })}>${found === '' ? 'nothing to change' : found}</button></dd>
        </div>
      </dl>
    </section>`;
}

/** What the keeper weighs, and how weights make an order; nothing where nothing was weighed. */
export function weighed(weights: Weights) {
  if (sureRows(weights).length === SURE.length) return nothing;
  const words = measuresOf(weights).map(
    ({ name, better, weight }) =>
      `${COMPARISONS.find((c) => c.name === name)?.short ?? name} ${weight} (${better === 'more' ? 'more' : 'less'} is better)`,
  );
  return html`<details class="key">
      <summary>Your weights</summary>
      <p>${words.join(', ')}. In each draw the best scenario of a measure scores its whole weight, the worst nothing, the rest in proportion; one without the measure scores nothing. The highest sum is best. Change them under <code>decide</code> in the text.</p>
    </details>`;
}

/** What the keeper expects beyond the model, listed apart so that a reader can leave it out again. */
import { formatRange } from '../units/format.ts';
import { sum, whole } from './amounts.ts';
import { type Html, html, tableOf } from './html.ts';
import type { Report } from './report.ts';

export function gainsSection({ proposal: { result, finance }, results, reading, draws }: Report): Html {
  const named = results.filter(({ scenario }) => scenario.finance.gains.length > 0);
  if (named.length === 0) return html``;
  const rows = named.flatMap(({ name, scenario }) =>
    scenario.finance.gains.map((gain) => {
      const [low, high] = [gain.low ?? gain.amount, gain.high ?? gain.amount];
      return {
        cells: [
          gain.name,
          name,
          whole(gain.amount),
          low < high ? formatRange(low, high, '', { system: reading.system }).trim() : '',
          gain.cash ? 'cash' : 'worth, no cash',
          gain.because,
        ],
      };
    }),
  );
  const all = result.values.gainsPerYear ?? 0;
  const gain = finance.difference?.levelisedGain.value ?? null;
  const without =
    all > 0 && gain !== null
      ? ` Without them the even yearly sum against “${finance.difference?.baseline}” would be ${whole(gain - all)} in place of ${whole(gain)}.`
      : '';
  return html`<section><h2>Gains the keeper names</h2>
    <p>Not from the model: the keeper’s own expectation a year, in prices of ${reading.year}. They are in cost, cash, present value and cover${draws ? ', and drawn within their ranges in the draws' : ''}. “${result.name}” counts ${sum(all, reading)} a year.${without}</p>
    ${tableOf([{ head: 'Gain' }, { head: 'Scenario' }, { head: `${reading.currency} a year`, number: true }, { head: 'Range', number: true }, { head: 'As' }, { head: 'Because' }], rows)}
  </section>`;
}

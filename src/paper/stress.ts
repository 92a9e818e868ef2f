/** What a bad time does to the case, and how bad it must get before the choice turns. */
import type { StressOutcome } from '../model/money/stress.ts';
import { capital, moneyOf, type Reading } from '../plots/reading.ts';
import { levelText, tornadoFigure } from '../plots/tornado.ts';
import { formatDifference, readsTheSame } from '../units/format.ts';
import { whole } from './amounts.ts';
import { figureOf } from './figureOf.ts';
import { type Html, html, tableOf } from './html.ts';
import type { Report } from './report.ts';

/** "+4 600": how far the net cost moves as the two are shown; "about 0" where it moves by less, a dash for what is not there. */
export function changeText(outcome: StressOutcome | undefined, { plain }: Reading): string {
  const { netCost = null, netCostChange = null, lacks = null } = outcome ?? {};
  if (netCost === null || netCostChange === null || lacks !== null) return '–';
  const usual = netCost - netCostChange;
  if (netCostChange === 0) return '0';
  if (readsTheSame(usual, netCost, 'money')) return 'about 0';
  return `${netCostChange > 0 ? '+' : '−'}${formatDifference(usual, netCost, '', { plain })}`;
}

export function stressSection({
  stress,
  proposal: { result, finance },
  sensitivities,
  reading,
}: Report): Html {
  const rows = stress.map((row) => {
    const outcome = row.outcomes.find(({ name }) => name === result.name);
    const round = (value: number | null | undefined) =>
      value == null ? '–' : whole(Number(value.toPrecision(3)));
    return {
      cells: [
        capital(row.label),
        levelText(row),
        changeText(outcome, reading),
        round(outcome?.gain ?? outcome?.netPresentValue),
        outcome?.debtServiceCover == null ? '–' : outcome.debtServiceCover.toFixed(2),
        outcome?.words ?? '',
      ],
    };
  });
  const baseline = finance.difference?.baseline ?? null;
  const usual = finance.difference?.netPresentValue.value ?? finance.netPresentValue.value;
  return html`<section><h2>What could go wrong</h2>
    <p>Each stress alone, on “${result.name}”${baseline === null ? '' : ` and on “${baseline}” alike`}. As things stand the present value is ${whole(usual === null ? null : Number(usual.toPrecision(3)))} and cover ${finance.debtServiceCover.value === null ? 'none' : finance.debtServiceCover.value.toFixed(2)}; money in ${moneyOf(reading)}.</p>
    ${tableOf([{ head: 'Stress' }, { head: 'by', number: true }, { head: 'Net cost a year', number: true }, { head: 'Present value', number: true }, { head: 'Cover', number: true }, { head: 'When it turns' }], rows, 'stress')}
    ${figureOf(tornadoFigure({ scenario: result.name, baseline, sensitivities, stress }, reading), 'paper-tornado')}
  </section>`;
}

/** What a lender asks for and no program can make, as a list to tick off. */
import { NOTEBOOK_PRICES } from '../model/works/bill.ts';
import { BY_HAND } from '../notebook/moneySchema.ts';
import { percent } from './amounts.ts';
import { type Html, html } from './html.ts';
import type { Report } from './report.ts';

const SAID: Readonly<Record<(typeof BY_HAND)[number], string>> = {
  accounts: 'accounts of the last three years, with what the household draws',
  balanceSheet: 'balance sheet: land, stock, machines and all debts of the farm',
  security: 'what is offered as security, and what stands on it already',
  permission: 'planning and environmental permission, or the word that none is needed',
  grantLetter: 'letter of the grant, with its terms and the date it is paid',
  quotes: 'dated quotes for the lines of the bill that weigh most',
  engineer: 'drawings and calculation of a licensed engineer',
  insurance: 'insurance of the works while they are built and after',
  tax: 'what the tax adviser says on value added tax, depreciation and income tax',
};

/** Share of the money of the bill, not of its lines, that rests on the keeper's own quotes. */
function quoted({ proposal: { bill } }: Report): number | null {
  const amounts = bill.flatMap(({ amount, spec, basis }) =>
    amount === null || spec?.onTop || NOTEBOOK_PRICES.includes(spec?.price ?? '')
      ? []
      : [{ amount, own: basis === 'own quote' }],
  );
  const all = amounts.reduce((sum, { amount }) => sum + amount, 0);
  return all > 0 ? amounts.reduce((sum, { amount, own }) => sum + (own ? amount : 0), 0) / all : null;
}

export function byHandSection(report: Report): Html {
  const { finance } = report.proposal.result.scenario;
  const there = new Set<string>(finance.byHand);
  const grant = finance.grant > 0;
  const asked = BY_HAND.filter((id) => id !== 'grantLetter' || grant);
  const share = quoted(report);
  const said =
    share === null
      ? ''
      : ` Own quotes stand behind ${percent(Number(share.toFixed(2)))} of the money of the bill.`;
  return html`<section><h2>To be added by hand</h2>
    <p>What this paper cannot hold. ☑ lies with it, as the notebook says; ☐ is still to be added.${said}</p>
    <ul class="ticks">${asked.map((id) => html`<li>${there.has(id) ? '☑' : '☐'} ${SAID[id]}</li>`)}</ul>
  </section>`;
}

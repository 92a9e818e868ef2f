/** What can kill or ruin, what the checks found, and what was left out. */

import { caseLeftOut } from '../model/money/case.ts';
import { BILL_LEFT_OUT } from '../model/works/bill.ts';
import { inWords } from '../plots/reading.ts';
import { cautionsOf } from '../study/cautions.ts';
import { type Html, html } from './html.ts';
import type { Report } from './report.ts';

export function cautionsSection({ proposal: { result }, results }: Report): Html {
  const warned = cautionsOf(
    results,
    ({ id, theme, status }) => theme === 'caution' && status === 'look' && id !== 'slurryGas',
  );
  const open = result.checks
    .filter(({ theme, status }) => theme !== 'caution' && status !== 'pass')
    .sort((a, b) => Number(b.status === 'stop') - Number(a.status === 'stop'));
  return html`<section><h2>Cautions</h2>
    <p><b>Slurry gas kills within breaths.</b> People and animals out before any tank is stirred or emptied; nobody enters a tank.</p>
    ${warned.map(({ check, names }) => html`<p>${check.words} (${inWords(names)})</p>`)}
    <p>Loads on walls, roofs and slabs belong to a licensed engineer. Welfare, storage and spreading rules are for the local authority to say: check the local rule. Loans, tax and security belong with a professional; this paper is not financial advice. The figures are estimates with ranges, not a design and not a promise.</p>
    ${open.length === 0 ? html`<p>No limit checked on “${result.name}” needs a look.</p>` : html`<h3>Limits on “${result.name}” that need a look before building</h3><ul class="checks">${open.map(({ status, words }) => html`<li>${status === 'stop' ? html`<b>Stop: </b>` : ''}${words}</li>`)}</ul>`}
  </section>`;
}

export function leftOutSection({ proposal: { bill, result } }: Report): Html {
  const given = bill.some(({ id }) => id === 'given');
  return html`<section><h2>What was left out</h2><ul class="sources">
    ${[...(given ? [] : BILL_LEFT_OUT), ...caseLeftOut(result.scenario.farm.money), 'the risk that animals do worse in one system than in another, beyond the allowances for vet and hooves'].map((words) => html`<li>${words}</li>`)}
  </ul></section>`;
}

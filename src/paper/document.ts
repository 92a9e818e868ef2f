/** The whole paper as one HTML text: no script, nothing fetched, the same from the command and the page. */
import { answersSection } from './answers.ts';
import { assumptionsSection } from './assumptions.ts';
import { billSection } from './bill.ts';
import { byHandSection } from './byHand.ts';
import { cautionsSection, leftOutSection } from './cautions.ts';
import { financeSection, moneySection } from './finance.ts';
import { gainsSection } from './gains.ts';
import { type Html, html, made } from './html.ts';
import { notesSection } from './notes.ts';
import { otherSheds, proposalSection } from './proposal.ts';
import type { Report } from './report.ts';
import { stressSection } from './stress.ts';
import { type Paper, paperStyle } from './style.ts';
import { summarySection } from './summary.ts';
import { systemsSection } from './systems.ts';

export type { Paper } from './style.ts';

/** The lender's paper. `paper` sets the size of the pages. */
export function paperDocument(report: Report, paper: Paper): string {
  const { notebook, proposal, day } = report;
  const body = html`<header><p class="kind">The case for “${proposal.result.name}”</p><h1>${notebook.title}</h1><p class="small">${notebook.invented ? 'An invented farm: nobody asks for this loan. ' : ''}Written ${day} from a winterkeep notebook.</p></header>
    ${answersSection(report)}
    ${gaps(report)}
    ${moneySection(report)}
    ${summarySection(report)}
    ${systemsSection(report)}
    ${proposalSection(report)}
    ${billSection(report)}
    ${financeSection(report)}
    ${gainsSection(report)}
    ${stressSection(report)}
    ${assumptionsSection(report)}
    ${otherSheds(report)}
    ${cautionsSection(report)}
    ${leftOutSection(report)}
    ${byHandSection(report)}
    ${notesSection(report)}`;
  return `<!doctype html>\n${
    html`<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${notebook.title}</title><style>${made(paperStyle(paper, notebook.title))}</style></head><body>${body}</body></html>`
      .markup
  }\n`;
}

/** What cannot be reckoned or does not fit, before anything that rests on it. */
function gaps({ proposal: { faults } }: Report): Html {
  if (faults.length === 0) return html``;
  return html`<section class="gaps"><h2>Gaps in this case</h2><ul>${faults.map(({ words }) => html`<li>${words.charAt(0).toUpperCase() + words.slice(1)}.</li>`)}</ul></section>`;
}

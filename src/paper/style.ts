/** Print rules of the paper: one column, few greys, tables that break between rows and never inside one. */
import { GREYS, INK } from '../plots/palette.ts';

export type Paper = 'a4' | 'letter';

/** Words inside a CSS string. */
const quoted = (text: string) => `"${text.replace(/[\\"<]|\p{C}|\p{Zl}|\p{Zp}/gu, ' ').slice(0, 90)}"`;

export function paperStyle(paper: Paper, title: string): string {
  return `
@page { size: ${paper === 'a4' ? 'A4' : 'letter'}; margin: 15mm 15mm 17mm;
  @bottom-left { content: ${quoted(title)}; font: 8pt system-ui, "Noto Sans", "Liberation Sans", sans-serif; color: ${GREYS.quiet}; }
  @bottom-right { content: counter(page) " of " counter(pages); font: 8pt system-ui, "Noto Sans", "Liberation Sans", sans-serif; color: ${GREYS.quiet}; } }
* { box-sizing: border-box; }
html { font: 9.4pt/1.38 system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif; font-variant-numeric: tabular-nums; color: ${INK}; background: #fff; }
body { margin: 0 auto; max-width: 180mm; }
/* Letter is shorter: the same pages are set a little smaller. */
@media print { body { max-width: none; zoom: ${paper === 'a4' ? 1 : 0.95}; } }
@media screen { body { padding: 1.5rem 1rem 3rem; } table { display: block; overflow-x: auto; } }
h1 { font-size: 18pt; line-height: 1.15; margin: 0 0 1mm; }
h2 { font-size: 13pt; line-height: 1.2; margin: 6mm 0 1.5mm; break-after: avoid; }
h3 { font-size: 10pt; margin: 3.5mm 0 1mm; break-after: avoid; }
p { margin: 0 0 1.6mm; break-inside: avoid; }
p:has(+ table), p:has(+ figure), p:has(+ ul) { break-after: avoid; }
ul { margin: 0 0 2mm; padding-left: 4.5mm; }
li, ul.terms { break-inside: avoid; }
small, .small { font-size: 8pt; color: ${GREYS.quiet}; }
.kind { color: ${GREYS.quiet}; margin: 0; }
.summary dl { margin: 0; border-top: 1px solid ${INK}; }
.summary div { display: grid; grid-template-columns: 31mm 1fr; padding: 1.1mm 0; border-bottom: 1px solid ${GREYS.rule}; break-inside: avoid; }
.summary dt { font-weight: 600; }
.summary dd { margin: 0; }
.gaps { border-left: 1.6mm solid #9b1c1c; padding-left: 3mm; break-inside: avoid; margin-top: 4mm; }
.gaps h2 { margin-top: 0; }
p.gap { border-left: 1.6mm solid #9b1c1c; padding-left: 2mm; }
table { border-collapse: collapse; width: 100%; margin: 1mm 0 2.5mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { text-align: left; vertical-align: top; font-weight: 400; padding: 0.75mm 2.2mm 0.75mm 0; border-bottom: 1px solid ${GREYS.rule}; }
th:last-child, td:last-child { padding-right: 0; }
thead th { font-weight: 600; border-bottom: 1px solid ${INK}; vertical-align: bottom; line-height: 1.2; }
td.n, th.n { text-align: right; }
td.n { white-space: nowrap; }
tr.total th, tr.total td { font-weight: 600; border-bottom: 0; break-before: avoid; }
tr.total { break-before: avoid; }
tr.gap th, tr.gap td { color: #9b1c1c; }
table.systems td.n { white-space: normal; }
table.systems { table-layout: fixed; font-size: 8.4pt; line-height: 1.3; }
table.systems small { font-size: 7.6pt; }
table.systems th, table.systems td { padding-block: 0.4mm; }
table.systems th:first-child { width: 38mm; }
table.bill { font-size: 8.2pt; }
table.bill th, table.bill td { padding-block: 0.45mm; }
table.bill td:last-child { width: 36mm; }
table.years { font-size: 7.6pt; }
table.years th, table.years td { padding: 0.2mm 1.6mm 0.2mm 0; }
table.months th, table.months td { font-size: 6.7pt; padding: 0 0.9mm 0 0; white-space: nowrap; }
.ticks { list-style: none; padding-left: 0; font-size: 8.4pt; columns: 2; column-gap: 8mm; }
table.stress + figure > svg { max-height: 120mm; margin: 0 auto; }
table.assumed { font-size: 7.8pt; }
table.assumed th, table.assumed td { padding-block: 0.5mm; }
table.assumed { table-layout: fixed; }
table.assumed th { overflow-wrap: anywhere; }
table.assumed th:nth-child(1) { width: 37%; }
table.assumed th:nth-child(2) { width: 7%; }
table.assumed th:nth-child(3) { width: 14%; }
table.assumed th:nth-child(4) { width: 13%; }
table.assumed th:nth-child(5) { width: 19%; }
table.stress { font-size: 8.4pt; }
table.stress td:last-child { width: 64mm; }
.pair { display: grid; grid-template-columns: 1fr 1.25fr; gap: 8mm; }
.pair h2 { margin-top: 5mm; }
.pair table { font-size: 8.8pt; }
.pair small { display: block; white-space: normal; }
.pair td small { max-width: 48mm; margin-left: auto; }
.pair br { display: none; }
.pair th, .pair td { padding-block: 0.5mm; }
figure { margin: 2.5mm 0 3mm; break-inside: avoid; }
figure svg { max-width: 100%; height: auto; }
figure > svg { display: block; }
figure.section > svg { max-height: ${paper === 'a4' ? 68 : 52}mm; margin: 0 auto; }
figcaption { font-size: 8pt; color: ${GREYS.quiet}; margin-top: 1mm; }
.legend { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 0.6mm 4mm; font-size: 8.4pt; margin: 0 0 1.5mm; }
.legend svg { vertical-align: -2px; }
.sources, .checks { font-size: 8.4pt; }
.sources { columns: 2; column-gap: 8mm; }
`;
}

/** Which uncertain numbers decide between two scenarios, by the share of the difference's variance each explains. */

import { barX, plot, ruleX, text } from '@observablehq/plot';
import { betterOf } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Advice, Ranked, Ranking } from '../uncertainty/advice.ts';
import { formatRange } from '../units/format.ts';
import { labelIn } from '../units/inWords.ts';
import { emptyFigure, type Figure } from './figure.ts';
import { frame, textWidth } from './frame.ts';
import { GREYS, INK } from './palette.ts';
import { capital, labelOf, moneyOf, type Reading, show, unitOf } from './reading.ts';

/** Below this a label and its range do not fit one line. */
const NARROW_PX = 560;
/** Longest label in a line of this width, in characters. */
const charactersIn = (width: number) => Math.floor(width / 7.2);
/** A label within a sentence; names and symbols in capitals stay. */
const lowered = (label: string) =>
  /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
const percent = (share: number) => (share > 0 && share < 0.01 ? 'below 1 %' : `${Math.round(share * 100)} %`);

export function rankingFinding(
  ranking: Ranking | null,
  names: readonly string[],
  measure: ResultName,
  reading: Reading,
): string {
  if (!ranking)
    return `${capital(labelOf(measure))}: not both scenarios have it, so nothing decides between them.`;
  const { ranked, first, second, firstThree } = ranking;
  const between = `“${names[first]}” and “${names[second]}”`;
  if (ranked.length === 0)
    return `No uncertain number moves the difference in ${labelOf(measure)} between ${between}.`;
  const [top] = ranked;
  const worth =
    top.worth !== null && top.worth > 0
      ? ` Knowing it before choosing gains ${show(top.worth, unitOf(measure), reading, 2).text} on average.`
      : '';
  const certain = surelyFirst(ranking);
  const stands =
    certain === null
      ? ''
      : ` “${names[certain]}” is ahead in all but a few draws whatever it is: it moves by how much, not which.`;
  return `What decides most between ${between} in ${labelOf(measure)}: ${lowered(labelIn(top.label, reading.system))} (${percent(top.share)} of how far the difference varies)${ranked.length > 3 ? `; the first three together ${percent(firstThree)}` : ''}.${certain === null ? worth : stands}`;
}

/** The scenario that is ahead in more than 99.5 of 100 draws; null where either may be, or neither side is better. */
export function surelyFirst({ ahead, first, second }: Ranking): number | null {
  if (ahead === null) return null;
  return ahead > 0.995 ? first : ahead < 0.005 ? second : null;
}

/** "Weigh three bales …: settles 31 % of the difference, worth EUR 120 on average before choosing." */
export function adviceLine({ ids, words, share, worth }: Advice, ranking: Ranking, reading: Reading): string {
  const { measure } = ranking;
  // Where one is ahead whatever is measured, no measurement is worth a choice.
  const gain =
    worth !== null && worth > 0 && surelyFirst(ranking) === null
      ? `; worth ${show(worth, unitOf(measure), reading, 2).text} on average before choosing`
      : '';
  // A measurement may settle several of the numbers listed: its share is then more than that of any one.
  const several = ids.length > 1 ? ` (${ids.length} of the numbers together)` : '';
  return `${words}: settles about ${percent(share)} of how far the difference varies${several}${gain}.`;
}

export function rankingFigure(
  ranking: Ranking | null,
  names: readonly string[],
  measure: ResultName,
  reading: Reading,
): Figure {
  const finding = rankingFinding(ranking, names, measure, reading);
  if (!ranking || ranking.ranked.length === 0) return emptyFigure(finding);
  const { ranked, rest, first, second } = ranking;
  const unit = unitOf(measure);
  const overlapping = ranked.reduce((sum, { share }) => sum + share, 0) > 1 - rest + 0.05;
  const number = (value: number, r: Ranked) => show(value, r.unit, reading).number;
  const worths = ranked.some((r) => r.worth !== null);
  const favours = (r: Ranked) => {
    if (Math.abs(r.rank) < 0.02) return 'neither side steadily';
    const better = betterOf(measure);
    const up = r.rank > 0;
    return `“${names[(better === 'less' ? !up : up) ? first : second]}”`;
  };
  return {
    finding,
    legend: [],
    caption: `Share of the variance of the difference that each number explains alone${overlapping ? '; numbers that are drawn together, as prices of one market, explain the same in part, so these add up to more than they explain together' : ''}. ${rest < 0.005 ? 'Hardly anything' : percent(rest)} is left to the others and to what acts jointly.${unit.startsWith('money') ? ` Money in ${moneyOf(reading)}.` : ''}`,
    table: {
      caption: `What decides ${labelOf(measure)}`,
      head: [
        '',
        'share',
        'low',
        'best guess',
        'high',
        'unit',
        'more of it favours',
        ...(worths ? ['worth knowing first'] : []),
      ],
      rows: ranked.map((r) => [
        capital(labelIn(r.label, reading.system)),
        percent(r.share),
        number(r.low, r),
        number(r.central, r),
        number(r.high, r),
        show(1, r.unit, reading).unit,
        favours(r),
        ...(worths
          ? [r.worth === null || r.worth === 0 ? 'no more than chance' : show(r.worth, unit, reading, 2).text]
          : []),
      ]),
    },
    draw: (width) => drawRanking(ranked, reading, width),
  };
}

function drawRanking(ranked: readonly Ranked[], reading: Reading, width: number): Element {
  const most = Math.max(...ranked.map((r) => r.share));
  const { system, currency } = reading;
  const range = (r: Ranked) => {
    const yearly = r.unit === 'fraction/yr';
    const said = formatRange(r.low, r.high, yearly ? 'fraction' : r.unit, { system, currency, digits: 2 });
    return yearly ? `${said} a year` : said;
  };
  // On a phone the range stands behind the bar, so that the label keeps its line.
  const narrow = width < NARROW_PX;
  const behind = (r: Ranked) => (narrow ? `${percent(r.share)}, ${range(r)}` : percent(r.share));
  const label = (r: Ranked) => {
    const room = charactersIn(width) - (narrow ? 0 : range(r).length + 4);
    const words = capital(labelIn(r.label, reading.system));
    return `${words.length > room ? `${words.slice(0, Math.max(8, room - 1)).trimEnd()}…` : words}  `;
  };
  const rows = ranked.map((r, k) => ({ ...r, k: String(k) }));
  return plot({
    ...frame(width, 6 + 38 * rows.length),
    marginLeft: 2,
    marginRight: narrow ? Math.min(width * 0.6, Math.max(...rows.map((r) => textWidth(behind(r)))) + 12) : 74,
    marginTop: 2,
    marginBottom: 4,
    x: { domain: [0, most], axis: null },
    y: { domain: rows.map((r) => r.k), axis: null, padding: 0 },
    marks: [
      barX(rows, {
        x1: 0,
        x2: 'share',
        y: 'k',
        fill: INK,
        insetTop: 20,
        insetBottom: 8,
        title: (r) => `${capital(r.label)}, ${range(r)}: ${percent(r.share)}`,
      }),
      ruleX([0], { stroke: INK }),
      text(rows, {
        x: 0,
        y: 'k',
        dy: -9,
        dx: 2,
        textAnchor: 'start',
        fill: INK,
        text: (r) => (narrow ? label(r).trimEnd() : `${label(r)}(${range(r)})`),
      }),
      text(rows, {
        x: 'share',
        y: 'k',
        dy: 6,
        dx: 6,
        textAnchor: 'start',
        fill: GREYS.quiet,
        fontWeight: 600,
        text: behind,
      }),
    ],
  });
}

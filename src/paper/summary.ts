/** What the five answers of page one leave for a second look: the building's price, the whole cost of a year, bad times. */

import type { ResultName } from '../model/quantities.ts';
import { inWords, show } from '../plots/reading.ts';
import { levelText } from '../plots/tornado.ts';
import { pairedDifference } from '../uncertainty/percentiles.ts';
import { hundredths } from '../uncertainty/sentences.ts';
import { about, percent, span, sum } from './amounts.ts';
import { type Html, html } from './html.ts';
import type { Report } from './report.ts';
import { changeText } from './stress.ts';

interface SummaryLine {
  readonly head: string;
  readonly words: string;
}

/** Sentences, each with the word it is found by. */
function summaryLines(report: Report): SummaryLine[] {
  return [
    { head: 'To build', words: build(report) },
    { head: 'A year costs', words: yearly(report) },
    { head: 'Earns', words: earns(report) },
    { head: 'A bad time', words: badTime(report) },
    { head: 'Beside money', words: besides(report) },
  ];
}

export function summarySection(report: Report): Html {
  return html`<section class="summary"><h2>In more words</h2><dl>${summaryLines(report).map(({ head, words }) => html`<div><dt>${head}</dt><dd>${words}</dd></div>`)}</dl></section>`;
}

function build({ proposal: { result, bill }, reading }: Report): string {
  const { capitalCost, capitalCash, capitalNonCash } = result.values;
  const gaps = bill.filter(({ noPrice }) => noPrice).map(({ label }) => label);
  if (capitalCost === null)
    return `No sum can be given: no price given for ${inWords(gaps.length > 0 ? gaps : ['a line of the bill'])}.`;
  const likely = span(result.bands?.p10.capitalCost, result.bands?.p90.capitalCost, 'money', reading);
  const own = capitalNonCash
    ? `, of it ${sum(capitalCash, reading)} in cash and ${sum(capitalNonCash, reading)} in own timber and hours`
    : ', all of it in cash';
  return `${sum(capitalCost, reading)}${own}${likely === '' ? '' : `; likely ${likely}`}. ${guessed(bill)}`;
}

/** A quote has a date where its reason names a year. */
const DATED = /\b(19|20)\d\d\b/;

/** What share of the money in the bill rests on what; null where a line has no price or nothing is built. */
export function restsOn(
  bill: Report['proposal']['bill'],
): { readonly dated: number; readonly undated: number; readonly invented: number } | null {
  const whole = bill.reduce((sum, { amount }) => sum + (amount ?? Number.NaN), 0);
  if (!(whole > 0)) return null;
  const share = (of: (row: (typeof bill)[number]) => boolean) =>
    bill.filter(of).reduce((sum, { amount }) => sum + (amount ?? 0), 0) / whole;
  const quoted = ({ basis }: (typeof bill)[number]) => basis === 'own quote';
  return {
    dated: share((row) => quoted(row) && DATED.test(row.because ?? '')),
    undated: share((row) => quoted(row) && !DATED.test(row.because ?? '')),
    invented: share(({ basis }) => basis === 'invented'),
  };
}

/** How much of the money somebody has stood by, and how much nobody yet. */
export function guessed(bill: Report['proposal']['bill']): string {
  const rests = restsOn(bill);
  if (!rests) return '';
  const part = (share: number) =>
    share > 0 && share < 0.005 ? 'less than 1 %' : `${Math.round(share * 100)} %`;
  const undated = rests.undated > 0 ? `, ${part(rests.undated)} on quotes whose reason names no year` : '';
  return `Of the money in the bill ${part(rests.dated)} rests on dated quotes${undated}; ${rests.invented === 0 ? 'none of it is a guess of the makers' : `${part(rests.invented)} is the makers’ own guess until it is quoted`}.`;
}

const cap = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function yearly(report: Report): string {
  const { proposal: { result, baseline }, results, reading, draws } = report; // biome-ignore format: one line
  const { netCost, annualCost, nutrientValue } = result.values;
  if (netCost === null) return 'No sum can be given: a price is missing.';
  const likely = span(result.bands?.p10.netCost, result.bands?.p90.netCost, 'money', reading);
  const said = `${about(annualCost, reading)} with everything counted, own hours too; less ${about(nutrientValue, reading)} of nutrients kept leaves ${about(netCost, reading)}${likely === '' ? '' : ` (likely ${likely})`}`;
  const other = baseline === undefined ? undefined : results[baseline];
  if (!other || typeof other.values.netCost !== 'number') return `${said}.`;
  const more = netCost - other.values.netCost;
  const paired =
    draws?.results.netCost && baseline !== undefined
      ? pairedDifference(draws, 'netCost', report.proposal.index, baseline)
      : null;
  const share = paired ? ` Its cost is the lower in ${hundredths(paired.shareSmaller)} of 100 draws.` : '';
  return `${said}. “${other.name}” leaves ${about(other.values.netCost, reading)}, ${about(Math.abs(more), reading)} ${more > 0 ? 'less' : 'more'}.${share}`;
}

function earns({ proposal: { result, finance }, reading }: Report): string {
  const { difference } = finance;
  if (!difference) {
    const { value, why } = finance.netPresentValue;
    return value === null
      ? `No present value can be given: ${why}.`
      : `Seen alone over ${result.scenario.farm.money.horizonYears} years, ${about(value, reading)} in today’s money; ${finance.differenceWhy}.`;
  }
  const npv = difference.netPresentValue;
  if (npv.value === null) return `No present value can be given: ${npv.why}.`;
  const rate = difference.internalRateOfReturn;
  const back = difference.paybackYears;
  return `Over ${result.scenario.farm.money.horizonYears} years ${about(npv.value, reading)} in today’s money against “${difference.baseline}”. Rate of return: ${rate.rate === null ? `none, ${rate.why}` : percent(rate.rate)}. Payback: ${back.value === null ? back.why : `${back.value.toFixed(1)} years`}.`;
}

function badTime({ proposal: { result, finance }, stress, reading }: Report): string {
  const rows = stress.flatMap((row) => {
    const outcome = row.outcomes.find(({ name }) => name === result.name);
    return outcome && outcome.netCostChange !== null && outcome.lacks === null ? [{ row, outcome }] : [];
  });
  if (rows.length === 0) return 'The stresses could not be run: a price or a term is missing.';
  const worst = [...rows].sort((a, b) => (b.outcome.netCostChange ?? 0) - (a.outcome.netCostChange ?? 0))[0];
  const thin = rows
    .filter(({ outcome }) => outcome.debtServiceCover !== null)
    .sort((a, b) => (a.outcome.debtServiceCover ?? 0) - (b.outcome.debtServiceCover ?? 0))[0];
  const cover =
    thin && finance.debtServiceCover.value !== null
      ? ` Cover is thinnest, ${thin.outcome.debtServiceCover?.toFixed(2)}, with ${thin.row.label} by ${levelText(thin.row)}.`
      : '';
  if (!((worst.outcome.netCostChange ?? 0) > 0))
    return `None of the bad times tried makes a year dearer.${cover}`;
  const turns = worst.outcome.words.replace(/^(stays|is behind|does not)/, `“${result.name}” $1`);
  const more = `${reading.currency} ${changeText(worst.outcome, reading).replace('+', '')}`;
  return `${cap(worst.row.label)} by ${levelText(worst.row)} costs most: ${more} more a year; ${turns}.${cover}`;
}

function besides({ proposal: { result, baseline }, results, reading }: Report): string {
  const other = baseline === undefined ? undefined : results[baseline];
  const pair = (name: ResultName, unit: string) => {
    const here = show(result.values[name], unit, reading).text;
    const there = other?.values[name];
    return typeof there === 'number' ? `${here} against ${show(there, unit, reading).text}` : here;
  };
  const stops = result.checks.filter(({ status }) => status === 'stop').length;
  const looks = result.checks.filter(({ status, theme }) => status === 'look' && theme !== 'caution').length;
  const compost =
    typeof result.values.compostTonnes === 'number'
      ? ` ${show(result.values.compostTonnes, 't', reading).text} of compost a year.`
      : '';
  return `Nitrogen kept ${pair('nitrogenKeptKg', 'kg')}; hours a winter ${pair('labourHours', 'h')}.${compost} Of the limits checked, ${stops === 0 ? 'none is broken' : `${stops} ${stops === 1 ? 'is' : 'are'} broken`} and ${looks} need a look.`;
}

/** Page one: the case in five answers. What they rest on follows in the sections behind. */

import { type CaseYear, caseLeftOut } from '../model/money/case.ts';
import { BILL_LEFT_OUT } from '../model/works/bill.ts';
import { SYSTEMS } from '../notebook/systems.ts';
import { inWords, show } from '../plots/reading.ts';
import { levelText } from '../plots/tornado.ts';
import { hundredths } from '../uncertainty/sentences.ts';
import { type Need, PRICE_REACH } from '../whatif/needs.ts';
import { about, percent, sum } from './amounts.ts';
import { budgetOf } from './budget.ts';
import { type Html, html } from './html.ts';
import { dayText, type Report } from './report.ts';
import { guessed } from './summary.ts';
import { lowestWords } from './yearTables.ts';

export interface AnswerLine {
  readonly head: string;
  readonly words: string;
}

/** Five answers, each with the question it is found by. */
export function answerLines(report: Report): AnswerLine[] {
  return [
    { head: 'What is asked', words: asked(report) },
    { head: 'What it does to cash', words: cash(report) },
    { head: 'Is the payment covered', words: covered(report) },
    { head: 'What would make it pay', words: pays(report) },
    { head: 'What was left out', words: leftOut(report) },
  ];
}

export function answersSection(report: Report): Html {
  return html`<section class="summary"><h2>In five lines</h2><dl>${answerLines(report).map(({ head, words }) => html`<div><dt>${head}</dt><dd>${words}</dd></div>`)}</dl></section>`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const sentence = (text: string) => (/[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`);

function asked(report: Report): string {
  const { proposal: { result, bill }, notebook, reading } = report; // biome-ignore format: one line
  const { farm, finance } = result.scenario;
  const herd = inWords(farm.herd.map(({ head, name }) => `${head} ${name}`));
  const invented = notebook.invented && !/invented/.test(farm.place.name) ? ' The farm is invented.' : '';
  const where = `${farm.place.name}: ${herd}, ${show(result.values.winterDays, 'd', reading).number} winter days from ${dayText(farm.winter.start)}.${invented} “${result.name}”, ${SYSTEMS[result.system].label}. ${sentence(result.scenario.because)}`;
  const { lines, unforeseen, cash: budget, own, gap } = budgetOf(report);
  const gaps = bill.filter(({ noPrice }) => noPrice).map(({ label }) => label);
  if (budget === null)
    return `${where} No sum can be given: no price given for ${inWords(gaps.length > 0 ? gaps : ['a line of the bill'])}.`;
  const parts = [
    ...finance.loans.map(
      ({ name, amount, rate, years, graceYears, kind }) =>
        `${name}, ${sum(amount, reading)} at ${percent(rate)} over ${years} years${kind === 'straightLine' ? ' in equal parts of principal' : ''}${graceYears > 0 ? `, the first ${graceYears === 1 ? 'year' : `${graceYears} years`} interest only` : ''}`,
    ),
    ...((result.values.grantUsed ?? 0) > 0 ? [`a grant of ${sum(result.values.grantUsed, reading)}`] : []),
    `own money of ${sum(own, reading)}${unforeseen !== null && unforeseen > 0.5 && own !== null && own > unforeseen + 0.5 ? `, of it ${sum(own - unforeseen, reading)} for the lines of the bill` : ''}`,
  ];
  const works =
    unforeseen === null
      ? `The works take ${sum(budget, reading)} in cash`
      : `The works are budgeted at ${sum(budget, reading)} in cash, of it ${sum(unforeseen, reading)} for the unforeseen (in 80 of 100 draws they cost no more; the bill comes to ${sum(lines, reading)})`;
  const found = (gap ?? 0) > 0.5 ? ` ${sum(gap, reading)} is still to be found.` : '';
  return `${where} ${works}, paid by: ${parts.join('; ')}.${found}`;
}

/** The years in which the loans take most, as they fall: "in year 3 only", "in years 2 to 15". */
export function heaviestYears(years: readonly Pick<CaseYear, 'year' | 'interest' | 'principal'>[]): string {
  const paid = years.map(({ year, interest, principal }) => ({ year, payment: -(interest + principal) }));
  const most = Math.max(...paid.map(({ payment }) => payment));
  const at = paid.filter(({ payment }) => payment > most - 0.005).map(({ year }) => year);
  if (at.length === 1) return `in year ${at[0]} only`;
  const straight = at[at.length - 1] - at[0] === at.length - 1;
  return `in years ${straight ? `${at[0]} to ${at[at.length - 1]}` : inWords(at.map(String))}`;
}

function payment({ proposal: { result, finance }, reading }: Report): string {
  if (result.scenario.finance.loans.length === 0) return 'Nothing is borrowed.';
  const { value, why } = finance.loanPayment;
  if (value === null) return `No payment can be given: ${why}.`;
  const last = Math.max(...result.scenario.finance.loans.map(({ years }) => years));
  return `The loans take at most ${sum(value, reading)} a year, ${heaviestYears(finance.years)}; the last payment falls in year ${last}, and interest comes to ${sum(result.values.loanInterest, reading)} in all.`;
}

function cash(report: Report): string {
  const { proposal: { result, baseline }, results, reading } = report; // biome-ignore format: one line
  const { operatingCashCost, incomePerYear, loanPayment } = result.values;
  if (operatingCashCost == null) return 'No sum can be given: a price is missing.';
  const other = baseline === undefined ? undefined : results[baseline];
  const before = other?.values.operatingCashCost;
  const against =
    typeof before === 'number' && other
      ? `, ${about(Math.abs(operatingCashCost - before), reading)} ${operatingCashCost > before ? 'more' : 'less'} than “${other.name}”`
      : '';
  const already = result.scenario.farm.money.debtServicePerYear;
  const gained = result.values.gainsInCash ?? 0;
  const left =
    incomePerYear != null
      ? ` Of the ${sum(incomePerYear, reading)} a year the herd brings, ${about(incomePerYear + gained - operatingCashCost - (loanPayment ?? 0) - already, reading)} is left after the winter and ${already > 0 ? 'all loans, old and new' : 'the loans'} in the year they take most${gained > 0 ? `, with ${sum(gained, reading)} of gains the keeper names` : ''}.`
      : '';
  return `The winter takes ${about(operatingCashCost, reading)} a year in cash${against}. ${payment(report)}${left} ${lowestWords(result, reading)}`;
}

function covered(report: Report): string {
  const { proposal: { result, finance, index }, run, reading, chances, stress } = report; // biome-ignore format: one line
  const { value, why } = finance.debtServiceCover;
  if (value === null) return `No cover can be given: ${why}.`;
  const from =
    finance.coverFrom === 'income'
      ? 'from the income the farm names (taken as sure), less what the winter costs in cash'
      : 'from the cash saved against the baseline';
  const drawn = chances(index);
  const sure =
    drawn?.cover && drawn.covered !== null
      ? ` The payment is covered in ${hundredths(drawn.covered)} of 100 draws; 8 of 10 draws lie between ${drawn.cover.p10.toFixed(2)} and ${drawn.cover.p90.toFixed(2)}.`
      : '';
  const least = run.tables.coefficients.get('lenderCoverLeast');
  const usual = least ? ` Lenders like to see ${least.central} (${least.basis}).` : '';
  const { headCount, operatingCashCost, loanPayment, gainsInCash } = result.values;
  const needed =
    finance.coverFrom === 'income' && headCount && operatingCashCost != null && loanPayment != null
      ? ` It is met as long as the herd brings ${sum((operatingCashCost - (gainsInCash ?? 0) + loanPayment + result.scenario.farm.money.debtServicePerYear) / headCount, reading)} a head and year; the farm names ${sum(result.scenario.farm.money.incomePerHead, reading)}.`
      : '';
  const thin = stress
    .flatMap((row) => {
      const outcome = row.outcomes.find(({ name }) => name === result.name);
      return outcome?.debtServiceCover == null || outcome.lacks !== null
        ? []
        : [{ row, cover: outcome.debtServiceCover }];
    })
    .sort((a, b) => a.cover - b.cover)[0];
  const bad = thin
    ? ` Of the bad times tried, ${thin.row.label} by ${levelText(thin.row)} leaves least: ${thin.cover.toFixed(2)}.`
    : '';
  return `${value.toFixed(2)} times the payment, ${from}.${sure}${usual}${needed}${bad}`;
}

/** "barley straw", "an hour of own work", "the works". */
const nameOf = ({ kind, label }: Need) =>
  kind === 'hour' ? 'an hour of own work' : label.replace(/^price of (.*?)( as (delivered|fed))?$/, '$1');

function level({ kind, unit }: Need, value: number, reading: Report['reading']): string {
  if (kind === 'works') return about(value, reading);
  const money = value < 1000 ? `${reading.currency} ${Number(value.toPrecision(3))}` : about(value, reading);
  return unit.endsWith('/t') ? `${money} a tonne` : money;
}

/** The level at which it begins or stops to pay, said from where things stand. */
function needWords(need: Need, reading: Report['reading']): string {
  const { at, now, kind } = need;
  if (at === null) return '';
  const limit = `${level(need, at, reading)} (now ${level(need, now, reading)})`;
  if (kind === 'hour') return `${nameOf(need)} is worth ${at < now ? 'less' : 'more'} than ${limit}`;
  if (kind === 'works') return `the works cost ${at < now ? 'less' : 'more'} than ${limit}`;
  return `${nameOf(need)} ${at < now ? 'falls below' : 'rises above'} ${limit}`;
}

function pays(report: Report): string {
  const { proposal: { result, finance, index }, reading, chances, needs } = report; // biome-ignore format: one line
  const { difference } = finance;
  const { horizonYears } = result.scenario.farm.money;
  if (!difference) return `Nothing to hold it against: ${finance.differenceWhy}.`;
  const worth = difference.netPresentValue.value;
  if (worth === null) return `No present value can be given: ${difference.netPresentValue.why}.`;
  const drawn = chances(index);
  const sure = drawn?.pays == null ? '' : `, and they pay in ${hundredths(drawn.pays)} of 100 draws`;
  const stands = `Over ${horizonYears} years the works are worth ${about(worth, reading)} in today’s money against “${difference.baseline}”, own hours and nutrients${(result.values.gainsPerYear ?? 0) > 0 ? ' and the gains the keeper names' : ''} counted${sure}.`;
  const gain = difference.levelisedGain.value;
  const heads = result.values.headCount;
  const perHead =
    gain === null || !heads
      ? ''
      : gain < 0
        ? ` It needs ${sum(Math.ceil(-gain / heads), reading)} more for each head and year, in prices of ${reading.year}.`
        : ` It could bear ${sum(Math.floor(gain / heads), reading)} less for each head and year, in prices of ${reading.year}.`;
  const now = worth > 0;
  const found = needs.filter(({ at }) => at !== null).map((need) => needWords(need, reading));
  const turns =
    found.length > 0 ? ` It ${now ? 'stops paying' : 'pays'}, each alone, if ${found.join(', or if ')}.` : '';
  const never = needs.filter(({ at, kind }) => at === null && kind !== 'works').map(nameOf);
  const not =
    never.length > 0
      ? ` No price of ${never.join(' or ')} from nothing to ${PRICE_REACH} times today’s turns it.`
      : '';
  return `${stands}${perHead}${turns}${not}${reason(report)}`;
}

/** Why a case that does not pay may still be done: the keeper's own words, or that there are none. */
function reason({ proposal: { result, finance } }: Report): string {
  const worth = finance.difference?.netPresentValue.value ?? null;
  const own = result.scenario.finance.reason;
  if (worth === null || worth > 0) return own === undefined ? '' : ` The keeper’s own reason: “${own}”`;
  return own === undefined
    ? ' Why it might still be done: no reason was given.'
    : ` Why it might still be done, in the keeper’s own words: “${own}”`;
}

function leftOut({ proposal: { bill, result } }: Report): string {
  const given = bill.some(({ id }) => id === 'given');
  const { gains } = result.scenario.finance;
  const beyond =
    gains.length === 0
      ? 'and gains the model does not hold, such as calves saved or a payment for welfare: none is named'
      : `and gains beyond the ${gains.length === 1 ? 'one' : gains.length} the keeper names`;
  return `${capital([...caseLeftOut(result.scenario.farm.money), ...(given ? [] : BILL_LEFT_OUT)].join('; '))}; ${beyond}. ${guessed(bill)}`;
}

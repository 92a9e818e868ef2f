/** The answer in words: one table of sentences for page, command and paper. Each is true against the answer it is given. */

import { titleOf } from '../model/checks/titles.ts';
import { COMPARISONS } from '../model/measures.ts';
import { hundredthsOf } from '../uncertainty/sentences.ts';
import { formatDifference } from '../units/format.ts';
import { labelIn } from '../units/inWords.ts';
import { WHOLE_UNITS } from '../whatif/sweep.ts';
import type { Answer, Apart } from './answer.ts';
import { inWords, type Reading, show, unitOf } from './reading.ts';

export interface AnswerWords {
  /** Which way, in one sentence. */
  readonly lead: string;
  /** The sentences that follow, in order. */
  readonly rest: readonly string[];
}

const quoted = (name: string) => `“${name}”`;
const compared = (name: string) => COMPARISONS.find((c) => c.name === name);
const percent = (share: number) => `${Math.max(1, Math.round(share * 100))} %`;
const lowered = (text: string) =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

export function answerWords(answer: Answer, reading: Reading): AnswerWords {
  return {
    lead: LEADS[answer.state](answer, reading),
    rest: [
      stopped(answer),
      beside(answer, reading),
      turned(answer, reading),
      doubted(answer, reading),
      missed(answer),
    ].filter((sentence) => sentence !== ''),
  };
}

type Say = (answer: Answer, reading: Reading) => string;

const LEADS: Readonly<Record<Answer['state'], Say>> = {
  unknown: (a) =>
    `Which way cannot be said: no scenario has ${a.weighed ? 'a figure for what you weigh' : `a ${noun(a)}`}; a price may be missing.`,
  alone: (a, r) =>
    `There is one scenario, ${quoted(a.names[0])}, so there is nothing to choose between${a.weighed ? '' : `; it has a ${noun(a)} of ${amountIn(a, 0, r)}`}.`,
  single: (a, r) =>
    `Only ${quoted(a.names[a.first])} has ${a.weighed ? 'a figure for what you weigh' : `a ${noun(a)}`}${a.weighed ? '' : ` (${amountIn(a, a.first, r)})`}: for the others a price may be missing, so nothing decides.`,
  tie: (a, r) => {
    const who = inWords(a.tied.map((k) => quoted(a.names[k])));
    const next = a.weighed ? '' : `, ${amountIn(a, a.first, r)}`;
    return `Nothing decides: ${who} ${a.weighed ? `score the same ${byWeights(a)}` : `read the same in ${noun(a)}${next}`}${a.shares ? `; ${quoted(a.names[a.first])} is first ${timesFirst(a, a.first)}` : ''}.`;
  },
  split: (a, r) =>
    `Nothing decides: by the best guesses ${quoted(a.names[a.first])} ${a.weighed ? `comes first ${byWeights(a)}` : `${most(a)}, ${gap(a, r)} ${than(a)}`}, but in the draws ${quoted(a.names[a.inDraws ?? a.first])} is first more often: ${timesFirst(a, a.inDraws ?? a.first)}.`,
  little: (a, r) =>
    `Little decides: ${quoted(a.names[a.first])} ${a.weighed ? `comes first ${byWeights(a)}, ${next(a)}` : `${most(a)}, ${amountIn(a, a.first, r)}, ${gap(a, r)} ${than(a)}`}${sure(a)}.`,
  led: (a, r) =>
    `${quoted(a.names[a.first])} ${a.weighed ? `comes first ${byWeights(a)}, ${next(a)}` : `${most(a)}: ${amountIn(a, a.first, r)}, ${gap(a, r)} ${than(a)}`}${sure(a)}.`,
};

/** "net cost a year", of the one measure that decides. */
const noun = (a: Answer) => compared(a.measures[0].name)?.short ?? a.measures[0].name;
const amountIn = (a: Answer, k: number, reading: Reading) =>
  show(a.values[k], unitOf(a.measures[0].name), reading).text;
const next = (a: Answer) => `${quoted(a.names[a.second ?? a.first])} next`;
const than = (a: Answer) => `than ${quoted(a.names[a.second ?? a.first])}, the next best`;
/** "by your weights of nitrogen kept and net cost a year". */
const byWeights = ({ measures }: Answer) =>
  `by your weights of ${inWords(measures.map(({ name }) => compared(name)?.short ?? name))}`;

/** "costs least net a year". */
function most({ measures: [{ name, better }] }: Answer): string {
  const found = compared(name);
  return `${found?.verb} ${better === 'more' ? 'most' : 'least'} ${found?.noun}`;
}

/** "EUR 1 300 less". */
function gap(a: Answer, reading: Reading): string {
  const [{ name, better }] = a.measures;
  const [first, second] = [a.first, a.second ?? a.first].map((k) => Number(a.values[k]));
  return `${formatDifference(first, second, unitOf(name), reading)} ${better === 'more' ? 'more' : 'less'}`;
}

/** "; it is first in 85 of 100 draws, “Slats” in 15"; empty until drawn. */
const sure = (a: Answer) => (a.shares ? `; it is first ${timesFirst(a, a.first)}` : '');

/** "in 85 of 100 draws, “Slats” in 15": the one asked for, then the others that are ever first. */
function timesFirst({ shares = [], names }: Answer, of: number): string {
  const said = hundredthsOf(shares);
  const others = names.flatMap((name, k) =>
    k !== of && shares[k] > 0 ? [`${quoted(name)} in ${said[k]}`] : [],
  );
  return `in ${said[of]} of 100 draws${others.length === 0 ? '' : `, ${inWords(others)}`}`;
}

/** What else sets the two apart: for and against. */
function beside({ state, apart, measures, weighed, names, first, second }: Answer, reading: Reading): string {
  if (second === null || state === 'unknown' || state === 'single') return '';
  const told = apart.filter(({ name }) => weighed || name !== measures[0].name);
  const isFor = ({ better, first, second }: Apart) => (better === 'more' ? first > second : first < second);
  const [pros, cons] = [told.filter(isFor), told.filter((each) => !isFor(each))].map((list) =>
    inWords(list.map((each) => apartWords(each, reading))),
  );
  if (pros === '' && cons === '') return '';
  // Where two are named as leaders "it" would be either.
  const it = state === 'split' || state === 'tie' ? quoted(names[first]) : 'it';
  const against = `Against ${quoted(names[second])} ${it} `;
  if (cons === '') return `${against}${weighed ? '' : 'also '}${pros}.`;
  if (pros === '') return `${against}${cons}.`;
  return `${against}${weighed ? '' : 'also '}${pros}, but ${cons}.`;
}

function apartWords({ name, first, second }: Apart, reading: Reading): string {
  const found = compared(name);
  const amount = formatDifference(first, second, unitOf(name), reading);
  return `${found?.verb} ${amount} ${first > second ? 'more' : 'less'} ${found?.noun}`;
}

function stopped({ state, stops, unstopped, names, first }: Answer): string {
  if (stops.length === 0) return '';
  const titles = inWords([...new Set(stops.map(({ id }) => titleOf(id)))].slice(0, 3));
  const more = stops.length > 3 ? ` and ${stops.length - 3} more` : '';
  const works = `As written ${quoted(names[first])} does not work: ${titles}${more} ${stops.length === 1 ? 'stops' : 'stop'} it`;
  if (state === 'alone' || state === 'unknown' || state === 'single') return `${works}.`;
  if (unstopped === null) return `${works}, and the others are stopped as well.`;
  return `${works}. Of those that nothing stops, ${quoted(names[unstopped])} comes first.`;
}

function turned({ state, overtakes, names, first }: Answer, reading: Reading): string {
  if (!overtakes || !['led', 'little', 'split'].includes(state) || overtakes.first !== first) return '';
  const { nearest, looked } = overtakes;
  if (!nearest)
    return `None of the ${looked} numbers behind it, turned alone to either end of its likely range, or to half and to twice where it has none, puts another first.`;
  const { label, unit, now, at, by, note, only } = nearest;
  const where = only ? ` of ${inWords(only.map((k) => quoted(names[k])))}` : '';
  const said = (value: number) => show(value, unit, reading, 3).text;
  const whole = WHOLE_UNITS.has(unit);
  const what = `${whole ? '' : 'about '}${said(at)} instead of ${said(now)}`;
  return `The nearest number that would turn it is ${lowered(labelIn(label, reading.system))}${where}: at ${what} ${quoted(names[by])} is first${note ? ` (${note})` : ''}.`;
}

function doubted({ doubt, shares, first, state }: Answer, reading: Reading): string {
  if (!doubt || state === 'alone' || state === 'unknown' || state === 'single') return '';
  const certain = shares !== undefined && shares[first] > 0.995;
  const moves = certain
    ? 'of how far the lead varies, which does not change who is first'
    : 'of how far the lead varies';
  const range = doubt.unit === 'form' || doubt.unit === 'logit' ? '' : `, ${spanOf(doubt, reading)}`;
  const most = `Most doubtful is ${lowered(labelIn(doubt.label, reading.system))}${range}: ${percent(doubt.share)} ${moves}.`;
  if (certain || doubt.measure === undefined) return most;
  return `${most} ${doubt.measure}: that settles about ${percent(doubt.measureShare ?? 0)}.`;
}

function spanOf({ low, high, unit }: { low: number; high: number; unit: string }, reading: Reading): string {
  return `${show(low, unit, reading).number} to ${show(high, unit, reading).text}`;
}

function missed({ missing: { prices, unsourced, unsaid } }: Answer): string {
  const parts = [
    ...(unsourced > 0 ? [`a source for ${unsourced} of the ${prices} prices in use`] : []),
    ...unsaid,
  ];
  return parts.length === 0 ? '' : `Missing: ${inWords(parts)}.`;
}

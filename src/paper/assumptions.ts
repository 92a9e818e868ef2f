/** On whose word: terms, own numbers, the prices and coefficients that decide, with source and basis. */
import type { Binding } from '../model/bind.ts';
import { CATALOGUE, type ResultName } from '../model/quantities.ts';
import { capital, moneyOf, show } from '../plots/reading.ts';
import { rangeText } from '../plots/tornado.ts';
import type { Run } from '../study/evaluate.ts';
import type { Basis, Source } from '../tables/coefficient.ts';
import { percent, sum, whole } from './amounts.ts';
import { type Html, html, tableOf } from './html.ts';
import { priceWords } from './priceYears.ts';
import { dayText, type Report } from './report.ts';

export const BASIS_SAID: Readonly<Record<Basis, string>> = {
  published: 'read in the source',
  derived: 'computed from what the source gives',
  'common practice': 'a rule of thumb of the trade',
  'from memory': 'known to the makers, not looked up again',
  invented: 'the makers’ own guess',
};

/** Every number of the tables a scenario is computed with. */
export function rowsUsed(run: Run, index: number): Binding[] {
  return [...run.bound[index].bindings.values()].filter(
    ({ coefficient, origin }) => coefficient !== undefined || origin === 'missing',
  );
}

/** Numbers the keeper put in place of the tables. */
export function ownNumbers(run: Run, index: number): Binding[] {
  return [...run.bound[index].bindings.values()].filter(({ origin }) => origin === 'override');
}

/** What is bought at a price, so that a price nothing is bought at need not be read. */
const BOUGHT: Readonly<Record<string, ResultName>> = {
  tractorPricePerHour: 'tractorHours',
  chippingPricePerHour: 'chippingHours',
  slurrySpreadPricePerHour: 'contractorSlurryHours',
  agitatePricePerHour: 'contractorAgitatingHours',
  solidSpreadPricePerHour: 'contractorSolidHours',
  grassPricePerTonne: 'grassLostTonnes',
  reseedPricePerHa: 'reseedHa',
  compostPricePerTonne: 'compostTonnes',
};

/** What cost and worth of a year read directly. */
const YEARLY = new Set(
  [...CATALOGUE.entries.values()]
    .filter(({ part }) => part === 'costs' || part === 'value')
    .flatMap(({ from }) => from),
);

/** Prices the yearly cost is made of, where something is bought at them. */
function yearlyPrices(run: Run, index: number): Binding[] {
  return [...run.bound[index].bindings.values()].filter(
    ({ column, origin, value }) =>
      (origin === 'price' ||
        origin === 'missing' ||
        (origin === 'override' && Number.isFinite(value)) ||
        /^(material|feed)\d+PricePerTonne$/.test(column)) &&
      (YEARLY.has(column) || /^(material|feed)\d+PricePerTonne$/.test(column)) &&
      /Price/.test(column) &&
      !(column in BOUGHT && !run.results[index].values[BOUGHT[column]]),
  );
}

export const sourceText = ({ author, title, year }: Source) =>
  [author, title, year].filter((part) => part !== '').join(', ');

export function assumptionsSection(report: Report): Html {
  const { proposal, run, sensitivities, reading } = report;
  const index = proposal.index;
  const own = ownNumbers(run, index);
  const prices = yearlyPrices(run, index);
  const used = rowsUsed(run, index);
  const bindings = [...run.bound[index].bindings.values()];
  const deciding = sensitivities.rows.flatMap(
    ({ id }) =>
      bindings.find((b) => b.id === id) ??
      run.bound.flatMap((b) => [...b.bindings.values()]).find((b) => b.id === id) ??
      [],
  );
  const noted = [
    ...new Set(
      [
        ...deciding,
        ...prices,
        ...proposal.bill.flatMap(({ spec }) =>
          spec ? (run.bound[index].bindings.get(spec.price) ?? []) : [],
        ),
      ].flatMap(({ coefficient }) => (coefficient ? [coefficient.source] : [])),
    ),
  ].filter((id) => id !== 'own' && id !== 'commonPractice');
  const counts = (Object.keys(BASIS_SAID) as Basis[]).map((basis) => ({
    basis,
    count: used.filter((b) => b.coefficient?.basis === basis && b.origin !== 'override').length,
  }));
  const number = (value: number, unit: string) =>
    Number.isFinite(value)
      ? unit.startsWith('fraction')
        ? rangeText(value, 'fraction', reading)
        : show(value, '', reading).text
      : 'no price given';
  const row = (b: Binding) => ({
    cells: [
      capital(b.label),
      number(b.value, b.unit),
      b.low < b.high ? `${number(b.low, b.unit)} to ${number(b.high, b.unit)}` : '',
      b.unit === 'fraction'
        ? ''
        : b.unit === 'fraction/yr'
          ? 'a year'
          : `${b.unit.replace('money', reading.currency)}${b.coefficient?.year === undefined || b.origin !== 'price' ? '' : `, ${b.coefficient.indexed ? `${b.coefficient.year} → ${b.coefficient.indexed.year}` : b.coefficient.year}`}`,
      b.origin === 'override'
        ? `own: ${b.because ?? ''}`
        : b.origin === 'input'
          ? 'the notebook'
          : b.coefficient
            ? short(b, run)
            : 'missing',
      b.origin === 'override' || b.origin === 'input' ? 'own' : (b.coefficient?.basis ?? ''),
    ],
    ...(Number.isFinite(b.value) ? {} : { look: 'gap' as const }),
  });
  const columns = [
    { head: 'Number' },
    { head: 'Value', number: true },
    { head: 'Range', number: true },
    { head: 'Unit' },
    { head: 'Source' },
    { head: 'Basis' },
  ];
  return html`<section><h2>Assumptions</h2>
    ${terms(report)}
    <h3>Prices the year is reckoned with</h3>${tableOf(columns, prices.map(row), 'assumed')}
    <h3>Numbers that move the present value most</h3>${tableOf(columns, deciding.map(row), 'assumed')}
    ${own.length === 0 ? html`<p>The keeper has put no own number in place of the tables.</p>` : html`<h3>Own numbers in place of the tables</h3>${tableOf(columns, own.map(row), 'assumed')}`}
    <p>In all ${used.length} numbers of the tables stand behind “${proposal.result.name}”: ${counts
      .filter(({ count }) => count > 0)
      .map(
        ({ basis, count }, k) => html`${k > 0 ? '; ' : ''}${count} ${basis} (${BASIS_SAID[basis]})`,
      )}. Each can be opened in the notebook, down to its place in the source.</p>
    ${noted.length === 0 ? '' : html`<h3>Sources named above</h3><ul class="sources">${noted.map((id) => html`<li>${sourceText(run.tables.sources.get(id) ?? { id, author: '', title: id, year: '' })}</li>`)}</ul>`}
  </section>`;
}

/** The author stands for the source in a table; the list below has the rest. */
function short({ coefficient }: Binding, { tables }: Run): string {
  if (!coefficient) return '';
  if (coefficient.source === 'own') return 'own judgement';
  const source = tables.sources.get(coefficient.source);
  return source
    ? [source.author, source.year].filter((part) => part !== '' && part !== 'undated').join(' ')
    : coefficient.source;
}

function terms({ proposal: { result, index }, run, reading, draws }: Report): Html {
  const { money, winter } = result.scenario.farm;
  const rates = [
    `Discounted at ${percent(money.interestRate)} a year over ${money.horizonYears} years; prices rise ${percent(money.inflation)} a year, the same for every scenario; loans have their own rates; tax left out.`,
    `Money in ${moneyOf(reading)}; an hour of own work counts ${sum(money.labourPerHour, reading)}.`,
    `Winter from ${dayText(winter.start)} to ${dayText(winter.end)}; weather: ${run.weather[run.weatherIndex[index]].label}.`,
    `Prices: ${priceWords(run, index)}`,
    draws
      ? `Spans from ${whole(draws.count)} draws (seed ${draws.seed}), every number with a range drawn at once, the same for every system.`
      : 'No draws were made: figures stand without spans.',
  ];
  return html`<ul class="terms">${rates.map((text) => html`<li>${text}</li>`)}</ul>`;
}

/** Rows of the coefficient and price tables, each refused unless it says what it is, how sure and whence. */
import type { Problem } from '../units/problem.ts';
import { basisFault, sourceFault } from './citation.ts';
import {
  type Basis,
  type Coefficient,
  FORM,
  type Movement,
  PRICE_TERMS,
  type PriceTerms,
  type Source,
  VAT_STATES,
  type VatState,
} from './coefficient.ts';
import { type CsvRecord, readCsv } from './csv.ts';
import { MEASURING_FILE, measuringWords, namesOption } from './measuring.ts';
import { MOVEMENTS_FILE } from './movements.ts';
import { LEAST_PLACE, shapeOfMean } from './publishedMean.ts';
import { unitSpan } from './unitSpans.ts';

/** Dimension of a choice → its options: texture → sand, loamySand … Families are dimensions too. */
export type ChoiceOptions = Readonly<Record<string, readonly string[]>>;

export interface RowContext {
  readonly sources: ReadonlyMap<string, Source>;
  readonly choices: ChoiceOptions;
  /** Groups and advice that rows may name, by name and id. */
  readonly movements: ReadonlyMap<string, Movement>;
  readonly measuring: ReadonlyMap<string, string>;
  readonly kind: 'coefficient' | 'price';
}

const REQUIRED = 'id,choice,low,central,high,unit,appliesTo,source,where,basis,note'.split(',');
const PRICE = [...REQUIRED, 'currency', 'year'];
const MOVES = ['movesWith', 'measureBy'];
const OPTIONAL = [...MOVES, 'stated'];
const PRICE_OPTIONAL = [...MOVES, 'country', 'vat', 'terms'];
const ID = /^[a-z][A-Za-z0-9]*(\.[A-Za-z][A-Za-z0-9-]*)?$/;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
/** In `stated`: the source gives a mean in the place of `central`, and a 95 % range. */
const STATED_MEAN = 'mean';
/** Sources that are nobody's publication: a row may rest on them, but not call itself published. */
const UNPUBLISHED = ['own', 'commonPractice'];

/** The rows of one file that hold, and what is wrong with the others. Units are as written in the row. */
export function readCoefficients(file: string, text: string, context: RowContext) {
  const columns =
    context.kind === 'price'
      ? { required: PRICE, optional: PRICE_OPTIONAL }
      : { required: REQUIRED, optional: OPTIONAL };
  const { records, problems: found } = readCsv(file, text, columns);
  const rows: Coefficient[] = [];
  const problems: Problem[] = [...found];
  for (const record of records) {
    const wrong = rowProblems(file, record, context);
    if (wrong.length === 0) rows.push(toCoefficient(file, record, context));
    problems.push(...wrong);
  }
  return { rows, problems };
}

function toCoefficient(
  file: string,
  { line, values: v }: CsvRecord,
  { kind, movements, measuring }: RowContext,
): Coefficient {
  const [name, option] = v.id.split('.') as [string, string | undefined];
  const movesWith = movements.get(v.movesWith);
  const advice = measuring.get(v.measureBy);
  const [low, given, high] = [v.low, v.central, v.high].map(Number);
  const shape = v.stated === STATED_MEAN ? shapeOfMean(low, given, high) : null;
  const money =
    kind === 'price'
      ? {
          currency: v.currency,
          year: Number(v.year),
          ...(v.country && { country: v.country }),
          ...(v.vat && { vat: v.vat as VatState }),
          ...(v.terms && { terms: v.terms as PriceTerms }),
        }
      : {};
  return {
    id: v.id,
    name,
    option,
    choice: v.choice === '' ? undefined : v.choice,
    low,
    central: shape ? shape.middle : given,
    high,
    ...(shape && { mean: { value: given, shape } }),
    unit: v.unit,
    appliesTo: v.appliesTo,
    source: v.source,
    where: v.where,
    basis: v.basis as Basis,
    note: v.note,
    at: { file, line },
    ...(movesWith && { movesWith }),
    ...(advice !== undefined && { measureBy: measuringWords(advice, option) }),
    ...money,
  };
}

function rowProblems(file: string, record: CsvRecord, context: RowContext): Problem[] {
  const { sources, choices, kind } = context;
  const { line, values: v } = record;
  const problems: Problem[] = [];
  const complain = (key: string, what: string, rest: Partial<Problem> = {}) =>
    problems.push({ file, line, key: v.id === '' || key === 'id' ? key : `${v.id} ${key}`, what, ...rest });

  if (!ID.test(v.id))
    complain('id', 'not an id', {
      found: v.id || '(empty)',
      allowed: 'camelCase name, or name.option',
      todo: 'end the name with its unit',
    });
  choiceProblems(v, choices, complain);

  const numbers = (['low', 'central', 'high'] as const).map((key) => {
    if (NUMBER.test(v[key])) return Number(v[key]);
    const todo = 'write all three; repeat the central value where no range is known';
    complain(key, 'not a number', { found: v[key] || '(empty)', allowed: 'a plain number, like 0.24', todo });
    return Number.NaN;
  });
  const [low, central, high] = numbers;
  if (low > central || central > high)
    complain('low', 'the range does not hold the central value', {
      found: `${low}, ${central}, ${high}`,
      allowed: 'low ≤ central ≤ high',
      todo: 'put the three in order',
    });

  const span = unitSpan(v.unit);
  numbers.forEach((number, k) => {
    if (number < span.low || number > span.high)
      complain(['low', 'central', 'high'][k], `no ${v.unit} is such a number`, {
        found: String(number),
        allowed: `${span.low} to ${span.high}: ${span.because}`,
        todo: 'mend the number, or the unit where it is another',
      });
  });
  if (v.unit === '')
    complain('unit', 'missing unit', { found: '(empty)', todo: "write the unit, or 'fraction' for a share" });
  if (v.appliesTo === '')
    complain('appliesTo', 'does not say what it applies to', { found: '(empty)', todo: 'say it in words' });
  const [noSource, noBasis] = [sourceFault(v.source, sources), basisFault(v.basis)];
  if (v.source === '')
    complain('source', 'missing source', {
      found: '(empty)',
      todo: "name a row of data/sources.csv, or 'own'",
    });
  else if (noSource) complain('source', noSource.what, noSource);
  if (v.unit === FORM && (low !== 0 || high !== 1 || !(central > 0 && central < 1)))
    complain('central', 'does not weigh two forms', {
      found: `${v.low}, ${v.central}, ${v.high}`,
      allowed: 'low 0 for the first form, high 1 for the second, and between them the weight of the second',
    });
  statedProblems(v, [low, central, high], complain);
  if (noBasis) complain('basis', noBasis.what, noBasis);
  else if (v.basis === 'published' && UNPUBLISHED.includes(v.source))
    complain('basis', 'called published without a publication', {
      found: `published, source ${v.source}`,
      allowed: 'derived, common practice, from memory, invented',
      todo: 'name the publication, or say how the number is known',
    });
  if (kind === 'price') moneyProblems(v, complain);
  namedProblems(v, context, complain);
  return problems;
}

type Complain = (key: string, what: string, rest?: Partial<Problem>) => void;

function choiceProblems(v: CsvRecord['values'], choices: ChoiceOptions, complain: Complain): void {
  const option = v.id.split('.')[1];
  if (v.choice === '') {
    if (option !== undefined)
      complain('choice', 'the id has an option but the row names no choice', {
        found: v.id,
        allowed: Object.keys(choices).join(', '),
        todo: 'name the choice the option belongs to',
      });
    return;
  }
  const options = Object.hasOwn(choices, v.choice) ? choices[v.choice] : undefined;
  if (!options)
    complain('choice', 'unknown choice', { found: v.choice, allowed: Object.keys(choices).join(', ') });
  else if (option === undefined)
    complain('id', 'the row names a choice but the id has no option', {
      found: v.id,
      allowed: `${v.id}.${options[0]}, and so on`,
    });
  else if (!options.includes(option))
    complain('id', `unknown option of ${v.choice}`, {
      found: option,
      allowed: options.join(', '),
      todo: 'use one of these',
    });
}

/** A row that states a mean must have a shape of that mean between its ends. */
function statedProblems(
  v: CsvRecord['values'],
  [low, central, high]: readonly number[],
  complain: Complain,
): void {
  if ((v.stated ?? '') === '') return;
  if (v.stated !== STATED_MEAN)
    complain('stated', 'does not say what the central figure is', {
      found: v.stated,
      allowed: `${STATED_MEAN}, where the source gives a mean and a 95 % range; empty where it gives a best guess`,
    });
  else if (v.unit === FORM || !shapeOfMean(low, central, high))
    complain('stated', 'no shape has this mean and these ends', {
      found: `${v.low}, ${v.central}, ${v.high} ${v.unit}`,
      allowed: `a mean at least ${LEAST_PLACE.toFixed(2)} of the span away from either end`,
      todo: 'leave stated empty, or look whether the ends are those of a 95 % range',
    });
}

/** Groups and advice must be in their tables, and words that name an option need one. */
function namedProblems(
  v: CsvRecord['values'],
  { movements, measuring }: RowContext,
  complain: Complain,
): void {
  if (v.movesWith !== '' && !movements.has(v.movesWith))
    complain('movesWith', 'unknown group of numbers that move together', {
      found: v.movesWith,
      allowed: [...movements.keys()].join(', '),
      todo: `use one of these, or add the group to ${MOVEMENTS_FILE}`,
    });
  if (v.measureBy === '') return;
  const words = measuring.get(v.measureBy);
  if (words === undefined)
    complain('measureBy', 'unknown advice on measuring', {
      found: v.measureBy,
      allowed: [...measuring.keys()].join(', '),
      todo: `use one of these, or add the advice to ${MEASURING_FILE}`,
    });
  else if (namesOption(words) && v.choice === '')
    complain('measureBy', 'the advice names an option and the row has none', {
      found: `${v.measureBy}: ${words}`,
      allowed: 'advice without {option}',
      todo: 'use other advice, or hang the row on a choice',
    });
}

function moneyProblems(v: CsvRecord['values'], complain: Complain): void {
  if (!/^[A-Z]{3}$/.test(v.currency))
    complain('currency', 'price without a currency', {
      found: v.currency || '(empty)',
      allowed: 'three letters, like EUR',
    });
  else if (v.unit !== '' && v.unit.split('/')[0] !== v.currency)
    complain('unit', 'the unit is not in the currency of the row', {
      found: v.unit,
      allowed: `${v.currency} or ${v.currency}/…`,
      todo: 'make unit and currency agree',
    });
  if (v.country !== '' && !/^[A-Z]{2}$/.test(v.country))
    complain('country', 'not a country', {
      found: v.country,
      allowed: 'two letters, like IE; empty for all countries of the currency',
    });
  if (v.vat !== '' && !(VAT_STATES as readonly string[]).includes(v.vat))
    complain('vat', 'does not say how value added tax stands', {
      found: v.vat,
      allowed: VAT_STATES.join(', '),
      todo: 'write the price without the tax, and its rate in the note',
    });
  if (v.terms !== '' && !(PRICE_TERMS as readonly string[]).includes(v.terms))
    complain('terms', 'does not say what the price buys', {
      found: v.terms,
      allowed: PRICE_TERMS.join(', '),
      todo: 'use one of these',
    });
  if (!/^(19|20)\d\d$/.test(v.year))
    complain('year', 'price without a year', {
      found: v.year || '(empty)',
      allowed: 'the year the price was paid or quoted, like 2024',
    });
}

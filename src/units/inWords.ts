/**
 * Sentences that carry metric numbers, said in the units a person reads: every number that stands with a unit is
 * converted, in spans and with what it is counted by ("60 kg N a hectare"). What holds no metric unit comes back as it is.
 */
import { formatNumber } from './format.ts';
import { toSystem, type UnitSystem } from './quantities.ts';

const NUMBER = '[\\u2212-]?(?:\\d{1,3}(?:[\\u202F ]\\d{3})+|\\d+)(?:\\.\\d+)?';
const BASE = 'kNm|kN|kg|km|m²|m³|mm|cm|ha|m|t|L|K|°C';
/** A unit, perhaps by another: kN/m², m³/h, kg/100 kg. */
const UNIT = `(?:${BASE})(?: N| P| K| DM)?(?:/(?:\\d+ )?(?:${BASE}|h|s|d|head|min|yr))*`;
const END = '(?![\\p{L}\\d²³])';

/** What something is counted by, in words: the unit and how the customary one is called, with its article. */
const COUNTED_BY = {
  'square metre': ['m²', 'square foot'],
  'cubic metre': ['m³', 'cubic yard'],
  hectare: ['ha', 'acre'],
  tonne: ['t', 'short ton'],
  kilogram: ['kg', 'pound'],
  metre: ['m', 'foot'],
  kg: ['kg', 'lb'],
  'm²': ['m²', 'ft²'],
  '°C': ['K', '°F'],
} as const;
type By = keyof typeof COUNTED_BY;
const BY = `(a|an|each|per) (${Object.keys(COUNTED_BY).join('|')})${END}`;

const SPAN = `(?<![\\p{L}\\d.,])(${NUMBER})(?:( to | and |–| × )(${NUMBER}))?`;
const WITH_UNIT = `${SPAN}[ \\u00A0]?(${UNIT})${END}`;
/** A few words may stand between: "2.3 livestock units a hectare", "3 kN on each metre". */
const BETWEEN = '((?: [\\p{L}()]+){0,3}?)';

const COUNTED = new RegExp(`${SPAN}(?:[ \\u00A0](${UNIT}))?${BETWEEN} ${BY}`, 'gu');
const QUANTITY = new RegExp(WITH_UNIT, 'gu');
const LABEL = new RegExp(BY, 'gu');
const LABEL_PER = new RegExp(`(per )(\\d+ )?(${BASE})${END}`, 'gu');

const article = (said: string, next: string) =>
  said === 'a' || said === 'an' ? (/^[aeiou]/.test(next) ? 'an' : 'a') : said;

/** The one customary unit that is a word. */
const many = (unit: string) => unit.replace(/^short ton$/, 'short tons');

const plainNumber = (text: string) => Number(text.replace(/[\u202F ]/g, '').replace('\u2212', '-'));

/** `digits` figures are kept: more where a limit is to be passed with the number. */
export function wordsIn(text: string, system: UnitSystem, digits = 3): string {
  if (system === 'metric') return text;
  const number = (written: string, unit: string) => {
    const to = toSystem(plainNumber(written), unit, system);
    return formatNumber(to.value, to.unit, { digits });
  };
  const span = (first: string, between: string | undefined, second: string | undefined, unit: string) =>
    `${number(first, unit)}${second === undefined ? '' : `${between}${number(second, unit)}`}`;
  return text
    .replace(COUNTED, (_, first, between, second, unit, words, per, by: By) => {
      const [metric, name] = COUNTED_BY[by];
      const whole = `${unit ?? ''}/${metric}`;
      const shown = unit === undefined ? '' : ` ${toSystem(1, unit, system).unit}`;
      return `${span(first, between, second, whole)}${shown}${words} ${article(per, name)} ${name}`;
    })
    .replace(
      QUANTITY,
      (_, first, between, second, unit) =>
        `${span(first, between, second, unit)}\u00A0${many(toSystem(1, unit, system).unit)}`,
    );
}

/** A label or a unit in words without a number: "cost a kg of nitrogen kept", "EUR a tonne", "kg/100 kg a day". */
export function labelIn(label: string, system: UnitSystem): string {
  if (system === 'metric') return label;
  const unit = (metric: string) => toSystem(1, metric, system).unit;
  const said = label
    .replace(LABEL, (_, per, by: By) => `${article(per, COUNTED_BY[by][1])} ${COUNTED_BY[by][1]}`)
    .replace(LABEL_PER, (_, per, count = '', metric) => `${per}${count}${unit(metric)}`)
    .replace(/\bmetric tonnes?\b|\btonnes\b/g, 'short tons')
    .replace(/\brunning metres\b/g, 'running feet')
    .replace(/\b[kK]ilogram\b/g, (word) => (word[0] === 'K' ? 'Pound' : 'pound'))
    .replace(
      new RegExp(`(^|, |\\()(${UNIT})(?=$|\\)| a | long$| deep$| high$| of plan$| \\()`, 'gu'),
      (_, before, metric) => `${before}${unit(metric)}`,
    );
  // What a label is counted by is no amount, and was said above; what is left is one: "at 20 °C".
  return wordsIn(said, system);
}

const OF_LABEL = new RegExp(`, (${UNIT})(?=$| a head$| a day$| long$| deep$| high$| of plan$| \\()`, 'u');

/** The metric unit a heading names at its end: "Bed, m²", "Ramps outside, m long". */
export const unitOfLabel = (label: string): string | undefined => OF_LABEL.exec(label)?.[1];

/** Every number of a cell whose heading names the unit. */
export const numbersIn = (cell: string, unit: string | undefined, system: UnitSystem): string =>
  unit === undefined || system === 'metric'
    ? cell
    : cell.replace(new RegExp(NUMBER, 'gu'), (written) => {
        const to = toSystem(plainNumber(written), unit, system);
        return formatNumber(to.value, to.unit);
      });

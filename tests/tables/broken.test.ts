// Every file in tests/broken/tables is wrong in one way and must be refused in words that say so.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadTables } from '../../src/tables/load.ts';
import { formatProblem } from '../../src/units/problem.ts';

const folder = new URL('../broken/tables/', import.meta.url);
const choices = { texture: ['sand', 'clay'], feeder: ['ring'] };
const GROUPS = 'name,together,source,where,basis,note';
const HEADER = 'id,choice,low,central,high,unit,appliesTo,source,where,basis,note';

/** File → the line it is refused at and words its message must hold. */
const REFUSED: Record<string, { line: number; words: string[] }> = {
  'unknown-column.csv': { line: 1, words: ['unknown column', 'found colour', 'remove or rename'] },
  'missing-column.csv': { line: 1, words: ['missing column', 'basis', 'add it to the header'] },
  'column-twice.csv': { line: 1, words: ['column given twice', 'unit'] },
  'empty.csv': { line: 1, words: ['the table is empty', 'header'] },
  'short-row.csv': { line: 3, words: ['not as many fields', 'found 4 fields', '11 fields'] },
  'open-quote.csv': { line: 3, words: ['a quote is opened and never closed'] },
  'quoted-newline.csv': { line: 5, words: ['badFraction unit', 'missing unit'] },
  'bad-id.csv': { line: 2, words: ['not an id', 'found Bad_Id', 'camelCase'] },
  'id-twice.csv': { line: 3, words: ['id given twice', 'soundFraction', 'broken.csv:2', 'keep one row'] },
  'id-in-two-files.csv': { line: 2, words: ['id given twice', 'presentFraction', 'data/coefficients/'] },
  'missing-source.csv': { line: 2, words: ['missing source', 'data/sources.csv'] },
  'unknown-source.csv': { line: 2, words: ['unknown source', 'found fao57', 'add the source there first'] },
  'missing-unit.csv': { line: 2, words: ['fraction1 unit', 'missing unit'] },
  'missing-label.csv': { line: 2, words: ['does not say what it applies to'] },
  'range-out-of-order.csv': {
    line: 2,
    words: ['range does not hold', 'found 0.3, 0.2, 0.4', 'low ≤ central ≤ high'],
  },
  'form-without-weight.csv': {
    line: 2,
    words: ['lossForm central', 'does not weigh two forms', 'found 0, 0, 1', 'the weight of the second'],
  },
  'stated-otherwise.csv': {
    line: 2,
    words: [
      'fraction1 stated',
      'does not say what the central figure is',
      'found median',
      'a mean and a 95 % range',
    ],
  },
  'mean-at-its-end.csv': {
    line: 2,
    words: ['fraction1 stated', 'no shape has this mean', 'found 0, 0.01, 0.3', 'at least 0.15 of the span'],
  },
  'not-a-number.csv': { line: 2, words: ['fraction1 central', 'not a number', 'found about 0.2'] },
  'decimal-comma.csv': { line: 2, words: ['fraction1 low', 'not a number', 'found 0,1'] },
  'missing-number.csv': {
    line: 2,
    words: ['fraction1 low', 'not a number', '(empty)', 'repeat the central value'],
  },
  'unknown-basis.csv': { line: 2, words: ['unknown basis', 'found guessed', 'published, derived'] },
  'own-called-published.csv': {
    line: 2,
    words: ['called published without a publication', 'name the publication'],
  },
  'unknown-choice.csv': { line: 2, words: ['unknown choice', 'found colour', 'texture, feeder'] },
  'unknown-option.csv': { line: 2, words: ['unknown option of texture', 'found gravel', 'sand, clay'] },
  'option-without-choice.csv': { line: 2, words: ['row names no choice', 'fraction1.sand'] },
  'choice-without-option.csv': { line: 2, words: ['id has no option', 'fraction1.sand'] },
  'option-missing.csv': {
    line: 2,
    words: ['rows are missing for some options of texture', 'add a row for clay'],
  },
  'two-choices.csv': { line: 2, words: ['one name hangs on two choices', 'texture, feeder'] },
  'price-without-currency.csv': { line: 2, words: ['price without a currency', 'like EUR'] },
  'price-without-year.csv': { line: 2, words: ['price without a year', 'like 2024'] },
  'price-in-other-unit.csv': { line: 2, words: ['unit is not in the currency', 'found EUR/t', 'SEK/…'] },
  'price-is-coefficient.csv': { line: 2, words: ['id given twice', 'presentFraction'] },
  'unknown-group.csv': {
    line: 2,
    words: [
      'fraction1 movesWith',
      'unknown group',
      'found tides',
      'allowed straw prices',
      'data/movements.csv',
    ],
  },
  'unknown-advice.csv': {
    line: 2,
    words: ['fraction1 measureBy', 'unknown advice', 'found guessIt', 'weighBales', 'data/measuring.csv'],
  },
  'advice-without-option.csv': {
    line: 2,
    words: ['fraction1 measureBy', 'names an option and the row has none', 'Weigh three bales of {option}'],
  },
  'movements-twice.csv': { line: 3, words: ['group given twice', 'straw prices', 'keep one row'] },
  'movements-share.csv': { line: 2, words: ['not a share of the draws', 'found 1.2', 'at most 1'] },
  'movements-without-source.csv': { line: 2, words: ['unknown source', 'found nobody'] },
  'movements-without-basis.csv': { line: 2, words: ['unknown basis', 'found (empty)'] },
  'measuring-twice.csv': { line: 3, words: ['advice given twice', 'weighBales'] },
  'measuring-without-words.csv': { line: 2, words: ['weighBales', 'advice without words'] },
  'measuring-other-blank.csv': { line: 2, words: ['unknown blank', 'Weigh {feed}', 'allowed {option}'] },
  'source-twice.csv': { line: 3, words: ['source given twice', 'found fao56'] },
  'source-without-year.csv': { line: 2, words: ['source without year'] },
  'source-by-address.csv': { line: 2, words: ['a web address is not a source'] },
  'source-bad-id.csv': { line: 2, words: ['not a source id', 'found FAO 56'] },
};

const PATHS: Record<string, string> = {
  source: 'data/sources.csv',
  movements: 'data/movements.csv',
  measuring: 'data/measuring.csv',
  price: 'data/prices/broken.csv',
};

function problemsOf(name: string) {
  const text = readFileSync(new URL(name, folder), 'utf8');
  const path = PATHS[name.split('-')[0]] ?? 'data/coefficients/broken.csv';
  const files = new Map([
    [
      'data/sources.csv',
      'id,author,title,year\nfao56,Allen and others,Crop evapotranspiration,1998\nown,Winterkeep,Own,2025\n',
    ],
    [
      'data/coefficients/present.csv',
      `${HEADER}\npresentFraction,,0.1,0.2,0.3,fraction,here,fao56,Table 1,published,\n`,
    ],
    ['data/movements.csv', `${GROUPS}\nstraw prices,0.9,own,,invented,\n`],
    ['data/measuring.csv', 'id,words\nweighBales,Weigh three bales of {option}\n'],
    [path, text],
  ]);
  return loadTables(files, choices).problems;
}

describe('broken tables', () => {
  it('has a message for every file and a file for every message', () => {
    expect(readdirSync(folder).sort()).toEqual(Object.keys(REFUSED).sort());
  });

  for (const [name, { line, words }] of Object.entries(REFUSED))
    it(`refuses ${name}`, () => {
      const problems = problemsOf(name).filter(
        (p) => !(name.startsWith('source') && p.what === 'unknown source'),
      );
      const messages = problems.map(formatProblem);
      const holding = problems.filter((p) => words.every((word) => formatProblem(p).includes(word)));
      expect(holding, messages.join('\n') || 'nothing was refused').not.toHaveLength(0);
      expect(holding[0].line).toBe(line);
      expect(messages.every((message) => !message.includes('\n'))).toBe(true);
    });
});

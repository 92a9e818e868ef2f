/** Notebooks made to hold the page: Markdown, YAML and cells that grow when they are read, each in the size that hurts most. */
import { SMALL } from '../notebook/small.ts';

const END = SMALL.lastIndexOf('\n---\n') + 5;
export const FRONT = SMALL.slice(0, END);
const x = (part: string, times: number) => part.repeat(times);
const lines = (times: number, of: (k: number) => string) =>
  Array.from({ length: times }, (_, k) => of(k)).join('\n');
const body = (words: string) => `${FRONT}\n${words}\n`;
const front = (words: string) => `${FRONT.slice(0, -4)}${words}\n---\n\nWords.\n`;
const title = (words: string) => FRONT.replace(/^title: .*$/m, `title: ${words}`);

export const BOMBS: Readonly<Record<string, () => string>> = {
  'quotes in quotes': () => body(`${x('>', 50_000)} a`),
  'quotes in quotes, line by line': () => body(lines(2000, (k) => `${x('> ', Math.min(k, 400))}a`)),
  'lists in lists': () => body(lines(1500, (k) => `${x('  ', k)}- a`)),
  'lists on one line': () => body(`${x('- ', 20_000)}a`),
  'numbers on one line': () => body(`${x('1. ', 20_000)}a`),
  'open brackets': () => body(x('[', 100_000)),
  'open brackets and words': () => body(x('[a ', 60_000)),
  'brackets closed': () => body(`${x('[', 50_000)}a${x(']', 50_000)}`),
  'links never closed': () => body(x('[a](b ', 40_000)),
  'links in links': () => body(`${x('[a', 20_000)}${x('](b)', 20_000)}`),
  'link with open angle': () => body(x('[a](<b', 40_000)),
  'links by reference, all to one': () => body(`[a]: b\n\n${x('[a] ', 100_000)}`),
  references: () => body(lines(100_000, (k) => `[a${k}]: b`)),
  'references in one paragraph, used': () =>
    body(`${lines(20_000, (k) => `[a${k}]: b`)}\n\n${lines(20_000, (k) => `[a${k}]`)}`),
  'reference with a long title': () => body(`[a]: b "${x('c\n', 60_000)}`),
  'emphasis opened': () => body(x('*a ', 80_000)),
  'emphasis opened and shut by turns': () => body(x('*a_ ', 60_000)),
  'emphasis in emphasis': () => body(`${x('*a **b ', 20_000)}${x('c** d*', 20_000)}`),
  stars: () => body(x('*', 100_000)),
  'stars by twos and threes': () => body(x('**a *b***', 30_000)),
  underlines: () => body(x('_a', 100_000)),
  strikes: () => body(x('~~a ', 60_000)),
  'backticks of every length': () => body(lines(700, (k) => `a${x('`', k)}`)),
  'backticks opened': () => body(x('a`b``', 50_000)),
  'values by name': () => body(x('`=netCost` ', 20_000)),
  'values that are none': () => body(x('`=1+1` ', 20_000)),
  'a table of many columns': () => body(`|${x('a|', 5000)}\n|${x('-|', 5000)}\n${lines(60, () => '|a|')}`),
  'a table of many rows': () => body(`|a|b|\n|-|-|\n${lines(30_000, () => '|a|b|')}`),
  'a table of empty cells': () => body(`${x('|a', 900)}|\n${x('|-', 900)}|\n${lines(1200, () => 'a')}`),
  backslashes: () => body(x('\\', 100_000)),
  entities: () => body(x('&amp;&#35;&copy', 30_000)),
  angles: () => body(x('<', 100_000)),
  'angles and words': () => body(x('<a@b', 60_000)),
  'addresses in angles': () => body(x('<http://a>', 30_000)),
  pictures: () => body(x('![a](http://a/b.png) ', 20_000)),
  'a word without end': () => body(x('a', 190_000)),
  'a word without end, past what is set': () => body(x('a', 1_500_000)),
  'lines without end': () => body(x('a\n', 90_000)),
  'paragraphs without end': () => body(x('a\n\n', 60_000)),
  headings: () => body(lines(20_000, (k) => `# ${k}\n`)),
  'headings under lines': () => body(lines(20_000, (k) => `${k}\n---`)),
  rules: () => body(x('---\n\n', 30_000)),
  'fences never closed': () => body(x('```\na\n', 30_000).slice(0, -1)),
  'fences of every length': () => body(lines(500, (k) => `${x('`', k + 3)}\na`)),
  tildes: () => body(x('~~~\n', 30_000)),
  'spaces before': () => body(`${x(' ', 100_000)}a`),
  tabs: () => body(x('\t', 100_000)),
  'spaces behind each line': () => body(x(`a${x(' ', 200)}\n`, 800)),
  'marks over letters': () => body(`a${x('\u0301', 100_000)}`),
  'marks that turn the writing': () => body(x('\u202e\u2066', 50_000)),
  'empty lines': () => body(x('\n', 1_800_000)),
  cells: () => body(lines(3000, () => '```compare\nmeasure: netCost\n```\n')),
  'cells at fault': () => body(lines(3000, () => '```compare\nmeasures: x\n```\n')),
  'cells nearly named': () => body(lines(3000, () => '```compar\nmeasure: netCost\n```\n')),
  'a cell of many scenarios': () => body(`\`\`\`ladder\nscenarios: [${x('Out, ', 30_000)}Out]\n\`\`\``),
  'a cell of many measures': () => body(`\`\`\`cards\nmeasures: [${x('netCost, ', 30_000)}netCost]\n\`\`\``),
  'a cell with a long caption': () => body(`\`\`\`sources\ncaption: ${x('words ', 25_000)}\n\`\`\``),
  'a cell nested': () => body(`\`\`\`ladder\nscenarios: ${x('[', 20_000)}\n\`\`\``),
  'a cell of dashes': () => body(`\`\`\`ladder\n${x('- ', 20_000)}a\n\`\`\``),
  'a cell of aliases': () =>
    body(
      `\`\`\`ladder\na: &a [1,1]\n${lines(26, (k) => `k${k}: &k${k} [${x(k === 0 ? '*a,' : `*k${k - 1},`, 8)}]`)}\n\`\`\``,
    ),
  'a sweep of many steps': () =>
    body('```sweep\nover: headCount\nacross: rainFactor\nmeasure: netCost\nsteps: 201\n```'),
  'weather many times': () => body(lines(3000, (k) => `\`\`\`weather a${k}.csv\nday,rain\n\`\`\`\n`)),
  laughs: () =>
    front(
      `a: &a [1,1,1,1,1,1,1,1,1]\n${lines(9, (k) => `b${k}: &b${k} [${x(k === 0 ? '*a,' : `*b${k - 1},`, 9)}]`)}`,
    ),
  'front matter of brackets': () => front(`a: ${x('[', 70_000)}`),
  'front matter of braces': () => front(`a: ${x('{a: ', 30_000)}`),
  'front matter of dashes': () => front(`a:\n  ${x('- ', 60_000)}a`),
  'front matter of dashes, 5,000': () => front(`a:\n  ${x('- ', 5000)}a`),
  'front matter of questions': () => front(x('? ', 60_000)),
  'front matter deeper line by line': () => front(lines(500, (k) => `${x(' ', k)}a:`)),
  'front matter of keys': () => front(lines(14_000, (k) => `a${k}: 1`)),
  'front matter of one key': () => front(lines(20_000, () => 'a: 1')),
  'front matter of anchors': () => front(lines(8000, (k) => `a${k}: &a${k} 1`)),
  'front matter of tags': () => front(lines(8000, (k) => `a${k}: !t${k} 1`)),
  'front matter of quotes': () => front(`a: "${x('\\"', 60_000)}`),
  'front matter of odd letters': () => front(`a: "${x('\\u0000', 20_000)}"`),
  'front matter of lines': () => front(`a: |\n${x('\n', 140_000)}`),
  'front matter of comments': () => front(x('# a\n', 30_000)),
  'front matter of documents': () => front(x('...\n', 30_000)),
  'front matter of percent signs': () => front(x('%YAML 1.2\n', 12_000)),
  'front matter of merge keys': () => front(lines(8000, () => '<<: {a: 1}')),
  'a long title': () => title(x('word ', 25_000)),
  'a title of one word': () => title(x('w', 120_000)),
  'a long name': () => FRONT.replace('name: Paddock', `name: ${x('Out', 30_000)}`),
  'many scenarios': () =>
    FRONT.replace(
      /\n---\n$/,
      `\n${lines(1800, (k) => `  - { name: S${k}, system: outwintered, because: it is so }`)}\n---\n`,
    ),
  'many groups': () =>
    FRONT.replace(
      /herd:[\s\S]*?\n {2}(?=\w)/,
      `herd: [${x('{ name: c, class: sucklerCow, head: 1, weightKg: 600 }, ', 2400)}]\n  `,
    ),
  'many feeds': () =>
    FRONT.replace(/feed:[\s\S]*?\n {2}(?=\w)/, `feed: [${x('{ feed: hay, share: 0.0002 }, ', 5000)}]\n  `),
  'many own numbers': () =>
    FRONT.replace(
      /\n---\n$/,
      `\ncoefficients:\n${lines(2000, () => '  - { id: packDryDensityKgPerM3, value: 200, because: measured }')}\n---\n`,
    ),
  'many entries in the diary': () =>
    FRONT.replace(
      /\n---\n$/,
      `\ndiary:\n${lines(3000, () => '  - { date: 2025-12-01, words: snow }')}\n---\n`,
    ),
  // As much as is taken.
  'words, as much as is taken': () => body(x(`${x('word ', 39)}\n\n`, 985)),
  'paragraphs, as many as are taken': () => body(x('a\n\n', 1950)),
  'headings, as many as are taken': () => body(x('# a\n\n', 1950)),
  'figures, as many as are taken': () => body(x('```compare\nmeasure: netCost\n```\n\n', 115)),
  'figures of draws, as many as are taken': () => body(x('```draws\nmeasure: netCost\n```\n\n', 115)),
  'sections, as many as are taken': () => body(x('```section\n```\n\n', 115)),
  'cards, as many as are taken': () => body(x('```cards\nmeasures: [netCost]\n```\n\n', 115)),
  'sources, as many as are taken': () => body(x('```sources\n```\n\n', 115)),
  'bills, as many as are taken': () => body(x('```bill\n```\n\n', 115)),
  'checks, as many as are taken': () => body(x('```checks\n```\n\n', 115)),
  'emphasis, as much as is taken': () => body(x(`${x('*a_ ', 1450)}\n\n`, 6)),
  'references, as many as are taken': () => body(`${x(`${x('[a] ', 1450)}\n\n`, 6)}[a]: b`),
  'values, as many as are taken': () => body(x(`${x('`=netCost` ', 160)}\n\n`, 6)),
  'tables, as many as are taken': () => body(x(`|a|b|\n|-|-|\n${x('|a|b|\n', 900)}\n`, 6)),
  'front matter, as long as is taken': () => front(lines(3900, (k) => `a${k}: 1`)),
  'front matter, as deep as is taken': () => front(lines(3000, () => `a: ${x('[', 190)}`)),
  'diary, as long as is taken': () =>
    `${FRONT.replace(
      /\n---\n$/,
      `\ndiary:\n${lines(2900, () => '  - { kind: note, date: 2025-12-01, note: snow }')}\n---\n`,
    )}\n\`\`\`diary\n\`\`\`\n`,
};

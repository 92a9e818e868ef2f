/**
 * Writes tests/bench/fused.ts: the loops of all stages cut out of their files and joined into one loop over rows,
 * as somebody in a hurry would write them by hand. What the stages write to columns becomes local variables, the
 * weekly series one row of scratch memory. Run with `npx tsx tests/bench/fuse.ts` when fused.test.ts says that the
 * model has moved on; it leans on the stages being written in one style and stops where one is not.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FIELD_READS, FIELD_TRACKS } from '../../src/model/field/fieldNitrogen.ts';
import { STAGES } from '../../src/model/stages.ts';
import { BILL_LINES } from '../../src/model/works/billLines.ts';
import { CHIEF } from './chief.ts';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const sourceOf = (stage: string) => readFileSync(`${HERE}../../src/model/stages/${stage}.ts`, 'utf8');

const made = new Set(STAGES.flatMap((stage) => Object.keys(stage.makes)));
const inputs = [...new Set(STAGES.flatMap((stage) => stage.reads))].filter((name) => !made.has(name));
const readTracks = new Set(STAGES.flatMap((stage) => stage.readsTracks ?? []));
const families = new Map<string, Set<string>>();
for (const stage of STAGES)
  for (const [family, fields] of Object.entries(stage.families ?? {}))
    families.set(family, new Set([...(families.get(family) ?? []), ...fields]));

/** Local variable of a column that a stage makes; the science has functions of the same names. */
const own = (column: string) => `_${column}`;
/** Column that enters the model. */
const given = (column: string) => `$${column}[i]`;

const between = (text: string, from: string, to: string): string => {
  const start = text.indexOf(from);
  const end = text.indexOf(to, start + from.length);
  if (start < 0 || end < 0) throw new Error(`not found: ${from} … ${to}`);
  return text.slice(start + from.length, end);
};

/** Text without the statement or block that starts at each match. */
function without(text: string, start: RegExp): string {
  for (;;) {
    const match = start.exec(text);
    if (!match) return text;
    let depth = 0;
    let end = match.index;
    for (; end < text.length; end++) {
      const c = text[end];
      if (c === '{' || c === '(' || c === '[') depth++;
      if (c === '}' || c === ')' || c === ']') depth--;
      if (depth === 0 && (c === ';' || (c === '}' && text[end + 1] === '\n'))) break;
    }
    text = text.slice(0, match.index) + text.slice(end + 1);
  }
}

/** The inside of a stage's loop over rows, on local variables. */
function loopOf(name: string, makes: readonly string[]): string {
  const run = between(sourceOf(name), '\n  run({', '\n  },\n});');
  let loop = between(`${run}\n    }\n`, '    for (let i = 0; i < count; i++) {\n', '\n    }\n');
  // Weekly series are worked out only where a stage reads them, daily ones never.
  if (loop.includes('if (!tracked) continue;')) loop = loop.slice(0, loop.indexOf('if (!tracked) continue;'));
  loop = without(loop, /if \(daily !== undefined\)/);
  loop = without(loop, /for \(const series of weekly\)/);
  loop = without(loop, /for \(const week of weekly\)/);
  for (const track of Object.keys(STAGES.find((s) => s.name === name)?.tracks ?? {}))
    if (!readTracks.has(track)) {
      loop = without(loop, new RegExp(`for \\(let w = 0; w < WEEKS; w\\+\\+\\)\\s+track\\.${track}\\b`));
      loop = without(loop, new RegExp(`track\\.${track}\\b`));
    }
  loop = loop
    .replace(/for \(const result of results\) result\[i\] = result\[i - 1\];/, '')
    .replace(/for \(const result of results\) result\[i\] = 0;/, makes.map((m) => `${own(m)} = 0;`).join(' '))
    .replace(
      'i > 0 && daily === undefined && sameAsAbove(columns, i)',
      'i > 0 && sameAsAbove(weatherColumns, i)',
    )
    .replace(/for \(const name of IN_WINTER\) write\[name\]\[i\] = 0;/, () => {
      const names = between(sourceOf(name), 'const IN_WINTER = [', ']').match(/\w+/g) ?? [];
      return `{ ${names.map((m) => `${own(m)} = 0;`).join(' ')} }`;
    })
    .replace(/for \(let k = 0; k < LINES\.length; k\+\+\) annual \+= w\[LINES\[k\]\]\[i\];/, () => {
      const names = between(sourceOf(name), 'const LINES = [', ']').match(/\w+/g) ?? [];
      return names.map((m) => `annual += ${own(m)};`).join(' ');
    })
    .replace(/leachedFromWeekKg\(\s*i,/g, 'leachedFromWeekKg(\n0,')
    .replace(/\bread,\s*readTrack,/g, 'field, weeks,')
    // The bed leaves one sign alone that the heap sets, so each has its own.
    .replace(/\bsigns\b/g, `${name}Signs`)
    .replace(/^ +const weeks = weeksOf\([^\n]*$/m, '');
  loop = loop
    .replace(/\b(?:read|r)\.(\w+)\[i\]/g, (_, column) => (made.has(column) ? own(column) : given(column)))
    .replace(/\b(?:write|w)\.(\w+)\[i\]/g, (_, column) => own(column))
    .replace(/\b(?:readTrack|track)\.(\w+)\[(?:at|i \* WEEKS) \+ (\w+)\]/g, '$1[$2]')
    .replace(/\b(?:readTrack|track)\.(\w+)\[at\]/g, '$1[week]')
    .replace(/^ {8}continue;$/gm, `        break ${name};`);
  // What only the weekly series needed is not needed now.
  for (;;) {
    const idle = [...loop.matchAll(/^ +(?:const|let) (\w+) = /gm)].find(
      ([, local]) => (loop.match(new RegExp(`(?<![.\\w])${local}\\b(?! =(?!=))`, 'g')) ?? []).length === 0,
    );
    if (!idle) break;
    loop = without(loop, new RegExp(`(?:const|let) ${idle[1]} = `));
    loop = without(loop, new RegExp(`if \\([^\\n]*\\) ${idle[1]} = `));
  }
  const stray = /\b(?:read|write|track|readTrack|r|w)\.\w+|\btracked\b|\bdaily\./.exec(loop);
  if (stray) throw new Error(`the stage ${name} is written in a way fuse.ts does not know: ${stray[0]}`);
  const fields = /leachedFromWeekKg/.test(loop)
    ? FIELD_READS.map((f) => `field.${f}[0] = ${made.has(f) ? own(f) : given(f)};`).join(' ')
    : '';
  const label = loop.includes(`break ${name};`) ? `${name}: ` : '';
  return `${label}{ // ${name}\n${fields}\n${loop}\n}\n`;
}

/** The lines of the bill, one after the other, in place of the building stage's loops over lines. */
function billOf(): string {
  const onTop = (line: (typeof BILL_LINES)[number]) => line.onTop !== undefined;
  const lines = [...BILL_LINES.filter((line) => !onTop(line)), ...BILL_LINES.filter(onTop)];
  const out = [
    '{ let cash = 0; let buildings = 0; _capitalLines = 0; _capitalNonCash = 0; _capitalShortLived = 0;',
  ];
  for (const line of lines) {
    const inCash = !line.own && !line.onTop;
    if (line.onTop)
      out.push(`${own(line.quantity)} = cents(${line.onTop === 'buildings' ? 'buildings' : 'cash'});`);
    out.push(
      `${own(line.cost)} = costOf(${own(line.quantity)}, ${given(line.price)}); _capitalLines += ${own(line.cost)};`,
    );
    if (line.own) out.push(`_capitalNonCash += ${own(line.cost)};`);
    if (line.shortLived) out.push(`_capitalShortLived += ${own(line.cost)};`);
    if (inCash) out.push(`cash += ${own(line.cost)};`);
    if (inCash && line.works !== 'outdoors' && line.works !== 'all')
      out.push(`buildings += ${own(line.cost)};`);
  }
  const sums = sourceOf('building').split(
    '    for (let i = 0; i < count; i++) {\n      const lines = cents(',
  )[1];
  if (!sums) throw new Error('the building stage has changed its sums');
  const rest = `const lines = cents(${sums.slice(0, sums.indexOf('\n    }\n'))}`
    .replace(/\b(?:write|w)\.(\w+)\[i\]/g, (_, column) => own(column))
    .replace(/\b(?:read|r)\.(\w+)\[i\]/g, (_, column) => given(column));
  return `${out.join('\n')}\n${rest}\n}\n`;
}

/** Functions and constants the loops use that stand in the stages' own files. */
const OWN = [
  ['excretion', 'left'], ['value', 'usedOnPaddock'], ['value', 'part'], ['labour', 'MINUTES'],
  ['building', 'cents'], ['building', 'pieces'], ['costs', 'times'], ['costs', 'yearly'], ['finance', 'balance'],
  ['finance', 'LoanColumns'], ['ledger', 'NITROUS_PER_NITROGEN'], ['weather', 'sameAsAbove'],
] as const; // biome-ignore format: one list

function ownOf(stage: string, name: string): string {
  const text = sourceOf(stage);
  const one = new RegExp(`^(?:const|type) ${name}\\b[^\\n]*;$`, 'm').exec(text);
  const many = new RegExp(`^function ${name}\\([\\s\\S]*?^}$`, 'm').exec(text);
  const found = one?.[0] ?? many?.[0];
  if (!found) throw new Error(`the stage ${stage} has no ${name} any more`);
  return found;
}

function imports(body: string): string {
  const from = new Map<string, Set<string>>();
  for (const { name } of STAGES)
    for (const [, names, file] of sourceOf(name).matchAll(
      /^import (?:type )?\{([^}]*)\} from '\.\.\/(science\/\w+\.ts|stage\.ts)'/gm,
    ))
      for (const one of names.split(',').map((n) => n.trim())) {
        const plain = one.replace(/^type /, '');
        if (plain !== '' && new RegExp(`\\b${plain}\\b`).test(body)) {
          const key = `../../src/model/${file}`;
          from.set(key, new Set([...(from.get(key) ?? []), one]));
        }
      }
  return [...from].map(([file, names]) => `import { ${[...names].join(', ')} } from '${file}';`).join('\n');
}

const chief: readonly string[] = CHIEF;
const rest = [...made].filter((name) => !chief.includes(name));
const weatherReads = STAGES.find(({ name }) => name === 'weather')?.reads ?? [];
const body = `
${OWN.map(([stage, name]) => ownOf(stage, name)).join('\n\n')}

/** Nothing to build costs nothing; a price that is missing or below 0 is no price. */
function costOf(quantity: number, price: number): number {
  return quantity === 0 ? 0 : price >= 0 ? cents(quantity * price) : Number.NaN;
}

const deposits = new Float64Array(WEEKS);
const inflow = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);
${[...readTracks].map((track) => `const ${track} = new Float64Array(WEEKS);`).join('\n')}
const weeks = { ${FIELD_TRACKS.join(', ')} };
const field = { ${FIELD_READS.map((f) => `${f}: new Float64Array(1)`).join(', ')} };
const microbes = { yieldFraction: 0, carbonNitrogen: 1 };
const spans = { moistureLow: 0, moistureHigh: 0, airSpace: 0, availableCarbonNitrogenLow: 0, availableCarbonNitrogenHigh: 0, depthM: 0 };
const bedSigns = { driest: 0, wettest: 0, airSpace: 0, availableCarbonNitrogen: 0, loosened: false, depthM: 0 };
const compostSigns = { driest: 0, wettest: 0, airSpace: 0, availableCarbonNitrogen: 0, loosened: false, depthM: 0 };
const shape = {} as ShedShape;
const bedded = {} as ShedFrame;
const slatted = {} as ShedFrame;

type Columns = Readonly<Record<string, Float64Array>>;

function items<K extends string>(columns: Columns, family: string, fields: readonly K[]): Record<K, Float64Array>[] {
  const out: Record<K, Float64Array>[] = [];
  while (columns[\`\${family}\${out.length + 1}\${fields[0]}\`])
    out.push(Object.fromEntries(fields.map((f) => [f, columns[\`\${family}\${out.length + 1}\${f}\`]])) as Record<K, Float64Array>);
  return out;
}

/** The chief results of every row, and in \`rest\` the sum of all others, so that none of them is left out. */
export function runFused(columns: Columns, rows: number, weather: readonly PreparedWeather[]): Record<(typeof CHIEF)[number] | 'rest', Float64Array> {
  const { ${inputs.map((name) => `${name}: $${name}`).join(', ')} } = columns;
${[...families].map(([family, fields]) => `  const ${family} = items(columns, '${family}', [${[...fields].map((f) => `'${f}'`).join(', ')}]);`).join('\n')}
  const family = { ${[...families.keys()].join(', ')} };
  const owed = new Float64Array(loan.length);
  const weatherColumns = [${weatherReads.map((name) => `$${name}`).join(', ')}];
  const out = { ${[...chief, 'rest'].map((name) => `${name}: new Float64Array(rows)`).join(', ')} };
  let ${[...made].map((name) => `${own(name)} = 0`).join(', ')};
  for (let i = 0; i < rows; i++) {
${STAGES.map(({ name, makes }) => loopOf(name, Object.keys(makes)) + (name === 'building' ? billOf() : '')).join('\n')}
${chief.map((name) => `out.${name}[i] = ${own(name)};`).join('\n')}
    out.rest[i] = ${rest.map(own).join(' + ')};
  }
  return out;
}
`;
const text = `// biome-ignore-all lint: made by a program
/** Made by tests/bench/fuse.ts from the stages: the whole model as one loop over rows. Not for reading. */
${imports(body)}
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import type { CHIEF } from './chief.ts';
${body}`;
writeFileSync(`${HERE}fused.ts`, text);

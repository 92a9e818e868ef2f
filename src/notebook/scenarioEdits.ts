/** What a keeper does with scenarios: add, copy, rename, put in another order, take out, choose the base. */
import { type Edited, type Editing, editWith, Refused } from './edit.ts';
import { dropMentions, mentionsOf, nameFirst, renameMentions } from './mentions.ts';
import type { Notebook } from './read.ts';
import { type ScenarioLines, scenarioLines } from './scenarioLines.ts';
import { movedOrder, permuted, without } from './segments.ts';
import { setInput, type Value } from './write.ts';
import { inFlow } from './yamlWrite.ts';

/** As many as figures tell apart by colour, mark and order. */
export const MOST_SCENARIOS = 8;

/** A scenario as it is written: name, system, reason, and what differs from the farm. */
export interface NewScenario {
  readonly name: string;
  readonly system: string;
  readonly because: string;
  readonly [key: string]: Value | undefined;
}

/** A scenario more, after the others, so that each keeps its colour and mark. */
export const addScenario = (at: Editing, scenario: NewScenario): Edited =>
  editWith(
    at,
    () => `scenario “${scenario.name}” added`,
    (notebook) => {
      refuseMore(notebook);
      refuseName(notebook, scenario.name);
      return withScenario(at.text, scenario);
    },
  );

/** The text with the scenario as the last of its list. */
function withScenario(text: string, scenario: NewScenario): string {
  const { indent } = linesOf(text);
  const entries = Object.entries(scenario).filter(([, value]) => value !== undefined);
  if (indent === undefined) return append(text, inFlow(scenario));
  const between = `${eolOf(text)}${' '.repeat(indent + 2)}`;
  const written = entries.map(([key, value]) => `${key}: ${inFlow(value)}`).join(between);
  return append(text, `${' '.repeat(indent)}- ${written}`);
}

/** The scenario again under another name, after the others. */
export const copyScenario = (at: Editing, index: number): Edited =>
  editWith(
    at,
    ({ scenarios }) => `scenario “${scenarios[index].name}” copied`,
    (notebook) => {
      refuseMore(notebook);
      const { segments, indent } = linesOf(at.text);
      const own = at.text.slice(segments[index].from, segments[index].to);
      // Comments above speak of the one they were written for.
      const dash = indent === undefined ? 0 : own.search(new RegExp(`^ {${indent}}-(?=\\s)`, 'm'));
      return setInput(
        append(at.text, own.slice(Math.max(0, dash))),
        ['scenarios', segments.length, 'name'],
        freeName(notebook, notebook.scenarios[index].name),
      );
    },
  );

/** Another name, everywhere the scenario is named: baselines, diary, cells, sentences. */
export const renameScenario = (at: Editing, index: number, name: string): Edited =>
  editWith(
    at,
    ({ scenarios }) => `“${scenarios[index].name}” renamed to “${name.trim()}”`,
    (notebook) => {
      const to = name.trim();
      if (to === notebook.scenarios[index].name) return at.text;
      refuseName(notebook, to);
      const text = renameMentions(at.text, notebook, index, to);
      return setInput(text, ['scenarios', index, 'name'], to);
    },
  );

/** Another place in the order, which is the order of cards, colours and marks. */
export const moveScenario = (at: Editing, index: number, to: number): Edited =>
  editWith(
    at,
    ({ scenarios }) => `“${scenarios[index].name}” moved to place ${to + 1}`,
    (notebook) => {
      const { segments } = linesOf(at.text);
      if (to < 0 || to >= segments.length || to === index) return at.text;
      const order = movedOrder(segments.length, index, to);
      const text = permuted(at.text, segments, order);
      // The body stands where it stood: only lines above it have changed places.
      return order[0] === 0 ? text : nameFirst(text, notebook);
    },
  );

/**
 * The notebook without a scenario. Refused where a sentence speaks of it; where cells, baselines or diary do, asked
 * first, and `letGo` is the answer: they then do what they do when nothing is said.
 */
export const removeScenario = (at: Editing, index: number, { letGo = false } = {}): Edited =>
  editWith(
    at,
    ({ scenarios }) => `scenario “${scenarios[index].name}” taken out`,
    (notebook) => {
      const { name } = notebook.scenarios[index];
      if (notebook.scenarios.length === 1)
        throw new Refused({
          what: 'a notebook keeps at least one scenario',
          found: `only “${name}”`,
          todo: 'add another first, then take this one out',
        });
      const mentions = mentionsOf(notebook, index);
      const prose = mentions.filter(({ inProse }) => inProse);
      if (prose.length > 0)
        throw new Refused({
          what: `“${name}” is spoken of in your own words`,
          found: listed(prose),
          todo: 'change these sentences first: a sentence without its figure would say nothing',
        });
      if (mentions.length > 0 && !letGo)
        throw new Refused(
          {
            what: `“${name}” is named elsewhere`,
            found: listed(mentions),
            todo: 'take it out of these too, or keep it',
          },
          mentions,
        );
      const text = dropMentions(at.text, notebook, index);
      return without(text, linesOf(text).segments, index);
    },
  );

/**
 * The scenario that the others are held against: what each costs more, and earns back. With null none is named, and
 * each is held against the one that costs least to build.
 */
export const setBase = (at: Editing, index: number | null): Edited =>
  editWith(
    at,
    ({ scenarios }) => (index === null ? 'no base chosen' : `differences against “${scenarios[index].name}”`),
    ({ scenarios }) => {
      const base = index === null ? undefined : scenarios[index].name;
      return scenarios.reduce(
        (text, { name, finance }, k) =>
          finance.baseline === undefined && (base === undefined || name === base)
            ? text
            : setInput(text, ['scenarios', k, 'finance', 'baseline'], name === base ? undefined : base),
        at.text,
      );
    },
  );

/** A name like this one that no scenario has yet. */
export function freeName({ scenarios }: Pick<Notebook, 'scenarios'>, like: string): string {
  const taken = new Set(scenarios.map(({ name }) => name));
  const stem = like.replace(/ \d+$/, '');
  for (let k = 2; ; k++) {
    const tail = ` ${k}`;
    let head = stem;
    while (head.length + tail.length > LONGEST) head = [...head].slice(0, -1).join('').trimEnd();
    const name = head + tail;
    if (!taken.has(name)) return name;
  }
}

const LONGEST = 60;

function refuseMore({ scenarios }: Notebook): void {
  if (scenarios.length >= MOST_SCENARIOS)
    throw new Refused({
      what: 'there is no room for another scenario',
      found: `${scenarios.length} scenarios`,
      allowed: `up to ${MOST_SCENARIOS}, as many as figures can tell apart`,
      todo: 'take one out, or copy the notebook and compare the others there',
    });
}

/** A name that cells and sentences can refer to. */
function refuseName({ scenarios }: Notebook, name: string): void {
  const found = name === '' ? 'nothing' : `“${name}”`;
  const allowed = `1 to ${LONGEST} letters on one line, without \` and |`;
  if (name !== name.trim() || name === '' || name.length > LONGEST || /[`|\p{Cc}]/u.test(name))
    throw new Refused({
      what: 'this cannot be the name of a scenario',
      found,
      allowed,
      todo: 'choose another name',
    });
  if (scenarios.some((scenario) => scenario.name === name))
    throw new Refused({
      what: 'another scenario has this name',
      found,
      allowed: 'a name of its own for each',
      todo: 'choose another name',
    });
}

function linesOf(text: string): ScenarioLines {
  const lines = scenarioLines(text);
  if (!lines) throw new Error('the list of scenarios is written in a way that cannot be followed');
  return lines;
}

/** Puts a scenario after the last: apart by an empty line where the others are. */
function append(text: string, written: string): string {
  const { segments, indent } = linesOf(text);
  const last = segments[segments.length - 1];
  const eol = eolOf(text);
  const before = segments.at(-2);
  const apart = before && /\n[ \t]*\r?\n/.test(text.slice(before.to, last.from)) ? eol : '';
  const gap = indent === undefined ? ', ' : eol + apart;
  return text.slice(0, last.to) + gap + written + text.slice(last.to);
}

const eolOf = (text: string) => (text.includes('\r\n') ? '\r\n' : '\n');
const listed = (mentions: readonly { readonly words: string }[]) =>
  mentions.map(({ words }) => words).join('; ');

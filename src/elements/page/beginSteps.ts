/** The six steps: which questions each asks at once, and which wait behind "More". */
import { html, nothing, type TemplateResult } from 'lit';
import { type ListName, MOST_ROWS, type SectionName } from '../../begin/answers.ts';
import { rowsShown } from '../../begin/change.ts';
import { CALVES, FEED_KG, FIELDS, type Field, GROWS, ROW_FIELDS } from '../../begin/fields.ts';
import type { Plan } from '../../begin/plan.ts';
import { type Begun, startDate, startOf } from '../../begin/reader.ts';
import { shownNumber } from '../../begin/typed.ts';
import { said } from '../../begin/words.ts';
import type { Tables } from '../../tables/coefficient.ts';
import { EVERYWHERE } from '../../tables/starts.ts';
import { question } from './beginFields.ts';

export interface Sheet {
  readonly begun: Begun;
  readonly plan: Plan;
  readonly tables: Tables;
  readonly set: (section: SectionName, key: string, value: string) => void;
  readonly setRow: (list: ListName, at: number, key: string, value: string) => void;
  readonly add: (list: ListName) => void;
  readonly remove: (list: ListName, at: number) => void;
  /** The keeper's own weather, at the end of the first step. */
  readonly weather: TemplateResult | typeof nothing;
}

export const STEP_NAMES = ['Where', 'Herd', 'Feed', 'Ground', 'What is there', 'Money'] as const;
export const STEP_HEADINGS = [
  'Where is it?',
  'How many of what?',
  'What do they eat?',
  'What ground?',
  'What stands there, what lies in reach?',
  'What does it cost here?',
] as const;

export function stepOf(sheet: Sheet): TemplateResult {
  return [where, herd, feed, ground, there, money][sheet.begun.answers.step](sheet);
}

function ask(sheet: Sheet, section: SectionName, ...keys: readonly string[]): TemplateResult {
  return html`<div class="questions">${keys.map((key) => one(sheet, section, key))}</div>`;
}

function one(sheet: Sheet, section: SectionName, key: string): TemplateResult {
  const { begun, plan } = sheet;
  const at = `${section}.${key}`;
  return question({
    at,
    field: FIELDS[section][key],
    value: begun.answers[section][key] ?? '',
    start: startShown(sheet, section, key),
    system: plan.system,
    currency: plan.currency,
    fault: plan.faults.find((fault) => fault.at === at),
    ...(at === 'place.country' ? { options: countries(begun) } : {}),
    set: (value) => sheet.set(section, key, value),
  });
}

const countries = ({ starts }: Begun) =>
  [...starts].flatMap(([code]) =>
    code === EVERYWHERE ? [] : [[code, startOf(starts, code, 'label')] as const],
  );

/** The start as it is shown: what the plan stands on while nothing is answered. */
function startShown({ begun, plan, tables }: Sheet, section: SectionName, key: string): string {
  const field = FIELDS[section][key];
  if (key === 'country') return plan.countryLabel;
  if (field.kind === 'date') return startDate(begun, key === 'winterStart' ? 'winterStart' : 'winterEnd');
  if (field.kind === 'choice')
    return field.start === undefined ? '' : wordsOf(field, startOf(begun.starts, plan.country, field.start));
  if (field.kind !== 'number' || plan.given.has(`${section}.${key}`)) return '';
  if (key === 'strawPerTonne') {
    const straw = startOf(begun.starts, plan.country, 'strawMaterial');
    const row = tables.prices.get(plan.currency)?.get(`materialPricePerTonne.${straw}`);
    return row ? shownNumber(row.central, field.unit, plan.system) : '';
  }
  const value = (plan as unknown as Readonly<Record<string, unknown>>)[key];
  return typeof value === 'number' && (field.start !== undefined || section === 'ground')
    ? shownNumber(value, field.unit, plan.system)
    : '';
}

/** An option in the words it is offered in. */
const wordsOf = (field: Field, option: string): string =>
  (field.kind === 'choice' ? field.options.find(([each]) => each === option)?.[1] : undefined) ??
  said(option);

function more(sheet: Sheet, section: SectionName, ...keys: readonly string[]): TemplateResult {
  const faulty = sheet.plan.faults.some(({ at }) => keys.some((key) => at === `${section}.${key}`));
  return html`<details ?open=${faulty}><summary>More</summary>${ask(sheet, section, ...keys)}</details>`;
}

function where(sheet: Sheet): TemplateResult {
  return html`${ask(sheet, 'place', 'country', 'name', 'climate', 'rain')}
    <details ?open=${sheet.plan.faults.some(({ step }) => step === 0)}>
      <summary>Dates, latitude, units, own weather</summary>
      ${ask(sheet, 'place', 'winterStart', 'winterEnd', 'latitudeDeg', 'longitudeDeg', 'units')}
      ${sheet.weather}
    </details>`;
}

interface List {
  readonly name: ListName;
  readonly keysOf: (kind: string) => readonly string[];
  readonly add: string;
  readonly startOf: (kind: string, key: string) => string;
}

function rows(sheet: Sheet, list: List): TemplateResult {
  const { begun, plan } = sheet;
  const shown = rowsShown(begun, list.name);
  const kindKey = list.name === 'herd' ? 'class' : list.name === 'feed' ? 'feed' : 'material';
  const inKg = begun.answers.feeding.measure === 'kg';
  return html`<ul class="rows">${shown.map((row, k) => {
    const kind = row[kindKey] ?? '';
    const of = `row ${k + 1}, ${said(kind)}`;
    return html`<li>
      <div class="questions">${list.keysOf(kind).map((key) => {
        const at = `${list.name}.${k}.${key}`;
        return question({
          at,
          field: key === 'amount' && inKg ? FEED_KG : ROW_FIELDS[list.name][key],
          value: row[key] ?? '',
          start: key === kindKey ? '' : list.startOf(kind, key),
          system: plan.system,
          currency: plan.currency,
          fault: plan.faults.find((fault) => fault.at === at),
          of,
          set: (value) => sheet.setRow(list.name, k, key, value),
        });
      })}</div>
      ${shown.length > 1 ? html`<button type="button" class="plain remove" aria-label="Remove ${of}" @click=${() => sheet.remove(list.name, k)}>Remove</button>` : nothing}
    </li>`;
  })}</ul>
  ${shown.length < MOST_ROWS[list.name] ? html`<button type="button" class="plain add" @click=${() => sheet.add(list.name)}>${list.add}</button>` : nothing}`;
}

function herd(sheet: Sheet): TemplateResult {
  const { begun, plan } = sheet;
  return rows(sheet, {
    name: 'herd',
    add: 'Add a group',
    keysOf: (kind) => [
      'class',
      'head',
      'weightKg',
      'hornedShare',
      ...(GROWS.includes(kind) ? ['gainKgPerDay'] : []),
      ...(CALVES.includes(kind) ? ['pregnantShare', 'calvingDate'] : []),
    ],
    startOf: (kind, key) => {
      const field = ROW_FIELDS.herd[key];
      if (field.kind !== 'number') return '';
      const start = startOf(begun.starts, plan.country, `${field.start}.${kind}`);
      return shownNumber(Number(start), field.unit, plan.system);
    },
  });
}

function feed(sheet: Sheet): TemplateResult {
  const { plan, begun } = sheet;
  const inKg = begun.answers.feeding.measure === 'kg';
  return html`${rows(sheet, {
    name: 'feed',
    add: 'Add a feed',
    keysOf: () => ['feed', 'amount'],
    startOf: (kind) => {
      const share = plan.feed.find(({ feed: name }) => name === kind)?.share;
      return share === undefined || inKg ? '' : shownNumber(share, 'fraction', plan.system);
    },
  })}
  ${ask(sheet, 'feeding', 'measure', 'fedTo')}`;
}

function ground(sheet: Sheet): TemplateResult {
  return html`${ask(sheet, 'ground', 'texture', 'landHa', 'paddockHa')}
    ${more(sheet, 'ground', 'paddockMoved', 'exposure', 'crop', 'nitrateZone')}`;
}

function there(sheet: Sheet): TemplateResult {
  const { shed } = sheet.begun.answers.there;
  return html`${ask(sheet, 'there', 'shed', ...(shed === 'slats' || shed === 'bed' ? ['lengthM', 'depthM'] : []))}
    <h3>Bedding within reach</h3>
    ${rows(sheet, {
      name: 'materials',
      add: 'Add a material',
      keysOf: () => ['material', 'tonnes', 'own'],
      startOf: (_, key) => (key === 'tonnes' ? 'as needed' : ''),
    })}
    ${more(sheet, 'there', 'ownTimber', 'longestTimberM', 'snowLoadKnPerM2', 'frostDepthM')}`;
}

function money(sheet: Sheet): TemplateResult {
  return html`${ask(sheet, 'money', 'currency', 'labourPerHour', 'strawPerTonne')}
    ${more(sheet, 'money', 'interestRate', 'grant', 'ownMoney', 'loan', 'loanRate', 'loanYears')}`;
}

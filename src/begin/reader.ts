/** Answers read one by one against what may be answered, with the starts of the country behind them. */
import { FEEDS } from '../notebook/schema.ts';
import { EVERYWHERE, type Starts } from '../tables/starts.ts';
import { dayNumber, partsOf } from '../units/days.ts';
import type { UnitSystem } from '../units/quantities.ts';
import type { Answers, ListName, Row, SectionName } from './answers.ts';
import { FIELDS, type Field } from './fields.ts';
import { readTyped } from './typed.ts';

/** What cannot be taken as it was typed. `at` is the path of the answer: `ground.landHa`, `herd.0.head`. */
export interface Fault {
  readonly step: number;
  readonly at: string;
  readonly label: string;
  readonly words: string;
}

export interface Begun {
  readonly answers: Answers;
  readonly starts: Starts;
  /** The country where none is chosen, by the language of the machine. */
  readonly home: string;
  /** Today, ISO. */
  readonly today: string;
}

const STEP_OF: Readonly<Record<SectionName | ListName, number>> = {
  place: 0,
  herd: 1,
  feeding: 2,
  feed: 2,
  ground: 3,
  there: 4,
  materials: 4,
  money: 5,
};
export const countryOf = ({ answers: { place }, starts, home }: Begun): string =>
  [place.country, home].find((code) => code !== undefined && code !== EVERYWHERE && starts.has(code)) ??
  'other';

/** The start of a country; its own, or that of every country. */
export function startOf(starts: Starts, country: string, key: string): string {
  const found = starts.get(country)?.get(key) ?? starts.get(EVERYWHERE)?.get(key);
  if (!found) throw new Error(`no start ${key} for ${country}`);
  return found.value;
}

export const systemOf = (begun: Begun): UnitSystem =>
  (begun.answers.place.units || startOf(begun.starts, countryOf(begun), 'units')) === 'us' ? 'us' : 'metric';

/** The winter that is on, or the next one: its first and last day by the starts. */
export function startDate(begun: Begun, key: 'winterStart' | 'winterEnd'): string {
  const of = (name: string) => startOf(begun.starts, countryOf(begun), name);
  const { year } = partsOf(dayNumber(begun.today));
  const first = begun.today <= `${year}-${of('winterEnd')}` ? year - 1 : year;
  return key === 'winterStart' ? `${first}-${of('winterStart')}` : `${first + 1}-${of('winterEnd')}`;
}

/** Feeds as they stand on the page: those chosen, or the usual ones of the country. */
export function feedRows(begun: Begun): readonly Row[] {
  if (begun.answers.feed.length > 0) return begun.answers.feed;
  return FEEDS.filter((feed) => Number(startOf(begun.starts, countryOf(begun), `feedShare.${feed}`)) > 0).map(
    (feed) => ({ feed }),
  );
}

/** Materials as they stand on the page: those named, or the usual straw of the country. */
export function materialRows(begun: Begun): readonly Row[] {
  const { materials } = begun.answers;
  return materials.length > 0
    ? materials
    : [{ material: startOf(begun.starts, countryOf(begun), 'strawMaterial') }];
}

/** Reads answers one by one and notes what was given and what was wrong. */
export class Reader {
  readonly given = new Set<string>();
  readonly faults: Fault[] = [];
  readonly begun: Begun;
  readonly country: string;
  readonly system: UnitSystem;

  constructor(begun: Begun) {
    this.begun = begun;
    this.country = countryOf(begun);
    this.system = systemOf(begun);
  }

  start(key: string): string {
    return startOf(this.begun.starts, this.country, key);
  }

  fault(at: string, label: string, words: string): void {
    const step = STEP_OF[at.split('.')[0] as SectionName | ListName];
    this.faults.push({ step, at, label, words });
  }

  /** The number answered, or undefined where there is none or none that can be taken. */
  number(at: string, field: Field, raw: string | undefined): number | undefined {
    if (field.kind !== 'number') throw new Error(`${at} is no number`);
    if (raw === undefined || raw.trim() === '') return undefined;
    const read = readTyped(raw, field, this.system);
    if ('fault' in read) {
      this.fault(at, field.label, read.fault);
      return undefined;
    }
    this.given.add(at);
    return read.value;
  }

  choice(at: string, field: Field, raw: string | undefined): string | undefined {
    if (field.kind !== 'choice' || raw === undefined || !field.options.some(([option]) => option === raw))
      return undefined;
    this.given.add(at);
    return raw;
  }

  date(at: string, field: Field, raw: string | undefined): string | undefined {
    if (raw === undefined || raw.trim() === '') return undefined;
    if (Number.isNaN(dayNumber(raw))) {
      this.fault(at, field.label, `“${raw}” is not a day. Write it like 2026-11-01.`);
      return undefined;
    }
    this.given.add(at);
    return raw;
  }

  asked(section: SectionName, key: string): { at: string; field: Field; raw: string | undefined } {
    return { at: `${section}.${key}`, field: FIELDS[section][key], raw: this.begun.answers[section][key] };
  }

  /** A number of a section, or its start. */
  numberOf(section: SectionName, key: string, by = ''): number {
    const { at, field, raw } = this.asked(section, key);
    return this.number(at, field, raw) ?? Number(this.start(`${field.start}${by}`));
  }

  wanted(section: SectionName, key: string): number | undefined {
    const { at, field, raw } = this.asked(section, key);
    return this.number(at, field, raw);
  }

  wordOf(section: SectionName, key: string): string {
    const { at, field, raw } = this.asked(section, key);
    return this.choice(at, field, raw) ?? (field.start === undefined ? '' : this.start(field.start));
  }
}

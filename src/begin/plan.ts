/** From what was typed to a farm: each answer read, a start of the country where there is none, faults said. */
import type { HerdGroup } from '../notebook/schema.ts';
import { dateOf, dayNumber, dayOf, daysBetween, partsOf } from '../units/days.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { FIELDS } from './fields.ts';
import { type Material, readFeed, readHerd, readMaterials } from './lists.ts';
import { type Begun, type Fault, Reader, startDate } from './reader.ts';
import { countryInSentence } from './words.ts';

export interface Plan {
  readonly country: string;
  readonly countryLabel: string;
  readonly system: UnitSystem;
  readonly placeName: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** File of daily weather, shipped or the keeper's. */
  readonly weatherFile: string;
  readonly ownWeather: boolean;
  readonly rainFactor: number;
  readonly winter: { readonly start: string; readonly end: string };
  readonly herd: readonly HerdGroup[];
  readonly feed: readonly { readonly feed: string; readonly share: number }[];
  readonly texture: string;
  readonly landHa: number;
  readonly paddockHa: number;
  readonly paddockMoved: string;
  readonly exposure: string;
  readonly crop: string;
  readonly nitrateZone: boolean;
  /** What a standing shed is for, with its size; none stands where it is undefined. */
  readonly standing:
    | { readonly use: 'slats' | 'bed'; readonly lengthM: number; readonly depthM: number }
    | undefined;
  readonly materials: readonly Material[];
  readonly ownTimber: boolean;
  readonly longestTimberM: number;
  readonly snowLoadKnPerM2: number;
  /** Undefined where the keeper says nothing: the weather in use then tells it. */
  readonly frostDepthM: number | undefined;
  readonly currency: string;
  readonly labourPerHour: number;
  readonly strawPerTonne: number | undefined;
  readonly interestRate: number;
  readonly grant: number;
  readonly ownMoney: number | undefined;
  readonly loan: number;
  readonly loanRate: number;
  readonly loanYears: number;
  /** A start that nobody is asked about: measures of sheds, months of spreading. */
  readonly start: (key: string) => number;
  readonly startWord: (key: string) => string;
  /** Paths of what the keeper answered; the rest are starts. */
  readonly given: ReadonlySet<string>;
  readonly faults: readonly Fault[];
}

/** Reads all answers. Whatever was typed, the plan is whole: what cannot be taken is a fault and its start stands. */
export function planOf(begun: Begun): Plan {
  const read = new Reader(begun);
  const { place } = begun.answers;
  const winter = readWinter(read);
  const herd = readHerd(read, winter);
  const head = herd.reduce((sum, group) => sum + group.head, 0);
  const feed = readFeed(read);
  const currency = read.wordOf('money', 'currency');
  const name = (place.name ?? '')
    .replace(/\p{Cc}/gu, ' ')
    .trim()
    .slice(0, 80);
  if (name !== '') read.given.add('place.name');
  const ownWeather = (place.weatherFile ?? '') !== '';
  const latitudeDeg = read.numberOf('place', 'latitudeDeg');
  if (latitudeDeg < 0 && !ownWeather)
    read.fault(
      'place.latitudeDeg',
      'Latitude',
      'The weather that comes with the page has its winter in January. South of the equator, give your own weather file below.',
    );
  const countryLabel = read.start('label');
  const ground = readGround(read, head);
  return {
    country: read.country,
    countryLabel,
    system: read.system,
    placeName: name === '' ? `A farm in ${countryInSentence(countryLabel)}` : name,
    latitudeDeg,
    longitudeDeg: read.numberOf('place', 'longitudeDeg'),
    weatherFile: ownWeather ? (place.weatherFile ?? '') : `${read.wordOf('place', 'climate')}.csv`,
    ownWeather,
    rainFactor: ownWeather ? 1 : Number(read.wordOf('place', 'rain') || 1),
    winter,
    herd: herd.map((group) =>
      feed.kgPerDay === undefined ? group : { ...group, dryMatterKgPerDay: feed.kgPerDay },
    ),
    feed: feed.shares,
    ...ground,
    standing: readStanding(read),
    materials: readMaterials(read),
    ownTimber: read.wordOf('there', 'ownTimber') === 'yes',
    longestTimberM: read.numberOf('there', 'longestTimberM'),
    snowLoadKnPerM2: read.numberOf('there', 'snowLoadKnPerM2'),
    frostDepthM: read.wanted('there', 'frostDepthM'),
    currency,
    labourPerHour: read.numberOf('money', 'labourPerHour', `.${currency}`),
    strawPerTonne: read.wanted('money', 'strawPerTonne'),
    interestRate: read.numberOf('money', 'interestRate'),
    grant: read.wanted('money', 'grant') ?? 0,
    ownMoney: read.wanted('money', 'ownMoney'),
    loan: read.wanted('money', 'loan') ?? 0,
    loanRate: read.numberOf('money', 'loanRate'),
    loanYears: read.numberOf('money', 'loanYears'),
    start: (key) => Number(read.start(key)),
    startWord: (key) => read.start(key),
    given: read.given,
    faults: read.faults,
  };
}

/** Shorter winters have no weeks to reckon with, longer ones are no winter. */
const DAYS = { least: 14, most: 330 };

function readWinter(read: Reader): Plan['winter'] {
  const of = (key: 'winterStart' | 'winterEnd') => {
    const { at, field, raw } = read.asked('place', key);
    return read.date(at, field, raw);
  };
  const start = of('winterStart');
  const end = of('winterEnd');
  const usual = { start: startDate(read.begun, 'winterStart'), end: startDate(read.begun, 'winterEnd') };
  // Where only one end was given, the other is the usual day that goes with it.
  const first = start ?? (end === undefined ? usual.start : before(end, usual.start));
  const last = end ?? (start === undefined ? usual.end : after(start, usual.end));
  const days = daysBetween(first, last);
  if (days >= DAYS.least && days <= DAYS.most) return { start: first, end: last };
  read.fault(
    'place.winterEnd',
    FIELDS.place.winterEnd.label,
    `From ${first} to ${last} makes ${days} ${Math.abs(days) === 1 ? 'day' : 'days'}. A winter here has ${DAYS.least} to ${DAYS.most}: look at the two years.`,
  );
  return usual;
}

/** The last such day of the year before a date, the first after it. */
function before(date: string, like: string): string {
  const { month, day } = partsOf(dayNumber(like));
  const { year } = partsOf(dayNumber(date));
  const same = dateOf(dayOf(year, month, day));
  return same < date ? same : dateOf(dayOf(year - 1, month, day));
}
function after(date: string, like: string): string {
  const { month, day } = partsOf(dayNumber(like));
  const { year } = partsOf(dayNumber(date));
  const same = dateOf(dayOf(year, month, day));
  return same > date ? same : dateOf(dayOf(year + 1, month, day));
}

function readGround(read: Reader, head: number) {
  const half = (ha: number) => Math.max(0.5, Math.round(ha * 2) / 2);
  const land = read.wanted('ground', 'landHa');
  const paddock = read.wanted('ground', 'paddockHa');
  const usual = half(head * Number(read.start('paddockHaPerHead')));
  return {
    texture: read.wordOf('ground', 'texture'),
    landHa: land ?? Math.max(half(head * Number(read.start('landHaPerHead'))), paddock ?? 0),
    paddockHa: paddock ?? Math.min(usual, land ?? usual),
    paddockMoved: read.wordOf('ground', 'paddockMoved'),
    exposure: read.wordOf('ground', 'exposure'),
    crop: read.wordOf('ground', 'crop'),
    nitrateZone: read.wordOf('ground', 'nitrateZone') === 'yes',
  };
}

function readStanding(read: Reader): Plan['standing'] {
  const use = read.wordOf('there', 'shed');
  if (use !== 'slats' && use !== 'bed') return undefined;
  const lengthM = read.wanted('there', 'lengthM');
  const depthM = read.wanted('there', 'depthM');
  if (lengthM !== undefined && depthM !== undefined) return { use, lengthM, depthM };
  read.fault(
    lengthM === undefined ? 'there.lengthM' : 'there.depthM',
    'The shed that stands',
    'Pace it out: its length along the feed barrier and its depth from barrier to rear wall. Until then it is left out.',
  );
  return undefined;
}

/** The lists a keeper fills row by row: herd, feeds, materials. */
import { FEEDS, type HerdGroup } from '../notebook/schema.ts';
import { daysBetween } from '../units/days.ts';
import { CALVES, FEED_KG, GROWS, ROW_FIELDS } from './fields.ts';
import { feedRows, materialRows, type Reader } from './reader.ts';
import { CLASS_WORDS, ONE_WORDS, said } from './words.ts';

/** A herd beyond this is not a small one, and its shed none that can be drawn here. */
export const MOST_HEAD = 1000;

const HERD = ROW_FIELDS.herd;
/** Below this no animal of any class is one. */
const LIGHTEST_KG = 30;

export function readHerd(
  read: Reader,
  winter: { readonly start: string; readonly end: string },
): HerdGroup[] {
  const seen = new Map<string, number>();
  const groups = read.begun.answers.herd.map((row, k): HerdGroup => {
    const at = (key: string) => `herd.${k}.${key}`;
    const of = (read.choice(at('class'), HERD.class, row.class) ?? 'sucklerCow') as HerdGroup['class'];
    const value = (key: string) =>
      read.number(at(key), HERD[key], row[key]) ?? Number(read.start(`${HERD[key].start}.${of}`));
    const times = (seen.get(of) ?? 0) + 1;
    seen.set(of, times);
    const calving = CALVES.includes(of)
      ? read.date(at('calvingDate'), HERD.calvingDate, row.calvingDate)
      : undefined;
    const head = value('head');
    const name = head === 1 ? ONE_WORDS[of] : CLASS_WORDS[of];
    return {
      name: times === 1 ? name : `${name} ${times}`,
      class: of,
      head,
      weightKg: value('weightKg'),
      gainKgPerDay: GROWS.includes(of) ? value('gainKgPerDay') : 0,
      pregnantShare: CALVES.includes(of) ? value('pregnantShare') : 0,
      milkKgPerDay: 0,
      hornedShare: Number(read.choice(at('hornedShare'), HERD.hornedShare, row.hornedShare) ?? 0),
      ...(calving === undefined ? {} : { calvingDate: calving }),
      ...fedTo(read),
    };
  });
  const total = groups.reduce((sum, group) => sum + group.head, 0);
  if (!(total > 0))
    read.fault('herd.0.head', HERD.head.label, 'There are no animals. Give at least one group one head.');
  if (total > MOST_HEAD)
    read.fault(
      'herd.0.head',
      HERD.head.label,
      `${total} head in all. The sheds drawn here are for herds of up to ${MOST_HEAD}.`,
    );
  const lasting = groups.map((group, k) => {
    const end = group.weightKg + group.gainKgPerDay * daysBetween(winter.start, winter.end);
    if (end >= LIGHTEST_KG) return group;
    read.fault(
      `herd.${k}.gainKgPerDay`,
      HERD.gainKgPerDay.label,
      `At this loss the ${said(group.class)} would weigh ${Math.round(end)} kg in spring.`,
    );
    return { ...group, gainKgPerDay: 0 };
  });
  const there = lasting.filter((group) => group.head > 0);
  return there.length > 0 ? there : [{ ...lasting[0], head: 1 }];
}

function fedTo(read: Reader): Pick<HerdGroup, 'fedTo'> {
  const to = read.wordOf('feeding', 'fedTo');
  return to === 'need' || to === 'appetite' ? { fedTo: to } : {};
}

/** The rows whose thing was not named before them; a second row of one thing is a fault. */
function onceEach<Row extends { readonly k: number }>(
  read: Reader,
  list: 'feed' | 'materials',
  rows: readonly Row[],
  [key, thing]: readonly [key: string, thing: (row: Row) => string],
): Row[] {
  const seen = new Set<string>();
  return rows.filter((row) => {
    const what = thing(row);
    if (!seen.has(what)) return seen.add(what);
    read.fault(
      `${list}.${row.k}.${key}`,
      ROW_FIELDS[list][key].label,
      `${said(what)} is on the list twice. Keep one row.`,
    );
    return false;
  });
}

export function readFeed(read: Reader): {
  shares: { feed: string; share: number }[];
  kgPerDay: number | undefined;
} {
  const inKg = read.wordOf('feeding', 'measure') === 'kg';
  const rows = feedRows(read.begun).flatMap((row, k) => {
    const feed = read.choice(`feed.${k}.feed`, ROW_FIELDS.feed.feed, row.feed);
    const amount = read.number(`feed.${k}.amount`, inKg ? FEED_KG : ROW_FIELDS.feed.amount, row.amount);
    return feed === undefined ? [] : [{ k, feed, amount }];
  });
  const once = onceEach(read, 'feed', rows, ['feed', ({ feed }) => feed]);
  const own = once.length > 0 ? once : [{ feed: 'hay', amount: undefined }];
  const typed = own.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const usual = Object.fromEntries(FEEDS.map((feed) => [feed, Number(read.start(`feedShare.${feed}`))]));
  if (own.every(({ amount }) => amount === undefined)) {
    const all = own.reduce((sum, { feed }) => sum + usual[feed], 0);
    return {
      shares: inParts(own.map(({ feed }) => ({ feed, part: all > 0 ? usual[feed] : 1 }))),
      kgPerDay: undefined,
    };
  }
  const open = own.filter(({ amount }) => amount === undefined).length;
  if (inKg || open === 0) {
    // Percent that come to a little more or less than the whole were rounded by whoever typed them.
    if (!inKg && Math.abs(typed - 1) > 0.011)
      read.fault(
        'feed.0.amount',
        'Shares',
        `The shares come to ${Math.round(typed * 1000) / 10} %. Together they must make 100.`,
      );
    if (!(typed > 0))
      return { shares: inParts(own.map(({ feed }) => ({ feed, part: 1 }))), kgPerDay: undefined };
    const shares = inParts(own.map(({ feed, amount }) => ({ feed, part: amount ?? 0 })));
    return { shares, kgPerDay: inKg && typed <= 60 ? Number(typed.toPrecision(6)) : undefined };
  }
  if (typed > 1.0001)
    read.fault(
      'feed.0.amount',
      'Shares',
      `The shares come to ${Math.round(typed * 1000) / 10} %, and others are still open. Together they must make 100.`,
    );
  const rest = Math.max(0, 1 - typed) / open;
  return {
    shares: inParts(own.map(({ feed, amount }) => ({ feed, part: amount ?? rest }))),
    kgPerDay: undefined,
  };
}

/** Shares to a thousandth that sum to 1, what is nothing left out. */
function inParts(
  rows: readonly { readonly feed: string; readonly part: number }[],
): { feed: string; share: number }[] {
  return sharesOf(rows.map(({ part }) => part)).flatMap((share, k) =>
    share > 0 ? [{ feed: rows[k].feed, share }] : [],
  );
}

/** Parts of a whole to a thousandth; what rounding leaves goes to the largest. */
export function sharesOf(parts: readonly number[]): number[] {
  const sum = parts.reduce((all, part) => all + part, 0);
  const even = parts.map((part) => Math.round((sum > 0 ? part / sum : 1 / parts.length) * 1000));
  const most = even.indexOf(Math.max(...even));
  even[most] += 1000 - even.reduce((all, share) => all + share, 0);
  return even.map((share) => share / 1000);
}

export interface Material {
  readonly material: string;
  /** Undefined where as much is bought as the bed needs. */
  readonly tonnes: number | undefined;
  readonly own: boolean;
}

export function readMaterials(read: Reader): Material[] {
  const rows = materialRows(read.begun).flatMap((row, k) => {
    const material = read.choice(`materials.${k}.material`, ROW_FIELDS.materials.material, row.material);
    const tonnes = read.number(`materials.${k}.tonnes`, ROW_FIELDS.materials.tonnes, row.tonnes);
    const own = read.choice(`materials.${k}.own`, ROW_FIELDS.materials.own, row.own) === 'yes';
    return material === undefined ? [] : [{ k, material, tonnes, own }];
  });
  const once = onceEach(read, 'materials', rows, ['material', ({ material }) => material]).map(
    ({ k: _, ...material }) => material,
  );
  return once.length > 0 ? once : [{ material: read.start('strawMaterial'), tonnes: undefined, own: false }];
}

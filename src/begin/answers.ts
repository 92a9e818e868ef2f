/**
 * What the keeper has typed so far, as it was typed: an answer that cannot be understood yet is kept like any other.
 * '' is no answer, and a start of the country stands in its place.
 */
export type Row = Readonly<Record<string, string>>;

export const LISTS = ['herd', 'feed', 'materials'] as const;
export type ListName = (typeof LISTS)[number];
export const SECTIONS = ['place', 'feeding', 'ground', 'there', 'money'] as const;
export type SectionName = (typeof SECTIONS)[number];

export type Answers = { readonly [S in SectionName]: Row } & { readonly [L in ListName]: readonly Row[] } & {
  /** The step the keeper stands at, from 0. */
  readonly step: number;
};

export const STEPS = 6;
/** Rows a list may have: what the notebook takes of groups and feeds, and what a bed's mix takes of materials. */
export const MOST_ROWS: Readonly<Record<ListName, number>> = { herd: 12, feed: 6, materials: 6 };
/** Longer than any answer; what was kept by something else is not typed back. */
const MOST_LETTERS = 200;

export const NO_ANSWERS: Answers = {
  step: 0,
  place: {},
  herd: [{ class: 'sucklerCow' }, { class: 'bull' }],
  feeding: {},
  feed: [],
  ground: {},
  there: {},
  materials: [],
  money: {},
};

/** Answers as they were kept, whatever became of the text: what is not an answer is passed over. */
export function answersFrom(kept: string | undefined): Answers {
  let read: unknown;
  try {
    read = JSON.parse(kept ?? 'null');
  } catch {
    return NO_ANSWERS;
  }
  if (!isMap(read)) return NO_ANSWERS;
  const from = read;
  const out: Record<string, unknown> = { ...NO_ANSWERS };
  for (const section of SECTIONS) if (isMap(from[section])) out[section] = rowOf(from[section]);
  for (const list of LISTS) {
    const rows = from[list];
    if (Array.isArray(rows) && rows.every(isMap) && (rows.length > 0 || list !== 'herd'))
      out[list] = rows.slice(0, MOST_ROWS[list]).map(rowOf);
  }
  const { step } = from;
  if (typeof step === 'number' && Number.isInteger(step) && step >= 0 && step < STEPS) out.step = step;
  return out as unknown as Answers;
}

export const answersText = (answers: Answers): string => JSON.stringify(answers);

/** True where something was typed or chosen. */
export function isBegun(answers: Answers): boolean {
  return answersText({ ...answers, step: 0 }) !== answersText(NO_ANSWERS);
}

type Map = Readonly<Record<string, unknown>>;
const isMap = (value: unknown): value is Map =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

const rowOf = (map: Map): Row =>
  Object.fromEntries(
    Object.entries(map).filter(
      (entry): entry is [string, string] =>
        /^[a-zA-Z0-9]{1,40}$/.test(entry[0]) &&
        typeof entry[1] === 'string' &&
        entry[1].length <= MOST_LETTERS,
    ),
  );

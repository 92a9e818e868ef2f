/** What is wrong with something a person gave us: where it is, what was found, what is allowed, what to do. */
export interface Problem {
  /** One plain sentence without the place: "the day is there twice". */
  what: string;
  file: string;
  /** 1-based line in the file. */
  line?: number;
  /** Column of a table, or dotted path in a notebook. */
  key?: string;
  /** What was read, as written in the file. */
  found?: string;
  allowed?: string;
  /** What the reader of the message can do about it. */
  todo?: string;
}

/** A problem with a key of what was read gets the line that key stands on. */
export function withLine(
  problem: Problem,
  { file, lineOf }: { readonly file: string; readonly lineOf: (key: string) => number | undefined },
): Problem {
  return problem.line !== undefined || problem.key === undefined || problem.file !== file
    ? problem
    : { ...problem, line: lineOf(problem.key) };
}

/** Longer than any name: what a damaged file holds must not bury what is said of it. */
const LONGEST = 300;
const clipped = (text: string) => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);

/** One line: `file:line key: what; found …; allowed …; todo`. Parts that are not known are left out. */
export function formatProblem({ file, line, key, what, found, allowed, todo }: Problem): string {
  const place = `${file}${line === undefined ? '' : `:${line}`}${key === undefined ? '' : ` ${clipped(key)}`}`;
  const parts = [
    what,
    found === undefined ? '' : `found ${clipped(found)}`,
    allowed === undefined ? '' : `allowed ${allowed}`,
    todo ?? '',
  ].filter((part) => part !== '');
  return `${place}: ${parts.join('; ')}`.replace(/\s*[\r\n]+\s*/g, ' ').replace(/\p{Cc}/gu, '\uFFFD');
}

/**
 * Edits of a notebook that a keeper asks for by name. Each is text to text, read back before it is given out: it is
 * refused, with the reason, rather than leaving anything in the notebook that cannot be read.
 */
import type { Problem } from '../units/problem.ts';
import type { Notebook, ReadResult } from './read.ts';

/** The notebook's text as it stands, and what reads it. */
export interface Editing {
  readonly text: string;
  readonly file: string;
  readonly read: (text: string, file: string) => ReadResult;
}

/** A place in a notebook that names a scenario. */
export interface Mention {
  /** Where it stands, in words: "the cell flip on line 120". */
  readonly words: string;
  /** Prose can only be changed by who wrote it; anything else can be let go of. */
  readonly inProse: boolean;
}

export type Edited =
  | {
      readonly text: string;
      /** What was done, for the undo button. */
      readonly what: string;
    }
  | {
      readonly refused: Problem;
      /** What would have to go with it: asked, since it can be done. */
      readonly asks?: readonly Mention[];
    };

/** Why an edit is not made. Only thrown inside `editWith`, which gives it out as a value. */
export class Refused extends Error {
  constructor(
    readonly problem: Omit<Problem, 'file'>,
    readonly asks?: readonly Mention[],
  ) {
    super(problem.what);
  }
}

/** Makes an edit of a notebook that can be read, and sees to it that nothing is wrong afterwards that was not before. */
export function editWith(
  { text, file, read }: Editing,
  what: (notebook: Notebook) => string,
  make: (notebook: Notebook) => string,
): Edited {
  const before = read(text, file);
  if (!before.notebook)
    return {
      refused: {
        what: 'the notebook cannot be read as it stands, so nothing else in it is changed',
        file,
        todo: 'mend what is listed above first, or undo the last change',
      },
    };
  try {
    const next = make(before.notebook);
    const known = new Set(before.problems.map(saying));
    const worse = read(next, file).problems.find((problem) => !known.has(saying(problem)));
    return worse ? { refused: worse } : { text: next, what: what(before.notebook) };
  } catch (error) {
    if (error instanceof Refused)
      return { refused: { ...error.problem, file }, ...(error.asks ? { asks: error.asks } : {}) };
    return {
      refused: {
        what: 'the change could not be written into the text',
        file,
        found: error instanceof Error ? error.message : String(error),
        todo: 'change it in the text itself',
      },
    };
  }
}

/** What a problem says, wherever it stands now. */
const saying = ({ what, found, allowed }: Problem) => [what, found, allowed].join('\n');

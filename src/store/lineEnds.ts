/** Line ends of a text as they are in the file, and as one kind where a field shows no other. */
import { type Difference, difference } from './difference.ts';

const END = /\r\n?/g;

/** The text with every line end a single line feed. */
export const oneLineEnd = (text: string): string => (text.includes('\r') ? text.replace(END, '\n') : text);

/**
 * What was made of `oneLineEnd(text)` written back into the text: line ends that were not touched stay as they are, and
 * new ones are of the kind the text begins with.
 */
export function withShown(text: string, shown: string): string {
  if (!text.includes('\r')) return shown;
  const first = /\r\n?|\n/.exec(text)?.[0] ?? '\n';
  const next = written(text, difference(oneLineEnd(text), shown), first);
  // A lone carriage return and a line feed that came to stand beside it would be one line end: then all are made alike.
  return oneLineEnd(next) === shown ? next : shown.replaceAll('\n', first);
}

function written(text: string, splices: Difference, end: string): string {
  let out = '';
  /** Place in the text, and the same place as it is shown. */
  let at = 0;
  let seen = 0;
  const forward = (to: number) => {
    const from = at;
    while (seen < to) {
      at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
      seen++;
    }
    return text.slice(from, at);
  };
  for (const { at: place, cut, put } of splices) {
    out += forward(place);
    forward(place + cut.length);
    out += put.replaceAll('\n', end);
  }
  return out + text.slice(at);
}

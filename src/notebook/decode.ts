/** Bytes → text, refusing before any parsing what cannot be a notebook. */
import type { Problem } from '../units/problem.ts';

/** Larger than any notebook: a winter's diary with prose is some 50 kB. */
export const MAX_BYTES = 2_000_000;

export type Decoded = { readonly text: string } | { readonly problem: Problem };

/** The text of a notebook file, byte order mark and line ends kept so that it can be written back as it was. */
export function decodeNotebook(source: string | Uint8Array, file: string): Decoded {
  const refuse = (what: string, rest: Partial<Problem> = {}): Decoded => ({
    problem: { what, file, ...rest },
  });
  const bytes = typeof source === 'string' ? source.length : source.byteLength;
  if (bytes > MAX_BYTES)
    return refuse('the file is too large to be a notebook', {
      found: `${(bytes / 1e6).toFixed(1)} MB`,
      allowed: `at most ${MAX_BYTES / 1e6} MB`,
      todo: 'weather and other tables belong in files of their own',
    });
  const text = typeof source === 'string' ? source : decodeUtf8(source);
  const todo = 'save it as plain text in UTF-8';
  if (text === undefined)
    return refuse('the file is not text', { found: 'bytes that are not UTF-8', allowed: 'UTF-8', todo });
  const nul = text.indexOf('\0');
  if (nul >= 0)
    return refuse('the file is not text', {
      line: lineAt(text, nul),
      found: 'a zero byte',
      allowed: 'plain text',
      todo,
    });
  if (text.includes('\r') && !text.includes('\n'))
    return refuse('the lines end as on very old computers', {
      found: 'carriage returns alone',
      allowed: 'line feeds, or both',
      todo: 'save it with line ends of Unix or Windows',
    });
  if (text.trim() === '' || text === '\uFEFF')
    return refuse('the file is empty', { todo: 'start from one of the shipped notebooks' });
  return { text };
}

function decodeUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** 1-based line of an offset. */
export function lineAt(text: string, offset: number): number {
  let line = 1;
  for (let i = text.indexOf('\n'); i >= 0 && i < offset; i = text.indexOf('\n', i + 1)) line++;
  return line;
}

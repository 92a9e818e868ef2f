/** What a command prints, made safe for a terminal: a notebook's words may hold codes that clear it, or rewrite lines above. */

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const CODES = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g;

/** Control characters but line ends and tabs, and marks that turn the direction of writing, as the sign for "not a letter". */
export const printed = (text: string): string => text.replace(CODES, '\uFFFD');

export const tell = (text: string): void => void process.stderr.write(printed(text));

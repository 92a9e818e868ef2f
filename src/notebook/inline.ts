/**
 * Values by name in prose: inline code that begins with an equals sign, `=nitrogenKeptKg of Deep bed`.
 * A name and a scenario, never an expression; any Markdown viewer shows the name where the figure will stand.
 */
export interface InlineValue {
  readonly quantity: string;
  /** Scenario by name; the first of the notebook when null. */
  readonly scenario: string | null;
  /** 1-based line in the file. */
  readonly line: number;
}

const FORM = /^=\s*([A-Za-z][A-Za-z0-9]*)(?:\s+of\s+(\S.*?))?\s*$/;

/** Words of the allowed form, for messages. */
export const INLINE_FORM = '`=quantity of Scenario name`';

/** Whether inline code means a value; other code is shown as it is. */
export const isInlineValue = (code: string) => code.startsWith('=');

/** The reference in inline code, or undefined when it is not of the form. */
export function readInlineValue(code: string, line: number): InlineValue | undefined {
  const match = FORM.exec(code);
  return match ? { quantity: match[1], scenario: match[2] ?? null, line } : undefined;
}

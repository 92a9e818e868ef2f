import { type ParseArgsConfig, parseArgs } from 'node:util';
import { CommandError } from './error.ts';

/** Options and positionals of a command, or its usage as an error with exit code 2. */
export function argumentsOf<const O extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  usage: string,
  least: number,
  most: number,
  options: O,
) {
  try {
    const parsed = parseArgs({ args: joined(args, options), options, allowPositionals: true });
    if (parsed.positionals.length < least || parsed.positionals.length > most)
      throw new CommandError(
        `takes ${least === most ? least : `${least} or more`} ${most === 1 ? 'argument' : 'arguments'}; found ${parsed.positionals.length}`,
      );
    return parsed;
  } catch (error) {
    throw new CommandError(`${(error as Error).message}\nUsage: winterkeep ${usage}`, 2);
  }
}

/** `--from -5` as `--from=-5`: a negative number is a value, though it starts like an option. */
function joined(args: readonly string[], options: NonNullable<ParseArgsConfig['options']>): string[] {
  const out: string[] = [];
  for (const arg of args) {
    const before = out.at(-1);
    const takesValue = before?.startsWith('--') && options[before.slice(2)]?.type === 'string';
    if (takesValue && /^-[\d.]/.test(arg)) out[out.length - 1] = `${before}=${arg}`;
    else out.push(arg);
  }
  return out;
}

/** A whole number in an option, between bounds. */
export function wholeNumber(text: string, option: string, low: number, high: number): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isInteger(value) || value < low || value > high)
    throw new CommandError(
      `--${option}: not a whole number in range; found ${text || 'nothing'}; allowed ${low} to ${high}`,
      2,
    );
  return value;
}

/** A number in an option. */
export function plainNumber(text: string | undefined, option: string): number {
  const value = Number(text);
  if (text === undefined || text.trim() === '' || !Number.isFinite(value))
    throw new CommandError(`--${option}: not a number; found ${text ?? 'nothing'}`, 2);
  return value;
}

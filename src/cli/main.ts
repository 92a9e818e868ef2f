/** The command: `winterkeep COMMAND FILE …`. Each command is one file with its own usage and options. */
import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { CommandError } from './error.ts';
import { printed, tell } from './printed.ts';
import { whyNot } from './writeWhole.ts';

interface Command {
  /** First line says the arguments, the rest what it does. */
  readonly usage: string;
  readonly run: (args: readonly string[], out: (text: string) => void) => Promise<void> | void;
}

const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  compare: () => import('./compare.ts'),
  check: () => import('./check.ts'),
  explain: () => import('./explain.ts'),
  sweep: () => import('./sweep.ts'),
  batch: () => import('./batch.ts'),
  case: () => import('./case.ts'),
  calibrate: () => import('./calibrate.ts'),
};

/** Runs one command line; the exit code is 0, 1 for something to mend in the input, 2 for a wrong call. */
export async function main(
  args: readonly string[],
  write = (text: string) => void process.stdout.write(text),
): Promise<number> {
  const out = (text: string) => write(printed(text));
  const [name, ...rest] = args;
  const load = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  try {
    if (!load) {
      const asked = name === undefined || name === 'help' || name === '--help';
      const text = await usage();
      if (asked) out(text);
      else tell(`unknown command: ${name}; allowed ${Object.keys(COMMANDS).join(', ')}\n\n${text}`);
      return asked && name !== undefined ? 0 : 2;
    }
    const command = await load();
    if (rest.includes('--help')) out(`winterkeep ${command.usage}\n`);
    else await command.run(rest, out);
    return 0;
  } catch (error) {
    if (!(error instanceof CommandError)) {
      tell(
        `a fault of winterkeep, not of your file; the makers can mend it with what stands below and the notebook\n${(error as Error).stack ?? error}\n`,
      );
      return 1;
    }
    tell(`${error.message}\n`);
    return error.exitCode;
  }
}

async function usage(): Promise<string> {
  const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
  return `${['Usage: npm run --silent winterkeep -- COMMAND …', '', ...commands.map((c) => `  ${c.usage.split('\n').join('\n    ')}`)].join('\n')}\n`;
}

// By the file itself, so that a folder named with # or %, or one reached through a link, is the same.
if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
    // A closed pipe (as from `| head`) is not an error.
    if (code !== 'EPIPE') tell(`the output is not whole: ${whyNot(code)}\n`);
    process.exit(code === 'EPIPE' ? 0 : 1);
  });
  process.exitCode = await main(process.argv.slice(2));
}

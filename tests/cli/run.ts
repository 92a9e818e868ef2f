/** Runs the command in this process and catches what it prints. */
import { main } from '../../src/cli/main.ts';

export interface Printed {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

export async function winterkeep(...args: string[]): Promise<Printed> {
  let out = '';
  let error = '';
  const write = process.stderr.write;
  process.stderr.write = ((text: string) => {
    error += text;
    return true;
  }) as typeof write;
  try {
    const code = await main(args, (text) => {
      out += text;
    });
    return { code, out, error };
  } finally {
    process.stderr.write = write;
  }
}

export const NOTEBOOKS = [
  'hill-farm-choice',
  'hill-farm-own-chips',
  'coast-lender-case',
  'atlantic-rain-and-herd',
].map((name) => `notebooks/${name}.md`);

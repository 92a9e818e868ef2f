/** How the page starts: what it fetches before its first cards, and how long the command takes to its address. */
import { spawn } from 'node:child_process';
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from '../../src/cli/chromium.mjs';
import type { Built } from '../cli/built.ts';
import { filesAround, packedKb } from '../cli/firstPaint.ts';

/** A line for each way to come by a notebook. */
export async function firstPaintReport(built: Built): Promise<string> {
  const browser = await chromium.launch({
    executablePath: findChromium(),
    args: CHROMIUM_ARGS,
  });
  try {
    const lines: string[] = [];
    for (const way of ['example', 'kept', 'link'] as const) {
      const { before, after } = await filesAround(browser, built, way);
      const [first, later] = [before, after].map((all) => packedKb(built, all));
      const sum = (all: typeof first) => all.reduce((kB, one) => kB + one.kB, 0).toFixed(0);
      lines.push(
        `  fetched before the first cards, ${way}: ${sum(first)} kB packed in ${first.length} files, ${sum(later)} kB after them`,
      );
    }
    return lines.join('\n');
  } finally {
    await browser.close();
  }
}

/** Starts the page twice, so that the second finds the build of the first standing, and stops it at its address. */
export async function coldStartReport(): Promise<string> {
  await secondsToAddress();
  return `  start to the printed address, nothing changed: ${(await secondsToAddress()).toFixed(2)} s, without what npm takes; load ${loadavg()[0].toFixed(1)}`;
}

function secondsToAddress(): Promise<number> {
  const began = performance.now();
  const command = fileURLToPath(new URL('../../src/cli/start.mjs', import.meta.url));
  const child = spawn(process.execPath, [command, '--port', String(20_000 + (process.pid % 20_000))], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (text) => {
      said += text;
      if (!said.includes('http')) return;
      resolve((performance.now() - began) / 1000);
      child.kill();
    });
    child.on('error', reject);
    child.on('exit', (code) => reject(new Error(`the page did not start; found exit code ${code}: ${said}`)));
  });
}

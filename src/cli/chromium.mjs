import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** What a Chromium that only works for a command or a test is started with: no sandbox, no graphics card, no calls home. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * The same for the tests. Hundreds of pages live for seconds, so the machine's slowest translator of scripts, which pays
 * for itself in long runs only, would work for nothing: a fifth of all their processor time.
 */
export const TEST_CHROMIUM_ARGS = [
  ...CHROMIUM_ARGS,
  '--js-flags=--no-turbofan --max-semi-space-size=64 --min-semi-space-size=32',
];

/**
 * Path of a Chromium on this machine: CHROMIUM_PATH first, then the PATH, then the usual places.
 * @returns {string | undefined}
 */
export function findChromium() {
  const candidates = [
    process.env.CHROMIUM_PATH,
    ...(process.env.PATH ?? '').split(delimiter).flatMap((dir) => NAMES.map((name) => join(dir, name))),
    ...PLACES,
  ];
  return candidates.find((path) => path && runnable(path));
}

function runnable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

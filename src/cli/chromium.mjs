import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
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

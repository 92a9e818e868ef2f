// Makes a fresh clone ready with Node's built-ins only: packages when the lock file changed, and with
// `--browser` a Chromium when none is found. Quiet when there is nothing to do.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { findChromium } from './chromium.mjs';

const ROOT = new URL('../../', import.meta.url);
const BUSY = new URL('.winterkeep-setup/', ROOT);
const STAMP = new URL('node_modules/.winterkeep-lock', ROOT);

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19))
  fail(`Node ${process.versions.node} is too old: winterkeep needs Node 20.19 or newer.`);

const wanted = createHash('sha256')
  .update(readFileSync(new URL('package-lock.json', ROOT)))
  .digest('hex');
const ready = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted;
if (!ready()) await alone(installPackages);

function installPackages() {
  // Another command may have done it while this one waited.
  if (ready()) return;
  say('Installing packages …');
  run(
    'npm',
    ['ci', '--no-audit', '--no-fund'],
    'Packages could not be installed. Is there a network? The lines above say what failed.',
  );
  writeFileSync(STAMP, wanted);
}

/** Two commands started at once must not both empty node_modules: the second waits for the first. */
async function alone(work) {
  const started = Date.now();
  for (;;) {
    try {
      mkdirSync(BUSY);
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      // Left behind by a set-up that was stopped.
      const age = Date.now() - (statSync(BUSY, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
      if (age > 600_000 || Date.now() - started > 600_000) rmSync(BUSY, { recursive: true, force: true });
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
  }
  process.on('exit', () => rmSync(BUSY, { recursive: true, force: true }));
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(1));
  work();
  rmSync(BUSY, { recursive: true, force: true });
}

if (process.argv.includes('--browser') && !findChromium()) {
  say('No Chromium found; installing Debian’s …');
  const root = process.getuid?.() === 0 ? [] : ['sudo'];
  const apt = [...root, 'apt-get'];
  const help =
    'Chromium could not be installed. Install Chromium or Chrome by hand, or set CHROMIUM_PATH to one.';
  run(apt[0], [...apt.slice(1), 'update', '-qq'], help);
  run(
    apt[0],
    [
      ...apt.slice(1),
      'install',
      '-y',
      '-qq',
      '--no-install-recommends',
      'chromium',
      'poppler-utils',
      'fonts-dejavu-core',
    ],
    help,
  );
}

function run(command, args, help) {
  // Output goes to standard error, so that commands that print results stay clean.
  const { status, error } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  if (error || status !== 0) fail(help);
}

function say(words) {
  process.stderr.write(`${words}\n`);
}

function fail(words) {
  say(words);
  process.exit(1);
}

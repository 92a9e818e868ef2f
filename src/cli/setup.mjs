// Makes a fresh clone ready with Node's built-ins only: packages when the lock file changed, and with
// `--browser` a Chromium when none is found. Quiet when there is nothing to do.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, readFileSync, readlinkSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findChromium } from './chromium.mjs';

const ROOT = new URL('../../', import.meta.url);
const BUSY = new URL('.winterkeep-setup', ROOT);
const PACKAGES = new URL('node_modules', ROOT);
const STAMP = new URL('node_modules/.winterkeep-lock', ROOT);

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19))
  fail(`Node ${process.versions.node} is too old: winterkeep needs Node 20.19 or newer.`);

if (process.argv.includes('--browser') && ROOT.href.includes('%23'))
  fail(
    `The checks cannot run in a folder with # in its name (${fileURLToPath(ROOT)}). Rename it or move it.`,
  );

const wanted = createHash('sha256')
  .update(readFileSync(new URL('package-lock.json', ROOT)))
  .digest('hex');
const ready = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted;
if (!ready()) await alone(installPackages);

function installPackages() {
  // Another command may have done it while this one waited.
  if (ready()) return;
  // npm would empty the folder at the other end of a link, and whoever else uses it would stand without.
  if (lstatSync(PACKAGES, { throwIfNoEntry: false })?.isSymbolicLink())
    fail(
      `node_modules is a link to ${readlinkSync(PACKAGES)}, whose packages are not those of package-lock.json. Installing would empty that folder: take the link out, or install there.`,
    );
  say('Installing packages …');
  run(
    'npm',
    ['ci', '--ignore-scripts', '--no-audit', '--no-fund'],
    'Packages could not be installed. Is there a network? The lines above say what failed.',
  );
  writeFileSync(STAMP, wanted);
}

/**
 * Two commands started at once must not both empty node_modules: the second waits for the first. The lock is a file that
 * holds the process it belongs to, so that one left behind by a set-up that was killed is not waited for.
 */
async function alone(work) {
  let told = false;
  while (!taken()) {
    const holder = holderOf();
    if (holder !== undefined && !lives(holder)) rmSync(BUSY, { recursive: true, force: true });
    else {
      if (!told && holder !== undefined)
        say(
          `Another set-up is at work (process ${holder}); waiting for it. If there is none, delete ${fileURLToPath(BUSY)}.`,
        );
      told ||= holder !== undefined;
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
  }
  const leave = () => rmSync(BUSY, { force: true });
  process.on('exit', leave);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => process.exit(1));
  work();
  leave();
}

function taken() {
  try {
    writeFileSync(BUSY, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    return fail(
      `Packages cannot be installed: ${fileURLToPath(ROOT)} cannot be written to (${error.code}). Copy the folder to where you may write, or have it made ready by whoever may.`,
    );
  }
}

/** The process that holds the lock; 0 where the lock is old and says none, undefined where it has just gone or is just being written. */
function holderOf() {
  const found = statSync(BUSY, { throwIfNoEntry: false });
  if (!found) return undefined;
  const pid = found.isFile() ? Number(readFileSync(BUSY, 'utf8')) : 0;
  if (pid > 0) return pid;
  return Date.now() - found.mtimeMs > 5000 ? 0 : undefined;
}

function lives(pid) {
  if (pid === 0) return false;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return error.code !== 'ESRCH';
  }
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

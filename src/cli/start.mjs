// Builds the page, serves it and prints its address. `--port N` chooses the port, `--no-build` serves the last build.
import { accessSync, constants, existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const DIST = join(ROOT, 'dist');
const MOST_PORT = 65_535;
const WHY = {
  EROFS: 'the disk can only be read',
  EACCES: 'it may not be written to',
  EPERM: 'it may not be written to',
  ENOSPC: 'the disk is full',
};

const options = optionsOf(process.argv.slice(2));
const built = existsSync(join(DIST, 'index.html'));
if (ROOT.includes('#') && (!options.noBuild || !built))
  fail(
    `the page cannot be built in a folder with # in its name; found ${ROOT}; rename the folder or move it`,
  );

// The settings are read without writing a copy of them, which a folder that can only be read would refuse.
const { build, preview } = await import('vite');
const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));
if (!options.noBuild || !built) {
  try {
    accessSync(existsSync(DIST) ? DIST : ROOT, constants.W_OK);
    await build({ configFile, configLoader: 'runner', logLevel: 'warn' });
  } catch (error) {
    // What builds wraps what the system said.
    const why = WHY[/\bE[A-Z]{4,6}\b/.exec(`${error.code} ${error.message}`)?.[0] ?? ''];
    if (why === undefined) throw error;
    if (!built)
      fail(`the page cannot be built into ${DIST}: ${why}; copy this folder to where you may write`);
    console.error(`The page cannot be built anew (${why}); this is the last build.`);
  }
}
const server = await preview({ configFile, configLoader: 'runner', preview: { port: options.port } });
const at = server.httpServer.address();
if (typeof at === 'object' && at && at.port !== options.port)
  console.log(
    `Port ${options.port} is in use, so another was taken. What the browser keeps belongs to an address: notebooks kept at port ${options.port} are not in this list. Stop the other program, or save them there as a file.`,
  );
console.log('winterkeep is at');
for (const url of [...(server.resolvedUrls?.local ?? []), ...(server.resolvedUrls?.network ?? [])])
  console.log(`  ${url}`);
console.log('Press Ctrl+C to stop.');

function optionsOf(args) {
  try {
    const { values } = parseArgs({
      args,
      options: { port: { type: 'string', default: '4173' }, 'no-build': { type: 'boolean', default: false } },
    });
    const port = /^\d+$/.test(values.port) ? Number(values.port) : Number.NaN;
    if (!(port >= 1 && port <= MOST_PORT))
      throw new Error(`--port: not a port; found ${values.port || 'nothing'}; allowed 1 to ${MOST_PORT}`);
    return { port, noBuild: values['no-build'] };
  } catch (error) {
    return fail(`${error.message}\nUsage: npm start -- [--port N] [--no-build]`, 2);
  }
}

function fail(words, code = 1) {
  console.error(words);
  process.exit(code);
}

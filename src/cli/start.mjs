// Builds the page where something it is built from has changed, serves it and prints its address. `--port N` chooses
// the port, `--no-build` serves the last build whatever has changed.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { buildStamp } from './buildStamp.mjs';

const { values } = parseArgs({
  options: { port: { type: 'string', default: '4173' }, 'no-build': { type: 'boolean', default: false } },
});
const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = new URL('../../dist/', import.meta.url);
const stamp = new URL('.built-from', dist);
const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));

const built = existsSync(new URL('index.html', dist));
const now = buildStamp(root);
const fresh = built && existsSync(stamp) && readFileSync(stamp, 'utf8') === now;
if (!fresh && !(values['no-build'] && built)) {
  const { build } = await import('vite');
  await build({ configFile, logLevel: 'warn' });
  // Taken before the build, so that what is written meanwhile makes the next start build again.
  writeFileSync(stamp, now);
}
const { preview } = await import('vite');
const server = await preview({ configFile, preview: { port: Number(values.port) } });
console.log('winterkeep is at');
for (const url of [...(server.resolvedUrls?.local ?? []), ...(server.resolvedUrls?.network ?? [])])
  console.log(`  ${url}`);
console.log('Press Ctrl+C to stop.');

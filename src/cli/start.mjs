// Builds the page, serves it and prints its address. `--port N` chooses the port, `--no-build` serves the last build.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, preview } from 'vite';

const { values } = parseArgs({
  options: { port: { type: 'string', default: '4173' }, 'no-build': { type: 'boolean', default: false } },
});
const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));
const built = existsSync(new URL('../../dist/index.html', import.meta.url));

if (!values['no-build'] || !built) await build({ configFile, logLevel: 'warn' });
const server = await preview({ configFile, preview: { port: Number(values.port) } });
console.log('winterkeep is at');
for (const url of [...(server.resolvedUrls?.local ?? []), ...(server.resolvedUrls?.network ?? [])])
  console.log(`  ${url}`);
console.log('Press Ctrl+C to stop.');

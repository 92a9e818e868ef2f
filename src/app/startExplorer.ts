import { type Explorer, openExplorer } from '../worker/explorer.ts';

/** Starts the worker; its code is a file of the build, so the content security policy needs no exception. */
export function startExplorer(): Explorer {
  return openExplorer(
    new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'explorer' }),
  );
}

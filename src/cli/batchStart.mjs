// A worker thread does not inherit the loader that lets this program run from its sources, so it registers its own.
import { register } from 'tsx/esm/api';

register();
await import('./batchWorker.ts');

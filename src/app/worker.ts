/** The worker: the whole model away from the page's thread, so that turning an input never waits for draws. */
import type { Port } from '../worker/protocol.ts';
import { serve } from '../worker/serve.ts';

serve(self as unknown as Port);

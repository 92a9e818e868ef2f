/** What a Chromium that only works for a command or a test is started with. */
export const CHROMIUM_ARGS: string[];
/** Path of a Chromium on this machine, if there is one. */
export function findChromium(): string | undefined;
/** The same for the tests, where many pages live for seconds. */
export const TEST_CHROMIUM_ARGS: string[];

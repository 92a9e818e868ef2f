/** Path of a Chromium on this machine, if there is one. */
export function findChromium(): string | undefined;

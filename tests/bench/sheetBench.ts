export function compareWithSheet(_: unknown): void {}

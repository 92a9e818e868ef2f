export function buildStamp(root: string): string;
export function stampOf(root: string, folders: readonly string[], files?: readonly string[]): string;

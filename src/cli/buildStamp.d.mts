export function buildStamp(root: string): string;

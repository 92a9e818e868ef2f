/** Hands a file to the reader: to the folder their browser puts downloads in. */
export function offer(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // The browser may still be reading it.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Letters and digits alone, so that a title can neither climb out of a folder nor run as anything. */
export const inertName = (title: string, otherwise: string): string =>
  title
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '')
    .toLowerCase() || otherwise;

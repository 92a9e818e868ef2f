/** A name for a file: the title's letters and digits. */
export const fileNameOf = (title: string): string =>
  `${
    title
      .normalize('NFKD')
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60)
      .toLowerCase() || 'notebook'
  }.md`;

/** The data folder in a browser: path in the repository → text, for `loadTables`. */
const files = import.meta.glob<string>(
  ['../../data/*.csv', '!../../data/starts.csv', '../../data/coefficients/*.csv', '../../data/prices/*.csv'],
  { query: '?raw', import: 'default', eager: true },
);

export const dataFiles: ReadonlyMap<string, string> = new Map(
  Object.entries(files).map(([path, text]) => [path.replace(/^(\.\.\/)+/, ''), text]),
);

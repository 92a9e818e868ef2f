/** The data folder for the page: tables come with the build, weather files are fetched when one is named. */
const eager = import.meta.glob<string>(
  [
    '../../data/sources.csv',
    '../../data/movements.csv',
    '../../data/measuring.csv',
    '../../data/priceIndices.csv',
    '../../data/materials.csv',
    '../../data/coefficients/*.csv',
    '../../data/prices/*.csv',
  ],
  { query: '?raw', import: 'default', eager: true },
);
const lazy = import.meta.glob<string>('../../data/weather/*.csv', { query: '?raw', import: 'default' });

const repositoryPath = (path: string) => path.replace(/^(\.\.\/)+/, '');

/** Tables by path in the repository, for `loadTables`. */
export const dataFiles: ReadonlyMap<string, string> = new Map(
  Object.entries(eager).map(([path, text]) => [repositoryPath(path), text]),
);

/** Paths of the weather files that are shipped. */
export const weatherFiles: readonly string[] = Object.keys(lazy).map(repositoryPath);

/** Text of a shipped weather file (`data/weather/…`), or undefined when there is none at that path. */
export async function loadWeatherFile(path: string): Promise<string | undefined> {
  return lazy[`../../${path}`]?.();
}

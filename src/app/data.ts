/** The weather that is shipped: each file is fetched when it is named. */
const lazy = import.meta.glob<string>('../../data/weather/*.csv', { query: '?raw', import: 'default' });

const repositoryPath = (path: string) => path.replace(/^(\.\.\/)+/, '');

/** Paths of the weather files that are shipped. */
export const weatherFiles: readonly string[] = Object.keys(lazy).map(repositoryPath);

/** Text of a shipped weather file (`data/weather/…`), or undefined when there is none at that path. */
export async function loadWeatherFile(path: string): Promise<string | undefined> {
  return lazy[`../../${path}`]?.();
}

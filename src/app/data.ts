/** The weather that is shipped: each file is fetched when it is named. */
import shipped from 'virtual:ahead/weather';
import { weatherTextOf } from '../tables/weatherColumns.ts';

/** Names of the weather files that are shipped. */
export const weatherFiles: readonly string[] = shipped.map(({ file }) => file);

/** Text of a shipped weather file by its name, or undefined when there is none of that name. */
export async function loadWeatherFile(name: string): Promise<string | undefined> {
  const found = shipped.find(({ file }) => file === name);
  return found && weatherTextOf((await found.load()).default);
}

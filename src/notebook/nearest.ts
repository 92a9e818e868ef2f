/** The names most like a mistyped one, by edits, at most `count`; the nearest first. */
export function nearest(word: string, names: readonly string[], count = 3): string[] {
  // A name of absurd length would make the table of edits as absurd.
  const typed = word.slice(0, 80).toLowerCase();
  return [...names]
    .map((name) => ({ name, edits: distance(typed, name.toLowerCase()) }))
    .sort((a, b) => a.edits - b.edits)
    .slice(0, count)
    .map(({ name }) => name);
}

/** Scenarios to choose from, the nearest first, in quotes: a name may hold a comma. */
export const nearestScenarios = (word: string, names: readonly string[]): string =>
  quotedNames(nearest(word, names, 6));

export const quotedNames = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

/** The name that was most likely meant: at most one edit for every three letters; undefined where none is as near. */
export function meant(word: string, names: readonly string[]): string | undefined {
  const [name] = nearest(word, names, 1);
  if (name === undefined || word.length > 80) return undefined;
  return distance(word.toLowerCase(), name.toLowerCase()) <= Math.max(1, Math.floor(word.length / 3))
    ? name
    : undefined;
}

/** Letters put in, taken out, put in place of another, or two neighbours that changed places. */
function distance(a: string, b: string): number {
  let [before, above]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, k) => k)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      row[j] = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    [before, above] = [above, row];
  }
  return above[b.length];
}

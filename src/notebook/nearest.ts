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

function distance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, k) => k);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++)
      row[j] = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    above = row;
  }
  return above[b.length];
}

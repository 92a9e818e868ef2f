/** Few draws where nothing hangs on how many: thousands after each change keep the machine from the rest. */
export const FEW = 400;

/** A shipped notebook that asks for few draws; as it stands in a file, or inside a string of a script. */
export const fewDraws = (text: string): string =>
  text
    .replace(/(\n|\\n)draws: \{ count: \d+, seed: 1 \}/, '')
    .replace(/(\n|\\n)scenarios:/, `$1draws: { count: ${FEW}, seed: 1 }$1scenarios:`);

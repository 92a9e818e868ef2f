/** The title in a notebook's front matter, without reading the rest. */
export function titleOf(text: string): string | undefined {
  const line = /^title:[ \t]*(.+?)[ \t]*\r?$/m.exec(text)?.[1];
  return line?.replace(/^(['"])(.*)\1$/, '$2');
}

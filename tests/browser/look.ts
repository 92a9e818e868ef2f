/** How a page is looked at in these tests: in which colours, and by the rules of accessibility. */
import axe from 'axe-core';
import { cdp } from 'vitest/browser';

/** Light or dark, as the system would ask for it. */
export const colours = (scheme: 'light' | 'dark') =>
  (cdp() as unknown as { send(what: string, how: object): Promise<unknown> }).send(
    'Emulation.setEmulatedMedia',
    { features: [{ name: 'prefers-color-scheme', value: scheme }] },
  );

/** Each rule that axe finds broken in the document, with where. */
export async function faults(): Promise<string[]> {
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join('; ')}`,
  );
}

/** Each width and each colour once. */
export const LOOKS = [
  [1280, 'light'],
  [390, 'dark'],
] as const;

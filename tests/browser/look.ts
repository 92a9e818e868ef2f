/** How a page is looked at in these tests: in which colours, and by the rules of accessibility. */
import axe from 'axe-core';
import { cdp } from 'vitest/browser';

/** Light or dark, as the system would ask for it. */
export const colours = (scheme: 'light' | 'dark') =>
  (cdp() as unknown as { send(what: string, how: object): Promise<unknown> }).send(
    'Emulation.setEmulatedMedia',
    { features: [{ name: 'prefers-color-scheme', value: scheme }] },
  );

/** Of axe's rules those that colours decide: in other colours the rest finds what it found before. */
const OF_COLOURS = ['color-contrast', 'link-in-text-block'];

/** Each rule that axe finds broken in the document, with where; in the dark those of colours alone. */
export async function faults(scheme: 'light' | 'dark' = 'light'): Promise<string[]> {
  const { violations } = await axe.run(
    document.body,
    scheme === 'dark' ? { runOnly: OF_COLOURS } : { rules: { region: { enabled: false } } },
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join('; ')}`,
  );
}

/** Both widths in both colours. */
export const LOOKS = [
  [390, 'light'],
  [1280, 'light'],
  [390, 'dark'],
  [1280, 'dark'],
] as const;

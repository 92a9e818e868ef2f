/** How a page is looked at in these tests: in which colours, and by the rules of accessibility. */
import axe from 'axe-core';
import { cdp } from 'vitest/browser';

/** Light or dark, as the system would ask for it. */
export const colours = (scheme: 'light' | 'dark') =>
  (cdp() as unknown as { send(what: string, how: object): Promise<unknown> }).send(
    'Emulation.setEmulatedMedia',
    { features: [{ name: 'prefers-color-scheme', value: scheme }] },
  );

/**
 * Each rule that axe finds broken in an element, with where and what stands there; in the whole document without one.
 * `without` are rules that speak of a whole page, where only a part of one stands.
 */
export async function faults(
  element: Element = document.body,
  without: readonly string[] = [],
): Promise<string[]> {
  const { violations } = await axe.run(element, {
    rules: Object.fromEntries(['region', ...without].map((rule) => [rule, { enabled: false }])),
    // What passes is not gathered: that would take longer than to look.
    resultTypes: ['violations'],
  });
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .slice(0, 5)
        .map(({ target, html }) => `${target.join(' ')} ${html.slice(0, 120)}`)
        .join('; ')}`,
  );
}

/** What a part of a page need not have. */
export const PART = ['page-has-heading-one'] as const;

/** Each width and each colour once. */
export const LOOKS = [
  [1280, 'light'],
  [390, 'dark'],
] as const;

/** A drawing as text that a person can review in a diff: one element a line, numbers short, nothing of chance. */
import { parseHTML } from 'linkedom';
import { escaped } from '../../src/plots/svgText.ts';

/** Gives the figures a document to draw in; returns what takes it away again. */
export function openDocument(): () => void {
  const page = parseHTML('<!doctype html><html><body></body></html>');
  const lent = { document: page.document, window: page.window, DOMParser: page.DOMParser };
  Object.assign(globalThis, lent);
  return () => {
    for (const name of Object.keys(lent)) Reflect.deleteProperty(globalThis, name);
  };
}

/** Pixels to a tenth; a drawing in metres, a picture a few of them wide, to a centimetre. */
const digitsOf = (root: Element) => (root.innerHTML.includes('data-part') ? 2 : 1);

/** Stable text of a drawing. */
export function pictureText(root: Element): string {
  const digits = digitsOf(root);
  const short = (text: string) =>
    text
      .replace(/-?\d*\.\d+(?:e-?\d+)?/g, (number) => String(Number(Number(number).toFixed(digits)) + 0))
      // Plot counts its clips through all drawings made before.
      .replace(/plot-clip-\d+/g, 'plot-clip');
  const lines: string[] = [];
  const walk = (node: Element, depth: number) => {
    const indent = ' '.repeat(depth);
    const name = node.localName;
    // Plot's own style sheet is the library's, not ours.
    if (name === 'style') return;
    const given = [...node.attributes].filter((a) => !a.name.startsWith('xmlns'));
    const written = given.map(({ name: key, value }) => {
      const exact = /^(aria-label|class|fill|stroke|id)$/.test(key);
      return ` ${key}="${escaped(exact ? value : short(value))}"`;
    });
    // With its name space a picture opens in any viewer.
    if (name === 'svg') written.push(' xmlns="http://www.w3.org/2000/svg"');
    const attributes = written.sort().join('');
    const own = [...node.childNodes]
      .filter((child) => child.nodeType === 3)
      .map((child) => child.textContent);
    const said = escaped(own.join('').trim());
    const children = [...node.children].filter((child) => child.localName !== 'style');
    if (children.length === 0) {
      lines.push(`${indent}<${name}${attributes}${said === '' ? '/>' : `>${said}</${name}>`}`);
      return;
    }
    lines.push(`${indent}<${name}${attributes}>${said}`);
    for (const child of children) walk(child, depth + 1);
    lines.push(`${indent}</${name}>`);
  };
  walk(root, 0);
  return `${lines.join('\n')}\n`;
}

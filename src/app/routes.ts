/** What the address asks for. Everything stands after `#`, so that no server hears of it. */
import { isLink } from '../store/linkMarks.ts';

export type Route =
  | { readonly to: 'home' }
  | { readonly to: 'begin' }
  | { readonly to: 'example'; readonly name: string }
  | { readonly to: 'kept'; readonly id: string }
  /** A whole notebook: what unfolds it is fetched then. */
  | { readonly to: 'shared'; readonly link: string };

export function routeOf(fragment: string): Route {
  if (isLink(fragment)) return { to: 'shared', link: fragment };
  const [, kind, name] = /^#?(example|kept)=([^&]+)(?:&days)?$/.exec(fragment) ?? [];
  if (kind === 'example') return { to: 'example', name: decode(name) };
  if (kind === 'kept') return { to: 'kept', id: decode(name) };
  return { to: fragment === BEGIN ? 'begin' : 'home' };
}

/** Start with one's own farm. */
export const BEGIN = '#begin';
export const exampleHref = (name: string) => `#example=${encodeURIComponent(name)}`;
export const keptHref = (id: string) => `#kept=${encodeURIComponent(id)}`;
/** The same with its earlier days over it; they are asked for once, and then the address is that of the notebook. */
export const DAYS = /&days$/;
export const daysHref = (id: string) => `${keptHref(id)}&days`;

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

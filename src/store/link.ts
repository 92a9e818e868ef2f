/** A notebook in a link: deflated, in the part of the address that is never sent to a server. */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { checksumOf } from './checksum.ts';
import { isLink, MARK } from './linkMarks.ts';

const CHECK_BYTES = 4;
/** The longest text a link may unfold to: a stranger's link must not fill the memory. */
export const LINK_LIMIT = 2_000_000;

/** What stands after `#` in the address. */
export function toLink(text: string): string {
  let binary = '';
  const bytes = strToU8(text);
  const check = new Uint8Array(CHECK_BYTES);
  new DataView(check.buffer).setUint32(0, checksumOf(bytes));
  for (const part of [check, deflateSync(bytes, { level: 9 })])
    for (const byte of part) binary += String.fromCharCode(byte);
  return MARK + btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

export type FromLink = { readonly text: string } | { readonly problem: string };

/** The notebook in a fragment; undefined when the fragment is not such a link. */
export function fromLink(fragment: string): FromLink | undefined {
  const body = fragment.replace(/^#/, '');
  const checked = body.startsWith(MARK);
  if (!isLink(fragment)) return undefined;
  try {
    const all = Uint8Array.from(
      atob(body.slice(MARK.length).replaceAll('-', '+').replaceAll('_', '/')),
      (c) => c.charCodeAt(0),
    );
    const packed = checked ? all.subarray(CHECK_BYTES) : all;
    const parts: Uint8Array[] = [];
    let length = 0;
    let ended = false;
    const inflate = new Inflate((part, final) => {
      length += part.length;
      if (length <= LINK_LIMIT) parts.push(part);
      ended = final;
    });
    // In slices, so that a bomb is noticed before it has gone off.
    for (let at = 0; at < packed.length && length <= LINK_LIMIT; at += 4096)
      inflate.push(packed.subarray(at, at + 4096), at + 4096 >= packed.length);
    if (length > LINK_LIMIT)
      return { problem: `The link unfolds to more than ${LINK_LIMIT / 1e6} MB, which is no notebook.` };
    if (!ended) return { problem: CUT };
    const whole = new Uint8Array(length);
    parts.reduce((at, part) => {
      whole.set(part, at);
      return at + part.length;
    }, 0);
    if (checked && checksumOf(whole) !== new DataView(all.buffer).getUint32(0)) return { problem: CUT };
    return { text: strFromU8(whole) };
  } catch {
    return { problem: CUT };
  }
}

const CUT =
  'The link is damaged, perhaps cut off or changed by the program that carried it. Ask for the notebook as a file.';

/** How a notebook leaves the page, as a file or a link: fetched when it does. */
import { notebookIdOf } from '../notebook/noteEdits.ts';
import { setInput } from '../notebook/write.ts';
import { toLink } from '../store/link.ts';
import type { OpenNotebook } from '../store/opening.ts';
import { randomId } from '../store/shelf.ts';
import { formatWhole } from '../units/format.ts';
import type { Keeper } from './keeper.ts';
import { download } from './kept.ts';

/** The notebook's text with an id, by which notes find their way back; as it is where it cannot be read. */
function identified(open: OpenNotebook): string {
  const text = open.text.value;
  if (notebookIdOf(text) !== undefined) return text;
  try {
    const next = setInput(text, 'id', randomId());
    open.edit(next, 'an id, so that notes find their way back');
    return next;
  } catch {
    return text;
  }
}

/** Puts a link that holds the whole notebook on the clipboard; gives the words for what was done. */
async function copyLink(text: string): Promise<string> {
  const link = `${location.href.split('#')[0]}#${toLink(text)}`;
  try {
    await navigator.clipboard.writeText(link);
    return `A link of ${formatWhole(link.length)} letters is on the clipboard. It holds the whole notebook; nothing was sent anywhere.`;
  } catch {
    location.hash = link.split('#')[1];
    return 'The link is now in the address line: copy it from there.';
  }
}

/** Saves the notebook as a file, or copies a link that holds it; gives the words for what was done where there are any. */
export async function send(
  act: 'save' | 'link',
  open: OpenNotebook,
  keeper: Keeper,
): Promise<string | undefined> {
  if (act === 'link') return copyLink(identified(open));
  download(keeper.id === undefined ? open.text.value : identified(open), open.file);
  keeper.saved();
  return undefined;
}

import { toLink } from '../store/link.ts';

/** Puts a link that holds the whole notebook on the clipboard; gives the words for what was done. */
export async function copyLink(text: string): Promise<string> {
  const link = `${location.href.split('#')[0]}#${toLink(text)}`;
  try {
    await navigator.clipboard.writeText(link);
    return `A link of ${link.length.toLocaleString('en-GB')} letters is on the clipboard. It holds the whole notebook; nothing was sent anywhere.`;
  } catch {
    location.hash = link.split('#')[1];
    return 'The link is now in the address line: copy it from there.';
  }
}

/** By what a link that holds a notebook is known, without unfolding it. */

/** First letters of a link, so that a later format can be told apart: with a checksum before the text. */
export const MARK = 'n2.';
/** Links made before there was a checksum: they still open. */
const WITHOUT_CHECK = 'n1.';

export const isLink = (fragment: string): boolean =>
  [MARK, WITHOUT_CHECK].some((mark) => fragment.replace(/^#/, '').startsWith(mark));

/** Stands in the page for what finds bare addresses in prose: the Markdown parser makes one, and never asks it. */
export class LinkifyIt {}

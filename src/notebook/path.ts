/** Keys and places in lists, from the top of the front matter down. */
export type Path = readonly (string | number)[];

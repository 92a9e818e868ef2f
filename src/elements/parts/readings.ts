/**
 * What the marks of a drawing say: under the pointer, under a finger, and by the arrow keys when the drawing has the
 * keyboard. Marks carry their words as an SVG title; which way a drawing was made does not matter here.
 */

/** A pointer this near to the middle of a mark, CSS pixels, reads it though it does not touch it. */
const NEAR_PX = 24;

interface Mark {
  readonly element: Element;
  readonly text: string;
}

/** Where a mark's words stand once it is on the page. */
const SAID = 'data-said';

/** Puts the words of each mark by it: the browser's own tip would say the same a second later. */
export function sayReadings(made: Element): void {
  for (const title of made.querySelectorAll('title')) {
    if (title.textContent) title.parentElement?.setAttribute(SAID, title.textContent);
    title.remove();
  }
}

export class Readings {
  #marks: readonly Mark[] = [];
  #at = -1;
  readonly #show: (text: string) => void;

  /** `show` is handed the words of the mark that is read; empty when none is. */
  constructor(show: (text: string) => void) {
    this.#show = show;
  }

  /** Takes the marks of what was just drawn, and goes on reading the one in the same place among them. */
  take(drawing: Element): void {
    this.#marks = [...drawing.querySelectorAll(`[${SAID}]`)].map((element) => ({
      element,
      text: element.getAttribute(SAID) ?? '',
    }));
    if (this.#at >= 0) this.#read(Math.min(this.#at, this.#marks.length - 1));
  }

  get count(): number {
    return this.#marks.length;
  }

  pointed = (event: PointerEvent): void => {
    const over = event.composedPath()[0];
    const touched = this.#marks.findIndex(({ element }) => element === over);
    this.#read(touched >= 0 ? touched : this.#nearest(event.clientX, event.clientY));
  };

  left = (): void => this.#read(-1);

  /** Says how to go on, when the keyboard comes in. */
  focused = (): void => {
    if (this.#at < 0 && this.#marks.length > 0) this.#show('The arrow keys read each mark.');
  };

  keyed = (event: KeyboardEvent): void => {
    const last = this.#marks.length - 1;
    const to: Readonly<Record<string, number>> = {
      ArrowRight: Math.min(this.#at + 1, last),
      ArrowDown: Math.min(this.#at + 1, last),
      ArrowLeft: Math.max(this.#at - 1, 0),
      ArrowUp: Math.max(this.#at - 1, 0),
      Home: 0,
      End: last,
      Escape: -1,
    };
    const at = to[event.key];
    if (at === undefined || last < 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    this.#read(at);
  };

  #nearest(x: number, y: number): number {
    let best = -1;
    let least = NEAR_PX;
    this.#marks.forEach(({ element }, k) => {
      const box = element.getBoundingClientRect();
      const away = Math.hypot(x - (box.left + box.right) / 2, y - (box.top + box.bottom) / 2);
      if (away < least) [best, least] = [k, away];
    });
    return best;
  }

  #read(at: number): void {
    const now = this.#marks[at];
    for (const { element } of this.#marks) if (element !== now?.element) element.classList.remove('read');
    now?.element.classList.add('read');
    this.#at = at;
    this.#show(now?.text ?? '');
  }
}

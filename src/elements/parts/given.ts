/** An element made by its tag and given its properties, for what is listed in a table and not written in a template. */
import { noChange } from 'lit';
import { Directive, type DirectiveResult, directive, type PartInfo, PartType } from 'lit/directive.js';

type Properties = Readonly<Record<string, unknown>>;

class Given extends Directive {
  #element: HTMLElement | undefined;
  #given: Properties = {};

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.CHILD) throw new Error('an element can only stand between tags');
  }

  override render(tag: string, properties: Properties): unknown {
    const before = this.#given;
    // What is no longer given has its default again: another element.
    const kept = this.#element?.localName === tag && Object.keys(before).every((name) => name in properties);
    const same = kept ? this.#element : undefined;
    const element = same ?? document.createElement(tag);
    // What has not changed is not set again: the reader may have chosen otherwise in the element itself.
    for (const [name, value] of Object.entries(properties))
      if (same ? !Object.is(value, before[name]) : value !== undefined) Reflect.set(element, name, value);
    this.#element = element;
    this.#given = properties;
    return same ? noChange : element;
  }
}

const make = directive(Given);

/** Own names of the properties of an element that may be given; any other does not compile. */
type Only<T, P> = P & { readonly [N in Exclude<keyof P, keyof T>]: never };

/**
 * How an element is given its properties by `O` and `C`: as a function of both, whose answer stands between tags
 * like a template.
 */
export const gives =
  <O, C, T extends keyof HTMLElementTagNameMap, P extends Partial<HTMLElementTagNameMap[T]>>(
    tag: T,
    properties: (options: O, context: C) => Only<HTMLElementTagNameMap[T], P>,
  ) =>
  (options: O, context: C): DirectiveResult =>
    make(tag, properties(options, context) as Properties);

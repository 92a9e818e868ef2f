/**
 * A drawing in place of the one before: marks that stand where they stood are moved, not made anew, so that a browser lays
 * out and paints only what differs. Drawings hold no listeners of their own, so nothing is lost by it.
 */
export function redraw(place: Element, made: Element | undefined): void {
  const before = place.firstElementChild;
  if (!made) place.replaceChildren();
  else if (before && place.childNodes.length === 1 && before.nodeName === made.nodeName) become(before, made);
  else place.replaceChildren(made);
}

/** Gives an element the attributes and the content of another of its kind. */
function become(element: Element, made: Element): void {
  for (const { name, value } of made.attributes)
    if (element.getAttribute(name) !== value) element.setAttribute(name, value);
  for (const name of element.getAttributeNames()) if (!made.hasAttribute(name)) element.removeAttribute(name);
  const [were, are] = [[...element.childNodes], [...made.childNodes]];
  const alike = were.length === are.length && were.every((node, k) => node.nodeName === are[k].nodeName);
  if (!alike) {
    element.replaceChildren(...are);
    return;
  }
  were.forEach((node, k) => {
    const next = are[k];
    if (node instanceof Element && next instanceof Element) become(node, next);
    else if (node.nodeValue !== next.nodeValue) node.nodeValue = next.nodeValue;
  });
}

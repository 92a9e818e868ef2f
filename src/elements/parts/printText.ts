let last: HTMLIFrameElement | undefined;

/**
 * Prints an HTML text without leaving the page: in a frame of its own, which goes once it is printed. A text with
 * scripts would not run them under the page's content security policy, which the frame inherits.
 */
export function printText(text: string): HTMLIFrameElement {
  // Not every browser says when it is done.
  last?.remove();
  const frame = document.createElement('iframe');
  last = frame;
  frame.setAttribute('aria-hidden', 'true');
  frame.tabIndex = -1;
  frame.style.cssText = 'position:fixed;width:0;height:0;border:0;visibility:hidden';
  frame.addEventListener('load', () => {
    const inside = frame.contentWindow;
    if (!inside) return;
    inside.addEventListener('afterprint', () => frame.remove());
    inside.print();
  });
  frame.srcdoc = text;
  document.body.append(frame);
  return frame;
}

/** Whether a key asks to undo or redo; in a text being typed those keys are the text's own. */
export function undoKey(event: KeyboardEvent): boolean {
  const inText = event.composedPath()[0] instanceof HTMLTextAreaElement;
  if (inText || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return false;
  event.preventDefault();
  return true;
}

/** Whether a key asks to undo or redo; in a text being typed those keys are the text's own. */
export function undoKey(event: KeyboardEvent): boolean {
  const at = event.composedPath()[0];
  const inText = at instanceof HTMLTextAreaElement || (at instanceof HTMLElement && at.isContentEditable);
  if (inText || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return false;
  event.preventDefault();
  return true;
}

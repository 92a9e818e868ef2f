/** Once what is on its way to the page has been painted; a page out of sight has no frames, and waits for none. */
export const painted = (): Promise<void> =>
  new Promise((resolve) => {
    if (document.visibilityState === 'hidden') setTimeout(resolve);
    else requestAnimationFrame(() => setTimeout(resolve));
  });

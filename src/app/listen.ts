type Listener = readonly [target: EventTarget, type: string, hear: (event: never) => unknown];

/** Listens to all of these until the function it gives back is called. */
export function listen(all: readonly Listener[]): () => void {
  for (const [target, type, hear] of all) target.addEventListener(type, hear as EventListener);
  return () => {
    for (const [target, type, hear] of all) target.removeEventListener(type, hear as EventListener);
  };
}

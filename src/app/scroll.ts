/**
 * Keeps the place on the page over a reload and over going back. The browser's own way comes too early: the figures
 * that make the page long are not there yet.
 */

/** The figures may take this long to come on a slow phone. */
const PATIENCE_MS = 15_000;
/** Once there, it is held this long, while figures above are still drawn. */
const HOLD_MS = 1500;
const STOPS = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;

export interface ScrollKeeper {
  /** Call when the address has changed, or the page has been opened. */
  arrive(): void;
  stop(): void;
}

export function keepScroll(): ScrollKeeper {
  let restoring = false;
  let frame = 0;
  history.scrollRestoration = 'manual';
  const key = () => (history.state as { scroll?: string } | null)?.scroll;
  const note = () => {
    const at = key();
    if (restoring || at === undefined) return;
    try {
      sessionStorage.setItem(`scroll ${at}`, String(Math.round(scrollY)));
    } catch {
      // Without storage the place is not kept; nothing else hangs on it.
    }
  };
  const letGo = () => {
    restoring = false;
    cancelAnimationFrame(frame);
  };
  addEventListener('scroll', note, { passive: true });
  for (const stop of STOPS) addEventListener(stop, letGo, { passive: true });
  return {
    arrive() {
      letGo();
      const known = key();
      const target = known === undefined ? 0 : stored(known);
      if (known === undefined)
        history.replaceState({ ...history.state, scroll: Math.random().toString(36).slice(2) }, '');
      restoring = true;
      const began = performance.now();
      let there: number | undefined;
      const step = () => {
        const most = document.documentElement.scrollHeight - innerHeight;
        if (most >= target - 1) {
          there ??= performance.now();
          if (Math.abs(scrollY - target) > 1) scrollTo({ top: target, behavior: 'instant' });
        }
        const now = performance.now();
        if (now - began > PATIENCE_MS || (there !== undefined && now - there > (target === 0 ? 0 : HOLD_MS)))
          letGo();
        else frame = requestAnimationFrame(step);
      };
      step();
    },
    stop() {
      letGo();
      removeEventListener('scroll', note);
      for (const stop of STOPS) removeEventListener(stop, letGo);
    },
  };
}

function stored(key: string): number {
  try {
    return Number(sessionStorage.getItem(`scroll ${key}`) ?? 0) || 0;
  } catch {
    return 0;
  }
}

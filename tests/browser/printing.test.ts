import { afterEach, expect, it } from 'vitest';
import { cdp } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/elements/cells/wk-draws.ts';
import '../../src/elements/cells/wk-flip.ts';
import '../../src/elements/cells/wk-rain.ts';
import '../../src/elements/cells/wk-rank.ts';
import '../../src/elements/cells/wk-sweep.ts';

const media = (name: string) =>
  (cdp() as unknown as { send(what: string, how: object): Promise<unknown> }).send(
    'Emulation.setEmulatedMedia',
    { media: name },
  );

afterEach(async () => {
  await media('');
  document.body.replaceChildren();
});

it.each(['wk-draws', 'wk-flip', 'wk-rain', 'wk-rank', 'wk-sweep'])(
  '%s without its answer says on paper, and only there, that the figure is missing',
  async (tag) => {
    const element = document.createElement(tag) as HTMLElement & { updateComplete: Promise<unknown> };
    document.body.append(element);
    await element.updateComplete;
    expect(element.innerText.trim()).toBe('');
    const said = element.shadowRoot?.querySelector<HTMLElement>('.paper');
    expect(said?.getBoundingClientRect().height).toBe(0);
    await media('print');
    expect(said?.getBoundingClientRect().height).toBeGreaterThan(10);
    expect(said?.textContent).toContain('not ready when this was printed');
  },
);

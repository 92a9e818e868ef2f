/** The open notebook's earlier days: fetched, shown, and one of them brought back. */
import { dayWords, type WkDays } from '../elements/page/wk-days.ts';
import '../elements/page/wk-days.ts';
import type { Engine } from '../store/engine.ts';
import { figuresOf } from '../store/figuresOf.ts';
import type { OpenNotebook } from '../store/opening.ts';
import type { Keeper } from './keeper.ts';
import { DAYS } from './routes.ts';

interface Host {
  notice: string;
  readonly renderRoot: ParentNode;
  readonly keeper: Keeper;
}

/** Shows the list over the page until it is closed, or another page is asked for. */
export async function showEarlierDays(
  host: Host,
  open: OpenNotebook,
  engine: Engine,
  system: 'metric' | 'us',
): Promise<void> {
  const { keeper, renderRoot: root } = host;
  const { id, shelf } = keeper;
  // Asked for from the list: what is shown over the page is no place of its own to come back to.
  history.replaceState(history.state, '', location.hash.replace(DAYS, ''));
  const list = await keeper.versions();
  root.querySelector('wk-days')?.remove();
  const days: WkDays = document.createElement('wk-days');
  days.setting = {
    list,
    textOf: (day) => (id === undefined ? Promise.resolve(undefined) : shelf.versionText(id, day)),
    now: open.text.value,
    run: open.run.value,
    results: open.results.value,
    system,
    figuresOf: (text, keep, ranged) => figuresOf(text, open.file, engine, keep, ranged),
  };
  const close = () => days.close();
  days.addEventListener('wk-brought-back', (event) => {
    const { day, text } = (event as CustomEvent<{ day: string; text: string }>).detail;
    const what = `the notebook of ${dayWords(day)} brought back`;
    open.edit(text, what);
    host.notice = `The notebook stands as on ${dayWords(day)}. Undo takes that back.`;
  });
  days.addEventListener('wk-closed', () => {
    removeEventListener('hashchange', close);
    days.remove();
  });
  addEventListener('hashchange', close);
  root.append(days);
  await days.open();
}

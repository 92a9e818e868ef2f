import { html, LitElement, nothing } from 'lit';
import type { BarAct, BarState } from '../elements/parts/wk-bar.ts';
import '../elements/parts/wk-bar.ts';
import '../elements/page/wk-home.ts';
import type { KeptAct, KeptEntry } from '../elements/page/wk-kept.ts';
import { watch } from '../elements/parts/watch.ts';
import type { Saved } from '../store/autosave.ts';
import { type Base, browserBase } from '../store/base.ts';
import { push } from '../store/history.ts';
import type { State } from '../store/journal.ts';
import type { OpenNotebook } from '../store/opening.ts';
import type { Shelf } from '../store/shelf.ts';
import type { Problem } from '../units/problem.ts';
import { barState } from './barState.ts';
import type { Beginning } from './begin.ts';
import { EXAMPLES } from './examples.ts';
import { Keeper } from './keeper.ts';
import { type Done, fileFor, gone, keepsNothing, keptEntries } from './kept.ts';
import { listen } from './listen.ts';
import { firstNotice, rescue, standIn } from './notices.ts';
import { type Page, partsOnce } from './parts.ts';
import { type Ready, readyExample, readyKept, readyText } from './ready.ts';
import { BEGIN, DAYS, exampleHref, keptHref, routeOf } from './routes.ts';
import { keepScroll, type ScrollKeeper } from './scroll.ts';
import { SentBeside } from './sentBeside.ts';
import { shellStyle } from './shellStyle.ts';
import { TextBeside } from './textBeside.ts';
import { titleOf } from './titles.ts';
import { followTyping } from './typing.ts';
import { undoKey } from './undoKey.ts';

/** What is done with kept notebooks: fetched when it is done. */
const library = () => import('./library.ts');
/** Leaving waits this long for the shelf, so that a list shows what was just changed. */
const LEAVE_MS = 1500;

/** The whole app: the list of notebooks, or an open one with its text beside it. */
export class WkShell extends LitElement {
  static override properties = {
    open: { state: true },
    editing: { state: true },
    system: { state: true },
    saved: { state: true },
    notice: { state: true },
    problems: { state: true },
    kept: { state: true },
    loading: { state: true },
    beginning: { state: true },
    unfetched: { state: true },
    lost: { state: true },
    done: { state: true },
  };

  static override styles = shellStyle;

  declare open: OpenNotebook | undefined;
  declare editing: boolean;
  declare system: 'metric' | 'us' | '';
  declare saved: Saved | undefined;
  declare notice: string;
  declare problems: readonly Problem[];
  declare kept: readonly KeptEntry[];
  /** A notebook is on its way. */
  declare loading: boolean;
  /** Starting with one's own farm. */
  declare beginning: Beginning | undefined;
  /** A part of the page could not be fetched, and why. */
  declare unfetched: string;
  /** Left with changes that could not be kept. */
  declare lost: State | undefined;
  /** What was done last with a kept notebook. */
  declare done: Done;

  /** Fetches all that an open notebook needs. */
  fetchPage = (): Promise<Page> => import('./notebookPage.ts');
  readonly #parts = partsOnce(() => this.fetchPage());
  /** Where notebooks are kept. */
  base: () => Base = browserBase;
  readonly keeper = new Keeper({
    saved: (saved) => {
      this.saved = saved;
      if (saved.words) this.notice = saved.words;
    },
    other: () => {
      this.notice =
        'This notebook was changed in another tab. Reload to take that in; if you go on here, the other text is kept beside yours.';
    },
    address: (id) => {
      history.replaceState(history.state, '', keptHref(id));
      this.#sent.mine();
    },
    lost: (state) => {
      this.lost = state;
    },
  });
  #ready: Promise<void> | undefined;
  #scroll: ScrollKeeper | undefined;
  #deafen: (() => void) | undefined;
  #title = '';
  readonly #typing = followTyping(
    // Kept before the page has followed: reading and computing may take a while.
    (step) => this.open && this.keeper.note(push(this.open.history.value, step)),
    ({ text, what, mark }) => this.open?.edit(text, what, mark),
  );
  readonly #beside = new TextBeside(this, this.#typing);
  readonly #sent = new SentBeside(this);
  /** The file that was just opened, by its id. */
  #opened = '';
  /** Routes are followed one at a time; a later one wins. */
  #version = 0;

  constructor() {
    super();
    this.editing = false;
    this.system = '';
    this.notice = '';
    this.problems = [];
    this.kept = [];
    this.loading = false;
    this.unfetched = '';
    this.done = {};
    watch(this, () => {
      const open = this.open;
      if (!open) return;
      this.#title = open.notebook.value?.title ?? this.#title;
      document.title = this.#title === '' ? 'winterkeep' : `${this.#title} · winterkeep`;
      return [open.history.value, open.notebook.value, this.editing && [open.problems.value, open.run.value]];
    });
    this.addEventListener('wk-act', (event) => this.#act((event as CustomEvent<BarAct>).detail));
    this.addEventListener('wk-file', (event) => void this.#file((event as CustomEvent<File>).detail));
    this.addEventListener('wk-kept', (event) =>
      this.#withList(async (shelf) =>
        (await library()).actOnKept(shelf, (event as CustomEvent<KeptAct>).detail),
      ),
    );
    this.addEventListener('wk-line', ({ detail }) => void this.#beside.goTo(detail.line));
    this.addEventListener('wk-kept-undo', () => {
      const { removed } = this.done;
      if (removed) void this.#withList((shelf) => shelf.restore(removed).then(() => ({})));
    });
    this.addEventListener(
      'wk-export',
      () => void this.#withList(async (shelf) => (await library()).exportAll(shelf)),
    );
    this.addEventListener('wk-import', (event) =>
      this.#withList(async (shelf) =>
        (await library()).importFiles(shelf, (event as CustomEvent<File[]>).detail),
      ),
    );
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#scroll = keepScroll();
    this.#ready ??= this.keeper.start(this.base);
    this.#deafen = listen([
      [window, 'hashchange', this.#follow],
      [window, 'pagehide', this.#hurry],
      [window, 'beforeunload', this.#askToStay],
      [document, 'visibilitychange', this.#hidden],
      [document, 'dragover', (event: Event) => event.preventDefault()],
      [document, 'drop', this.#dropped],
      [document, 'keydown', this.#key],
    ]);
    void this.#follow();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#deafen?.();
    this.#scroll?.stop();
    void this.#leave();
  }

  #hurry = () => this.keeper.hurry();
  #hidden = () => {
    if (document.visibilityState !== 'hidden') return;
    this.#hurry();
    this.keeper.flush();
  };
  #askToStay = (event: Event) => {
    if (this.keeper.atRisk || this.lost) event.preventDefault();
  };
  #dropped = (event: DragEvent) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void this.#file(file);
  };

  #key = (event: KeyboardEvent) => {
    const { open } = this;
    if (open && undoKey(event)) open[event.shiftKey ? 'redo' : 'undo']();
  };

  #follow = async (): Promise<void> => {
    const mine = ++this.#version;
    const route = routeOf(location.hash);
    if (route.to === 'kept' && this.open && this.keeper.id === route.id) return;
    this.#scroll?.arrive();
    this.done = {};
    this.problems = [];
    const left = this.#leave();
    await this.#ready;
    await Promise.race([left, new Promise((resolve) => setTimeout(resolve, LEAVE_MS))]);
    if (mine !== this.#version) return;
    if (route.to === 'example') {
      const example = EXAMPLES.find(({ name }) => name === route.name);
      if (example) return this.#start(readyExample(example, this.#parts));
      this.problems = [
        { what: 'there is no such worked example', file: route.name, todo: 'choose one from the list' },
      ];
    } else if (route.to === 'shared') {
      const { fromLink } = await import('../store/link.ts');
      const link = fromLink(route.link);
      if (mine !== this.#version) return;
      if (link && 'text' in link)
        return this.#start(readyText(link.text, 'shared.md', { ...this.#with, sent: true }));
      this.problems = [{ what: link?.problem ?? 'The link holds no notebook.', file: 'link' }];
    } else if (route.to === 'begin') {
      this.loading = true;
      const page = await this.#fetched(Promise.all([import('./begin.ts'), this.#parts.started()]));
      if (!page || mine !== this.#version) return;
      this.loading = false;
      this.beginning = page[0].beginning(page[1]);
      return;
    } else if (route.to === 'kept') {
      const found = await this.keeper.shelf.get(route.id).catch(() => undefined);
      if (mine !== this.#version) return;
      const sent = route.id === this.#opened;
      this.#opened = '';
      if (found) return this.#start(readyKept(found, { file: fileFor(found), sent, ...this.#with }));
      this.problems = [gone(route.id)];
    }
    if (this.keeper.blocked !== '') this.problems = [...this.problems, keepsNothing(this.keeper.blocked)];
    await this.#withList();
  };

  /** Does something with the list of kept notebooks, and shows it anew. */
  async #withList(act?: (shelf: Shelf) => Promise<Done>): Promise<void> {
    const mine = this.#version;
    await this.#ready;
    const done = await act?.(this.keeper.shelf).catch((error) => ({
      problems: [{ what: String(error), file: 'storage' }],
    }));
    const list = await keptEntries(this.keeper.shelf).catch(() => []);
    if (mine !== this.#version) return;
    this.kept = list;
    if (!done) return;
    this.done = done;
    if (done.problems && done.problems.length > 0) this.problems = done.problems;
  }

  /** What is said and nothing where a part cannot be fetched. */
  async #fetched<Part>(parts: Promise<Part>): Promise<Part | undefined> {
    const mine = this.#version;
    return parts.catch((error) => {
      if (mine === this.#version) this.unfetched = error instanceof Error ? error.message : String(error);
      return undefined;
    });
  }

  get #with() {
    return { parts: this.#parts, keeper: this.keeper };
  }

  async #start(getReady: Promise<Ready>, notice = ''): Promise<void> {
    const mine = ++this.#version;
    this.loading = true;
    this.unfetched = '';
    const ready = await this.#fetched(getReady);
    if (!ready || mine !== this.#version) return;
    const { text, file, page, engine, kept, found } = ready;
    const { keeper } = this;
    this.loading = false;
    this.problems = [];
    this.saved = undefined;
    this.#title = titleOf(text) ?? file;
    const open = page.openWith(text, file, engine, {
      before: keeper.begin(text, file, kept, found?.setting.link),
      changed: (now) => keeper.note(now, this.#sent.writes),
    });
    this.notice = firstNotice(keeper.blocked, notice);
    this.#sent.sent = found;
    this.open = open;
    keeper.follow(open, this.#parts.reader);
    if (DAYS.test(location.hash)) this.#act('days');
  }

  #leave(): Promise<void> {
    this.loading = false;
    this.beginning = undefined;
    this.unfetched = '';
    const left = this.keeper.leave(() => this.#typing.commit());
    this.open?.close();
    this.open = undefined;
    this.#sent.sent = undefined;
    document.title = 'winterkeep';
    return left;
  }

  /** A file is kept at once, so that it is still open after a reload. */
  async #file(file: File): Promise<void> {
    await this.#ready;
    const keeping = library().then(({ keepFile }) => keepFile(this.keeper.shelf, file));
    const kept = await keeping.catch((error) => ({
      problem: { what: 'the file could not be kept in this browser', file: file.name, found: String(error) },
    }));
    if ('id' in kept) {
      this.#opened = kept.id;
      location.hash = keptHref(kept.id);
      return;
    }
    await this.#leave();
    if (location.hash !== '') history.pushState(null, '', '#');
    await this.#withList(async () => ({ problems: [kept.problem] }));
  }

  /** A notebook made from answers: kept at once, since it is nobody's example. */
  async #begun(text: string): Promise<void> {
    const { beginning } = this;
    const id = await beginning?.keep(this.keeper.shelf, text).catch(() => undefined);
    if (id !== undefined) location.hash = keptHref(id);
    else
      await this.#start(
        readyText(beginning?.whole(text) ?? text, 'my-farm.md', this.#with),
        'Not kept in this browser: save it as a file.',
      );
  }

  #act(act: BarAct): void {
    const { open } = this;
    if (!open) return;
    this.#typing.commit();
    if (act === 'undo') open.undo();
    else if (act === 'redo') open.redo();
    else if (act === 'edit') void this.#beside.turn();
    else if (act === 'days') void this.#days(open);
    else if (act === 'print') this.renderRoot.querySelector('wk-page')?.printWhole();
    else if (act === 'units') this.system = this.#system === 'us' ? 'metric' : 'us';
    else
      void this.#fetched(import('./copyLink.ts')).then(async (sending) => {
        this.notice = (await sending?.send(act, open, this.keeper)) ?? this.notice;
      });
  }

  async #days(open: OpenNotebook): Promise<void> {
    const both = await this.#fetched(Promise.all([import('./earlierDays.ts'), this.#parts.started()]));
    if (!both || this.open !== open) return;
    await both[0].showEarlierDays(this, open, both[1], this.#system);
  }

  get #system(): 'metric' | 'us' {
    return this.system === '' ? (this.open?.notebook.value?.units ?? 'metric') : this.system;
  }

  #bar(): BarState | undefined {
    const { open } = this;
    if (!open) return undefined;
    return barState(open, {
      system: this.#system,
      editing: this.editing,
      saved: this.saved,
      reading: this.keeper.reading,
      notice: this.notice,
      offer: this.keeper.atRisk || this.saved?.state === 'failed' || this.keeper.blocked !== '',
    });
  }

  protected override render() {
    const { open } = this;
    return html`<wk-bar .state=${this.#bar()}></wk-bar>
      ${this.lost ? rescue(this.lost, () => (this.lost = undefined)) : nothing}
      ${
        open
          ? html`${this.#sent.render(open, this.#system)}<div class="beside ${this.editing ? 'editing' : ''}">
              ${this.#beside.render(open)}
              <wk-page .open=${open} .system=${this.system} .asked=${this.keeper.reading}></wk-page>
            </div>`
          : (standIn(this.unfetched, this.loading) ??
            (this.beginning
              ? html`<wk-begin .setting=${this.beginning.setting} @wk-begun=${(e: CustomEvent<{ text: string }>) => void this.#begun(e.detail.text)}></wk-begin>`
              : html`<wk-home
              .begin=${BEGIN}
              .examples=${EXAMPLES.map(({ name, title, note }) => ({ href: exampleHref(name), title, note }))}
              .kept=${this.kept}
              .said=${this.done.words ?? ''}
              .undoable=${this.done.removed !== undefined}
              .problems=${this.problems}
            ></wk-home>`))
      }`;
  }
}

customElements.define('wk-shell', WkShell);

declare global {
  interface HTMLElementTagNameMap {
    'wk-shell': WkShell;
  }
}

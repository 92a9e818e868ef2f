import { html, LitElement, nothing } from 'lit';
import type { BarAct, BarState } from '../elements/parts/wk-bar.ts';
import '../elements/parts/wk-bar.ts';
import type { BeginSetting } from '../elements/page/wk-begin.ts';
import '../elements/page/wk-home.ts';
import type { HomeEntry } from '../elements/page/wk-home.ts';
import '../elements/parts/wk-text.ts';
import { watch } from '../elements/parts/watch.ts';
import { decodeNotebook, MAX_BYTES } from '../notebook/decode.ts';
import { type Autosave, autosave, type Saved } from '../store/autosave.ts';
import { toLink } from '../store/link.ts';
import type { OpenNotebook } from '../store/open.ts';
import { memoryShelf, openShelf, type Shelf } from '../store/shelf.ts';
import { formatProblem, type Problem } from '../units/problem.ts';
import { engineOnce } from './engineOnce.ts';
import { EXAMPLES, titleOf } from './examples.ts';
import { BEGIN, exampleHref, keptHref, routeOf } from './routes.ts';
import { shellStyle } from './shellStyle.ts';

const SAVED: Readonly<Record<Saved['state'], string>> = {
  saved: 'kept in this browser',
  waiting: 'keeping …',
  failed: 'not kept',
};
/** Typing pauses this long before the page follows. */
const TYPING_MS = 250;

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
  };

  static override styles = shellStyle;

  declare open: OpenNotebook | undefined;
  declare editing: boolean;
  declare system: 'metric' | 'us' | '';
  declare saved: Saved | undefined;
  declare notice: string;
  declare problems: readonly Problem[];
  declare kept: readonly HomeEntry[];
  /** A notebook is on its way. */
  declare loading: boolean;
  /** Starting with one's own farm. */
  declare beginning: BeginSetting | undefined;

  #shelf: Shelf = memoryShelf();
  #save: Autosave | undefined;
  #title = '';
  #typing: ReturnType<typeof setTimeout> | undefined;
  #typed: string | undefined;
  /** Counts up with each run of typing, so that one run is one step to undo. */
  #run = 0;
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
    watch(this, () => {
      const open = this.open;
      if (!open) return;
      this.#title = open.notebook.value?.title ?? this.#title;
      document.title = this.#title === '' ? 'winterkeep' : `${this.#title} · winterkeep`;
      return [open.history.value, open.notebook.value];
    });
    this.addEventListener('wk-act', (event) => this.#act((event as CustomEvent<BarAct>).detail));
    this.addEventListener('wk-file', (event) => void this.#file((event as CustomEvent<File>).detail));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    try {
      this.#shelf = openShelf();
    } catch {
      this.notice = 'This browser keeps nothing here (a private window?). Save the notebook as a file.';
    }
    addEventListener('hashchange', this.#follow);
    addEventListener('pagehide', this.#flush);
    document.addEventListener('visibilitychange', this.#flush);
    document.addEventListener('dragover', this.#dragged);
    document.addEventListener('drop', this.#dropped);
    document.addEventListener('keydown', this.#key);
    void this.#follow();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('hashchange', this.#follow);
    removeEventListener('pagehide', this.#flush);
    document.removeEventListener('visibilitychange', this.#flush);
    document.removeEventListener('dragover', this.#dragged);
    document.removeEventListener('drop', this.#dropped);
    document.removeEventListener('keydown', this.#key);
    this.#leave();
  }

  #flush = () => void this.#save?.flush();
  #dragged = (event: DragEvent) => event.preventDefault();
  #dropped = (event: DragEvent) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void this.#file(file);
  };

  #key = (event: KeyboardEvent) => {
    const inText = event.composedPath()[0] instanceof HTMLTextAreaElement;
    if (!this.open || inText || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    if (event.shiftKey) this.open.redo();
    else this.open.undo();
  };

  #follow = async (): Promise<void> => {
    const mine = ++this.#version;
    const route = routeOf(location.hash);
    if (route.to === 'kept' && this.open && this.#idOf === route.id) return;
    this.#leave();
    if (route.to === 'example') {
      const example = EXAMPLES.find(({ name }) => name === route.name);
      if (example) return this.#start(example.text, example.file, undefined);
      this.problems = [
        { what: 'there is no such worked example', file: route.name, todo: 'choose one from the list' },
      ];
    } else if (route.to === 'shared') {
      return this.#start(
        route.text,
        'shared.md',
        undefined,
        'Opened from a link. It is kept in this browser once you change it.',
      );
    } else if (route.to === 'begin') {
      this.loading = true;
      const [{ started }, { beginSetting }] = await Promise.all([engineOnce(), import('./begin.ts')]);
      if (mine !== this.#version) return;
      this.loading = false;
      this.beginning = beginSetting(started);
      return;
    } else if (route.to === 'damaged') {
      this.problems = [{ what: route.problem, file: 'link' }];
    } else if (route.to === 'kept') {
      const found = await this.#shelf.get(route.id).catch(() => undefined);
      if (mine !== this.#version) return;
      if (found) return this.#start(found.text, `${route.id}.md`, { id: route.id, revision: found.revision });
      this.problems = [
        { what: 'this browser no longer keeps that notebook', file: route.id, todo: 'open its file instead' },
      ];
    }
    const list = await this.#shelf.list().catch(() => []);
    if (mine !== this.#version) return;
    this.kept = [...list]
      .sort((a, b) => b.saved - a.saved)
      .map(({ id, title, saved }) => ({
        href: keptHref(id),
        title,
        note: `changed ${new Date(saved).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}`,
      }));
  };

  #idOf: string | undefined;

  async #start(
    text: string,
    file: string,
    kept: { id: string; revision: number } | undefined,
    notice = '',
  ): Promise<void> {
    const mine = ++this.#version;
    this.loading = true;
    const { openNotebook, started } = await engineOnce();
    if (mine !== this.#version) return;
    this.loading = false;
    this.problems = started.problems;
    this.notice =
      notice === '' && started.problems.length > 0
        ? `The tables of this build are at fault: ${formatProblem(started.problems[0])}`
        : notice;
    this.saved = undefined;
    this.#title = titleOf(text) ?? file;
    const open = openNotebook(text, file, started.engine);
    this.open = open;
    this.#idOf = kept?.id;
    if (kept) this.#keep(kept.id, kept.revision);
    let last = text;
    // A copy is made on the first change, so that worked examples and links stay as they were.
    this.#stopWatching = open.text.subscribe((now) => {
      if (now === last) return;
      last = now;
      if (!this.#save) {
        const id = `${file.replace(/\.md$/, '').replace(/[^\w-]+/g, '-')}-${Date.now().toString(36)}`;
        this.#idOf = id;
        this.#keep(id, 0);
        history.replaceState(null, '', keptHref(id));
      }
      this.#save?.changed(titleOf(now) ?? this.#title, now);
    });
  }

  #stopWatching: (() => void) | undefined;

  #keep(id: string, revision: number): void {
    this.#save = autosave(this.#shelf, {
      id,
      revision,
      onState: (saved) => {
        this.saved = saved;
        if (saved.words) this.notice = saved.words;
      },
      onOther: () => {
        this.notice =
          'This notebook was changed in another tab. Reload to take that in; if you go on here, the other text is kept beside yours.';
      },
    });
  }

  #leave(): void {
    this.loading = false;
    this.beginning = undefined;
    this.#commitTyping();
    this.#stopWatching?.();
    this.#save?.stop();
    this.#save = undefined;
    this.open?.close();
    this.open = undefined;
    this.#idOf = undefined;
    document.title = 'winterkeep';
  }

  async #file(file: File): Promise<void> {
    if (file.size > MAX_BYTES) {
      location.hash = '';
      this.problems = [
        {
          what: 'the file is too large to be a notebook',
          file: file.name,
          found: `${(file.size / 1e6).toFixed(1)} MB`,
          allowed: `at most ${MAX_BYTES / 1e6} MB`,
        },
      ];
      return;
    }
    const decoded = decodeNotebook(new Uint8Array(await file.arrayBuffer()), file.name);
    this.#leave();
    if ('problem' in decoded) {
      this.problems = [decoded.problem];
      return;
    }
    history.replaceState(null, '', '#file');
    await this.#start(decoded.text, file.name, undefined);
  }

  /** A notebook made from answers: kept at once, since it is nobody's example. */
  async #begun(text: string): Promise<void> {
    const { keepBegun } = await import('./begin.ts');
    const id = await keepBegun(this.#shelf, text).catch(() => undefined);
    if (id !== undefined) location.hash = keptHref(id);
    else await this.#start(text, 'my-farm.md', undefined, 'Not kept in this browser: save it as a file.');
  }

  #act(act: BarAct): void {
    const { open } = this;
    if (!open) return;
    this.#commitTyping();
    if (act === 'undo') open.undo();
    else if (act === 'redo') open.redo();
    else if (act === 'edit') this.editing = !this.editing;
    else if (act === 'print') print();
    else if (act === 'units') this.system = this.#system === 'us' ? 'metric' : 'us';
    else if (act === 'save') download(open.text.value, open.file);
    else void this.#copyLink(open.text.value);
  }

  async #copyLink(text: string): Promise<void> {
    const link = `${location.href.split('#')[0]}#${toLink(text)}`;
    try {
      await navigator.clipboard.writeText(link);
      this.notice = `A link of ${link.length.toLocaleString('en-GB')} letters is on the clipboard. It holds the whole notebook; nothing was sent anywhere.`;
    } catch {
      location.hash = link.split('#')[1];
      this.notice = 'The link is now in the address line: copy it from there.';
    }
  }

  #type(text: string): void {
    this.#typed = text;
    clearTimeout(this.#typing);
    this.#typing = setTimeout(() => this.#commitTyping(), TYPING_MS);
  }

  #commitTyping(): void {
    clearTimeout(this.#typing);
    const text = this.#typed;
    this.#typed = undefined;
    if (text !== undefined) this.open?.edit(text, 'typing', `typing ${this.#run}`);
  }

  get #system(): 'metric' | 'us' {
    return this.system === '' ? (this.open?.notebook.value?.units ?? 'metric') : this.system;
  }

  #bar(): BarState | undefined {
    const { open } = this;
    if (!open) return undefined;
    const { past, now, future } = open.history.value;
    return {
      undo: past.length === 0 ? null : `Undo: ${now.what}`,
      redo: future.length === 0 ? null : `Redo: ${future[0].what}`,
      system: this.#system,
      editing: this.editing,
      saved: this.saved ? SAVED[this.saved.state] : '',
      notice: this.notice,
    };
  }

  protected override render() {
    const { open } = this;
    return html`<wk-bar .state=${this.#bar()}></wk-bar>
      ${
        open
          ? html`<div class="beside ${this.editing ? 'editing' : ''}">
              ${
                this.editing
                  ? html`<wk-text .text=${this.#typed ?? open.text.value} @wk-text=${(e: CustomEvent<string>) => this.#type(e.detail)} @focusout=${() => {
                      this.#commitTyping();
                      this.#run++;
                    }}></wk-text>`
                  : nothing
              }
              <wk-page .open=${open} .system=${this.system}></wk-page>
            </div>`
          : this.loading
            ? html`<p class="wait" role="status">Opening the notebook …</p>`
            : this.beginning
              ? html`<wk-begin .setting=${this.beginning} @wk-begun=${(e: CustomEvent<{ text: string }>) => void this.#begun(e.detail.text)}></wk-begin>`
              : html`<wk-home
              .begin=${BEGIN}
              .examples=${EXAMPLES.map(({ name, title, note }) => ({ href: exampleHref(name), title, note }))}
              .kept=${this.kept}
              .problems=${this.problems}
            ></wk-home>`
      }`;
  }
}

function download(text: string, file: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/markdown' }));
  link.download = file.endsWith('.md') ? file : `${file}.md`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

customElements.define('wk-shell', WkShell);

declare global {
  interface HTMLElementTagNameMap {
    'wk-shell': WkShell;
  }
}

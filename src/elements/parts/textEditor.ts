/** The text editor: line numbers, colours, what may stand at the cursor, and marks at what has to be mended. */
import { autocompletion, type CompletionContext, completionKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, indentWithTab } from '@codemirror/commands';
import { yamlFrontmatter, yamlLanguage } from '@codemirror/lang-yaml';
import {
  defineLanguageFacet,
  HighlightStyle,
  indentUnit,
  Language,
  syntaxHighlighting,
} from '@codemirror/language';
import { type Diagnostic, lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { Annotation, EditorState, Transaction } from '@codemirror/state';
import { EditorView, highlightActiveLine, keymap, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { parseCode, parser } from '@lezer/markdown';
import { isCellKind } from '../../notebook/cells.ts';
import type { NamesToSuggest } from '../../notebook/suggest.ts';
import { suggestionsAt } from '../../notebook/suggest.ts';
import { difference } from '../../store/difference.ts';
import { oneLineEnd, withShown } from '../../store/lineEnds.ts';
import type { Problem } from '../../units/problem.ts';
import { editorTheme } from './textStyle.ts';

export interface TextEditor {
  /** A text from outside: only what differs is changed, so that the cursor stays. */
  setText(text: string): void;
  setProblems(problems: readonly Problem[]): void;
  /** To a line of the text, 1-based, and the keyboard with it. */
  goTo(line: number): void;
  focus(): void;
  destroy(): void;
}

interface Options {
  readonly text: string;
  readonly label: string;
  /** Told of each change made here, with the whole text. */
  readonly changed: (text: string) => void;
  readonly names: () => NamesToSuggest;
}

const fromOutside = Annotation.define<boolean>();

/** Prose in Markdown, whose cells are YAML again. */
const prose = new Language(
  defineLanguageFacet(),
  parser.configure(
    parseCode({
      codeParser: (info) => (isCellKind(info.trim().split(/\s+/, 1)[0]) ? yamlLanguage.parser : null),
    }),
  ),
  [],
  'markdown',
);

const colours = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--focus)' },
  { tag: [tags.comment, tags.meta, tags.processingInstruction], color: 'var(--quiet)' },
  { tag: tags.heading, fontWeight: '700' },
  { tag: tags.strong, fontWeight: '700' },
  { tag: tags.emphasis, fontStyle: 'italic' },
  { tag: tags.link, textDecoration: 'underline' },
]);

export function textEditor(root: ShadowRoot, parent: Element, options: Options): TextEditor {
  let text = options.text;
  const suggest = ({ state, pos, explicit }: CompletionContext) => {
    const found = suggestionsAt(state.doc.toString(), pos, options.names());
    if (!found || (!explicit && found.from === pos)) return null;
    return {
      from: found.from,
      options: found.list.map(({ word, tells }) => ({ label: word, detail: tells })),
      validFor: /^[\w.-]*$/,
    };
  };
  const view = new EditorView({
    root,
    parent,
    state: EditorState.create({
      doc: oneLineEnd(text),
      extensions: [
        lineNumbers(),
        lintGutter(),
        history(),
        highlightActiveLine(),
        EditorView.lineWrapping,
        indentUnit.of('  '),
        yamlFrontmatter({ content: prose }),
        syntaxHighlighting(colours),
        autocompletion({ override: [suggest], icons: false }),
        keymap.of([...completionKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap, indentWithTab]),
        EditorView.contentAttributes.of({
          'aria-label': options.label,
          'aria-describedby': 'about',
          // Focusable without it, but not every reader of a page knows that what can be edited is.
          tabindex: '0',
          spellcheck: 'false',
          autocapitalize: 'off',
        }),
        editorTheme,
        EditorView.updateListener.of(({ docChanged, transactions, state }) => {
          if (!docChanged || transactions.every((each) => each.annotation(fromOutside))) return;
          text = withShown(text, state.doc.toString());
          options.changed(text);
        }),
      ],
    }),
  });
  return {
    setText(next) {
      if (next === text) return;
      text = next;
      const changes = difference(view.state.doc.toString(), oneLineEnd(next)).map(({ at, cut, put }) => ({
        from: at,
        to: at + cut.length,
        insert: put,
      }));
      if (changes.length === 0) return;
      // Not a step of the editor's own: the page undoes what the page has done.
      view.dispatch({
        changes,
        annotations: [fromOutside.of(true), Transaction.addToHistory.of(false)],
      });
    },
    setProblems(problems) {
      view.dispatch(setDiagnostics(view.state, diagnosticsOf(view.state, problems)));
    },
    goTo(line) {
      const { from, text: words } = view.state.doc.line(Math.min(Math.max(1, line), view.state.doc.lines));
      const anchor = from + words.search(/\S|$/);
      view.dispatch({ selection: { anchor }, effects: EditorView.scrollIntoView(anchor, { y: 'center' }) });
      view.focus();
    },
    focus: () => view.focus(),
    destroy: () => view.destroy(),
  };
}

/** Marks on the value where the line holds one, else on all that is written on the line. */
function diagnosticsOf({ doc }: EditorState, problems: readonly Problem[]): Diagnostic[] {
  return problems
    .flatMap((problem): Diagnostic[] => {
      if (problem.line === undefined || problem.line > doc.lines) return [];
      const { from, text } = doc.line(Math.max(1, problem.line));
      const [start, end] = spanIn(text, problem);
      return [{ from: from + start, to: from + end, severity: 'error', message: wordsOf(problem) }];
    })
    .sort((a, b) => a.from - b.from);
}

/** Where on the line a fault is: what was found there, else its key, else all of it. */
function spanIn(line: string, { found, key }: Problem): readonly [number, number] {
  const last = key?.split('.').at(-1) ?? '';
  for (const word of [found?.replace(/^"(.*)"$/, '$1'), last]) {
    const at = word && !/^\d+$/.test(last) ? line.indexOf(word) : -1;
    if (word && at >= 0) return [at, at + word.length];
  }
  return [Math.max(0, line.search(/\S/)), line.trimEnd().length];
}

const wordsOf = ({ what, found, allowed, todo }: Problem) =>
  [what, found && `found ${found}`, allowed && `allowed: ${allowed}`, todo]
    .filter((part) => part !== undefined && part !== '')
    .join('; ');

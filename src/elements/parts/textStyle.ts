/** How the text and its messages look: the page's own colours, so that the dark has them too. */
import { EditorView } from '@codemirror/view';
import { css } from 'lit';

export const editorTheme = EditorView.theme({
  '&': { height: '100%', backgroundColor: 'var(--paper)', color: 'var(--ink)', fontSize: '0.9rem' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': {
    fontFamily: 'ui-monospace, "Cascadia Mono", "DejaVu Sans Mono", monospace',
    lineHeight: '1.5',
    overflow: 'auto',
  },
  '.cm-content': { caretColor: 'var(--ink)', padding: '0.6rem 0' },
  '.cm-gutters': {
    backgroundColor: 'var(--paper)',
    color: 'var(--quiet)',
    border: '0',
    fontVariantNumeric: 'tabular-nums',
  },
  '.cm-activeLine': { backgroundColor: 'var(--ground)' },
  '.cm-lintRange-error': {
    backgroundImage: 'none',
    textDecoration: 'underline wavy var(--alarm) 1px',
    textUnderlineOffset: '0.2em',
  },
  '.cm-tooltip': {
    backgroundColor: 'var(--paper)',
    color: 'var(--ink)',
    border: '1px solid var(--quiet)',
    maxWidth: 'min(34rem, calc(100vw - 1rem))',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': { fontFamily: 'inherit', maxHeight: '14rem', maxWidth: '100%' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': { padding: '0.25rem 0.5rem', whiteSpace: 'normal' },
  '.cm-tooltip-autocomplete ul li[aria-selected]': {
    backgroundColor: 'var(--action)',
    color: 'var(--on-action)',
  },
  '.cm-completionDetail': { fontStyle: 'normal', fontSize: '0.9em', marginLeft: '0.7em' },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '700' },
  '.cm-diagnostic': { borderLeftColor: 'var(--alarm)' },
});

export const textStyle = css`
  :host {
    display: flex;
    flex-direction: column;
    background: var(--paper);
    min-height: 0;
  }
  .about {
    padding: 0.4rem 0.8rem;
    margin: 0;
    color: var(--quiet);
    font-size: 0.9rem;
    border-bottom: 1px solid var(--rule);
  }
  .about button {
    display: none;
    float: right;
    margin-left: 1rem;
  }
  @media screen and (max-width: 900px) {
    .about button {
      display: block;
    }
    .about .keys {
      display: none;
    }
  }
  /* A rim, since the line numbers would cover an outline. */
  .editor {
    flex: 1;
    min-height: 0;
    overflow: hidden;
    border: 3px solid transparent;
  }
  .editor:focus-within {
    border-color: var(--focus);
  }
  .faults {
    flex: none;
    max-height: 34%;
    overflow-y: auto;
    border-top: 1px solid var(--rule);
    font-size: 0.9rem;
  }
  .faults.some {
    border-top: 3px solid var(--alarm);
  }
  .faults p {
    margin: 0;
    padding: 0.3rem 0.8rem;
  }
  .faults ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .faults li {
    border-top: 1px solid var(--rule);
  }
  .faults button,
  .faults .plainly {
    display: block;
    width: 100%;
    text-align: left;
    border: 0;
    background: none;
    padding: 0.4rem 0.8rem;
    min-height: 2.75rem;
    overflow-wrap: anywhere;
  }
  .faults button {
    cursor: pointer;
  }
  .faults button:hover {
    background: var(--ground);
  }
  .faults button:focus-visible {
    outline-offset: -3px;
  }
  .faults small {
    display: block;
    color: var(--quiet);
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

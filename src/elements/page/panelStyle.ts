/** How the panel of inputs looks: at the right on a laptop, the whole of a phone. */
import { css } from 'lit';

export const panelStyle = css`
  dialog {
    --drawer: 36rem;
  }
  /* The figures beside it follow every change, so they stay in sight. */
  dialog::backdrop {
    background: var(--veil-thin);
  }
  .inside {
    padding: 0 1.1rem 4rem;
    overflow-y: auto;
    height: 100%;
  }
  .top {
    position: sticky;
    top: 0;
    z-index: 2;
    display: flex;
    align-items: center;
    gap: 0.6rem;
    margin: 0 -1.1rem;
    padding: 0.7rem 1.1rem 0.4rem;
    background: var(--paper);
  }
  .top button {
    min-height: 2.75rem;
  }
  h1 {
    flex: 1;
    margin: 0;
    font-size: 1.3rem;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  .scopes {
    display: flex;
    gap: 0.3rem;
    overflow-x: auto;
    padding: 0.2rem 3px;
  }
  .scopes button {
    flex: none;
    border: 1px solid var(--rule);
    border-radius: 1.4rem;
    background: var(--paper);
    padding: 0.2rem 0.9rem;
    min-height: 2.75rem;
    cursor: pointer;
  }
  .scopes button[aria-pressed='true'] {
    border-color: var(--ink);
    background: var(--ink);
    color: var(--paper);
  }
  .about {
    margin: 0.4rem 0;
    font-size: 0.92rem;
  }
  .find {
    display: grid;
    gap: 0.1rem;
    margin: 0.2rem 0 0.8rem;
    font-size: 0.92rem;
  }
  .find input {
    min-height: 2.75rem;
    font-size: 1rem;
  }
  details > summary {
    display: flex;
    align-items: center;
    gap: 0.6rem;
    min-height: 2.75rem;
    cursor: pointer;
    list-style: none;
    border-top: 1px solid var(--rule);
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::before {
    content: '▸';
    width: 0.9rem;
    color: var(--quiet);
  }
  details[open] > summary::before {
    content: '▾';
  }
  summary h2 {
    flex: 1;
    margin: 0;
    font-size: 1.05rem;
  }
  .count {
    font-size: 0.85rem;
    border: 1px solid var(--ink);
    border-radius: 1rem;
    padding: 0 0.5rem;
  }
  details > wk-field,
  details > .list {
    margin-left: 0.2rem;
  }
  details[open] {
    padding-bottom: 0.6rem;
  }
  .list {
    margin-bottom: 0.8rem;
  }
  .list.differs {
    border-left: 4px solid var(--ink);
    padding-left: 0.6rem;
  }
  .list h3 {
    margin: 0.3rem 0 0.1rem;
    font-size: 0.95rem;
    color: var(--quiet);
  }
  .row > summary {
    border: 0;
  }
  .row[open] {
    background: var(--ground);
    margin: 0 -0.5rem 0.4rem;
    padding: 0 0.5rem 0.6rem;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    padding: 0.5rem 0 0.2rem;
  }
  .acts button,
  .acts select {
    min-height: 2.75rem;
    max-width: 100%;
  }
  .guide {
    margin: 0.1rem 0;
    font-size: 0.85rem;
    color: var(--quiet);
  }
  .guide b {
    color: var(--ink);
  }
  .told {
    margin: 0.3rem 0;
    padding: 0.5rem 0.7rem;
    background: var(--ground);
    font-size: 0.95rem;
  }
  .refused {
    border-left: 4px solid var(--alarm);
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

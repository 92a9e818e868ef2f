/** How words and cells of the notebook are set: one under the other, or side by side where there is room. */
import { css } from 'lit';

export const notebookStyle = css`
  .prose {
    max-width: 40rem;
    font-size: 1.1rem;
    line-height: 1.6;
  }
  .prose h2 {
    margin: 2rem 0 0.6rem;
  }
  .prose h3 {
    font-size: 1.12rem;
    margin: 1.4rem 0 0.4rem;
  }
  .prose p,
  .prose li {
    margin: 0 0 0.8rem;
  }
  .prose blockquote {
    margin: 0 0 1rem;
    padding-left: 1rem;
    border-left: 3px solid var(--rule);
  }
  .prose table {
    font-size: 0.95rem;
    margin-bottom: 1rem;
  }
  .prose th,
  .prose td {
    border-bottom: 1px solid var(--rule);
  }
  .inline-value {
    appearance: none;
    background: none;
    border: 0;
    padding: 0;
    cursor: pointer;
    font-weight: 600;
    text-decoration: underline dotted var(--quiet) 1px;
    text-underline-offset: 0.22em;
  }
  .cell {
    margin: 1.6rem 0 2rem;
    /* What changes in one cell lays out only that cell. */
    contain: layout style;
  }
  pre {
    overflow-x: auto;
    background: var(--ground);
    padding: 0.7rem 0.9rem;
    font-size: 0.9rem;
    margin: 0 0 0.4rem;
  }
  .as-text {
    white-space: pre-wrap;
    overflow-wrap: anywhere;
    max-height: 20rem;
    overflow-y: auto;
  }
  :host {
    container-type: inline-size;
  }
  .prose tr {
    vertical-align: baseline;
  }
  @media screen {
    /* Words in a column to read, what they speak of beside them; what needs room has the whole measure. */
    @container (min-width: 58rem) {
      .pair {
        display: grid;
        grid-template-columns: minmax(19rem, 36rem) minmax(34rem, 1fr);
        column-gap: 2.6rem;
        align-items: start;
      }
      .pair.words {
        grid-template-columns: minmax(0, 40rem);
      }
      .pair.shown {
        grid-template-columns: minmax(0, 1fr);
      }
      .pair > .said {
        position: sticky;
        top: 6.5rem;
      }
      .pair > .said > .part:first-child h3:first-child {
        margin-top: 1.6rem;
      }
      .pair > .figures {
        min-width: 0;
      }
      .pair .open.words {
        left: auto;
        right: 0;
      }
    }
    @container (min-width: 58rem) and (max-width: 70rem) {
      .pair {
        grid-template-columns: 21rem minmax(0, 1fr);
      }
      .pair .prose {
        font-size: 1.02rem;
      }
    }
  }
  /* For a meeting or a wall: no prose, figures side by side. */
  .board {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(34rem, 100%), 1fr));
    gap: 1.6rem 2.4rem;
    align-items: start;
  }
  .board .cell {
    margin: 0;
    min-width: 0;
  }
  @media print {
    .prose {
      font-size: 1rem;
      line-height: 1.4;
      max-width: none;
    }
    .inline-value {
      text-decoration: none;
    }
    .cell {
      margin: 0.8rem 0;
      contain: none;
    }
  }
`;

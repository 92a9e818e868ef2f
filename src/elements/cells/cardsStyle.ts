/** How the cards look: on a wide page a table of columns, on a phone cards to swipe past the first, on paper no lines to scroll. */
import { css } from 'lit';

export const cardsStyle = css`
  .grid {
    display: grid;
    grid-template-columns: minmax(10.5rem, 13.5rem) repeat(var(--columns, 3), minmax(10.5rem, 1fr));
    column-gap: 0.9rem;
    /* Positioned, so that hidden words of swiped-away cards do not widen the page. */
    position: relative;
    overflow-x: auto;
    padding: 2px 2px 0.4rem;
  }
  .card,
  .names {
    display: grid;
    grid-row: 1 / span var(--rows);
    grid-template-rows: subgrid;
    align-content: start;
  }
  .names {
    position: sticky;
    left: 0;
    background: var(--paper);
    z-index: 1;
  }
  .card > section,
  .names > div,
  dl {
    display: contents;
  }
  header {
    border-top: 6px solid oklch(from var(--colour) var(--lightness) c h);
    padding: 0.3rem 0.1rem 0;
  }
  header h3 {
    font-size: 1.12rem;
    line-height: 1.2;
    margin: 0;
    color: oklch(from var(--colour) var(--lightness) c h);
  }
  header p {
    margin: 0;
    font-size: 0.85rem;
    line-height: 1.2;
    color: var(--quiet);
  }
  h4,
  .names h3 {
    font-size: 0.95rem;
    font-weight: 700;
    margin: 0;
    padding: 0.4rem 0 0.1rem;
    border-bottom: 1px solid var(--ink);
    min-height: 1.9rem;
  }
  .names h3 .quiet {
    font-weight: 400;
    font-size: 0.8rem;
  }
  .card h4 > span {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .row,
  .label {
    border-bottom: 1px solid var(--rule);
    padding: 0.2rem 0.1rem 0.15rem;
    min-height: 1.9rem;
  }
  .label {
    line-height: 1.25;
  }
  dt {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  dd {
    margin: 0;
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    column-gap: 0.6rem;
    line-height: 1.25;
  }
  dd .number {
    font-size: 1.06rem;
  }
  .unit,
  .range {
    font-size: 0.85rem;
    color: var(--quiet);
    font-weight: 400;
  }
  .best .number {
    font-weight: 700;
  }
  .absent {
    text-decoration: none;
    cursor: help;
    padding: 0 0.4rem;
  }
  svg {
    display: block;
    filter: var(--drawn);
    width: 100%;
    height: 4px;
    margin-top: 2px;
  }
  .words {
    margin: 0.9rem 0 0;
    padding: 0;
    list-style: none;
    max-width: 46rem;
    line-height: 1.45;
  }
  .words li {
    margin-bottom: 0.25rem;
  }
  .key {
    font-size: 0.85rem;
    margin: 0.5rem 0 0;
  }
  .key summary {
    cursor: pointer;
    width: fit-content;
    color: var(--quiet);
    padding: 0.25rem 0;
  }
  .key p {
    margin: 0;
    max-width: 42rem;
  }
  .apart {
    font-size: 0.9rem;
    font-weight: 400;
    font-variant-numeric: tabular-nums;
  }
  .tabs,
  .against {
    display: none;
  }
  .base select {
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    padding: 0.2rem 0.3rem;
    max-width: 100%;
  }
  @media screen and (max-width: 700px) {
    .against {
      display: inline;
    }
    /* One card at a time, its name in reach; the next is a swipe or a press away. */
    .tabs {
      display: flex;
      gap: 0.4rem;
      position: sticky;
      top: 0;
      z-index: 2;
      overflow-x: auto;
      padding: 0.4rem 0;
      background: var(--paper);
      border-bottom: 1px solid var(--rule);
    }
    .tabs button {
      flex: 1 0 auto;
      min-height: 2.75rem;
      padding: 0.2rem 0.7rem;
      font: inherit;
      font-size: 0.95rem;
      border: 1px solid var(--rule);
      border-top: 5px solid oklch(from var(--colour) var(--lightness) c h);
      border-radius: 0 0 0.4rem 0.4rem;
      background: none;
      color: inherit;
    }
    .tabs button[aria-pressed='true'] {
      font-weight: 700;
      background: var(--ground);
    }
    .grid {
      grid-template-columns: none;
      grid-auto-flow: column;
      grid-auto-columns: 100%;
      column-gap: 0;
      scroll-snap-type: x mandatory;
      padding: 0 0 0.4rem;
      overscroll-behavior-x: contain;
    }
    .names {
      display: none;
    }
    .card {
      scroll-snap-align: start;
      scroll-snap-stop: always;
    }
    .row {
      display: grid;
      grid-template-columns: 9rem 1fr;
      align-items: baseline;
      column-gap: 0.6rem;
      padding: 0.35rem 0.1rem;
    }
    .row > svg {
      grid-column: 1 / -1;
    }
    dt,
    .card h4 > span {
      position: static;
      width: auto;
      height: auto;
      clip-path: none;
      font-size: 0.95rem;
      line-height: 1.2;
    }
    .card h4 > span {
      font-size: 1rem;
    }
    dd {
      column-gap: 0.7rem;
    }
  }
  @media print {
    .grid {
      overflow: visible;
      grid-template-columns: 9rem repeat(var(--columns, 3), minmax(0, 1fr));
      column-gap: 0.6rem;
      break-inside: avoid;
    }
    .names {
      position: static;
    }
    /* Four scenarios under a long answer still stand on the first page. */
    h4,
    .names h3 {
      min-height: 0;
      padding: 0.2rem 0 0;
    }
    header h3 {
      font-size: 1rem;
    }
    header p {
      font-size: 0.75rem;
    }
    .label,
    dd .number {
      font-size: 0.92rem;
      line-height: 1.15;
    }
    .unit,
    .range {
      font-size: 0.78rem;
    }
    .row,
    .label {
      padding-block: 0.04rem;
      min-height: 0;
    }
  }
`;

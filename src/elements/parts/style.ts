/** Rules every element repeats, since page styles do not reach into shadow roots. */
import { css } from 'lit';

export const shared = css`
  :host {
    display: block;
    font-variant-numeric: tabular-nums;
    color: var(--ink);
  }
  * {
    box-sizing: border-box;
  }
  h2 {
    font-size: 1.3rem;
    line-height: 1.25;
    margin: 0 0 0.4rem;
  }
  h3 {
    font-size: 1rem;
    margin: 0 0 0.3rem;
  }
  p {
    margin: 0 0 0.6rem;
  }
  .quiet {
    color: var(--quiet);
  }
  .hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /* Hidden words stay where they stand, so that those in a swiped-away column do not widen the page. */
  td,
  th,
  label,
  .absent,
  .range,
  .scroll {
    position: relative;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
    font-variant-numeric: inherit;
  }
  button.plain,
  .field {
    background: var(--paper);
    border: 1px solid var(--quiet);
    border-radius: 4px;
    padding: 0.3rem 0.7rem;
    min-height: 2.25rem;
  }
  button.plain {
    cursor: pointer;
  }
  button.plain:hover {
    background: var(--ground);
  }
  button.plain:disabled {
    color: var(--quiet);
    border-color: var(--rule);
    cursor: default;
  }
  /* A number that opens its working. */
  button.number {
    appearance: none;
    background: none;
    border: 0;
    padding: 0;
    margin: 0;
    cursor: pointer;
    text-align: inherit;
    text-decoration: underline dotted var(--quiet) 1px;
    text-underline-offset: 0.22em;
  }
  button.number:hover {
    text-decoration-style: solid;
  }
  /* A figure that rests on the keeper's own number. */
  .own {
    margin-left: 0.15em;
    text-decoration: none;
    font-weight: 700;
  }
  :focus-visible {
    outline: 3px solid #1f6f9f;
    outline-offset: 2px;
    border-radius: 2px;
  }
  table {
    border-collapse: collapse;
  }
  th,
  td {
    text-align: left;
    padding: 0.2rem 0.9rem 0.2rem 0;
    vertical-align: baseline;
    font-weight: 400;
  }
  td.n,
  th.n {
    text-align: right;
  }
  /* Said on paper only. */
  .paper {
    display: none;
  }
  @media print {
    .paper {
      display: block;
    }
    h2,
    h3 {
      break-after: avoid;
    }
    button.number {
      text-decoration: none;
    }
    /* Nothing to see, and it would part a heading from its figure. */
    .screen,
    wk-progress {
      display: none !important;
    }
  }
`;

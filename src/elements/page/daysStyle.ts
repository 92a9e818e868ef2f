/** The list of earlier days, and what differs from the one that is chosen. */
import { css } from 'lit';

export const daysStyle = css`
  dialog {
    --drawer: 34rem;
    padding: 0 1rem 2rem;
    overflow-y: auto;
  }
  dialog::backdrop {
    background: var(--veil);
  }
  header {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    position: sticky;
    top: 0;
    background: var(--paper);
    padding: 0.8rem 0 0.2rem;
    z-index: 1;
  }
  h4 {
    font-size: 0.95rem;
    margin: 0.7rem 0 0.1rem;
  }
  section ul {
    margin: 0;
    padding-left: 1.2rem;
    overflow-wrap: anywhere;
  }
  small {
    display: block;
    font-size: 0.88rem;
    color: var(--quiet);
  }
  .days {
    list-style: none;
    margin: 0 0 1rem;
    padding: 0;
    max-height: 17rem;
    overflow-y: auto;
    border-bottom: 1px solid var(--rule);
  }
  .days button {
    display: block;
    width: 100%;
    min-height: 2.75rem;
    text-align: left;
    border: 0;
    border-top: 1px solid var(--rule);
    border-left: 5px solid transparent;
    background: none;
    padding: 0.35rem 0.6rem;
    cursor: pointer;
  }
  .days button:hover {
    background: var(--ground);
  }
  .days button[aria-pressed='true'] {
    border-left-color: var(--action);
    background: var(--ground);
    font-weight: 600;
  }
  .days button:focus-visible {
    outline-offset: -3px;
  }
  .scroll {
    overflow-x: auto;
    margin: 0.9rem 0 0.3rem;
  }
  table {
    width: 100%;
  }
  tbody tr {
    border-top: 1px solid var(--rule);
  }
  thead th {
    font-weight: 600;
  }
  td.n:last-child,
  th.n:last-child {
    padding-right: 0;
  }
  /* The amount stays whole; the span under it may take two lines on a phone. */
  td.n {
    white-space: nowrap;
  }
  @media screen and (max-width: 700px) {
    td.n small {
      white-space: normal;
      max-width: 7rem;
      margin-left: auto;
    }
  }
`;

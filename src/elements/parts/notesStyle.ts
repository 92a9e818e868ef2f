/** Notes beside what they stand on: set apart from the keeper's own words, on screen and on paper. */
import { css } from 'lit';

export const notesStyle = css`
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .thread {
    max-width: 40rem;
    margin: 0.4rem 0 0.9rem;
    padding: 0.5rem 0.8rem;
    border-left: 4px solid var(--look);
    background: var(--ground);
  }
  .thread ul {
    margin-top: 0.4rem;
    padding-left: 0.9rem;
    border-left: 1px solid var(--rule);
  }
  .head {
    margin: 0;
    font-size: 0.92rem;
  }
  /* Whoever wrote it, it cannot turn or widen what stands around it. */
  .said,
  .by {
    unicode-bidi: isolate;
    overflow-wrap: anywhere;
  }
  .said {
    white-space: pre-wrap;
    margin: 0.1rem 0 0.2rem;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1rem;
    font-size: 0.92rem;
  }
  form {
    display: grid;
    gap: 0.5rem;
    max-width: 40rem;
    margin: 0.4rem 0 1rem;
    padding: 0.7rem 0.8rem;
    background: var(--ground);
  }
  label {
    display: grid;
    gap: 0.15rem;
    font-size: 0.92rem;
  }
  textarea {
    min-height: 4.5rem;
    field-sizing: content;
    max-height: 50vh;
    resize: vertical;
  }
  .name {
    max-width: 20rem;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
  }
  .refused {
    border-left: 6px solid var(--alarm);
    padding-left: 0.8rem;
    margin: 0;
  }
  form .field,
  form button {
    min-height: 2.75rem;
  }
  /* Round the text it is asked for on every section: quiet until it is looked for. */
  :host(.on-section) > .link {
    color: var(--quiet);
    text-decoration-color: var(--rule);
  }
  @media print {
    .thread {
      background: none;
      break-inside: avoid;
    }
  }
`;

/** How an open notebook is set: a column, the answer first, and the strip of inputs above the figures or under the thumb. */
import { css } from 'lit';

export const pageStyle = css`
  .noted {
    margin: 1.8rem 0;
  }
  .on-section {
    display: block;
    font-size: 0.92rem;
  }
  .column {
    max-width: var(--measure);
    margin: 0 auto;
    padding: 0 1rem;
  }
  main {
    padding-bottom: 3rem;
  }
  h1 {
    font-size: 1.5rem;
    line-height: 1.15;
    margin: 0 0 0.1rem;
  }
  .about {
    color: var(--quiet);
    font-size: 0.92rem;
    margin: 0 0 0.4rem;
  }
  /* One quiet line below the answer; what is opened in it takes a line of its own. */
  .lines {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 1.6rem;
    margin: 0 0 0.4rem;
    font-size: 0.92rem;
    color: var(--quiet);
  }
  .lines > [open] {
    flex: 1 0 100%;
  }
  .weather summary {
    cursor: pointer;
    width: fit-content;
    padding: 0.25rem 0;
  }
  .weather > :not(summary) {
    color: var(--ink);
  }
  .weather ul {
    margin: 0.2rem 0 0.6rem;
    padding-left: 1.2rem;
    max-width: 42rem;
  }
  .changes {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.9rem;
  }
  .changes button {
    background: none;
    border: 0;
    padding: 0.25rem 0;
    color: var(--ink);
    cursor: pointer;
    text-decoration: underline solid var(--rule) 1px;
    text-underline-offset: 0.22em;
  }
  .changes button:hover {
    text-decoration-color: currentcolor;
  }
  wk-inputs {
    position: sticky;
    top: 0;
    z-index: 5;
    margin-bottom: 0.5rem;
  }
  wk-notebook,
  wk-ledger,
  wk-compare,
  wk-checks,
  wk-sources,
  wk-cautions {
    margin-top: 2.2rem;
  }
  .flow {
    min-width: 0;
  }
  wk-contents {
    display: none;
  }
  .view {
    font-size: 0.92rem;
    display: none;
    margin: 0 0 0.5rem;
  }
  /* A board wants a wide window; once it is chosen it can be left at any width. */
  @media screen and (min-width: 1600px) {
    .view {
      display: block;
    }
  }
  .view.on {
    display: block;
  }
  /* Room for the contents at the side: of the page's own width, since the text may stand beside it. */
  .measured {
    container-type: inline-size;
  }
  @media screen {
    @container (min-width: 66rem) {
      .sided {
        display: grid;
        grid-template-columns: 12.5rem minmax(0, 1fr);
        gap: 2.2rem;
      }
      wk-contents {
        display: block;
        position: sticky;
        top: 6.5rem;
        align-self: start;
        max-height: calc(100dvh - 8rem);
        overflow-y: auto;
      }
    }
  }
  @media screen and (max-width: 700px) {
    h1 {
      font-size: 1.3rem;
    }
    /* A thumb’s height for each, so that the line is three. */
    .changes {
      flex-wrap: nowrap;
      overflow-x: auto;
      padding: 0 3px;
    }
    .changes > * {
      flex: none;
    }
    .changes button {
      min-height: 2.75rem;
    }
    .weather summary {
      min-height: 2.75rem;
      padding-block: 0.6rem;
    }
    :host {
      padding-bottom: 9rem;
    }
    wk-inputs {
      position: fixed;
      inset: auto 0 0 0;
      margin: 0;
      padding-bottom: env(safe-area-inset-bottom);
    }
  }
  @media print {
    .column {
      max-width: none;
      padding: 0;
    }
    wk-inputs {
      position: static;
    }
  }
`;

/** How the part that changes the scenarios looks: a row each, on a phone its buttons below its name. */
import { css } from 'lit';

export const scenariosStyle = css`
  details[open] {
    margin: 0 0 0.6rem;
  }
  summary {
    cursor: pointer;
    width: fit-content;
    padding: 0.25rem 0;
    font-size: 0.92rem;
    color: var(--quiet);
  }
  .inside {
    background: var(--ground);
    color: var(--ink);
    padding: 0.6rem 0.9rem 0.8rem;
    max-width: 60rem;
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: grid;
    grid-template-columns: 1.4rem minmax(9rem, 16rem) minmax(0, 1fr) auto;
    gap: 0.3rem 0.7rem;
    align-items: center;
    padding: 0.4rem 0;
    border-bottom: 1px solid var(--rule);
  }
  li svg {
    display: block;
  }
  .name {
    width: 100%;
    font-weight: 600;
  }
  .kind {
    font-size: 0.88rem;
    line-height: 1.25;
    color: var(--quiet);
  }
  .acts,
  .line {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
  }
  .line {
    gap: 0.4rem 0.9rem;
    align-items: end;
    margin-top: 0.8rem;
  }
  .line label {
    font-size: 0.92rem;
  }
  .line label.tick {
    display: flex;
    gap: 0.45rem;
    align-items: center;
    min-height: 2.25rem;
  }
  select.field {
    display: block;
    margin-top: 0.15rem;
    max-width: 100%;
  }
  .refused {
    grid-column: 1 / -1;
    border-left: 6px solid #9b1c1c;
    padding-left: 0.8rem;
    margin: 0.3rem 0;
  }
  .refused ul {
    margin: 0.3rem 0;
    padding-left: 1.2rem;
  }
  @media screen and (max-width: 700px) {
    summary {
      min-height: 2.75rem;
      padding-block: 0.6rem;
    }
    .inside {
      margin: 0 -1rem;
      padding-inline: 1rem;
    }
    li {
      grid-template-columns: 1.4rem minmax(0, 1fr);
    }
    .kind,
    .acts {
      grid-column: 2;
    }
    .acts button {
      flex: 1 1 auto;
      min-height: 2.75rem;
    }
  }
`;

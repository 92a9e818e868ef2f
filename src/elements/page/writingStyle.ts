/** How the notebook looks while it is written in: what can be pressed shows only where it is wanted. */
import { css } from 'lit';

export const writingStyle = css`
  .part {
    position: relative;
  }
  .part > .prose {
    cursor: text;
  }
  .hint {
    font-size: 0.88rem;
    margin: 0;
  }
  .open {
    border: 0;
    background: none;
    padding: 0 0.2rem;
    min-height: 1.9rem;
    font-size: 0.85rem;
    color: var(--quiet);
    text-decoration: underline;
    text-decoration-color: var(--rule);
    text-underline-offset: 0.2em;
    cursor: pointer;
  }
  .open:hover {
    text-decoration-color: currentColor;
  }
  .beside {
    display: flex;
    justify-content: flex-end;
    margin-bottom: -1.6rem;
    position: relative;
    z-index: 1;
    pointer-events: none;
  }
  .beside > * {
    pointer-events: auto;
  }
  /* A press on the words does the same; for the keyboard it shows when it is reached. */
  .reach {
    position: absolute;
    top: 0.1rem;
    left: 40.6rem;
    opacity: 0;
    background: var(--paper);
    white-space: nowrap;
    pointer-events: none;
  }
  .reach > * {
    pointer-events: auto;
  }
  .reach:focus-within {
    opacity: 1;
  }
  @media (hover: hover) and (min-width: 56rem) {
    .part:hover > .reach {
      opacity: 1;
    }
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin: 0.3rem 0 0.9rem;
    padding: 0.5rem;
    background: var(--ground);
    width: fit-content;
    max-width: 100%;
  }
  .beside + .tools {
    margin-top: 1.8rem;
  }
  .refused {
    border-left: 6px solid var(--alarm);
    padding-left: 0.8rem;
    max-width: 42rem;
  }
  @media screen and (max-width: 56rem) {
    .reach {
      left: auto;
      right: 0;
    }
  }
`;

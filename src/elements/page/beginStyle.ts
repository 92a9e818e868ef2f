import { css } from 'lit';

export const beginStyle = css`
  main {
    max-width: 44rem;
    margin: 0 auto;
    padding: 0.6rem 1rem 3rem;
    font-size: 1.05rem;
  }
  h1 {
    font-size: 1.05rem;
    font-weight: 600;
    margin: 0.4rem 0;
    color: var(--quiet);
  }
  h2 {
    font-size: 1.6rem;
    margin: 0.5rem 0 0.9rem;
  }
  h2:focus {
    outline: none;
  }
  h3 {
    margin: 1.2rem 0 0.4rem;
  }
  .steps {
    display: grid;
    grid-template-columns: repeat(6, minmax(0, 1fr));
    gap: 0.3rem;
    list-style: none;
    padding: 0;
    margin: 0 0 0.4rem;
  }
  .steps button {
    width: 100%;
    min-height: 2.75rem;
    border: 0;
    border-top: 4px solid var(--rule);
    background: none;
    padding: 0.2rem 0;
    text-align: left;
    font-size: 0.92rem;
    line-height: 1.15;
    cursor: pointer;
    color: var(--quiet);
  }
  .steps .done button {
    border-top-color: var(--quiet);
  }
  .steps button[aria-current] {
    border-top-color: var(--focus);
    color: var(--ink);
    font-weight: 600;
  }
  .steps .bad {
    color: var(--alarm);
  }
  .questions {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: 0.7rem 1.2rem;
    margin: 0 0 0.8rem;
    align-items: end;
  }
  .question label {
    display: block;
    font-size: 0.95rem;
    line-height: 1.3;
    margin-bottom: 0.15rem;
  }
  .answer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 0.5rem;
  }
  /* Room for what is typed first: a long unit stands below. */
  .answer .field {
    flex: 1 1 5.5rem;
    min-width: 0;
    min-height: 2.75rem;
  }
  .question.number .field {
    max-width: 9rem;
  }
  .field::placeholder {
    color: var(--quiet);
    opacity: 1;
    font-style: italic;
  }
  .field[aria-invalid] {
    border: 2px solid var(--alarm);
  }
  .unit {
    white-space: nowrap;
    color: var(--quiet);
  }
  .fault {
    color: var(--alarm);
    font-size: 0.95rem;
    margin: 0.2rem 0 0;
  }
  .rows {
    list-style: none;
    padding: 0;
    margin: 0;
  }
  .rows li {
    border-top: 1px solid var(--rule);
    padding: 0.7rem 0 0.2rem;
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 0.8rem;
    align-items: start;
  }
  .rows .questions {
    grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr));
  }
  button.plain.remove {
    margin-top: 1.65rem;
    min-height: 2.75rem;
  }
  button.plain.add {
    min-height: 2.75rem;
    margin: 0.2rem 0 0.8rem;
  }
  summary {
    cursor: pointer;
    min-height: 2.75rem;
    padding: 0.6rem 0;
    color: var(--action);
  }
  .follows {
    background: var(--ground);
    padding: 0.7rem 0.9rem;
    margin: 1rem 0;
  }
  .follows h3 {
    margin-top: 0;
  }
  .follows table {
    width: 100%;
  }
  .follows td {
    white-space: nowrap;
  }
  .follows :is(td, th):last-child {
    padding-right: 0;
  }
  a {
    color: var(--action);
  }
  .follows[aria-busy='true'] td {
    color: var(--quiet);
  }
  nav.foot {
    position: sticky;
    bottom: 0;
    display: flex;
    gap: 0.8rem;
    align-items: center;
    padding: 0.6rem 0;
    background: var(--paper);
    border-top: 1px solid var(--rule);
  }
  nav.foot button {
    min-height: 2.9rem;
  }
  .next {
    margin-left: auto;
    border: 0;
    border-radius: 4px;
    padding: 0.3rem 1.4rem;
    background: var(--action);
    color: var(--on-action);
    font-weight: 600;
    cursor: pointer;
  }
  .next:disabled {
    background: var(--quiet);
    cursor: default;
  }
  .stop {
    border-left: 6px solid var(--alarm);
    padding: 0.2rem 0 0.2rem 1rem;
    margin: 1rem 0;
  }
  .stop ul {
    margin: 0.2rem 0 0.6rem;
    padding-left: 1.2rem;
  }
  .stop button.link {
    background: none;
    border: 0;
    padding: 0.2rem 0;
    text-align: left;
    text-decoration: underline;
    cursor: pointer;
    min-height: 2rem;
  }
  @media (min-width: 1000px) {
    main {
      max-width: 66rem;
    }
    .sheet {
      display: grid;
      grid-template-columns: minmax(0, 3fr) minmax(20rem, 2fr);
      gap: 2rem;
      align-items: start;
    }
    .follows {
      position: sticky;
      top: 1rem;
      margin-top: 0;
    }
  }
  @media (max-width: 600px) {
    .steps button {
      font-size: 0.92rem;
      text-align: center;
      min-height: 2.2rem;
    }
    .steps .name {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .rows li {
      grid-template-columns: minmax(0, 1fr);
    }
    button.plain.remove {
      margin: 0 0 0.6rem;
      justify-self: start;
    }
    .questions,
    .rows .questions {
      grid-template-columns: repeat(2, minmax(0, 1fr));
      gap: 0.6rem 0.9rem;
    }
    .sheet .questions > .choice,
    .sheet .questions > .text {
      grid-column: 1 / -1;
    }
    .sheet .rows .questions > .choice {
      grid-column: auto;
    }
    .follows table {
      font-size: 0.95rem;
    }
    .follows :is(td, th) {
      padding-right: 0.6rem;
    }
  }
  @media print {
    nav.foot,
    .steps {
      display: none;
    }
  }
`;

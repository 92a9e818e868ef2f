import { css } from 'lit';

/** The text beside the page it makes, and what stands in for either. */
export const shellStyle = css`
  :host {
    display: block;
  }
  .wait {
    max-width: 76rem;
    margin: 2rem auto;
    padding: 0 1rem;
    color: var(--quiet);
  }
  .beside {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .beside.editing {
    grid-template-columns: minmax(22rem, 2fr) minmax(0, 3fr);
  }
  wk-text {
    position: sticky;
    top: 0;
    height: 100dvh;
    /* What is offered at the cursor reaches over the page and its strip of inputs. */
    z-index: 6;
    border-right: 1px solid var(--rule);
  }
  @media screen and (max-width: 900px) {
    .beside.editing {
      grid-template-columns: minmax(0, 1fr);
    }
    /* The text stands in place of the page; where it begins and ends the element says. */
    wk-text {
      position: fixed;
      inset: 0 0 auto;
      border-right: 0;
    }
    .editing wk-page {
      display: none;
    }
  }
  @media print {
    .beside.editing {
      display: block;
    }
  }
`;

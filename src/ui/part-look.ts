// How a part looks: a heading ruled like a title block, rows below it without any rules.
import { css } from 'lit';

export const partLook = css`
  :host {
    display: block;
    padding-bottom: 1.75rem;
  }
  header {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    column-gap: 0.9rem;
    align-items: baseline;
    padding: 0 0.5rem 0.3rem;
    border-bottom: 1.5px solid var(--graphite);
    margin-bottom: 0.5rem;
  }
  header {
    position: relative;
  }
  .grip {
    left: -0.75rem;
    top: 0.1rem;
    height: 1.3rem;
  }
  h2 {
    margin: 0;
    font-size: 1.2rem;
    line-height: 1.2;
    font-weight: 700;
    letter-spacing: -0.005em;
  }
  h2 button {
    min-height: 24px;
    min-width: 24px;
  }
  .title {
    font-size: 1.2rem;
    font-weight: 700;
  }
  .shares {
    font-size: var(--small);
    color: var(--pencil);
  }
  .sum {
    grid-column: 3;
    font-size: 1.2rem;
    font-weight: 700;
    text-align: right;
  }
  .so-far {
    display: block;
    font-size: var(--tiny);
    font-weight: 400;
    color: var(--pencil);
  }
  .deeper {
    padding: 0 0.5rem;
  }
  h3 {
    margin: 0.8rem 0 0.15rem calc(var(--value) + 0.9rem);
    font-size: var(--small);
    font-weight: 500;
    color: var(--pencil);
  }
  :host([long]) .stretch {
    content-visibility: auto;
    contain-intrinsic-size: auto 1800px;
  }
  @media print {
    :host([long]) .stretch {
      content-visibility: visible;
    }
  }
  .new {
    margin: 0.2rem 0.5rem 0.4rem calc(var(--value) + 1.4rem);
    max-width: 22rem;
  }
  .new.table {
    max-width: 44rem;
  }
  .add {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 1rem;
    margin: 0.25rem 0 0 calc(var(--value) + 1.4rem);
    opacity: 0;
  }
  .whole {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0.3rem 0.8rem;
  }
  section:hover .add,
  section:focus-within .add {
    opacity: 1;
  }
  @media (hover: none) {
    .add {
      opacity: 1;
    }
  }
  @media screen and (max-width: 760px) {
    header {
      grid-template-columns: minmax(0, 1fr) auto;
      padding: 0 0.25rem 0.3rem;
    }
    .shares {
      grid-row: 2;
      grid-column: 1 / 3;
    }
    .sum {
      grid-column: 2;
    }
    h3 {
      margin-left: calc(5.75rem + 0.7rem);
    }
    .new,
    .add {
      margin-left: calc(5.75rem + 0.95rem);
    }
  }
  @media print {
    .add {
      display: none;
    }
    header {
      break-after: avoid;
    }
    h3 {
      break-after: avoid;
    }
  }
`;

// How a table looks under its row: ruled in hairlines, its header and row numbers kept in sight while it scrolls.
import { css } from 'lit';

export const tableLook = css`
  :host {
    display: block;
    margin: 0.1rem 0.5rem 0.6rem calc(var(--value) + 1.4rem);
  }
  .scroll {
    overflow: auto;
    /* Rows that come and go above those in sight leave these where they are. */
    overflow-anchor: none;
    max-height: min(75vh, 44rem);
    max-width: 100%;
    width: fit-content;
    border-bottom: 1px solid var(--rule);
    scroll-padding: 3.5rem 0.5rem 0.5rem 3rem;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
    font-variant-numeric: tabular-nums lining-nums;
  }
  th,
  td {
    padding: 0.2rem 0.75rem;
    vertical-align: baseline;
    text-align: right;
    border-bottom: 1px solid var(--hair);
    font-weight: 400;
  }
  .texts {
    text-align: left;
  }
  .room td {
    padding: 0;
    border: 0;
    cursor: auto;
  }
  .room td:hover {
    background: none;
  }
  thead th {
    position: sticky;
    top: 0;
    z-index: 2;
    background: var(--paper);
    border-bottom: 1px solid var(--graphite);
    font-weight: 600;
    vertical-align: bottom;
  }
  .formula {
    /* In a wide table a long formula would else be squeezed to a word a line, and the head be taller than the rows. */
    width: max-content;
    max-width: 15ch;
    margin-left: auto;
    font-size: var(--tiny);
    font-weight: 400;
    line-height: 1.25;
    color: var(--pencil);
    /* The first lines say what it is about; the head that has the keyboard shows the whole. */
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 4;
    overflow: hidden;
  }
  th:focus .formula,
  th:focus-within .formula {
    -webkit-line-clamp: none;
  }
  .texts .formula {
    margin-left: 0;
  }
  .number {
    position: sticky;
    left: 0;
    z-index: 1;
    background: var(--paper);
    color: var(--pencil);
    font-size: var(--tiny);
    padding: 0.2rem 0.6rem 0.2rem 0.25rem;
  }
  thead .number {
    z-index: 3;
  }
  tr.at .number {
    color: var(--graphite);
    font-weight: 600;
  }
  td {
    min-width: 4.5rem;
    height: 1.75rem;
    cursor: text;
  }
  td.figures {
    white-space: nowrap;
  }
  @media (hover: hover) {
    td:hover {
      background: var(--wash);
    }
  }
  td:focus-visible,
  th:focus-visible {
    outline-offset: -2px;
  }
  .worked {
    font-weight: 600;
  }
  .open {
    display: inline-block;
    min-width: 3ch;
    text-decoration: underline dashed 1.5px;
    text-underline-offset: 0.25em;
  }
  .waits {
    color: var(--pencil);
    font-style: italic;
  }
  .set-here {
    font-weight: 600;
    text-decoration: underline double 1.5px var(--keel);
    text-underline-offset: 0.22em;
  }
  .of-column,
  .why {
    display: block;
    font-size: var(--tiny);
    line-height: 1.3;
    font-weight: 400;
    color: var(--pencil);
  }
  .of-column {
    margin-top: 0.25rem;
    white-space: nowrap;
  }
  .why {
    width: max-content;
    max-width: 28ch;
    margin: 0.2rem 0 0 auto;
    text-align: left;
    white-space: normal;
    color: var(--keel);
  }
  .texts .why {
    margin-left: 0;
  }
  td.writing {
    text-align: left;
    padding: 0.1rem 0.4rem;
    cursor: auto;
  }
  @media (pointer: coarse) {
    td {
      height: 2.75rem;
    }
  }
  .under {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 1rem;
    align-items: baseline;
  }
  .finding {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.75rem;
    align-items: baseline;
    margin-top: 0.25rem;
    font-size: var(--small);
  }
  .finding label {
    display: flex;
    gap: 0.5rem;
    align-items: baseline;
  }
  .finding input {
    width: 12rem;
    padding: 0.1rem 0.35rem;
    border: 1px solid var(--rule);
    border-radius: 2px;
    background: var(--lifted);
  }
  @media (pointer: coarse) {
    .finding input {
      font-size: 1rem;
      min-height: 2.5rem;
    }
  }
  .refused {
    margin: 0.4rem 0;
    padding: 0 0 0 0.6rem;
    border-left: 2px solid var(--keel);
    max-width: 62ch;
    font-size: var(--small);
  }
  .refused p {
    margin: 0;
    font-weight: 600;
  }
  .refused ul {
    margin: 0;
    padding-left: 1.1rem;
    max-height: 14rem;
    overflow: auto;
  }
  @media screen and (max-width: 760px) {
    :host {
      margin: 0.1rem 0 0.6rem;
    }
    th,
    td {
      padding-inline: 0.55rem;
    }
  }
  @media print {
    .scroll {
      max-height: none;
      overflow: visible;
    }
    thead th,
    .number {
      position: static;
    }
    .formula {
      -webkit-line-clamp: none;
    }
    .under,
    .finding {
      display: none;
    }
  }
`;

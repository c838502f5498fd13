// How the estimate stands against what happened: a warning, bars, and money in columns that line up.
import { css } from 'lit';

export const recordAgainstLook = css`
  .warned,
  .calm {
    padding-left: 0.8rem;
    border-left: 3px solid var(--rule);
    margin-bottom: 1rem;
  }
  .warned {
    border-left-color: var(--keel);
  }
  .warned p:last-child,
  .calm p:last-child {
    margin: 0;
  }
  .bars {
    margin: 0 0 1.1rem;
  }
  .bar {
    display: grid;
    grid-template-columns: 10rem 1fr;
    gap: 0.8rem;
    align-items: center;
    padding: 0.2rem 0;
    border-bottom: 1px solid var(--hair);
    break-inside: avoid;
  }
  .strips {
    width: 100%;
    height: 27px;
    overflow: visible;
    color: var(--graphite);
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1.2rem;
    margin-bottom: 0.3rem;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .legend li {
    display: flex;
    align-items: center;
    gap: 0.35rem;
  }
  .swatch {
    width: 1.2rem;
    height: 0.7rem;
    color: var(--graphite);
  }
  .estimate {
    fill: none;
    stroke: var(--pencil);
  }
  .actual {
    fill: var(--graphite);
  }
  .to-go {
    stroke: var(--graphite);
    stroke-width: 0.8;
  }
  .over {
    fill: var(--keel);
  }
  .mark {
    stroke: var(--pencil);
    stroke-dasharray: 2 2;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    margin-bottom: 0.8rem;
  }
  th,
  td {
    padding: 0.2rem 0.5rem;
    text-align: right;
    font-weight: 400;
    vertical-align: baseline;
    white-space: nowrap;
  }
  th:first-child {
    text-align: left;
    padding-left: 0;
    white-space: normal;
  }
  thead th {
    font-size: var(--tiny);
    color: var(--pencil);
    border-bottom: 1.5px solid var(--graphite);
  }
  .part > * {
    padding-top: 0.55rem;
    font-weight: 600;
    border-top: 1px solid var(--rule);
  }
  tr:not(.part) > th {
    padding-left: 1rem;
    color: var(--pencil);
  }
  tr:not(.part) .where {
    display: inline-block;
    margin-left: 0.7rem;
  }
  .all .part > * {
    border-top: 1.5px solid var(--graphite);
  }
  .done {
    width: 4.2rem;
    min-height: 1.6rem;
    text-align: right;
  }
  .learned strong {
    font-size: 1.15rem;
  }
  @media screen and (max-width: 760px) {
    .bar {
      grid-template-columns: 1fr;
      gap: 0.1rem;
    }
    /* A row of the table becomes a small list of its own. */
    table,
    tbody {
      display: block;
    }
    thead {
      display: none;
    }
    tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 0 1rem;
      padding: 0.3rem 0 0.4rem;
    }
    tr:not(.part) {
      border-top: 1px solid var(--hair);
    }
    tr > th:first-child {
      grid-column: 1 / -1;
    }
    td {
      display: flex;
      justify-content: space-between;
      align-items: baseline;
      padding: 0.05rem 0;
    }
    td::before {
      content: attr(data-label);
      font-size: var(--tiny);
      font-weight: 400;
      color: var(--pencil);
    }
    td:empty {
      display: none;
    }
    .part > td {
      padding-top: 0.05rem;
      border: 0;
    }
  }
  @media print {
    .done {
      border: 0;
      background: none;
    }
    tbody {
      break-inside: avoid;
    }
  }
`;

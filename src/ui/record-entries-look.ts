// How what happened on a job looks: entries in columns that line up, and what was not taken of a sheet.
import { css } from 'lit';

export const recordEntriesLook = css`
  .entries > li {
    padding: 0.4rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .entry {
    display: grid;
    grid-template-columns: 6.4rem 1fr auto 7rem auto;
    gap: 0 1rem;
    align-items: baseline;
  }
  .entry strong {
    text-align: right;
  }
  .time,
  time {
    color: var(--pencil);
    white-space: nowrap;
  }
  .what {
    overflow-wrap: anywhere;
  }
  .out {
    color: var(--pencil);
  }
  .note,
  details {
    margin: 0.15rem 0 0 7.4rem;
    font-size: var(--small);
    color: var(--pencil);
    overflow-wrap: anywhere;
  }
  summary {
    cursor: pointer;
    width: max-content;
    max-width: 100%;
  }
  .receipt img {
    display: block;
    max-width: min(100%, 26rem);
    max-height: 30rem;
    margin-top: 0.3rem;
    border: 1px solid var(--rule);
  }
  .not-taken li {
    padding: 0.25rem 0;
    border-bottom: 1px solid var(--hair);
    overflow-wrap: anywhere;
  }
  @media screen and (max-width: 760px) {
    .entry {
      grid-template-columns: 1fr auto;
    }
    .entry time {
      grid-area: 1 / 1;
    }
    .entry strong {
      grid-area: 1 / 2;
    }
    .entry .what {
      grid-area: 2 / 1 / auto / 3;
    }
    .entry .time {
      grid-area: 3 / 1;
    }
    .entry button {
      grid-area: 3 / 2;
      justify-self: end;
    }
    .note,
    details {
      margin-left: 0;
    }
  }
  @media print {
    .new,
    .entries button,
    .entries record-line {
      display: none;
    }
    .entries > li {
      break-inside: avoid;
    }
  }
`;

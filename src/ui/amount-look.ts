// How a cell's value, its name and the lines under it look, in the notebook and in the guide.
import { css } from 'lit';

export const amountLook = css`
  .value {
    text-align: right;
  }
  .amount {
    display: inline-grid;
    font-weight: 650;
    text-align: right;
    max-width: 100%;
    text-wrap: balance;
  }
  .amount.given {
    text-decoration: underline 1.25px;
    text-underline-offset: 0.27em;
  }
  .amount.fails {
    color: var(--keel);
  }
  .amount.last {
    color: var(--pencil);
    font-weight: 400;
    font-style: italic;
  }
  .amount.by-hand {
    text-decoration: underline double 1.5px var(--keel);
    text-underline-offset: 0.22em;
  }
  .amount,
  .name {
    min-height: 24px;
    min-width: 24px;
  }
  .name {
    font-weight: 600;
    text-align: left;
    justify-self: start;
  }
  .note {
    font-size: var(--small);
    color: var(--pencil);
  }
  .note b {
    font-weight: 600;
    color: var(--graphite);
  }
  .note.fault {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.6rem;
    align-items: baseline;
  }
  .note.fault b {
    color: var(--keel);
  }
`;

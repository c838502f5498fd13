// How the stair of a difference looks: a line of words, a lane with its step, the money; on a phone the words above.
import { css } from 'lit';

export const stairLook = css`
  .kinds {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1.4rem;
    font-size: var(--small);
    margin: 0.3rem 0 0.6rem;
  }
  .swatch {
    width: 1.2rem;
    height: 0.85rem;
    vertical-align: -0.08rem;
    stroke: var(--graphite);
    color: var(--graphite);
  }
  .stair {
    margin: 0.4rem 0 1rem;
    padding: 0.3rem 0;
    border-top: 1px solid var(--rule);
    border-bottom: 1px solid var(--rule);
  }
  .hatches {
    position: absolute;
  }
  .step {
    display: grid;
    grid-template-columns: minmax(6rem, 15rem) minmax(0, 1fr) 7.5rem;
    gap: 0 0.8rem;
    align-items: center;
    font-size: var(--small);
    break-inside: avoid;
  }
  .step .label {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .post {
    font-weight: 650;
  }
  .lane {
    width: 100%;
    height: 1.75rem;
    overflow: visible;
    color: var(--graphite);
  }
  .lane line {
    stroke: var(--graphite);
    stroke-width: 2.5;
  }
  .lane .drop {
    stroke-width: 1;
    stroke: var(--pencil);
  }
  .ground {
    fill: var(--paper);
  }
  .tread {
    stroke: var(--graphite);
    stroke-width: 1;
  }
  .print-only {
    display: none;
  }
  @media (max-width: 600px) {
    .step {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .step .label {
      grid-row: 1;
      grid-column: 1;
    }
    .step .amount {
      grid-row: 1;
      grid-column: 2;
    }
    .step .lane {
      grid-column: 1 / -1;
      height: 1.4rem;
    }
  }
  @media print {
    .print-only {
      display: block;
    }
  }
`;

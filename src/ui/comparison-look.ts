// How two versions side by side look: what changed in rows with what was and what is.
import { css } from 'lit';

export const comparisonLook = css`
  .change {
    display: grid;
    grid-template-columns: 1rem minmax(0, 1fr) auto;
    gap: 0 0.6rem;
    padding: 0.3rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .sign {
    font-weight: 700;
  }
  .values {
    text-align: right;
  }
  .values .was {
    color: var(--pencil);
  }
  .said {
    overflow-wrap: anywhere;
  }
  .rows {
    font-size: var(--small);
    padding-left: 0.8rem;
    border-left: 2px solid var(--rule);
    margin: 0.2rem 0;
  }
  .part h4 {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.7rem;
    align-items: baseline;
    font-size: 0.9375rem;
    border-bottom: 1px solid var(--graphite);
  }
  .part h4 .tell {
    font-weight: 400;
  }
  summary {
    cursor: pointer;
    font-size: var(--small);
    color: var(--pencil);
    padding: 0.3rem 0;
    min-height: 24px;
  }
  .by {
    font-weight: 650;
  }
  .fields {
    margin-bottom: 0.8rem;
  }
  @media (max-width: 600px) {
    .change {
      grid-template-columns: 0.8rem minmax(0, 1fr);
    }
    .change .values {
      grid-column: 2;
      text-align: left;
    }
  }
  @media print {
    details:not([open]) {
      display: none;
    }
  }
`;

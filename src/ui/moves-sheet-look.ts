// How the sheet "What moves it" looks around what stands on it: the result it is about, the caution at its foot.
import { css } from 'lit';

export const movesSheetLook = css`
  .result {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.3rem 0.8rem;
    margin-bottom: 0.8rem;
  }
  .result select {
    min-height: 2rem;
    padding: 0.1rem 0.3rem;
    max-width: min(24rem, 100%);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
    font-weight: 600;
  }
  .caution {
    margin: 1.4rem 0 0;
    padding-left: 0.8rem;
    border-left: 3px solid var(--rule);
    max-width: 72ch;
    font-size: var(--small);
    color: var(--pencil);
  }
  @media (pointer: coarse) {
    .result select {
      min-height: 2.75rem;
    }
  }
  @media print {
    .result select {
      appearance: none;
      border: 0;
      background: none;
    }
  }
`;

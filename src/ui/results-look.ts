// How the list of what came of being asked looks.
import { css } from 'lit';

export const resultsLook = css`
  :host {
    display: block;
    font-size: 1rem;
  }
  p {
    margin: 0 0 0.8rem;
  }
  ol {
    list-style: none;
    margin: 0 0 1rem;
    padding: 0;
  }
  li {
    display: grid;
    gap: 0.1rem;
    padding: 0.5rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .acts {
    display: flex;
    gap: 0.5rem;
  }
`;

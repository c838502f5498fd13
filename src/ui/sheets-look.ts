// How lists and questions on a sheet look.
import { css } from 'lit';

export const sheetsLook = css`
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: flex;
    gap: 0.75rem;
    align-items: baseline;
    justify-content: space-between;
    padding: 0.45rem 0;
    border-bottom: 1px solid var(--hair);
  }
  li > button:first-child {
    flex: 1;
    text-align: left;
  }
  li > button:first-child:hover {
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  p {
    margin: 0 0 0.8rem;
  }
  dl {
    display: grid;
    grid-template-columns: max-content 1fr;
    gap: 0.35rem 1.2rem;
    margin: 0;
  }
  dt {
    font-weight: 600;
  }
  dd {
    margin: 0;
  }
  .acts {
    display: flex;
    gap: 0.5rem;
    margin-top: 1rem;
    flex-wrap: wrap;
  }
  .acts.first {
    margin: 0 0 1rem;
  }
  .then {
    margin: 1rem 0 0.2rem;
  }
  .where {
    display: block;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  @media (max-width: 480px) {
    dl {
      grid-template-columns: 1fr;
      gap: 0;
    }
    dd {
      margin-bottom: 0.6rem;
    }
  }
`;

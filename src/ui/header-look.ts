// How the line above the page looks: on one line where there is room, folded away under More where there is not.
import { css } from 'lit';

export const headerLook = css`
  :host {
    display: flex;
    align-items: center;
    gap: 0.4rem 1.1rem;
    min-height: 3.1rem;
    padding: 0.35rem 1.5rem;
    border-bottom: 1px solid var(--rule);
    background: var(--bench);
  }
  .mark {
    font-size: 1.05rem;
    font-weight: 750;
    letter-spacing: -0.01em;
    margin: 0;
  }
  .title {
    min-width: 6rem;
    max-width: 22rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  h1 {
    font: inherit;
    margin: 0;
  }
  .title button:hover {
    text-decoration: underline;
    text-decoration-color: var(--faint);
    text-underline-offset: 0.2em;
  }
  nav {
    display: flex;
    flex: 1;
    gap: 0.2rem 1rem;
    align-items: center;
    justify-content: flex-end;
    min-width: 0;
  }
  nav button {
    white-space: nowrap;
    font-size: var(--small);
    min-height: 1.75rem;
    color: var(--graphite);
  }
  nav button:disabled {
    color: var(--faint);
  }
  nav button:hover:not(:disabled) {
    text-decoration: underline;
    text-underline-offset: 0.25em;
  }
  .step {
    max-width: 15rem;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .say {
    color: var(--pencil);
  }
  .look {
    font-weight: 650;
  }
  .look .count {
    display: inline-block;
    min-width: 1.35em;
    margin-left: 0.3em;
    padding: 0 0.3em;
    text-align: center;
    color: var(--keel);
    border: 1.5px solid var(--keel);
    border-radius: 48% 52% 50% 50% / 55% 52% 48% 45%;
  }
  .kept {
    white-space: nowrap;
    font-size: var(--small);
    color: var(--pencil);
  }
  .kept.trouble {
    color: var(--keel);
    font-weight: 600;
  }
  .more {
    display: none;
  }
  .between {
    width: 1px;
    height: 1.1rem;
    background: var(--rule);
    flex: none;
  }
  @media (max-width: 1120px) {
    .say {
      display: none;
    }
  }
  @media (max-width: 900px) {
    :host {
      flex-wrap: wrap;
      padding: 0.35rem 0.75rem;
      gap: 0.1rem 0.8rem;
    }
    .title {
      flex: 1;
    }
    .more {
      display: block;
      font-size: var(--small);
    }
    nav {
      display: none;
      flex: 1 1 100%;
      flex-wrap: wrap;
      justify-content: flex-start;
    }
    :host([spread]) nav {
      display: flex;
    }
    nav button {
      min-height: 2.25rem;
    }
    .between {
      display: none;
    }
  }
  @media (max-width: 480px) {
    .mark {
      display: none;
    }
  }
  @media print {
    :host {
      background: none;
      padding: 0 0 0.5rem;
      border: 0;
    }
    nav,
    .mark,
    .look,
    .more,
    .kept {
      display: none;
    }
    .title {
      font-size: 1.4rem;
      font-weight: 700;
      max-width: none;
    }
  }
`;

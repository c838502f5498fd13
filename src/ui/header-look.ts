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
    margin-right: 1.5rem;
    /* A long title gives way before anything else does. */
    flex: 0 1000 auto;
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
  h1 button {
    min-height: 24px;
    min-width: 24px;
    max-width: 100%;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .title button:hover {
    text-decoration: underline;
    text-decoration-color: var(--faint);
    text-underline-offset: 0.2em;
  }
  nav {
    display: flex;
    flex: 1 1 auto;
    /* Where there is too little room, on two lines rather than over the title. */
    flex-wrap: wrap;
    gap: 0 1rem;
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
  .say {
    flex: 1 1 0;
    min-width: 0;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    font-size: var(--small);
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
  .kept .beside {
    display: block;
    font-size: var(--tiny);
  }
  .kept .due {
    color: var(--graphite);
    font-weight: 600;
  }
  .kept.trouble {
    white-space: normal;
    color: var(--keel);
    font-weight: 600;
  }
  .more,
  .quick {
    display: none;
  }
  .between {
    width: 1px;
    height: 1.1rem;
    background: var(--rule);
    flex: none;
  }
  @media screen and (max-width: 1820px) {
    :host {
      column-gap: 0.8rem;
    }
    .title {
      margin-right: 0.4rem;
    }
    nav {
      column-gap: 0.6rem;
    }
    .say {
      display: none;
    }
  }
  @media screen and (max-width: 1360px) {
    :host {
      flex-wrap: wrap;
      padding: 0.35rem 0.75rem;
      gap: 0.1rem 0.8rem;
    }
    .title {
      flex: 1;
      max-width: none;
    }
    .more,
    .quick {
      display: block;
      font-size: var(--small);
    }
    .quick:disabled {
      text-decoration: none;
    }
    nav .undo {
      display: none;
    }
    .more,
    .quick,
    .look {
      min-height: 2.5rem;
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
  @media screen and (max-width: 480px) {
    .mark {
      display: none;
    }
    :host {
      display: grid;
      grid-template:
        'title undo look more' auto 'kept undo look more' auto 'nav nav nav nav' auto /
        minmax(0, 1fr) auto auto auto;
      gap: 0 1rem;
      padding: 0.3rem 0.75rem;
    }
    .title {
      grid-area: title;
      min-width: 0;
    }
    .kept .beside {
      display: inline;
    }
    .kept {
      grid-area: kept;
      font-size: var(--tiny);
      overflow: hidden;
      text-overflow: ellipsis;
    }
    .quick {
      grid-area: undo;
    }
    .look {
      grid-area: look;
    }
    .more {
      grid-area: more;
    }
    nav {
      grid-area: nav;
    }
    nav button {
      min-height: 2.75rem;
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
    .quick,
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

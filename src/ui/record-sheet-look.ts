// How the sheet of the job record looks: a page laid over the page, with its views named at the top.
import { css } from 'lit';

export const recordSheetLook = css`
  dialog {
    width: min(74rem, calc(100vw - 1.5rem));
    height: calc(100dvh - 2rem);
    max-height: none;
    padding: 0;
    border: 1px solid var(--graphite);
    border-radius: 3px;
    background: var(--paper);
    color: var(--graphite);
    box-shadow: 0 14px 44px var(--shade);
  }
  dialog::backdrop {
    background: var(--shade);
  }
  .top {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.3rem 1.2rem;
    padding: 0.8rem 1.2rem 0;
    background: var(--paper);
    border-bottom: 1.5px solid var(--graphite);
  }
  h2 {
    margin: 0;
    font-size: 1.1rem;
  }
  .of {
    margin-left: 0.7rem;
    font-weight: 400;
    font-size: var(--small);
    color: var(--pencil);
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.1rem;
    flex: 1;
  }
  nav button {
    min-height: 2rem;
    padding: 0.2rem 0.1rem 0.35rem;
    border-bottom: 3px solid transparent;
    color: var(--pencil);
  }
  nav button[aria-current='page'] {
    color: var(--graphite);
    font-weight: 600;
    border-bottom-color: var(--graphite);
  }
  .inside {
    padding: 0.9rem 1.2rem 1.6rem;
  }
  .trouble {
    color: var(--keel);
  }
  @media screen and (max-width: 760px) {
    dialog {
      width: 100vw;
      max-width: 100vw;
      height: 100dvh;
      margin: 0;
      border: 0;
    }
    .top {
      padding: 0.6rem 0.75rem 0;
    }
    .of {
      display: none;
    }
    h2 {
      flex: 1;
    }
    nav {
      order: 9;
      flex: 1 0 100%;
    }
    .inside {
      padding: 0.75rem;
    }
  }
  @media (pointer: coarse) {
    nav button {
      min-height: 2.75rem;
    }
  }
  @media print {
    dialog {
      position: static;
      width: auto;
      max-width: none;
      height: auto;
      margin: 0;
      border: 0;
      box-shadow: none;
      overflow: visible;
    }
    .top {
      position: static;
      padding: 0 0 0.4rem;
    }
    .top nav,
    .top button {
      display: none;
    }
    .inside {
      padding: 0.6rem 0 0;
    }
  }
`;

// How alternatives look: the notebook's own column inked, the others pencilled beside it; the best framed, the worst
// hatched out.
import { css } from 'lit';

export const alternativesLook = css`
  .top {
    gap: 0.2rem 1rem;
  }
  h2 {
    white-space: nowrap;
  }
  .inside {
    overflow-y: auto;
    overflow-x: hidden;
    padding: 0.8rem 1.1rem 2rem;
    scrollbar-width: thin;
  }
  .across {
    overflow-x: auto;
    margin: 0 -0.3rem;
    padding: 0 0.3rem 0.5rem;
    scrollbar-width: thin;
  }
  table {
    width: 100%;
    border-collapse: separate;
    border-spacing: 0;
  }
  th,
  td {
    padding: 0.28rem 0.4rem;
    vertical-align: top;
    text-align: right;
    font-weight: 400;
    min-width: 5.9rem;
  }
  thead td,
  tbody th {
    position: sticky;
    left: 0;
    z-index: 1;
    min-width: 7rem;
    max-width: 11rem;
    padding-left: 0;
    text-align: left;
    background: var(--bench);
    overflow-wrap: anywhere;
  }
  thead th {
    font-weight: 650;
    vertical-align: bottom;
  }
  .is {
    border-left: 1.5px solid var(--graphite);
    border-right: 1.5px solid var(--graphite);
  }
  thead .is {
    border-top: 1.5px solid var(--graphite);
    white-space: nowrap;
  }
  .results tr:last-child .is {
    border-bottom: 1.5px solid var(--graphite);
  }
  /* Pencilled: broken lines, as what is not decided yet is drawn. */
  .way {
    border-right: 1px dashed var(--faint);
  }
  thead .way {
    border-top: 1px dashed var(--faint);
  }
  .ends .way {
    border-bottom: 1px dashed var(--faint);
  }
  .results tr:first-child > * {
    border-top: 1px solid var(--graphite);
  }
  .results tr + tr > * {
    border-top: 1px solid var(--hair);
  }
  tbody th .tie {
    display: block;
  }
  tbody th .go {
    display: block;
    margin-top: 2px;
    min-width: 24px;
    font-size: var(--tiny);
  }
  .tie {
    text-align: left;
    min-height: 24px;
  }
  .printed {
    display: none;
  }
  input {
    width: 100%;
    min-width: 4rem;
    min-height: 1.75rem;
    padding: 0.05rem 0.3rem;
    border: 0;
    border-bottom: 1px dashed var(--pencil);
    border-radius: 0;
    background: var(--lifted);
    text-align: right;
    font-size: var(--small);
  }
  input::placeholder {
    color: var(--pencil);
    opacity: 1;
    font-style: italic;
    font-size: var(--small);
  }
  input[aria-invalid='true'] {
    border-bottom: 2px solid var(--keel);
  }
  .called {
    font-size: 0.9375rem;
    font-weight: 650;
    background: transparent;
    border-bottom-color: transparent;
  }
  .called:hover,
  .called:focus {
    border-bottom-color: var(--pencil);
  }
  .why {
    display: grid;
    gap: 0.25rem;
    justify-items: end;
    max-width: 12rem;
    margin: 0.25rem 0 0 auto;
    font-size: var(--tiny);
    text-align: left;
  }
  .why span {
    justify-self: stretch;
  }
  td b {
    display: block;
    font-weight: 600;
    text-wrap: balance;
  }
  .by {
    display: block;
    font-size: var(--small);
    color: var(--pencil);
  }
  .by:is(.up, .down, .otherwise) {
    color: var(--graphite);
  }
  .mark {
    display: inline-block;
    font-size: var(--tiny);
    color: var(--graphite);
  }
  .best .mark {
    padding: 0 0.35em;
    border: 1.5px solid var(--graphite);
    font-weight: 650;
  }
  .worst .mark::before {
    content: '';
    display: inline-block;
    width: 0.8em;
    height: 0.8em;
    margin-right: 0.35em;
    vertical-align: -0.08em;
    background: repeating-linear-gradient(-45deg, transparent 0 3px, var(--graphite) 3px 4px);
    border: 1px solid var(--graphite);
  }
  .fails {
    font-size: var(--tiny);
    text-align: left;
    max-width: 12rem;
    margin-left: auto;
  }
  .fails b {
    display: inline;
    white-space: normal;
  }
  .fails.fresh b {
    color: var(--keel);
  }
  .ends td {
    padding-top: 0.6rem;
  }
  .ends td:first-child {
    text-align: left;
    padding-left: 0;
  }
  .ends .act[aria-disabled='true'] {
    color: var(--pencil);
    border-color: var(--rule);
    border-style: dashed;
    font-weight: 400;
    cursor: default;
  }
  .ends .act {
    white-space: nowrap;
  }
  .ends .plain {
    display: block;
    margin: 0.2rem 0 0 auto;
    white-space: nowrap;
  }
  .first {
    max-width: 60ch;
  }
  @media screen and (max-width: 480px) {
    .top {
      flex-wrap: wrap;
      padding: 0.6rem 0.75rem 0.4rem;
    }
    .top .small {
      order: 3;
      flex: 1 0 100%;
      margin: 0;
    }
    .top > :last-child {
      margin-left: auto;
    }
    .inside {
      padding: 0.6rem 0.75rem 2rem;
    }
    tbody th,
    thead td {
      min-width: 5.6rem;
      max-width: 6.4rem;
    }
  }
  @media print {
    dialog,
    dialog.over {
      position: static;
      width: auto;
      height: auto;
      border: 0;
      overflow: visible;
    }
    .inside,
    .across {
      overflow: visible;
      padding-left: 0;
      padding-right: 0;
    }
    .top {
      padding-left: 0;
    }
    .top button,
    tbody th .go,
    .ends,
    input,
    button.act {
      display: none;
    }
    .screen {
      display: none;
    }
    .printed {
      display: block;
    }
    .across {
      margin: 0;
    }
    tbody th,
    thead td {
      position: static;
    }
  }
`;

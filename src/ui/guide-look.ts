// How the guide looks: a strip beside the notebook, or a page over it; examples with the value first, as in the notebook.
import { css } from 'lit';

export const guideLook = css`
  :host {
    --value: 7rem;
  }
  h2:focus-visible,
  h3:focus-visible {
    outline-offset: 4px;
  }
  .scroll {
    overflow: auto;
    overscroll-behavior: contain;
    padding: 0.9rem 1.1rem 40vh;
    scrollbar-width: thin;
    scrollbar-color: var(--rule) transparent;
  }
  .over .scroll > * {
    max-width: 44rem;
    margin-inline: auto;
  }
  .title {
    margin: 0 0 0.4rem;
    font-size: 1.25rem;
    font-weight: 700;
  }
  ol {
    margin: 0.8rem 0 0;
    padding: 0 0 0 1.4rem;
    columns: 2;
    column-gap: 1.5rem;
    font-size: var(--small);
  }
  ol .plain {
    text-align: left;
  }
  section {
    scroll-margin-top: 0.5rem;
  }
  h3 {
    margin: 1.9rem 0 0.6rem;
    padding-bottom: 0.2rem;
    font-size: 1.1rem;
    border-bottom: 1px solid var(--graphite);
    scroll-margin-top: 0.5rem;
  }
  h4 {
    margin: 1.5rem 0 0.4rem;
    font-size: 0.95rem;
  }
  p {
    margin: 0.6rem 0;
  }
  ul {
    margin: 0.6rem 0;
    padding-left: 1.2rem;
  }
  li {
    margin: 0.25rem 0;
  }
  strong {
    font-weight: 650;
  }
  code {
    font: inherit;
    padding: 0 0.15em;
    border-radius: 2px;
    background: var(--wash);
    -webkit-box-decoration-break: clone;
    box-decoration-break: clone;
  }
  @media (max-width: 480px) {
    .top {
      padding: 0.6rem 0.75rem 0.4rem;
    }
    .top .small {
      display: none;
    }
    .scroll {
      padding: 0.7rem 0.75rem 40vh;
    }
    ol {
      columns: 1;
    }
    li .plain {
      min-height: 2.25rem;
    }
  }
  @media print {
    dialog,
    dialog.over {
      position: static;
      height: auto;
      width: auto;
      border: 0;
      overflow: visible;
    }
    dialog[open] {
      display: block;
    }
    .scroll {
      overflow: visible;
      padding: 0;
    }
    .top,
    nav {
      display: none;
    }
    h3,
    h4 {
      break-after: avoid;
    }
  }
`;

export const exampleLook = css`
  :host {
    display: block;
    padding: 0.15rem 0.25rem;
    border-left: 2px solid transparent;
    margin-left: -0.4rem;
    scroll-margin: 1rem;
  }
  :host([chosen]) {
    border-left-color: var(--graphite);
    background: var(--paper);
  }
  .row {
    display: grid;
    grid-template-columns: var(--value) minmax(0, 1fr);
    column-gap: 0.8rem;
    align-items: baseline;
  }
  .value {
    grid-row: 1 / 3;
  }
  .words {
    grid-column: 2;
    overflow-wrap: anywhere;
  }
  .writes {
    grid-column: 1 / 3;
    margin: 0.3rem 0 0 0.5rem;
  }
  story-table {
    margin: 0.2rem 0 0.4rem;
  }
  .below {
    margin-left: calc(var(--value) + 0.8rem);
  }
  .note {
    margin: 0.05rem 0;
  }
  .word {
    font-weight: 600;
    color: var(--graphite);
  }
  .note.caution.fails b {
    color: var(--keel);
  }
  code {
    font: inherit;
    color: var(--graphite);
  }
  em {
    font-style: italic;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin: 0.35rem 0 0.3rem;
  }
  @media (max-width: 480px) {
    :host {
      --value: 5.5rem;
    }
  }
  @media print {
    :host {
      break-inside: avoid;
      border: 0;
      background: none;
    }
    .acts,
    .note .plain {
      display: none;
    }
  }
`;

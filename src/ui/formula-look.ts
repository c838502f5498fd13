// How a formula looks while it is written: the input is transparent but for its caret, the mirror under it shows the words.
import { css } from 'lit';

export const formulaLook = css`
  :host {
    display: block;
    position: relative;
    z-index: 2;
  }
  .sheet {
    display: grid;
    gap: 0.3rem;
    margin: -0.2rem 0 0.3rem -0.5rem;
    padding: 0 0 0.5rem;
  }
  .field {
    position: relative;
    display: grid;
    background: var(--lifted);
    border: 1px solid var(--graphite);
    border-radius: 2px;
  }
  .field:focus-within {
    outline: 1.5px solid var(--graphite);
    outline-offset: 0;
  }
  .mirror,
  .line {
    grid-area: 1 / 1;
    font: inherit;
    font-size: 1rem;
    line-height: 1.5;
    padding: 0.2rem 0.5rem 0.3rem;
    margin: 0;
    border: 0;
    white-space: pre;
    letter-spacing: normal;
  }
  .mirror {
    overflow: hidden;
    pointer-events: none;
    min-height: 2.1rem;
  }
  .line {
    width: 100%;
    min-width: 0;
    background: transparent;
    color: transparent;
    caret-color: var(--graphite);
    outline: 0;
  }
  .line::selection {
    background: color-mix(in srgb, var(--graphite) 22%, transparent);
    color: transparent;
  }
  .mirror .name {
    box-shadow: inset 0 -1.5px var(--pencil);
  }
  .mirror .amount {
    box-shadow: inset 0 -1px var(--rule);
    font-weight: inherit;
  }
  .mirror .plain {
    all: unset;
  }
  .mirror .doubt {
    box-shadow: inset 0 -2px var(--keel);
    background: var(--keel-wash);
  }
  .list {
    position: fixed;
    inset: auto;
    margin: 0;
    padding: 0.25rem 0;
    width: max-content;
    max-width: min(30rem, calc(100vw - 8px));
    max-height: 18rem;
    overflow: auto;
    list-style: none;
    border: 1px solid var(--graphite);
    border-radius: 2px;
    background: var(--lifted);
    color: var(--graphite);
    box-shadow: 0 6px 18px var(--shade);
  }
  .list li {
    display: flex;
    justify-content: space-between;
    gap: 2rem;
    align-items: baseline;
    padding: 0.25rem 0.75rem;
    cursor: pointer;
  }
  .list li[aria-selected='true'] {
    background: var(--graphite);
    color: var(--paper);
  }
  .list li[aria-selected='true'] .small {
    color: inherit;
  }
  .list li.phrase {
    display: block;
  }
  .list li.phrase .small {
    display: block;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .slot {
    margin: 0;
    font-size: var(--small);
    color: var(--pencil);
    text-wrap: pretty;
  }
  .slot:empty {
    display: none;
  }
  .shape .here {
    color: var(--graphite);
    padding: 0 0.3em;
    border-bottom: 1.5px solid var(--graphite);
  }
  .shape b {
    font-weight: 600;
  }
  .needs {
    color: var(--graphite);
    margin: 0 0.35rem;
  }
  .said {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.75rem;
    align-items: baseline;
  }
  .read {
    color: var(--pencil);
    font-size: var(--small);
  }
  .read q {
    quotes: none;
    color: var(--graphite);
  }
  .result {
    font-weight: 650;
  }
  .problem {
    font-size: var(--small);
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.5rem;
    align-items: baseline;
    padding-left: 0.6rem;
    border-left: 2px solid var(--keel);
  }
  .problem b {
    color: var(--keel);
    font-weight: 600;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    align-items: center;
  }
  @media (forced-colors: active) {
    .mirror {
      visibility: hidden;
    }
    .line {
      color: FieldText;
    }
    .list li[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;

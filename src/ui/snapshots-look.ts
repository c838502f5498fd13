// How snapshots, comparisons and change orders look: money first, names beside it, what was done in pencil.
import { css } from 'lit';

export const snapshotsLook = css`
  :host {
    display: block;
  }
  h3 {
    margin: 1.6rem 0 0.4rem;
    font-size: 1rem;
  }
  h3:first-child {
    margin-top: 0.2rem;
  }
  h4 {
    margin: 1.1rem 0 0.2rem;
    font-size: var(--small);
  }
  h3:focus-visible {
    outline-offset: 4px;
  }
  p {
    margin: 0.2rem 0 0.5rem;
    max-width: 75ch;
  }
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin: 0.5rem 0;
    align-items: center;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.8rem;
    align-items: end;
  }
  label {
    display: grid;
    gap: 0.15rem;
    font-size: var(--tiny);
    color: var(--pencil);
    min-width: 0;
  }
  label.wide {
    flex: 1 1 14rem;
  }
  input,
  select,
  textarea {
    font-size: 0.9375rem;
    color: var(--graphite);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
    padding: 0.2rem 0.4rem;
    min-height: 1.9rem;
    max-width: 100%;
    min-width: 0;
  }
  .act[aria-pressed='true'] {
    background: var(--graphite);
    border-color: var(--graphite);
    color: var(--paper);
  }
  .sum,
  .amount {
    font-weight: 600;
    text-align: right;
    white-space: nowrap;
  }
  .mark {
    font-size: var(--tiny);
    color: var(--pencil);
    white-space: nowrap;
    letter-spacing: 0.03em;
  }
  .tell {
    font-size: var(--small);
    color: var(--pencil);
  }
  .trouble {
    color: var(--keel);
    font-weight: 600;
  }
  .more {
    color: var(--keel);
  }
  del {
    color: var(--pencil);
    text-decoration: line-through;
    text-decoration-thickness: 1.5px;
  }
  del + ins {
    margin-left: 0.2em;
  }
  ins {
    text-decoration: underline;
    text-decoration-thickness: 1.5px;
    text-underline-offset: 0.2em;
    font-weight: 600;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: var(--small);
  }
  caption {
    text-align: left;
    color: var(--pencil);
    font-size: var(--tiny);
    padding-bottom: 0.2rem;
  }
  th {
    text-align: left;
    font-weight: 400;
    color: var(--pencil);
    font-size: var(--tiny);
    vertical-align: bottom;
  }
  th,
  td {
    padding: 0.25rem 0.7rem 0.25rem 0;
    border-bottom: 1px solid var(--hair);
    vertical-align: baseline;
  }
  tbody th {
    font-size: var(--small);
    color: var(--graphite);
    font-weight: 600;
  }
  th:last-child,
  td:last-child {
    padding-right: 0;
  }
  .n {
    text-align: right;
    white-space: nowrap;
  }
  tfoot td,
  tfoot th {
    border-bottom: 0;
    border-top: 1.5px solid var(--graphite);
    font-weight: 650;
    color: var(--graphite);
    font-size: var(--small);
  }
  .sideways {
    overflow-x: auto;
  }
  @media (pointer: coarse) {
    input,
    select {
      min-height: 2.75rem;
    }
  }
  @media print {
    .acts,
    form,
    .fields,
    .screen {
      display: none !important;
    }
    .sideways {
      overflow: visible;
    }
    tr,
    li {
      break-inside: avoid;
    }
    h3,
    h4 {
      break-after: avoid;
    }
  }
`;

// How the client's sheet looks: a paper in the middle of an empty bench, one quiet line above it; printed, the paper alone.
import { css } from 'lit';

export const clientLook = css`
  dialog {
    width: 100vw;
    max-width: none;
    height: 100dvh;
    max-height: none;
    margin: 0;
    padding: 0;
    border: 0;
    background: var(--bench);
    color: var(--graphite);
  }
  dialog[open] {
    display: flex;
    flex-direction: column;
  }
  dialog::backdrop {
    background: var(--bench);
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.3rem 1.4rem;
    padding: 0.55rem 1.4rem;
    border-bottom: 1px solid var(--rule);
    font-size: var(--small);
    color: var(--pencil);
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1.1rem;
    margin: 0;
    padding: 0;
    border: 0;
  }
  fieldset label,
  .fields label {
    display: inline-flex;
    align-items: center;
    gap: 0.4rem;
    min-height: 1.75rem;
  }
  input[type='radio'] {
    width: 1.05rem;
    height: 1.05rem;
    margin: 0;
    accent-color: var(--graphite);
  }
  input:checked + span {
    color: var(--graphite);
    font-weight: 600;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 1.1rem;
  }
  .fields input {
    min-height: 1.75rem;
    width: 9.5rem;
    padding: 0 0.4rem;
    color: var(--graphite);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
  }
  .acts {
    display: flex;
    align-items: center;
    gap: 1.1rem;
    order: 1;
    margin-left: auto;
  }
  .more {
    display: none;
  }
  .left-off {
    order: 2;
    flex: 1 0 100%;
  }
  .left-off p {
    margin: 0;
  }
  .desk {
    flex: 1;
    min-height: 0;
    overflow: auto;
    padding: 1.8rem 1rem 3rem;
  }
  .paper,
  .not-yet {
    max-width: 46rem;
    margin: 0 auto;
    padding: 2.6rem 3rem 3rem;
    background: var(--paper);
    border: 1px solid var(--rule);
  }
  h1 {
    margin: 0 0 0.9rem;
    font-size: 1.7rem;
    line-height: 1.2;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }
  /* Given the keyboard when the sheet is laid open; there is nothing to press. */
  h1:focus,
  .not-yet:focus {
    outline: 0;
  }
  h2 {
    margin: 0 0 0.3rem;
    font-size: 0.95rem;
  }
  dl {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 2.2rem;
    margin: 0 0 1.6rem;
  }
  dt {
    font-size: var(--small);
    color: var(--pencil);
  }
  dd {
    margin: 0;
    overflow-wrap: anywhere;
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  th,
  td {
    padding: 0.42rem 0;
    text-align: left;
    vertical-align: baseline;
    font-weight: 400;
    border-bottom: 1px solid var(--hair);
  }
  td {
    padding-left: 1.4rem;
    text-align: right;
    white-space: nowrap;
  }
  tr {
    break-inside: avoid;
  }
  th {
    overflow-wrap: anywhere;
  }
  .work {
    display: block;
    max-width: 32rem;
    margin-top: 0.15rem;
    font-size: var(--small);
    color: var(--pencil);
  }
  .work span {
    display: block;
  }
  .work span::first-letter {
    text-transform: uppercase;
  }
  .price tfoot th,
  .price tfoot td {
    padding-top: 0.6rem;
    font-size: 1.25rem;
    font-weight: 700;
    border-top: 1.5px solid var(--graphite);
    border-bottom: 0;
  }
  .terms {
    columns: 2;
    column-gap: 2.5rem;
    margin-top: 1.8rem;
  }
  .terms section {
    margin-bottom: 1.2rem;
  }
  .terms h2 {
    break-after: avoid;
  }
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    break-inside: avoid;
    padding: 0.1rem 0;
  }
  li::first-letter {
    text-transform: uppercase;
  }
  .told {
    display: block;
    font-size: var(--small);
    color: var(--pencil);
  }
  .know {
    margin: 0.6rem 0 1.6rem;
    padding-left: 0.9rem;
    border-left: 3px double var(--graphite);
    break-inside: avoid;
  }
  .know p {
    max-width: 36rem;
    margin: 0 0 0.35rem;
  }
  .payments {
    break-inside: avoid;
  }
  .when {
    font-size: var(--small);
    color: var(--pencil);
  }
  .when::before {
    content: '– ';
  }
  .sign {
    display: grid;
    grid-template-columns: 2fr 1fr;
    gap: 2.6rem 2rem;
    margin-top: 3.6rem;
    break-inside: avoid;
  }
  .sign div {
    padding-top: 0.2rem;
    border-top: 1px solid var(--graphite);
    font-size: var(--small);
    color: var(--pencil);
  }
  @media screen and (max-width: 760px) {
    .bar {
      padding: 0.5rem 0.8rem;
    }
    .more {
      display: block;
      order: 1;
    }
    .acts {
      order: 1;
      margin-left: 0;
    }
    .fields:not([data-spread]) {
      display: none;
    }
    .fields {
      order: 2;
    }
    .fields input,
    fieldset label {
      min-height: 2.5rem;
    }
    .desk {
      padding: 0;
      background: var(--paper);
    }
    .paper,
    .not-yet {
      padding: 1.4rem 1rem 3rem;
      border: 0;
    }
    .terms {
      columns: 1;
    }
  }
  @media print {
    dialog {
      position: static;
      width: auto;
      height: auto;
      overflow: visible;
      background: none;
    }
    dialog[open] {
      display: block;
    }
    .bar {
      display: none;
    }
    .desk {
      overflow: visible;
      padding: 0;
    }
    .paper,
    .not-yet {
      max-width: none;
      padding: 0;
      border: 0;
      font-size: 10pt;
      line-height: 1.3;
    }
    h1 {
      font-size: 18pt;
    }
    dl {
      margin-bottom: 0.9rem;
    }
    th,
    td {
      padding: 0.16rem 0;
    }
    td {
      padding-left: 1.4rem;
    }
    .work {
      max-width: 38rem;
      margin-top: 0;
    }
    .price tfoot th,
    .price tfoot td {
      padding-top: 0.35rem;
    }
    .terms {
      columns: 3;
      margin-top: 0.8rem;
    }
    .terms section {
      margin-bottom: 0.7rem;
    }
    li {
      padding: 0;
    }
    .know {
      margin: 0.2rem 0 0.8rem;
    }
    .know p {
      max-width: none;
    }
    .sign {
      gap: 2.2rem 2rem;
      margin-top: 2.6rem;
    }
  }
  @media (forced-colors: active) {
    .paper {
      border-color: CanvasText;
    }
  }
`;

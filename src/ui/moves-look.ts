// How what stands on the sheet "What moves it" looks: pencil strips and hatches on one scale, figures in columns that line up.
import { css } from 'lit';

export const movesLook = css`
  :host {
    display: block;
  }
  p {
    margin: 0 0 0.7rem;
    max-width: 78ch;
  }
  h3 {
    margin: 1.4rem 0 0.3rem;
    font-size: var(--small);
    font-weight: 600;
    color: var(--pencil);
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .small,
  figcaption {
    font-size: var(--small);
    color: var(--pencil);
  }
  .where {
    display: block;
    font-size: var(--tiny);
    font-weight: 400;
    color: var(--pencil);
  }
  .trouble {
    color: var(--keel);
  }
  .on-paper {
    display: none;
  }
  .told:empty {
    display: none;
  }
  .main {
    font-size: 1.15rem;
    font-weight: 600;
    margin-bottom: 0.5rem;
  }
  .name {
    text-align: left;
    text-decoration: underline;
    text-decoration-color: var(--rule);
    text-underline-offset: 0.2em;
    min-height: 1.5rem;
  }
  .name:hover {
    text-decoration-color: currentcolor;
  }
  .plain-list li {
    padding: 0.15rem 0;
  }
  input:not([type='checkbox']),
  select {
    min-height: 1.9rem;
    padding: 0.15rem 0.4rem;
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
    min-width: 0;
  }
  ::placeholder {
    color: var(--pencil);
    opacity: 1;
    font-style: italic;
  }
  input.amount {
    width: 10rem;
  }
  input.few {
    width: 4rem;
  }
  [aria-invalid='true'] {
    border-color: var(--keel) !important;
    box-shadow: 0 0 0 1px var(--keel);
  }
  .asks {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.3rem 0.7rem;
    margin: 0.5rem 0;
  }
  .asks label {
    min-width: 3.5rem;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    margin-bottom: 0.8rem;
  }
  th,
  td {
    padding: 0.25rem 0.5rem;
    text-align: right;
    font-weight: 400;
    vertical-align: top;
    white-space: nowrap;
  }
  th:first-child {
    text-align: left;
    padding-left: 0;
    white-space: normal;
  }
  thead th {
    font-size: var(--tiny);
    color: var(--pencil);
    vertical-align: bottom;
    border-bottom: 1.5px solid var(--graphite);
  }
  tbody tr > * {
    border-bottom: 1px solid var(--hair);
  }
  /* Strips */
  .matters th:first-child {
    width: 17rem;
  }
  .matters .axis,
  .matters .bar {
    padding: 0 0.4rem;
    width: auto;
  }
  .matters .axis {
    padding-bottom: 0;
  }
  .matters .packs {
    text-align: left;
    white-space: normal;
    width: 15rem;
    padding-right: 0;
  }
  .pack {
    display: block;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .matters .bar {
    cursor: pointer;
    vertical-align: top;
  }
  .matters svg {
    display: block;
    width: 100%;
    overflow: visible;
  }
  svg {
    color: var(--graphite);
  }
  svg text {
    font-size: var(--tiny);
    fill: var(--pencil);
    font-variant-numeric: tabular-nums;
  }
  svg path {
    fill: none;
    stroke: var(--graphite);
    stroke-width: 1;
  }
  svg .less,
  svg .more {
    fill: var(--paper);
    stroke-width: 1.2;
  }
  svg .hatch {
    stroke: var(--pencil);
    stroke-width: 0.9;
  }
  svg .jump {
    stroke-width: 1.2;
  }
  svg .level {
    stroke-width: 1.6;
  }
  svg .plumb {
    stroke: var(--pencil);
    stroke-dasharray: 2 3;
  }
  svg text.plumb,
  svg text.budget {
    stroke: none;
  }
  svg .base,
  svg .chain {
    stroke: var(--pencil);
  }
  svg .curve {
    stroke-width: 1.6;
    stroke-linejoin: round;
  }
  svg path.budget {
    stroke: var(--keel);
    stroke-width: 2;
  }
  svg text.budget {
    fill: var(--keel);
    font-weight: 600;
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 1.3rem;
    margin-bottom: 0.5rem;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .legend li {
    display: flex;
    align-items: center;
    gap: 0.4rem;
  }
  /* How sure */
  .sure {
    display: grid;
    grid-template-columns: minmax(20rem, 1fr) minmax(0, 1.15fr);
    gap: 0.6rem 2rem;
    align-items: start;
  }
  .curve-paper {
    margin: 0;
  }
  .curve-paper svg {
    display: block;
    overflow: visible;
  }
  summary {
    cursor: pointer;
    width: max-content;
    min-height: 1.75rem;
  }
  .ways {
    margin: 0 0 0.8rem;
  }
  dt {
    font-weight: 600;
  }
  dd {
    margin: 0 0 0.4rem;
    color: var(--pencil);
  }
  .ranges li {
    display: grid;
    grid-template-columns: auto minmax(8rem, 14rem) 1fr auto;
    gap: 0 0.8rem;
    align-items: baseline;
    padding: 0.2rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .ranges .where {
    font-size: var(--small);
  }
  .tick {
    display: inline-flex;
    min-width: 1.5rem;
    min-height: 1.5rem;
    align-items: center;
  }
  input[type='checkbox'] {
    width: 1.1rem;
    height: 1.1rem;
    margin: 0;
    accent-color: var(--graphite);
  }
  .tied {
    display: flex;
    gap: 0.6rem;
    align-items: baseline;
  }
  /* What would it take */
  .take {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.5rem 0.7rem;
    margin-bottom: 1rem;
  }
  .take select {
    max-width: 100%;
  }
  .between {
    flex: 1 0 100%;
    font-size: var(--small);
  }
  .answers > li {
    padding: 0.6rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .answers .main {
    margin: 0 0 0.3rem;
  }
  .end {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 1rem;
    align-items: baseline;
    padding: 0.2rem 0;
  }
  .also {
    flex: 1 1 18rem;
    font-size: var(--small);
  }
  @media (pointer: coarse) {
    input:not([type='checkbox']),
    select,
    .name {
      min-height: 2.75rem;
    }
    .tick {
      min-width: 2.75rem;
      min-height: 2.75rem;
      justify-content: center;
    }
  }
  @media screen and (max-width: 760px) {
    .sure {
      grid-template-columns: minmax(0, 1fr);
    }
    .ranges li {
      grid-template-columns: auto 1fr;
    }
    .ranges .where,
    .ranges .tied {
      grid-column: 2;
    }
    /* A row of the table becomes a small list of its own, the picture across it. */
    table,
    tbody {
      display: block;
    }
    thead {
      display: block;
      border-bottom: 1.5px solid var(--graphite);
    }
    thead tr {
      display: block;
    }
    thead th {
      display: none;
    }
    .matters thead .axis {
      display: block;
      padding: 0;
      border: 0;
    }
    .figures thead {
      display: none;
    }
    tbody tr {
      display: grid;
      grid-template-columns: 1fr 1fr 1fr;
      gap: 0 0.8rem;
      padding: 0.35rem 0 0.45rem;
      border-bottom: 1px solid var(--hair);
    }
    tbody tr > * {
      border: 0;
    }
    tbody th:first-child,
    .matters .bar {
      grid-column: 1 / -1;
      width: auto;
      padding: 0;
    }
    td {
      padding: 0.05rem 0;
      text-align: left;
      white-space: normal;
    }
    .matters .packs {
      grid-column: 1 / -1;
      width: auto;
    }
    td:empty {
      display: none;
    }
    td:not(.bar)::before {
      content: attr(data-label);
      display: block;
      font-size: var(--tiny);
      color: var(--pencil);
    }
  }
  @media print {
    .on-paper {
      display: inline;
    }
    .act,
    .between,
    button.plain,
    .told {
      display: none;
    }
    tbody tr,
    .answers > li {
      break-inside: avoid;
    }
    input {
      border-color: transparent;
      background: none;
    }
  }
`;

// How the job record looks: money in columns that line up, fields in a row where there is room and below each other
// where there is none.
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
  @media (max-width: 760px) {
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

export const recordLook = css`
  :host {
    display: block;
  }
  h3 {
    margin: 1.1rem 0 0.4rem;
    font-size: var(--small);
    font-weight: 600;
    color: var(--pencil);
  }
  h3:first-child {
    margin-top: 0;
  }
  p {
    margin: 0 0 0.7rem;
  }
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .where {
    display: block;
    font-size: var(--tiny);
    font-weight: 400;
    color: var(--pencil);
  }
  .trouble,
  .fault,
  .past {
    color: var(--keel);
  }
  .said:empty {
    display: none;
  }
  /* Fields */
  .line,
  .chosen {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: 0.5rem 0.7rem;
    margin-bottom: 0.9rem;
  }
  .chosen {
    align-items: flex-end;
  }
  .field {
    display: grid;
    gap: 0.1rem;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .field input,
  .field select,
  .field textarea,
  .done {
    min-height: 1.9rem;
    padding: 0.15rem 0.4rem;
    font-size: 0.9375rem;
    color: var(--graphite);
    background: var(--lifted);
    border: 1px solid var(--faint);
    border-radius: 2px;
    min-width: 0;
    width: 100%;
  }
  [aria-invalid='true'] {
    border-color: var(--keel) !important;
    box-shadow: 0 0 0 1px var(--keel);
  }
  .fault {
    max-width: 16rem;
    font-size: var(--tiny);
  }
  .short {
    width: 7.2rem;
  }
  .few {
    width: 5rem;
  }
  .money {
    width: 7rem;
  }
  .chosen .money {
    width: 14rem;
  }
  .wide {
    flex: 1 1 11rem;
  }
  .whole {
    margin-bottom: 0.7rem;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 0.7rem;
    flex: 1 0 100%;
    margin-bottom: 0.6rem;
  }
  .line .acts {
    margin: 0;
  }
  .comes {
    flex: 1;
    text-align: right;
    font-weight: 600;
  }
  .pick {
    cursor: pointer;
    position: relative;
  }
  .pick:focus-within {
    outline: 2px solid var(--graphite);
    outline-offset: 2px;
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem 1.1rem;
    margin: 0 0 0.9rem;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  fieldset label {
    display: flex;
    gap: 0.4rem;
    align-items: center;
    min-height: 1.75rem;
  }
  /* What happened */
  .entries > li {
    padding: 0.4rem 0;
    border-bottom: 1px solid var(--hair);
  }
  .entry {
    display: grid;
    grid-template-columns: 6.4rem 1fr auto 7rem auto;
    gap: 0 1rem;
    align-items: baseline;
  }
  .entry strong {
    text-align: right;
  }
  .time,
  time {
    color: var(--pencil);
    white-space: nowrap;
  }
  .what {
    overflow-wrap: anywhere;
  }
  .out {
    color: var(--pencil);
  }
  .note,
  details {
    margin: 0.15rem 0 0 7.4rem;
    font-size: var(--small);
    color: var(--pencil);
    overflow-wrap: anywhere;
  }
  summary {
    cursor: pointer;
    width: max-content;
    max-width: 100%;
  }
  .receipt img {
    display: block;
    max-width: min(100%, 26rem);
    max-height: 30rem;
    margin-top: 0.3rem;
    border: 1px solid var(--rule);
  }
  .not-taken li {
    padding: 0.25rem 0;
    border-bottom: 1px solid var(--hair);
    overflow-wrap: anywhere;
  }
  /* Against the estimate */
  .warned,
  .calm {
    padding-left: 0.8rem;
    border-left: 3px solid var(--rule);
    margin-bottom: 1rem;
  }
  .warned {
    border-left-color: var(--keel);
  }
  .warned p:last-child,
  .calm p:last-child {
    margin: 0;
  }
  .bars {
    margin: 0 0 1.1rem;
  }
  .bar {
    display: grid;
    grid-template-columns: 10rem 1fr;
    gap: 0.8rem;
    align-items: center;
    padding: 0.2rem 0;
    border-bottom: 1px solid var(--hair);
    break-inside: avoid;
  }
  .strips {
    width: 100%;
    height: 27px;
    overflow: visible;
    color: var(--graphite);
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1.2rem;
    margin-bottom: 0.3rem;
    font-size: var(--tiny);
    color: var(--pencil);
  }
  .legend li {
    display: flex;
    align-items: center;
    gap: 0.35rem;
  }
  .swatch {
    width: 1.2rem;
    height: 0.7rem;
    color: var(--graphite);
  }
  .estimate {
    fill: none;
    stroke: var(--pencil);
  }
  .actual {
    fill: var(--graphite);
  }
  .to-go {
    stroke: var(--graphite);
    stroke-width: 0.8;
  }
  .over {
    fill: var(--keel);
  }
  .mark {
    stroke: var(--pencil);
    stroke-dasharray: 2 2;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    margin-bottom: 0.8rem;
  }
  th,
  td {
    padding: 0.2rem 0.5rem;
    text-align: right;
    font-weight: 400;
    vertical-align: baseline;
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
    border-bottom: 1.5px solid var(--graphite);
  }
  .part > * {
    padding-top: 0.55rem;
    font-weight: 600;
    border-top: 1px solid var(--rule);
  }
  tr:not(.part) > th {
    padding-left: 1rem;
    color: var(--pencil);
  }
  tr:not(.part) .where {
    display: inline-block;
    margin-left: 0.7rem;
  }
  .all .part > * {
    border-top: 1.5px solid var(--graphite);
  }
  .done {
    width: 4.2rem;
    min-height: 1.6rem;
    text-align: right;
  }
  .learned strong {
    font-size: 1.15rem;
  }
  @media (pointer: coarse) {
    .field input,
    .field select,
    .done {
      min-height: 2.75rem;
    }
  }
  @media (max-width: 760px) {
    .field {
      flex: 1 1 40%;
      width: auto;
    }
    .wide,
    .chosen .money {
      flex-basis: 100%;
    }
    .entry {
      grid-template-columns: 1fr auto;
    }
    .entry time {
      grid-area: 1 / 1;
    }
    .entry strong {
      grid-area: 1 / 2;
    }
    .entry .what {
      grid-area: 2 / 1 / auto / 3;
    }
    .entry .time {
      grid-area: 3 / 1;
    }
    .entry button {
      grid-area: 3 / 2;
      justify-self: end;
    }
    .note,
    details {
      margin-left: 0;
    }
    .bar {
      grid-template-columns: 1fr;
      gap: 0.1rem;
    }
    /* A row of the table becomes a small list of its own. */
    table,
    tbody {
      display: block;
    }
    thead {
      display: none;
    }
    tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 0 1rem;
      padding: 0.3rem 0 0.4rem;
    }
    tr:not(.part) {
      border-top: 1px solid var(--hair);
    }
    tr > th:first-child {
      grid-column: 1 / -1;
    }
    td {
      display: flex;
      justify-content: space-between;
      align-items: baseline;
      padding: 0.05rem 0;
    }
    td::before {
      content: attr(data-label);
      font-size: var(--tiny);
      font-weight: 400;
      color: var(--pencil);
    }
    td:empty {
      display: none;
    }
    .part > td {
      padding-top: 0.05rem;
      border: 0;
    }
  }
  @media print {
    .new,
    .said,
    .acts,
    .entries button,
    .entries record-line,
    .new + .said,
    .chosen {
      display: none;
    }
    .done {
      border: 0;
      background: none;
    }
    tbody,
    .entries > li {
      break-inside: avoid;
    }
  }
`;
